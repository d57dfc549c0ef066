/** Functions that give rows of cells, and those that call a LAMBDA for each. */
import { defineIn } from './call';
import { rowsIn, stopping } from './ranges';
import {
  bounded,
  CALC,
  compared,
  Fault,
  Grid,
  Lambda,
  NA,
  sameText,
  toNumber,
  unproven,
  VALUE,
  type Scalar,
  type Value,
} from './values';
import type { World } from './world';

type Many = (Value | undefined)[];
const MOST = 1_000_000;
const lines = (grid: Grid): Scalar[][] =>
  Array.from({ length: grid.rows }, (_, row) =>
    grid.cells.slice(row * grid.columns, (row + 1) * grid.columns),
  );
const from = (rows: readonly (readonly Scalar[])[]): Value =>
  rows.length === 0 || rows[0]?.length === 0
    ? CALC
    : new Grid(rows.length, rows[0]?.length ?? 0, rows.flat());
const turned = (rows: readonly (readonly Scalar[])[]): Scalar[][] =>
  (rows[0] ?? []).map((_, at) => rows.map((row) => row[at] ?? null));

defineIn('SEQUENCE', 'n?nnn', (_: World, rows: number, columns = 1, first = 1, step = 1) => {
  const [tall, wide] = [Math.trunc(rows), Math.trunc(columns)];
  if (tall < 0 || wide < 0) return VALUE;
  if (tall === 0 || wide === 0) return CALC;
  if (tall * wide > MOST) return unproven('makes so long a list');
  return new Grid(
    tall,
    wide,
    Array.from({ length: tall * wide }, (__, at) => first + at * step),
  );
});
defineIn(
  'FILTER',
  'aa?a',
  stopping((world: World, value: Value, keep: Value, none?: Value) => {
    const [grid, kept] = [rowsIn(world, value), rowsIn(world, keep)];
    const down = kept.columns === 1 && kept.rows === grid.rows;
    if (!down && !(kept.rows === 1 && kept.columns === grid.columns)) return VALUE;
    const truths = kept.cells.map((one) => {
      if (typeof one === 'string') return VALUE;
      return one instanceof Fault ? one : one !== null && one !== false && one !== 0;
    });
    const fault = truths.find((one) => one instanceof Fault);
    if (fault !== undefined) return fault as Fault;
    const rows = down ? lines(grid) : turned(lines(grid));
    const found = rows.filter((_, at) => truths[at] === true);
    if (found.length === 0) return none ?? CALC;
    return from(down ? found : turned(found));
  }),
);
const sorting = (
  rows: readonly (readonly Scalar[])[],
  keys: readonly { at: (row: readonly Scalar[]) => Scalar; falling: boolean }[],
): number[] => {
  const order = rows.map((_, at) => at);
  return order.sort((a, b) => {
    for (const { at, falling } of keys) {
      const [one, other] = [at(rows[a] ?? []), at(rows[b] ?? [])];
      if (one instanceof Fault || other instanceof Fault) return unproven('sorts errors');
      // Blanks come last, whichever way.
      if (one === null || other === null) {
        if (one !== other) return one === null ? 1 : -1;
        continue;
      }
      const way = compared(one, other) * (falling ? -1 : 1);
      if (way !== 0) return way;
    }
    return a - b;
  });
};
defineIn(
  'SORT',
  'a?nnb',
  stopping((world: World, value: Value, index = 1, way = 1, across = false) => {
    const rows = across ? turned(lines(rowsIn(world, value))) : lines(rowsIn(world, value));
    const at = Math.trunc(index) - 1;
    if (at < 0 || at >= (rows[0]?.length ?? 0) || Math.abs(way) !== 1) return VALUE;
    const found = sorting(rows, [{ at: (row) => row[at] ?? null, falling: way === -1 }]).map(
      (one) => rows[one] ?? [],
    );
    return from(across ? turned(found) : found);
  }),
);
defineIn(
  'SORTBY',
  'aa?e*2',
  stopping((world: World, value: Value, ...given: Many) => {
    const rows = lines(rowsIn(world, value));
    if (given.length > 2) return unproven('sorts by several lists');
    const keys = rowsIn(world, given[0]);
    if (keys.rows !== rows.length || keys.columns !== 1) return unproven('sorts by a list that lies across');
    const way = given[1] === undefined ? 1 : given[1];
    const places = rows.map((_, at) => [at]);
    const order = sorting(places, [{ at: (row) => keys.at(Number(row[0]), 0), falling: way === -1 }]);
    return from(order.map((one) => rows[one] ?? []));
  }),
);
const sameCell = (one: Scalar, other: Scalar): boolean =>
  one instanceof Fault || other instanceof Fault
    ? one instanceof Fault && other instanceof Fault && one.code === other.code
    : typeof one === 'string' && typeof other === 'string'
      ? sameText(one, other)
      : one === other;
