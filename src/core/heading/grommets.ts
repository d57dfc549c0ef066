/** Where the grommets of one panel stand. */
import { parameter } from '../findings/parameters';
import { answer, lengthFigure, numberFigure, refuse, step, type Answer } from '../cell/answer';
import type { Length } from '../exact/length';
import { showLength } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';
import { wholeShare, type Share } from './panel';

export interface Grommets {
  readonly count: number;
  readonly spacing: Share;
  readonly firstCentre: Share;
}

/** An even count of grommets, so that both edges turn to the wall. */
export function grommets(given: { flatWidth: Length }, rules: Rules): Answer<Grommets> {
  const edge = rules.grommetEdge;
  const between = edge === undefined ? given.flatWidth : given.flatWidth - 2 * edge;
  if (between <= 0)
    return refuse(
      'rodTooNarrowForPanels',
      parameter('flatWidth'),
      showLength(given.flatWidth, unitOf(rules)),
    );
  const spaces = Math.ceil(between / rules.grommetSpacing);
  const least = edge === undefined ? spaces : spaces + 1;
  const count = Math.max(2, least + (least % 2));
  const spacing = between / (edge === undefined ? count : count - 1);
  const firstCentre = edge ?? given.flatWidth / (2 * count);
  return answer({ count, spacing, firstCentre }, () => [
    step(
      'grommets',
      '{} at {} or less, up to an even count',
      [lengthFigure(given.flatWidth), lengthFigure(rules.grommetSpacing)],
      numberFigure(count),
    ),
    step('centre to centre', '', [], lengthFigure(wholeShare(spacing))),
    step(
      'first centre from the edge',
      edge === undefined ? 'half the spacing' : 'house rule',
      [],
      lengthFigure(wholeShare(firstCentre)),
    ),
  ]);
}
