/** The function that was perhaps meant. */
import { CATALOGUE, NAMESPACE } from '../../../functions/index';
import { distance } from '../../core/cell/nearest';
import { functionsIn } from './formula';

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
