/** The prices a floor is priced by: the workbook's own tables, or typed in the pane, as cells hold them. */
import { Refusal } from '../../core/cell/answer';
import { BEHIND } from '../../core/cloth/behind';
import { CLOTH_BREAKS, type ClothPrice } from '../../core/floor/cloth-price';
import { type Kind } from '../../core/cell/fields';
import { PRICE, setOrNone } from '../../core/cell/figure-kinds';
import { YARDS } from '../../core/cell/length-kinds';
import type { WindowWork } from '../../core/window/job';
import { priceJob, type JobPrice } from '../../core/quote/mock-up';
import type { PriceList } from '../../core/quote/quote';
import type { Unit } from '../../core/exact/unit';
import { filled, type BookRead, type CellValue } from '../book';
import type { Floor } from './floor';

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

type Rows = readonly (readonly CellValue[])[];

const FABRICS: Readonly<Record<ClothField | 'fabric', RegExp>> = {
  fabric: /^(fabric|cloth)$/i,
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

/** “Blackout Lining” of a table is the blackout lining; a fabric keeps the user's spelling. */
const clothNamed = (name: string): string =>
  BEHIND.find((cloth) => cloth === name.toLowerCase().replace(/\s+/g, ' ')) ?? name;

/** Prices by fabric out of tables, each with its header: a table of fabrics, and one of price breaks. */
export function pricesIn(tables: readonly Rows[]): ReadonlyMap<string, ClothTyped> {
  const found = new Map<string, ClothTyped>();
  const breaks = new Map<string, string[]>();
  for (const [header = [], ...rows] of tables) {
    const fabrics = columnsOf(header, FABRICS, ['fabric', 'price']);
    const broken = columnsOf(header, BREAKS, ['fabric', 'from', 'price']);
    for (const row of rows) {
      const name = clothNamed(textAt(row, (fabrics ?? broken)?.fabric ?? -1));
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

/** The named cell a sheet of prices has for a cloth behind the face: Price_lining, Price_blackout_lining. */
const pricesCell = (cloth: string): string => `Price_${cloth.replaceAll(' ', '_')}`;

/** Prices of named cells, where no table has the cloth. */
export function withNamedCells(
  prices: ReadonlyMap<string, ClothTyped>,
  valueOf: (name: string) => CellValue | undefined,
): Map<string, ClothTyped> {
  const all = new Map(prices);
  for (const cloth of BEHIND) {
    const value = valueOf(pricesCell(cloth)) ?? null;
    if (filled(value) && !all.has(cloth)) all.set(cloth, { ...NOTHING_TYPED, price: String(value).trim() });
  }
  return all;
}

/** Prices by cloth as the workbook has them. */
export async function clothPrices(book: BookRead): Promise<ReadonlyMap<string, ClothTyped>> {
  const { tables, names } = await book.contents();
  const priced = tables.filter(
    ({ columns }) =>
      columnsOf(columns, FABRICS, ['fabric', 'price']) ?? columnsOf(columns, BREAKS, ['price']),
  );
  const cells = BEHIND.flatMap((cloth) => {
    const like = new RegExp(`^${pricesCell(cloth)}(_\\d+)?$`, 'i');
    const area = names.find((one) => like.test(one.name) && one.area !== undefined)?.area;
    return area === undefined ? [] : [{ name: pricesCell(cloth), area }];
  });
  const areas = [...priced, ...cells].map(({ area }) => area);
  const blocks = (await book.read(areas, 'contents')).map(({ values }) => values);
  const values = new Map(cells.map(({ name }, at) => [name, blocks[priced.length + at]?.[0]?.[0]]));
  return withNamedCells(pricesIn(blocks.slice(0, priced.length)), (name) => values.get(name));
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
  const each = read('rollPrice', setOrNone(PRICE));
  if (Object.keys(faults).length === 0 && (length === undefined) !== (each === undefined)) {
    const [field, missing] =
      length === undefined ? (['rollLength', 'length'] as const) : (['rollPrice', 'price'] as const);
    faults[field] = `${name} has a whole roll without its ${missing}. Enter both, or neither.`;
  }
  const wholeRoll = length === undefined || each === undefined ? undefined : { length, price: each };
  const none = (breaks === undefined && wholeRoll === undefined) || Object.keys(faults).length > 0;
  return { price: none ? undefined : { breaks: breaks ?? [], minimum, wholeRoll }, faults };
}

/** The floor priced with what is known; its findings say what is missing, and a deposit below the cloth. */
export function priceFloor(
  { windows, house }: Pick<Floor, 'windows' | 'house'>,
  prices: PriceList,
): JobPrice {
  const types = new Map<WindowWork, string>(windows.map(({ work, type }) => [work, type]));
  return priceJob([...types.keys()], prices, house.rules, (work) => types.get(work) ?? '');
}
