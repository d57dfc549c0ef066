/** The function that was perhaps meant. */
import { CATALOGUE, NAMESPACE } from '../../functions/index';
import { functionsIn } from './formula';

/** How many letters must change to make one word the other. */
export function distance(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, at) => at);
  for (const [down, letter] of [...one].entries()) {
    const next = [down + 1];
    for (const [across, sign] of [...other].entries()) {
      next.push(
        Math.min(
          (row[across + 1] ?? 0) + 1,
          (next[across] ?? 0) + 1,
          (row[across] ?? 0) + (letter === sign ? 0 : 1),
        ),
      );
    }
    row = next;
  }
  return row.at(-1) ?? 0;
}

/** “ Did you mean HEM.YARDAGE?”, of the first call that is not known; or nothing. */
export function nearName(formula: string, knows: (name: string) => boolean): string {
  for (const called of functionsIn(formula)) {
    if (knows(called)) continue;
    const name = called.replace(new RegExp(`^${NAMESPACE}[._]`), '');
    const [near] = CATALOGUE.map(({ name: one }) => ({ one, far: distance(name, one) }))
      .filter(({ one, far }) => far <= Math.max(2, Math.floor(one.length / 3)))
      .sort((a, b) => a.far - b.far);
    if (near !== undefined) return ` Did you mean ${NAMESPACE}.${near.one}?`;
  }
  return '';
}
