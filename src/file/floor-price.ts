/** What a floor costs, for the command: prices out of the workbook or typed, the lines as text and as data. */
import { readAddress } from '../book/address';
import type { FloorWindow } from '../book/floor';
import { ordersOf } from '../book/floor-price-sheet';
import {
  LINING,
  NOTHING_TYPED,
  priceFloor,
  pricesIn,
  readClothPrice,
  type ClothTyped,
} from '../book/floor-prices';
import type { ClothPrice } from '../core/cloth-price';
import type { House } from '../core/house';
import type { JobPrice } from '../core/mock-up';
import type { Quote } from '../core/quote';
import { fabricOf } from '../core/tally';
import { digits, type Unit } from '../core/unit';
import type { Values } from './floor-options';
import { Problem, USAGE } from './problem';
import { namedValue, rowsOf } from './windows';
import type { WorkbookFile } from './workbook';

export type Prices = ReadonlyMap<string, ClothPrice>;

/** The cloth prices of a workbook's tables of fabrics and price breaks, and of its lining. */
function pricesOf(file: WorkbookFile): Map<string, ClothTyped> {
  const tables = file.tables.flatMap(({ sheet, ref }) => {
    const [of, area] = [file.sheets[sheet], readAddress(ref)];
    if (of === undefined || area === undefined) return [];
    const rows = [...rowsOf(of)].filter(([row]) => row >= area.row && row < area.row + area.rows);
    return [rows.map(([, cells]) => cells.slice(area.column, area.column + area.columns))];
  });
  const found = new Map(pricesIn(tables));
  const lining = namedValue(file, 'Price_lining');
  if (typeof lining === 'number' && !found.has(LINING))
    found.set(LINING, { ...NOTHING_TYPED, price: String(lining) });
  return found;
}

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

/** What the options say of a face fabric stands before what the workbook says. */
function typedFor(values: Values): Partial<ClothTyped> {
  const { price, least } = values;
  return {
    ...(price !== undefined && { price }),
    ...(least !== undefined && { minimum: least }),
    ...(values['whole-roll'] !== undefined && wholeRoll(values['whole-roll'])),
  };
}

/** Every price known. One that cannot be read is a misuse where it was typed, and told where the workbook has it. */
export function pricesKnown(
  file: WorkbookFile,
  windows: readonly FloorWindow[],
  values: Values,
  unit: Unit,
  tell: (sentence: string) => void,
): Prices {
  const found = pricesOf(file);
  const typed = typedFor(values);
  const lining = values['lining-price'];
  const cloths = [...new Set(windows.map(({ work }) => fabricOf(work)))].map(
    (name) => [name, { ...NOTHING_TYPED, ...found.get(name), ...typed }] as const,
  );
  const lined = { ...NOTHING_TYPED, ...found.get(LINING), ...(lining !== undefined && { price: lining }) };
  return new Map(
    [...cloths, [LINING, lined] as const].flatMap(([name, one]) => {
      const { price, faults } = readClothPrice(name, one, unit);
      const typedHere: Partial<ClothTyped> =
        name === LINING ? (lining === undefined ? {} : { price: lining }) : typed;
      for (const [field, fault] of Object.entries(faults)) {
        if (typedHere[field as keyof ClothTyped] !== undefined) throw new Problem(fault, USAGE);
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
    ...(discount.isZero() ? [] : [row('discount', '', discount.neg().toFixed(2))]),
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
