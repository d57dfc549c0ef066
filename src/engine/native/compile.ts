/**
 * A formula made into a function, once for all cells where it stands alike. What it reads is known
 * from its text, save where it finds its cells while it is computed (OFFSET, INDIRECT).
 */
import type { CellFunction } from '../../../functions/declare';
import { callNative, isSingle, letterAt, mapped, natives, paired, type Native } from './call';
import { ours, type OurCall } from './ours';
import { operator } from './operators';
import { parse, Unreadable, type Node, type Step } from './parse';
import { FORMS } from './forms';
import {
  Area,
  Areas,
  Fault,
  faultOf,
  Grid,
  REF,
  toNumber,
  unproven,
  VALUE,
  type Scalar,
  type Value,
} from './values';
import { lookUp, World } from './world';

export type Run = (world: World) => Value;

/** Where a formula's text finds its sheets, names and tables. */
export interface Directory {
  sheet(name: string): number | undefined;
  /** What a name stands for, without “=”, and the sheet a bare reference in it means. */
  defined(name: string, sheet: number): string | undefined;
  /** The cells a table reference means, rows counted from the formula's cell where they are its own. */
  table(table: string | undefined, inside: string, at: At): Node;
}

export interface At {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

export interface Read {
  readonly sheet: number | undefined;
  readonly lastSheet: number | undefined;
  readonly top: Step;
  readonly left: Step;
  readonly bottom: Step;
  readonly right: Step;
}

export interface Compiled {
  readonly run: Run;
  readonly reads: readonly Read[];
  /** It finds what it reads while it is computed: any cell may matter to it. */
  readonly everything: boolean;
  readonly functions: ReadonlySet<string>;
  /** Calls of ours. */
  readonly ours: boolean;
}

const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;
const wrap = (at: number, most: number): number => ((at % most) + most) % most;

export function areaOf(read: Read, sheet: number, row: number, column: number): Area {
  const at = (step: Step, from: number, most: number): number =>
    step.fixed ? step.by : wrap(from + step.by, most);
  const [top, bottom] = [at(read.top, row, MOST_ROWS), at(read.bottom, row, MOST_ROWS)];
  const [left, right] = [at(read.left, column, MOST_COLUMNS), at(read.right, column, MOST_COLUMNS)];
  return new Area(
    read.sheet ?? sheet,
    Math.min(top, bottom),
    Math.min(left, right),
    Math.abs(bottom - top) + 1,
    Math.abs(right - left) + 1,
  );
}

/** Names may stand on names; in a circle they never end. */
const DEEPEST_NAMES = 32;

export class Compiler {
  readonly reads: Read[] = [];
  readonly functions = new Set<string>();
  everything = false;
  ours = false;
  /** The names that LET and LAMBDA give at this place. */
  bound: readonly string[] = [];
  #names = 0;

  constructor(
    readonly directory: Directory,
    readonly at: At,
    /** Whether ranges stay ranges where one value belongs: in formulas that may spill, and in arrays. */
    public arrays: boolean,
  ) {}

  compile(node: Node, root = false): Run {
    switch (node.kind) {
      case 'value': {
        const { value } = node;
        return () => value;
      }
      case 'fault': {
        const fault = faultOf(node.code);
        return () => fault;
      }
      case 'missing':
        return () => null;
      case 'array':
        return this.#array(node.rows);
      case 'cells':
        return this.#cells(node);
      case 'name':
        return this.#name(node.name, node.sheet);
      case 'table':
        return this.compile(this.directory.table(node.table, node.inside, this.at));
      case 'spill':
        return this.#spill(node.from);
      case 'call':
        return this.#call(node.name, node.given);
      case 'apply':
        return FORMS.apply(this, node.lambda, node.given);
      case 'chain':
        return this.#chain(node.first, node.rest, root);
      case 'sign':
        return this.#signed(node.sign, node.operand);
      case 'percent': {
        const run = this.single(node.operand);
        return (world) => mapped(run(world), (one) => divided(one, 100));
      }
      case 'union':
        return this.#union(node.list);
    }
  }

  /** One value, or a value for each cell; a range becomes its values or, where it may not spill, one of them. */
  single(node: Node): (world: World) => Scalar | Grid {
    const run = this.compile(node);
    if (this.arrays) return (world) => world.value(run(world));
    return (world) => {
      const value = run(world);
      return value instanceof Area ? world.beside(value) : world.value(value);
    };
  }

  /** With ranges kept, whatever the formula is. */
  inArrays<T>(work: () => T): T {
    const before = this.arrays;
    this.arrays = true;
    try {
      return work();
    } finally {
      this.arrays = before;
    }
  }