defineIn(
  'UNIQUE',
  'a?bb',
  stopping((world: World, value: Value, across = false, once = false) => {
    const rows = across ? turned(lines(rowsIn(world, value))) : lines(rowsIn(world, value));
    const same = (a: readonly Scalar[], b: readonly Scalar[]): boolean =>
      a.every((one, at) => sameCell(one, b[at] ?? null));
    const found: { row: readonly Scalar[]; times: number }[] = [];
    for (const row of rows) {
      const known = found.find((one) => same(one.row, row));
      if (known === undefined) found.push({ row, times: 1 });
      else known.times += 1;
    }
    const kept = found
      .filter(({ times }) => !once || times === 1)
      .map(({ row }) => row.map((one) => one ?? 0));
    return from(across ? turned(kept) : kept);
  }),
);
const stacked =
  (across: boolean) =>
  (world: World, ...given: Many): Value => {
    const grids = given.map((one) =>
      across ? turned(lines(rowsIn(world, one))) : lines(rowsIn(world, one)),
    );
    const wide = grids.reduce((most, rows) => Math.max(most, rows[0]?.length ?? 0), 0);
    const all = grids
      .flat()
      .map((row) => [...row, ...new Array<Scalar>(wide - row.length).fill(NA)].map((one) => one ?? 0));
    return from(across ? turned(all) : all);
  };
defineIn('VSTACK', 'a*', stopping(stacked(false)));
defineIn('HSTACK', 'a*', stopping(stacked(true)));
function part(count: number, size: number, take: boolean): readonly [number, number] {
  const whole = Math.trunc(count);
  if (take) return whole >= 0 ? [0, Math.min(whole, size)] : [Math.max(0, size + whole), size];
  return whole >= 0 ? [Math.min(whole, size), size] : [0, Math.max(0, size + whole)];
}
const cut =
  (take: boolean) =>
  (world: World, value: Value, rows?: Value, columns?: Value): Value => {
    const grid = rowsIn(world, value);
    const number = (one: Value | undefined, all: number): readonly [number, number] => {
      if (one === undefined || one === null) return [0, all];
      const count = toNumber(world.value(one) as Scalar);
      return count instanceof Fault ? unproven('takes part of a range by no number') : part(count, all, take);
    };
    const [top, bottom] = number(rows, grid.rows);
    const [left, right] = number(columns, grid.columns);
    return from(
      lines(grid)
        .slice(top, bottom)
        .map((row) => row.slice(left, right)),
    );
  };
defineIn('TAKE', 'a?rr', stopping(cut(true)));
defineIn('DROP', 'a?rr', stopping(cut(false)));
defineIn(
  'EXPAND',
  'an?ne',
  stopping((world: World, value: Value, rows: number, columns?: number, pad: Scalar = NA) => {
    const grid = rowsIn(world, value);
    const [tall, wide] = [Math.trunc(rows), Math.trunc(columns ?? grid.columns)];
    if (tall < grid.rows || wide < grid.columns) return VALUE;
    bounded(tall * wide);
    return new Grid(
      tall,
      wide,
      Array.from({ length: tall * wide }, (_, at) => {
        const [row, column] = [Math.floor(at / wide), at % wide];
        return row < grid.rows && column < grid.columns ? grid.at(row, column) : pad;
      }),
    );
  }),
);
const chosen =
  (across: boolean) =>
  (world: World, value: Value, ...given: Many): Value => {
    const grid = lines(rowsIn(world, value));
    const rows = across ? turned(grid) : grid;
    const found: Scalar[][] = [];
    for (const one of given.flatMap((list) => rowsIn(world, list).cells)) {
      const number = toNumber(one);
      if (number instanceof Fault) return number;
      const at = number < 0 ? rows.length + Math.trunc(number) : Math.trunc(number) - 1;
      const row = rows[at];
      if (row === undefined || number === 0) return VALUE;
      found.push(row);
    }
    return from(across ? turned(found) : found);
  };
