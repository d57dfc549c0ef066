/** What a floor costs, for the command: prices out of the workbook or typed, the lines as text and as data. */
import type { BookRead } from '../../book/book';
import { clothsBehind, type FloorWindow } from '../../book/floor/floor';
import { ordersOf } from '../../book/floor/price-sheet';
import {
  clothPrices,
  NOTHING_TYPED,
  priceFloor,
  readClothPrice,
  type ClothTyped,
} from '../../book/floor/prices';
import { BEHIND, type Behind } from '../../core/cloth/behind';
import type { ClothPrice } from '../../core/floor/cloth-price';
import type { House } from '../../core/house/house';
import type { JobPrice } from '../../core/quote/mock-up';
import type { Quote } from '../../core/quote/quote';
import { fabricOf } from '../../core/floor/tally';
import { digits, type Unit } from '../../core/exact/unit';
import type { Values } from './options';
import { Problem, USAGE } from '../problem';

export type Prices = ReadonlyMap<string, ClothPrice>;

/** “60 at 22.50”: a whole roll and its price by the yard or metre. */
function wholeRoll(text: string): Pick<ClothTyped, 'rollLength' | 'rollPrice'> {
  const found = /^(.+?)\s+at\s+(\S+)$/i.exec(text.trim());
  if (found === null)
    throw new Problem(
      `--whole-roll reads “${text}”. Write a roll's length and its price, like "60 at 22.50".`,
      USAGE,
    );
  return { rollLength: found[1] ?? '', rollPrice: found[2] ?? '' };
}

const PRICE_OF: Readonly<Record<Behind, 'lining-price' | 'blackout-price' | 'interlining-price'>> = {
  lining: 'lining-price',
  'blackout lining': 'blackout-price',
  interlining: 'interlining-price',
};
const ofBehind = (cloth: Behind, values: Values): Partial<ClothTyped> => {
  const price = values[PRICE_OF[cloth]];
  return price === undefined ? {} : { price };
};

/** What the options say of a face fabric stands before what the workbook says. */
function ofFace(values: Values): Partial<ClothTyped> {
  const { price, least } = values;
  return {
    ...(price !== undefined && { price }),
    ...(least !== undefined && { minimum: least }),
    ...(values['whole-roll'] !== undefined && wholeRoll(values['whole-roll'])),
  };
}

/** Every price known. One that cannot be read is a misuse where it was typed, and told where the workbook has it. */
export async function pricesKnown(
  book: BookRead,
  windows: readonly FloorWindow[],
  values: Values,
  unit: Unit,
  tell: (sentence: string) => void,
): Promise<Prices> {
  const found = await clothPrices(book);
  const faces = new Set(windows.map(({ work }) => fabricOf(work)));
  // Blackout is asked the lining's price where it has none of its own.
  const behind = BEHIND.filter((cloth) => cloth === 'lining' || clothsBehind(windows).includes(cloth));
  const cloths: readonly (readonly [string, Partial<ClothTyped>])[] = [
    ...[...faces].map((name) => [name, ofFace(values)] as const),
    ...behind.map((cloth) => [cloth, ofBehind(cloth, values)] as const),
  ];
  return new Map(
    cloths.flatMap(([name, typed]) => {
      const whole = { ...NOTHING_TYPED, ...found.get(name), ...typed };
      const { price, faults } = readClothPrice(name, whole, unit);
      for (const [field, fault] of Object.entries(faults)) {
        if (typed[field as keyof ClothTyped] !== undefined) throw new Problem(fault, USAGE);
        tell(fault);
      }
      return price === undefined ? [] : [[name, price] as const];
    }),
  );
}

/** The one fabric's price, for the what-if table. */
export function priceOfAll(windows: readonly FloorWindow[], prices: Prices): ClothPrice | undefined {
  const names = new Set(windows.map(({ work }) => fabricOf(work)));
  const each = new Set([...names].map((name) => prices.get(name)));
  return names.size === 1 || each.size === 1 ? [...each][0] : undefined;
}

/** Undefined where no cloth and no making has a price: there is nothing to say then. */
export function pricedFloor(
  windows: readonly FloorWindow[],
  house: House,
  prices: Prices,
): JobPrice | undefined {
  const made = Object.values(house.rules.labor).some((each) => each !== undefined);
  return prices.size === 0 && !made ? undefined : priceFloor({ windows, house }, prices);
}

const WORDS = 34;
const FIGURES = 13;

function quoteLines({ lines, sum, discount, tax, total, deposit }: Quote): string[] {
  const row = (what: string, quantity: string, amount: string): string =>
    `  ${what.padEnd(WORDS)}${quantity.padStart(FIGURES)}${amount.padStart(FIGURES)}`;
  return [
    ...lines.flatMap((line) => [
      row(
        line.what,
        `${digits(Number(line.quantity.toFixed(2)))} ${line.unit}`,
        line.cost === undefined ? 'not set' : line.price.toFixed(2),
      ),
      ...(line.says === undefined ? [] : [`    ${line.says}`]),
    ]),
    row('sum', '', sum.toFixed(2)),
    ...(discount.eq(0) ? [] : [row('discount', '', discount.neg().toFixed(2))]),
    row('tax', '', tax.toFixed(2)),
    row('total', '', total.toFixed(2)),
    row('deposit', '', deposit.toFixed(2)),
  ];
}

export function priceLines(priced: JobPrice): string[] {
  const { mockUp, findings } = priced;
  const orders = ordersOf(priced).flatMap(([order, quote]) => [
    ...(mockUp === undefined ? [] : [order === 'mock-up' ? `  The mock-up: ${mockUp.says}` : '  The rest']),
    ...quoteLines(quote),
  ]);
  return [
    ...orders,
    ...(mockUp === undefined
      ? []
      : [`  both orders ${mockUp.total.toFixed(2)}; the mock-up adds ${mockUp.adds.toFixed(2)}`]),
    ...findings.map(({ weight, sentence }) => `  ${weight.padEnd(6)} ${sentence}`),
  ];
}

export const priceAsData = (priced: JobPrice) => ({
  orders: ordersOf(priced).map(([order, { lines, sum, discount, tax, total, deposit }]) => ({
    order,
    lines: lines.map(({ cost, price, ...line }) => ({
      ...line,
      cost: cost?.toNumber(),
      price: price.toNumber(),
    })),
    sum: sum.toNumber(),
    discount: discount.toNumber(),
    tax: tax.toNumber(),
    total: total.toNumber(),
    deposit: deposit.toNumber(),
  })),
  mockUp: priced.mockUp && {
    says: priced.mockUp.says,
    total: priced.mockUp.total.toNumber(),
    adds: priced.mockUp.adds.toNumber(),
  },
  findings: priced.findings.map(({ weight, about, sentence }) => ({ weight, about, sentence })),
});
