/** What takes its parts unlike other functions: only those it needs, or as places rather than values. */
import { natives, callNative, paired, spread } from './call';
import type { Compiler, Run } from './compile';
import { callOurs } from './ours';
import { parse, Unreadable, type Node } from './parse';
import {
  Area,
  Areas,
  Fault,
  Grid,
  Lambda,
  NA,
  NULL,
  REF,
  toNumber,
  toText,
  toTruth,
  unproven,
  VALUE,
  equal,
  type Scalar,
  type Value,
} from './values';
import { isScalar, type World } from './world';

type Form = (compiler: Compiler, given: readonly Node[]) => Run;
const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;

function wanted(given: readonly Node[], least: number, most: number): void {
  if (given.length < least || given.length > most)
    throw new Unreadable('it gives a function too few or too many inputs');
}
/** A reference of which only the place matters, not what stands in it. */
function placed(compiler: Compiler, node: Node | undefined): Run {
  const before = compiler.reads.length;
  const run = compiler.compile(node as Node);
  if (node?.kind === 'cells') compiler.reads.length = before;
  return run;
}

const blankRun: Run = () => null;
const part = (compiler: Compiler, node: Node | undefined): Run | undefined =>
  node === undefined ? undefined : node.kind === 'missing' ? blankRun : compiler.compile(node);

const ifForm: Form = (compiler, given) => {
  wanted(given, 2, 3);
  const test = compiler.single(given[0] as Node);
  const yes = part(compiler, given[1]) ?? blankRun;
  const no = part(compiler, given[2]) ?? (() => false);
  return (world) => {
    const truth = test(world);
    if (!(truth instanceof Grid)) {
      const one = toTruth(truth);
      return one instanceof Fault ? one : one ? yes(world) : no(world);
    }
    const [then, otherwise] = [world.value(yes(world)), world.value(no(world))];
    const [rows, columns] = extent([truth, then, otherwise]);
    return filled(rows, columns, (row, column) => {
      const one = toTruth(spread(truth, row, column));
      return one instanceof Fault ? one : spread(one ? then : otherwise, row, column);
    });
  };
};

function extent(values: readonly (Scalar | Grid)[]): readonly [number, number] {
  let [rows, columns] = [1, 1];
  for (const value of values)
    if (value instanceof Grid)
      [rows, columns] = [Math.max(rows, value.rows), Math.max(columns, value.columns)];
  return [rows, columns];
}
function filled(rows: number, columns: number, at: (row: number, column: number) => Scalar): Grid {
  const cells: Scalar[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) cells.push(at(row, column));
  return new Grid(rows, columns, cells);
}

const instead =
  (caught: (fault: Fault) => boolean): Form =>
  (compiler, given) => {
    wanted(given, 2, 2);
    const first = compiler.single(given[0] as Node);
    const other = compiler.single(given[1] as Node);
    return (world) => {
      const value = first(world);
      if (!(value instanceof Grid))
        return value instanceof Fault && caught(value) ? (other(world) ?? 0) : value;
      if (!value.cells.some((one) => one instanceof Fault && caught(one))) return value;
      return paired(value, other(world), (one, two) => (one instanceof Fault && caught(one) ? two : one));
    };
  };

const ifs: Form = (compiler, given) => {
  if (given.length < 2 || given.length % 2 === 1) wanted(given, 2, 1);
  const pairs = Array.from(
    { length: given.length / 2 },
    (_, at) =>
      [compiler.single(given[2 * at] as Node), part(compiler, given[2 * at + 1]) ?? blankRun] as const,
  );
  return (world) => {
    for (const [test, run] of pairs) {
      const truth = test(world);
      if (truth instanceof Grid) return unproven('tests a whole range in IFS');
      const one = toTruth(truth);
      if (one instanceof Fault) return one;
      if (one) return run(world);
    }
    return NA;
  };
};

