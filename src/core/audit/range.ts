/** Measurements out of the usual range: where every figure follows from the slip, only this shows it. */
import { finding } from '../cell/answer';
import type { Check, RowGiven } from './check';
import { compareFigures } from './compare-figures';
import { told, type OrderFinding } from './finding';
import { showNear } from './show';
import { toUnit } from '../exact/length';
import { unitOf } from '../house/rules';
import { INCHES } from '../exact/unit';

const SIZE = { least: 'usualShortest', most: 'usualLongest' } as const;
const RANGES = [
  { key: 'measured', ...SIZE },
  { key: 'openingWidth', ...SIZE },
  { key: 'finishedDrop', ...SIZE },
  { key: 'rodWidth', ...SIZE },
  { key: 'fabricWidth', least: 'usualNarrowestCloth', most: 'usualWidestCloth' },
] as const;

function findOutOfRange({ at, order, rules, name }: RowGiven): OrderFinding[] {
  for (const { key, least, most } of RANGES) {
    const length = order.window[key];
    const low = rules[least];
    const high = rules[most];
    if (length === undefined || (length >= low && length <= high)) continue;
    const unit = unitOf(rules);
    const inches = unit === INCHES;
    const show = (shown: number): string => showNear(shown, unit);
    const column = name(key);
    const means = inches ? length / 2.54 : length * 2.54;
    const unitFits = (inches ? length > high : length < low) && means >= low && means <= high;
    const about = unitFits
      ? finding(
          'unitOutOfRange',
          column,
          column,
          show(length),
          inches ? 'centimetres' : 'inches',
          show(means),
        )
      : finding('outOfRange', column, column, show(length), `${show(low)} to ${show(high)}`);
    const cell = (shown: number, figures: number): number =>
      Number(toUnit(shown, unit.small).toPrecision(figures));
    return [
      told(at, about, {
        measure: 'length',
        found: cell(length, 9),
        sure: 'possible',
        ...(unitFits ? { expected: cell(means, 6) } : {}),
      }),
    ];
  }
  return [];
}

export const outOfRange: Check = {
  ofSizes: true,
  mayBeMeant: true,
  // A slip that figures show is named by them.
  find: (row) =>
    row.foundBy(compareFigures).length === 0 && row.given.order.unread.length === 0
      ? findOutOfRange(row.given)
      : [],
};