defineIn('CHOOSEROWS', 'aa*', stopping(chosen(false)));
defineIn('CHOOSECOLS', 'aa*', stopping(chosen(true)));
const flat =
  (tall: boolean) =>
  (world: World, value: Value, skip = 0, byColumn = false): Value => {
    const rows = byColumn ? turned(lines(rowsIn(world, value))) : lines(rowsIn(world, value));
    const list = rows
      .flat()
      .filter(
        (one) =>
          !((skip === 1 || skip === 3) && one === null) &&
          !((skip === 2 || skip === 3) && one instanceof Fault),
      )
      .map((one) => one ?? 0);
    if (list.length === 0) return CALC;
    return tall ? new Grid(list.length, 1, list) : new Grid(1, list.length, list);
  };
defineIn('TOCOL', 'a?nb', stopping(flat(true)));
defineIn('TOROW', 'a?nb', stopping(flat(false)));
const wrapped =
  (across: boolean) =>
  (world: World, value: Value, count: number, pad: Scalar = NA): Value => {
    const list = rowsIn(world, value);
    const size = Math.trunc(count);
    if (list.rows > 1 && list.columns > 1) return VALUE;
    if (size < 1) return unproven('wraps a list by no number');
    bounded(size);
    const rows: Scalar[][] = [];
    for (let at = 0; at < list.cells.length; at += size)
      rows.push(
        Array.from({ length: size }, (_, one) =>
          at + one < list.cells.length ? (list.cells[at + one] ?? 0) : pad,
        ),
      );
    return from(across ? rows : turned(rows));
  };
defineIn('WRAPROWS', 'an?e', stopping(wrapped(true)));
defineIn('WRAPCOLS', 'an?e', stopping(wrapped(false)));

function called(world: World, made: Value | undefined, given: readonly Value[]): Scalar {
  if (made instanceof Fault) return made;
  if (!(made instanceof Lambda)) return VALUE;
  const answer = world.value(made.call(given));
  return answer instanceof Grid ? (answer.cells.length === 1 ? answer.at(0, 0) : CALC) : answer;
}
defineIn(
  'MAP',
  'aa*',
  stopping((world: World, ...given: Many) => {
    const grids = given.slice(0, -1).map((one) => rowsIn(world, one));
    const [rows, columns] = [
      Math.max(...grids.map((one) => one.rows)),
      Math.max(...grids.map((one) => one.columns)),
    ];
    if (grids.some((one) => one.rows !== rows || one.columns !== columns))
      return unproven('maps ranges of two sizes');
    return new Grid(
      rows,
      columns,
      Array.from({ length: rows * columns }, (_, at) =>
        called(
          world,
          given.at(-1),
          grids.map((one) => one.cells[at] ?? null),
        ),
      ),
    );
  }),
);
const byLine =
  (across: boolean) =>
  (world: World, value: Value, made: Value): Value => {
    const grid = lines(rowsIn(world, value));
    const rows = across ? turned(grid) : grid;
    const answers = rows.map((row) =>
      called(world, made, [across ? new Grid(row.length, 1, row) : new Grid(1, row.length, row)]),
    );
    return across ? new Grid(1, answers.length, answers) : new Grid(answers.length, 1, answers);
  };
defineIn('BYROW', 'ar', stopping(byLine(false)));
defineIn('BYCOL', 'ar', stopping(byLine(true)));
defineIn(
  'REDUCE',
  'raa',
  stopping((world: World, first: Value, list: Value, made: Value) => {
    if (!(made instanceof Lambda)) return VALUE;
    let now = first;
    for (const one of rowsIn(world, list).cells) now = made.call([now, one]);
    return now;
  }),
);
defineIn(
  'SCAN',
  'raa',
  stopping((world: World, first: Value, list: Value, made: Value) => {
    const grid = rowsIn(world, list);
    let now: Value = first;
    return new Grid(
      grid.rows,
      grid.columns,
      grid.cells.map((one) => {
        const next = called(world, made, [now, one]);
        now = next;
        return next;
      }),
    );
  }),
);
defineIn(
  'MAKEARRAY',
  'nnr',
  stopping((world: World, rows: number, columns: number, made: Value) => {
    const [tall, wide] = [Math.trunc(rows), Math.trunc(columns)];
    if (tall < 1 || wide < 1) return VALUE;
    if (tall * wide > MOST) return unproven('makes so long a list');
    return new Grid(
      tall,
      wide,
      Array.from({ length: tall * wide }, (_, at) =>
        called(world, made, [Math.floor(at / wide) + 1, (at % wide) + 1]),
      ),
    );
  }),
);
defineIn('ISOMITTED', 'r', () => unproven('asks whether an input was left out'));
