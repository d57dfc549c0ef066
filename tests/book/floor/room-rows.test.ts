import { describe, expect, it } from 'vitest';
import { areaAt, within, type Area } from '../../../src/book/address';
import type { Book, CellValue } from '../../../src/book/book';
import type { ColumnsRead } from '../../../src/book/columns';
import { MemoryBook, type SheetGiven } from '../../../src/book/memory';
import { matrixRows, roomRows, setForRooms, writeRooms } from '../../../src/book/floor/room-rows';
import { survey } from '../../../src/book/survey';
import { newJob, USUAL_JOB } from '../../../src/book/template';
import { WANTED } from '../../../src/book/wanted';
import { INCHES } from '../../../src/core/exact/unit';
import { openedIn } from '../../excel/opened';
import { engineBook } from '../engine-book';

const LIST: SheetGiven['rows'] = [
  ['Room', 'Width', 'Height', 'Style', 'Fabric W', 'Qty', 'Twice'],
  ['King', 72, 98, 'pinch', 54, 1, '=B2*2'],
  ['Suite', 110, 98, 'pinch', 54, 2, '=B3*2'],
];
const TABLE = areaAt('Floor', 0, 0, 3, 7);

const read = async (book: Book, at: Area = areaAt('Floor', 1, 0)): Promise<ColumnsRead> =>
  (await survey(book, WANTED, INCHES, at)).read;
async function cells(book: Book, at: Area): Promise<readonly (readonly CellValue[])[]> {
  const [block] = await book.read([at]);
  return block!.values;
}
async function formulas(book: Book, at: Area) {
  const [block] = await book.read([at]);
  return block!.formulas.map(([formula]) => formula);
}

const covers = (area: Area, row: number, column: number): boolean =>
  area.sheet === 'Windows' && within(areaAt('Windows', row, column), area);

/** What stands where; the order in which names are listed is of no account. */
function placesOf(picture: string) {
  const { sheets, tables, names } = JSON.parse(picture) as Record<string, { name: string }[]>;
  return [sheets, tables, names?.sort((a, b) => a.name.localeCompare(b.name))];
}

describe('rows for many rooms', () => {
  it('stand below the last window, like the row selected, their formulas moved along', async () => {
    const book = new MemoryBook({ Floor: { rows: LIST } }).withTable('Rooms', TABLE);
    const rows = await roomRows(book, await read(book), 1, '401-407 odd not 405');
    expect(rows.says).toBe(
      '3 rows are added in rows 4 to 6. The table grows to A1:G6. Row 2 stays as it is.',
    );
    const before = book.picture();
    await writeRooms(book, rows);
    expect(await cells(book, areaAt('Floor', 3, 0, 3, 6))).toEqual([
      [401, 72, 98, 'pinch', 54, 1],
      [403, 72, 98, 'pinch', 54, 1],
      [407, 72, 98, 'pinch', 54, 1],
    ]);
    expect(await formulas(book, areaAt('Floor', 3, 6, 3, 1))).toEqual(['=B4*2', '=B5*2', '=B6*2']);
    expect((await book.contents()).tables[0]?.area.rows).toBe(6);
    expect(book.undoable).toHaveLength(1);
    book.undo();
    expect(book.picture()).toBe(before);
  });

  it('begin with the row selected where it has no room yet', async () => {
    const book = new MemoryBook({ Floor: { rows: [LIST[0]!, [null, ...LIST[1]!.slice(1)]] } });
    await writeRooms(book, await roomRows(book, await read(book), 1, '012-013'));
    expect(await cells(book, areaAt('Floor', 1, 0, 2, 1))).toEqual([['012'], ['013']]);
  });

  it.each([
    ['a pattern that cannot be read', 1, '40x-9', 'rooms reads “40x-9”.'],
    ['a row without a window', 0, '401', 'The selected cell is in no row of windows of “Floor”.'],
  ])('%s', async (_, row, pattern, sentence) => {
    const book = new MemoryBook({ Floor: { rows: LIST } });
    await expect(roomRows(book, await read(book), row, pattern)).rejects.toThrow(sentence);
  });

  it('are refused where a room stands already, or anything stands below, and nothing is written', async () => {
    const twice = new MemoryBook({ Floor: { rows: [...LIST, [402, 60, 98, 'pinch', 54, 1, null]] } });
    await expect(roomRows(twice, await read(twice), 1, '401-403')).rejects.toThrow(
      'Room 402 stands in row 4 already',
    );
    const below = new MemoryBook({
      Floor: { rows: [...LIST, [], [null, null, 'Total', 8, null, null, null]] },
    });
    await expect(roomRows(below, await read(below), 1, '401-403')).rejects.toThrow(
      'C5 of “Floor” already holds something where the new rows would stand',
    );
  });

  it('of our own sheet fill its ready rows, then the table and its named ranges grow', async () => {
    const book = engineBook();
    await newJob(book, { ...USUAL_JOB, windows: 3 });
    const { tables } = await book.contents();
    const table = tables.find(({ name }) => name === 'Windows')!.area;
    const given: Record<string, CellValue> = {
      room: 'King', quantity: 1, 'inside width (in)': 72, 'measured height (in)': 98, heading: 'pinch',
    }; // prettier-ignore
    const headings = tables.find(({ name }) => name === 'Windows')!.columns;
    await book.inOneStep('Window', (write) =>
      write({
        puts: Object.entries(given).map(([heading, value]) => ({
          area: areaAt('Windows', table.row + 1, table.column + headings.indexOf(heading)),
          cells: [[value]],
        })),
      }),
    );
    const rows = await roomRows(
      book,
      await read(book, areaAt('Windows', table.row + 1, 0)),
      table.row + 1,
      '401-404',
    );
    await book.recalculate();
    const before = book.picture();
    const stop = new AbortController();
    const stopped = writeRooms(book, rows, { signal: stop.signal, progress: () => { stop.abort(); } }); // prettier-ignore
    await expect(stopped).rejects.toThrow('Stopped. The workbook is as it was.');
    await book.recalculate();
    expect(placesOf(book.picture())).toEqual(placesOf(before));
    await writeRooms(book, rows);
    const now = await book.contents();
    expect(now.tables.find(({ name }) => name === 'Windows')!.area.rows).toBe(1 + 5);
    expect(now.names.find(({ name }) => name === 'Window_rods')!.area?.rows).toBe(5);
    const heading = headings.indexOf('heading');
    const like = (row: number) => [
      book.looks.dress.findLast(({ area, role }) => role !== undefined && covers(area, row, heading))?.role,
      book.looks.validations.find(({ area }) => covers(area, row, heading))?.words,
    ];
    expect(like(table.row + 5)).toEqual(like(table.row + 1));
    expect(like(table.row + 5)[0]).toBe('input');
    const rod = headings.indexOf('rod width (in)');
    expect(await cells(book, areaAt('Windows', table.row + 1, rod, 5, 1))).toEqual(
      Array.from({ length: 5 }, () => [94]),
    );
  });
});

