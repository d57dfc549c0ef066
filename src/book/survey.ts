/** The user's table, as pointed at: which cells to read, and what was said of them before. */
import type { Unit } from '../core/exact/unit';
import { areaAt, common, sameSheet, type Area } from './address';
import type { Book, Contents } from './book';
import { readColumns, type ColumnsRead, type Corrections, type WantedColumn } from './columns';
import { correctionsFrom, houseWords } from './house-words';
import { trouble } from './trouble';

/** What is kept in the workbook about one of its tables. */
export interface Mapping {
  /** The table's name, or the sheet's. */
  readonly of: string;
  /** Column id → wanted key, null for none: every column, as the user left it. */
  readonly columns: Corrections;
  /** The outputs the user asked for last. */
  readonly outputs: readonly string[];
  /** Figures that stand for every row. */
  readonly same?: Readonly<Record<string, string | number>>;
}

const KEY = 'mappings';

const isMapping = (raw: unknown): raw is Mapping => {
  const one = raw as Partial<Mapping> | null;
  return (
    typeof one === 'object' &&
    one !== null &&
    typeof one.of === 'string' &&
    typeof one.columns === 'object' &&
    Array.isArray(one.outputs)
  );
};

/** Every mapping kept in this workbook; what cannot be understood is passed over. */
export async function mappings(book: Book): Promise<readonly Mapping[]> {
  const raw = await book.recall(KEY);
  return Array.isArray(raw) ? raw.filter(isMapping) : [];
}

export async function keepMapping(book: Book, mapping: Mapping): Promise<void> {
  const others = (await mappings(book)).filter((one) => one.of !== mapping.of);
  await book.remember(KEY, [...others, mapping]);
}

/** By the table's name; where it was renamed, by headings that are all still there. */
function mappingFor(kept: readonly Mapping[], place: string, read: ColumnsRead): Mapping | undefined {
  const named = kept.find((one) => one.of === place);
  if (named !== undefined) return named;
  const ids = new Set(read.columns.map((one) => one.id));
  return kept.find((one) => {
    const known = Object.keys(one.columns);
    return known.length > 1 && known.every((id) => ids.has(id));
  });
}

export interface Survey {
  readonly contents: Contents;
  readonly read: ColumnsRead;
  readonly mapping: Mapping | undefined;
  /** What a mapping of this table is kept under. */
  readonly place: string;
}

/** The whole table around the selection; else the filled part of the sheet, as far as selected. */
function around(contents: Contents, selected: Area): { area: Area; prefer: number | undefined } {
  const table = contents.tables.find((one) => common(one.area, selected) !== undefined);
  if (table !== undefined) return { area: table.area, prefer: undefined };
  const used = contents.sheets.find((one) => sameSheet(one.name, selected.sheet))?.used;
  if (used === undefined) throw trouble('missing', `A filled cell on the sheet “${selected.sheet}”`);
  const wide = selected.columns > 1 ? common({ ...used, ...columnsOf(selected) }, used) : used;
  const end =
    selected.rows > 1 ? Math.min(selected.row + selected.rows, used.row + used.rows) : used.row + used.rows;
  const area = areaAt(
    used.sheet,
    used.row,
    (wide ?? used).column,
    Math.max(1, end - used.row),
    (wide ?? used).columns,
  );
  return { area, prefer: selected.columns > 1 ? selected.row : undefined };
}

const columnsOf = ({ column, columns }: Area): Pick<Area, 'column' | 'columns'> => ({ column, columns });

/** Reads the table around `selected` and says what each column is; `said` comes before what was kept. */
export async function survey(
  book: Book,
  wanted: readonly WantedColumn[],
  unit: Unit,
  selected: Area,
  said: Corrections = {},
): Promise<Survey> {
  const contents = await book.contents();
  const { area, prefer } = around(contents, selected);
  const [block] = await book.read([area], 'contents');
  if (block === undefined) throw trouble('missing', `The sheet “${selected.sheet}”`);
  const first = readColumns(block, wanted, unit, said, prefer);
  if (first === undefined) throw trouble('noHeader', selected.sheet);
  const place = block.table?.name ?? selected.sheet;
  const mapping = mappingFor(await mappings(book), place, first);
  const words = correctionsFrom(first, await houseWords(book, contents));
  if (mapping === undefined && Object.keys(words).length === 0)
    return { contents, read: first, mapping, place };
  const known = { ...words, ...mapping?.columns, ...said };
  const read = readColumns(block, wanted, unit, known, prefer) ?? first;
  return { contents, read, mapping, place };
}
