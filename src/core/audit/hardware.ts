/** Checks of what hangs the drapery and turns its cloth: grommets, stack, railroading. */
import { finding, Refusal } from '../cell/answer';
import { exact, toUnit, type Length } from '../exact/length';
import { digits, INCHES } from '../exact/unit';
import { isDrawn } from '../cell/treatment';
import { unitOf } from '../house/rules';
import { WindowWork } from '../window/job';
import type { Check, RowGiven } from './check';
import { told, type OrderFinding } from './finding';
import { showNear } from './show';

/** Grommets in an odd count turn one edge into the room. */
function findOddGrommets({ at, order, name }: RowGiven): OrderFinding[] {
  const count = order.ordered.marks;
  if (order.window.heading !== 'grommet' || count === undefined || count % 2 === 0) return [];
  const expected = Math.ceil(count / 2) * 2;
  const column = name('marks');
  return [
    told(at, finding('oddGrommets', column, column, digits(count), digits(expected)), {
      measure: 'count',
      found: count,
      expected,
    }),
  ];
}

/** Whether the drawn-back drapery fits beside the opening, where the glass is to be clear. */
function findStackOverGlass({ at, order, rules, name }: RowGiven): OrderFinding[] {
  const { window, facts, ordered } = order;
  const asked = facts.clearGlass ?? rules.keepGlassClear;
  const { openingWidth, heading, draw } = window;
  if (asked === 'no' || openingWidth === undefined || heading === undefined || !isDrawn(draw)) return [];
  const work = new WindowWork(window, rules);
  const rod = window.rodWidth ?? work.rodWidth().value;
  const even = exact(Math.max(0, Math.floor((rod - openingWidth) / 2)));
  const left = window.leftExtension ?? even;
  const right = window.rightExtension ?? even;
  const beside = draw === 'one-way left' ? left : draw === 'one-way right' ? right : Math.min(left, right);
  const stack = (ordered.stack as Length | undefined) ?? work.stack().value;
  const over = stack - beside;
  if (over <= rules.lengthTolerance) return [];
  // A wider rod stacks wider too: its share of the rod is taken off before the division.
  const sides = draw === undefined || draw === 'pair' ? 2 : 1;
  const share = stack / rod;
  const clear = openingWidth / (1 - sides * share);
  const unit = unitOf(rules);
  const step = unit === INCHES ? 12_700_000 : 10_000_000;
  const show = (length: number): string => showNear(length, unit);
  const about = finding(
    'stackOverGlass',
    name('rodWidth'),
    show(stack),
    show(beside),
    show(over),
    clear > 0 && Number.isFinite(clear) ? show(Math.ceil(clear / step) * step) : 'more',
  );
  return [
    told(at, about, {
      measure: 'length',
      found: Number(toUnit(stack, unit.small).toPrecision(6)),
      expected: Number(toUnit(beside, unit.small).toPrecision(6)),
      sure: 'likely',
    }),
  ];
}

/** Cloth ordered railroaded whose cut does not fit its width. */
function findTooNarrowToTurn({ at, order, rules, name }: RowGiven): OrderFinding[] {
  const { fabricWidth, heading } = order.window;
  if (order.window.railroaded !== 'railroaded' || fabricWidth === undefined || heading === undefined)
    return [];
  try {
    new WindowWork(order.window, rules).railroaded();
    return [];
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    if (thrown.error !== '#N/A') return [];
    return [
      told(at, finding('orderTooNarrowToTurn', name('fabricWidth'), thrown.finding.sentence), {
        measure: 'length',
        found: Number(toUnit(fabricWidth, unitOf(rules).small).toPrecision(9)),
      }),
    ];
  }
}

export const oddGrommets: Check = {
  ofSizes: true,
  explains: () => ['marks'],
  find: ({ given }) => findOddGrommets(given),
};
export const tooNarrowToTurn: Check = {
  ofSizes: true,
  explains: () => ['yardage', 'railroadedYardage'],
  find: ({ given }) => findTooNarrowToTurn(given),
};
export const stackOverGlass: Check = { find: ({ given }) => findStackOverGlass(given) };