it('rooms in Excel: the table and a named range over its column grow with them, in one step', async () => {
  const rows = LIST.map((row) =>
    row.map((cell) => (typeof cell === 'string' && /^=/.test(cell) ? null : cell)),
  );
  const { book, host } = await openedIn(rows);
  const table = { ...areaAt('Windows', 0, 0, 3, 7) };
  await book.inOneStep('Set up', (write) =>
    write({
      puts: [{ area: areaAt('Windows', 1, 6, 2, 1), formula: '=B2*2' }],
      newTables: [{ name: 'Rooms', area: table }],
      newNames: [{ name: 'Room_widths', area: areaAt('Windows', 1, 1, 2, 1) }],
    }),
  );
  await writeRooms(book, await roomRows(book, await read(book, areaAt('Windows', 1, 0)), 1, '401-403'));
  const { tables, names } = await book.contents();
  expect([tables[0]?.area.rows, names[0]?.area?.rows]).toEqual([6, 5]);
  expect(await formulas(book, areaAt('Windows', 3, 6, 3, 1))).toEqual(['=B4*2', '=B5*2', '=B6*2']);
  expect(host.unknown).toEqual([]);
});

describe('a matrix of types and floors', () => {
  const matrix: SheetGiven['rows'] = [
    [null, 'floor 2', 3],
    ['King', 4, 5],
    ['suite', null, 1],
  ];

  it('becomes rows of windows with their quantities, the types’ own rows among them', async () => {
    const book = new MemoryBook({ Floor: { rows: LIST }, Rooms: { rows: matrix } });
    await writeRooms(book, await matrixRows(book, await read(book), areaAt('Rooms', 0, 0, 3, 3)));
    const all = await cells(book, areaAt('Floor', 1, 0, 3, 6));
    expect(all.map((row) => [row[0], row[1], row[5]])).toEqual([
      ['King, floor 2', 72, 4],
      ['suite, 3', 110, 2],
      ['King, 3', 72, 5],
    ]);
    expect(book.undoable).toHaveLength(1);
  });

  it.each([
    [
      'a type nobody entered',
      ['Twin', 1, 1],
      'A2 names the type “Twin”, and no row of “Floor” has it as its room.',
    ],
    ['a number that is none', ['King', 'some', 1], 'B2 reads “some”. Write how many rooms'],
    ['a part of a room', ['King', 1.5, 1], 'B2 reads “1.5”.'],
  ])('refuses %s', async (_, row, sentence) => {
    const book = new MemoryBook({ Floor: { rows: LIST }, Rooms: { rows: [matrix[0]!, row] } });
    await expect(matrixRows(book, await read(book), areaAt('Rooms', 0, 0, 2, 3))).rejects.toThrow(sentence);
  });
});

describe('one column for many rooms', () => {
  const rooms: SheetGiven['rows'] = [
    LIST[0]!,
    ...[401, 402, 403, 404].map((room, at) => [room, 72, 98, 'pinch', 54, 1, `=B${at + 2}*2`]),
  ];
  const set = async (book: MemoryBook, heading: string, pattern: string, value: string) => {
    const columnsRead = await read(book);
    const column = columnsRead.columns.find((one) => one.heading === heading)!;
    return setForRooms(book, columnsRead, { pattern, column, value }, WANTED, INCHES);
  };

  it('is set where the room is in the pattern, and nowhere else', async () => {
    const book = new MemoryBook({ Floor: { rows: rooms } });
    expect(await set(book, 'Style', '401-404 even', 'grommet')).toBe(2);
    expect((await cells(book, areaAt('Floor', 1, 3, 4, 1))).flat()).toEqual([
      'pinch', 'grommet', 'pinch', 'grommet',
    ]); // prettier-ignore
    await set(book, 'Width', '403', '80');
    expect((await cells(book, areaAt('Floor', 3, 1)))[0]).toEqual([80]);
  });

  it.each([
    ['a room that is not there', 'Style', '404-406', 'grommet', '405, 406 of these rooms are not in “Floor”'],
    ['a value that means nothing', 'Style', '401', 'blinds', 'Style reads “blinds”'],
    ['a column of formulas', 'Twice', '401', '3', 'G2 holds a formula'],
  ])('%s is a sentence', async (_, heading, pattern, value, sentence) => {
    const book = new MemoryBook({ Floor: { rows: rooms } });
    const before = book.picture();
    await expect(set(book, heading, pattern, value)).rejects.toThrow(sentence);
    expect(book.picture()).toBe(before);
  });
});
