/** Past orders against the house rules: one row, or all of them. */
import { parameter } from '../src/core/findings/parameters';
import { answer, refuse, type Finding } from '../src/core/cell/answer';
import { Auditor } from '../src/core/audit/audit';
import type { OrderFinding } from '../src/core/audit/finding';
import { readPrices } from '../src/core/audit/price-list';
import { optional, required, TABLE, type CellIn } from '../src/core/cell/fields';
import { asksFor, ofOrder } from '../src/core/window/reader/given';
import { orderTable, type OrderTable } from '../src/core/window/reader/order-rows';
import type { Unit } from '../src/core/exact/unit';
import type { House } from '../src/core/house/house';
import { periodsOf } from '../src/core/audit/periods';
import { cellFunction } from './declare';
import { spill, TEXT } from './gives';
import { HEADERS, understood } from './schedule';

type Rows = readonly (readonly CellIn[])[];

const prices = optional(
  TABLE,
  'the price list: a range of fabric, price and, where prices changed, the day each began',
);

/** The orders’ columns, read with the rows shown, and what these do not tell. */
function ordersGiven(
  headers: Rows,
  rows: Rows,
  unit: Unit,
): { readonly table: OrderTable; readonly ask: Finding | undefined } {
  const found = understood(headers, rows, unit);
  return { table: orderTable(found, unit), ask: asksFor(found, rows.length, ofOrder) };
}

function audited(table: OrderTable, rows: Rows, house: House, list: Rows | undefined): OrderFinding[] {
  const auditor = new Auditor(table, { periods: periodsOf(house), prices: readPrices(list) });
  const found = auditor.header();
  for (const [at, row] of rows.entries()) found.push(...auditor.row(at + 1, row));
  found.push(...auditor.end());
  return found.sort((one, other) => one.row - other.row);
}

export const CHECK = cellFunction({
  name: 'CHECK',
  chapter: 'Whole rows and checking',
  says: 'What is wrong with one order row, worked out again from what was measured; blank where all is well.',
  takes: {
    headers: required(HEADERS, 'the row that heads the orders'),
    row: required(TABLE, 'the order row, the same columns'),
  },
  joined: { prices },
  gives: TEXT,
  examples: [
    {
      formula:
        'HEM.CHECK({"inside width","left ext","right ext","rod width","measured height","heading","finished drop"},{72,11,11,94,98,"pinch",96})',
      gives: '',
      because: 'Rod 72 + 11 + 11 = 94 and drop 98 − 2 = 96, as ordered.',
    },
    {
      formula:
        'HEM.CHECK({"inside width","left ext","right ext","rod width","measured height","heading","finished drop"},{98,11,11,94,72,"pinch",96})',
      gives:
        'Very likely: inside width and measured height are swapped. They read 98 in × 72 in; 72 in × 98 in would agree with the ordered rod width and finished drop. Swap them back.',
      because: 'With 72 wide and 98 high the rod is 94 and the drop 96, both as ordered.',
    },
    {
      formula:
        'HEM.CHECK({"rod width","drop","heading","fabric width","vertical repeat","widths","yardage"},{94,96,"pinch",54,25.25,5,15.625})',
      gives:
        'Likely: the repeat of 25 1/4 in is ignored. yardage reads 15 5/8 yd, the plain cut; with the repeat it is 17 5/8 yd. Order the difference where it is not cut yet.',
      because:
        '5 cuts of 112 in are 15 5⁄9 yd, up to 15⅝; 112 goes up to 5 repeats, 126¼ in: 17.53, up to 17⅝ yd.',
    },
  ],
  answer({ headers, row, prices: list }, _rules, house) {
    if (row.length > 1) return refuse('oneRowWanted', parameter('row'), row.length);
    const { table, ask } = ordersGiven(headers, row, house.unit);
    const found = audited(table, row, house, list).filter((one) => one.row > 0);
    return answer([...(ask === undefined ? [] : [ask]), ...found].map((one) => one.sentence).join(' '));
  },
});

/** New ones join at the end: workbooks count on these. */
const COLUMNS = [
  'row',
  'weight',
  'column',
  'found',
  'expected',
  'difference',
  'in money',
  'sentence',
  'order',
  'customer',
  'room',
];

export const AUDIT = cellFunction({
  name: 'AUDIT',
  chapter: 'Whole rows and checking',
  says: 'What is wrong with past orders, a line for each finding: every row is worked out again from what was measured.',
  takes: {
    headers: required(HEADERS, 'the row that heads the orders'),
    rows: required(TABLE, 'the order rows, the same columns'),
  },
  joined: { prices },
  gives: spill<readonly OrderFinding[]>('the findings, a row for each', COLUMNS, (found) =>
    found.length === 0
      ? [['', '', '', '', '', '', '', 'All is well.', '', '', '']]
      : found.map((one) => [
          one.row === 0 ? '' : one.row,
          one.weight,
          one.column,
          one.found,
          one.expected,
          one.difference,
          one.money,
          one.sentence,
          one.order,
          one.customer,
          one.room,
        ]),
  ),
  examples: [
    {
      formula:
        'HEM.AUDIT({"rod width","drop","heading","fabric width","widths","yardage","unit price"},{94,96,"pinch",54,5,15.625,20;94,96,"pinch",54,5,18.625,20})',
      gives: [
        [
          2,
          'check',
          'yardage',
          18.625,
          15.625,
          3,
          60,
          'yardage reads 18 5/8 yd; worked out from the row it is 15 5/8 yd, 3 yd more. Correct the order, or the figure it comes from.',
          '',
          '',
          '',
        ],
      ],
      because: '5 cuts of 112 in are 15 5⁄9 yd, up to 15⅝: 3 yd too many at 20.00 are 60.00.',
    },
    {
      formula:
        'HEM.AUDIT({"rod width","heading","fabric width","grommets","cord or wand","children"},{60,"grommet",54,17,"hand","no";60,"pinch",54,"","cord","yes"})',
      gives: [
        [
          1,
          'stop',
          'grommets',
          17,
          18,
          -1,
          '',
          'grommets reads 17, an odd count: one edge would turn into the room. Use 18.',
          '',
          '',
          '',
        ],
        [
          2,
          'stop',
          'cord or wand',
          'cord',
          '',
          '',
          '',
          'It is drawn by cord where a child can reach it: a strangulation hazard (ANSI/WCMA A100.1-2022; 16 CFR 1120.3 for stock products). Change to a wand, hand or motor; local codes and licensed practice decide.',
          '',
          '',
          '',
        ],
      ],
      because:
        'An even count turns both edges to the wall; a corded drapery where children are is a caution.',
    },
  ],
  answer({ headers, rows, prices: list }, _rules, house) {
    return answer(audited(ordersGiven(headers, rows, house.unit).table, rows, house, list));
  },
});
