import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { apply } from '../../src/book/apply';
import type { CellPut, Changes } from '../../src/book/book';
import { JOURNAL } from '../../src/book/journal';
import { MemoryBook } from '../../src/book/memory';
import { jobChanges, USUAL_JOB } from '../../src/book/template';
import { trouble } from '../../src/book/trouble';
import { keepAsItIs, putItBack, STILL_WRITING, unfinished } from '../../src/book/unfinished';

const ROWS = 10_000;
const long = (): MemoryBook =>
  new MemoryBook({
    Floor: {
      rows: [
        ['Width', 'Old'],
        ...Array.from({ length: ROWS }, (_, at) => [40 + (at % 60), at % 3 === 0 ? 'own' : null]),
      ],
    },
  });
const area = (column: number) => areaAt('Floor', 1, column, ROWS, 1);
/** Four formula columns, one over what stood there. */
const FILL: Changes = {
  puts: [
    ...['Rod', 'Drop', 'Widths'].map((heading, at) => ({
      area: areaAt('Floor', 0, 2 + at),
      cells: [[heading]],
    })),
    ...[1, 2, 3, 4].map((column) => ({ area: area(column), formula: '=$A2+1' })),
  ],
  dress: [2, 3, 4].map((column) => ({ area: area(column), role: 'output' })),
};
const OVER = { mayOverwrite: [area(1)] };

/** The pane is closed after so many requests that write: the host answers no more. */
async function closedAfter(
  requests: number,
  book: MemoryBook,
  changes: Changes,
  watch = OVER,
): Promise<void> {
  const step = book.inOneStep.bind(book);
  let left = requests;
  const closing = new Promise<void>((closed) => {
    book.inOneStep = (says, work) =>
      step(says, (write) =>
        work((part) => {
          if (left === 0) {
            closed();
            return new Promise(() => undefined);
          }
          left -= 1;
          return write(part);
        }),
      );
    void apply(book, 'Fill 4 columns', changes, watch).then(closed);
  });
  await closing;
  book.inOneStep = step;
}
const put = (book: MemoryBook, row: number, column: number, cell: CellPut): Promise<void> =>
  book.inOneStep('By hand', (write) =>
    write({ puts: [{ area: areaAt('Floor', row, column), cells: [[cell]] }] }),
  );

describe('a change whose pane was closed in the middle', () => {
  it.each([1, 2])('after %i requests is told on opening, and put back to the last cell', async (requests) => {
    const book = long();
    const before = book.picture();
    await closedAfter(requests, book, FILL);
    expect(book.picture()).not.toBe(before);
    const left = await unfinished(book);
    expect(left).toMatchObject({ says: 'Fill 4 columns', places: 'B1:E10001 of “Floor”', stays: '' });
    expect(await putItBack(book, left!)).toBeUndefined();
    expect(book.picture()).toBe(before);
    expect(await unfinished(book)).toBeUndefined();
    expect(await book.recall(JOURNAL)).toBeUndefined();
  });

  it('that came to its end leaves nothing to tell', async () => {
    const book = long();
    await apply(book, 'Fill 4 columns', FILL, OVER);
    expect(await book.recall(JOURNAL)).toBeUndefined();
  });

  it('is not put back over what was changed since, and the user is told so first', async () => {
    const book = long();
    await closedAfter(1, book, FILL);
    const told = await unfinished(book);
    await put(book, 6, 2, 'measured again');
    await put(book, 5, 3, null);
    // The button was pressed before the user was told of it: the user is told now, and nothing is written.
    const middle = book.picture();
    const now = await putItBack(book, told!);
    expect(now?.stays).toBe('C7 of “Floor”');
    expect(book.picture()).toBe(middle);
    expect(await putItBack(book, now!)).toBeUndefined();
    const [block] = await book.read([areaAt('Floor', 0, 1, ROWS + 1, 4)]);
    const standing = block!.values.flatMap((row, i) =>
      row.flatMap((one, j) => (one === null || j === 0 ? [] : [[i, j, one]])),
    );
    expect(standing).toEqual([[6, 1, 'measured again']]);
    expect(block!.values.slice(1).map(([old]) => old)).toEqual(
      Array.from({ length: ROWS }, (_, at) => (at % 3 === 0 ? 'own' : null)),
    );
  });

  it('of a colleague is not offered while it may still be written, and later it is', async () => {
    const book = long();
    await closedAfter(1, book, FILL);
    const half = book.picture();
    Object.assign(book, { owner: 'a colleague' });
    const told = await unfinished(book);
    expect(told).toMatchObject({ says: 'Fill 4 columns', underWay: true });
    expect(await putItBack(book, told!)).toMatchObject({ underWay: true });
    expect(book.picture()).toBe(half);
    const later = await unfinished(book, Date.now() + STILL_WRITING + 1_000);
    expect(later?.underWay).toBe(false);
  });

  it('is kept as it is where the user wants that', async () => {
    const book = long();
    await closedAfter(1, book, FILL);
    const half = book.picture();
    await keepAsItIs(book);
    expect([await unfinished(book), book.picture()]).toEqual([undefined, half]);
  });

  it('is forgotten where it was undone by hand meanwhile', async () => {
    const book = new MemoryBook({ Floor: { rows: [['Width'], [72]] } });
    book.fills = 1;
    const two = [1, 2].map((column) => ({ area: areaAt('Floor', 1, column), formula: '=A2' }));
    await closedAfter(1, book, { puts: two });
    await put(book, 1, 1, null);
    expect(await unfinished(book)).toBeUndefined();
    expect(await book.recall(JOURNAL)).toBeUndefined();
  });

  it('stands in the way of the next long change, never of a short one', async () => {
    const book = long();
    await closedAfter(1, book, FILL);
    const next = { puts: [6, 7, 8, 9].map((column) => ({ area: area(column), formula: '=$A2' })) };
    await expect(apply(book, 'Again', next)).rejects.toMatchObject({ code: 'unfinished' });
    await apply(book, 'Short', { puts: [{ area: areaAt('Floor', 0, 12), cells: [['note']] }] });
    expect(await unfinished(book)).toMatchObject({ says: 'Fill 4 columns' });
  });

  it('knows its formulas again though the host spells them otherwise', async () => {
    const book = new MemoryBook({ Floor: { rows: [['Width'], [72], [60], [80]] } });
    book.fills = 2;
    const before = book.picture();
    await closedAfter(1, book, {
      puts: [1, 2].map((column) => ({
        area: areaAt('Floor', 1, column, 3),
        formula: '=Openings[[#This Row],[W]] + A2',
      })),
    });
    for (const row of [1, 2]) await put(book, row, 1, { formula: `=[@W]+A${row + 1}` });
    const left = await unfinished(book);
    expect(left?.stays).toBe('');
    await putItBack(book, left!);
    expect(book.picture()).toBe(before);
  });

  it('grew a table and moved a name: both go back, but not where they were moved since', async () => {
    for (const moved of [false, true]) {
      const rows = [['Width', null], [72, null], [60, null]]; // prettier-ignore
      const book = new MemoryBook({ Floor: { rows } }).withTable('Openings', areaAt('Floor', 0, 0, 3, 1));
      book.fills = 2;
      await book.inOneStep('Name', (write) =>
        write({ newNames: [{ name: 'Widths', area: areaAt('Floor', 1, 0, 2) }] }),
      );
      const before = book.picture();
      const grown = areaAt('Floor', 0, 0, 3, 3);
      await closedAfter(1, book, {
        resize: [{ table: 'Openings', area: grown }],
        movedNames: [{ name: 'Widths', area: areaAt('Floor', 1, 0, 3) }],
        puts: [1, 2].map((column) => ({ area: areaAt('Floor', 1, column, 2), formula: '=$A2' })),
      });
      expect((await book.contents()).tables[0]?.area).toEqual(grown);
      if (moved) await book.inOneStep('By hand', (write) => write({ resize: [{ table: 'Openings', area: areaAt('Floor', 0, 0, 3, 5) }] })); // prettier-ignore
      const left = await unfinished(book);
      expect(left?.stays).toBe(moved ? 'the size of “Openings”' : '');
      await putItBack(book, left!);
      if (moved) expect((await book.contents()).tables[0]?.area.columns).toBe(5);
      else expect(book.picture()).toBe(before);
    }
  });
});

