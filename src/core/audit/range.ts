/** Measurements out of the usual range: where every figure follows from the slip, only this shows it. */
import { finding } from '../cell/answer';
import type { Facing } from './facts';
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

export function outOfRange({ at, order, rules, name }: Facing): OrderFinding[] {
  for (const { key, least, most } of RANGES) {
    const of = order.window[key];
    const low = rules[least];
    const high = rules[most];
    if (of === undefined || (of >= low && of <= high)) continue;
    const unit = unitOf(rules);
    const inches = unit === INCHES;
    const show = (length: number): string => showNear(length, unit);
    const column = name(key);
    const means = inches ? of / 2.54 : of * 2.54;
    const unitFits = (inches ? of > high : of < low) && means >= low && means <= high;
    const about = unitFits
      ? finding('unitOutOfRange', column, column, show(of), inches ? 'centimetres' : 'inches', show(means))
      : finding('outOfRange', column, column, show(of), `${show(low)} to ${show(high)}`);
    const cell = (length: number): number => Number(toUnit(length, unit.small).toPrecision(6));
    return [
      told(at, about, {
        found: cell(of),
        sure: 'possible',
        ...(unitFits ? { expected: cell(means) } : {}),
      }),
    ];
  }
  return [];
}
