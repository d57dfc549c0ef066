/** Where a workbook computed anew differs from the values it held, by function. */
import { Grid, type Scalar } from '../../engine/native/values';
import { asCell, cellName, sameScalar, type Recalculation } from './recalculate';
import { hasValue, scalarOf } from './sheets';

export interface Difference {
  /** The function; “no function” where a formula calls none. */
  readonly name: string;
  readonly formulas: number;
  readonly differing: number;
  /** The first cell that differs, with both values. */
  readonly first: string;
}

export function differencesOf({ file, formulas, answers }: Recalculation): Difference[] {
  const found = new Map<string, { formulas: number; differing: number; first: string }>();
  for (const [at, formula] of formulas.entries()) {
    const value = answers[at]?.value;
    if (value === undefined || formula.shape.ours || !hasValue(formula.cell)) continue;
    const shown: Scalar = value instanceof Grid ? value.at(0, 0) : value;
    const old = scalarOf(formula.cell);
    const same = sameScalar(shown, old);
    const { functions } = formula.shape;
    for (const name of functions.length === 0 ? ['no function'] : functions) {
      const one = found.get(name) ?? { formulas: 0, differing: 0, first: '' };
      found.set(name, one);
      one.formulas += 1;
      if (same) continue;
      if (one.differing === 0)
        one.first = `${cellName(file, formula)}, which held ${String(asCell(old))} and now is ${String(asCell(shown))}`;
      one.differing += 1;
    }
  }
  return [...found]
    .filter(([, { differing }]) => differing > 0)
    .map(([name, one]) => ({ name, ...one }))
    .sort((one, other) => other.differing - one.differing);
}
