/** Where the user points a column at, by its letter as typed. */
import { columnOf, letters, MOST_COLUMNS } from '../book/address';

/** Where the user points an output at: its letter as typed, and whether filled cells there may be overwritten. */
export interface Place {
  readonly letter: string;
  readonly overwrite: boolean;
}

export const columnAt = (letter: string): number | undefined => {
  const at = /^[A-Za-z]{1,3}$/.test(letter.trim()) ? columnOf(letter.trim()) : MOST_COLUMNS;
  return at < MOST_COLUMNS ? at : undefined;
};

/** Why the letter is none, or undefined. */
export const letterFault = (letter: string): string | undefined =>
  letter.trim() === '' || columnAt(letter) !== undefined
    ? undefined
    : `“${letter}” is no column. Write its letter, like ${letters(9)}.`;