  withNames<T>(names: readonly string[], work: () => T): T {
    const before = this.bound;
    this.bound = [...before, ...names];
    try {
      return work();
    } finally {
      this.bound = before;
    }
  }

  #array(rows: readonly (readonly Node[])[]): Run {
    const cells = rows.flatMap((row) =>
      row.map((node): Scalar =>
        node.kind === 'value' ? node.value : node.kind === 'fault' ? faultOf(node.code) : null,
      ),
    );
    const grid = new Grid(rows.length, rows[0]?.length ?? 0, cells);
    return () => grid;
  }

  #cells(node: Node & { kind: 'cells' }): Run {
    const sheetOf = (name: string | undefined): number | undefined => {
      if (name === undefined) return undefined;
      return this.directory.sheet(name) ?? unreadable(`it points at a sheet “${name}”, which is not there`);
    };
    const [sheet, lastSheet] = [sheetOf(node.sheet) ?? node.onSheet, sheetOf(node.lastSheet)];
    const read: Read = { ...node, sheet, lastSheet };
    this.reads.push(read);
    if (lastSheet !== undefined && sheet !== undefined) {
      const [from, to] = [Math.min(sheet, lastSheet), Math.max(sheet, lastSheet)];
      return (world) => {
        const list: Area[] = [];
        for (let one = from; one <= to; one++)
          list.push(areaOf({ ...read, sheet: one }, one, world.row, world.column));
        return new Areas(list);
      };
    }
    if (read.top.fixed && read.left.fixed && read.bottom.fixed && read.right.fixed && sheet !== undefined) {
      const area = areaOf(read, sheet, 0, 0);
      return () => area;
    }
    return (world) => areaOf(read, world.sheet, world.row, world.column);
  }

  #name(name: string, sheetName: string | undefined): Run {
    const key = name.toUpperCase();
    if (sheetName === undefined && this.bound.includes(key))
      return (world) => lookUp(world.bound, key) ?? unproven('loses a name');
    const sheet = sheetName === undefined ? this.at.sheet : this.directory.sheet(sheetName);
    const text = sheet === undefined ? undefined : this.directory.defined(name, sheet);
    if (text === undefined) {
      if (sheetName === undefined && natives.has(key)) return FORMS.handedOn(key);
      return unreadable(`it names ${name}, which is defined nowhere here`);
    }
    if ((this.#names += 1) > DEEPEST_NAMES) unreadable(`the name ${name} refers to itself`);
    try {
      return this.inArrays(() => this.compile(parse(text, 0, 0)));
    } finally {
      this.#names -= 1;
    }
  }

  #spill(from: Node): Run {
    const run = this.compile(from);
    return (world) => {
      const area = run(world);
      if (!(area instanceof Area)) return REF;
      // A cell that is still to be computed says first how far it reaches.
      world.cell(area.sheet, area.row, area.column);
      return world.sheets.spill(area.sheet, area.row, area.column) ?? REF;
    };
  }

  #call(name: string, given: readonly Node[]): Run {
    const own = ours(name);
    if (own !== undefined) return this.#own(own, given);
    if (this.bound.includes(name)) return FORMS.apply(this, { kind: 'name', name, sheet: undefined }, given);
    if (name !== ':' && name !== ' ') this.functions.add(name);
    const form = FORMS.of(name);
    if (form !== undefined) return form(this, given);
    const native = natives.get(name);
    if (native === undefined) {
      if (this.directory.defined(name, this.at.sheet) !== undefined)
        return FORMS.apply(this, { kind: 'name', name, sheet: undefined }, given);
      return unreadable(`it calls ${name}, which is not known here`);
    }
    if (given.length < native.least || given.length > native.most)
      unreadable(`it gives ${name} ${given.length} inputs, and that is not how many it takes`);
    const runs = given.map((node, at) => this.#argument(native, node, at));
    return (world) =>
      callNative(
        native,
        runs.map((run) => run?.(world)),
        world,
      );
  }

  #argument(native: Native, node: Node, at: number): Run | undefined {
    const letter = letterAt(native, at);
    if (node.kind === 'missing')
      return letter === 'n' ||
        letter === 'm' ||
        letter === 'r' ||
        letter === 'a' ||
        letter === 'v' ||
        letter === 'e'
        ? () => null
        : letter === 's'
          ? () => ''
          : () => false;
    if (letter === 'a') return this.inArrays(() => this.compile(node));
    return isSingle(letter) ? this.single(node) : this.compile(node);
  }

  #own(called: CellFunction, given: readonly Node[]): Run {
    this.ours = true;
    const runs = this.inArrays(() =>
      given.map((node) => (node.kind === 'missing' ? undefined : this.compile(node))),
    );
    const call: OurCall = { called, runs };
    return (world) => FORMS.callOurs(call, world);
  }

  #chain(first: Node, rest: readonly (readonly [string, Node])[], root: boolean): Run {
    const start = this.single(first);
    const steps = rest.map(([sign, node], at) => ({
      work: operator(sign, root && at === rest.length - 1),
      run: this.single(node),
    }));
    return (world) => {
      let value = start(world);
      for (const { work, run } of steps) value = paired(value, run(world), work);
      return value;
    };
  }

  #signed(sign: '-' | '+' | '@', operand: Node): Run {
    if (sign === '+') return this.compile(operand);
    if (sign === '@') {
      const run = this.compile(operand);
      return (world) => FORMS.one(run(world), world);
    }
    const run = this.single(operand);
    return (world) => mapped(run(world), negative);
  }

  #union(list: readonly Node[]): Run {
    const [only] = list;
    if (list.length === 1 && only !== undefined) return this.compile(only);
    const runs = list.map((node) => this.compile(node));
    return (world) => {
      const areas: Area[] = [];
      for (const run of runs) {
        const value = run(world);
        if (value instanceof Area) areas.push(value);
        else if (value instanceof Areas) areas.push(...value.list);
        else return value instanceof Fault ? value : VALUE;
      }
      return new Areas(areas);
    };
  }
}

