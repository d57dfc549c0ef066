/** What a check or a worked job asks of a formula, and what came of it. */
import { functionNamed } from '../../functions';
import type { CellFunction, Outcome } from '../../functions/declare';
import type { CellOut } from '../../src/core/cell/fields';
import { writeStep } from '../../src/core/cell/steps';
import { readFormula } from '../../src/make/example';

/** Words of a formula that stand for what was given: a figure, a text, or house rules. */
export type GivenWords = Readonly<
  Record<string, number | string | Readonly<Record<string, number | string>>>
>;

export interface Check {
  readonly formula: string;
  /** The exact value, or every row of a spill. */
  readonly gives?: CellOut | readonly (readonly CellOut[])[];
  /** A published figure that was itself rounded to so many decimals. */
  readonly decimals?: number;
  /** Published as a range: both ends are in it. */
  readonly from?: number;
  readonly to?: number;
  /** A row that must stand in the spill. */
  readonly row?: readonly CellOut[];
  /** A line of the working. */
  readonly step?: string;
  /** The code of a finding, or null where there must be none. */
  readonly finding?: string | null;
  readonly error?: '#VALUE!' | '#N/A';
  readonly because?: string;
}

const literal = (value: number | string): string =>
  typeof value === 'number' ? String(value) : `"${value.replace(/"/g, '""')}"`;

/** Puts what was given into a formula, leaving quoted text alone. */
export function filledIn(formula: string, given: GivenWords): string {
  return formula.replace(/"(?:[^"]|"")*"|[a-z][a-z_]*/g, (word) => {
    const value = word.startsWith('"') ? undefined : given[word];
    if (value === undefined) return word;
    if (typeof value !== 'object') return literal(value);
    const rows = Object.entries(value).map(([name, one]) => `${literal(name)},${literal(one)}`);
    return `{${rows.join(';')}}`;
  });
}

export function outcomeOf(formula: string): Outcome {
  const { name, inputs } = readFormula(formula);
  const cellFunction: CellFunction | undefined = functionNamed(name);
  if (cellFunction === undefined) throw new Error(`${name} is not in the catalogue`);
  return cellFunction.call(inputs);
}

/** Everything the check asks, as pairs of what came and what was wanted. */
export interface Seen {
  readonly cells: CellOut | readonly (readonly CellOut[])[] | undefined;
  readonly error: string | undefined;
  readonly codes: readonly string[];
  readonly steps: readonly string[];
  /** What a refusal said, for the message of a failing test. */
  readonly sentence: string;
}

export function seen(formula: string): Seen {
  const outcome = outcomeOf(formula);
  if ('error' in outcome) {
    const { code, sentence } = outcome.finding;
    return { cells: undefined, error: outcome.error, codes: [code], steps: [], sentence };
  }
  return {
    cells: outcome.cells,
    error: undefined,
    codes: outcome.findings.map(({ code }) => code),
    steps: outcome.steps.map((one) => writeStep(one, outcome.unit)),
    sentence: '',
  };
}
