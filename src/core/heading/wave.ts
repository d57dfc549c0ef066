/** A wave on snap tape: its snaps, and its carriers when it is closed. */
import { answer, lengthFigure, numberFigure, step, type Answer } from '../cell/answer';
import type { Rules } from '../house/rules';
import { panelOf, wholeShare, type MadeUp, type Share } from './panel';

export interface Snaps {
  /** On one panel, an even count. */
  readonly snaps: number;
  /** Carriers from each other when closed. */
  readonly apart: Share;
  /** Along the cloth, from the edge to the first. */
  readonly first: Share;
}

/** Snaps of one panel: an even count at the tape's spacing, so that both edges turn to the wall. */
export function snaps(madeUp: MadeUp, rules: Rules): Answer<Snaps> {
  const { flat, share } = panelOf(madeUp, rules);
  const count = Math.max(2, Math.floor(flat / rules.snapSpacing / 2) * 2);
  const apart = share / (count - 1);
  const first = (flat - (count - 1) * rules.snapSpacing) / 2;
  return answer({ snaps: count, apart, first }, () => [
    step(
      'snaps a panel',
      '{} flat at {}, down to an even count',
      [lengthFigure(flat), lengthFigure(rules.snapSpacing)],
      numberFigure(count),
    ),
    step(
      'carriers apart when closed',
      '{} ÷ {}',
      [lengthFigure(share), numberFigure(count - 1)],
      lengthFigure(wholeShare(apart)),
    ),
  ]);
}
