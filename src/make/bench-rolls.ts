/**
 * How often a cutting plan is proven best, and how long it takes: over random floors made from a
 * fixed seed, so that two runs compare.
 */
import type { CuttingJob, CutLine, Roll } from '../core/rolls/cutting';
import type { CutPlan } from '../core/rolls/plan';
import { fromUnit, inches } from '../core/exact/length';
import { cutPlan } from '../core/rolls/rolls';
import { DEFAULT_RULES } from '../core/house/house';
import { bestPlan } from '../solve/best-plan';
import { loadSolver } from '../solve/load';

export interface BenchLine {
  readonly what: string;
  readonly found: string;
  /** What it should be at least or at most. */
  readonly aim: string;
  readonly met: boolean;
}

const FLOORS = 200;
const MOST_CUTS = 500;
const MOST_LENGTHS = 12;
/** Seconds a floor may take to be proven. */
const EACH = 1;

/** The minimal standard generator of Park and Miller: the same figures everywhere. */
export function chance(seed: number): (least: number, most: number) => number {
  let state = seed;
  return (least, most) => {
    state = (state * 48_271) % 0x7fffffff;
    return least + Math.floor((state / 0x7fffffff) * (most - least + 1));
  };
}

type Chance = ReturnType<typeof chance>;

/** Cuts of 60 to 160 in, by eighths. */
function randomCuts(pick: Chance): CutLine[] {
  const lengths = Array.from({ length: pick(1, MOST_LENGTHS) }, () => inches(pick(480, 1_280) / 8));
  const counts = lengths.map(() => 1);
  for (let cut = pick(lengths.length, MOST_CUTS); cut > lengths.length; cut--) {
    const at = pick(0, lengths.length - 1);
    counts[at] = (counts[at] ?? 0) + 1;
  }
  return lengths.map((length, at) => ({ length, count: counts[at] ?? 0 }));
}

/** Received rolls of 30 to 65 yd by quarters: an eighth more cloth than is cut. */
function rollsFor(cuts: readonly CutLine[], pick: Chance, lots: number): Roll[] {
  const cloth = cuts.reduce((sum, { length, count }) => sum + length * count, 0);
  const rolls: Roll[] = [];
  for (let have = 0; have < cloth * 1.125 || rolls.length < 2; have += rolls[rolls.length - 1]?.length ?? 0) {
    const lot = lots > 1 ? `lot ${pick(1, lots)}` : undefined;
    rolls.push({ length: fromUnit(pick(120, 260) / 4, 'yd'), lot });
  }
  return rolls;
}

/** Rooms of three types, each wanting some of the lengths. */
function randomRooms(pick: Chance): CutLine[] {
  const types = Array.from({ length: 3 }, () =>
    Array.from({ length: pick(1, 4) }, () => ({ length: inches(pick(480, 1_280) / 8), count: pick(1, 6) })),
  );
  return Array.from({ length: pick(6, 40) }, (_, at) => {
    const type = types[pick(0, 2)] ?? [];
    return type.map((line): CutLine => ({ ...line, room: String(401 + at) }));
  }).flat();
}

export const floors = {
  inHand(pick: Chance): CuttingJob {
    const cuts = randomCuts(pick);
    return { cuts, rolls: rollsFor(cuts, pick, 1), supply: 'in hand' };
  },
  onOrder(pick: Chance): CuttingJob {
    return {
      cuts: randomCuts(pick),
      rolls: [{ length: fromUnit(pick(120, 260) / 4, 'yd') }],
      supply: 'as many as it takes',
    };
  },
  byRoomAndLot(pick: Chance): CuttingJob {
    const cuts = randomRooms(pick);
    return { cuts, rolls: rollsFor(cuts, pick, 4), supply: 'in hand' };
  },
};

const isProven = (plan: CutPlan): boolean => plan.proven || (plan.short.length > 0 && plan.surelyShort);
const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;
const milliseconds = (seconds: number): string => `${(1_000 * seconds).toFixed(seconds < 0.01 ? 1 : 0)} ms`;

async function overFloors(
  what: string,
  floor: (pick: Chance) => CuttingJob,
  aim: number,
): Promise<BenchLine> {
  const highs = await loadSolver();
  const pick = chance(1_960);
  const times: number[] = [];
  let quick = 0;
  let proven = 0;
  for (let at = 0; at < FLOORS; at++) {
    const job = floor(pick);
    if (isProven(cutPlan(job, DEFAULT_RULES).value)) quick++;
    const { plan, seconds } = await bestPlan(job, { highs, seconds: EACH });
    // Honest to the last: what was proven too late is not counted.
    if (isProven(plan) && seconds <= EACH) proven++;
    times.push(seconds);
  }
  times.sort((one, other) => one - other);
  const at = (share: number): string => milliseconds(times[Math.ceil(share * FLOORS) - 1] ?? 0);
  return {
    what: `${what}, proven best within ${EACH} s each`,
    found: `${percent(proven, FLOORS)} (${percent(quick, FLOORS)} by the quick plan in a cell); half within ${at(0.5)}, 95 % within ${at(0.95)}, all within ${at(1)}`,
    aim: `at least ${aim} %`,
    met: proven >= (aim / 100) * FLOORS,
  };
}

function manyCuts(what: string, supply: CuttingJob['supply']): BenchLine {
  const pick = chance(63_282);
  const cuts = Array.from({ length: 2_000 }, () => ({ length: inches(pick(480, 1_280) / 8), count: 5 }));
  const rolls = supply === 'in hand' ? rollsFor(cuts, pick, 1) : [{ length: fromUnit(60, 'yd') }];
  const from = performance.now();
  const { value } = cutPlan({ cuts, rolls, supply }, DEFAULT_RULES);
  const seconds = (performance.now() - from) / 1_000;
  return {
    what: `10,000 cuts ${what}, planned with the bound`,
    found: `${milliseconds(seconds)}: ${value.rolls.length} rolls, lower bound ${value.lowerBound}`,
    aim: 'under 2 s',
    met: seconds < 2,
  };
}

export async function benchRolls(): Promise<readonly BenchLine[]> {
  return [
    await overFloors('200 random floors on rolls in hand', floors.inHand, 95),
    await overFloors('200 random floors on rolls to order', floors.onOrder, 95),
    await overFloors('200 random floors by room and dye lot', floors.byRoomAndLot, 95),
    manyCuts('on rolls to order', 'as many as it takes'),
    manyCuts('on rolls in hand', 'in hand'),
  ];
}
