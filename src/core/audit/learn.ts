/**
 * A house's rules from its own past: of each rule the value that makes most ordered figures come
 * out as they were ordered. It only proposes; nothing is changed.
 */
import { Refusal } from '../cell/answer';
import { canBeWorkedOut, Compared } from './compared';
import { plainCut } from '../cloth/cuts';
import type { CellOut } from '../cell/fields';
import { exact, inches, TooLarge, UNITS, type Length } from '../exact/length';
import type { FigureKey } from '../window/figures';
import { FIGURE_KEYS } from '../window/meanings';
import type { Order } from '../window/order';
import { ratio } from '../exact/ratio';
import { RULE_LINES, unitOf, type RuleKey, type RuleLine, type Rules } from '../house/rules';
import {
  HALF_CHARGES,
  LABOR_BYS,
  INTERLINING_CUTS,
  LINING_WIDTHS,
  REPEAT_RULES,
  WIDTHS_ROUNDINGS,
} from '../cell/ways';
import { overlapRuleFor, returnOf } from '../cloth/hung';
import { HEADINGS, isSidePanels, type Heading } from '../cell/treatment';
import { INCHES } from '../exact/unit';

export interface Proposal {
  /** The rule by the name people write. */
  readonly rule: string;
  /** As it is written into the rules range. */
  readonly value: CellOut;
  readonly standing: CellOut;
  /** Orders that fit the proposed value, of those that can tell, and those that fit the standing one. */
  readonly fit: number;
  readonly outOf: number;
  readonly fitStanding: number;
  /** Other values that fit just as many. */
  readonly asGood: readonly CellOut[];
  /** Other rules that fit just as many in its place: these orders cannot tell them apart. */
  readonly orElse: readonly { readonly rule: string; readonly value: CellOut }[];
}

/** “ These rules cannot be told apart …”; nothing where they can. */
export const notToldApart = ({ rule, value, orElse }: Pick<Proposal, 'rule' | 'value' | 'orElse'>): string =>
  orElse.length === 0
    ? ''
    : ` These rules cannot be told apart from these orders: ${[{ rule, value }, ...orElse]
        .map((one) => `“${one.rule}” ${String(one.value)}`)
        .join(', ')}. Set the one that is the house’s.`;

export interface Learned {
  readonly proposals: readonly Proposal[];
  /** Rules in force that most orders bear out. */
  readonly borneOut: readonly Proposal[];
  /** Orders of which every figure fits, with the rules in force and with all the proposals. */
  readonly fitStanding: number;
  readonly fitProposed: number;
  readonly outOf: number;
}

/** A rule that orders can tell of. */
interface Question {
  readonly key: RuleKey;
  readonly heading?: Heading;
  /** The figure it shows in, and which orders show it. */
  readonly figure: FigureKey;
  tells(order: Order): boolean;
  candidates(orders: readonly Order[], rules: Rules): readonly unknown[];
}

const LEAST_ORDERS = 5;
const MOST_ORDERS = 600;
/** A proposal explains at least so many of the orders that can tell. */
const LEAST_SHARE = 0.6;
const BORNE_OUT = 0.9;
const CLEAR_SHARE = 0.03;

/** To a sixteenth of an inch or half a millimetre: what people write down. */
const written = (length: number, rules: Rules): Length => {
  const step = unitOf(rules) === INCHES ? UNITS.in / 16 : UNITS.mm / 2;
  return exact(Math.round(length / step) * step);
};

/** The values that most orders imply, most often first. */
function commonest(implied: readonly (number | undefined)[], rules: Rules): Length[] {
  const times = new Map<Length, number>();
  for (const one of implied) {
    if (one === undefined) continue;
    const value = written(one, rules);
    times.set(value, (times.get(value) ?? 0) + 1);
  }
  return [...times]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 6)
    .map(([value]) => value);
}

const plainPattern = ({ window }: Order): boolean => window.verticalRepeat === undefined;
const isPair = ({ window }: Order): boolean => (window.draw ?? 'pair') === 'pair';
const isOneWay = ({ window: { draw } }: Order): boolean =>
  draw === 'one-way left' || draw === 'one-way right';
const coversRod = ({ window }: Order): boolean => !isSidePanels(window.draw);

