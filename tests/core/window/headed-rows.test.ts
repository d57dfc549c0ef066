import { expect, it } from 'vitest';
import { INCHES } from '../../../src/core/exact/unit';
import { HeadedRows } from '../../../src/core/window/headed-rows';
import { orderColumns } from '../../../src/core/window/order';

it('rows below headings of ours are told apart, and orders are read', () => {
  const headings = ['room', 'rod width', 'finished drop', 'widths'];
  const rows = new HeadedRows(orderColumns(headings, INCHES));
  const lines = [['Bar', 94, 96, 5], headings, [null, null, null, null]].flatMap((row, at) =>
    rows.push(at, row),
  );
  expect(lines.map(({ at, is }) => [at, is])).toEqual([
    [0, 'window'],
    [1, 'repeat header'],
    [2, 'blank'],
  ]);
  expect(lines[0]?.order?.ordered.widths).toBe(5);
  expect(rows.end()).toEqual([]);
});
