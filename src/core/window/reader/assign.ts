/** The best reading of all the columns at once: each meaning is used once, and the figures have their say. */
import type { Arithmetic, Assigned, Sums } from './arithmetic';
import type { Candidate } from './candidates';
import { Exchange } from './exchange';
import { isOurs, type MeaningKey } from './meanings';

export type Sureness = 'sure' | 'likely' | 'asked';

export interface Choice {
  readonly key: MeaningKey | undefined;
  readonly sure: Sureness;
  /** What the column could be where it is asked. */
  readonly couldBe: readonly MeaningKey[];
  readonly said: number;
}

/** Meanings several columns may have. */
export const MANY: ReadonlySet<MeaningKey> = new Set<MeaningKey>([
  'remarks',
  'fraction',
  'code',
  'otherDate',
  'rate',
  'hem',
  'trim',
  'control',
  'contact',
  'payroll',
  'percent',
  'mark',
  'color',
  'status',
  'supplier',
  'storey',
  'amountEach',
  'item',
  'deduction',
  'rightSide',
]);
const BEAM = 400;
const LATE = 260;
/** A reading must be better than the next by so much to be sure, and to be taken at all. */
const SURE_BY = 0.16;
export const TAKEN_BY = 0.075;
/** A reading as good as this needs no other. */
const WELL = 0.8;
/** A heading whose words say it. */
const SAID = 0.72;
/** A heading in exactly our own words. */
const OWN = 0.99;

/** A second column of one meaning, like two rates, costs a little. */
const AGAIN = 0.05;
/** Candidates and readings that are so far behind are not followed. */
const FAR_BEHIND = 0.62;
/** Where the figures of the rows cannot speak, nothing brings back what is further behind. */
const FAR_BEHIND_ALONE = 0.34;

/** A reading of some columns: the last one chosen, and the reading before it. */
interface State {
  readonly score: number;
  readonly candidate: Candidate | undefined;
  readonly before: State | undefined;
  /** The meanings in use that several columns want, a bit for each. */
  readonly used: number;
  readonly more: number;
}
const BITS = 31;

/** Meanings that several columns may have, each with its bit. */
function contested(lists: readonly (readonly Candidate[])[]): ReadonlyMap<MeaningKey, number> {
  const times = new Map<MeaningKey, number>();
  for (const list of lists)
    for (const { key } of list) if (key !== undefined) times.set(key, (times.get(key) ?? 0) + 1);
  const several = [...times].filter(([, count]) => count > 1);
  return new Map(several.map(([key], at) => [key, at]));
}

function uses(state: State, key: MeaningKey, bit: number): boolean {
  if (bit < BITS) return (state.used & (1 << bit)) !== 0;
  if (bit < 2 * BITS) return (state.more & (1 << (bit - BITS))) !== 0;
  for (let at: State | undefined = state; at !== undefined; at = at.before)
    if (at.candidate?.key === key) return true;
  return false;
}

function grownBy(
  beam: readonly State[],
  list: readonly Candidate[],
  bits: ReadonlyMap<MeaningKey, number>,
  behind: number,
): State[] {
  const next: State[] = [];
  let best = -Infinity;
  for (const before of beam)
    for (const candidate of list) {
      const { key } = candidate;
      const bit = key === undefined ? undefined : bits.get(key);
      const twice = key !== undefined && bit !== undefined && uses(before, key, bit);
      if (twice && !MANY.has(key)) continue;
      const score = before.score + candidate.score - (twice ? AGAIN : 0);
      if (score < best - 2 * behind) continue;
      if (score > best) best = score;
      let { used, more } = before;
      if (bit !== undefined && bit < BITS) used |= 1 << bit;
      else if (bit !== undefined && bit < 2 * BITS) more |= 1 << (bit - BITS);
      next.push({ score, candidate, before, used, more });
    }
  return next
    .filter(({ score }) => score >= best - 2 * behind)
    .sort((a, b) => b.score - a.score)
    .slice(0, BEAM);
}

function search(
  candidates: readonly (readonly Candidate[])[],
  behind: number,
): readonly { score: number; picks: readonly Candidate[] }[] {
  const gap = (list: readonly Candidate[]): number => (list[0]?.score ?? 0) - (list[1]?.score ?? 0);
  const order = candidates
    .map((_, at) => at)
    .sort((a, b) => gap(candidates[b] ?? []) - gap(candidates[a] ?? []));
  const near = candidates.map((list) => {
    const least = (list[0]?.score ?? 0) - behind;
    return list.filter(({ score, key }) => score >= least || key === undefined);
  });
  const bits = contested(near);
  let beam: State[] = [{ score: 0, candidate: undefined, before: undefined, used: 0, more: 0 }];
  for (const at of order) beam = grownBy(beam, near[at] ?? [], bits, behind);
  return beam.slice(0, LATE).map((state) => {
    const picks: Candidate[] = [];
    let from: State | undefined = state;
    for (let place = order.length - 1; place >= 0; place--) {
      picks[order[place] ?? 0] = from?.candidate as Candidate;
      from = from?.before;
    }
    return { score: state.score, picks };
  });
}

