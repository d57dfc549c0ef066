/** The prices a floor is priced by: the workbook's own tables, or typed in the pane, as cells hold them. */
import { Refusal } from '../core/answer';
import { CLOTH_BREAKS, type ClothPrice } from '../core/cloth-price';
import { PRICE, YARDS, type Kind } from '../core/fields';
import type { WindowWork } from '../core/job';
import { priceJob, type JobPrice } from '../core/mock-up';
import type { PriceList } from '../core/quote';
import type { Unit } from '../core/unit';
import type { Book, CellValue } from './book';
import type { Floor } from './floor';
import { filled } from './header';

/** What is typed for one cloth. */
export interface ClothTyped {
  /** One price, or breaks: “0 28.50; 50 26”. */
  readonly price: string;
  /** The least that is cut. */
  readonly minimum: string;
  readonly rollLength: string;
  /** By the yard (metre) of a whole roll. */
  readonly rollPrice: string;
}
export type ClothField = keyof ClothTyped;
export const NOTHING_TYPED: ClothTyped = { price: '', minimum: '', rollLength: '', rollPrice: '' };

/** What the lining is called among the prices. */
export const LINING = 'lining';

type Rows = readonly (readonly CellValue[])[];

const FABRICS: Readonly<Record<ClothField | 'fabric', RegExp>> = {
  fabric: /^fabric$/i,
  price: /^price( (a|per) \w+)?$/i,
  minimum: /^(minimum|least)( order| cut)?$/i,
  rollLength: /^whole rolls?( length)?$/i,
  rollPrice: /^(price )?(a|per) \w+ in (whole )?rolls$/i,
};
const BREAKS = { fabric: /^price breaks? of$/i, from: /^from$/i, price: /^break price$/i } as const;

/** Columns by their headings, a unit in brackets aside; undefined where a needed one is missing. */
function columnsOf<K extends string>(
  header: readonly CellValue[],
  like: Readonly<Record<K, RegExp>>,
  needed: readonly NoInfer<K>[],
): Readonly<Record<K, number>> | undefined {
  const headings = header.map((cell) =>
    String(cell ?? '')
      .replace(/\(.*\)/, '')
      .trim(),
  );
  const found = Object.fromEntries(
    Object.entries<RegExp>(like).map(([key, one]) => [key, headings.findIndex((text) => one.test(text))]),
  ) as Record<K, number>;
  return needed.every((key) => found[key] >= 0) ? found : undefined;
}

const textAt = (row: readonly CellValue[], column: number): string => {
  const cell = column < 0 ? null : (row[column] ?? null);
  return filled(cell) ? String(cell).trim() : '';
};

/** Prices by fabric out of tables, each with its header: a table of fabrics, and one of price breaks. */
export function pricesIn(tables: readonly Rows[]): ReadonlyMap<string, ClothTyped> {
  const found = new Map<string, ClothTyped>();
  const breaks = new Map<string, string[]>();
  for (const [header = [], ...rows] of tables) {
    const fabrics = columnsOf(header, FABRICS, ['fabric', 'price']);
    const broken = columnsOf(header, BREAKS, ['fabric', 'from', 'price']);
    for (const row of rows) {
      const name = textAt(row, (fabrics ?? broken)?.fabric ?? -1);
      if (name === '') continue;
      if (fabrics !== undefined) {
        const [price, minimum, rollLength, rollPrice] = (
          ['price', 'minimum', 'rollLength', 'rollPrice'] as const
        ).map((field) => textAt(row, fabrics[field])) as [string, string, string, string];
        if (price + rollPrice !== '') found.set(name, { price, minimum, rollLength, rollPrice });
      } else if (broken !== undefined && textAt(row, broken.price) !== '') {
        const from = textAt(row, broken.from) || '0';
        breaks.set(name, [...(breaks.get(name) ?? []), `${from} ${textAt(row, broken.price)}`]);
      }
    }
  }
  for (const [name, list] of breaks) {
    const typed = found.get(name) ?? NOTHING_TYPED;
    // The price of the table stands below the first break.
    const first =
      typed.price === '' || list.some((one) => /^0(\.0*)? /.test(one)) ? [] : [`0 ${typed.price}`];
    found.set(name, { ...typed, price: [...first, ...list].join('; ') });
  }
  return found;
}

/** Prices by fabric as the workbook has them, the lining's among them. */
export async function clothPrices(book: Book): Promise<ReadonlyMap<string, ClothTyped>> {
  const { tables, names } = await book.contents();
  const priced = tables.filter(
    ({ columns }) =>
      columnsOf(columns, FABRICS, ['fabric', 'price']) ?? columnsOf(columns, BREAKS, ['price']),
  );
  const lining = names.find(({ name, area }) => /^price_lining(_\d+)?$/i.test(name) && area !== undefined);
  const areas = [...priced.map(({ area }) => area), ...(lining?.area === undefined ? [] : [lining.area])];
  const blocks = (await book.read(areas, 'contents')).map(({ values }) => values);
  const found = new Map(pricesIn(blocks.slice(0, priced.length)));
  const each = lining === undefined ? '' : textAt(blocks.at(-1)?.[0] ?? [], 0);
  const known = found.get(LINING);
  if (each !== '' && known === undefined) found.set(LINING, { ...NOTHING_TYPED, price: each });
  return found;
}

const SAID: Readonly<Record<ClothField, string>> = {
  price: 'the price',
  minimum: 'the least that is cut',
  rollLength: 'the whole roll',
  rollPrice: 'the price in whole rolls',
};

export interface ClothRead {
  /** Undefined where nothing is typed, or something of it cannot be read. */
  readonly price: ClothPrice | undefined;
  /** Why a field cannot be used. */
  readonly faults: Partial<Record<ClothField, string>>;
}

export function readClothPrice(name: string, typed: ClothTyped, unit: Unit): ClothRead {
  const faults: Partial<Record<ClothField, string>> = {};
  const read = <T>(field: ClothField, kind: Kind<T>): T | undefined => {
    try {
      return kind.read(typed[field], { name: `${name}, ${SAID[field]}`, unit });
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      faults[field] = thrown.finding.sentence;
      return undefined;
    }
  };
  const breaks = read('price', CLOTH_BREAKS);
  const minimum = read('minimum', YARDS);
  const length = read('rollLength', YARDS);
  const each = read('rollPrice', PRICE);
  if (Object.keys(faults).length === 0 && (length === undefined) !== (each === undefined)) {
    const [field, missing] =
      length === undefined ? (['rollLength', 'length'] as const) : (['rollPrice', 'price'] as const);
    faults[field] = `${name} has a whole roll without its ${missing}. Enter both, or neither.`;
  }
  const wholeRoll = length === undefined || each === undefined ? undefined : { length, price: each };
  const none = (breaks === undefined && wholeRoll === undefined) || Object.keys(faults).length > 0;
  return { price: none ? undefined : { breaks: breaks ?? [], minimum, wholeRoll }, faults };
}

/** A price list out of prices by cloth, the lining's among them. */
export const priceList = (prices: ReadonlyMap<string, ClothPrice>): PriceList => ({
  face: prices,
  lining: prices.get(LINING),
});

/** The floor priced with what is known; its findings say what is missing, and a deposit below the cloth. */
export function priceFloor(
  { windows, house }: Pick<Floor, 'windows' | 'house'>,
  prices: ReadonlyMap<string, ClothPrice>,
): JobPrice {
  const types = new Map<WindowWork, string>(windows.map(({ work, type }) => [work, type]));
  return priceJob([...types.keys()], priceList(prices), house.rules, (work) => types.get(work) ?? '');
}
