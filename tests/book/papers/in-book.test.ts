import { expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import type { Book } from '../../../src/book/book';
import { MemoryBook } from '../../../src/book/memory';
import { lookForPapers, writePapers } from '../../../src/book/papers/in-book';
import { PAPER_KINDS, type PaperKind } from '../../../src/core/papers/paper';
import { PAPERS_TABLE, TODAY } from './own-table';

const bookWith = (rows = PAPERS_TABLE): MemoryBook => new MemoryBook({ Openings: { rows } });

const look = async (book: Book, only: readonly PaperKind[] = PAPER_KINDS) => {
  const found = await lookForPapers(book, { only, today: TODAY });
  if (found === undefined) throw new Error('no job');
  return found;
};
const sheetsOf = async (book: Book): Promise<string[]> =>
  (await book.contents()).sheets.map(({ name }) => name);
const write = async (book: Book, only: readonly PaperKind[], anew = true) =>
  writePapers(book, await look(book, only), anew);

it('nothing is written by looking', async () => {
  const book = bookWith();
  const before = book.picture();
  const { made, old, edited } = await look(book);
  expect(made.missing).toEqual([]);
  expect(made.papers.map(({ kind }) => kind)).toEqual(PAPER_KINDS);
  expect([old, edited]).toEqual([[], []]);
  expect(book.picture()).toBe(before);
});

it('every paper is a sheet, and the sheets to be filled in once join it', async () => {
  const book = bookWith();
  const { sheets, toFill } = await write(book, ['quote', 'work']);
  expect(sheets).toEqual(['Client quote', 'Work order']);
  expect(toFill).toEqual(['House', 'Job']);
  expect(await sheetsOf(book)).toEqual(['Openings', 'House', 'Job', 'Client quote', 'Work order']);
  expect((await write(book, ['labels'])).toFill).toEqual([]);
});

it('what they show points at the job, and at no function of ours', async () => {
  const book = bookWith();
  await write(book, ['quote']);
  const used = (await book.contents()).sheets.find(({ name }) => name === 'Client quote')!.used!;
  const [block] = await book.read([used]);
  const formulas = block!.formulas.flat().filter((one) => one !== null);
  expect(formulas).toContain('=IF(LEN(Openings!K3)=0,"",Openings!K3)');
  expect(formulas.filter((one) => /HEM/i.test(one))).toEqual([]);
});

it('made again, one nobody touched is made in its place, also where the job moved meanwhile', async () => {
  const book = bookWith();
  await write(book, ['quote']);
  // A row above the windows: every formula points a row lower, as a spreadsheet moves it.
  const used = (await book.contents()).sheets.find(({ name }) => name === 'Client quote')!.used!;
  const [block] = await book.read([used]);
  const moved = block!.formulas.map((row) =>
    row.map((one) =>
      one === null ? undefined : { formula: one.replace(/K(\d+)/g, (_, at) => `K${Number(at) + 1}`) },
    ),
  );
  await book.inOneStep('Move', (put) => put({ puts: [{ area: used, cells: moved }] }));
  expect((await look(book, ['quote'])).old.map(({ sheet }) => sheet)).toEqual(['Client quote']);
  await write(book, ['quote']);
  expect((await sheetsOf(book)).filter((name) => /quote/i.test(name))).toEqual(['Client quote']);
});

it('one that somebody edited is kept and the new one stands beside it; so is any where that is wished', async () => {
  const book = bookWith();
  await write(book, ['quote']);
  await book.inOneStep('Edit', (put) =>
    put({ puts: [{ area: areaAt('Client quote', 0, 0), cells: [['Our own words']] }] }),
  );
  expect((await look(book)).edited.map(({ sheet }) => sheet)).toEqual(['Client quote']);
  await write(book, ['quote']);
  await write(book, ['quote'], false);
  expect((await sheetsOf(book)).filter((name) => /quote/i.test(name))).toEqual([
    'Client quote',
    'Client quote 2',
    'Client quote 3',
  ]);
  const [first] = await book.read([areaAt('Client quote', 0, 0)]);
  expect(first?.values[0]?.[0]).toBe('Our own words');
});

it('a workbook without windows has no papers', async () => {
  const book = new MemoryBook({ Sheet1: { rows: [['Ledger'], ['rent', 400]] } });
  expect(await lookForPapers(book, { only: PAPER_KINDS, today: TODAY })).toBeUndefined();
});

it('papers are counted as they are written, and those written stand where it is stopped', async () => {
  const book = bookWith();
  const told: string[] = [];
  const stop = new AbortController();
  const written = writePapers(book, await look(book), true, {
    signal: stop.signal,
    progress: (done, total) => {
      told.push(`${done} of ${total}`);
      if (done === 2) stop.abort();
    },
  });
  await expect(written).rejects.toThrow('Stopped');
  expect(told).toEqual(['0 of 7', '1 of 7', '2 of 7']);
  expect(await sheetsOf(book)).toEqual(['Openings', 'House', 'Job', 'Client quote', 'Fabric order']);
});

it('of two sheets of priced windows one is the job, and the other stands beside it as option B', async () => {
  const velvet = PAPERS_TABLE.map((row) =>
    row.map((cell) =>
      cell === 'Heron linen' ? 'Moss velvet' : cell === 1240.5 ? 1501 : cell === 2050.5 ? 2311 : cell,
    ),
  );
  const book = new MemoryBook({ Openings: { rows: PAPERS_TABLE }, Velvet: { rows: velvet } });
  const alone = await look(book, ['quote']);
  expect([alone.job.sheet, alone.job.others, alone.job.beside]).toEqual(['Openings', ['Velvet'], undefined]);
  const chosen = { only: ['quote'], today: TODAY } as const;
  const both = (await lookForPapers(book, { ...chosen, beside: 'Velvet' }))!;
  expect(both.made.missing).toEqual([]);
  await writePapers(book, both, true);
  const [block] = await book.read([
    (await book.contents()).sheets.find(({ name }) => name === 'Client quote')!.used!,
  ]);
  const cells = [...block!.values.flat(), ...block!.formulas.flat()];
  expect(cells).toEqual(expect.arrayContaining(['Option A', 'Option B']));
  expect(cells.filter((one) => typeof one === 'string').join('\n')).toContain('Moss velvet');
  // Each price follows its own sheet.
  expect(cells).toContain('=IF(LEN(Openings!K3)=0,"",Openings!K3)');
  expect(cells).toContain('=IF(LEN(Velvet!K3)=0,"",Velvet!K3)');
  expect((await lookForPapers(book, { ...chosen, sheet: 'Velvet' }))!.job.sheet).toBe('Velvet');
});

it.each([null, 0])('a remark is told, and an empty one is not where it is %s', async (empty) => {
  const rows = PAPERS_TABLE.map((row, at) => [...row, at === 1 ? 'Remarks' : at === 2 ? 'mind the step' : at === 3 ? empty : null]); // prettier-ignore
  const { job } = await look(new MemoryBook({ Openings: { rows } }), ['quote']);
  expect(job.windows.map(({ remarks }) => remarks?.value)).toEqual(['mind the step', undefined]);
});
