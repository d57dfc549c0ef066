import { fillNames } from '../../../src/core/findings/parameters';

type Table = Readonly<Record<string, { readonly says: (...words: never[]) => string }>>;

/** How many words each finding takes, given as ⟨1⟩, ⟨2⟩ …: what a sentence says with them. */
function said(says: (...words: never[]) => string): { words: readonly string[]; sentence: string } {
  const words = Array.from({ length: says.length }, (_, at) => `⟨${at + 1}⟩`);
  return { words, sentence: fillNames((says as (...all: string[]) => string)(...words), (key) => key) };
}

/** Findings whose sentence has no end (one may end in a whole sentence it is given), holds a hole, or says nothing of a word it was given. */
export const faulty = (table: Table): readonly string[] =>
  Object.entries(table).flatMap(([code, { says }]) => {
    const { words, sentence } = said(says);
    const whole =
      /^\S.*(?:[.?!]|[.:] ⟨\d⟩)$/s.test(sentence) && !/undefined|NaN|\[object| {2}/.test(sentence);
    return whole && words.every((word) => sentence.includes(word)) ? [] : [`${code}: ${sentence}`];
  });
