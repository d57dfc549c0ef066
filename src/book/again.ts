/**
 * Formulas of ours entered again as they stand: where the add-in came after the workbook, Excel may go on
 * showing #NAME? until a formula is entered anew (office-js #6611).
 */
import { NAMESPACE } from '../../functions/index';
import { areaAt, type Area } from './address';
import { apply, type Watch } from './apply';
import type { Block, Book, BookRead, Put } from './book';
import { countedFrom } from './formula';

/** The formulas of ours on one sheet. */
export interface OurFormulas {
  readonly sheet: string;
  readonly count: number;
  /** How many of them show #NAME?. */
  readonly unknown: number;
  readonly columns: number;
  /** What enters them again: a stretch of a column where all are alike is one. */
  readonly puts: readonly (Put & { readonly formula: string })[];
}

const OURS = new RegExp(`(^|[^A-Za-z0-9_.])${NAMESPACE}\\.[A-Z]`, 'i');
/** As a file stores them, and as a workbook shows them whose link to the add-in broke. */
const STORED = new RegExp(`(?:\\[\\d+\\]!)?_xldudf_${NAMESPACE}_`, 'gi');

const asTyped = (formula: string): string => formula.replace(STORED, `${NAMESPACE}.`);

function oursIn({ area, values, formulas }: Block): OurFormulas {
  const puts: { area: Area; formula: string }[] = [];
  let [count, unknown] = [0, 0];
  for (let across = 0; across < area.columns; across++) {
    let last: { put: { area: Area; formula: string }; counted: string } | undefined;
    for (let down = 0; down < area.rows; down++) {
      const formula = asTyped(formulas[down]?.[across] ?? '');
      if (!OURS.test(formula)) {
        last = undefined;
        continue;
      }
      count += 1;
      if (values[down]?.[across] === '#NAME?') unknown += 1;
      const at = areaAt(area.sheet, area.row + down, area.column + across);
      const counted = countedFrom(formula, at.row, at.column);
      if (last?.counted === counted) last.put.area = { ...last.put.area, rows: last.put.area.rows + 1 };
      else {
        last = { put: { area: at, formula }, counted };
        puts.push(last.put);
      }
    }
  }
  const columns = new Set(puts.map((put) => put.area.column)).size;
  return { sheet: area.sheet, count, unknown, columns, puts };
}

/** Every sheet that holds formulas of ours, those with #NAME? first. */
export async function ourFormulas(book: BookRead): Promise<readonly OurFormulas[]> {
  const { sheets } = await book.contents();
  const blocks = await book.read(
    sheets.flatMap(({ used }) => used ?? []),
    'cells',
  );
  return blocks
    .map(oursIn)
    .filter(({ count }) => count > 0)
    .sort((one, other) => other.unknown - one.unknown);
}

/** Enters them again; nothing else of the sheet is touched. */
export function enterAgain(book: Book, { sheet, puts }: OurFormulas, watch: Watch = {}): Promise<void> {
  const mayOverwrite = puts.map(({ area }) => area);
  return apply(
    book,
    `Enter the formulas of “${sheet}” again`,
    { puts },
    { ...watch, mayOverwrite, hiddenRowsToo: true },
  );
}
