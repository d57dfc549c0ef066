/** Several figures written in one cell, parted by semicolons. */
import { refuse } from './answer';
import type { Kind, Place } from './fields';

export const partsOf = (text: string): string[] =>
  text
    .split(/;|\n/)
    .map((one) => one.trim())
    .filter((one) => one !== '');

/** One figure of a part; it may not be blank. */
export function readPart<T>(kind: Kind<T>, text: string | undefined, place: Place): T {
  return kind.read(text, place) ?? refuse('missing', place.name, place.name, kind.noun);
}
