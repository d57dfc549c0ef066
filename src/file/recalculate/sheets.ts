/** A workbook's cells as formulas read them: values by column, rows that are hidden, spills as they stand. */
import { readAddress, sheetText, placeText, type Area as Place } from '../../book/address';
import { errorOf } from '../../core/cell/fields';
import { Area, Fault, faultOf, type Scalar } from '../../engine/native/values';
import { Dropped, type Sheets } from '../../engine/native/world';
import type { CellAt, SheetOf } from '../../engine/workbook';
import type { CellSeen } from '../xlsx/sheet';
import type { WorkbookFile } from '../xlsx/workbook';

type Column = (Scalar | undefined)[];

/** What a cell of the file holds as a value. */
export function scalarOf(cell: CellSeen): Scalar {
  const { value } = cell;
  if (cell.rich && cell.formula === undefined)
    return new Dropped('reads a cell that holds more than a plain value');
  if (typeof value !== 'string') return value;
  if (cell.type === 'e') return faultOf(value);
  return cell.formula !== undefined && errorOf(value) !== undefined && /^#(?:SPILL|CALC)!$/.test(value)
    ? faultOf(value)
    : value;
}

/** Whether the file holds a value for a formula at all. */
export const hasValue = ({ value, type }: CellSeen): boolean =>
  value !== null || type === 'str' || type === 'inlineStr';

export class BookSheets implements Sheets {
  readonly names: readonly string[];
  readonly from1904: boolean;
  readonly elsewhere: boolean;
  readonly spills = new Map<string, Area>();
  readonly #columns: Column[][];
  readonly #rows: number[];
  readonly #hidden: Map<number, 'hidden' | 'filtered'>[];
  formulaAt: (sheet: number, row: number, column: number) => string | undefined = () => undefined;

  constructor(
    file: Pick<WorkbookFile, 'sheets' | 'tables' | 'from1904'> & Partial<Pick<WorkbookFile, 'elsewhere'>>,
  ) {
    this.names = file.sheets.map(({ name }) => name);
    this.from1904 = file.from1904;
    this.elsewhere = file.elsewhere === true;
    this.#columns = file.sheets.map(() => []);
    this.#rows = file.sheets.map(() => 0);
    this.#hidden = file.sheets.map((_, at) => hiddenIn(file, at));
    for (const [sheet, { seen }] of file.sheets.entries())
      for (const { cells } of seen.rows)
        for (const cell of cells) {
          const value = scalarOf(cell);
          if (value !== null) this.put(sheet, cell.row, cell.column, value);
        }
  }

  columns(sheet: number): readonly (readonly (Scalar | undefined)[] | undefined)[] {
    return this.#columns[sheet] ?? [];
  }
  rows(sheet: number): number {
    return this.#rows[sheet] ?? 0;
  }
  hidden(sheet: number, row: number): 'no' | 'hidden' | 'filtered' {
    return this.#hidden[sheet]?.get(row) ?? 'no';
  }
  formula(sheet: number, row: number, column: number): string | undefined {
    return this.formulaAt(sheet, row, column);
  }
  spill(sheet: number, row: number, column: number): Area | undefined {
    return this.spills.get(`${sheet}!${row}!${column}`);
  }
  name({ sheet, row, column, rows, columns }: Area): string {
    const place: Place = { sheet: '', row, column, rows, columns };
    return `${sheetText(this.names[sheet] ?? '')}!${placeText(place)}`;
  }
  at(sheet: number, row: number, column: number): Scalar | undefined {
    return this.#columns[sheet]?.[column]?.[row];
  }
  /** Every filled cell, for an engine that knows nothing of formulas here. */
  plain(): SheetOf[] {
    return this.names.map((name, sheet) => ({
      name,
      cells: (this.#columns[sheet] ?? []).flatMap((list, column) => {
        const cells: CellAt[] = [];
        for (const [row, value] of (list ?? []).entries())
          if (value !== undefined && value !== null && !(value instanceof Dropped))
            cells.push({ row, column, value: value instanceof Fault ? value.code : value });
        return cells;
      }),
    }));
  }
  put(sheet: number, row: number, column: number, value: Scalar): void {
    const columns = this.#columns[sheet];
    if (columns === undefined) return;
    const list = (columns[column] ??= []);
    if (value === null) {
      if (row < list.length) list[row] = undefined;
      return;
    }
    while (list.length < row && row - list.length < NEAR) list.push(undefined);
    list[row] = value;
    if (row >= (this.#rows[sheet] ?? 0)) this.#rows[sheet] = row + 1;
  }
}

/** Gaps up to this are filled, so that a column stays one block of memory. */
const NEAR = 100_000;

/** A filter in force hides rows otherwise than a hand does: SUBTOTAL never counts them. */
function hiddenIn(
  file: Pick<WorkbookFile, 'sheets' | 'tables'>,
  at: number,
): Map<number, 'hidden' | 'filtered'> {
  const seen = file.sheets[at]?.seen;
  const refs = [
    seen?.filtered,
    ...file.tables.filter(({ sheet, filtered }) => sheet === at && filtered).map(({ ref }) => ref),
  ];
  const areas = refs.flatMap((ref) => (ref === undefined ? [] : (readAddress(ref) ?? [])));
  const rows = new Map<number, 'hidden' | 'filtered'>();
  for (const { row, hidden } of seen?.rows ?? [])
    if (hidden)
      rows.set(
        row,
        areas.some((area) => row >= area.row && row < area.row + area.rows) ? 'filtered' : 'hidden',
      );
  return rows;
}
