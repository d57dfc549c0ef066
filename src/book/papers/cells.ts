/** The sheets of a workbook as their papers are read from: every cell with the place that a formula names. */
import type { CellIn } from '../../core/cell/fields';
import type { Entry, EntryKind } from '../../core/papers/paper';
import type { SheetIn } from '../../core/window/reader/read';
import { areaAt, areaText, sameSheet, type Area } from '../address';
import type { Contents } from '../book';

export interface NamedSheet extends SheetIn {
  readonly name: string;
}

/** What a cell shows; a day as the number of it. */
export type Shown = string | number | boolean | null;

function shownOf(raw: CellIn): Shown {
  if (typeof raw === 'string' || typeof raw === 'number' || typeof raw === 'boolean') return raw;
  const day = typeof raw === 'object' && raw !== null ? (raw as { day?: unknown }).day : undefined;
  return typeof day === 'number' ? day : null;
}

/** A cell that shows an error is as good as blank: nothing is made of it. */
const ERROR = /^#[A-Z/0!?]+$/;

export class Cells {
  private readonly byName: ReadonlyMap<string, SheetIn>;

  constructor(
    readonly contents: Contents,
    readonly sheets: readonly NamedSheet[],
  ) {
    this.byName = new Map(sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]));
  }

  at(sheet: string, row: number, column: number): Shown {
    return shownOf(this.byName.get(sheet.toLowerCase())?.rows[row]?.[column] ?? null);
  }

  /** A cell as an entry; undefined where it is blank or shows an error. */
  entry(sheet: string, row: number, column: number, as: EntryKind = 'words'): Entry | undefined {
    const value = this.at(sheet, row, column);
    if (value === null || typeof value === 'boolean') return undefined;
    if (typeof value === 'string') {
      const text = value.trim();
      return text === '' || ERROR.test(text)
        ? undefined
        : { as: 'words', value: text, at: place(sheet, row, column) };
    }
    return { as: as === 'words' ? 'count' : as, value, at: place(sheet, row, column) };
  }

  /** The same where only a figure will do. */
  figure(sheet: string, row: number, column: number, as: EntryKind): Entry | undefined {
    const found = this.entry(sheet, row, column, as);
    return typeof found?.value === 'number' ? found : undefined;
  }

  /** Where a name points: “Quote_total”, in a second job “Quote_total_2”. */
  named(name: string): Area | undefined {
    return this.contents.names.find((one) => one.name.toLowerCase() === name.toLowerCase())?.area;
  }

  /** The rows of an area. */
  rows(area: Area): readonly (readonly Shown[])[] {
    return Array.from({ length: area.rows }, (_, down) =>
      Array.from({ length: area.columns }, (__, right) =>
        this.at(area.sheet, area.row + down, area.column + right),
      ),
    );
  }

  /** The table a cell lies in. */
  tableAt(sheet: string, row: number): Contents['tables'][number] | undefined {
    return this.contents.tables.find(
      ({ area }) => sameSheet(area.sheet, sheet) && row >= area.row && row < area.row + area.rows,
    );
  }
}

/** Windows!D5, as a formula names it. */
export const place = (sheet: string, row: number, column: number): string =>
  areaText(areaAt(sheet, row, column));
