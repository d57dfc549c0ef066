/**
 * What lines beside a table say of its headings: “W = track width, D = finished drop”, “RW rod width”,
 * “Heights are finished”. Such a line comes before what the heading alone would say.
 */
import type { Cell, Row } from './cells';
import { headingScore, type Header } from './header';
import { joinHeadings, perWord, readHeading, type HeadingRead, type Per } from './heading';
import { lettersOf } from './meanings';
import type { Idea } from './vocabulary';

/** “Sizes are rod x length” speaks of a column headed “Size”. */
const oneOf = (letters: string): string => (letters.length > 3 ? letters.replace(/s$/, '') : letters);
const sameWord = (one: string, other: string): boolean => oneOf(lettersOf(one)) === oneOf(lettersOf(other));

const CLAUSE = /[.;,]\s+|[;.]$|\s+[-–—]\s+/;
const SAYS = /^(.{1,24}?)\s*(?:=|:|\bis\b|\bare\b|\bmeans?\b|\bstands? for\b)\s*(.{3,60})$/i;
/** Words that say which of two lengths is meant. */
const WHICH = /^(?:all\s+|the\s+)?(\w+)\s+(?:are|is)\s+(?:all\s+|the\s+)?(\w+)$/i;
const WHICH_FIRST = /^(?:all\s+)?(\w+)\s+(\w+s)(?:\s+(?:only|throughout))?$/i;
const TELLING: ReadonlySet<Idea> = new Set(['finished', 'cut', 'inside', 'outside']);
const MEASURES: ReadonlySet<Idea> = new Set(['height', 'length', 'drop', 'width', 'size']);
const UNDERSTOOD = 0.7;

const ideasIn = (text: string): readonly Idea[] =>
  readHeading(text).words.flatMap(({ stands }) => stands.map(({ idea }) => idea));

const clauses = (rows: readonly Row[]): readonly string[] =>
  rows.flatMap((row) =>
    row.flatMap((cell: Cell) =>
      typeof cell === 'string'
        ? cell
            .split(CLAUSE)
            .map((clause) => clause.trim().replace(/\.$/, ''))
            .filter((clause) => clause !== '')
        : [],
    ),
  );

/** “Rods are up” tells no unit price. */
const LEAST_LETTERS = 4;
const understood = (phrase: string): boolean => phrase.length >= LEAST_LETTERS && saysHeading(phrase);
const saysHeading = (phrase: string): boolean =>
  headingScore(phrase) >= UNDERSTOOD ||
  (/\s[x×]\s/i.test(phrase) && phrase.split(/\s[x×]\s/i).every((half) => headingScore(half) >= UNDERSTOOD));

const SEVERAL = /\b(drop|length|width|height|size)s\b/gi;
/** What a clause says of a heading that stands alone; undefined where it says nothing of it. */
function definedBy(clause: string, heading: string): string | undefined {
  const own = lettersOf(heading);
  if (own === '') return undefined;
  const said = SAYS.exec(clause.replace(/^[^:=]{1,20}:\s*(?=.*=)/, ''));
  if (said !== null) {
    const [, subject = '', phrase = ''] = said;
    // “Heights are finished drops” says of each that it is one.
    const each = lettersOf(subject) === own ? phrase : phrase.replace(SEVERAL, '$1');
    return sameWord(subject, heading) && understood(each) ? each : undefined;
  }
  // “RW rod width”: letters and what they stand for.
  const [first = '', ...rest] = clause.split(' ');
  const phrase = rest.join(' ');
  return own.length <= 4 &&
    !PLAIN_WORDS.has(own) &&
    lettersOf(first) === own &&
    rest.length >= 2 &&
    !/\d|[$€£]/.test(phrase + heading) &&
    understood(phrase)
    ? phrase
    : undefined;
}

/** Words of a sentence, however a heading is shortened: “no returns in it” says nothing of a column headed “No.”. */
const PLAIN_WORDS: ReadonlySet<string> = new Set(
  'a all an and as at but by do for from if in is it no not of on or our out so the to up we with'.split(' '),
);

/** The word that tells which height or length is meant, as a clause says it of the columns. */
function toldBy(clause: string): { readonly noun: Idea; readonly word: string } | undefined {
  const [, one = '', other = ''] = WHICH.exec(clause) ?? [];
  const [, first = '', behind = ''] = WHICH_FIRST.exec(clause) ?? [];
  for (const [noun, word] of [
    [one, other],
    [behind, first],
  ] as const) {
    const measure = ideasIn(noun).find((idea) => MEASURES.has(idea));
    if (measure !== undefined && ideasIn(word).some((idea) => TELLING.has(idea)))
      return { noun: measure, word };
  }
  return undefined;
}

/** “Yds and cuts are per window”: nouns, and what one figure of them is for. */
const FOR_ONE =
  /^(?:all )?(.{1,40}?),? (?:is|are|given|shown|quoted)?\s*(?:all )?(?:per|for (?:one|each|a)|to (?:one|each|a)|each) (?:single )?([a-z]+)$/i;
const AND = /\s*(?:,|&|\/|\band\b|\+)\s*/i;
function perBy(clause: string): { readonly nouns: readonly string[]; readonly per: Per } | undefined {
  const [, nouns = '', piece = ''] = FOR_ONE.exec(clause) ?? [];
  const per = perWord(piece);
  return per === undefined ? undefined : { nouns: nouns.split(AND), per };
}

export interface Legend {
  readonly reads: readonly HeadingRead[];
  /** By column, the words a line defines its heading by. */
  readonly defined: readonly (string | undefined)[];
}

/** The headings as the lines beside the table explain them. */
export function withLegend({ texts, reads }: Header, lines: readonly Row[]): Legend {
  const said = clauses(lines);
  const told = said.flatMap((clause) => toldBy(clause) ?? []);
  const pers = said.flatMap((clause) => perBy(clause) ?? []);
  const perOf = (heading: string): Per | undefined =>
    pers.find(({ nouns }) => nouns.some((noun) => sameWord(noun, heading)))?.per;
  const defined = texts.map((rows) =>
    rows.length === 0
      ? undefined
      : said
          .map(
            (clause) =>
              definedBy(clause, rows.at(-1) ?? '') ??
              (rows.length > 1 ? definedBy(clause, rows.join(' ')) : undefined),
          )
          .find((phrase) => phrase !== undefined),
  );
  return {
    defined,
    reads: reads.map((before, at) => {
      const per = before.per ?? perOf((texts[at] ?? []).join(' '));
      const read = per === undefined ? before : { ...before, per };
      const phrase = defined[at];
      if (phrase !== undefined) {
        const { words, unit } = readHeading(phrase.replace(/,? (?:both|all)? ?(?:mm|cm|inches|in)$/i, ''));
        return { ...read, words, unit: read.unit ?? unit };
      }
      const rows = texts[at] ?? [];
      const ideas = rows.flatMap(ideasIn);
      const which = told.find(({ noun }) => ideas.includes(noun));
      if (which === undefined || ideas.some((idea) => TELLING.has(idea)) || read.words.length > 2)
        return read;
      return { ...joinHeadings([...rows, which.word]), unit: read.unit, per: read.per };
    }),
  };
}
