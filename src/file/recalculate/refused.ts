/** What is not computed at all, and why: told from the formula alone, before anything is tried. */
import type { Engine } from '../../engine/engine';
import { bindsName, functionsIn, otherWorkbook } from './formula';
import type { WorkbookFile } from '../xlsx/workbook';

/** They ask the world outside the workbook, or the program that shows it. */
const OUTSIDE =
  /^(?:RTD|WEBSERVICE|STOCKHISTORY|IMAGE|GETPIVOTDATA|CALL|REGISTER\.ID|INFO|CUBE\w+|SQL\.REQUEST|EUROCONVERT|PY|TRANSLATE|DETECTLANGUAGE|COPILOT)$/;
/** They count days from 1900. */
const DAYS =
  /^(?:DATE|DATEVALUE|DATEDIF|DAY|DAYS|DAYS360|EDATE|EOMONTH|MONTH|NETWORKDAYS(?:\.INTL)?|NOW|TODAY|WEEKDAY|WEEKNUM|ISOWEEKNUM|WORKDAY(?:\.INTL)?|YEAR|YEARFRAC|TEXT)$/;

export function whyNot(
  formula: { readonly typed: string; readonly kind?: string },
  file: Pick<WorkbookFile, 'names' | 'from1904'> | undefined,
  engine: Engine,
): string | undefined {
  const { typed, kind } = formula;
  if (kind === 'table') return 'it is part of a what-if data table, which is not computed here';
  const other = otherWorkbook(typed);
  if (other !== undefined) return `it points into another workbook ([${other}])`;
  const names = new Set(file?.names.map((one) => one.name.toUpperCase()));
  for (const name of functionsIn(typed)) {
    if (OUTSIDE.test(name)) return `it calls ${name}, which is not computed here`;
    if (file?.from1904 === true && DAYS.test(name))
      return `it calls ${name} in a workbook that counts its days from 1904`;
    if (name === 'ANCHORARRAY' || engine.knows(name) || names.has(name) || bindsName(typed, name)) continue;
    return `it calls ${name}, which is not known here`;
  }
  if (!engine.reads(typed)) return 'it cannot be read as a formula';
  return undefined;
}
