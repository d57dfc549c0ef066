/** The job the trial workbook opens with: an inn of our own invention, and an older list as a house may keep one. */
import { areaAt, type Area } from '../book/address';
import type { Book, CellPut, Put, TableSeen } from '../book/book';
import { readRules } from '../book/rule-lines';
import { newJob } from '../book/template';

const FABRICS: readonly Readonly<Record<string, CellPut>>[] = [
  {
    fabric: 'Heron linen',
    supplier: 'Quill & Sedge',
    'fabric width': 54,
    'vertical repeat': 25.25,
    'cloth weight': 9.5,
    price: 38,
    'whole roll': 60,
    'price a yd in rolls': 35,
  },
  { fabric: 'Tide sheer', supplier: 'Quill & Sedge', 'fabric width': 118, 'cloth weight': 3, price: 21.5 },
  {
    fabric: 'Moss velvet',
    supplier: 'Fen Row Mill',
    'fabric width': 54,
    'may be turned': 'no',
    'cloth weight': 16,
    price: 64,
  },
];

/** Lining and blackout lining, as the sheet of fabrics lists what lies behind the face. */
const LININGS: readonly Readonly<Record<string, CellPut>>[] = [
  { price: 9.5, 'cloth weight': 5, supplier: 'Carding Row Linings', colour: 'ivory' },
  { price: 12.5, 'cloth weight': 8.5, supplier: 'Carding Row Linings', colour: 'white' },
];

const WINDOWS: readonly Readonly<Record<string, CellPut>>[] = [
  {
    room: 'Library, bay',
    quantity: 3,
    'inside width': '84 1/2',
    'measured height': 98,
    heading: 'pinch',
    draw: 'pair',
    fabric: 'Moss velvet',
    lining: 'lined',
  },
  {
    room: 'Rooms 11 to 16',
    quantity: 6,
    'inside width': 72,
    'measured height': 98,
    heading: 'pinch',
    draw: 'pair',
    fabric: 'Heron linen',
    lining: 'blackout',
  },
  {
    room: 'Breakfast room',
    quantity: 2,
    'inside width': '110',
    'measured height': "7' 11",
    heading: 'grommet',
    draw: 'pair',
    fabric: 'Heron linen',
  },
  {
    room: 'Stair landing',
    quantity: 1,
    'inside width': 46,
    'measured height': 121.5,
    'measured to': 'track',
    heading: 'wave',
    draw: 'one-way left',
    fabric: 'Tide sheer',
  },
];

const LIST: readonly (readonly CellPut[])[] = [
  ['Wharf Lane Inn, ground floor', null, null, null, null, null, null],
  ['as measured in May; heights to the rod still to be hung', null, null, null, null, null, null],
  [null, null, null, null, null, null, null],
  ['Rm', 'Qty', 'W (in)', 'Ht', 'Style', 'Fab W', 'Rep'],
  ['Porch room', 2, '58 3/4', 92, 'pinch pleat', 54, null],
  ['Tap room', 4, 71.5, 92, 'pinch pleat', 54, 25.25],
  ['Snug', 1, 44, 90.5, 'rod pocket', 54, null],
  ['Long room', 5, 108, 96, 'grommet', 54, 12.5],
  ['Office', 1, 36, 84, 'tab top', 48, null],
];
export const LIST_SHEET = 'Ground floor';

/** Making charges a width: the house's own figures, so the demo must have some. */
const CHARGES: Readonly<Record<string, number>> = {
  'labor pinch': 42,
  'labor grommet': 36,
  'labor wave': 46,
  'labor lined': 9,
  'labor blackout': 11,
};

/** What things cost the house, by the names of the sheet of prices. */
const PRICES: Readonly<Record<string, number>> = {
  Price_rod: 18,
  Price_ring: 1.4,
  Price_bracket: 11,
  Price_finials: 36,
  Price_installation: 65,
  Price_freight: 120,
  Sell_rate: 0.5,
  Tax_goods: 0.0725,
};

const row = (table: TableSeen, at: number, values: Readonly<Record<string, CellPut>>): Put[] =>
  Object.entries(values).flatMap(([heading, value]): Put[] => {
    const column = table.columns.findIndex((one) => one.startsWith(heading));
    if (column < 0) throw new Error(`The demo finds no column “${heading}” in ${table.name}.`);
    const area = areaAt(table.area.sheet, table.area.row + 1 + at, table.area.column + column);
    return [{ area, cells: [[value]] }];
  });

/** Where the demo begins: a cell worth explaining. */
export async function openDemo(book: Book): Promise<Area> {
  await newJob(book, { unit: 'inches', paper: 'letter', windows: 12 });
  const { tables, names } = await book.contents();
  const named = (name: string): TableSeen => {
    const found = tables.find((one) => one.name === name);
    if (found === undefined) throw new Error(`The demo finds no table “${name}”.`);
    return found;
  };
  const [fabrics, linings, windows] = [named('Fabrics'), named('Linings'), named('Windows')];
  const rules = await readRules(book);
  const charges = Object.entries(CHARGES).flatMap(([name, price]): Put[] => {
    const area = rules.lines.find(({ line }) => line.name === name)?.at;
    if (area === undefined) throw new Error(`The demo finds no house rule “${name}”.`);
    return [{ area, cells: [[price]] }];
  });
  const cells = Object.entries({ ...PRICES, Job_client: 'Wharf Lane Inn' }).map(([name, value]): Put => {
    const area = names.find((one) => one.name === name)?.area;
    if (area === undefined) throw new Error(`The demo finds no cell named “${name}”.`);
    return { area, cells: [[value]] };
  });
  await book.inOneStep('Open the demo', async (write) => {
    await write({
      puts: [
        ...charges,
        ...FABRICS.flatMap((one, at) => row(fabrics, at, one)),
        ...LININGS.flatMap((one, at) => row(linings, at, one)),
        ...WINDOWS.flatMap((one, at) => row(windows, at, one)),
        ...cells,
        { area: areaAt(LIST_SHEET, 0, 0, LIST.length, 7), cells: LIST },
      ],
      dress: [{ area: areaAt(LIST_SHEET, 0, 0), role: 'title' }],
    });
  });
  const yardage = windows.columns.findIndex((one) => one.startsWith('yardage'));
  return areaAt(windows.area.sheet, windows.area.row + 1, windows.area.column + yardage);
}
