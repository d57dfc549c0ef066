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
import { PRICE } from '../cell/figure-kinds';
import { money, NOTHING, toCent, type Money, type Rounding } from '../exact/money';
import { unitOf, type Rules } from '../house/rules';
import type { SellBasis, TaxBasis } from '../cell/ways';
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
    const quantity = Number(from ?? 0);
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
export function breakPrice(of: { quantity: number; priceBreaks: readonly PriceBreak[] }): Answer<Money> {
  const reached = of.priceBreaks.filter((one) => one.from <= of.quantity).at(-1);
  if (reached === undefined) {
    return noAnswer(
      'belowFirstBreak',
      parameter('quantity'),
      digits(of.quantity),
      digits(of.priceBreaks[0]?.from ?? 0),
    );
  }
  return answer(reached.price, () => [
    step(
      `price from ${digits(reached.from)}`,
      'at {}',
      [numberFigure(of.quantity)],
      moneyFigure(reached.price),
    ),
  ]);
}

export interface Made {
  readonly widths: number;
  readonly heading: Heading;
  readonly finishedDrop: Length;
  readonly lining: Lining | undefined;
}

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

/** Making charge: widths × (heading + lining), with the height surcharge; to the cent. */
export function labor(of: Made, rules: Rules): Answer<Money> {
  const base = rules.labor[of.heading];
  if (base === undefined) return noAnswer('priceNotSet', 'rules', `labor ${of.heading}`);
  const lining = of.lining ?? 'unlined';
  const more = liningCharge(lining, rules);
  const plain = (more.eq(0) ? base : base.plus(more)).times(of.widths);
  const high = of.finishedDrop > rules.laborHeightFrom;
  const share = rules.laborHeightSurcharge;
  const charge = high && share !== undefined ? plain.times(share.plus(1)) : plain;
  const value = toCent(charge, rules.centRounding);
  const steps = (): Step[] => {
    const lines = [
      step(
        'making charge',
        `{} widths × ({} ${of.heading} + {} ${lining})`,
        [numberFigure(of.widths), moneyFigure(base), moneyFigure(more)],
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
    return lines;
  };
  return answer(value, steps);
}

/** Selling price: a markup on the cost or a margin on the selling price, named so that neither is taken for the other. */
export function sellPrice(of: {
  cost: Money;
  rate: Money;
  basis: SellBasis;
  rounding?: Rounding;
}): Answer<Money> {
  const rate = (): Figure => textFigure(of.rate.toString());
  if (of.basis === 'markup on cost') {
    const value = toCent(of.cost.times(of.rate.plus(1)), of.rounding);
    return answer(value, () => [
      step('selling price', '{} × (1 + {})', [moneyFigure(of.cost), rate()], moneyFigure(value)),
    ]);
  }
  if (of.rate.gte(1)) return refuse('noMargin', parameter('rate'), `${of.rate.times(100).toString()} %`);
  const value = toCent(of.cost.div(money(1).minus(of.rate)), of.rounding);
  return answer(value, () => [
    step('selling price', '{} ÷ (1 − {})', [moneyFigure(of.cost), rate()], moneyFigure(value)),
  ]);
}

export interface Taxed {
  readonly amounts: readonly Money[];
  readonly rate: Money;
  readonly basis: TaxBasis | undefined;
  readonly rounding: Rounding | undefined;
}

/** Sales tax to the cent: each line rounded and added, or the sum rounded once; never twice. */
export function salesTax(of: Taxed): Answer<Money> {
  const basis = of.basis ?? 'line';
  const rounding = of.rounding ?? 'half up';
  // 8.25 typed for 8.25 %.
  if (of.rate.gt(1)) return refuse('rateAboveWhole', parameter('rate'), `${of.rate.times(100).toString()} %`);
  const sum = of.amounts.reduce((total, one) => total.plus(one), NOTHING);
  const value =
    basis === 'invoice'
      ? toCent(sum.times(of.rate), rounding)
      : of.amounts.reduce((total, one) => total.plus(toCent(one.times(of.rate), rounding)), NOTHING);
  const findings: Finding[] = of.rate.gt(0.3)
    ? [finding('rateLooksHigh', parameter('rate'), `${of.rate.times(100).toString()} %`)]
    : [];
  return answer(
    value,
    [
      step(
        'tax',
        `{} × {}, rounded ${rounding} ${basis === 'line' ? `on each of ${of.amounts.length} lines` : 'once on the invoice'}`,
        [moneyFigure(sum), textFigure(of.rate.toString())],
        moneyFigure(value),
      ),
    ],
    findings,
  );
}
