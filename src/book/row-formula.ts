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

/** “=IF(B4="","",HEM.RODWIDTH(B4,…))”: a row without its first figure stays blank. */
export function rowFormula(
  of: CellFunction,
  takes: OutputColumn['takes'],
  sources: ReadonlyMap<string, Source>,
  at: { readonly row: number; readonly unit: Unit; readonly rules: string },
): string {
  let guard: string | undefined;
  const inputs = of.parameters.map((parameter) => {
    if (parameter.name === 'rules') return at.rules;
    const source = sources.get(takes[parameter.name] ?? '');
    if (source === undefined) return '';
    if (!parameter.optional) guard ??= cellText(at.row, source.column);
    return argument(parameter, source, at.row, at.unit);
  });
  while (inputs.at(-1) === '') inputs.pop();
  const call = `${NAMESPACE}.${of.name}(${inputs.join(',')})`;
  return guard === undefined ? `=${call}` : `=IF(${guard}="","",${call})`;
}
