import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hem } from '../../src/file/hem';
import { readWordsBook, wordsAmong } from '../../src/file/house-words';
import { listening, scratch, smallBook } from './book';

const put = (name: string, text: string): string => {
  const path = join(scratch(), name);
  writeFileSync(path, text);
  return path;
};
const WORDS = 'heading,means\nZot,rod width\nBin,\n';
const SHEET = 'Room,Zot,Drop,Hdg,Bin\n1,94,96,pinch,54\n2,60,96,pinch,54\n';

async function said(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  const io = listening();
  const code = await hem(words, io);
  return { code, out: io.said.join('\n'), err: io.complained.join('\n') };
}

describe('the words of a house, for the command', () => {
  it('read goes by the book that --words names', async () => {
    const { code, out } = await said('read', put('s.csv', SHEET), '--json', '--words', put('w.csv', WORDS));
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      columns: [{ means: 'room' }, { means: 'rod width', sure: 'sure' }, {}, {}, { means: null }],
    });
  });

  it('so does audit', async () => {
    const orders =
      'Room,Inside W,L ext,R ext,Zot,Drop,Hdg\n1,72,11,11,94,96,pinch\n2,60,10,10,90,96,pinch\n3,50,10,10,70,90,pinch\n';
    const { out } = await said('audit', put('o.csv', orders), '--words', put('w.csv', WORDS));
    expect(out).toContain('2, row 3, Zot: Zot reads 90 in; worked out from the row it is 80 in');
  });

  it('and floor, which without them knows no rod width', async () => {
    const cell = (one: string | number): string =>
      typeof one === 'number' ? `<c><v>${one}</v></c>` : `<c t="inlineStr"><is><t>${one}</t></is></c>`;
    const rows = [
      ['Room', 'Zot', 'Drop', 'Heading', 'Draw', 'Fabric width'],
      ['1', 94, 96, 'pinch', 'pair', 54],
      ['2', 60, 96, 'pinch', 'pair', 54],
    ].map((row) => `<row>${row.map(cell).join('')}</row>`);
    const path = join(scratch(), 'floor.xlsx');
    writeFileSync(path, smallBook(rows.join('')));
    const without = await said('floor', path, '--json');
    const { code, out } = await said('floor', path, '--json', '--words', put('w.csv', WORDS));
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ windows: 2 });
    expect(without.code).not.toBe(0);
  });

  it('a word for what is no column of ours, and a book without words, are said', async () => {
    await expect(readWordsBook(put('w.csv', 'heading,means\nZot,breadth\n'))).rejects.toThrow(
      'a heading means “breadth”, which is no column of ours',
    );
    await expect(readWordsBook(put('s.csv', SHEET))).rejects.toThrow('holds no words of a house');
    expect(await readWordsBook(undefined)).toBeUndefined();
  });

  it('stand in the file itself on the sheet of their name', () => {
    const rows = [
      ['heading', 'means'],
      ['Zot', 'rod width'],
    ];
    expect([...(wordsAmong([{ name: 'Words of this house', rows }], 'b.xlsx') ?? [])]).toEqual([
      ['zot', ['rodWidth']],
    ]);
    expect(wordsAmong([{ name: 'Words', rows }], 'b.xlsx')).toBeUndefined();
  });
});
