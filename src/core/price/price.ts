/** Money: price breaks, making charge, selling price, tax. Rounded only where a rule says so. */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  moneyFigure,
  noAnswer,
  numberFigure,
  refuse,
  step,
  textFigure,
  type Answer,
  type Figure,
  type Finding,
  type Step,
} from '../cell/answer';
import { isBlankRow, oneCell, readBack, type CellIn, type Place } from '../cell/fields';
import { PRICE, withoutResidue } from '../cell/figure-kinds';
import { money, NOTHING, toCent, type Money, type Rounding } from '../exact/money';
import { unitOf, type Rules } from '../house/rules';
import type { LaborBy, SellBasis, TaxBasis } from '../cell/ways';
import type { Heading, Lining } from '../cell/treatment';
import type { Length } from '../exact/length';
import { digits, INCHES, showLength } from '../exact/unit';

export interface PriceBreak {
  readonly from: number;
  readonly price: Money;
}

/** Reads two columns, from quantity and price; a title row is passed over. Sorted by quantity. */
export function readPriceBreaks(rows: readonly (readonly CellIn[])[]): readonly PriceBreak[] {
  const place: Place = { name: parameter('priceBreaks'), unit: INCHES };
  const breaks: PriceBreak[] = [];
  for (const [at, row] of rows.entries()) {
    if (isBlankRow(row)) continue;
    if (row.length < 2)
      return refuse(
        'rangeTooNarrow',
        parameter('priceBreaks'),
        parameter('priceBreaks'),
        'two columns, from quantity and price',
        row.length,
      );
    const from = oneCell(row[0], place);
    const title = at === 0 && typeof from === 'string' && !Number.isFinite(Number(from));
    if (title) continue;
    const price = PRICE.read(row[1], place);
    const quantity = withoutResidue(Number(from ?? 0));
    if (price === undefined || !Number.isFinite(quantity) || quantity < 0) {
      return refuse(
        'breaksUnreadable',
        parameter('priceBreaks'),
        at + 1,
        `${readBack(from ?? '')} and ${readBack(row[1] ?? '')}`,
      );
    }
    breaks.push({ from: quantity, price });
  }
  breaks.sort((a, b) => a.from - b.from);
  const twice = breaks.find(
    (one, at) => one.from === breaks[at + 1]?.from && !one.price.eq(breaks[at + 1]?.price ?? one.price),
  );
  if (twice !== undefined) return refuse('breakRepeated', parameter('priceBreaks'), digits(twice.from));
  return breaks;
}

/** Unit price at a quantity: the last break that it reaches. */
export function breakPrice(given: { quantity: number; priceBreaks: readonly PriceBreak[] }): Answer<Money> {
  const reached = given.priceBreaks.filter((one) => one.from <= given.quantity).at(-1);
  if (reached === undefined) {
    return noAnswer(
      'belowFirstBreak',
      parameter('quantity'),
      digits(given.quantity),
      digits(given.priceBreaks[0]?.from ?? 0),
    );
  }
  return answer(reached.price, () => [
    step(
      `price from ${digits(reached.from)}`,
      'at {}',
      [numberFigure(given.quantity)],
      moneyFigure(reached.price),
    ),
  ]);
}

interface Made {
  readonly heading: Heading;
  readonly finishedDrop: Length;
  readonly lining: Lining | undefined;
}
/** By its widths alone; and by so many of what the house charges by. */
export type MadeOfWidths = Made & { readonly widths: number };
export type MadeOf = Made & { readonly count: number };

export const COUNTED_AS: Readonly<Record<LaborBy, string>> = {
  width: 'widths',
  panel: 'panels',
  window: 'windows',
};

/** What the lining adds to the making charge of a width. */
function liningCharge(lining: Lining, rules: Rules): Money {
  const charge = {
    unlined: NOTHING,
    lined: rules.laborLined,
    interlined: rules.laborInterlined,
    blackout: rules.laborBlackout,
  }[lining];
  return charge ?? NOTHING;
}

/** Making charge of a treatment of so many widths, which say nothing of its panels. */
export function labor({ widths, ...made }: MadeOfWidths, rules: Rules): Answer<Money> {
  const { laborBy } = rules;
  if (laborBy === 'panel') return noAnswer('panelsNotTold', parameter('widths'));
  return makingCharge({ ...made, count: laborBy === 'window' ? 1 : widths }, rules);
}