function impliedCut({ window, ordered }: Order, rules: Rules): number | undefined {
  const { heading, finishedDrop } = window;
  if (heading === undefined || finishedDrop === undefined || ordered.cutLength === undefined)
    return undefined;
  return ordered.cutLength - plainCut({ heading, finishedDrop }, rules);
}

function impliedDrop({ window, ordered }: Order): number | undefined {
  const { measured } = window;
  return measured === undefined || ordered.finishedDrop === undefined
    ? undefined
    : ordered.finishedDrop - measured;
}

/** What a panel's finished width has beyond the rod: the returns and overlaps. */
function impliedParts(order: Order): number | undefined {
  const { window, ordered } = order;
  if (ordered.finishedWidth === undefined || window.rodWidth === undefined) return undefined;
  return ordered.finishedWidth - window.rodWidth / (isPair(order) ? 2 : 1);
}

const RINGED: ReadonlySet<Heading> = new Set<Heading>([
  'pinch',
  'goblet',
  'cartridge',
  'flat',
  'box',
  'inverted',
  'pencil',
]);
const fromNewRod = ({ window }: Order): boolean =>
  (window.measuredTo ?? 'new rod') === 'new rod' && (window.floorFinish ?? 'clear') === 'clear';

const lengths = (rules: Rules, inch: readonly number[], metric: readonly number[]): Length[] =>
  unitOf(rules) === INCHES ? inch.map(inches) : metric.map((cm) => exact(Math.round(cm * UNITS.cm)));

const WIDTHS_RULES: readonly Question[] = [
  {
    key: 'widthsRounding',
    figure: 'widths',
    tells: () => true,
    candidates: () => WIDTHS_ROUNDINGS.list.map(({ word }) => word),
  },
  {
    key: 'fullnessBasis',
    figure: 'widths',
    tells: () => true,
    candidates: () => ['finished width', 'rod width'],
  },
  {
    key: 'sideHem',
    figure: 'widths',
    tells: () => true,
    candidates: (_, rules) => lengths(rules, [0, 1, 1.5, 2, 3, 4], [0, 2.5, 4, 5, 7.5, 10]),
  },
  {
    key: 'seam',
    figure: 'widths',
    tells: () => true,
    candidates: (_, rules) => lengths(rules, [0, 0.5, 1, 2], [0, 2, 2.5, 3]),
  },
];

const YARDAGE_RULES: readonly Question[] = [
  {
    key: 'repeatRule',
    figure: 'yardage',
    tells: (order) => !plainPattern(order) && order.window.match !== 'half-drop',
    candidates: () => REPEAT_RULES.list.map(({ word }) => word),
  },
  {
    key: 'yardageStep',
    figure: 'yardage',
    tells: () => true,
    candidates: (_, rules) =>
      unitOf(rules) === INCHES
        ? [0, 1 / 8, 1 / 4, 1 / 2, 1].map((yards) => exact(Math.round(yards * UNITS.yd)))
        : [0, 0.1, 0.25, 0.5, 1].map((metres) => exact(Math.round(metres * UNITS.m))),
  },
  {
    key: 'yardageRoundedBy',
    figure: 'yardage',
    tells: ({ window }) => (window.quantity ?? 1) > 1,
    candidates: () => ['line', 'window'],
  },
];
const isLinedOf =
  (lining: 'lined' | 'interlined') =>
  ({ window }: Order): boolean =>
    lining === 'lined'
      ? window.lining !== undefined && window.lining !== 'unlined'
      : window.lining === 'interlined';

