/** How a column writes what it holds: numbers, tape fractions, short forms, dates, and what is said once. */
import type Fraction from 'fraction.js';
import { exact, feetAndInches, plain, tape } from './exact';
import type { Figure, Line, Text } from './line';
import type { Cell, Column, Place } from './style';

export type Writer = Column['cell'];

export const column = (
  heads: string | readonly (string | null)[],
  means: Column['means'],
  cell: Writer,
  also: Pick<Column, 'unit' | 'per'> = {},
): Column => ({ heads: typeof heads === 'string' ? [heads] : heads, means, cell, ...also });

const valueOr = (line: Line, word: Figure, write: (figure: Fraction) => Cell, blank: Cell): Cell => {
  const value = line[word];
  return value === undefined ? blank : write(value);
};

/** A plain number, or what the house writes where there is none. */
export const number =
  (word: Figure, decimals = 3, blank: Cell = null): Writer =>
  (line) =>
    valueOr(line, word, (figure) => plain(figure, decimals), blank);

export const money = (word: Figure, blank: Cell = null): Writer => number(word, 2, blank);

/** £467.20 as text. */
export const sterling =
  (word: Figure, sign = '£'): Writer =>
  (line) =>
    valueOr(line, word, (figure) => `${sign}${plain(figure, 2).toFixed(2)}`, null);

/** The figure divided: to a panel, or in another unit. */
export const scaled =
  (word: Figure, factor: number | ((line: Line) => Fraction), decimals = 3, blank: Cell = null): Writer =>
  (line) =>
    valueOr(
      line,
      word,
      (figure) => plain(figure.mul(typeof factor === 'number' ? exact(factor) : factor(line)), decimals),
      blank,
    );

export const onTape =
  (word: Figure): Writer =>
  (line) =>
    valueOr(line, word, tape, null);

export const inFeet =
  (word: Figure): Writer =>
  (line) =>
    valueOr(line, word, feetAndInches, null);

export const text =
  (word: Text, blank: Cell = null): Writer =>
  (line) =>
    line[word] ?? blank;

/** The house's own short form of a choice; as it is where it has none. */
export const short =
  (word: Text, forms: Readonly<Record<string, Cell>>): Writer =>
  (line) => {
    const value = line[word];
    if (value === undefined) return forms[''] ?? null;
    const form = forms[value];
    return form === undefined ? value : form;
  };

/** On the first line of its order only. */
export const once =
  (writer: Writer): Writer =>
  (line, place) =>
    place.first ? writer(line, place) : null;

/** A ditto mark where the line above says the same. */
export const ditto =
  (word: Text, mark: string): Writer =>
  (line, { above }) =>
    above !== undefined && above[word] === line[word] ? mark : (line[word] ?? null);

export const joined =
  (between: string, ...writers: readonly Writer[]): Writer =>
  (line, place) =>
    writers
      .map((writer) => writer(line, place))
      .filter((part) => part !== null)
      .map(String)
      .join(between);

export const asDate: Writer = (line) => (line.date === undefined ? null : { date: line.date });

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A date as text: d day, dd with two digits, m, mm, mmm for its name, yy and yyyy. */
export function dated(date: string, pattern: string): string {
  const [year = '', month = '', day = ''] = date.split('-');
  const parts: Readonly<Record<string, string>> = {
    yyyy: year,
    yy: year.slice(2),
    mmm: MONTHS[Number(month) - 1] ?? month,
    mm: month,
    m: String(Number(month)),
    dd: day,
    d: String(Number(day)),
  };
  return pattern.replace(/yyyy|yy|mmm|mm|m|dd|d/g, (part) => parts[part] ?? part);
}

export const dateText =
  (pattern: string): Writer =>
  (line: Line, _place: Place) =>
    line.date === undefined ? null : dated(line.date, pattern);
