import { describe, expect, it } from 'vitest';
import { Engine } from '../../../src/engine/engine';
import { nodeLibrary } from '../../../src/engine/node';
import { whyNot } from '../../../src/file/recalculate/refused';

const engine = new Engine(nodeLibrary(), { sheets: [{ name: 'One', cells: [] }], names: [] });
const why = (formula: string, from1904 = false, kind = 'plain'): string | undefined =>
  whyNot(
    { typed: formula, kind },
    { names: [{ name: 'Twice', refersTo: '', sheet: undefined }], from1904 },
    engine,
  );

describe('not computed, told from the formula alone', () => {
  it.each([
    ['=[1]Prices!A1', 'it points into another workbook ([1])'],
    ['=WEBSERVICE("x")', 'it calls WEBSERVICE, which is not computed here'],
    ['=CUBEVALUE("x")', 'it calls CUBEVALUE, which is not computed here'],
    ['=GETPIVOTDATA("x",A1)', 'it calls GETPIVOTDATA, which is not computed here'],
    ['=_xldudf_OTHER_THING(1)', 'it calls _XLDUDF_OTHER_THING, which is not known here'],
    ['=SUM((1,2', 'it cannot be read as a formula'],
  ])('%s: %s', (formula, sentence) => {
    expect(why(formula)).toBe(sentence);
  });

  it('a what-if table; days counted from 1904', () => {
    expect(why('=', false, 'table')).toMatch(/what-if data table/);
    expect(why('=EDATE(A1,1)', true)).toMatch(/counts its days from 1904/);
    expect(why('=A1+1', true)).toBeUndefined();
  });

  it.each([
    '=HEM.RODWIDTH(A1)',
    '=Twice(2)',
    '=LET(f,LAMBDA(x,x),f(2))',
    '=SUM(A1#)',
    '=TODAY()',
    '="[1]x!A1"',
  ])('%s is computed', (formula) => {
    expect(why(formula)).toBeUndefined();
  });
});
