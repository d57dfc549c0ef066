/** What words beside money say, in the ideas of headings: what the client pays, or which sum of a quote. */
import type { Idea } from './vocabulary';
import { readHeading } from './heading';

const AMOUNTS: readonly Idea[] = ['price', 'amount', 'total', 'gross', 'net'];
/** What may stand beside one of them where it is what the client pays. */
const BESIDE: readonly Idea[] = ['customer', 'line', 'money', 'tax', 'order'];
/** Of one yard, hour or piece. */
const OF_ONE = /^(?:units?|rates?|cst|pr)$/;

/** “to the” and “your” say nothing of what an amount is. */
const SMALL = 0.3;

interface Word {
  readonly text: string;
  readonly ideas: readonly Idea[];
}

const wordsOf = (text: string): readonly Word[] =>
  readHeading(text)
    .words.filter(({ weight }) => weight >= SMALL)
    .map((word) => ({ text: word.text, ideas: word.stands.map(({ idea }) => idea) }));

const says = ({ ideas }: Word, wanted: readonly Idea[]): boolean => ideas.some((one) => wanted.includes(one));

/** “Client price”, “Total to client”, “Amount”: not the price of a yard, of cloth or of making. */
export function saysClientPays(heading: string): boolean {
  const words = wordsOf(heading);
  return (
    readHeading(heading).per === undefined &&
    words.some((one) => says(one, AMOUNTS)) &&
    words.every((one) => !OF_ONE.test(one.text) && says(one, [...AMOUNTS, ...BESIDE]))
  );
}

/** What stands under the lines of a quote. */
export type SumSaid = 'subtotal' | 'tax' | 'total' | 'deposit' | 'balance';

/** Above a window a balance is a trim; among sums it is what is left to pay. */
const LEFT = /^(?:balance|bal|remaining|remainder|outstanding)$/;

/** Which sum a label names; undefined where it is a part of them, as installation and freight are. */
export function sumSaid(label: string): SumSaid | undefined {
  const words = wordsOf(label);
  const any = (...wanted: readonly Idea[]): boolean => words.some((one) => says(one, wanted));
  if (words.some(({ text }) => LEFT.test(text))) return 'balance';
  if (any('deposit')) return 'deposit';
  if (any('net')) return 'subtotal';
  if (any('gross')) return 'total';
  if (any('tax')) return 'tax';
  return any('total') ? 'total' : undefined;
}
