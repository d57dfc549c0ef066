/** Why a formula shows what it shows, in a sentence; and its steps and findings as lines. */
import type { Finding } from '../../core/cell/answer';
import { errorOf } from '../../core/cell/fields';
import { writeStep } from '../../core/cell/steps';
import type { CellValue, Given } from '../../engine/workbook';

const ERRORS: Readonly<Record<string, string>> = {
  '#DIV/0!': 'It divides by zero or by a blank cell. Fill the divisor.',
  '#N/A': 'Something it looks for is not there. Check the value looked up and the range.',
  '#NAME?': 'It uses a function or a name that is not known here. Check the spelling.',
  '#NULL!': 'It takes the common cells of two ranges that share none. Put a comma between them.',
  '#NUM!': 'A number in it is out of range. Check its inputs.',
  '#REF!': 'It points at cells that are no longer there. Point at the right ones.',
  '#VALUE!': 'It takes a number where text stands, or the reverse. Check its inputs.',
  '#SPILL!': 'Its values need more cells, and something is in the way. Clear that, or move the formula.',
  '#CALC!': 'It gives an empty array. Give it a value for that case.',
};

/** The sentence of our own refusal where one of ours refused, else the error's. */
export function whyError({ value, calls, fault }: Given): string | undefined {
  if (fault !== undefined) return `It could not be computed: ${fault}.`;
  const error = errorOf(value);
  if (error === undefined) return undefined;
  const refused = calls.flatMap(({ outcome }) =>
    'error' in outcome && outcome.error === error ? [outcome.finding.sentence] : [],
  );
  return refused[0] ?? ERRORS[error] ?? 'It gives an error.';
}

export const stepsOf = ({ calls }: Given): string[] =>
  calls.flatMap(({ outcome }) =>
    'error' in outcome ? [] : outcome.steps.map((step) => writeStep(step, outcome.unit)),
  );

/** Each once, a refusal among them only where the formula shows it. */
export function findingsOf({ value, calls }: Given): Finding[] {
  const shown = errorOf(value);
  const all = calls.flatMap(({ outcome }) => {
    if (!('error' in outcome)) return outcome.findings;
    return outcome.error === shown ? [outcome.finding] : [];
  });
  return [...new Map(all.map((one) => [`${one.code} ${one.sentence}`, one])).values()];
}

/** As a cell shows it, without a format: plain digits, no float's tail. */
export function show(value: CellValue): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return typeof value === 'number' ? String(Number(value.toPrecision(15))) : value;
}

/** Rows in columns: numbers to the right, the rest to the left. */
export function table(rows: readonly (readonly CellValue[])[]): string[] {
  const texts = rows.map((row) => row.map(show));
  const widths = (texts[0] ?? []).map((_, at) => Math.max(...texts.map((row) => row[at]?.length ?? 0)));
  return rows.map((row, down) =>
    row
      .map((cell, at) => {
        const text = texts[down]?.[at] ?? '';
        return typeof cell === 'number' ? text.padStart(widths[at] ?? 0) : text.padEnd(widths[at] ?? 0);
      })
      .join('  ')
      .trimEnd(),
  );
}
