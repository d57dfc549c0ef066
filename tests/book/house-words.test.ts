import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
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
});
