/**
 * The cloths and suppliers of a job, from tables of their own: by the headings our sheets are written with, else by
 * what the reader of tables takes a heading to mean.
 */
import { MIN_SAID, meaningOf } from '../../core/window/reader/meanings';
import type { MeaningKey } from '../../core/window/reader/meanings';
import { WINDOW_COLUMNS } from '../../core/window/columns';
import type { JobCloth, Supplier } from '../../core/papers/job';
import type { EntryKind } from '../../core/papers/paper';
import type { Contents } from '../book';
import { FABRIC_HEADINGS } from '../sheets/cloth-columns';
import { SUPPLIER_HEADINGS } from '../sheets/house-papers';
import type { Cells } from './cells';

interface Column {
  readonly as: EntryKind;
  /** As our own sheets head it. */
  readonly own?: string;
  readonly means?: MeaningKey;
  /** Other words that are the heading outright. */
  readonly also?: readonly string[];
}

const NAME: Column = { as: 'words', means: 'fabric' };
const CLOTH: Readonly<Record<Exclude<keyof JobCloth, 'name'>, Column>> = {
  supplier: { as: 'words', means: 'supplier' },
  colour: { as: 'words', means: 'color' },
  content: { as: 'words', own: FABRIC_HEADINGS.content },
  width: { as: 'count', means: 'fabricWidth' },
  verticalRepeat: { as: 'count', means: 'verticalRepeat' },
  horizontalRepeat: { as: 'count', means: 'horizontalRepeat' },
  match: { as: 'words', means: 'match' },
  mayBeTurned: { as: 'words', own: FABRIC_HEADINGS.mayBeTurned },
  weight: { as: 'count', means: 'arealWeight', also: WINDOW_COLUMNS.arealWeight.also },
  price: { as: 'money', means: 'unitPrice' },
  toOrder: { as: 'yardage', own: FABRIC_HEADINGS.toOrder },
  wholeRoll: { as: 'yardage', own: FABRIC_HEADINGS.wholeRoll },
  certificate: { as: 'words', means: 'certificate' },
  reserve: { as: 'words', own: FABRIC_HEADINGS.reserve },
  neededBy: { as: 'day', own: FABRIC_HEADINGS.neededBy, means: 'otherDate' },
};
const SUPPLIER: Readonly<Record<Exclude<keyof Supplier, 'name'>, Column>> = {
  account: { as: 'words', own: SUPPLIER_HEADINGS.account },
  address: { as: 'words', own: SUPPLIER_HEADINGS.address },
  shipBy: { as: 'words', own: SUPPLIER_HEADINGS.shipBy },
};

/** Without the unit behind it. */
const plain = (heading: string): string =>
  heading
    .replace(/\(.*\)/, '')
    .trim()
    .toLowerCase();

/** Where a column stands among headings; below 0 where it does not. */
function placeOf({ own, means, also = [] }: Column, headings: readonly string[]): number {
  const exact = headings.findIndex((heading) => plain(heading) === own || also.includes(plain(heading)));
  if (exact >= 0 || means === undefined) return exact;
  let [best, at] = [MIN_SAID, -1];
  for (const [place, heading] of headings.entries()) {
    const said = meaningOf(heading);
    if (said?.key === means && said.share > best) [best, at] = [said.share, place];
  }
  return at;
}

/** Rows of a table as entries by key, each under its name; none where no column names them. */
function named<T extends { readonly name: string }>(
  cells: Cells,
  { area }: Contents['tables'][number],
  name: Column,
  columns: Readonly<Record<string, Column>>,
): readonly T[] {
  const headings = (cells.rows({ ...area, rows: 1 })[0] ?? []).map((one) => String(one ?? '').trim());
  const at = placeOf(name, headings);
  const found = Object.entries(columns).map(
    ([key, column]) => [key, placeOf(column, headings), column.as] as const,
  );
  if (at < 0) return [];
  return Array.from({ length: area.rows - 1 }, (_, down) => area.row + 1 + down).flatMap((row) => {
    const called = cells.at(area.sheet, row, area.column + at);
    if (called === null || String(called).trim() === '' || called === 0) return [];
    const rest = found.flatMap(([key, column, as]) => {
      const entry = column < 0 ? undefined : cells.entry(area.sheet, row, area.column + column, as);
      return entry === undefined || entry.value === 0 ? [] : [[key, entry] as const];
    });
    return [{ name: String(called).trim(), ...Object.fromEntries(rest) } as unknown as T];
  });
}

/** A table of fabrics has their widths, and nothing that only a window has. */
const isFabrics = ({ columns }: Contents['tables'][number]): boolean =>
  placeOf(NAME, columns) >= 0 &&
  placeOf(CLOTH.width, columns) >= 0 &&
  (['room', 'openingWidth'] as const).every((means) => placeOf({ as: 'words', means }, columns) < 0);

/** A table of ours, with how the names of its job end; that of linings says no width, which is a house rule. */
const OWN = /^(fabrics|linings)(_\d+)?$/i;

/** `job`: how the names of the job end; the cloths of another job in the workbook are none of its. */
export const clothsIn = (cells: Cells, job = ''): readonly JobCloth[] =>
  cells.contents.tables
    .filter((table) => {
      const own = OWN.exec(table.name);
      return own === null ? isFabrics(table) : (own[2] ?? '') === job;
    })
    .flatMap((table) => named<JobCloth>(cells, table, NAME, CLOTH));

export const suppliersIn = (cells: Cells): readonly Supplier[] =>
  cells.contents.tables
    .filter(({ columns }) => placeOf(SUPPLIER.account, columns) >= 0)
    .flatMap((table) =>
      named<Supplier>(cells, table, { as: 'words', own: SUPPLIER_HEADINGS.name }, SUPPLIER),
    );
