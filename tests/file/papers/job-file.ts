/** A job of our own template as a file, filled as a person types it: an inn that is nowhere. */
import { writeFileSync } from 'node:fs';
import { areaAt } from '../../../src/book/address';
import type { CellPut, Put } from '../../../src/book/book';
import type { Draft } from '../../../src/book/sheets/draft';
import { jobChanges, USUAL_JOB, type NewJob } from '../../../src/book/template';
import { workbookOf } from '../../../src/file/papers/values-only';
import { zipped } from '../../../src/file/xlsx/archive';

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

export const WINDOW: Row = {
  room: 'Library',
  quantity: 1,
  'inside width': 84,
  'left extension': 10,
  'right extension': 10,
  'measured height': 98,
  heading: 'pinch',
  draw: 'pair',
  fabric: 'Heron linen',
  lining: 'lined',
};
export const FABRIC: Row = {
  fabric: 'Heron linen',
  supplier: 'Quill & Sedge',
  'fabric width': 54,
  'vertical repeat': 25.25,
  'price a': 38.17,
};
/** Costs that no client may see: none of them is a price of the quote. */
export const CELLS: Row = { Price_rod: 18.53, Price_bracket: 11.37, Price_installation: 65, Sell_rate: 0.5 };
export const CHARGES: Row = { 'labor pinch': 42.19, 'labor lined': 9 };

/** Puts below the heading that begins so, in a table of the draft. */
function typed(draft: Draft, table: string, rows: readonly Row[]): Put[] {
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

/** Puts beside words of a sheet's first column. */
function beside(draft: Draft, sheet: string, words: Row): Put[] {
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

const named = (draft: Draft, cells: Row): Put[] =>
  Object.entries(cells).map(([name, value]) => {
    const area = draft.newNames?.find((one) => one.name === name)?.area;
    if (area === undefined) throw new Error(`no name ${name}`);
    return { area, cells: [[value]] };
  });

/** Writes the job's file. */
export function writeJob(path: string, job: JobTyped): void {
  const { changes } = jobChanges(
    { ...USUAL_JOB, windows: Math.max(4, job.windows.length), ...job.job },
    { sheets: [], tables: [], names: [] },
  );
  const draft = changes as Draft;
  const puts = [
    ...(draft.puts ?? []),
    ...typed(draft, 'Windows', job.windows),
    ...typed(draft, 'Fabrics', job.fabrics ?? [FABRIC]),
    ...typed(draft, 'Extras', job.extras ?? []),
    ...named(draft, job.cells ?? CELLS),
    ...beside(draft, 'Prices', job.charges ?? CHARGES),
    ...beside(draft, 'House', {
      'house name': 'Alder & Finch Workroom',
      address: '4 Sluice Row',
      ...job.house,
    }),
    ...beside(draft, 'Job', { client: 'Wharf Lane Inn', reference: 'WL-7', ...job.facts }),
  ];
  writeFileSync(path, zipped(workbookOf({ ...draft, puts })));
}