/** What hangs behind the face, and what its making is charged by. */
const BEHIND_RULES: readonly Question[] = [
  {
    key: 'liningWidths',
    figure: 'liningYardage',
    tells: isLinedOf('lined'),
    candidates: () => LINING_WIDTHS.list.map(({ word }) => word),
  },
  {
    key: 'liningMarginLeading',
    figure: 'liningYardage',
    tells: isLinedOf('lined'),
    candidates: (_, rules) => lengths(rules, [0, 1, 1.5, 2, 3], [0, 2.5, 4, 5, 7.5]),
  },
  {
    key: 'liningBottom',
    figure: 'liningYardage',
    tells: isLinedOf('lined'),
    candidates: (_, rules) => lengths(rules, [0, 1, 2, 3, 4, 6, 8], [0, 2.5, 5, 8, 10, 12, 15, 20]),
  },
  {
    key: 'interliningCut',
    figure: 'interliningYardage',
    tells: isLinedOf('interlined'),
    candidates: () => INTERLINING_CUTS.list.map(({ word }) => word),
  },
  {
    key: 'interliningTop',
    figure: 'interliningYardage',
    tells: isLinedOf('interlined'),
    candidates: (_, rules) => lengths(rules, [0, 2, 3, 4, 6, 8], [0, 2.5, 5, 8, 10, 15]),
  },
  {
    key: 'halfWidthCharged',
    figure: 'labor',
    tells: () => true,
    candidates: () => HALF_CHARGES.list.map(({ word }) => word),
  },
  {
    key: 'laborBy',
    figure: 'labor',
    tells: () => true,
    candidates: () => LABOR_BYS.list.map(({ word }) => word),
  },
];
/** What is added to the rod’s share for the finished width. */
const edgeRules = (standing: Rules): readonly Question[] => [
  {
    key: 'oneWayReturns',
    figure: 'finishedWidth',
    tells: isOneWay,
    candidates: () => ['both ends', 'one end'],
  },
  {
    key: 'return',
    figure: 'finishedWidth',
    tells: (order) => !isPair(order) && coversRod(order) && order.window.return === undefined,
    candidates: (orders, rules) =>
      commonest(
        orders.flatMap((order) => {
          const parts = impliedParts(order);
          return parts === undefined
            ? []
            : isOneWay(order) && rules.oneWayReturns === 'one end'
              ? [parts]
              : [parts / 2];
        }),
        rules,
      ).filter((one) => one >= 0),
  },
  ...(['overlap', 'overlapOnRings'] as const).map((key): Question => ({
    key,
    figure: 'finishedWidth',
    tells: (order) =>
      isPair(order) &&
      order.window.overlap === undefined &&
      overlapRuleFor(order.window.heading ?? 'pinch', standing) === key,
    candidates: (orders, rules) =>
      commonest(
        orders.map((order) => {
          const parts = impliedParts(order);
          return parts === undefined ? undefined : parts - returnOf(order.window, rules);
        }),
        rules,
      ).filter((one) => one >= 0),
  })),
];
/** Rules that bear on one figure are tried together: none shows its worth while another is wrong. */
const TOGETHER = [WIDTHS_RULES, YARDAGE_RULES];

function questions(orders: readonly Order[], rules: Rules): readonly Question[] {
  const headings = HEADINGS.list.map(({ word }) => word as Heading);
  const used = headings.filter((heading) => orders.some(({ window }) => window.heading === heading));
  return [
    {
      key: 'dropNewRodRings',
      figure: 'finishedDrop',
      tells: (order) => fromNewRod(order) && RINGED.has(order.window.heading ?? 'wave'),
      candidates: (orders, rules) => commonest(orders.map(impliedDrop), rules),
    },
    {
      key: 'dropNewRodGrommet',
      figure: 'finishedDrop',
      tells: (order) => fromNewRod(order) && order.window.heading === 'grommet',
      candidates: (orders, rules) => commonest(orders.map(impliedDrop), rules),
    },
    ...edgeRules(rules),
    {
      key: 'bottomAllowance',
      figure: 'cutLength',
      tells: plainPattern,
      candidates: (orders, rules) =>
        commonest(
          orders.map((order) => {
            const more = impliedCut(order, rules);
            return more === undefined ? undefined : rules.bottomAllowance + more;
          }),
          rules,
        ).filter((one) => one >= 0),
    },
    ...used.map((heading): Question => ({
      key: 'topAllowance',
      heading,
      figure: 'cutLength',
      tells: (order) => plainPattern(order) && order.window.heading === heading,
      candidates: (orders, rules) =>
        commonest(
          orders.map((order) => {
            const more = impliedCut(order, rules);
            return more === undefined ? undefined : rules.topAllowance[heading] + more;
          }),
          rules,
        ).filter((one) => one >= 0),
    })),
    ...WIDTHS_RULES,
    ...used.map((heading): Question => ({
      key: 'fullness',
      heading,
      figure: 'widths',
      tells: ({ window }) => window.heading === heading && window.fullness === undefined,
      candidates: () => [1.5, 1.8, 2, 2.2, 2.25, 2.5, 2.75, 3].map(ratio),
    })),
    {
      key: 'repeatRule',
      figure: 'cutLength',
      tells: (order) => !plainPattern(order) && order.window.match !== 'half-drop',
      candidates: () => REPEAT_RULES.list.map(({ word }) => word),
    },
    ...YARDAGE_RULES,
    ...BEHIND_RULES,
  ];
}

