/** What one small step less would save: narrower rods, less fullness, a shorter cut, another bolt. */
import { parameter } from '../findings/parameters';
import { finding, type Finding } from '../cell/answer';
import { exact, inches, toUnit, UNITS, type Length } from '../exact/length';
import { ONE, toFigure, type Ratio } from '../exact/ratio';
import { digits, showLength, showYardage, tape, type Unit } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';
import { furtherCut, type Cutting } from './repeat';
import { flatParts, fullnessOf } from './hung';
import { served, widthsStep, type Gathered, type WidthsWork } from './widths';

const HUNDREDTH = ONE / 100;

/** The fullness, to a hundredth, that one step of widths less serves; undefined where cloth would not cover. */
export function fullnessOfOneLess(gathered: Gathered, work: WidthsWork, rules: Rules): Ratio | undefined {
  const fewer = work.widths - widthsStep(work.panels, rules);
  const capacity = served(fewer, work.panels, work.usable, rules);
  const most =
    rules.fullnessBasis === 'finished width'
      ? capacity / work.finished
      : (capacity - flatParts(gathered, rules) * ONE) / gathered.rodWidth;
  const fullness = (Math.floor(most / HUNDREDTH) * HUNDREDTH) as Ratio;
  return fullness >= ONE && fullness < fullnessOf(gathered, rules) ? fullness : undefined;
}

/** A rod or a fullness that needs a step of widths less, and what that saves. */
export function fewerWidths(
  gathered: Gathered,
  work: WidthsWork,
  narrower: Length,
  saved: Length,
  rules: Rules,
): Finding {
  const unit = unitOf(rules);
  const fullness = fullnessOfOneLess(gathered, work, rules);
  const by = widthsStep(work.panels, rules);
  return finding(
    'narrowerSaves',
    parameter('rodWidth'),
    `A rod ${showLength(narrower, unit)} narrower${fullness === undefined ? '' : `, or a fullness of ${digits(toFigure(fullness))},`}`,
    digits(work.widths - by),
    digits(by),
    showYardage(saved, unit),
  );
}

/** So little less that a hem can give it. */
const MOST_LESS = inches(3);

export interface ShorterCut {
  readonly bare: Length;
  readonly up: Length;
  readonly less: Length;
  readonly gives: Length;
}

/** A cut just past a repeat, or of a half-drop past half of one: undefined where it is not, or takes no repeat up. */
export function shorterCut({ cut, repeat, rule, halfDrop }: Cutting): ShorterCut | undefined {
  if (repeat === undefined || rule === 'one repeat each' || rule === 'one repeat with every length')
    return undefined;
  const over = halfDrop ? Math.ceil(((2 * cut) % repeat) / 2) : cut % repeat;
  if (over === 0 || over > MOST_LESS || over >= cut) return undefined;
  const up = furtherCut({ cut, repeat, rule, halfDrop });
  return { bare: cut, up, less: exact(over), gives: exact(cut - over) };
}

/** Without its unit, where the sentence says it once. */
const bareLength = (length: Length, unit: Unit): string =>
  unit.small === 'in' && length % (UNITS.in / 64) === 0
    ? tape(length)
    : digits(Number(toUnit(length, unit.small).toFixed(4)));

/** “94 + 16 = 110 goes up to 135; 2 in less gives 108” */
export function shorterCutInWords({ bare, up, less, gives }: ShorterCut, drop: Length, unit: Unit): string {
  const [whole, allowances] = [drop, exact(bare - drop)].map((one) => bareLength(one, unit));
  return `${whole} + ${allowances} = ${bareLength(bare, unit)} goes up to ${bareLength(up, unit)}; ${showLength(less, unit)} less gives ${bareLength(gives, unit)}`;
}

/** The same rules with so much less allowance: what a hem, or a drop before it shrinks, gives up. */
export const withLessAllowance = (less: Length, rules: Rules): Rules => ({
  ...rules,
  bottomAllowance: exact(rules.bottomAllowance - less),
});

/** A bolt so much wider is still the same kind of goods. */
const SAME_GOODS = inches(6);

/** The bolt widths of the trade that are a little wider than this one. */
export const widerBolts = (fabricWidth: Length, { boltWidths }: Rules): readonly Length[] =>
  boltWidths.filter((one) => one > fabricWidth && one <= fabricWidth + SAME_GOODS);
