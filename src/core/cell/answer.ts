/**
 * What every computation gives back: a value, the steps a person can check with a pencil,
 * and the findings. A Refusal is thrown where no answer is possible; anything else thrown is a bug.
 */
import { fillNames, functionsWord } from '../findings/parameters';
import { FINDINGS, type FindingCode } from '../findings/table';
import type { Length } from '../exact/length';
import type { Money } from '../exact/money';
import type { Ratio } from '../exact/ratio';

/** A number with its kind, so that it can be shown in the house's unit, later and only if asked. */
export type Figure =
  | { readonly as: 'length'; readonly value: Length }
  | { readonly as: 'yardage'; readonly value: Length }
  | { readonly as: 'ratio'; readonly value: Ratio }
  | { readonly as: 'number'; readonly value: number }
  | { readonly as: 'money'; readonly value: Money }
  | { readonly as: 'text'; readonly value: string };

export const lengthFigure = (length: Length): Figure => ({ as: 'length', value: length });
export const yardageFigure = (length: Length): Figure => ({ as: 'yardage', value: length });
export const ratioFigure = (ratio: Ratio): Figure => ({ as: 'ratio', value: ratio });
export const numberFigure = (figure: number): Figure => ({ as: 'number', value: figure });
export const moneyFigure = (amount: Money): Figure => ({ as: 'money', value: amount });
export const textFigure = (words: string): Figure => ({ as: 'text', value: words });

/** One line of working: `what` = `how` with each {} filled by a figure = `result`. */
export interface Step {
  readonly what: string;
  readonly how: string;
  readonly figures: readonly Figure[];
  readonly result: Figure;
}

export function step(what: string, how: string, figures: readonly Figure[], result: Figure): Step {
  return { what, how, figures, result };
}

/** stop: cannot go on so; check: look before you cut; note: good to know. */
export type Weight = 'stop' | 'check' | 'note';

/** No string, so that what is written out of a finding leaves it alone. */
const UNNAMED = Symbol('names left open');

export interface Finding {
  readonly code: FindingCode;
  readonly weight: Weight;
  /** The input or rule it is about, in the sheet's word. */
  readonly about: string;
  readonly sentence: string;
  /** The same with a place for each input's name; none where it speaks of no input of a function. */
  readonly [UNNAMED]?: { readonly about: string; readonly sentence: string };
}

type Words<C extends FindingCode> = Parameters<(typeof FINDINGS)[C]['says']>;

export function finding<C extends FindingCode>(code: C, about: string, ...words: Words<C>): Finding {
  const { weight, says } = FINDINGS[code];
  const sentence = (says as (...w: Words<C>) => string)(...words);
  const named = { code, weight, ...inWords({ about, sentence }, functionsWord) };
  return named.about === about && named.sentence === sentence
    ? named
    : { ...named, [UNNAMED]: { about, sentence } };
}

const inWords = (open: { about: string; sentence: string }, name: (key: string) => string) => ({
  about: fillNames(open.about, name),
  sentence: fillNames(open.sentence, name),
});

/** The same finding with its inputs called otherwise; `name` is given a parameter's key (fabricWidth). */
export function renamed(one: Finding, name: (key: string) => string): Finding {
  const open = one[UNNAMED];
  return open === undefined ? one : { ...one, ...inWords(open, name) };
}

/** No answer is possible. `error` is what the cell shows: only these two carry a sentence in Excel. */
export class Refusal extends Error {
  constructor(
    readonly finding: Finding,
    readonly error: '#VALUE!' | '#N/A' = '#VALUE!',
  ) {
    super(finding.sentence);
    this.name = 'Refusal';
  }
}

export function refuse<C extends FindingCode>(code: C, about: string, ...words: Words<C>): never {
  throw new Refusal(finding(code, about, ...words));
}

/** The input is sound, but the thing asked for does not exist. */
export function noAnswer<C extends FindingCode>(code: C, about: string, ...words: Words<C>): never {
  throw new Refusal(finding(code, about, ...words), '#N/A');
}

export interface Answer<T> {
  readonly value: T;
  readonly steps: readonly Step[];
  readonly findings: readonly Finding[];
}

type Working = readonly Step[] | (() => readonly Step[]);

/** Steps are written down only when someone looks: thousands of windows are priced without them. */
class Worked<T> implements Answer<T> {
  constructor(
    readonly value: T,
    private readonly working: Working,
    readonly findings: readonly Finding[],
  ) {}
  get steps(): readonly Step[] {
    return typeof this.working === 'function' ? this.working() : this.working;
  }
}

const NONE: readonly never[] = [];

export const answer = <T>(value: T, steps: Working = NONE, findings: readonly Finding[] = NONE): Answer<T> =>
  new Worked(value, steps, findings);
