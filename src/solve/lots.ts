/**
 * Rooms onto dye lots before any cut is placed: which rooms each lot gets and which rolls it opens,
 * so that the rolls can hold them by every weighting. What even this cannot do, no plan can.
 */
import { leastOf, mostSpared, type Load } from '../core/rolls/takes';
import { Effort } from '../core/rolls/fill';
import { RollBound } from '../core/rolls/bound';
import { layOnRolls } from '../core/rolls/stretches';
import type { Task } from './master';
import type { Search } from './search';

/** Weightings a lot's rolls must satisfy at once. */
const WEIGHTINGS = 3;
/** Steps for placing one lot's cuts on its rolls. */
const LOT_EFFORT = 400_000;

export interface Sharing {
  /** Fewer rolls no plan can open. */
  readonly rolls: number;
  /** The lots surely cannot take all the rooms. */
  readonly short: boolean;
  /** How many of each group each lot gets, and how many rolls of each kind it opens. */
  readonly shares?: readonly (readonly number[])[];
  readonly open?: readonly number[];
}

export type Weights = readonly {
  readonly ofLengths: readonly number[];
  readonly holds: (stretch: number) => number;
}[];

/** The weightings, each scaled so that the longest stretch holds 1,000. */
export function weightsOf(task: Task): Weights {
  const { demand } = task;
  const rolls = task.kinds.flatMap(({ stretches, rolls: own }) => own.map(() => stretches));
  const bound = new RollBound(demand, rolls, false);
  const longest = Math.max(...rolls.flat());
  const longer = mostSpared(demand);
  const found = [
    {
      ofLengths: demand.lengths.map((_, type) => leastOf(demand, type)),
      holds: (stretch: number) => stretch + longer,
    },
  ];
  for (const weighting of bound.weightings()) {
    if (found.length >= WEIGHTINGS) break;
    const holds = bound.holding(weighting);
    if (holds(longest) > 0) found.push({ ofLengths: [...weighting], holds });
  }
  return found.map(({ ofLengths, holds }) => {
    const scale = 1_000 / holds(longest);
    return { ofLengths: ofLengths.map((one) => one * scale), holds: (stretch) => holds(stretch) * scale };
  });
}

/** `tight`: the share of what the rolls hold that may be used; below 1 it leaves room for placing, and proves nothing. */
export function shareRooms(
  { highs, stop }: Search,
  task: Task,
  weights: Weights,
  tight: number,
  seconds: number,
): Sharing {
  const { groups, kinds, lots } = task;
  const shareAt = (group: number, lot: number): number => group * lots + lot;
  const openAt = (kind: number): number => groups.length * lots + kind;
  const numCols = groups.length * lots + kinds.length;
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  const add = (entries: readonly (readonly [column: number, value: number])[]): void => {
    for (const [column, value] of entries) {
      indices.push(column);
      values.push(value);
    }
    starts.push(indices.length);
  };
  for (const { ofLengths, holds } of weights) {
    const weightOf = groups.map(({ wants }) =>
      wants.reduce((sum, count, type) => sum + count * (ofLengths[type] ?? 0), 0),
    );
    for (let lot = 0; lot < lots; lot++) {
      add([
        ...weightOf.flatMap((weight, group) => (weight > 0 ? [[shareAt(group, lot), weight] as const] : [])),
        ...kinds.flatMap((kind, at) => {
          const held = kind.stretches.reduce((sum, stretch) => sum + holds(stretch), 0);
          return kind.lot === lot && held > 0 ? [[openAt(at), -held * tight] as const] : [];
        }),
      ]);
    }
  }
  const holding = starts.length - 1;
  groups.forEach((_, group) =>
    add(Array.from({ length: lots }, (__, lot) => [shareAt(group, lot), 1] as const)),
  );
  const numRows = starts.length - 1;
  const counts = groups.map(({ count }) => count);
  const cloth = kinds.map(({ stretches }) => stretches.reduce((sum, one) => sum + one, 0));
  const all = kinds.reduce((sum, { rolls }, at) => sum + rolls.length * (cloth[at] ?? 0), 0);
  const zeros = (length: number): number[] => Array.from({ length }, () => 0);
  const { integer } = highs.constants.variableType;
  return highs.withModel(
    {
      numCols,
      numRows,
      // Of as few rolls the longer ones: they are the easier to fill. It never weighs as much as a roll.
      colCost: [...zeros(groups.length * lots), ...cloth.map((one) => 1 - (0.5 * one) / all)],
      colLower: zeros(numCols),
      colUpper: [
        ...groups.flatMap(({ count }) => zeros(lots).map(() => count)),
        ...kinds.map(({ rolls }) => rolls.length),
      ],
      rowLower: [...zeros(holding).map(() => -highs.infinity), ...counts],
      rowUpper: [...zeros(holding), ...counts],
      matrix: { format: 'csr', numRows, numCols, starts, indices, values },
      integrality: zeros(numCols).map(() => integer),
    },
    (model): Sharing => {
      // A plan's cost lies less than half a roll below its rolls: a smaller gap tells no more of them.
      model.options.set({
        output_flag: false,
        time_limit: Math.max(0.05, seconds),
        mip_rel_gap: 0,
        mip_abs_gap: 0.3,
      });
      model.run({
        [highs.constants.callbackType.mipInterrupt](event) {
          if (stop?.aborted === true) event.interrupt();
        },
      });
      const { infeasible } = highs.constants.modelStatus;
      if (model.getModelStatus() === infeasible) return { rolls: 0, short: true };
      const bound = Number(model.info.get('mip_dual_bound'));
      const rolls = Number.isFinite(bound) ? Math.ceil(bound - 1e-6) : 0;
      if (Number(model.info.get('primal_solution_status')) !== 2) return { rolls, short: false };
      const found = model.getSolution().colValue;
      const whole = (at: number): number => Math.round(found[at] ?? 0);
      return {
        rolls,
        short: false,
        shares: groups.map((_, group) =>
          Array.from({ length: lots }, (__, lot) => whole(shareAt(group, lot))),
        ),
        open: kinds.map((_, kind) => whole(openAt(kind))),
      };
    },
  );
}

/** Places what each lot was given on the rolls it opens; undefined where it does not go. */
export function placeShares(task: Task, sharing: Sharing, rolls: number): Load[][] | undefined {
  const { lengths } = task.demand;
  const loads = Array.from({ length: rolls }, (): Load[] => []);
  for (let lot = 0; lot < task.lots; lot++) {
    const counts = lengths.map((_, type) =>
      task.groups.reduce(
        (sum, { wants }, at) => sum + (wants[type] ?? 0) * (sharing.shares?.[at]?.[lot] ?? 0),
        0,
      ),
    );
    if (counts.every((count) => count === 0)) continue;
    const own = task.kinds.flatMap((kind, at) =>
      kind.lot === lot ? kind.rolls.slice(0, sharing.open?.[at] ?? 0).map((roll) => ({ roll, kind })) : [],
    );
    const laid = layOnRolls(
      own.map(({ kind }) => kind.stretches),
      { ...task.demand, counts },
      new Effort(LOT_EFFORT),
    );
    if (laid.left.some((count) => count > 0)) return undefined;
    own.forEach(({ roll }, at) => (loads[roll] = [...(laid.loads[at] ?? [])]));
  }
  return loads;
}
