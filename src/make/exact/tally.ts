/** Asks the catalogue as a cell would, holds each value against the exact one, and counts. */
import { functionNamed } from '../../../functions/index';
import type { CellFunction } from '../../../functions/declare';
import { unitOf, type Cell, type Range, type Unit } from './cells';
import type { Exact } from './figures';
import KNOWN from './differs-for-now.json';

type Inputs = Parameters<CellFunction['call']>[0];
export type Given = readonly (Cell | Range)[];
/** What a case is about, so that a difference is found by its cause. */
export type About = Readonly<Record<string, string>>;

/** What a figure is: lengths to the nanometre, cloth to the step or the nanometre, all else exactly. */
export type Figure =
  | { readonly as: 'length'; readonly unit: Unit; readonly value: Exact }
  /** Worked out by two ratios one after the other: each may leave a nanometre. */
  | { readonly as: 'twice worked length'; readonly unit: Unit; readonly value: Exact }
  | { readonly as: 'count' | 'money' | 'ratio'; readonly value: Exact }
  /** `grained`: of whole nanometres, where a broken one decides between two steps. */
  | { readonly as: 'cloth'; readonly value: Exact; readonly grained?: Exact | undefined }
  | { readonly as: 'refused' };

export interface Known {
  /** Of these kinds of answers; none named is every kind. */
  readonly kinds?: readonly string[];
  /** Each of these must be so; a list means one of them. */
  readonly where: Readonly<Record<string, string | readonly string[]>>;
  readonly because: string;
}

export interface Result {
  readonly counts: Readonly<Record<string, number>>;
  /** Differences that no entry of the data file expects. */
  readonly differing: number;
  readonly shown: readonly string[];
  /** Of each kind that differs: how often each circumstance was met among the differences. */
  readonly among: Readonly<Record<string, ReadonlyMap<string, number>>>;
  /** How often each entry of the data file was met. */
  readonly met: readonly { readonly entry: Known; readonly times: number }[];
}

const SHOWN_OF_A_KIND = 3;

/** A relative error that only binary figures of the answer may have. */
const BINARY = 1e-13;

const near = (ours: number, meant: number, room: number): boolean => Math.abs(ours - meant) <= room;

function same(ours: unknown, figure: Figure): boolean {
  if (figure.as === 'refused') return false;
  if (typeof ours !== 'number') return false;
  const meant = figure.value.valueOf();
  switch (figure.as) {
    case 'length': {
      // Whole nanometres: a broken one may go either way.
      const grains = Math.round(ours * unitOf(figure.unit).valueOf());
      return figure.value.d === 1n ? grains === meant : Math.abs(grains - meant) < 1;
    }
    case 'twice worked length':
      return near(ours * unitOf(figure.unit).valueOf(), meant, 2.5);
    case 'cloth':
      return [meant, figure.grained?.valueOf() ?? meant].some((one) => near(ours, one, one * 4e-9));
    case 'ratio':
      return near(ours, meant, Math.abs(meant) * BINARY * 10);
    default:
      return near(ours, meant, Math.abs(meant) * BINARY);
  }
}

const shownOf = (figure: Figure): string => {
  if (figure.as === 'refused') return 'no answer';
  return 'unit' in figure
    ? `${figure.value.div(unitOf(figure.unit)).valueOf()} (${figure.value.toFraction()} nm)`
    : `${figure.value.valueOf()} (${figure.value.toFraction()})`;
};

/** “6 1/8 yd” or “9.6 m” as a number. */
function figureIn(text: string): number {
  const [, whole = '0', part] = /^(?:(\d[\d.]*)(?![\d/]))?\s?(\d+\/\d+)?/.exec(text) ?? [];
  const [above, below] = (part ?? '0/1').split('/').map(Number);
  return Number(whole) + (above ?? 0) / (below ?? 1);
}

const formulaOf = (name: string, given: Given): string =>
  `${name} ${JSON.stringify(given.map((cell) => (cell === undefined ? null : cell)))}`;

