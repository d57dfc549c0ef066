import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { enterAgain, ourFormulas } from '../../src/book/again';
import { MemoryBook, type Calculate } from '../../src/book/memory';

const book = (calculate?: Calculate) =>
  new MemoryBook(
    {
      Notes: { rows: [['HEM.WIDTHS is a function', '=LEN("x")']] },
      Windows: {
        rows: [
          ['Rod', 'Widths', 'Other'],
          [94, '=HEM.WIDTHS(A2,"pinch",54)', '=A2*2'],
          [60, '=HEM.WIDTHS(A3,"pinch",54)', '=_xldudf_HEM_DROP(98,"pinch")'],
          [72, '=IF(A4="","",HEM.WIDTHS(A4,"pinch",60))', null],
        ],
      },
    },
    calculate,
  );

describe('our formulas', () => {
  it('are found sheet by sheet, alike ones as one stretch, and the stored form as it is typed', async () => {
    const found = await ourFormulas(book());
    expect(found).toEqual([
      {
        sheet: 'Windows',
        count: 4,
        unknown: 0,
        columns: 2,
        puts: [
          { area: areaAt('Windows', 1, 1, 2), formula: '=HEM.WIDTHS(A2,"pinch",54)' },
          { area: areaAt('Windows', 3, 1), formula: '=IF(A4="","",HEM.WIDTHS(A4,"pinch",60))' },
          { area: areaAt('Windows', 2, 2), formula: '=HEM.DROP(98,"pinch")' },
        ],
      },
    ]);
  });

  it('are entered again in one request, and nothing else is touched', async () => {
    const it = book(({ sheets }) => {
      for (const row of sheets[1]?.cells.values() ?? [])
        for (const cell of row.values()) if (cell.formula?.includes('HEM') === true) cell.value = '#NAME?';
    });
    await it.recalculate();
    const [windows] = await ourFormulas(it);
    expect(windows?.unknown).toBe(4);
    const told: boolean[] = [];
    await enterAgain(it, windows!, { written: (one) => told.push(one) });
    expect(told).toEqual([true]);
    const [block] = await it.read([areaAt('Windows', 0, 0, 4, 3)]);
    expect(block?.formulas).toEqual([
      [null, null, null],
      [null, '=HEM.WIDTHS(A2,"pinch",54)', '=A2*2'],
      [null, '=HEM.WIDTHS(A3,"pinch",54)', '=HEM.DROP(98,"pinch")'],
      [null, '=IF(A4="","",HEM.WIDTHS(A4,"pinch",60))', null],
    ]);
    expect((await it.read([areaAt('Notes', 0, 0, 1, 2)]))[0]?.formulas).toEqual([[null, '=LEN("x")']]);
  });
});
