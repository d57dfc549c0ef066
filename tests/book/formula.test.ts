import { describe, expect, it } from 'vitest';
import { countedFrom, sameFormula, shifted } from '../../src/book/formula';

// As a spreadsheet fills down (and right): what has no $ moves along.
describe('a formula filled on', () => {
  it.each([
    ['=HEM.WIDTHS(D4,E4,F4,,"A1")', 2, 0, '=HEM.WIDTHS(D6,E6,F6,,"A1")'],
    ['=D$4*$E4+$F$4', 3, 2, '=F$4*$E7+$F$4'],
    ["='Floor A1'!B2&Rules!$A$5:$B$140", 1, 1, "='Floor A1'!C3&Rules!$A$5:$B$140"],
    ['=Windows[@[Width A1]]+A1', 1, 0, '=Windows[@[Width A1]]+A2'],
    ["=Windows[[#This Row],[Drop '[in']]]+B1", 1, 0, "=Windows[[#This Row],[Drop '[in']]]+B2"],
    ['=LOG10(A1)+ATAN2(1,2)', 1, 0, '=LOG10(A2)+ATAN2(1,2)'],
    ['=SUM(A:A,$B:C)', 5, 1, '=SUM(B:B,$B:D)'],
    ['=SUM(1:1,$2:3)', 5, 1, '=SUM(6:6,$2:8)'],
    ['=A1:B2', 1, 1, '=B2:C3'],
    ['=Rate1.x*A1', 1, 0, '=Rate1.x*A2'],
    ['=1E5+A1', 1, 0, '=1E5+A2'],
    ['=XFD1+A1048576', 0, 1, '=#REF!+B1048576'],
    ['=A1048576', 1, 0, '=#REF!'],
    ['=Q1!A1+Tab_1', 1, 0, '=Q1!A2+Tab_1'],
  ])('%s, %i down and %i right, is %s', (formula, down, right, gives) => {
    expect(shifted(formula, down, right)).toBe(gives);
  });
});

describe('a formula counted from its cell', () => {
  it.each([
    ['=B3+$B3+B$3+$B$3', '=R[1]C[-1]+R[1]C2+R3C[-1]+R3C2'],
    ['=C2&"A1"&LOG10(D2)', '=RC&"A1"&LOG10(RC[1])'],
    ["=SUM('Ground A1'!$A:C,2:$9)+Windows[@[Rod A1]]", "=SUM('Ground A1'!C1:C,R:R9)+Windows[@[Rod A1]]"],
  ])('%s in C2 is %s', (formula, counted) => {
    expect(countedFrom(formula, 1, 2)).toBe(counted);
  });
});

describe('a formula as a host may spell it', () => {
  it.each([
    ['=hem.Widths( A2 , 54 )', '=HEM.WIDTHS(A2,54)', true],
    ['=Openings[[#This Row],[Rod width]]+1', '=[@[Rod width]]+1', true],
    ['=Openings[@Width]', '=[@Width]', true],
    ['=A2+1', '=A3+1', false],
    ['=[@Width]', '=[@Drop]', false],
  ])('%s and %s are the same: %s', (one, other, same) => {
    expect(sameFormula(one, other)).toBe(same);
  });
});
