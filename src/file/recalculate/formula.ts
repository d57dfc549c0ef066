/** A formula as a file stores it and as a person types it: HEM.X(…) is stored as _xldudf_HEM_X(…). */
import { CATALOGUE, NAMESPACE } from '../../../functions/index';

const STORED = `_xldudf_${NAMESPACE}_`;
const TYPED = new RegExp(`${NAMESPACE}\\.`, 'i');
const OURS = new Set(CATALOGUE.map((one) => one.name));
const STRING = /"(?:[^"]|"")*"/;
const QUOTED_SHEET = /'(?:[^']|'')*'(?=!)/;
/** [Column], [[#This Row],[Column]], with 'x for a sign that would close it. */
export const BRACKETS = /\[(?:'.|[^[\]']|\[(?:'.|[^[\]'])*\])*\]/;

const either = (...patterns: readonly RegExp[]): RegExp =>
  new RegExp(patterns.map((one) => one.source).join('|'), 'gu');
const PASSED_OVER = either(STRING, QUOTED_SHEET, BRACKETS);

/** Changes what is neither text in quotes, nor a quoted sheet, nor in brackets. */
function outside(formula: string, change: (text: string) => string): string {
  let at = 0;
  let result = '';
  for (const found of formula.matchAll(PASSED_OVER)) {
    result += change(formula.slice(at, found.index)) + found[0];
    at = found.index + found[0].length;
  }
  return result + change(formula.slice(at));
}

/** What is left of a formula without its text in quotes. */
export const withoutText = (formula: string): string => formula.replace(new RegExp(STRING, 'g'), '""');

/** From the file: without its prefixes; a broken link of ours ([2]!_xldudf_…) mended. */
export function typed(stored: string): string {
  const ours = new RegExp(`(?:\\[\\d+\\]!)?${STORED}(\\w+)(?=\\s*\\()`, 'gi');
  const strings = new RegExp(`${STRING.source}|${ours.source}`, 'gi');
  const named = stored.replace(strings, (whole, name: string | undefined) =>
    name === undefined ? whole : `${NAMESPACE}.${name.toUpperCase()}`,
  );
  return outside(named, (text) => text.replace(/_xlfn\.|_xlws\.|_xlpm\./gi, ''));
}

/** As a spreadsheet program stores calls of ours; everything else stays to the letter. */
export function storedForm(formula: string): string {
  if (!TYPED.test(formula)) return formula;
  const pattern = new RegExp(`(?<![\\w.])${NAMESPACE}\\.(\\w+)(?=\\s*\\()`, 'gi');
  return outside(formula, (text) =>
    text.replace(pattern, (whole, name: string) =>
      OURS.has(name.toUpperCase()) ? `${STORED}${name.toUpperCase()}` : whole,
    ),
  );
}

/** The functions it calls, as typed, capitals. */
export function functionsIn(formula: string): string[] {
  const names = new Set<string>();
  outside(formula, (text) => {
    for (const [, name] of text.matchAll(/([\p{L}_\\][\p{L}\p{N}_.\\]*)\s*\(/gu)) {
      if (name !== undefined) names.add(name.toUpperCase());
    }
    return text;
  });
  return [...names];
}

export const callsOurs = (formula: string): boolean =>
  functionsIn(formula).some((name) => name.startsWith(`${NAMESPACE}.`));

/** Whether LET or LAMBDA in it gives this name a meaning. */
export const bindsName = (formula: string, name: string): boolean =>
  /\b(?:LET|LAMBDA)\s*\(/i.test(formula) &&
  new RegExp(`[(,]\\s*${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*,`, 'i').test(formula);

/** [1]Sheet!A1, '[Prices.xlsx]List'!A1, [1]!Name: another workbook, by its sign. */
export function otherWorkbook(formula: string): string | undefined {
  const bare = withoutText(formula);
  return (
    /'[^']*\[([^\]]+)\][^']*'!/.exec(bare)?.[1] ??
    /\[([^[\]]+)\][\p{L}\p{N}_. ]*!/u.exec(bare)?.[1] ??
    undefined
  );
}
