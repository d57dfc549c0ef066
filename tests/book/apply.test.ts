import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { apply, rowsInWords } from '../../src/book/apply';
import type { Changes } from '../../src/book/book';
import { MemoryBook } from '../../src/book/memory';
import { MOST_AT_ONCE } from '../../src/book/requests';
import { trouble, Trouble } from '../../src/book/trouble';

const rows = [
  ['Room', 'Width'],
  ['101', 72],
  ['102', 60],
];
const column: Changes = {
  puts: [
    { area: areaAt('Floor', 0, 2), cells: [['Rod']] },
    { area: areaAt('Floor', 1, 2, 2, 1), formula: '=B2+22' },
  ],
};

async function refusedAs(book: MemoryBook, changes: Changes, watch = {}): Promise<string> {
  const before = book.picture();
  const failure = await apply(book, 'Fill', changes, watch).then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  expect(failure).toBeInstanceOf(Trouble);
  expect(book.picture()).toBe(before);
  expect(book.undoable).toEqual([]);
  return (failure as Trouble).message;
}

describe('a change to the workbook', () => {
  it('is one undo step, and undo brings the workbook back', async () => {
    const book = new MemoryBook({ Floor: { rows } });
    const before = book.picture();
    await apply(book, 'Add 1 column', column);
    const [block] = await book.read([areaAt('Floor', 0, 2, 3, 1)]);
    expect(block?.values[0]).toEqual(['Rod']);
    expect(block?.formulas.flat()).toEqual([null, '=B2+22', '=B3+22']);
    expect(book.undoable).toEqual(['Add 1 column']);
    book.undo();
    expect(book.picture()).toBe(before);
  });

  it('of several requests promises one undo only where the host joins them', async () => {
    const long: Changes = {
      puts: [
        {
          area: areaAt('Floor', 5, 0, MOST_AT_ONCE + 1, 1),
          cells: Array.from({ length: MOST_AT_ONCE + 1 }, () => [1]),
        },
      ],
    };
    for (const [changes, joins, oneUndo] of [
      [column, false, true],
      [column, true, true],
      [long, false, false],
      [long, true, true],
    ] as const) {
      const book = new MemoryBook({ Floor: { rows } });
      book.joinsRequests = joins;
      const told: boolean[] = [];
      await apply(book, 'Fill', changes, { written: (one) => told.push(one) });
      expect(told).toEqual([oneUndo]);
    }
  });
  it('refuses a protected sheet', async () => {
    const book = new MemoryBook({ Floor: { rows, protected: true } });
    expect(await refusedAs(book, column)).toMatch(/“Floor” is protected.*Unprotect Sheet/);
  });
  it('refuses a filled cell and names it', async () => {
    const book = new MemoryBook({
      Floor: { rows: [...rows, [null, null, null]].map((row, at) => (at === 2 ? [...row, 9] : row)) },
    });
    expect(await refusedAs(book, column)).toMatch(/^C3 of “Floor” already holds something/);
  });
  it('overwrites a filled cell where that was allowed', async () => {
    const book = new MemoryBook({ Floor: { rows: rows.map((row) => [...row, 9]) } });
    await apply(book, 'Fill', column, { mayOverwrite: [areaAt('Floor', 0, 2, 3, 1)] });
    const [block] = await book.read([areaAt('Floor', 2, 2)]);
    expect(block?.formulas).toEqual([['=B3+22']]);
  });
  it('refuses a merged cell in the way', async () => {
    const book = new MemoryBook({ Floor: { rows, merged: [{ row: 1, column: 2, rows: 2, columns: 1 }] } });
    expect(await refusedAs(book, column)).toMatch(/^C2:C3 is a merged cell/);
  });
  it('refuses hidden rows until they are said to count', async () => {
    const book = new MemoryBook({ Floor: { rows, hiddenRows: [2] } });
    expect(await refusedAs(book, column)).toMatch(/^Row 3 of “Floor” is hidden/);
    await apply(book, 'Fill', column, { hiddenRowsToo: true });
    expect(book.undoable).toEqual(['Fill']);
  });
  it('refuses names that clash or are none', async () => {
    const book = new MemoryBook({ Floor: { rows } }).withTable('Windows', areaAt('Floor', 0, 0, 3, 2));
    const at = areaAt('Floor', 0, 0);
    expect(await refusedAs(book, { newSheets: [{ name: 'FLOOR' }] })).toMatch(/“FLOOR” is already used/);
    expect(await refusedAs(book, { newNames: [{ name: 'windows', area: at }] })).toMatch(/already used/);
    expect(await refusedAs(book, { newNames: [{ name: 'CUT1', area: at }] })).toMatch(/address of a cell/);
    expect(await refusedAs(book, { newNames: [{ name: 'R1C1', area: at }] })).toMatch(/address of a cell/);
    expect(await refusedAs(book, { newSheets: [{ name: 'a/b' }] })).toMatch(/cannot hold/);
    expect(await refusedAs(book, { newSheets: [{ name: 'x'.repeat(32) }] })).toMatch(/31 characters/);
  });
  it('refuses a sheet or table that is gone', async () => {
    const book = new MemoryBook({ Floor: { rows } });
    expect(await refusedAs(book, { puts: [{ area: areaAt('Attic', 0, 0), cells: [[1]] }] })).toMatch(
      /“Attic” is no longer/,
    );
    expect(await refusedAs(book, { resize: [{ table: 'T', area: areaAt('Floor', 0, 0) }] })).toMatch(
      /“T” is no longer/,
    );
  });
  it('says so when a cell is being edited', async () => {
    const book = new MemoryBook({ Floor: { rows } });
    book.failNext = trouble('editing');
    expect(await refusedAs(book, column)).toMatch(/being edited.*Esc/);
  });
});

