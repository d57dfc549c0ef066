/**
 * What lines beside a table say of its headings: “W = track width, D = finished drop”, “RW rod width”,
 * “Heights are finished”. Such a line comes before what the heading alone would say.
 */
import type { Cell, Row } from './cells';
import { headingScore, type Header } from './header';
import { joinHeadings, readHeading, type HeadingRead } from './heading';
import type { Idea } from './vocabulary';

/** A heading by its letters alone: “R/W” is “rw”. */
const lettersOf = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '');

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

const understood = (phrase: string): boolean =>
  headingScore(phrase) >= UNDERSTOOD ||
  (/\s[x×]\s/i.test(phrase) && phrase.split(/\s[x×]\s/i).every((half) => headingScore(half) >= UNDERSTOOD));

/** What a clause says of a heading that stands alone; undefined where it says nothing of it. */
function definedBy(clause: string, heading: string): string | undefined {
  const own = lettersOf(heading);
  if (own === '') return undefined;
  const said = SAYS.exec(clause.replace(/^[^:=]{1,20}:\s*(?=.*=)/, ''));
  if (said !== null)
    return lettersOf(said[1] ?? '') === own && understood(said[2] ?? '') ? said[2] : undefined;
  // “RW rod width”: letters and what they stand for.
  const [first = '', ...rest] = clause.split(' ');
  const phrase = rest.join(' ');
  return own.length <= 4 &&
    lettersOf(first) === own &&
    rest.length >= 2 &&
    !/\d|[$€£]/.test(phrase + heading) &&
    understood(phrase)
    ? phrase
    : undefined;
}

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

export interface Legend {
  readonly reads: readonly HeadingRead[];
  /** By column, the words a line defines its heading by. */
  readonly defined: readonly (string | undefined)[];
}

/** The headings as the lines beside the table explain them. */
export function withLegend({ texts, reads }: Header, lines: readonly Row[]): Legend {
  const said = clauses(lines);
  const told = said.flatMap((clause) => toldBy(clause) ?? []);
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
    reads: reads.map((read, at) => {
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