export const asAssigned = (picks: readonly Candidate[]): Assigned => {
  const map = new Map<MeaningKey, number>();
  for (const [at, { key }] of picks.entries()) if (key !== undefined && !map.has(key)) map.set(key, at);
  return map;
};

export interface Assignment {
  readonly choices: readonly Choice[];
  readonly assigned: Assigned;
  readonly sums: Sums;
}

/** Chooses for all columns together. */
export function assign(
  candidates: readonly (readonly Candidate[])[],
  arithmetic: Arithmetic,
  headedAlike: (one: number, other: number) => boolean = () => false,
): Assignment {
  const readings = search(candidates, arithmetic.speaks ? FAR_BEHIND : FAR_BEHIND_ALONE)
    .map(({ score, picks }) => {
      const sums = arithmetic.judge(asAssigned(picks));
      return { score: score + sums.score, picks, sums };
    })
    .sort((a, b) => b.score - a.score);
  const best = readings[0];
  if (best === undefined) return { choices: [], assigned: new Map(), sums: arithmetic.judge(new Map()) };
  const exchange = new Exchange(best, { candidates, arithmetic, headedAlike });
  const choices = best.picks.map((pick, at): Choice => {
    const wanted = exchange.asGoodFor(at);
    if (wanted !== undefined) return { key: wanted, sure: 'asked', couldBe: [wanted], said: pick.said };
    const rivals = readings.filter((one) => one.picks[at]?.key !== pick.key);
    const next = rivals[0];
    const margin = next === undefined ? 1 : best.score - next.score;
    return judged(pick, {
      margin,
      sums: best.sums,
      alone: !arithmetic.speaks,
      rivals: rivals.filter((one) => best.score - one.score < TAKEN_BY * 2).map((one) => one.picks[at]?.key),
    });
  });
  return { choices, assigned: asAssigned(best.picks), sums: best.sums };
}

interface Judging {
  readonly margin: number;
  readonly sums: Sums;
  /** Whether one row is all there is. */
  readonly alone: boolean;
  readonly rivals: readonly (MeaningKey | undefined)[];
}

function judged(pick: Candidate, judging: Judging): Choice {
  const { key, said } = pick;
  // Nothing of ours is at stake between two meanings that are none of ours.
  const near = [...new Set(judging.rivals.filter((one): one is MeaningKey => one !== undefined))];
  // That a column is none of ours is never certain: its heading may be a word not known here.
  if (key === undefined) return { key, sure: 'likely', couldBe: [], said };
  const couldBe = [key, ...near.filter((one) => one !== key)];
  const sure = couldBe.some(isOurs) ? surenessOf(pick, key, couldBe, judging) : 'likely';
  return { key, sure, couldBe, said };
}

/** Said well by its words; what figures leave open does not shake our own. */
const isPlainly = (
  key: MeaningKey,
  { score, said }: Pick<Candidate, 'score' | 'said'>,
  sums: Sums,
): boolean => said >= OWN || (score >= WELL && said >= SAID && !sums.against.has(key));

/** One row alone bears out no heading that does not say so itself. */
const notBorneOut = ({ score, said }: Pick<Candidate, 'score' | 'said'>): boolean =>
  said < SAID && score < WELL;

/** A heading in our own words is not shaken by what is none of ours. */
const isUnrivalled = (key: MeaningKey, said: number, couldBe: readonly MeaningKey[]): boolean =>
  said >= OWN && isOurs(key) && couldBe.filter(isOurs).length === 1;

function surenessOf(
  { score, said }: Candidate,
  key: MeaningKey,
  couldBe: readonly MeaningKey[],
  { margin, sums, alone }: Judging,
): Sureness {
  const proven = sums.proven.has(key);
  if (proven && margin >= TAKEN_BY) return said >= 0.3 ? 'sure' : 'likely';
  if (margin < TAKEN_BY && couldBe.length > 1 && said < OWN) return 'asked';
  if (alone && isOurs(key) && notBorneOut({ score, said })) return 'asked';
  if ((margin >= SURE_BY || isUnrivalled(key, said, couldBe)) && isPlainly(key, { score, said }, sums))
    return 'sure';
  return score < 0.5 && !proven ? 'asked' : 'likely';
}
