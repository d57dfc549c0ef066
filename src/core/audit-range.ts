/** Measurements out of the usual range: where every figure follows from the slip, only this shows it. */
import { finding } from './answer';
import type { Facing } from './audit-facts';
import { told, type OrderFinding } from './audit-finding';
import { showNear } from './audit-show';
import { toUnit } from './length';
import { unitOf } from './rules';
import { INCHES } from './unit';

const SIZED = ['measured', 'openingWidth', 'finishedDrop', 'rodWidth'] as const;

export function outOfRange({ at, order, rules, name }: Facing): OrderFinding[] {
  const { window } = order;
  const unit = unitOf(rules);
  const inches = unit === INCHES;
  const ranges = [
    ...SIZED.map((key) => ({ key, low: rules.usualShortest, high: rules.usualLongest })),
    { key: 'fabricWidth' as const, low: rules.usualNarrowestCloth, high: rules.usualWidestCloth },
  ];
  for (const { key, low, high } of ranges) {
    const of = window[key];
    if (of === undefined || (of >= low && of <= high)) continue;
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
