/**
 * The choice of patterns as an integer programme: so many rolls of each kind cut by each pattern,
 * rooms given to lots, cuts left out where the cloth falls short.
 */
import type { Highs, ModelData } from 'highs';
import type { Demand } from '../core/rolls/cutting';
import type { RoomGroup } from '../core/rolls/by-room';
import { gives, type Pattern } from './patterns';

/** Rolls alike: of one lot, with the same clean stretches. */
export interface RollKind {
  readonly lot: number;
  readonly stretches: readonly number[];
  /** Which rolls; none where there are as many as it takes. */
  readonly rolls: readonly number[];
}

export interface Column {
  readonly kind: number;
  readonly pattern: Pattern;
}

export interface Task {
  readonly demand: Demand;
  readonly kinds: readonly RollKind[];
  readonly endless: boolean;
  readonly lots: number;
  readonly groups: readonly RoomGroup[];
  /** Whether cuts may be left out: only where no plan is known that gives them all. */
  readonly mayFallShort: boolean;
}

/** Rows: what each lot gives of each length, then the rolls of each kind, then each group of rooms. */
export const rowOfType = (task: Task, lot: number, type: number): number =>
  lot * task.demand.lengths.length + type;
export const rowOfKind = (task: Task, kind: number): number => task.lots * task.demand.lengths.length + kind;
const rowOfGroup = (task: Task, group: number): number => rowOfKind(task, task.kinds.length) + group;

type Entry = readonly [row: number, value: number];
interface Variable {
  readonly cost: number;
  readonly most: number;
  readonly entries: readonly Entry[];
}

/** Leaving out the smallest group costs more than opening every roll. */
function costOfLeavingOut(task: Task, group: RoomGroup): number {
  const least = Math.min(...task.groups.map(({ cloth }) => cloth));
  const rolls = task.kinds.reduce((sum, { rolls }) => sum + rolls.length, 1);
  return Math.round((rolls * 10 * group.cloth) / least);
}

function variablesOf(task: Task, columns: readonly Column[]): Variable[] {
  const types = task.demand.lengths.length;
  const cut = columns.map(({ kind, pattern }): Variable => {
    const { lot } = task.kinds[kind] as RollKind;
    const given = gives(pattern, types).flatMap((count, type): Entry[] =>
      count > 0 ? [[rowOfType(task, lot, type), count]] : [],
    );
    return { cost: 1, most: Infinity, entries: [...given, [rowOfKind(task, kind), 1]] };
  });
  const share = task.groups.flatMap(({ wants, count }, group) =>
    Array.from({ length: task.lots }, (_, lot): Variable => {
      const taken = wants.flatMap((want, type): Entry[] =>
        want > 0 ? [[rowOfType(task, lot, type), -want]] : [],
      );
      return { cost: 0, most: count, entries: [...taken, [rowOfGroup(task, group), 1]] };
    }),
  );
  const out = task.mayFallShort
    ? task.groups.map((group, at): Variable => ({
        cost: costOfLeavingOut(task, group),
        most: group.count,
        entries: [[rowOfGroup(task, at), 1]],
      }))
    : [];
  return [...cut, ...share, ...out];
}

export function modelOf(highs: Highs, task: Task, columns: readonly Column[], whole: boolean): ModelData {
  const variables = variablesOf(task, columns);
  const { kinds, groups, demand } = task;
  const gains = task.lots * demand.lengths.length;
  const limits = kinds.map(({ rolls }) => (task.endless ? highs.infinity : rolls.length));
  const counts = groups.map(({ count }) => count);
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { entries } of variables) {
    for (const [row, value] of [...entries].sort(([one], [other]) => one - other)) {
      indices.push(row);
      values.push(value);
    }
    starts.push(indices.length);
  }
  const numRows = gains + kinds.length + groups.length;
  const zeros = (length: number): number[] => Array.from({ length }, () => 0);
  const { integer, continuous } = highs.constants.variableType;
  return {
    numCols: variables.length,
    numRows,
    colCost: variables.map(({ cost }) => cost),
    colLower: zeros(variables.length),
    colUpper: variables.map(({ most }) => (most === Infinity ? highs.infinity : most)),
    rowLower: [...zeros(gains), ...zeros(kinds.length), ...counts],
    rowUpper: [...zeros(gains).map(() => highs.infinity), ...limits, ...counts],
    matrix: { format: 'csc', numRows, numCols: variables.length, starts, indices, values },
    integrality: variables.map(() => (whole ? integer : continuous)),
  };
}

/** What a solution says: how often each column is cut, and how many of each group each lot is given. */
export function readSolution(
  task: Task,
  columns: readonly Column[],
  values: Float64Array,
): { readonly times: readonly number[]; readonly shares: readonly (readonly number[])[] } {
  const whole = (at: number): number => Math.round(values[at] ?? 0);
  return {
    times: columns.map((_, at) => whole(at)),
    shares: task.groups.map((_, group) =>
      Array.from({ length: task.lots }, (_, lot) => whole(columns.length + group * task.lots + lot)),
    ),
  };
}
