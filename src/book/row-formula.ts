/** The formula of one column, for one row, from whatever columns the user's sheet has. */
import type { CellFunction, Parameter } from '../../functions/declare';
import { NAMESPACE } from '../../functions/index';
import type { FigureGroup } from '../core/window/figure';
import type { LengthUnit } from '../core/exact/length';
import type { Unit } from '../core/exact/unit';
import type { Per } from '../core/window/reader/heading';
import { cellText } from './address';

/** A column worked out for every row: a function, and which column each of its parameters is. */
export interface OutputColumn {
  readonly key: string;
  readonly group: FigureGroup;
  readonly heading: string;
  readonly says: string;
  /** The cell function it comes from, without the namespace. */
  readonly calls: string;
  /** Parameter as Excel shows it (opening_width) → key of a window column or of another output. */
  readonly takes: Readonly<Record<string, string>>;
  /** Whether one cell holds that function's answer, so that it can be asked column by column. */
  readonly cell: boolean;
  /** The function that tells it from the whole row. */
  readonly whole: 'SCHEDULE' | 'CHECK';
  /** The cells' number format. */
  readonly format: string;
  /** A column that says how many: the figure is of all of them. */
  readonly times?: string;
  /** Whether the whole row tells it of all its windows. */
  readonly ofAllWindows?: true;
  /** Where this column is blank or one of these words, there is nothing of it. */
  readonly none?: { readonly column: string; readonly words: readonly string[] };
}

/** Where a column's cell of the row stands, and the unit its heading names where it is not the house's. */
export interface Source {
  readonly column: number;
  readonly heading: string;
  readonly unit?: LengthUnit;
  /** How many levels of HEM functions stand under it. */
  readonly level: number;
  /** All that its cells hold, where it is more than one meaning. */
  readonly keys?: readonly string[];
  /** Whether its cells hold two figures, like 72 x 98. */
  readonly halves?: boolean;
  /** What one of its figures is for. */
  readonly per?: Per;
  /** The column that holds the parts of its figures. */
  readonly parts?: number;
  /** What a line beside the table says for every row: no cell of it does. */
  readonly constant?: string;
  /** Whether only a reader of the whole row understands its cells. */
  readonly byRow?: boolean;
}

/** A column of the row, under the heading it is handed over with. */
export interface Handed {
  readonly key: string;
  readonly heading: string;
  readonly source: Source;
}

/** Where a formula stands, and what it must know of the workbook. */
export interface RowPlace {
  readonly row: number;
  readonly unit: Unit;
  readonly rules: string;
}

/** An empty cell arrives as 0 on some hosts; handed over so it is blank on all of them. */
export const orBlank = (cell: string): string => `IF(${cell}="","",${cell})`;
/** Cells side by side as one row, on hosts that do not spill too. */
export const inOneRow = (cells: readonly string[]): string =>
  cells.length === 1
    ? (cells[0] ?? '')
    : `CHOOSE({${cells.map((_, at) => at + 1).join(',')}},${cells.join(',')})`;
/** A quantity typed as 0 is no window, and the figure of the row 0: totals stand, and CHECK says it. */
export const unlessNoWindow = (quantity: string, figure: string): string =>
  `IF(${quantity}&""="0",0,${figure})`;

/** Whether the figure is of all the windows of the row. */
export const countsWindows = ({ times, ofAllWindows, takes }: OutputColumn): boolean =>
  times !== undefined || ofAllWindows === true || Object.values(takes).includes(QUANTITY);
export const QUANTITY = 'quantity';

const converted = (cell: string, from: LengthUnit, { small }: Unit): string =>
  `IF(ISNUMBER(${cell}),CONVERT(${cell},"${from}","${small}"),IF(${cell}="","",${cell}&" ${from}"))`;

const quoted = (text: string): string => `"${text.replace(/"/g, '""')}"`;