describe('a new job whose pane was closed in the middle', () => {
  async function half(): Promise<{ book: MemoryBook; before: string }> {
    const book = new MemoryBook({ Sheet1: { rows: [['own']] } });
    const before = book.picture();
    await closedAfter(1, book, jobChanges(USUAL_JOB, await book.contents()).changes);
    return { book, before };
  }

  it('is taken away, sheets and names and all', async () => {
    const { book, before } = await half();
    const left = await unfinished(book);
    expect(left?.stays).toBe('');
    expect(left?.places).toMatch(/^the new sheets “Job”/);
    await putItBack(book, left!);
    expect(book.picture()).toBe(before);
  });

  it.each([
    ['in a free cell', 40, 20],
    ['over a word of the template', 0, 0],
  ])('keeps a sheet that was written on since, %s, and what is named there', async (_, row, column) => {
    const { book } = await half();
    await book.inOneStep('By hand', (write) =>
      write({ puts: [{ area: areaAt('Job', row, column), cells: [['Wharf Lane Inn']] }] }),
    );
    const left = await unfinished(book);
    expect(left?.stays).toBe('the sheet “Job”');
    await putItBack(book, left!);
    const { sheets, names, tables } = await book.contents();
    expect(sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Job']);
    expect(names.map(({ area: at }) => at?.sheet)).toEqual(names.map(() => 'Job'));
    expect(tables.filter(({ area: at }) => at.sheet !== 'Job')).toEqual([]);
  });

  it('that breaks off with its connection is found as well', async () => {
    const book = new MemoryBook({ Sheet1: {} });
    const { changes } = jobChanges(USUAL_JOB, await book.contents());
    const progress = (): void => void (book.failNext = trouble('lost'));
    await expect(apply(book, 'Add a new job', changes, { progress })).rejects.toMatchObject({
      code: 'halfDone',
    });
    expect(await unfinished(book)).toMatchObject({ says: 'Add a new job' });
  });
});

it('more than the workbook can keep is refused before a cell is touched', async () => {
  const text = 'x'.repeat(60);
  const book = new MemoryBook({ Floor: { rows: Array.from({ length: ROWS }, () => [text, text, text]) } });
  const before = book.picture();
  const cells = Array.from({ length: ROWS }, () => ['new', 'new', 'new']);
  const all = areaAt('Floor', 0, 0, ROWS, 3);
  const change = { puts: [{ area: all, cells }] };
  await expect(apply(book, 'Write over', change, { mayOverwrite: [all] })).rejects.toThrow(
    'A1:C10000 is more than can be written safely in one go, so nothing was written.',
  );
  expect([book.picture(), await book.recall(JOURNAL)]).toEqual([before, undefined]);
});
