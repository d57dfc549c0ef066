/** Formulas that stand alike, counted each from its own cell, are read and made ready once. */
import {
  compiled,
  looselyRead,
  type At,
  type Compiled,
  type Directory,
  type Read,
} from '../../engine/native/compile';
import { Unreadable } from '../../engine/native/parse';
import type { AlikeText } from '../../book/alike-text';
import { countedFrom } from '../../book/formula';
import { callsOurs, functionsIn, otherWorkbook, typed } from './formula';
import { tableAt, type Named } from './directory';
import '../../engine/native/all';

export interface Shape {
  /** Undefined where nothing here can compute it. */
  readonly compiled: Compiled | undefined;
  /** Why not. */
  readonly why: string;
  readonly ours: boolean;
  /** A call of ours stands in its own text: it may spill, though the program that wrote it did not say so. */
  readonly direct: boolean;
  /** Its answer changes by itself: the day, chance, or cells it finds while it is computed. */
  readonly volatile: boolean;
  readonly functions: readonly string[];
  readonly reads: readonly Read[];
  /** It finds what it reads while it is computed, or no one can tell what it reads. */
  readonly everything: boolean;
}

const VOLATILE = new Set([
  'TODAY',
  'NOW',
  'RAND',
  'RANDBETWEEN',
  'RANDARRAY',
  'OFFSET',
  'INDIRECT',
  'CELL',
  'INFO',
]);
/** They ask the world outside the workbook, or the program that shows it. */
const OUTSIDE =
  /^(?:RTD|WEBSERVICE|STOCKHISTORY|IMAGE|GETPIVOTDATA|CALL|REGISTER\.ID|CUBE\w+|SQL\.REQUEST|EUROCONVERT|PY|TRANSLATE|DETECTLANGUAGE|COPILOT)$/;

export const DATA_TABLE: Shape = {
  compiled: undefined,
  why: 'it is part of a what-if data table, which is not computed here',
  ours: false,
  direct: false,
  volatile: false,
  functions: [],
  reads: [],
  everything: true,
};

export class Shapes {
  readonly #known = new Map<string, Shape>();
  readonly #alike = new Map<AlikeText, Shape>();
  readonly #alikeSpilling = new Map<AlikeText, Shape>();

  constructor(
    readonly book: Named,
    readonly directory: Directory,
  ) {}

  /** How many different ones there are. */
  get count(): number {
    return this.#known.size;
  }

  /** `held` as the file holds it, without “=”. */
  of(held: AlikeText | string, at: At, spills: boolean): Shape {
    if (typeof held === 'string') return this.#byText(held, at, spills);
    const stored = (): string => held.at(at.row, at.column) ?? '';
    if (held.bracketed) return this.#byText(stored(), at, spills);
    // One of these belongs to the cells of one sheet.
    const alike = spills ? this.#alikeSpilling : this.#alike;
    let shape = alike.get(held);
    if (shape === undefined) alike.set(held, (shape = this.#byText(stored(), at, spills)));
    return shape;
  }

  #byText(stored: string, at: At, spills: boolean): Shape {
    const table = stored.includes('[') ? (tableAt(this.book, at)?.name ?? '') : '';
    const key = `${at.sheet}!${spills ? '#' : ''}${table}!${countedFrom(stored, at.row, at.column)}`;
    let shape = this.#known.get(key);
    if (shape === undefined) this.#known.set(key, (shape = made(stored, at, this.directory, spills)));
    return shape;
  }
}

function made(stored: string, at: At, directory: Directory, spills: boolean): Shape {
  const text = typed(stored);
  const functions = functionsIn(text);
  const ours = callsOurs(text);
  const rest = { ours, direct: ours, functions, volatile: functions.some((name) => VOLATILE.has(name)) };
  const refused = (why: string): Shape => ({
    ...rest,
    ...looselyRead(text, at, directory),
    compiled: undefined,
    why,
  });
  const other = otherWorkbook(text);
  if (other !== undefined) return refused(`it points into another workbook ([${other}])`);
  const outside = functions.find((name) => OUTSIDE.test(name));
  if (outside !== undefined) return refused(`it calls ${outside}, which is not computed here`);
  try {
    const found = compiled(text, at, directory, spills || ours);
    const { reads, everything } = found;
    return { ...rest, ours: ours || found.ours, compiled: found, why: '', reads, everything };
  } catch (thrown) {
    if (thrown instanceof Unreadable) return refused(thrown.message);
    throw thrown;
  }
}