const many = 10_000;
const long = [['Width'], ...Array.from({ length: many }, (_, at) => [40 + (at % 60)])];
const wide: Changes = {
  newSheets: [{ name: 'Notes' }],
  newNames: [{ name: 'Here', area: areaAt('Notes', 0, 0) }],
  puts: Array.from({ length: 8 }, (_, at) => ({
    area: areaAt('Floor', 1, 1 + at, many, 1),
    formula: '=A2+1',
  })),
  dress: [{ area: areaAt('Floor', 1, 1, many, 8), role: 'working' }],
};

describe('a long fill', () => {
  it('of 10,000 rows goes in few requests and tells how far it is', async () => {
    const book = new MemoryBook({ Floor: { rows: long } });
    const told: number[] = [];
    await apply(book, 'Fill', wide, { progress: (done, total) => told.push(done / total) });
    // Contents, read, and one write for each 20,000 cells, with sheets, names and looks.
    expect(book.trips).toBeLessThanOrEqual(4 + (many * 8) / MOST_AT_ONCE + 2);
    expect(told.at(-1)).toBe(1);
    expect([...told].sort((a, b) => a - b)).toEqual(told);
    const [block] = await book.read([areaAt('Floor', many, 3)]);
    expect(block?.formulas).toEqual([[`=A${many + 1}+1`]]);
  });
  it('takes as many round trips for 2,000 rows as for 20', async () => {
    const trips = await Promise.all(
      [20, 2_000].map(async (count) => {
        const book = new MemoryBook({ Floor: { rows: long.slice(0, count + 1) } });
        await apply(book, 'Fill', {
          puts: wide.puts!.map((put) => ({ ...put, area: { ...put.area, rows: count } })),
        });
        return book.trips;
      }),
    );
    expect(trips[0]).toBe(trips[1]);
  });
  it.each([1, 2, 4])('stopped after %i parts leaves the workbook as it was', async (parts) => {
    const stop = new AbortController();
    const book = new MemoryBook({ Floor: { rows: long } });
    let seen = 0;
    const said = await refusedAs(book, wide, {
      signal: stop.signal,
      progress: () => {
        seen += 1;
        if (seen === parts) stop.abort();
      },
    });
    expect(said).toBe('Stopped. The workbook is as it was.');
  });
  it('that fails midway leaves the workbook as it was', async () => {
    const book = new MemoryBook({ Floor: { rows: long } });
    const said = await refusedAs(book, wide, {
      progress: (done: number) => {
        if (done >= MOST_AT_ONCE) book.failNext ??= trouble('refused', 'busy');
      },
    });
    expect(said).toMatch(/refused: busy/);
  });
  it('that loses the host says so and does not pretend', async () => {
    const book = new MemoryBook({ Floor: { rows: long } });
    const failure = await apply(book, 'Fill', wide, {
      progress: () => (book.failNext = trouble('lost')),
    }).catch((thrown: unknown) => thrown as Trouble);
    expect(failure).toMatchObject({ code: 'halfDone' });
  });
  it('stopped before it began asks the host nothing', async () => {
    const book = new MemoryBook({ Floor: { rows: long } });
    const stop = new AbortController();
    stop.abort();
    await expect(apply(book, 'Fill', wide, { signal: stop.signal })).rejects.toMatchObject({
      code: 'cancelled',
    });
    expect(book.trips).toBe(0);
  });
});

describe('rows in words', () => {
  it.each([
    [[3], 'Row 4'],
    [[3, 4, 5, 8], 'Rows 4 to 6 and 9'],
    [[1, 3, 5, 7, 9, 11], 'Rows 2, 4, 6, 8 and 2 more stretches'],
  ])('%j is %s', (rowList, text) => {
    expect(rowsInWords(rowList)).toBe(text);
  });
});