export class Tally {
  readonly #counts: Record<string, number> = {};
  readonly #shown: string[] = [];
  readonly #shownOf: Record<string, number> = {};
  readonly #met = (KNOWN as readonly Known[]).map((entry) => ({ entry, times: 0 }));
  readonly #among: Record<string, Map<string, number>> = {};
  #differing = 0;
  #house: About = {};

  /** The circumstances of all answers from here on. */
  enter(house: About): void {
    this.#house = house;
  }

  /** Each figure of the answer's first row, in order; undefined is one that is not compared. */
  compare(
    kind: string,
    name: string,
    given: Given,
    meant: readonly (Figure | undefined)[],
    circumstances: About,
  ): void {
    const about = { ...this.#house, ...circumstances };
    const named = functionNamed(name);
    if (named === undefined) throw new Error(`no function ${name}`);
    const outcome = named.call(given as Inputs);
    const cells =
      'error' in outcome
        ? []
        : Array.isArray(outcome.cells)
          ? (outcome.cells[0] as unknown[])
          : [outcome.cells];
    for (const [at, figure] of meant.entries()) {
      if (figure === undefined) continue;
      this.#counts[kind] = (this.#counts[kind] ?? 0) + 1;
      const equal = 'error' in outcome ? figure.as === 'refused' : same(cells[at], figure);
      if (equal) continue;
      const ours =
        'error' in outcome ? `${outcome.error} ${outcome.finding.sentence}` : JSON.stringify(cells[at]);
      this.#differs(
        kind,
        about,
        () =>
          `${kind}: ${formulaOf(name, given)}\n    ours ${ours}, exact ${shownOf(figure)}, figure ${at + 1}, ${JSON.stringify(about)}`,
      );
    }
  }

  /** Of each sentence's figures: undefined is one that must not be said. Quantities of cloth stand as a tape has them. */
  compareSentences(
    kind: string,
    name: string,
    given: Given,
    meant: readonly (readonly [RegExp, readonly number[] | undefined])[],
    circumstances: About,
  ): void {
    const about = { ...this.#house, ...circumstances };
    const outcome = functionNamed(name)?.call(given as Inputs);
    const sentences =
      outcome === undefined || 'error' in outcome ? [] : outcome.findings.map(({ sentence }) => sentence);
    for (const [like, figures] of meant) {
      this.#counts[kind] = (this.#counts[kind] ?? 0) + 1;
      const found = sentences.map((one) => like.exec(one)).find((one) => one !== null);
      const ours = found?.slice(1).map(figureIn);
      const equal =
        figures === undefined || ours === undefined
          ? figures === ours
          : figures.every((one, at) => near(ours[at] ?? NaN, one, 5e-5 * Math.max(1, one)));
      if (equal) continue;
      this.#differs(
        kind,
        about,
        () =>
          `${kind}: ${formulaOf(name, given)}\n    ours “${found?.[0] ?? 'nothing'}”, exact ${JSON.stringify(figures ?? 'nothing')}, ${like.source}, ${JSON.stringify(about)}`,
      );
    }
  }

  #differs(kind: string, about: About, line: () => string): void {
    const known = this.#met.find(({ entry }) => matches(entry, kind, about));
    if (known !== undefined) {
      known.times += 1;
      return;
    }
    this.#differing += 1;
    const among = (this.#among[kind] ??= new Map<string, number>());
    for (const [key, value] of Object.entries(about)) {
      const circumstance = `${key}: ${value}`;
      among.set(circumstance, (among.get(circumstance) ?? 0) + 1);
    }
    this.#shownOf[kind] = (this.#shownOf[kind] ?? 0) + 1;
    if (this.#shownOf[kind] <= SHOWN_OF_A_KIND) this.#shown.push(line());
  }

  get result(): Result {
    return {
      counts: this.#counts,
      differing: this.#differing,
      shown: this.#shown,
      among: this.#among,
      met: this.#met,
    };
  }
}

const matches = ({ kinds, where }: Known, kind: string, about: About): boolean =>
  (kinds?.includes(kind) ?? true) &&
  Object.entries(where).every(([key, value]) =>
    typeof value === 'string' ? about[key] === value : value.includes(about[key] ?? ''),
  );
