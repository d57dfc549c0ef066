/** One house rule: its kind (and so its unit), its default, its words and its source. */
import { listKind, oneCell, type Kind } from './fields';
import { UNITS, type Length } from '../exact/length';
import { HEADINGS, type Heading } from './treatment';
import type { Unit } from '../exact/unit';

export interface Rule<T> {
  readonly kind: Kind<T>;
  readonly standard: T | ((unit: Unit) => T);
  readonly says: string;
  readonly source: string;
}
/** A rule without a default: only the workroom can say, as with a price. */
export interface OwnRule<T> {
  readonly ownKind: Kind<T>;
  readonly says: string;
  readonly source: string;
}
/** One rule a heading: “fullness pinch”, “fullness wave” … */
export interface HeadingRule<T> {
  readonly each: Readonly<Record<Heading, T | undefined>>;
  readonly kind: Kind<T>;
  readonly says: string;
  readonly source: string | ((heading: Heading) => string);
}

export const COMMON = 'common practice, no source';
export const HOUSE = 'house default, no source';
export const YOURS = 'no default: your own figure';
export const UFGS = 'UFGS 12 22 00 (2010)';
export const BOOKLET = 'How to Make Draperies (1960), Project Gutenberg #63282';
export const STEPHENSON = 'J. W. Stephenson, Cutting and Draping (1905), Project Gutenberg #70586';

export const rule = <T>(
  kind: Kind<T>,
  standard: T | ((unit: Unit) => T),
  says: string,
  source: string,
): Rule<T> => ({ kind, standard, says, source });
export const own = <T>(ownKind: Kind<T>, says: string, source = YOURS): OwnRule<T> => ({
  ownKind,
  says,
  source,
});

export const heads = <T>(rest: T, some: Partial<Record<Heading, T>> = {}): Record<Heading, T> =>
  Object.fromEntries(
    HEADINGS.list.map(({ word }) => [word, word in some ? some[word as Heading] : rest]),
  ) as Record<Heading, T>;
export const each = <T>(
  kind: Kind<T>,
  byHeading: Record<Heading, T>,
  says: string,
  source: HeadingRule<T>['source'],
): HeadingRule<T> => ({
  kind,
  each: byHeading,
  says,
  source,
});
export const ownEach = <T>(kind: Kind<T>, says: string): HeadingRule<T | undefined> =>
  each(kind as Kind<T | undefined>, heads<T | undefined>(undefined), says, YOURS);

/** A list written in one cell, parted by semicolons or commas with a space. */
export function listOf<T>(kind: Kind<T>, noun: string): Kind<readonly T[]> {
  const inRange = listKind(kind, noun);
  return {
    quantity: kind.quantity,
    noun,
    shape: 'cell',
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined) return undefined;
      const parts = typeof cell === 'string' ? cell.split(/;|,\s/).map((one) => one.trim()) : [cell];
      return inRange.read([parts], place);
    },
    write: (value, unit) => value.map((one) => String(kind.write?.(one, unit) ?? '')).join('; '),
  };
}

export const yards = (figure: number): Length => Math.round(figure * UNITS.yd) as Length;
