/** Rooms onto dye lots: a room is cut whole from one lot, or not at all. Cuts of no room go anywhere. */
import { typeOfLine, typesOf, type CutLine, type Demand } from './cutting';
import { fullest, leftLength, type Effort, type Packing } from './fill';
import { pack } from './pack';
import { layOnRolls, type Laid } from './stretches';
import { Filling, mostSpared, type Load } from './takes';

/** Rooms that want the very same cuts; a cut of no room is a group of one cut. */
export interface RoomGroup {
  readonly wants: readonly number[];
  readonly cloth: number;
  readonly count: number;
  /** The rooms' names; none for cuts of no room. */
  readonly rooms: readonly string[];
}

export function roomGroups(cuts: readonly CutLine[], { lengths }: Demand): readonly RoomGroup[] {
  const typeOf = new Map(typesOf(cuts).map((line, type) => [typeOfLine(line), type]));
  const none = (): number[] => lengths.map(() => 0);
  const rooms = new Map<string, number[]>();
  const loose = none();
  for (const line of cuts) {
    const { count, room } = line;
    if (count === 0) continue;
    const type = typeOf.get(typeOfLine(line)) ?? 0;
    const wants = room === undefined ? loose : (rooms.get(room) ?? none());
    if (room !== undefined) rooms.set(room, wants);
    wants[type] = (wants[type] ?? 0) + count;
  }
  const cloth = (wants: readonly number[]): number =>
    wants.reduce((sum, count, type) => sum + count * (lengths[type] ?? 0), 0);
  const groups = new Map<string, RoomGroup>();
  for (const [room, wants] of rooms) {
    if (cloth(wants) === 0) continue;
    const key = wants.join(' ');
    const same = groups.get(key)?.rooms ?? [];
    groups.set(key, { wants, cloth: cloth(wants), count: same.length + 1, rooms: [...same, room] });
  }
  const free = loose.flatMap((count, type): RoomGroup[] => {
    const wants = none();
    wants[type] = 1;
    return count > 0 ? [{ wants, cloth: lengths[type] ?? 0, count, rooms: [] }] : [];
  });
  return [...groups.values(), ...free].sort((one, other) => other.cloth - one.cloth);
}

export interface LaidByLot extends Laid {
  /** Which lot each room was cut from; a room not named here was not cut. */
  readonly lotOf: ReadonlyMap<string, string>;
}

const wantOf = (
  groups: readonly RoomGroup[],
  taken: readonly number[],
  lengths: readonly number[],
): number[] =>
  lengths.map((_, type) =>
    groups.reduce((sum, { wants }, at) => sum + (wants[type] ?? 0) * (taken[at] ?? 0), 0),
  );

interface Share {
  readonly lot: string;
  /** Its rolls that may be opened. */
  readonly open: readonly number[];
  readonly stretches: readonly number[];
  /** How many of each group this lot is given, and how they lie. */
  taken: readonly number[];
  packing: Packing;
}