const switchForm: Form = (compiler, given) => {
  wanted(given, 3, 255);
  const subject = compiler.single(given[0] as Node);
  const rest = given.slice(1);
  const otherwise = rest.length % 2 === 1 ? part(compiler, rest.at(-1)) : undefined;
  const pairs = Array.from(
    { length: Math.floor(rest.length / 2) },
    (_, at) => [compiler.single(rest[2 * at] as Node), part(compiler, rest[2 * at + 1]) ?? blankRun] as const,
  );
  return (world) => {
    const value = subject(world);
    if (value instanceof Grid) return unproven('chooses for a whole range in SWITCH');
    if (value instanceof Fault) return value;
    for (const [test, run] of pairs) {
      const one = test(world);
      if (one instanceof Grid) return unproven('chooses for a whole range in SWITCH');
      if (one instanceof Fault) return one;
      if (equal(value, one)) return run(world);
    }
    return otherwise === undefined ? NA : otherwise(world);
  };
};

const choose: Form = (compiler, given) => {
  wanted(given, 2, 255);
  const index = compiler.single(given[0] as Node);
  const list = given.slice(1).map((node) => part(compiler, node) ?? blankRun);
  const chosen = (world: World, value: Scalar): Value => {
    const number = toNumber(value);
    if (number instanceof Fault) return number;
    return (
      list[Math.trunc(number) - 1]?.(world) ?? (list[Math.trunc(number) - 1] === undefined ? VALUE : null)
    );
  };
  return (world) => {
    const value = index(world);
    if (!(value instanceof Grid)) return chosen(world, value);
    const parts = value.cells.map((one) => world.value(chosen(world, one)));
    const [rows, columns] = extent([value, ...parts]);
    return filled(rows, columns, (row, column) => {
      const [r, c] = [value.rows === 1 ? 0 : row, value.columns === 1 ? 0 : column];
      if (r >= value.rows || c >= value.columns) return NA;
      return spread(parts[r * value.columns + c] ?? null, row, column);
    });
  };
};

const letForm: Form = (compiler, given) => {
  if (given.length < 3 || given.length % 2 === 0) wanted(given, 3, 2);
  const names: string[] = [];
  const runs: Run[] = [];
  const before = compiler.bound;
  for (let at = 0; at < given.length - 1; at += 2) {
    const name = given[at];
    if (name?.kind !== 'name') throw new Unreadable('its LET names no name');
    runs.push(part(compiler, given[at + 1]) ?? blankRun);
    names.push(name.name.toUpperCase());
    compiler.bound = [...compiler.bound, name.name.toUpperCase()];
  }
  const last = compiler.compile(given.at(-1) as Node);
  compiler.bound = before;
  return (world) => {
    const outside = world.bound;
    try {
      for (const [at, run] of runs.entries())
        world.bound = { name: names[at] ?? '', value: run(world), next: world.bound };
      return last(world);
    } finally {
      world.bound = outside;
    }
  };
};

const lambda: Form = (compiler, given) => {
  wanted(given, 1, 254);
  const names = given.slice(0, -1).map((node) => {
    if (node.kind !== 'name') throw new Unreadable('its LAMBDA names no name');
    return node.name.toUpperCase();
  });
  const body = compiler.withNames(names, () =>
    compiler.inArrays(() => compiler.compile(given.at(-1) as Node)),
  );
  return (world) => {
    const made = world.bound;
    return new Lambda(names.length, (values) => {
      const outside = world.bound;
      world.bound = made;
      try {
        for (const [at, name] of names.entries())
          world.bound = { name, value: values[at] ?? null, next: world.bound };
        return body(world);
      } finally {
        world.bound = outside;
      }
    });
  };
};

function apply(compiler: Compiler, made: Node, given: readonly Node[]): Run {
  const run = compiler.compile(made);
  const inputs = given.map((node) => part(compiler, node) ?? blankRun);
  return (world) => {
    const value = run(world);
    if (value instanceof Fault) return value;
    if (!(value instanceof Lambda)) return REF;
    if (inputs.length > value.most) return VALUE;
    if (inputs.length < value.most) return unproven('calls a LAMBDA with inputs left out');
    return value.call(inputs.map((one) => one(world)));
  };
}

