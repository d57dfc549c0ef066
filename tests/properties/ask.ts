/** Calls a cell function as a workbook does, and what a property needs of its answer. */
import { functionNamed } from '../../functions';
import type { Outcome } from '../../functions/declare';
import type { CellIn, CellOut } from '../../src/core/cell/fields';

export function ask(name: string, ...inputs: readonly CellIn[]): Outcome {
  const cellFunction = functionNamed(name);
  if (cellFunction === undefined) throw new Error(`${name} is not in the catalogue`);
  return cellFunction.call(inputs);
}

/** The figure, or undefined where the function refuses. */
export function figure(name: string, ...inputs: readonly CellIn[]): number | undefined {
  const outcome = ask(name, ...inputs);
  if ('error' in outcome) return undefined;
  if (typeof outcome.cells !== 'number') throw new Error(`${name} gives no single figure`);
  return outcome.cells;
}

/** The first row of a spill, or undefined where the function refuses. */
export function row(name: string, ...inputs: readonly CellIn[]): readonly CellOut[] | undefined {
  return rows(name, ...inputs)?.[0];
}

export function rows(
  name: string,
  ...inputs: readonly CellIn[]
): readonly (readonly CellOut[])[] | undefined {
  const outcome = ask(name, ...inputs);
  if ('error' in outcome) return undefined;
  if (typeof outcome.cells !== 'object') throw new Error(`${name} does not spill`);
  return outcome.cells;
}

const NANOMETRES = { in: 25_400_000, cm: 10_000_000, yd: 914_400_000, m: 1_000_000_000 };

/** A figure of a cell as whole nanometres. */
export const nanometres = (figure: number, unit: keyof typeof NANOMETRES): number =>
  Math.round(figure * NANOMETRES[unit]);
