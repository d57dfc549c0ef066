/** The formula of one column, for one row, from whatever columns her sheet has. */
import type { CellFunction, Parameter } from '../../functions/declare';
import { NAMESPACE } from '../../functions/index';
import { Refusal } from '../core/answer';
import { INCHES, type Unit } from '../core/unit';
import { cellText } from './address';
import type { UnitWord } from './headings';

/** A column worked out for every row: a function, and which column each of its parameters is. */
export interface OutputColumn {
  readonly key: string;
  readonly heading: string;
  readonly says: string;
  /** The cell function's name, without the namespace. */
  readonly calls: string;
  /** Parameter as Excel shows it (opening_width) → key of a window column or of another output. */
  readonly takes: Readonly<Record<string, string>>;
  /** A column that says how many: the figure is of all of them. */
  readonly times?: string;
  /** Where this column is blank or one of these words, there is nothing of it. */
  readonly none?: { readonly column: string; readonly words: readonly string[] };
}

/** Where a column's cell of the row stands, and the unit its heading names where it is not the house's. */
export interface Source {
  readonly column: number;
  readonly unit?: UnitWord;
}

/** An empty cell arrives as 0 on some hosts: whether 0 says something else than blank here. */
export function zeroIsFigure({ kind }: Parameter): boolean {
  try {
    return kind.read(0, { name: '', unit: INCHES }) !== undefined;
  } catch (thrown) {
    if (thrown instanceof Refusal) return true;
    throw thrown;
  }
}

/** One cell as an argument. Blank stays blank, and figures in another unit are converted by name. */
function argument(parameter: Parameter, source: Source, row: number, unit: Unit): string {
  const cell = cellText(row, source.column);
  if (source.unit !== undefined)
    return `IF(ISNUMBER(${cell}),CONVERT(${cell},"${source.unit}","${unit.small}"),IF(${cell}="","",${cell}&" ${source.unit}"))`;
  return parameter.optional && zeroIsFigure(parameter) ? `IF(${cell}="","",${cell})` : cell;
}

/** Floor readings at the left, the centre and the right are one argument: the shortest rules. */
function readings(
  parameter: Parameter,
  sources: ReadonlyMap<string, Source>,
  row: number,
  unit: Unit,
): string | undefined {
  const found = ['measured', 'measuredCentre', 'measuredRight'].flatMap((key) => sources.get(key) ?? []);
  const [first] = found;
  if (found.length < 2 || first === undefined) return undefined;
  const side = found.every((one, at) => one.column === first.column + at && one.unit === undefined);
  if (side) return `${cellText(row, first.column)}:${cellText(row, first.column + found.length - 1)}`;
  const cells = found.map((one) => argument(parameter, one, row, unit));
  return `CHOOSE({${cells.map((_, at) => at + 1).join(',')}},${cells.join(',')})`;
}

/** “=IF(B4="","",HEM.RODWIDTH(B4,…))”: a row without its first figure stays blank. */
export function rowFormula(
  of: CellFunction,
  output: OutputColumn,
  sources: ReadonlyMap<string, Source>,
  at: { readonly row: number; readonly unit: Unit; readonly rules: string },
): string {
  let guard: string | undefined;
  const inputs = of.parameters.map((parameter) => {
    if (parameter.name === 'rules') return at.rules;
    const key = output.takes[parameter.name] ?? '';
    const source = sources.get(key);
    if (source === undefined) return '';
    if (!parameter.optional) guard ??= cellText(at.row, source.column);
    const several = key === 'measured' ? readings(parameter, sources, at.row, at.unit) : undefined;
    return several ?? argument(parameter, source, at.row, at.unit);
  });
  while (inputs.at(-1) === '') inputs.pop();
  let call = `${NAMESPACE}.${of.name}(${inputs.join(',')})`;
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
  return guard === undefined ? `=${call}` : `=IF(${guard}="","",${call})`;
}
