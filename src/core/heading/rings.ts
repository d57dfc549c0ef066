/** Rings or carriers: by pleats and ends, by snaps, or by their spacing. */
import { answer, numberFigure, step, type Answer } from '../cell/answer';
import { panelsOf } from '../cell/treatment';
import { finishedInAll, perPanel, type Hung } from '../cloth/hung';
import type { Length } from '../exact/length';
import type { Rules } from '../house/rules';
import { countOfPleats } from './pleats';
import { snaps } from './wave';

export type Ringed = Hung & { readonly widths: number; readonly fabricWidth: Length | undefined };

/** Rings or carriers of one panel. */
function ringsOfPanel(ringed: Ringed, rules: Rules): readonly [number, string] {
  const clothed = { ...ringed, fabricWidth: ringed.fabricWidth ?? rules.usualFabricWidth };
  const finished = perPanel(finishedInAll(ringed, rules), panelsOf(ringed.draw ?? 'pair'));
  switch (ringed.heading) {
    case 'grommet':
    case 'rod pocket':
    case 'tab top':
      return [0, `${ringed.heading}: the rod runs through the heading`];
    case 'wave':
      return [snaps(clothed, rules).value.snaps, 'a carrier at each snap'];
    case 'pencil':
      return [Math.ceil(finished / rules.hookSpacing) + 1, 'a hook at each end and at each spacing'];
    case 'flat':
      return [Math.ceil(finished / rules.ringSpacing) + 1, 'a ring at each end and at each spacing'];
    default: {
      const pleats = countOfPleats(clothed, rules);
      return [pleats + 2, `${pleats} pleats and 2 ends`];
    }
  }
}

/** Rings or carriers in all: by pleats and ends. */
export function rings(ringed: Ringed, rules: Rules): Answer<number> {
  const panels = panelsOf(ringed.draw ?? 'pair');
  const [each, why] = ringsOfPanel(ringed, rules);
  return answer(panels * each, () => [
    step(
      'rings or carriers',
      `{} ${panels === 1 ? 'panel' : 'panels'} × {} (${why})`,
      [numberFigure(panels), numberFigure(each)],
      numberFigure(panels * each),
    ),
  ]);
}