export function layByLots(
  rolls: readonly (readonly number[])[],
  lots: readonly string[],
  demand: Demand,
  groups: readonly RoomGroup[],
  effort: Effort,
): LaidByLot {
  const { lengths } = demand;
  const longer = mostSpared(demand);
  const cloth = (at: number): number => (rolls[at] ?? []).reduce((sum, one) => sum + one, 0);
  /** Lots told apart or not, the rolls must hold the cuts: this bound stands for both. */
  const pooled = layOnRolls(rolls, demand, effort);
  const longest = rolls.map((_, at) => at).sort((one, other) => cloth(other) - cloth(one) || one - other);
  const roomOn = (stretches: readonly number[]): number => total(stretches) + longer * stretches.length;
  const wanting = (taken: readonly number[]): Demand => ({
    ...demand,
    counts: wantOf(groups, taken, lengths),
  });
  const packed = (stretches: readonly number[], taken: readonly number[]): Packing =>
    pack(stretches, wanting(taken), (stretch) => stretch + longer, effort);

  /** Gives each lot in turn the rooms that fill it best. */
  const deal = (open: readonly number[], order: readonly string[]): { shares: Share[]; left: number[] } => {
    const left = groups.map(({ count }) => count);
    const sizes = groups.map((group) => group.cloth);
    const shares = order.map((lot): Share => {
      const own = open.filter((at) => lots[at] === lot);
      const stretches = own.flatMap((at) => rolls[at] ?? []);
      const none = groups.map(() => 0);
      const share: Share = { lot, open: own, stretches, taken: none, packing: packed(stretches, none) };
      let room = roomOn(stretches);
      for (let tries = 0; tries < 8 && room > 0; tries++) {
        const load = fullest(room, { lengths: sizes }, left, { best: 0, goodEnough: 0 }, { effort });
        const wanted = groups.map((_, at) => load.find(([type]) => type === at)?.[1] ?? 0);
        const packing = packed(stretches, wanted);
        const over = leftLength(packing, lengths);
        if (over === 0) {
          [share.taken, share.packing] = [wanted, packing];
          break;
        }
        room -= over;
      }
      share.taken.forEach((count, at) => (left[at] = (left[at] ?? 0) - count));
      return share;
    });
    // What is still waiting goes wherever it fits, the greatest rooms first.
    for (const at of groups.keys()) {
      for (const share of shares) {
        while ((left[at] ?? 0) > 0 && effort.steps > 0) {
          const more = share.taken.map((count, other) => (other === at ? count + 1 : count));
          if (
            total(wantOf(groups, more, lengths).map((count, type) => count * (lengths[type] ?? 0))) >
            roomOn(share.stretches)
          )
            break;
          const packing = packed(share.stretches, more);
          if (leftLength(packing, lengths) > 0) break;
          [share.taken, share.packing] = [more, packing];
          left[at] = (left[at] ?? 0) - 1;
        }
      }
    }
    return { shares, left };
  };

  interface Dealt {
    readonly shares: readonly Share[];
    /** How many of each group found no lot. */
    readonly left: readonly number[];
  }
  let best: { laid: LaidByLot; over: number; opened: number } | undefined;
  const consider = ({ shares, left }: Dealt): void => {
    const over = left.reduce((sum, count, at) => sum + count * (groups[at]?.cloth ?? 0), 0);
    if (best !== undefined && over > best.over) return;
    const loads = rolls.map((stretches): readonly Load[] => stretches.map(() => []));
    const lotOf = new Map<string, string>();
    const dealt = groups.map(() => 0);
    for (const { lot, open, taken, packing } of shares) {
      let turn = 0;
      for (const at of open) loads[at] = (rolls[at] ?? []).map(() => packing.loads[turn++] ?? []);
      // The lot's rooms, on as few of its rolls as they need.
      const own = rolls.flatMap((_, at) => (lots[at] === lot ? [at] : []));
      const stretches = own.map((at) => rolls[at] ?? []);
      const laid = layOnRolls(stretches, wanting(taken), effort);
      if (laid.left.every((count) => count === 0))
        own.forEach((at, turn) => (loads[at] = laid.loads[turn] ?? []));
      taken.forEach((count, at) => {
        const from = dealt[at] ?? 0;
        for (const room of groups[at]?.rooms.slice(from, from + count) ?? []) lotOf.set(room, lot);
        dealt[at] = from + count;
      });
    }
    const used = loads.flatMap((load, at) => (load.some((one) => one.length > 0) ? [at] : []));
    const opened = used.reduce((sum, at) => sum + cloth(at), 0);
    const better =
      best === undefined ||
      over < best.over ||
      used.length < best.laid.used ||
      (used.length === best.laid.used && opened < best.opened);
    if (!better) return;
    const { lower, surelyShort } = pooled;
    const uncut = wanting(left).counts;
    best = { laid: { loads, left: uncut, used: used.length, lower, surelyShort, lotOf }, over, opened };
  };
  const settled = (): boolean => best !== undefined && best.over === 0 && best.laid.used <= pooled.lower;

  const clothOf = (lot: string): number =>
    longest.reduce((sum, at) => sum + (lots[at] === lot ? cloth(at) : 0), 0);
  const greatest = [...new Set(lots)].sort((one, other) => clothOf(other) - clothOf(one));
  const orders = [
    greatest,
    [...greatest].reverse(),
    ...greatest.slice(1).map((lot) => [lot, ...greatest.filter((one) => one !== lot)]),
  ];
  consider(firstFitByRoom(rolls, lots, greatest, groups, demand));
  for (const order of orders) if (!settled()) consider(deal(longest, order));
  for (let open = pooled.lower; open < rolls.length && !settled() && effort.steps > 0; open++) {
    if (best?.over === 0 && open >= best.laid.used) break;
    consider(deal(longest.slice(0, open), greatest));
    if (!settled()) consider(deal(longest.slice(0, open), [...greatest].reverse()));
  }
  return best?.laid as LaidByLot;
}

/** The plain way: room by room, the greatest first, each into the first lot whose rolls take it. */
function firstFitByRoom(
  rolls: readonly (readonly number[])[],
  lots: readonly string[],
  order: readonly string[],
  groups: readonly RoomGroup[],
  demand: Demand,
): { shares: Share[]; left: number[] } {
  const left = groups.map(({ count }) => count);
  const shares = order.map((lot): Share => {
    const open = rolls.flatMap((_, at) => (lots[at] === lot ? [at] : []));
    const stretches = open.flatMap((at) => rolls[at] ?? []);
    let fillings = stretches.map((stretch) => new Filling(stretch, demand));
    const taken = groups.map(() => 0);
    const place = (wants: readonly number[]): boolean => {
      const before = fillings.map((filling) => filling.copy());
      for (const [type, count] of wants.entries()) {
        let wanted = count;
        for (const filling of fillings) {
          if (wanted === 0) break;
          const more = filling.room(type, wanted);
          filling.add(type, more);
          wanted -= more;
        }
        if (wanted === 0) continue;
        fillings = before;
        return false;
      }
      return true;
    };
    groups.forEach(({ wants }, at) => {
      while ((left[at] ?? 0) > 0 && place(wants)) {
        left[at] = (left[at] ?? 0) - 1;
        taken[at] = (taken[at] ?? 0) + 1;
      }
    });
    return { lot, open, stretches, taken, packing: { loads: fillings.map(({ load }) => load), left: [] } };
  });
  return { shares, left };
}

const total = (lengths: readonly number[]): number => lengths.reduce((sum, one) => sum + one, 0);
