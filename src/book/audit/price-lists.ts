/** Price lists in the workbook, wherever a sheet heads its columns with fabric and price. */
import { Refusal } from '../../core/cell/answer';
import { readPrices } from '../../core/audit/price-list';
import { isBlank } from '../../core/cell/fields';
import { bare } from '../../core/cell/treatment';
import type { Block, CellValue } from '../book';

export interface PricesFound {
  /** Fabric, price and, where it has one, the day it began. */
  readonly rows: readonly (readonly CellValue[])[];
  /** The sheets they stand on. */
  readonly sheets: readonly string[];
  /** Whether any has its day. */
  readonly dated: boolean;
}

interface PriceColumns {
  readonly header: number;
  readonly fabric: number;
  readonly price: number;
  readonly from: number;
}

const FABRIC = /^fabrics?$/i;
const PRICE = /^(list |unit )?price( (a|per) \w+)?$/i;
const FROM = /^(price )?(in force )?(valid )?(from|since)$/i;
/** A list of prices is no list of orders: those have windows. */
const ORDERED = /^(?!fabric|cloth).*\b(width|widths|drop|height|heading|style|quantity|qty|yards|yardage)\b/i;
const DEEPEST_HEADER = 20;

function priceColumns({ values }: Block): PriceColumns | undefined {
  for (const [header, row] of values.slice(0, DEEPEST_HEADER).entries()) {
    const texts = row.map((cell) =>
      String(cell ?? '')
        .replace(/[([].*$/, '')
        .trim(),
    );
    if (texts.filter((text) => ORDERED.test(text)).length > 1) continue;
    const at = (one: RegExp): number => texts.findIndex((text) => one.test(text));
    const found = { header, fabric: at(FABRIC), price: at(PRICE), from: at(FROM) };
    if (found.fabric >= 0 && found.price >= 0) return found;
  }
  return undefined;
}

/** Why a row is no price; undefined where it is one, or holds none. */
function fault(row: readonly CellValue[]): string | undefined {
  try {
    readPrices([row]);
    return undefined;
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.finding.sentence.replace(/^prices row 1 /, '');
    throw thrown;
  }
}

/** Every price of these sheets. A row that is none is passed over, and said. */
export function pricesIn(blocks: readonly Block[]): { prices: PricesFound | undefined; notes: string[] } {
  const rows: (readonly CellValue[])[] = [];
  const notes: string[] = [];
  const sheets = new Set<string>();
  const always = new Map<string, { readonly price: string; readonly sheet: string }>();
  for (const block of blocks) {
    const columns = priceColumns(block);
    if (columns === undefined) continue;
    const { sheet } = block.area;
    for (const [at, cells] of block.values.entries()) {
      const fabric = cells[columns.fabric] ?? null;
      const price = cells[columns.price] ?? null;
      const from = cells[columns.from] ?? null;
      if (at <= columns.header || isBlank(fabric) || isBlank(price)) continue;
      const row = [fabric, price, from];
      const why = fault(row);
      if (why !== undefined) {
        notes.push(`Row ${block.area.row + at + 1} of “${sheet}” ${why} It is passed over.`);
        continue;
      }
      if (typeof price === 'string' && !/\d/.test(price)) continue;
      const cloth = bare(String(fabric));
      const other = always.get(cloth);
      if (isBlank(from) && other !== undefined) {
        if (other.price !== String(price))
          notes.push(
            `“${String(fabric)}” costs ${other.price} on “${other.sheet}” and ${String(price)} on “${sheet}”; the first is used. Give the newer price the day it began, in a column headed “from”.`,
          );
        continue;
      }
      if (isBlank(from)) always.set(cloth, { price: String(price), sheet });
      rows.push(row);
      sheets.add(sheet);
    }
  }
  if (rows.length === 0) return { prices: undefined, notes };
  return { prices: { rows, sheets: [...sheets], dated: rows.some(([, , from]) => !isBlank(from)) }, notes };
}