/** Making charge: what it is charged by × (heading + lining), with the height surcharge; to the cent. */
export function makingCharge(made: MadeOf, rules: Rules): Answer<Money> {
  const base = rules.labor[made.heading];
  if (base === undefined) return noAnswer('priceNotSet', 'rules', `labor ${made.heading}`);
  const lining = made.lining ?? 'unlined';
  const more = liningCharge(lining, rules);
  const plain = (more.eq(0) ? base : base.plus(more)).times(made.count);
  const high = made.finishedDrop > rules.laborHeightFrom;
  const share = rules.laborHeightSurcharge;
  const charge = high && share !== undefined ? plain.times(share.plus(1)) : plain;
  const value = toCent(charge, rules.centRounding);
  const steps = (): Step[] => {
    const lines = [
      step(
        'making charge',
        `{} ${COUNTED_AS[rules.laborBy]} × ({} ${made.heading} + {} ${lining})`,
        [numberFigure(made.count), moneyFigure(base), moneyFigure(more)],
        moneyFigure(plain),
      ),
    ];
    if (high && share !== undefined) {
      lines.push(
        step(
          `drop over ${showLength(rules.laborHeightFrom, unitOf(rules))}`,
          '{} × (1 + {})',
          [moneyFigure(plain), textFigure(share.toString())],
          moneyFigure(value),
        ),
      );
    }
    const least = rules.makingMinimum;
    if (least?.gt(value) === true) {
      const says = 'at least {} for the whole job, in its quote; a row shows its own';
      lines.push(step('making minimum', says, [moneyFigure(least)], moneyFigure(value)));
    }
    return lines;
  };
  return answer(value, steps);
}

const percent = (rate: Money): string => `${rate.times(100).toString()} %`;

/** Selling price: a markup on the cost or a margin on the selling price, named so that neither is taken for the other. */
export function sellPrice(given: {
  cost: Money;
  rate: Money;
  basis: SellBasis;
  rounding?: Rounding;
}): Answer<Money> {
  const rate = (): Figure => textFigure(given.rate.toString());
  if (given.basis === 'markup on cost') {
    const value = toCent(given.cost.times(given.rate.plus(1)), given.rounding);
    return answer(value, () => [
      step('selling price', '{} × (1 + {})', [moneyFigure(given.cost), rate()], moneyFigure(value)),
    ]);
  }
  if (given.rate.gte(1))
    return refuse('noMargin', parameter('rate'), percent(given.rate), percent(given.rate.div(100)));
  const value = toCent(given.cost.div(money(1).minus(given.rate)), given.rounding);
  return answer(value, () => [
    step('selling price', '{} ÷ (1 − {})', [moneyFigure(given.cost), rate()], moneyFigure(value)),
  ]);
}

export interface Taxed {
  readonly amounts: readonly Money[];
  readonly rate: Money;
  readonly basis: TaxBasis | undefined;
  readonly rounding: Rounding | undefined;
}

/** Sales tax to the cent: each line rounded and added, or the sum rounded once; never twice. */
export function salesTax(taxed: Taxed): Answer<Money> {
  const basis = taxed.basis ?? 'line';
  const rounding = taxed.rounding ?? 'half up';
  const sum = taxed.amounts.reduce((total, one) => total.plus(one), NOTHING);
  const value =
    basis === 'invoice'
      ? toCent(sum.times(taxed.rate), rounding)
      : taxed.amounts.reduce((total, one) => total.plus(toCent(one.times(taxed.rate), rounding)), NOTHING);
  const findings: Finding[] = taxed.rate.gt(0.3)
    ? [finding('rateLooksHigh', parameter('rate'), `${taxed.rate.times(100).toString()} %`)]
    : [];
  return answer(
    value,
    [
      step(
        'tax',
        `{} × {}, rounded ${rounding} ${basis === 'line' ? `on each of ${taxed.amounts.length} lines` : 'once on the invoice'}`,
        [moneyFigure(sum), textFigure(taxed.rate.toString())],
        moneyFigure(value),
      ),
    ],
    findings,
  );
}