const lineOf = ({ key, heading }: Question): RuleLine =>
  RULE_LINES.find((line) => line.key === key && line.heading === heading) as RuleLine;

const valueOf = (rules: Rules, { key, heading }: Question): unknown =>
  heading === undefined ? rules[key] : (rules[key] as Readonly<Record<Heading, unknown>>)[heading];

const withValue = (rules: Rules, { key, heading }: Question, value: unknown): Rules =>
  ({
    ...rules,
    [key]:
      heading === undefined
        ? value
        : { ...(rules[key] as Readonly<Record<Heading, unknown>>), [heading]: value },
  }) as Rules;

/** Whether one ordered figure comes out as it was ordered: to the tolerance of a tape, not of the audit. */
function fits({ window, ordered }: Order, figure: FigureKey | undefined, rules: Rules): boolean {
  try {
    const { wrong, right, refusals } = new Compared(window, ordered, rules).compare(
      figure === undefined ? FIGURE_KEYS : [figure],
    );
    // A price that is not set makes no figure wrong.
    const refused = refusals.filter(({ refusal }) => refusal.error !== '#N/A');
    return wrong.length + refused.length === 0 && right.length > 0;
  } catch (thrown) {
    if (thrown instanceof Refusal || thrown instanceof TooLarge) return false;
    throw thrown;
  }
}

const counted = (orders: readonly Order[], figure: FigureKey | undefined, rules: Rules): number =>
  orders.filter((order) => fits(order, figure, rules)).length;

/** An audit forgives a quarter inch; what is to be learned is smaller. */
const strict = (rules: Rules): Rules => ({
  ...rules,
  lengthTolerance: written(unitOf(rules) === INCHES ? UNITS.in / 16 : UNITS.mm, rules),
  yardageTolerance: exact(UNITS.mm),
});

const canTell = (orders: readonly Order[], { figure, tells }: Pick<Question, 'figure' | 'tells'>): Order[] =>
  orders.filter(
    (order) =>
      order.ordered[figure] !== undefined &&
      order.unread.length === 0 &&
      order.window.railroaded !== 'railroaded' &&
      canBeWorkedOut(figure, order.window) &&
      tells(order),
  );

/** The best value of one rule while the others stand. */
function best(
  question: Question,
  orders: readonly Order[],
  rules: Rules,
  standing: Rules,
): { value: unknown; fit: number; asGood: unknown[] } {
  const now = valueOf(rules, question);
  const first = valueOf(standing, question);
  const values = [...new Set([now, first, ...question.candidates(orders, rules)])];
  const scored = values.map((value) => ({
    value,
    fit: counted(orders, question.figure, withValue(rules, question, value)),
  }));
  const most = Math.max(...scored.map(({ fit }) => fit));
  const winners = scored.filter(({ fit }) => fit === most).map(({ value }) => value);
  const value = winners.includes(first) ? first : winners.includes(now) ? now : winners[0];
  return { value, fit: most, asGood: winners.filter((one) => one !== value) };
}

/** The best values of rules that bear on one figure, every one with every other. */
function bestTogether(
  all: readonly Question[],
  orders: readonly Order[],
  { rules, standing }: { rules: Rules; standing: Rules },
): Rules {
  const [first, ...rest] = all;
  const figure = first?.figure ?? 'widths';
  const few = canTell(orders, { figure, tells: () => true }).slice(0, 100);
  if (first === undefined || few.length < LEAST_ORDERS) return rules;
  let found = rules;
  let most = counted(few, figure, rules);
  const changed = (tried: Rules): number =>
    all.filter((one) => valueOf(tried, one) !== valueOf(standing, one)).length;
  const tryAll = (tried: Rules, [next, ...later]: readonly Question[]): void => {
    if (next !== undefined) {
      for (const value of next.candidates(few, tried)) tryAll(withValue(tried, next, value), later);
      return;
    }
    const fit = counted(few, figure, tried);
    // Of two that fit as well, the one that changes less.
    if (fit > most || (fit === most && changed(tried) < changed(found))) [found, most] = [tried, fit];
  };
  tryAll(rules, [first, ...rest]);
  return found;
}

