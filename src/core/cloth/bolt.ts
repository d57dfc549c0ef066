/** What the widths of a bolt give: usable cloth, less what seams, hems and a pattern's match take. */
import { parameter } from '../findings/parameters';
import { finding, refuse, type Finding } from '../cell/answer';
import { exact, type Length } from '../exact/length';
import { showLength } from '../exact/unit';
import { unitOf, type Rules } from '../house/rules';

export interface Bolt {
  readonly fabricWidth: Length;
  readonly horizontalRepeat?: Length | undefined;
}

/** The cloth one width gives: bolt width less selvages, less what a pattern match wastes. */
export interface Usable {
  /** Without a pattern. */
  readonly plain: Length;
  /** From seam to seam, whole repeats only. */
  readonly each: Length;
  /** What each seam takes. */
  readonly seam: Length;
  /** What the hem of each side of a panel takes. */
  readonly hem: Length;
  readonly findings: readonly Finding[];
}

const NOTHING_FOUND: readonly Finding[] = [];

export function usableWidth(bolt: Bolt, rules: Rules): Usable {
  const plain = (bolt.fabricWidth - 2 * rules.selvage) as Length;
  const unit = unitOf(rules);
  if (plain <= 2 * rules.seam)
    return refuse(
      'fabricTooNarrow',
      parameter('fabricWidth'),
      showLength(bolt.fabricWidth, unit),
      showLength(exact(2 * rules.selvage + 2 * rules.seam), unit),
    );
  const hem = rules.sideHem;
  const repeat = bolt.horizontalRepeat;
  if (repeat === undefined || repeat === 0)
    return { plain, each: plain, seam: rules.seam, hem, findings: NOTHING_FOUND };
  if (repeat > plain) {
    return {
      plain,
      each: plain,
      seam: rules.seam,
      hem,
      findings: [
        finding(
          'repeatWiderThanCloth',
          parameter('horizontalRepeat'),
          showLength(repeat, unit),
          showLength(plain, unit),
        ),
      ],
    };
  }
  const each = exact(plain - (plain % repeat));
  const wasted = exact(plain - each);
  // The seam lies in what the match wastes, as far as that goes.
  return { plain, each, seam: Math.max(0, rules.seam - wasted) as Length, hem, findings: NOTHING_FOUND };
}

/** Flat cloth in a panel of so many widths, hems and seams taken off. */
export function flatOfPanel(widthsEach: number, usable: Usable): number {
  return widthsEach * usable.each - (Math.ceil(widthsEach) - 1) * usable.seam - 2 * usable.hem;
}

/** The same width by width, from the leading edge to the return: seam to seam, or to the hem. */
export function flatsOfPanel(widthsEach: number, usable: Usable): readonly number[] {
  const many = Math.ceil(widthsEach);
  return Array.from({ length: many }, (_, at) => {
    const first = at === 0;
    const last = at === many - 1;
    return (
      (last ? widthsEach - at : 1) * usable.each -
      usable.seam * ((first ? 0 : 0.5) + (last ? 0 : 0.5)) -
      usable.hem * ((first ? 1 : 0) + (last ? 1 : 0))
    );
  });
}

/** Flat cloth in a whole treatment of so many widths; may be a half nanometre, never less exact. */
export const flatInAll = (widths: number, panels: 1 | 2, usable: Usable): number =>
  panels * flatOfPanel(widths / panels, usable);
