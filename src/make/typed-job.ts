/** A job of our own template filled as a person types it, for tests and measurements. */
import { areaAt } from '../book/address';
import type { CellPut, Put } from '../book/book';
import type { Draft } from '../book/sheets/draft';
import { jobChanges, USUAL_JOB, type NewJob } from '../book/template';

export type Row = Readonly<Record<string, CellPut>>;

export interface JobTyped {
  readonly job?: Partial<NewJob>;
  readonly windows: readonly Row[];
  readonly fabrics?: readonly Row[];
  readonly extras?: readonly Row[];
  /** By the cell's name: Price_rod. */
  readonly cells?: Row;
  /** Making charges by name: labor pinch. */
  readonly charges?: Row;
  /** The house's words by their label. */
  readonly house?: Row;
  /** Facts of the job by their label. */
  readonly facts?: Row;
}

/** Rows below the headings that begin so, in a table of the draft. */
function inTable(draft: Draft, table: string, rows: readonly Row[] = []): Put[] {
  const area = draft.newTables?.find(({ name }) => name === table)?.area;
  if (area === undefined) throw new Error(`no table ${table}`);
  const header = draft.puts?.find(
    (put) => put.area.sheet === area.sheet && put.area.row === area.row && put.area.column === area.column,
  );
  const headings = (header?.cells?.[0] ?? []).map(String);
  return rows.flatMap((row, down) =>
    Object.entries(row).map(([heading, value]) => {
      const at = headings.findIndex((one) => one.startsWith(heading));
      if (at < 0) throw new Error(`no column ${heading} in ${table}`);
      return { area: areaAt(area.sheet, area.row + 1 + down, area.column + at), cells: [[value]] };
    }),
  );
}

/** Beside words of a sheet's first column. */
function beside(draft: Draft, sheet: string, words: Row = {}): Put[] {
  const labels = (draft.puts ?? []).flatMap(({ area, cells = [] }) =>
    area.sheet === sheet && area.column === 0
      ? cells.map((row, down) => ({ label: row[0], row: area.row + down }))
      : [],
  );
  return Object.entries(words).map(([label, value]) => {
    const found = labels.find((one) => one.label === label);
    if (found === undefined) throw new Error(`no “${label}” on ${sheet}`);
    return { area: areaAt(sheet, found.row, 1), cells: [[value]] };
  });
}

const named = (draft: Draft, cells: Row = {}): Put[] =>
  Object.entries(cells).map(([name, value]) => {
    const area = draft.newNames?.find((one) => one.name === name)?.area;
    if (area === undefined) throw new Error(`no name ${name}`);
    return { area, cells: [[value]] };
  });

/** The sheets of the job with what is typed in them. */
export function typedJob(typed: JobTyped): Draft {
  const { windows } = typed;
  const made = { ...USUAL_JOB, windows: Math.max(4, windows.length), ...typed.job };
  const draft = jobChanges(made, { sheets: [], tables: [], names: [] }).changes as Draft;
  return {
    ...draft,
    puts: [
      ...(draft.puts ?? []),
      ...inTable(draft, 'Windows', windows),
      ...inTable(draft, 'Fabrics', typed.fabrics),
      ...inTable(draft, 'Extras', typed.extras),
      ...named(draft, typed.cells),
      ...beside(draft, 'Prices', typed.charges),
      ...beside(draft, 'House', typed.house),
      ...beside(draft, 'Job', typed.facts),
    ],
  };
}