/** What other rules of the same figure would fit as many of these orders, with this one as it stands. */
function orElse(
  { question, fit }: { question: Question; fit: number },
  {
    asked,
    able,
    rules,
    standing,
  }: { asked: readonly Question[]; able: readonly Order[]; rules: Rules; standing: Rules },
): { line: RuleLine; value: unknown }[] {
  const without = withValue(rules, question, valueOf(standing, question));
  const seen = new Set<RuleLine>([lineOf(question)]);
  return asked.flatMap((other) => {
    const line = lineOf(other);
    if (other.figure !== question.figure || seen.has(line) || !able.every(other.tells)) return [];
    seen.add(line);
    if (valueOf(rules, other) !== valueOf(standing, other)) return [];
    const found = best(other, able, without, standing);
    return found.fit >= fit && found.value !== valueOf(standing, other) ? [{ line, value: found.value }] : [];
  });
}

/** So many orders more must fit before another rule is proposed. */
const isClear = ({ fit, fitStanding, outOf }: Proposal): boolean =>
  fit - fitStanding >= Math.max(2, outOf * CLEAR_SHARE);

/** Proposes the rules that explain most of these orders; give it good ones. */
export const learnRules = (orders: readonly Order[], standing: Rules): Learned =>
  learnWith(orders, standing).learned;

/** The same, and the rules in force with all the proposals in them. */
export function learnWith(
  orders: readonly Order[],
  standing: Rules,
): { readonly learned: Learned; readonly rules: Rules } {
  const few = orders.slice(0, MOST_ORDERS);
  const asked = questions(few, standing);
  const start = strict(standing);
  let rules = start;
  for (let pass = 0; pass < 2; pass++) {
    for (const one of asked) {
      const together = TOGETHER.find(([first]) => first === one);
      if (together !== undefined) rules = bestTogether(together, few, { rules, standing: start });
      const able = canTell(few, one);
      if (able.length < LEAST_ORDERS) continue;
      const { value, fit } = best(one, able, rules, start);
      if (fit >= able.length * LEAST_SHARE) rules = withValue(rules, one, value);
    }
  }
  const proposals: Proposal[] = [];
  const borneOut: Proposal[] = [];
  const seen = new Set<RuleLine>();
  for (const one of asked) {
    const able = canTell(few, one);
    const line = lineOf(one);
    if (able.length < LEAST_ORDERS || seen.has(line)) continue;
    const unit = unitOf(standing);
    const cell = (value: unknown): CellOut => line.kind.write?.(value, unit) ?? String(value);
    const value = valueOf(rules, one);
    const { asGood } = best(one, able, rules, rules);
    const first = valueOf(standing, one);
    const fit = counted(able, one.figure, rules);
    const others =
      value === first ? [] : orElse({ question: one, fit }, { asked, able, rules, standing: start });
    const proposal: Proposal = {
      rule: line.name,
      value: cell(value),
      standing: cell(first),
      fit,
      outOf: able.length,
      fitStanding: counted(able, one.figure, withValue(rules, one, first)),
      asGood: asGood.map(cell),
      orElse: others.map(({ line: other, value: would }) => ({
        rule: other.name,
        value: other.kind.write?.(would, unit) ?? String(would),
      })),
    };
    if (value !== first && isClear(proposal)) {
      proposals.push(proposal);
      seen.add(line);
    } else if (proposal.fit >= proposal.outOf * BORNE_OUT && asGood.length === 0) {
      borneOut.push(proposal);
      seen.add(line);
    }
  }
  const whole = few.filter(
    (order) => Object.keys(order.ordered).length > 0 && order.window.railroaded !== 'railroaded',
  );
  const lenient = (strict: Rules): Rules => ({
    ...strict,
    lengthTolerance: standing.lengthTolerance,
    yardageTolerance: standing.yardageTolerance,
  });
  const learned = {
    proposals,
    borneOut,
    fitStanding: counted(whole, undefined, standing),
    fitProposed: counted(whole, undefined, lenient(rules)),
    outOf: whole.length,
  };
  return { learned, rules: lenient(rules) };
}
