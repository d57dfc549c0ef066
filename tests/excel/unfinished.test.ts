import { describe, expect, it } from 'vitest';
import { apply } from '../../src/book/apply';
import type { Changes } from '../../src/book/book';
import { newJob, USUAL_JOB } from '../../src/book/template';
import { putItBack, unfinished } from '../../src/book/unfinished';
import { at, openedIn, picture, pictureInFull, reopened, ROWS, type Opened } from './opened';

/** The pane dies when it has sent its first `writes` requests that write; Excel carries out what it was sent. */
async function dyingAfter(writes: number, opened: Opened, work: () => Promise<unknown>): Promise<void> {
  const { host } = opened;
  const answer = host.answer.bind(host);
  let left = writes;
  const dead = new Promise<void>((die) => {
    host.answer = async (request, flags) => {
      if (left === 0) return new Promise(() => undefined);
      const answered = await answer(request, flags);
      if (!request.Actions.some(({ Name }) => /^Formulas/.test(Name))) return answered;
      left -= 1;
      if (left > 0) return answered;
      die();
      return new Promise(() => undefined);
    };
    // Long after, it finds its connection lost, and nobody is there to be told.
    work().catch(() => undefined);
  });
  await dead;
  host.answer = answer;
}

const MANY = 8_000;
const LONG: Changes = {
  puts: [
    { area: at('D1:G1'), cells: [['Ordered', 'By', 'On', 'Widths']] },
    {
      area: at(`D2:F${MANY + 1}`),
      cells: Array.from({ length: MANY }, (_, row) => [row, `clerk ${row % 7}`, '1/2']),
    },
    { area: at(`G2:G${MANY + 1}`), formula: '=HEM.WIDTHS(B2,C2,54)' },
  ],
  dress: [{ area: at(`D2:G${MANY + 1}`), role: 'output', format: '0.00' }],
};

describe('a pane that dies in the middle of writing', () => {
  it('leaves a long fill half done; the next one puts back every cell, its look and its setting', async () => {
    const opened = await openedIn(ROWS);
    Object.assign(opened.sheet.open(3, 3), { value: 'own', style: { 'Fill.Color': '#00FF00' } });
    Object.assign(opened.sheet.open(4, 3), { value: 0, formula: '=LEN(A2)' });
    const before = pictureInFull(opened);
    const mayOverwrite = [at(`D2:D${MANY + 1}`)];
    await dyingAfter(1, opened, () => apply(opened.book, 'Fill 4 columns', LONG, { mayOverwrite }));
    expect(picture(opened)).not.toBe(before);
    expect([...opened.host.book.settings.keys()]).toEqual(['Hemledger.unfinished']);

    const book = await reopened(opened);
    const left = await unfinished(book);
    expect(left).toMatchObject({ says: 'Fill 4 columns', places: `D1:G${MANY + 1} of “Windows”`, stays: '' });
    expect(await putItBack(book, left!)).toBeUndefined();
    expect(pictureInFull(opened)).toBe(before);
    expect(opened.host.unknown).toEqual([]);
  });

  it('leaves alone what was changed since', async () => {
    const opened = await openedIn(ROWS);
    await dyingAfter(1, opened, () => apply(opened.book, 'Fill 4 columns', LONG));
    opened.sheet.open(8, 4).value = 'asked again';
    const book = await reopened(opened);
    const left = await unfinished(book);
    expect(left?.stays).toBe('E9 of “Windows”');
    await putItBack(book, left!);
    expect(opened.sheet.cell(8, 4)?.value).toBe('asked again');
    expect([...opened.sheet.cells.values()].filter(({ value }) => value !== '').length).toBe(10);
  });

  it('leaves half a job; the next one takes its sheets, tables and names away', async () => {
    const opened = await openedIn(ROWS, { sheets: ['Sheet1'] });
    const before = pictureInFull(opened);
    await dyingAfter(1, opened, () => newJob(opened.book, USUAL_JOB));
    expect(opened.host.book.sheets.length).toBeGreaterThan(3);
    const book = await reopened(opened);
    const left = await unfinished(book);
    expect([left?.says, left?.stays]).toEqual(['Add a new job', '']);
    await putItBack(book, left!);
    expect(pictureInFull(opened)).toBe(before);
  });

  it.each<[string, Changes, number]>([
    ['a fill of one request', { puts: [{ area: at('D2:D3'), formula: '=LEN(A2)' }] }, 1],
    ['the last request of a long fill', LONG, 2],
  ])('has nothing to tell after %s, which Excel carried out', async (_, changes, writes) => {
    const opened = await openedIn(ROWS);
    await dyingAfter(writes, opened, () => apply(opened.book, 'Fill', changes));
    expect(opened.sheet.cell(2, writes === 1 ? 3 : 6)?.formula).toMatch(/^=/);
    expect(await unfinished(await reopened(opened))).toBeUndefined();
  });
});
