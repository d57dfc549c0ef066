import { expect, it } from 'vitest';
import { Auditor, marksOf } from '../../../src/core/audit/audit';
import { OneByOne } from '../../../src/core/audit/one-by-one';
import { INCHES } from '../../../src/core/exact/unit';
import { DEFAULT_HOUSE } from '../../../src/core/house/house';
import { OrderRows } from '../../../src/core/window/reader/order-rows';
import { tableUnder } from '../window/ordered';

const HEADINGS = ['job', 'room', 'rod width', 'drop', 'heading', 'fabric width', 'yardage', 'unit price'];
const ROWS = [
  ['Weir House', 'Hall', 94, 96, 'pinch', 54, 15.625, '$20'],
  ['', 'Den', 94, 96, 'pinch', 54, 18.625, '£20'],
  ['', 'Hall', 94, 96, 'pinch', 54, 15.625, 20],
  ['Total', '', '', '', '', '', 50, ''],
];

it('rows audited by themselves, as plain data, give in their turn what one audit gives', () => {
  const table = tableUnder(HEADINGS, ROWS, INCHES);
  const by = { periods: [{ from: undefined, house: DEFAULT_HOUSE }] };
  const whole = new Auditor(table, by);
  const expected = [...ROWS.flatMap((row, at) => whole.row(at + 1, row)), ...whole.end()];
  expect(expected.map(({ code }) => code)).toEqual([
    'figureDiffers',
    'duplicateOrder',
    'totalRowDiffers',
    'mixedCurrencies',
  ]);

  const reader = new OrderRows(table);
  const alone = new OneByOne(table, by);
  const lines = [...ROWS.flatMap((row, at) => reader.push(at + 1, row)), ...reader.end()];
  const audited = structuredClone(lines.map((line) => alone.audited(line)));
  const turn = new Auditor(table, by);
  const found = audited.flatMap((one) => turn.take(one));
  turn.takeMarks(structuredClone(marksOf(reader)));
  expect([...found, ...turn.end()]).toEqual(expected);
  expect(turn.orders).toBe(whole.orders);
});