/** SUM without brackets, handed to BYROW and its kin. */
function handedOn(name: string): Run {
  const native = natives.get(name);
  return (world) =>
    native === undefined
      ? NA
      : new Lambda(255, (values) =>
          callNative(
            native,
            values.map((one) =>
              native.takes.startsWith('r') || native.takes.startsWith('a') ? one : world.value(one),
            ),
            world,
          ),
        );
}

const index: Form = (compiler, given) => {
  wanted(given, 2, 4);
  const from = compiler.inArrays(() => compiler.compile(given[0] as Node));
  const numbers = given
    .slice(1)
    .map((node) => (node.kind === 'missing' ? () => null : compiler.single(node)));
  return (world) => {
    const source = from(world);
    if (source instanceof Fault) return source;
    const [row = null, column = null, area = null] = numbers.map((run) => run(world));
    if (row instanceof Grid || column instanceof Grid)
      return paired(row, column, (one, other) => {
        const found = world.value(indexed(source, one, other, area as Scalar, numbers.length));
        return found instanceof Grid ? found.at(0, 0) : found;
      });
    return indexed(source, row, column, area as Scalar, numbers.length);
  };
};

function indexed(source: Value, rowAt: Scalar, columnAt: Scalar, areaAt: Scalar, count: number): Value {
  const [row, column, which] = [toNumber(rowAt), toNumber(columnAt), toNumber(areaAt)];
  for (const one of [row, column, which]) if (one instanceof Fault) return one;
  let whole = source;
  if (whole instanceof Areas) {
    const chosen = whole.list[Math.max(1, Math.trunc(Number(which))) - 1];
    if (chosen === undefined) return REF;
    whole = chosen;
  }
  if (isScalar(whole)) whole = new Grid(1, 1, [whole]);
  if (!(whole instanceof Area) && !(whole instanceof Grid)) return VALUE;
  let [r, c] = [Math.trunc(Number(row)), Math.trunc(Number(column))];
  // One number counts along a single row.
  if (count === 1 && whole.rows === 1) [r, c] = [whole.columns === 1 ? r : 1, whole.columns === 1 ? 1 : r];
  else if (count === 1 && whole.columns > 1 && whole instanceof Area && r > 0 && whole.rows > 1)
    return unproven('takes a whole row of a range by one number');
  if (r < 0 || c < 0) return VALUE;
  if (r > whole.rows || c > whole.columns) return REF;
  const [top, left] = [r === 0 ? 0 : r - 1, c === 0 ? 0 : c - 1];
  const [rows, columns] = [r === 0 ? whole.rows : 1, c === 0 ? whole.columns : 1];
  if (whole instanceof Area)
    return new Area(whole.sheet, whole.row + top, whole.column + left, rows, columns);
  const grid = whole;
  return rows * columns === 1
    ? grid.at(top, left)
    : filled(rows, columns, (down, across) => grid.at(top + down, left + across));
}

const offset: Form = (compiler, given) => {
  wanted(given, 3, 5);
  compiler.everything = true;
  const from = placed(compiler, given[0]);
  const numbers = given.slice(1).map((node) => (node.kind === 'missing' ? undefined : compiler.single(node)));
  return (world) => {
    const area = from(world);
    if (area instanceof Fault) return area;
    if (!(area instanceof Area)) return VALUE;
    const [down, right, tall, wide] = [0, 1, 2, 3].map((at): number | Fault => {
      const run = numbers[at];
      if (run === undefined) return at === 2 ? area.rows : at === 3 ? area.columns : 0;
      const value = run(world);
      if (value instanceof Grid) return unproven('moves by a whole range in OFFSET');
      const number = toNumber(value);
      return number instanceof Fault ? number : Math.trunc(number);
    }) as [number | Fault, number | Fault, number | Fault, number | Fault];
    for (const one of [down, right, tall, wide]) if (one instanceof Fault) return one;
    const [rows, columns] = [Number(tall), Number(wide)];
    if (rows === 0 || columns === 0) return REF;
    const top = area.row + Number(down) + (rows < 0 ? rows + 1 : 0);
    const left = area.column + Number(right) + (columns < 0 ? columns + 1 : 0);
    return onSheet(new Area(area.sheet, top, left, Math.abs(rows), Math.abs(columns)));
  };
};

