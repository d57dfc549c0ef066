/** The cloths and suppliers of a job, by the headings of the workbook's own tables. */
import type { JobCloth, Supplier } from '../../core/papers/job';
import type { EntryKind } from '../../core/papers/paper';
import type { Contents } from '../book';
import type { Cells } from './cells';

type Column = readonly [like: RegExp, as: EntryKind];

const CLOTH: Readonly<Record<Exclude<keyof JobCloth, 'name'>, Column>> = {
  supplier: [/^supplier|^mill$/i, 'words'],
  colour: [/^colou?r/i, 'words'],
  content: [/^content|^fibre|^fiber|^composition/i, 'words'],
  width: [/^(?:fabric|goods|bolt|cloth) w(?:idth)?\b|^width\b/i, 'count'],
  verticalRepeat: [/^v(?:ert(?:ical)?)?\.? ?rep/i, 'count'],
  horizontalRepeat: [/^h(?:oriz(?:ontal)?)?\.? ?rep/i, 'count'],
  match: [/^match/i, 'words'],
  mayBeTurned: [/^may be turned/i, 'words'],
  price: [/^price a (?:yd|m)\b(?! in)/i, 'money'],
  toOrder: [/^to order\b/i, 'yardage'],
  wholeRoll: [/^whole roll\b/i, 'yardage'],
  certificate: [/^(?:flame )?cert/i, 'words'],
  reserve: [/^reserve/i, 'words'],
  neededBy: [/^needed by|^required by/i, 'day'],
};
const SUPPLIER: Readonly<Record<Exclude<keyof Supplier, 'name'>, Column>> = {
  account: [/^(?:our )?account/i, 'words'],
  address: [/^(?:their )?address/i, 'words'],
  shipBy: [/^ship(?:ped)? by/i, 'words'],
};

/** Rows of a table as entries by key, each under its name; none where its first column has no name. */
function named<T extends { readonly name: string }>(
  cells: Cells,
  { area }: Contents['tables'][number],
  first: RegExp,
  columns: Readonly<Record<string, Column>>,
): readonly T[] {
  const headings = (cells.rows({ ...area, rows: 1 })[0] ?? []).map((one) => String(one ?? '').trim());
  const at = headings.findIndex((one) => first.test(one));
  const found = Object.entries(columns).map(
    ([key, [like, as]]) => [key, headings.findIndex((one) => like.test(one)), as] as const,
  );
  if (at < 0) return [];
  return Array.from({ length: area.rows - 1 }, (_, down) => area.row + 1 + down).flatMap((row) => {
    const name = cells.at(area.sheet, row, area.column + at);
    if (name === null || String(name).trim() === '' || name === 0) return [];
    const rest = found.flatMap(([key, column, as]) => {
      const entry = column < 0 ? undefined : cells.entry(area.sheet, row, area.column + column, as);
      return entry === undefined || entry.value === 0 ? [] : [[key, entry] as const];
    });
    return [{ name: String(name).trim(), ...Object.fromEntries(rest) } as unknown as T];
  });
}

const isFabrics = ({ columns }: Contents['tables'][number]): boolean =>
  columns.some((one) => /^(?:fabric|cloth)$/i.test(one)) &&
  columns.some((one) => CLOTH.width[0].test(one)) &&
  !columns.some((one) => /^room|^opening|^inside width/i.test(one));

export const clothsIn = (cells: Cells): readonly JobCloth[] =>
  cells.contents.tables
    .filter(isFabrics)
    .flatMap((table) => named<JobCloth>(cells, table, /^(?:fabric|cloth)$/i, CLOTH));

export const suppliersIn = (cells: Cells): readonly Supplier[] =>
  cells.contents.tables
    .filter(({ columns }) => columns.some((one) => SUPPLIER.account[0].test(one)))
    .flatMap((table) => named<Supplier>(cells, table, /^supplier/i, SUPPLIER));
