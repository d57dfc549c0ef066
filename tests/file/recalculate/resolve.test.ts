import { describe, expect, it } from 'vitest';
import { resolverOf, Unresolved, usesSpill, withSpills } from '../../../src/file/recalculate/resolve';
import { typed } from '../../../src/file/recalculate/formula';

const KNOWN = new Set(['SUM', 'RATE', 'LET', 'LAMBDA', 'MAP', 'OFFSET', 'COUNTA']);
const { resolve } = resolverOf(
  {
    sheets: [{ name: 'Floor 3' }, { name: 'Quote' }] as never,
    names: [
      { name: 'Prices', refersTo: "'Floor 3'!$A$2:$C$9", sheet: undefined },
      { name: 'Rate', refersTo: 'Quote!$B$3', sheet: undefined },
      { name: 'Vat', refersTo: '0.0725', sheet: undefined },
      { name: 'Gross', refersTo: '1+Vat', sheet: undefined },
      { name: 'Local', refersTo: 'Quote!$A$1', sheet: 1 },
      { name: 'Local', refersTo: "'Floor 3'!$A$1", sheet: undefined },
      { name: 'Left', refersTo: 'Quote!A1', sheet: undefined },
      { name: 'Twice', refersTo: '_xlfn.LAMBDA(_xlpm.x,_xlpm.x*2)', sheet: undefined },
      { name: 'Grown', refersTo: 'OFFSET(Quote!$A$1,0,0,COUNTA(Quote!$A:$A),1)', sheet: undefined },
      { name: 'Round', refersTo: 'About+1', sheet: undefined },
      { name: 'About', refersTo: 'Round+1', sheet: undefined },
      { name: '_xlnm.Print_Area', refersTo: 'Quote!$A$1', sheet: 1 },
    ],
    tables: [
      {
        name: 'Windows',
        part: '',
        sheet: 0,
        ref: 'B4:E9',
        headerRows: 1,
        totalsRows: 1,
        filtered: false,
        columns: ['Room', 'Rod width', 'Yards [net]', 'Cost'],
      },
    ],
  },
  (name) => KNOWN.has(name.toUpperCase()),
  typed,
);
const there = (formula: string, sheet = 0, row = 5, column = 1): string =>
  resolve(formula, { sheet, row, column });

describe('a table in a formula is the cells it means', () => {
  it.each([
    ['SUM(Windows[Cost])', "SUM('Floor 3'!$E$5:$E$8)"],
    ['SUM(windows[cost])', "SUM('Floor 3'!$E$5:$E$8)"],
    ['Windows[[#This Row],[Rod width]]*2', "'Floor 3'!$C$6*2"],
    ['Windows[@[Rod width]]', "'Floor 3'!$C$6"],
    ['[@Cost]', "'Floor 3'!$E$6"],
    ["Windows[Yards '[net']]", "'Floor 3'!$D$5:$D$8"],
    ['Windows[[Room]:[Cost]]', "'Floor 3'!$B$5:$E$8"],
    ['Windows[#Headers]', "'Floor 3'!$B$4:$E$4"],
    ['Windows[[#Totals],[Cost]]', "'Floor 3'!$E$9"],
    ['Windows[[#Headers],[#Data],[Cost]]', "'Floor 3'!$E$4:$E$8"],
    ['Windows[#All]', "'Floor 3'!$B$4:$E$9"],
    ['COUNTA(Windows)', "COUNTA('Floor 3'!$B$5:$E$8)"],
    ['"Windows[Cost]"', '"Windows[Cost]"'],
  ])('%s → %s', (formula, plain) => {
    expect(there(formula)).toBe(plain);
  });

  it.each([
    ['Windows[Nope]', 'the table Windows has no column “Nope”'],
    ['Doors[Cost]', 'there is no table Doors'],
    ['Windows[@Cost]', 'it takes this row of the table Windows and stands beside no row of it', 20],
    ['[@Cost]', 'it names a column without its table', 20],
  ])('%s: %s', (formula, why, row = 5) => {
    expect(() => there(formula, 0, row)).toThrow(new Unresolved(why));
  });
});

describe('a name in a formula is what it stands for', () => {
  it.each([
    ['SUM(Prices)', "SUM('Floor 3'!$A$2:$C$9)"],
    ['sum(PRICES)', "sum('Floor 3'!$A$2:$C$9)"],
    ['A1*(1+Rate)', 'A1*(1+Quote!$B$3)'],
    ['RATE(60,-1,10)', 'RATE(60,-1,10)'],
    ['100*Vat', '100*(0.0725)'],
    ['100*Gross', '100*(1+(0.0725))'],
    ['Local', "'Floor 3'!$A$1"],
    ['Quote!Local', 'Quote!$A$1'],
    ['Twice(4)', 'LAMBDA(x,x*2)(4)'],
    ['MAP(A1:A2,Twice)', 'MAP(A1:A2,LAMBDA(x,x*2))'],
    ['SUM(Grown)', 'SUM(OFFSET(Quote!$A$1,0,0,COUNTA(Quote!$A:$A),1))'],
    ['Left+1', 'Quote!B6+1'],
    ['LET(Rate,2,Rate*3)', 'LET(Rate,2,Rate*3)'],
    ['LET(rod,1,rod+1)', 'LET(rod,1,rod+1)'],
    ["'Floor 3'!$A$1+A1+$B2+Quote!C3", "'Floor 3'!$A$1+A1+$B2+Quote!C3"],
    ['SUM(A:C)+SUM(2:3)+1E5+1.5E+3', 'SUM(A:C)+SUM(2:3)+1E5+1.5E+3'],
    ['IF(TRUE,#N/A,#DIV/0!)', 'IF(TRUE,#N/A,#DIV/0!)'],
    ['MAP(A1:A2,SUM)', 'MAP(A1:A2,SUM)'],
  ])('%s → %s', (formula, plain) => {
    expect(there(formula)).toBe(plain);
  });

  it('the sheet’s own before the workbook’s', () => {
    expect(there('Local', 1)).toBe('Quote!$A$1');
  });

  it.each([
    ['Nowhere+1', 'it names Nowhere, which is defined nowhere here'],
    ['Round', 'the name About refers to itself'],
  ])('%s: %s', (formula, why) => {
    expect(() => there(formula)).toThrow(Unresolved);
    expect(() => there(formula)).toThrow(/nowhere here|refers to itself/);
    expect(why).toBeTruthy();
  });
});

describe('a spill in a formula is where it stands now', () => {
  const reach = (sheet: string, row: number, column: number) =>
    sheet === 'Quote' && row === 0 && column === 0 ? { rows: 4, columns: 2 } : { rows: 1, columns: 1 };
  it.each([
    ['SUM(A1#)', 'SUM(Quote!$A$1:$B$4)'],
    ['SUM(ANCHORARRAY(A1))', 'SUM(Quote!$A$1:$B$4)'],
    ["SUM(ANCHORARRAY('Quote'!$A$1))", 'SUM(Quote!$A$1:$B$4)'],
    ['C1#', 'Quote!$C$1'],
    ['"A1#"', '"A1#"'],
  ])('%s → %s', (formula, plain) => {
    expect(withSpills(formula, 'Quote', reach)).toBe(plain);
  });

  it('is seen in a formula, not in its text', () => {
    expect([usesSpill('SUM(A1#)'), usesSpill('"A1#"'), usesSpill('A1+#N/A')]).toEqual([true, false, false]);
  });
});
