import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { MemoryBook } from '../../src/book/memory';
import { cellAsked } from '../../src/pane/asked';

const bookWith = (formula: string): MemoryBook =>
  new MemoryBook({
    Windows: {
      rows: [
        ['inside width', 'left', 'unit'],
        ['84 1/2', null, 'cm'],
        [72, 13, formula],
      ],
    },
    'House rules': { rows: [['extension medium low', 12]] },
  }).withTable('Schedule', areaAt('Windows', 0, 0, 3, 3));

const ask = (formula: string) => cellAsked(bookWith(formula), areaAt('Windows', 2, 2));
const inputs = async (formula: string): Promise<unknown[]> =>
  (await ask(formula)).calls[0]?.inputs.map((one) => one.value) ?? [];

describe('what a cell asks our functions', () => {
  it.each([
    ['=HEM.RODWIDTH(A3,B3,11)', [72, 13, 11]],
    ['=HEM.RODWIDTH(A2,,11)', ['84 1/2', null, 11]],
    ['=HEM.RODWIDTH(Schedule[@[inside width]],Schedule[[#This Row],[left]])', [72, 13]],
    ['=HEM.RODWIDTH([@[inside width]],[@left])', [72, 13]],
    ['=IF(A3="","",HEM.RODWIDTH(A3,IF(B2="","",B2),-B3+14))', [72, '', 1]],
    ['=ROUND(HEM.RODWIDTH(IF(ISNUMBER(A3),CONVERT(A3,"cm","in"),A3&" cm"),0,0),2)', [72 / 2.54, 0, 0]],
    ['=HEM.RODWIDTH("7\' 6""",0,0)', [`7' 6"`, 0, 0]],
    ['=HEM.DROP({98,97.5,98},"pinch")', [[[98, 97.5, 98]], 'pinch']],
    ['=HEM.RODWIDTH(MAX(A2:A3),0,0)', [72, 0, 0]],
  ])('%s', async (formula, wanted) => {
    const got = await inputs(formula);
    expect(got.map((one) => (typeof one === 'number' ? Number(one.toFixed(9)) : one))).toEqual(
      wanted.map((one) => (typeof one === 'number' ? Number(one.toFixed(9)) : one)),
    );
  });

  it('72 + 12 + 12 = 96 under a rules range on another sheet', async () => {
    const { calls } = await ask("=HEM.RODWIDTH(A3,,,'House rules'!A1:B1)");
    expect(calls[0]?.outcome).toMatchObject({ cells: 96 });
    expect(calls[0]?.inputs.at(-1)).toMatchObject({ name: 'rules', from: areaAt('House rules', 0, 0, 1, 2) });
  });

  it('lists every call, from the outside in', async () => {
    const { calls } = await ask('=HEM.WIDTHS(HEM.RODWIDTH(A3),"pinch",54)');
    expect(calls.map((one) => one.of.name)).toEqual(['WIDTHS', 'RODWIDTH']);
  });

  it('names the part it cannot follow, and shows no guess', async () => {
    const asked = await ask('=HEM.RODWIDTH(VLOOKUP("x",A1:B3,2),0,0)');
    expect(asked.calls).toEqual([]);
    expect(asked.unfollowed).toContain('VLOOKUP');
  });

  it('finds nothing to explain in a value or another formula', async () => {
    expect((await cellAsked(bookWith(''), areaAt('Windows', 2, 0))).calls).toEqual([]);
    expect((await ask('=SUM(A2:A3)')).calls).toEqual([]);
  });
});
