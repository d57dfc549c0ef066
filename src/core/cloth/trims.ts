/**
 * Trims and contrast bands: as long as the edges they follow on every panel, and what is turned under at both
 * ends of each. Common practice, no source.
 */
import { exact, type Length } from '../exact/length';
import type { Rules } from '../house/rules';

/** The panels whose edges are followed. */
export interface Edged {
  readonly panels: number;
  /** Of one panel, as it hangs. */
  readonly drop: Length;
  /** Of all of them, with their hems made. */
  readonly flat: number;
}

const turned = ({ trimTurning }: Pick<Rules, 'trimTurning'>, ends: number): number => trimTurning * 2 * ends;

/** Along the leading edge of every panel. */
export const leadingTrim = ({ panels, drop }: Edged, rules: Pick<Rules, 'trimTurning'>): Length =>
  exact(panels * drop + turned(rules, panels));

/** Along the bottom of every panel, which lies as wide as its flat cloth. */
export const bottomTrim = ({ panels, flat }: Edged, rules: Pick<Rules, 'trimTurning'>): Length =>
  exact(Math.round(flat) + turned(rules, panels));

export interface Band {
  /** Strips cut from edge to edge of the cloth, and sewn end to end. */
  readonly strips: number;
  /** Cloth that they take. */
  readonly cloth: Length;
}

/** A band cut across the cloth, so wide before it is sewn; each strip but the last gives a seam to the next. */
export function bandOf(
  long: Length,
  { fabricWidth, cutWidth }: { readonly fabricWidth: Length; readonly cutWidth: Length },
  { seam }: Pick<Rules, 'seam'>,
): Band {
  const each = fabricWidth - 2 * seam;
  const strips = Math.max(1, Math.ceil((long - 2 * seam) / each));
  return { strips, cloth: exact(strips * cutWidth) };
}
