import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { MemoryBook } from '../../../src/book/memory';
import { cellAsked } from '../../../src/book/asked/asked';

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
    expect(calls.map((one) => one.cellFunction.name)).toEqual(['WIDTHS', 'RODWIDTH']);
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

  it('knows the one cell an input comes from, where a blank one is kept blank or its unit is changed', async () => {
    const { calls } = await ask(
      '=HEM.RODWIDTH(IF(ISNUMBER(A3),CONVERT(A3,"cm","in"),A3&" cm"),IF(B3="","",B3),B2-B3)',
    );
    expect(calls[0]?.inputs.map((one) => one.from)).toEqual([
      areaAt('Windows', 2, 0),
      areaAt('Windows', 2, 1),
      undefined,
    ]);
  });
});

describe('a cell that is part of a spill', () => {
  const rows = [
    ['Inside W', 'Ht', 'Style', 'Fab W'],
    [72, 98, 'pinch', 54],
    [40, 98, 'smocked', 54],
    ['=HEM.SCHEDULE(A1:D1,A2:D3,"rod width, widths")', 5],
    [
      'Style reads “smocked”. Use one of: pinch, goblet, cartridge, box, inverted, pencil, rod pocket, tab top, grommet, wave, flat.',
      '',
    ],
  ];
  const at = (row: number, column: number) =>
    cellAsked(new MemoryBook({ Windows: { rows } }), areaAt('Windows', row, column));

  it('is explained by the formula that spills, asked of its own row', async () => {
    const asked = await at(4, 0);
    expect(asked.spilledFrom).toEqual(areaAt('Windows', 3, 0));
    expect(asked.calls[0]?.inputs[1]).toMatchObject({
      value: [[40, 98, 'smocked', 54]],
      from: areaAt('Windows', 2, 0, 1, 4),
    });
    const second = await at(3, 1);
    expect(second.spilledFrom).toEqual(areaAt('Windows', 3, 0));
    const outcome = second.calls[0]?.outcome;
    expect(outcome !== undefined && 'steps' in outcome ? outcome.steps.map((one) => one.what) : []).toContain(
      'rod width',
    );
  });
  it('is not any figure beside a formula', async () => {
    expect((await at(2, 1)).spilledFrom).toBeUndefined();
    expect((await at(2, 3)).calls).toEqual([]);
  });
});
