/** Money. */
import { choiceKind, listKind, optional, required, TABLE, type Kind } from '../src/core/cell/fields';
import { MONEY, ORDERED, PART, PRICE, RATE } from '../src/core/cell/figure-kinds';
import {
  breakPrice,
  labor,
  readPriceBreaks,
  salesTax,
  sellPrice,
  type PriceBreak,
} from '../src/core/price/price';
import { ROUNDING_WORDS, SELL_BASES, TAX_BASES } from '../src/core/cell/ways';
import { cellFunction } from './declare';
import { AMOUNT } from './gives';
import { FINISHED_DROP, HEADING, LINING, WIDTHS_IN_ALL } from './inputs';

const PRICE_BREAKS: Kind<readonly PriceBreak[]> = {
  quantity: 'table',
  noun: 'a range of two columns, from quantity and price',
  shape: 'range',
  read(raw, place) {
    const rows = TABLE.read(raw, place);
    const breaks = rows === undefined ? [] : readPriceBreaks(rows);
    return breaks.length === 0 ? undefined : breaks;
  },
};

export const BREAKPRICE = cellFunction({
  name: 'BREAKPRICE',
  chapter: 'Money',
  says: 'Unit price at a quantity, from a list of price breaks.',
  takes: {
    quantity: required(ORDERED, 'what is ordered, in the unit of the list'),
    priceBreaks: required(PRICE_BREAKS, 'two columns: from quantity, price'),
  },
  withRules: false,
  gives: AMOUNT,
  examples: [
    {
      formula: 'HEM.BREAKPRICE(60,{0,48.5;60,44;300,39.75})',
      gives: 44,
      because: '60 reaches the break from 60.',
    },
    {
      formula: 'HEM.BREAKPRICE(59.875,{0,48.5;60,44;300,39.75})',
      gives: 48.5,
      because: 'An eighth short of the break.',
    },
  ],
  answer: breakPrice,
});

export const LABOR = cellFunction({
  name: 'LABOR',
  chapter: 'Money',
  says: 'Making charge of a treatment, from the house’s price a width.',
  takes: { widths: WIDTHS_IN_ALL, heading: HEADING, finishedDrop: FINISHED_DROP, lining: LINING },
  gives: AMOUNT,
  examples: [
    {
      formula: 'HEM.LABOR(6,"pinch",96,"lined",{"labor pinch",32.5;"labor lined",9})',
      gives: 249,
      because: '6 × (32.50 + 9.00).',
    },
    {
      formula: 'HEM.LABOR(6,"pinch",120,,{"labor pinch",32.5;"labor height surcharge",0.15})',
      gives: 224.25,
      because: '6 × 32.50, and 15 % more for a drop over 108 in.',
    },
  ],
  answer: labor,
});

export const SELLPRICE = cellFunction({
  name: 'SELLPRICE',
  chapter: 'Money',
  says: 'Selling price from cost, by a markup on the cost or a margin on the selling price.',
  takes: {
    cost: required(PRICE, 'what it costs'),
    rate: required(RATE, 'the markup or the margin, as 0.4 or 40 %'),
    basis: required(choiceKind('a basis', SELL_BASES), 'markup on cost, or margin on selling price'),
  },
  withRules: false,
  gives: AMOUNT,
  examples: [
    { formula: 'HEM.SELLPRICE(120,0.5,"markup on cost")', gives: 180, because: '120 × (1 + 0.5).' },
    {
      formula: 'HEM.SELLPRICE(120,"50%","margin on selling price")',
      gives: 240,
      because: '120 ÷ (1 − 0.5): the same rate, another price.',
    },
  ],
  answer: sellPrice,
});

export const SALESTAX = cellFunction({
  name: 'SALESTAX',
  chapter: 'Money',
  says: 'Sales tax on the amounts, by line or by invoice, rounded once.',
  takes: {
    amounts: required(listKind(MONEY, 'an amount'), 'the taxable amounts'),
    rate: required(PART, 'the rate, as 0.0725 or 7.25 %'),
    basis: optional(
      choiceKind('a basis', TAX_BASES),
      'line (default): each line rounded; invoice: the sum rounded once',
    ),
    rounding: optional(
      choiceKind('a rounding', ROUNDING_WORDS),
      'the half-cent rule: half up (default), half even, up or down',
    ),
  },
  withRules: false,
  gives: AMOUNT,
  examples: [
    {
      formula: 'HEM.SALESTAX({12.46;12.46;12.46},0.0725)',
      gives: 2.7,
      because: '12.46 × 7.25 % is 0.90335, so 0.90 on each of 3 lines.',
    },
    {
      formula: 'HEM.SALESTAX({12.46;12.46;12.46},0.0725,"invoice")',
      gives: 2.71,
      because: '37.38 × 7.25 % is 2.71005, rounded once.',
    },
  ],
  answer: salesTax,
});