const onSheet = (area: Area): Area | Fault =>
  area.row < 0 ||
  area.column < 0 ||
  area.row + area.rows > MOST_ROWS ||
  area.column + area.columns > MOST_COLUMNS
    ? REF
    : area;

const indirect: Form = (compiler, given) => {
  wanted(given, 1, 2);
  compiler.everything = true;
  const text = compiler.single(given[0] as Node);
  const style = given[1] === undefined || given[1].kind === 'missing' ? undefined : compiler.single(given[1]);
  const { directory, at } = compiler;
  return (world) => {
    const value = text(world);
    if (value instanceof Grid) return unproven('reads a whole range of addresses in INDIRECT');
    if (value instanceof Fault) return value;
    if (style !== undefined) {
      const a1 = toTruth(style(world) as Scalar);
      if (a1 instanceof Fault) return a1;
      if (!a1) return unproven('reads an address in the style R1C1');
    }
    const address = toText(value);
    if (address instanceof Fault) return address;
    try {
      const node = parse(address, world.row, world.column);
      if (node.kind !== 'cells' && node.kind !== 'name' && node.kind !== 'table') return REF;
      const inner = new (
        compiler.constructor as new (...given: ConstructorParameters<typeof Compiler>) => Compiler
      )(directory, { ...at, row: world.row, column: world.column }, true);
      const found = inner.compile(node)(world);
      return found instanceof Area ? found : REF;
    } catch (thrown) {
      if (thrown instanceof Unreadable) return REF;
      throw thrown;
    }
  };
};

const ranged: Form = (compiler, given) => {
  compiler.everything = true;
  const runs = given.map((node) => compiler.compile(node));
  return (world) => {
    const areas = runs.map((run) => run(world));
    const fault = areas.find((one) => one instanceof Fault);
    if (fault !== undefined) return fault;
    const [one, other] = areas;
    if (!(one instanceof Area) || !(other instanceof Area)) return VALUE;
    if (one.sheet !== other.sheet) return VALUE;
    const [row, column] = [Math.min(one.row, other.row), Math.min(one.column, other.column)];
    const bottom = Math.max(one.row + one.rows, other.row + other.rows);
    const right = Math.max(one.column + one.columns, other.column + other.columns);
    return new Area(one.sheet, row, column, bottom - row, right - column);
  };
};

const shared: Form = (compiler, given) => {
  const runs = given.map((node) => compiler.compile(node));
  return (world) => {
    const [one, other] = runs.map((run) => run(world));
    if (one instanceof Fault) return one;
    if (!(one instanceof Area) || !(other instanceof Area)) return unproven('takes what several areas share');
    const [row, column] = [Math.max(one.row, other.row), Math.max(one.column, other.column)];
    const rows = Math.min(one.row + one.rows, other.row + other.rows) - row;
    const columns = Math.min(one.column + one.columns, other.column + other.columns) - column;
    return one.sheet === other.sheet && rows > 0 && columns > 0
      ? new Area(one.sheet, row, column, rows, columns)
      : NULL;
  };
};

/** ROW and COLUMN: of the formula's own cell, or of a reference. */
const place =
  (first: (area: Area) => number, count: (area: Area) => number, tall: boolean): Form =>
  (compiler, given) => {
    wanted(given, 0, 1);
    const [node] = given;
    if (node === undefined) return (world) => first(new Area(world.sheet, world.row, world.column, 1, 1)) + 1;
    const run = placed(compiler, node);
    const { arrays } = compiler;
    return (world) => {
      const area = run(world);
      if (area instanceof Fault) return area;
      if (!(area instanceof Area)) return VALUE;
      if (count(area) === 1) return first(area) + 1;
      if (!arrays) return unproven('takes the numbers of several rows or columns where one belongs');
      const list = Array.from({ length: Math.min(count(area), 100_000) }, (_, at) => first(area) + 1 + at);
      return tall ? new Grid(list.length, 1, list) : new Grid(1, list.length, list);
    };
  };

