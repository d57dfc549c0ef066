/** What an order row says beside its figures: whose it is, when, for whom, and what it costs. */
import { DATE, type Day } from '../cell/day';
import { choiceKind, TEXT, type Kind } from '../cell/fields';
import { MONEY, QUANTITY } from '../cell/figure-kinds';
import type { Money } from '../exact/money';
import { choices } from '../cell/treatment';

export type YesOrNo = 'yes' | 'no';
const YES_OR_NO = choiceKind<YesOrNo>(
  'yes or no',
  choices<YesOrNo>(
    { word: 'yes', says: 'yes', also: ['y', 'true', 'x', 'ja', 'oui', '1'] },
    { word: 'no', says: 'no', also: ['n', 'false', '-', 'none', '0'] },
  ),
);
export type DrawnBy = 'cord' | 'wand' | 'hand' | 'motor';
const DRAWN_BY = choiceKind<DrawnBy>(
  'cord, wand, hand or motor',
  choices<DrawnBy>(
    {
      word: 'cord',
      says: 'an operating cord or loop',
      also: ['corded', 'cord loop', 'loop', 'chain', 'bead chain', 'cord draw', 'traverse cord'],
    },
    { word: 'wand', says: 'a wand', also: ['baton', 'draw rod'] },
    { word: 'hand', says: 'drawn by hand', also: ['hand drawn', 'none', 'cordless', 'by hand'] },
    { word: 'motor', says: 'a motor', also: ['motorised', 'motorized', 'electric'] },
  ),
);

interface Fact<T> {
  readonly heading: string;
  readonly also: readonly string[];
  readonly kind: Kind<T>;
}
const fact = <T>(heading: string, also: readonly string[], kind: Kind<T>): Fact<T> => ({
  heading,
  also,
  kind,
});

export const FACTS = {
  customer: fact('customer', ['client', 'account', 'sold to', 'customer name', 'client name'], TEXT),
  job: fact('job', ['project', 'site', 'property', 'job name', 'sidemark', 'side mark'], TEXT),
  order: fact(
    'order no',
    ['order', 'order number', 'ord no', 'ord', 'po', 'po no', 'invoice', 'invoice no'],
    TEXT,
  ),
  date: fact('date', ['order date', 'ordered', 'ordered on', 'date ordered'], DATE),
  publicJob: fact('public job', ['public', 'contract', 'public building', 'public space'], YES_OR_NO),
  certificate: fact(
    'flame certificate',
    ['certificate', 'flame cert', 'fr certificate', 'fr cert', 'fire certificate', 'cert', 'fr'],
    TEXT,
  ),
  drawnBy: fact(
    'drawn by',
    ['cord or wand', 'pull', 'cords', 'cord', 'control', 'controls', 'operated by'],
    DRAWN_BY,
  ),
  children: fact('children', ['children present', 'child in the house', 'child room', 'kids'], YES_OR_NO),
  childSafe: fact('child safe', ['cord safety', 'cord secured', 'cord cleat', 'childsafe'], YES_OR_NO),
  clearGlass: fact(
    'clear of glass',
    ['clear glass', 'stack off', 'stack off glass', 'glass clear'],
    YES_OR_NO,
  ),
  leftWidths: fact('left widths', ['widths left', 'widths l', 'left panel widths'], QUANTITY),
  rightWidths: fact('right widths', ['widths right', 'widths r', 'right panel widths'], QUANTITY),
  unitPrice: fact(
    'unit price',
    ['price', 'price a yard', 'price per yard', 'price per metre', 'price/yd', 'price/m', 'fabric price'],
    MONEY,
  ),
  amount: fact(
    'amount',
    [
      'fabric amount',
      'cloth amount',
      'line amount',
      'fabric cost',
      'cloth cost',
      'extended',
      'extended price',
      'ext price',
      'face amount',
    ],
    MONEY,
  ),
  liningAmount: fact('lining amount', ['lining cost', 'lining charge'], MONEY),
  hardware: fact('hardware', ['hardware amount', 'hardware cost', 'rod cost'], MONEY),
  installation: fact('installation', ['install', 'installing', 'fitting'], MONEY),
  freight: fact('freight', ['shipping', 'delivery', 'carriage'], MONEY),
  discount: fact('discount', ['less discount', 'reduction'], MONEY),
  tax: fact('tax', ['sales tax', 'vat'], MONEY),
  net: fact('net', ['net total', 'subtotal', 'total before tax', 'net amount'], MONEY),
  total: fact('total', ['line total', 'total price', 'order total', 'grand total', 'total amount'], MONEY),
  deposit: fact('deposit', ['deposit paid', 'down payment', 'paid'], MONEY),
} as const;

export type FactKey = keyof typeof FACTS;
export type Facts = {
  readonly [K in FactKey]?: (typeof FACTS)[K] extends Fact<infer T> ? T | undefined : never;
};
export type { Day, Money };
