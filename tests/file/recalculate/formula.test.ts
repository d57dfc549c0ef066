import { describe, expect, it } from 'vitest';
import {
  bindsName,
  callsOurs,
  functionsIn,
  otherWorkbook,
  storedForm,
  typed,
} from '../../../src/file/recalculate/formula';

describe('stored → typed', () => {
  it.each([
    ['_xldudf_HEM_RODWIDTH(A1)', 'HEM.RODWIDTH(A1)'],
    ['[2]!_xldudf_HEM_RODWIDTH(A1)', 'HEM.RODWIDTH(A1)'],
    ['_xldudf_hem_rodwidth (A1)', 'HEM.RODWIDTH (A1)'],
    ['SUM(_xlfn._xlws.SORT(A1:A3))', 'SUM(SORT(A1:A3))'],
    ['_xlfn.LET(_xlpm.x,1,_xlpm.x+1)', 'LET(x,1,x+1)'],
    ['"_xldudf_HEM_X(" & "_xlfn."', '"_xldudf_HEM_X(" & "_xlfn."'],
    ["'_xlfn.Sheet'!A1+1", "'_xlfn.Sheet'!A1+1"],
    ['_xldudf_OTHER_THING(1)', '_xldudf_OTHER_THING(1)'],
  ])('%s → %s', (stored, text) => {
    expect(typed(stored)).toBe(text);
  });
});

describe('typed → stored', () => {
  it.each([
    ['HEM.RODWIDTH(A1)', '_xldudf_HEM_RODWIDTH(A1)'],
    ['hem.rodwidth(A1)', '_xldudf_HEM_RODWIDTH(A1)'],
    ['ROUND(HEM.RODWIDTH(HEM.EXTENSION(4)),2)', 'ROUND(_xldudf_HEM_RODWIDTH(_xldudf_HEM_EXTENSION(4)),2)'],
    ['_xldudf_HEM_RODWIDTH(A1)', '_xldudf_HEM_RODWIDTH(A1)'],
    ['"HEM.RODWIDTH(1)"&HEM.RODWIDTH(1)', '"HEM.RODWIDTH(1)"&_xldudf_HEM_RODWIDTH(1)'],
    ['THEM.RODWIDTH(1)', 'THEM.RODWIDTH(1)'],
    ['HEM.NOSUCH(1)', 'HEM.NOSUCH(1)'],
    ["'HEM.RODWIDTH(1)'!A1", "'HEM.RODWIDTH(1)'!A1"],
    ['Table[HEM.RODWIDTH(1)]', 'Table[HEM.RODWIDTH(1)]'],
  ])('%s → %s', (text, stored) => {
    expect(storedForm(text)).toBe(stored);
    expect(storedForm(stored)).toBe(stored);
  });
});

describe('what a formula calls', () => {
  it.each([
    ['=SUM(A1,"MAX(1)",Table[MIN(1)])', ['SUM']],
    ['=hem.x(1)+Ärger(2)', ['HEM.X', 'ÄRGER']],
    ["='Sum (1)'!A1+CEILING.MATH (1)", ['CEILING.MATH']],
    ['=(1+2)*3', []],
  ])('%s: %j', (formula, names) => {
    expect(functionsIn(formula)).toEqual(names);
  });

  it('ours among them', () => {
    expect([callsOurs('=ROUND(HEM.X(1),2)'), callsOurs('=THEM(1)'), callsOurs('="HEM.X(1)"')]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('and what LET and LAMBDA make of a name', () => {
    expect(bindsName('=LET(rod,1,rod+1)', 'ROD')).toBe(true);
    expect(bindsName('=LAMBDA(x,y,x(y))(A,2)', 'x')).toBe(true);
    expect(bindsName('=SUM(rod,1)', 'rod')).toBe(false);
    expect(bindsName('=LET(rod,1,rod+other)', 'other')).toBe(false);
  });
});

describe('another workbook', () => {
  it.each([
    ['=[1]Prices!$A$1', '1'],
    ["='[Prices 2027.xlsx]List'!A1", 'Prices 2027.xlsx'],
    ["='C:\\quotes\\[Prices.xlsx]List'!A1", 'Prices.xlsx'],
    ['=SUM([2]!Rate)', '2'],
    ['=Windows[Yards]*2', undefined],
    ['=Windows[[#This Row],[Rod width]]+Quote!A1', undefined],
    ['="[1]Prices!A1"', undefined],
  ])('in %s: %s', (formula, sign) => {
    expect(otherWorkbook(formula)).toBe(sign);
  });
});