/** One cell as an argument. Blank stays blank, and figures in another unit are converted by name. */
function argument(parameter: Parameter, source: Source, row: number, unit: Unit): string {
  if (source.constant !== undefined) return quoted(source.constant);
  const cell = cellText(row, source.column);
  if (source.unit !== undefined) return converted(cell, source.unit, unit);
  return parameter.optional ? orBlank(cell) : cell;
}

/** Floor readings at the left, the centre and the right are one argument: the shortest rules. */
function readings(sources: ReadonlyMap<string, Source>, row: number, unit: Unit): string | undefined {
  const found = ['measured', 'measuredCentre', 'measuredRight'].flatMap((key) => sources.get(key) ?? []);
  if (found.length < 2) return undefined;
  return inOneRow(
    found.map((one) =>
      one.unit === undefined
        ? orBlank(cellText(row, one.column))
        : converted(cellText(row, one.column), one.unit, unit),
    ),
  );
}

/** “=IF(B4="","",HEM.RODWIDTH(B4,…))”: a row without its first figure stays blank. */
export function rowFormula(
  cellFunction: CellFunction,
  output: OutputColumn,
  sources: ReadonlyMap<string, Source>,
  at: RowPlace,
): string {
  let guard: string | undefined;
  const inputs = cellFunction.parameters.map((parameter) => {
    if (parameter.name === 'rules') return at.rules;
    const key = output.takes[parameter.name] ?? '';
    const source = sources.get(key);
    if (source === undefined) return '';
    if (!parameter.optional) guard ??= cellText(at.row, source.column);
    const several = key === 'measured' ? readings(sources, at.row, at.unit) : undefined;
    return several ?? argument(parameter, source, at.row, at.unit);
  });
  while (inputs.at(-1) === '') inputs.pop();
  let call = `${NAMESPACE}.${cellFunction.name}(${inputs.join(',')})`;
  const times = sources.get(output.times ?? '');
  if (times !== undefined) {
    const cell = cellText(at.row, times.column);
    call = `${call}*IF(${cell}="",1,${cell})`;
  }
  const none = sources.get(output.none?.column ?? '');
  if (none !== undefined) {
    const cell = cellText(at.row, none.column);
    const words = ['', ...(output.none?.words ?? [])].map((word) => `${cell}="${word}"`);
    call = `IF(OR(${words.join(',')}),0,${call})`;
  }
  const quantity = countsWindows(output) ? sources.get(QUANTITY) : undefined;
  if (quantity !== undefined) call = unlessNoWindow(cellText(at.row, quantity.column), call);
  return guard === undefined ? `=${call}` : `=IF(${guard}="","",${call})`;
}

/** “=IF(B4="","",HEM.SCHEDULE({"W","Ht"},CHOOSE({1,2},B4,…),"rings",…))”: the row as it is understood here. */
export function wholeRowFormula(output: OutputColumn, list: readonly Handed[], at: RowPlace): string {
  const [first] = list;
  if (first === undefined) return '=""';
  const guard = cellText(at.row, first.source.column);
  const cells = list.map(({ source }, place) => {
    if (source.constant !== undefined) return quoted(source.constant);
    const cell = cellText(at.row, source.column);
    return place === 0 ? cell : orBlank(cell);
  });
  const headings = `{${list.map((one) => quoted(one.heading)).join(',')}}`;
  const asks = output.whole === 'CHECK' ? [] : [quoted(output.heading)];
  const inputs = [headings, inOneRow(cells), ...asks, at.rules];
  while (inputs.at(-1) === '') inputs.pop();
  const call = `${NAMESPACE}.${output.whole}(${inputs.join(',')})`;
  const quantity =
    output.whole === 'SCHEDULE'
      ? list.find(({ key, source }) => key === QUANTITY && source.keys === undefined)
      : undefined;
  const figure =
    quantity === undefined ? call : unlessNoWindow(cellText(at.row, quantity.source.column), call);
  return `=IF(${guard}="","",${figure})`;
}
