import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import { keepWords, wordsOfBook, wordsSaid } from '../../src/book/house-words';
import { MemoryBook } from '../../src/book/memory';
import { survey } from '../../src/book/survey';
import { WANTED } from '../../src/book/wanted';
import { INCHES } from '../../src/core/exact/unit';

const TABLE = {
  rows: [
    ['Room', 'Zot', 'Drop', 'Heading', 'Bin'],
    ['1', 94, 96, 'pinch', 54],
    ['2', 60, 96, 'pinch', 54],
  ],
};
const WORDS = {
  rows: [
    ['heading', 'means'],
    ['zot', 'rod width'],
    ['Bin', ''],
  ],
};

const keys = async (book: MemoryBook, said = {}) =>
  (await survey(book, WANTED, INCHES, areaAt('Measures', 1, 0), said)).read.columns.map(
    ({ key }) => key ?? null,
  );

describe('the words of this house in a workbook', () => {
  it('say what its headings mean, without a word from the user', async () => {
    const without = await keys(new MemoryBook({ Measures: TABLE }));
    expect(without[1]).not.toBe('rodWidth');
    const book = new MemoryBook({ Measures: TABLE, 'Words of this house': WORDS });
    expect(await keys(book)).toEqual(['room', 'rodWidth', 'finishedDrop', 'heading', null]);
  });

  it('stand behind what the user says of a column', async () => {
    const book = new MemoryBook({ Measures: TABLE, 'Words of this house': WORDS });
    expect((await keys(book, { zot: 'openingWidth' }))[1]).toBe('openingWidth');
  });

  it('are written on a sheet of their own from what the user said, and read from there', async () => {
    const book = new MemoryBook({ Measures: TABLE });
    const said = (
      await survey(book, WANTED, INCHES, areaAt('Measures', 1, 0), { zot: 'rodWidth', bin: null })
    ).read;
    expect(wordsSaid(said)).toEqual([
      ['Zot', 'rod width'],
      ['Bin', 'none'],
    ]);
    expect(await keepWords(book, wordsSaid(said))).toEqual({ written: 2, otherwise: [] });
    expect(await keys(book)).toEqual(['room', 'rodWidth', 'finishedDrop', 'heading', null]);
  });

  it('go below those that stand there, and leave what is said otherwise', async () => {
    const book = new MemoryBook({ Measures: TABLE, 'Words of this house': WORDS });
    const kept = await keepWords(book, [
      ['ZOT', 'inside width'],
      ['Qux', 'overlap'],
      ['Bin', 'none'],
    ]);
    expect(kept).toEqual({ written: 1, otherwise: ['ZOT'] });
    expect(await wordsOfBook(book)).toEqual([
      ['zot', 'rod width'],
      ['Bin', 'none'],
      ['Qux', 'overlap'],
    ]);
    expect(await keepWords(book, [['qux', 'overlap']])).toEqual({ written: 0, otherwise: [] });
  });

  it('are taken up in another workbook', async () => {
    const from = new MemoryBook({ Measures: TABLE, 'Words of this house': WORDS });
    const to = new MemoryBook({ Measures: TABLE });
    await keepWords(to, await wordsOfBook(from));
    expect(await keys(to)).toEqual(['room', 'rodWidth', 'finishedDrop', 'heading', null]);
    expect(await wordsOfBook(new MemoryBook({ Measures: TABLE }))).toEqual([]);
  });
});
