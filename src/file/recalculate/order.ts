/**
 * Which formula is computed before which, from what their texts read. A range stands for all formulas in
 * it by the nodes of a tree over each column, so that a thousand running totals cost no million links.
 */
import type { Area } from '../../engine/native/values';

/** A cell that a formula fills: its own, or one of its spill. */
export interface Leaf {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  /** The formula's number. */
  readonly owner: number;
}

interface Tree {
  readonly rows: Int32Array;
  readonly owners: Int32Array;
  /** Its first node's number; node `first + size + i` is leaf i. */
  readonly first: number;
}

/** The formulas that fill one column. */
interface Filled {
  readonly rows: number[];
  readonly owners: number[];
  sorted: boolean;
}

function byRow({ rows, owners }: Filled): { rows: number[]; owners: number[] } {
  const places = [...rows.keys()].sort((one, other) => (rows[one] ?? 0) - (rows[other] ?? 0));
  return { rows: places.map((at) => rows[at] ?? 0), owners: places.map((at) => owners[at] ?? 0) };
}

export class Order {
  readonly #sheets: Map<number, Tree>[] = [];
  readonly #changed: Uint8Array;
  readonly #nodes: number;
  /** For each tree, by its first node, to find it again from a node. */
  readonly #trees: Tree[] = [];

  constructor(
    readonly count: number,
    leaves: Iterable<Leaf>,
    readonly reads: (formula: number, visit: (area: Area) => void) => void,
  ) {
    const columns = new Map<number, Map<number, Filled>>();
    for (const { sheet, row, column, owner } of leaves) {
      let onSheet = columns.get(sheet);
      if (onSheet === undefined) columns.set(sheet, (onSheet = new Map<number, Filled>()));
      let filled = onSheet.get(column);
      if (filled === undefined) onSheet.set(column, (filled = { rows: [], owners: [], sorted: true }));
      filled.sorted &&= row >= (filled.rows.at(-1) ?? 0);
      filled.rows.push(row);
      filled.owners.push(owner);
    }
    let next = count;
    for (const [sheet, byColumn] of columns) {
      const trees = (this.#sheets[sheet] = new Map<number, Tree>());
      for (const [column, filled] of byColumn) {
        const { rows, owners } = filled.sorted ? filled : byRow(filled);
        const tree: Tree = { rows: Int32Array.from(rows), owners: Int32Array.from(owners), first: next };
        trees.set(column, tree);
        this.#trees.push(tree);
        next += 2 * rows.length;
      }
    }
    this.#nodes = next;
    this.#changed = new Uint8Array(next);
  }

  /** The formula that fills this cell, or undefined. */
  ownerAt(sheet: number, row: number, column: number): number | undefined {
    const tree = this.#sheets[sheet]?.get(column);
    if (tree === undefined) return undefined;
    const at = firstFrom(tree.rows, row);
    return tree.rows[at] === row ? tree.owners[at] : undefined;
  }

  /** Notes that a cell has another value than before. */
  change(sheet: number, row: number, column: number): void {
    const tree = this.#sheets[sheet]?.get(column);
    if (tree === undefined) return;
    const at = firstFrom(tree.rows, row);
    if (tree.rows[at] !== row) return;
    for (let node = at + tree.rows.length; node >= 1; node >>= 1) {
      if (this.#changed[tree.first + node] === 1) return;
      this.#changed[tree.first + node] = 1;
    }
  }

  /** Whether anything a formula reads was noted as changed. */
  concerned(formula: number): boolean {
    let found = false;
    this.reads(formula, (area) => {
      if (!found) this.#cover(area, (node) => (found ||= this.#changed[node] === 1));
    });
    return found;
  }

  /** The nodes that together are an area's formulas. */
  #cover(area: Area, visit: (node: number) => void): void {
    const trees = this.#sheets[area.sheet];
    if (trees === undefined) return;
    const inTree = (tree: Tree): void => {
      const size = tree.rows.length;
      let low = firstFrom(tree.rows, area.row) + size;
      let high =
        (area.rows === 1 ? firstFrom(tree.rows, area.row + 1) : firstFrom(tree.rows, area.row + area.rows)) +
        size;
      while (low < high) {
        if (low & 1) visit(tree.first + low++);
        if (high & 1) visit(tree.first + --high);
        low >>= 1;
        high >>= 1;
      }
    };
    if (area.columns <= trees.size) {
      for (let column = area.column; column < area.column + area.columns; column++) {
        const tree = trees.get(column);
        if (tree !== undefined) inTree(tree);
      }
    } else
      for (const [column, tree] of trees)
        if (column >= area.column && column < area.column + area.columns) inTree(tree);
  }

  #treeOf(node: number): Tree {
    let [low, high] = [0, this.#trees.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((this.#trees[middle]?.first ?? Infinity) <= node) low = middle;
      else high = middle;
    }
    return this.#trees[low] as Tree;
  }

  #next(node: number): number[] {
    const list: number[] = [];
    if (node < this.count) {
      this.reads(node, (area) => {
        this.#cover(area, (one) => list.push(one));
      });
      return list;
    }
    const tree = this.#treeOf(node);
    const at = node - tree.first;
    const size = tree.rows.length;
    if (at >= size) list.push(tree.owners[at - size] ?? 0);
    else list.push(tree.first + 2 * at, tree.first + 2 * at + 1);
    return list;
  }

  /** All formulas, each after those it reads, and those that refer to themselves, each with its circle's number. */
  sorted(): { readonly order: Int32Array; readonly circles: ReadonlyMap<number, number> } {
    // Tarjan's components, without a call for each level: a chain may be 20,000 long.
    const seen = new Int32Array(this.#nodes).fill(-1);
    const low = new Int32Array(this.#nodes);
    const open = new Uint8Array(this.#nodes);
    const order = new Int32Array(this.count);
    const circles = new Map<number, number>();
    const waiting: number[] = [];
    let [time, done] = [0, 0];
    for (let root = 0; root < this.count; root++) {
      if (seen[root] !== -1) continue;
      const path: { node: number; next: number[]; at: number }[] = [];
      const enter = (node: number): void => {
        seen[node] = low[node] = time++;
        open[node] = 1;
        waiting.push(node);
        path.push({ node, next: this.#next(node), at: 0 });
      };
      enter(root);
      for (let step = path.at(-1); step !== undefined; step = path.at(-1)) {
        const { node } = step;
        const to = step.next[step.at++];
        if (to !== undefined) {
          if (seen[to] === -1) enter(to);
          else if (open[to] === 1) low[node] = Math.min(low[node] ?? 0, seen[to] ?? 0);
          continue;
        }
        path.pop();
        const before = path.at(-1)?.node;
        if (before !== undefined) low[before] = Math.min(low[before] ?? 0, low[node] ?? 0);
        if (low[node] !== seen[node]) continue;
        const group: number[] = [];
        let size = 0;
        for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
          open[one] = 0;
          size += 1;
          if (one < this.count) group.push(one);
          if (one === node) break;
        }
        for (const one of group.reverse()) {
          order[done++] = one;
          // Between a formula and itself there is always a node of a column.
          if (size > 1) circles.set(one, node);
        }
      }
    }
    return { order, circles };
  }
}

/** The first place whose row is this one or below it. */
function firstFrom(rows: Int32Array, row: number): number {
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle] ?? 0) < row) low = middle + 1;
    else high = middle;
  }
  return low;
}
