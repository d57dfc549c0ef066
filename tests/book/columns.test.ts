import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { areaAt, letters } from '../../src/book/address';
import { readColumns, type ColumnsRead, type Corrections } from '../../src/book/columns';
import { MemoryBook, type SheetGiven } from '../../src/book/memory';
import { CENTIMETRES, INCHES } from '../../src/core/exact/unit';
import { missing, WANTED } from '../../src/book/wanted';

interface Case {
  readonly name: string;
  readonly rows: NonNullable<SheetGiven['rows']>;
  readonly unit?: 'centimetres';
  readonly merged?: NonNullable<SheetGiven['merged']>;
  /** The sheet row as people count it. */
  readonly header: number;
  readonly headerRows?: number;
  readonly columns: Readonly<Record<string, string>>;
  /** One letter a row: w window, b blank, t total, s section, h headings again, n note, o other goods. */
  readonly lines: string;
  /** Parts of sentences that must be there; an empty list: no doubt at all. */
  readonly doubts?: readonly string[];
}

async function read(
  given: Pick<Case, 'rows' | 'merged' | 'unit'>,
  said?: Corrections,
): Promise<ColumnsRead | undefined> {
  const book = new MemoryBook({ Floor: { rows: given.rows, ...(given.merged && { merged: given.merged }) } });
  const columns = Math.max(...given.rows.map((row) => row.length));
  const [block] = await book.read([areaAt('Floor', 0, 0, given.rows.length, columns)]);
  return readColumns(block!, WANTED, given.unit === 'centimetres' ? CENTIMETRES : INCHES, said);
}

const taken = (columnsRead: ColumnsRead): Record<string, string> =>
  Object.fromEntries(
    columnsRead.columns.flatMap((one) =>
      one.key === undefined ? [] : [[letters(one.column), one.keys.join('+')]],
    ),
  );

const folder = new URL('headings/', import.meta.url);
const cases = readdirSync(folder).map(
  (file): Case => JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Case,
);

describe('headings as people write them', () => {
  it.each(cases.map((one) => [one.name, one] as const))('%s', async (_name, one) => {
    const found = await read(one);
    expect(found).toBeDefined();
    expect(taken(found!)).toEqual(one.columns);
    expect(found!.header.row + 1).toBe(one.header);
    expect(found!.header.rows).toBe(one.headerRows ?? 1);
    expect(found!.lines.map(({ kind }) => (kind === 'repeat header' ? 'h' : kind[0])).join('')).toBe(
      one.lines,
    );
    const doubts = found!.columns.flatMap((column) => column.doubts);
    for (const part of one.doubts ?? []) expect(doubts.join('\n')).toContain(part);
    if (one.doubts?.length === 0) expect(doubts).toEqual([]);
  });
});

describe('what the user says of a column', () => {
  const rows = [
    ['Item', 'Width', 'Length', 'Width', 'Style'],
    ['1', 72, 96, 54, 'pinch'],
    ['2', 48, 96, 54, 'pinch'],
  ];
  it('of words is no choice in a table of thousands either', async () => {
    const rows = Array.from({ length: 3000 }, (_, at) => ['Hall', 60, 98, `see sheet ${at}`, 'pinch']);
    const read3000 = await read({ rows: [['Room', 'Inside width', 'Height', 'Zx', 'Qv'], ...rows] });
    // “pinch” a thousand times tells its column; other words tell none.
    expect(taken(read3000!)).toEqual({ A: 'room', B: 'openingWidth', C: 'measured', E: 'heading' });
  });

  it('comes before the headings', async () => {
    const found = await read({ rows }, { 'width #2': 'openingWidth', width: null });
    expect(taken(found!)).toEqual({ C: 'finishedDrop', D: 'openingWidth', E: 'heading' });
    expect(found!.columns[3]).toMatchObject({ corrected: true, sure: 'sure' });
  });
  it('can leave a required column to nobody, and that is said', async () => {
    const found = await read({ rows }, { width: null, 'width #2': null });
    expect(missing(found!)).toEqual(['inside width or rod width', 'fabric width']);
  });
});

describe('a header', () => {
  it('is not found where no row names two columns', async () => {
    expect(
      await read({
        rows: [
          ['Paint', 'Price'],
          ['blue', 4],
        ],
      }),
    ).toBeUndefined();
    expect(await read({ rows: [[null]] })).toBeUndefined();
  });
  it('is the row pointed at, where two would do', async () => {
    const rows = [
      ['Room', 'Width', 'Drop', 'Style'],
      ['1', 60, 84, 'pinch'],
      ['Room', 'Width', null, null],
      ['2', 50, 84, 'pinch'],
    ];
    const book = new MemoryBook({ Floor: { rows } });
    const [block] = await book.read([areaAt('Floor', 0, 0, 4, 4)]);
    expect(readColumns(block!, WANTED, INCHES, {}, 2)?.header.row).toBe(2);
    expect(readColumns(block!, WANTED, INCHES)?.header.row).toBe(0);
  });
  it('of a table is the table’s own, and its totals row is no window', async () => {
    const rows = [
      ['Room', 'Width', 'Drop', 'Style'],
      ['1', 60, 84, 'pinch'],
      ['', 60, null, null],
    ];
    const book = new MemoryBook({ Floor: { rows } }).withTable('Openings', areaAt('Floor', 0, 0, 3, 4), true);
    const [block] = await book.read([areaAt('Floor', 0, 0, 3, 4)]);
    expect(readColumns(block!, WANTED, INCHES)?.lines).toMatchObject([{ row: 1, kind: 'window' }]);
  });
});
