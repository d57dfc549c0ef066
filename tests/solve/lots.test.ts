import { describe, expect, it } from 'vitest';
import { demandOf, type CutLine } from '../../src/core/rolls/cutting';
import { RollBound } from '../../src/core/rolls/bound';
import { roomGroups } from '../../src/core/rolls/by-room';
import { fromUnit, type Length } from '../../src/core/exact/length';
import { loadSolver } from '../../src/solve/load';
import { placeShares, shareRooms, weightsOf } from '../../src/solve/lots';
import type { Task } from '../../src/solve/master';

const yards = (figure: number): Length => fromUnit(figure, 'yd');

/** Lots A and B of two rolls of 40 yd each, and so many rooms of ten cuts of 5 yd. */
function floor(rooms: number): Task {
  const cuts = Array.from({ length: rooms }, (_, at): CutLine => ({
    length: yards(5),
    count: 10,
    room: String(401 + at),
  }));
  const demand = demandOf(cuts);
  const kind = (lot: number) => ({ lot, stretches: [yards(40)], rolls: [2 * lot, 2 * lot + 1] });
  return {
    demand,
    kinds: [kind(0), kind(1)],
    endless: false,
    lots: 2,
    groups: roomGroups(cuts, demand),
    mayFallShort: false,
  };
}

const shared = async (task: Task, tight = 1) =>
  shareRooms({ highs: await loadSolver() }, task, weightsOf(task), tight, 10);

describe('rooms shared among dye lots', () => {
  it('two rooms of 50 yd need all four rolls of two lots, where the cloth alone would say three', async () => {
    const task = floor(2);
    const pooled = new RollBound(
      task.demand,
      [40, 40, 40, 40].map((roll) => [yards(roll)]),
      false,
    );
    expect(pooled.material()).toEqual({ rolls: 3, short: false });
    const sharing = await shared(task);
    expect(sharing).toMatchObject({ rolls: 4, short: false, open: [2, 2], shares: [[1, 1]] });
    const loads = placeShares(task, sharing, 4);
    expect(loads?.map(([load]) => load?.[0]?.[1] ?? 0).sort()).toEqual([2, 2, 8, 8]);
  });

  it('three rooms of 50 yd go nowhere, though there are 160 yd', async () => {
    expect(await shared(floor(3))).toEqual({ rolls: 0, short: true });
  });

  it('says nothing is impossible that goes: one room in one lot', async () => {
    expect(await shared(floor(1))).toMatchObject({ rolls: 2, short: false });
  });

  it('held tighter, leaves room on the rolls', async () => {
    expect((await shared(floor(2), 0.6)).short).toBe(true);
  });
});
