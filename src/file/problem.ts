/** What ends a command on purpose: one sentence for the person, and how the command ends. */
export const FINE = 0;
export const NOT_COMPUTED = 1;
export const USAGE = 2;
export const FILE = 3;

export class Problem extends Error {
  constructor(
    sentence: string,
    readonly exit: typeof NOT_COMPUTED | typeof USAGE | typeof FILE = FILE,
  ) {
    super(sentence);
    this.name = 'Problem';
  }
}

/** Counts with their noun: 1 formula, 2 formulas. */
export const counted = (count: number, noun: string): string =>
  `${count.toLocaleString('en-US')} ${noun}${count === 1 ? '' : 's'}`;
