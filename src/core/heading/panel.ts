/** A panel as its heading is set out on it: its cloth before and after, and what hangs flat at its edges. */
import { parameter } from '../findings/parameters';
import { refuse } from '../cell/answer';
import { isDrawn, panelsOf } from '../cell/treatment';
import { flatInAll, usableWidth, type Usable } from '../cloth/bolt';
import { coveredByPanel, finishedInAll, perPanel, returnOf } from '../cloth/hung';
import type { Clothed } from '../cloth/widths';
import { exact, type Length } from '../exact/length';
import { showLength, type Unit } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';

/** Nanometres shared in equal parts: a mark, not a cut, so it need not be whole. */
export type Share = number;
export const wholeShare = (share: Share): Length => exact(Math.round(share));
export const showShare = (share: Share, unit: Unit): string => showLength(wholeShare(share), unit);

/** A treatment of so many widths. */
export type MadeUp = Clothed & { readonly widths: number };

/** A panel's cloth before and after pleating, and the parts of it that hang flat. */
export interface Panel {
  readonly widths: number;
  readonly usable: Usable;
  readonly flat: Length;
  readonly finished: Length;
  /** Its share of the rod. */
  readonly share: Length;
  /** Flat beyond the first pleat at the leading edge. */
  readonly lead: Length;
  /** Flat beyond the last pleat at the other edge. */
  readonly outer: Length;
}

export function panelOf(madeUp: MadeUp, rules: Rules): Panel {
  const draw = madeUp.draw ?? 'pair';
  const panels = panelsOf(draw);
  const usable = usableWidth(madeUp, rules);
  const flat = Math.floor(flatInAll(madeUp.widths, panels, usable) / panels);
  const finished = perPanel(finishedInAll(madeUp, rules), panels);
  if (flat <= finished) {
    const unit = unitOf(rules);
    return refuse(
      'nothingToPleat',
      parameter('widths'),
      showLength(exact(Math.max(0, flat)), unit),
      showLength(finished, unit),
    );
  }
  const share = coveredByPanel(madeUp, rules);
  const outer = exact(Math.min(finished - share, returnOf(madeUp, rules)));
  // What is not drawn has no leading edge that carriers hold.
  const edge = isDrawn(draw) ? rules.edgeToFirstPleat : undefined;
  return {
    widths: madeUp.widths / panels,
    usable,
    flat: exact(flat),
    finished,
    share,
    lead: edge ?? exact(finished - share - outer),
    outer,
  };
}

/** What is pleated of a panel: between its first pleat and its last. */
export const zoneOf = ({ finished, lead, outer }: Panel): Length => exact(finished - lead - outer);
