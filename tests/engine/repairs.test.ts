import { describe, expect, it } from 'vitest';
import { Engine } from '../../src/engine/engine';
import { nodeLibrary } from '../../src/engine/node';
import { guard, monthsOn } from '../../src/engine/repairs';

const library = nodeLibrary();

/** Days since 30 December 1899, as a worksheet counts them after February 1900. */
const day = (year: number, month: number, date: number): number =>
  (Date.UTC(year, month - 1, date) - Date.UTC(1899, 11, 30)) / 86_400_000;

describe('so many months on', () => {
  it.each([
    [day(2027, 1, 31), 1, day(2027, 2, 28)],
    [day(2028, 1, 31), 1, day(2028, 2, 29)],
    [day(2027, 3, 31), -1, day(2027, 2, 28)],
    [day(2027, 1, 15), 25, day(2029, 2, 15)],
    [day(2027, 12, 31), 2, day(2028, 2, 29)],
    [day(2027, 5, 31), 1.9, day(2027, 6, 30)],
    [1, 1, 32],
    [31, 1, 59],
    [61, -1, 32],
  ])('from %d, %d: %d', (from, months, to) => {
    expect(monthsOn(from, months)).toBe(to);
  });

  it('never before the first day there is', () => {
    expect(monthsOn(40, -24)).toBeUndefined();
    expect(monthsOn(-1, 1)).toBeUndefined();
  });
});

describe('mended in the engine', () => {
  const cells = [58, 61.5, 47, 52.25].map((value, row) => ({ row, column: 0, value }));

  it('SORT leaves the range it sorts as it is', async () => {
    const engine = new Engine(library, {
      names: [],
      sheets: [
        {
          name: 'One',
          cells: [
            ...cells,
            ...['a', 'b', 'c', 'd'].map((value, row) => ({ row, column: 1, value })),
            { row: 0, column: 3, value: null, formula: '=SORT(A1:A4)' },
            { row: 0, column: 4, value: null, formula: '=SUMIFS(A1:A4,B1:B4,"a")' },
            { row: 1, column: 4, value: null, formula: '=INDEX(A1:A4,2)' },
          ],
        },
      ],
    });
    const all = await engine.calculate();
    expect(all.find(({ column }) => column === 3)?.spill).toEqual([[47], [52.25], [58], [61.5]]);
    expect(all.filter(({ column }) => column === 4).map(({ value }) => value)).toEqual([58, 61.5]);
    expect((await engine.ask('=SUMPRODUCT(SORT(A1:A4),A1:A4)+SUMIFS(A1:A4,B1:B4,"a")')).value).toBe(
      47 * 58 + 52.25 * 61.5 + 58 * 47 + 61.5 * 52.25 + 58,
    );
  });

  it('a 0 is not blank, and a blank cell is, however often a range is asked', async () => {
    const list = [0, null, '', 5].map((value, row) => ({ row, column: 0, value }));
    const asks = ['=CONCAT(IF(A1:A4="","b","f"))', '=CONCAT(IF(A1:A2=0,"0","f"))'];
    const engine = new Engine(library, {
      names: [],
      sheets: [
        {
          name: 'One',
          cells: [
            ...list,
            ...[2, 3, 4].flatMap((column) =>
              asks.map((formula, row) => ({ row, column, value: null, formula })),
            ),
          ],
        },
      ],
    });
    const all = await engine.calculate();
    expect(all.map(({ row, value }) => [row, value])).toEqual(
      expect.arrayContaining([
        [0, 'fbbf'],
        [1, '00'],
      ]),
    );
    expect(new Set(all.map(({ row, value }) => `${row} ${String(value)}`)).size).toBe(2);
  });

  it.each([
    ['=LEN("1/2")', 3],
    ['=IF(TRUE,"1/2")', '1/2'],
    ['="1/2"&" in"', '1/2 in'],
    ['=IFERROR(1/0,"3-4")', '3-4'],
    ['=INDEX({"Ash, Mr";"Elm; Mrs"},2)', 'Elm; Mrs'],
    ['=COLUMNS({"a,b",2,"c ""d"""})', 3],
    ['=INDEX({"a,b",2,"c ""d"""},3)', 'c "d"'],
    ['=SUM({1,2;3,4})', 10],
    ['=EDATE(46053,1)', 46081],
  ])('%s is %j', async (formula, value) => {
    const engine = new Engine(library, { sheets: [{ name: 'One', cells: [] }], names: [] });
    expect((await engine.ask(formula)).value).toBe(value);
  });
});

it('a function that throws gives #VALUE! and is heard, and does not hang the rest', () => {
  const thrower = {
    name: 'THROWS',
    calculate: () => {
      throw new Error('oh');
    },
  };
  const heard: unknown[] = [];
  guard(library, { getExecutors: () => new Map([['THROWS', thrower]]) } as never, (_, thrown) =>
    heard.push(thrown),
  );
  const given = (thrower.calculate as unknown as () => { getValue(): unknown })();
  expect([given.getValue(), String(heard[0])]).toEqual(['#VALUE!', 'Error: oh']);
});