const size =
  (count: (shape: { rows: number; columns: number }) => number): Form =>
  (compiler, given) => {
    wanted(given, 1, 1);
    const run = compiler.inArrays(() => placed(compiler, given[0]));
    return (world) => {
      const value = run(world);
      if (value instanceof Fault) return value;
      return value instanceof Area || value instanceof Grid ? count(value) : isScalar(value) ? 1 : VALUE;
    };
  };

const isReference: Form = (compiler, given) => {
  wanted(given, 1, 1);
  const run = compiler.compile(given[0] as Node);
  return (world) => {
    const value = run(world);
    return value instanceof Area || value instanceof Areas;
  };
};

const areaCount: Form = (compiler, given) => {
  wanted(given, 1, 1);
  const run = compiler.compile(given[0] as Node);
  return (world) => {
    const value = run(world);
    return value instanceof Areas
      ? value.list.length
      : value instanceof Area
        ? 1
        : value instanceof Fault
          ? value
          : VALUE;
  };
};

const formulaOf =
  (answer: (text: string | undefined) => Scalar): Form =>
  (compiler, given) => {
    wanted(given, 1, 1);
    const run = compiler.compile(given[0] as Node);
    return (world) => {
      const value = run(world);
      if (value instanceof Fault) return value;
      if (!(value instanceof Area)) return unproven('asks for the formula of no cell');
      if (value.rows * value.columns > 1) return unproven('asks for the formulas of several cells');
      return answer(world.sheets.formula(value.sheet, value.row, value.column));
    };
  };

/** Of several cells the one beside or above; of an array the first. */
function one(value: Value, world: World): Value {
  if (value instanceof Area) return world.beside(value);
  return value instanceof Grid ? value.at(0, 0) : value;
}

const single: Form = (compiler, given) => {
  wanted(given, 1, 1);
  const run = compiler.compile(given[0] as Node);
  return (world) => one(run(world), world);
};

const anchored: Form = (compiler, given) => {
  wanted(given, 1, 1);
  return compiler.compile({ kind: 'spill', from: given[0] as Node });
};

const never =
  (why: string): Form =>
  () =>
  () =>
    unproven(why);
const CHANCE = never('depends on the day, the hour or on chance');
const PROGRAM = never('asks the program that shows the workbook');

const TABLE: Readonly<Record<string, Form>> = {
  IF: ifForm,
  IFERROR: instead(() => true),
  IFNA: instead((fault) => fault.code === NA.code),
  IFS: ifs,
  SWITCH: switchForm,
  CHOOSE: choose,
  LET: letForm,
  LAMBDA: lambda,
  INDEX: index,
  OFFSET: offset,
  INDIRECT: indirect,
  ':': ranged,
  ' ': shared,
  ROW: place(
    (area) => area.row,
    (area) => area.rows,
    true,
  ),
  COLUMN: place(
    (area) => area.column,
    (area) => area.columns,
    false,
  ),
  ROWS: size(({ rows }) => rows),
  COLUMNS: size(({ columns }) => columns),
  ISREF: isReference,
  AREAS: areaCount,
  FORMULATEXT: formulaOf((text) => text ?? NA),
  ISFORMULA: formulaOf((text) => text !== undefined),
  SINGLE: single,
  ANCHORARRAY: anchored,
  TODAY: CHANCE,
  NOW: CHANCE,
  RAND: CHANCE,
  RANDBETWEEN: CHANCE,
  RANDARRAY: CHANCE,
  CELL: PROGRAM,
  INFO: PROGRAM,
};

export const FORMS = {
  of: (name: string): Form | undefined => (Object.hasOwn(TABLE, name) ? TABLE[name] : undefined),
  names: Object.keys(TABLE),
  apply,
  handedOn,
  callOurs,
  one,
};