const negative = (one: Scalar): Scalar => {
  const number = toNumber(one);
  return number instanceof Fault ? number : number === 0 ? 0 : -number;
};
const divided = (one: Scalar, by: number): Scalar => {
  const number = toNumber(one);
  return number instanceof Fault ? number : number / by;
};

export function unreadable(why: string): never {
  throw new Unreadable(why);
}

/** `text` without “=”; throws Unreadable where it cannot be computed here at all. */
export function compiled(text: string, at: At, directory: Directory, spills: boolean): Compiled {
  const compiler = new Compiler(directory, at, spills);
  const node = parse(text, at.row, at.column);
  const run = compiler.compile(node, true);
  const { reads, everything, functions, ours: own } = compiler;
  return { run: spills ? run : plainly(run), reads, everything, functions, ours: own };
}

/** A formula that may not spill shows one value of a range, and the first of an array. */
function plainly(run: Run): Run {
  return (world) => {
    const value = run(world);
    if (value instanceof Area) return world.beside(value);
    return value instanceof Grid ? value.at(0, 0) : value;
  };
}

/** What a formula reads that cannot be computed here, so that a change there is not overlooked. */
export interface Loose {
  readonly reads: readonly Read[];
  readonly everything: boolean;
}

/** Cells of another workbook, which nothing here changes. */
const OUTSIDE =
  /(?:'[^']*\[[^\]]+\][^']*'|\[[^\]]+\][\p{L}\p{N}_. ]*)!(?:\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|[\p{L}_][\p{L}\p{N}_.]*(?:\([^()]*\))?)/giu;

export function looselyRead(text: string, at: At, directory: Directory): Loose {
  const reads: Read[] = [];
  let everything = false;
  let depth = 0;
  const named = (name: string, sheet: string | undefined): void => {
    const place = sheet === undefined ? at.sheet : directory.sheet(sheet);
    const found = place === undefined ? undefined : directory.defined(name, place);
    if (found === undefined || depth > DEEPEST_NAMES) return;
    depth += 1;
    look(parse(found, 0, 0));
    depth -= 1;
  };
  const look = (node: Node): void => {
    switch (node.kind) {
      case 'cells':
        reads.push({
          ...node,
          sheet: node.sheet === undefined ? node.onSheet : directory.sheet(node.sheet),
          lastSheet: node.lastSheet === undefined ? undefined : directory.sheet(node.lastSheet),
        });
        return;
      case 'name':
        named(node.name, node.sheet);
        return;
      case 'table':
        look(directory.table(node.table, node.inside, at));
        return;
      case 'spill':
        look(node.from);
        return;
      case 'call':
        everything ||= /^(?:OFFSET|INDIRECT|:|GETPIVOTDATA)$/.test(node.name);
        named(node.name, undefined);
        node.given.forEach(look);
        return;
      case 'apply':
        look(node.lambda);
        node.given.forEach(look);
        return;
      case 'chain':
        look(node.first);
        for (const [, one] of node.rest) look(one);
        return;
      case 'sign':
      case 'percent':
        look(node.operand);
        return;
      case 'union':
        node.list.forEach(look);
        return;
      default:
        return;
    }
  };
  try {
    look(parse(text.replace(OUTSIDE, '0'), at.row, at.column));
  } catch (thrown) {
    if (!(thrown instanceof Unreadable)) throw thrown;
    everything = true;
  }
  return { reads, everything };
}
