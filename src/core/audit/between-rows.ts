/** What only shows between rows: a window ordered twice, a figure unlike all others of its job. */
import { finding, type Finding } from '../cell/answer';
import { told, whoseOf, type OrderFinding, type Whose } from './finding';
import { Blanks, givesOf, type Gives } from './left-blank';
import { meant } from './meant';
import { showNear } from './show';
import { toUnit, UNITS } from '../exact/length';
import type { OrderKey } from '../window/meanings';
import type { Order } from '../window/order';
import { INCHES, type Unit } from '../exact/unit';

/** Two 32-bit sums of what is added, in one whole number: FNV-1a, and a second one with another prime. */
class Fingerprint {
  private one = 0x811c9dc5;
  private other = 0x9747b28c;

  /** A text in either case, or a whole figure. */
  add(part: string | number | undefined): this {
    if (typeof part === 'number') {
      this.fold(part);
      this.fold(part / 4_294_967_296);
    } else if (part !== undefined) {
      const text = part.toLowerCase();
      for (let at = 0; at < text.length; at++) this.fold(text.charCodeAt(at));
    }
    this.fold(-1);
    return this;
  }

  private fold(word: number): void {
    this.one = Math.imul(this.one ^ word, 0x01000193);
    this.other = Math.imul(this.other ^ word, 0x85ebca6b);
    this.other ^= this.other >>> 13;
  }

  get value(): number {
    return (this.one >>> 0) * 2_097_152 + ((this.other >>> 0) & 0x1f_ffff) + 1;
  }
}

/** Where each fingerprint was first seen: open addressing in two flat arrays, 12 bytes an order. */
class FirstSeen {
  private prints = new Float64Array(1 << 12);
  private rows = new Int32Array(1 << 12);
  private held = 0;

  /** The row it was first seen in, or undefined for the first. */
  seen(print: number, row: number): number | undefined {
    if (this.held * 2 >= this.prints.length) this.grow();
    const at = this.slot(print);
    if (this.prints[at] === print) return this.rows[at];
    this.prints[at] = print;
    this.rows[at] = row;
    this.held++;
    return undefined;
  }

  private slot(print: number): number {
    const last = this.prints.length - 1;
    let at = (print ^ (print / 2_097_152)) & last;
    while (this.prints[at] !== 0 && this.prints[at] !== print) at = (at + 1) & last;
    return at;
  }

  private grow(): void {
    const { prints, rows } = this;
    this.prints = new Float64Array(prints.length * 2);
    this.rows = new Int32Array(prints.length * 2);
    for (let at = 0; at < prints.length; at++) {
      const print = prints[at] ?? 0;
      if (print === 0) continue;
      const to = this.slot(print);
      this.prints[to] = print;
      this.rows[to] = rows[at] ?? 0;
    }
  }
}

/** An order by what makes it the same as another. */
interface Twin {
  readonly print: number;
  readonly key: 'room' | 'order';
  readonly what: string;
  readonly shown: string;
}

/** A figure of an order among those of its kind: the drops of a job, the prices of a fabric. */
interface Peer {
  /** Which ones it is compared with. */
  readonly id: string;
  readonly key: 'measured' | 'finishedDrop' | 'unitPrice';
  readonly called: string;
  readonly value: number;
  /** Of a price, when it was ordered. */
  readonly day?: number | undefined;
  /** Whether another finding has named its mistake. */
  readonly explained: boolean;
}

/** An order as the checks between rows see it: plain data, whichever thread it comes from. */
export interface Seen {
  readonly whose: Whose;
  /** What the row itself says of being unlike others. */
  readonly note: string | undefined;
  readonly twin: Twin | undefined;
  readonly peers: readonly Peer[];
  /** What nearly every row like it gives: whether it does. */
  readonly gives: Gives;
}

/** `explained`: a mistake of its sizes is already named; `listed`: a price list has judged its price; `adds`: nothing was found of its sums. */
export const seenBetween = (
  order: Order,
  {
    explained,
    listed,
    adds,
    note,
  }: { explained: boolean; listed: boolean; adds: boolean; note?: string | undefined },
): Seen => ({
  whose: whoseOf(order),
  note,
  twin: twinOf(order),
  peers: peersOf(order, explained, listed),
  gives: givesOf(order, adds),
});

function twinOf({ window, facts }: Order): Twin | undefined {
  const { room, openingWidth, measured, rodWidth, finishedDrop } = window;
  if (room === undefined && facts.order === undefined) return undefined;
  if (room === undefined && window.fabric === undefined) return undefined;
  const sizes = [openingWidth, measured, rodWidth, finishedDrop];
  if (sizes.filter((one) => one !== undefined).length < 2) return undefined;
  const print = new Fingerprint();
  print.add(facts.customer).add(facts.job);
  print.add(room).add(room === undefined ? facts.order : undefined);
  for (const size of sizes) print.add(size);
  print.add(window.heading).add(window.fabric).add(window.draw).add(window.quantity);
  return {
    print: print.value,
    key: room === undefined ? 'order' : 'room',
    what: [facts.job ?? facts.customer, room ?? facts.order].filter(Boolean).join(', '),
    shown: room ?? facts.order ?? '',
  };
}

function peersOf({ window, facts, ordered }: Order, explained: boolean, listed: boolean): Peer[] {
  const peers: Peer[] = [];
  const whose = facts.job ?? facts.customer;
  const drop = ordered.finishedDrop ?? window.measured;
  if (whose !== undefined && drop !== undefined) {
    const key = ordered.finishedDrop === undefined ? 'measured' : 'finishedDrop';
    const id = `drop\u0000${facts.customer ?? ''}\u0000${whose}`;
    peers.push({ id, key, called: whose, value: drop, explained });
  }
  const price = facts.unitPrice?.toNumber();
  if (!listed && price !== undefined && price > 0 && window.fabric !== undefined) {
    const id = `price\u0000${window.fabric.toLowerCase()}`;
    const day = facts.date?.early;
    peers.push({ id, key: 'unitPrice', called: window.fabric, value: price, day, explained: false });
  }
  return peers;
}

interface Member {
  readonly row: number;
  readonly value: number;
  readonly day: number | undefined;
  /** Whether another finding has named its mistake. */
  readonly explained: boolean;
  readonly whose: Whose;
  readonly note: string | undefined;
}
interface Group {
  readonly key: Peer['key'];
  readonly called: string;
  readonly members: Member[];
}

type Weighed = Omit<Group, 'members'> & { readonly members: readonly Member[] };

/** What an order paid for a fabric, and when. */
export interface Paid {
  readonly day: number | undefined;
  readonly value: number;
}

/** How the prices of fabrics changed with the days (price-days.ts); cell functions go without. */
export interface PricesByDay {
  turningDays(fabrics: Iterable<readonly Paid[]>): readonly number[];
  parted<P extends Paid>(
    fabric: readonly P[],
    days: readonly number[],
  ): {
    readonly odd: readonly { readonly one: P; readonly usual: number; readonly when: string }[];
    readonly spans: readonly (readonly P[])[];
  };
  say(column: string, value: number, called: string, usual: number, when: string): Finding;
}

/** A group is weighed when it is full or when too many are open: memory stays bounded. */
const MOST_MEMBERS = 256;
const MOST_GROUPS = 4_000;
/** Fewer say nothing about what is usual. */
const LEAST_MEMBERS = 5;

export class Jobs {
  private readonly first = new FirstSeen();
  private readonly blanks: Blanks;
  private readonly groups = new Map<string, Group>();

  constructor(
    private readonly unit: Unit,
    private readonly name: (key: OrderKey) => string,
    private readonly prices?: PricesByDay,
  ) {
    this.blanks = new Blanks(name);
  }

  /** Takes one order in; gives what it shows at once. */
  take(row: number, seen: Seen): OrderFinding[] {
    const { twin, peers } = seen;
    this.blanks.add(row, seen);
    const found = twin === undefined ? [] : this.twice(row, twin, seen);
    for (const peer of peers) found.push(...this.join(row, peer, seen));
    return found;
  }

  end(): OrderFinding[] {
    const days = this.turningDays(this.groups.values());
    const found = [...this.groups.values()].flatMap((group) => this.weighAll(group, days));
    this.groups.clear();
    return [...found, ...this.blanks.end()];
  }

  private twice(row: number, { print, key, what, shown }: Twin, { whose, note }: Seen): OrderFinding[] {
    const before = this.first.seen(print, row);
    if (before === undefined) return [];
    const about = finding('duplicateOrder', this.name(key), before, what);
    return [meant(told(row, about, { found: shown, sure: 'likely', whose }), note)];
  }

  private join(row: number, peer: Peer, { whose, note }: Seen): OrderFinding[] {
    const { id, key, called, value, day, explained } = peer;
    let group = this.groups.get(id);
    if (group === undefined) {
      group = { key, called, members: [] };
      this.groups.set(id, group);
    }
    group.members.push({ row, value, day, explained, whose, note });
    if (group.members.length < MOST_MEMBERS && this.groups.size <= MOST_GROUPS) return [];
    const oldest = this.groups.entries().next().value ?? [id, group];
    const [oldId, old] = group.members.length >= MOST_MEMBERS ? [id, group] : oldest;
    this.groups.delete(oldId);
    return this.weighAll(old, this.turningDays([old]));
  }

  private turningDays(groups: Iterable<Group>): readonly number[] {
    const fabrics = [...groups].filter(({ key }) => key === 'unitPrice').map(({ members }) => members);
    return this.prices?.turningDays(fabrics) ?? [];
  }

  /** The prices of a fabric span by span, whatever else is compared all together. */
  private weighAll({ key, called, members }: Group, days: readonly number[]): OrderFinding[] {
    if (key !== 'unitPrice' || this.prices === undefined) return this.weigh({ key, called, members });
    const { odd, spans } = this.prices.parted(members, days);
    const column = this.name(key);
    const found = odd.map(({ one, usual, when }) => {
      const { row, value, whose, note } = one;
      const about = this.prices?.say(column, value, called, usual, when) as Finding;
      return meant(
        told(row, about, { measure: 'money', found: value, expected: usual, sure: 'likely', whose }),
        note,
      );
    });
    return [...found, ...spans.flatMap((those) => this.weigh({ key, called, members: those }, members))];
  }

  /** Where four of five stand close together, whoever stands far off is named. */
  private weigh({ members, key, called }: Weighed, all = members): OrderFinding[] {
    if (members.length < LEAST_MEMBERS) return [];
    const column = this.name(key);
    const as = key === 'unitPrice' ? 'money' : 'length';
    const [close, far] = as === 'length' ? [0.05, 0.2] : [0.02, 0.05];
    const sorted = members.map(({ value }) => value).sort((a, b) => a - b);
    const middle = sorted[Math.floor(sorted.length / 2)] ?? 0;
    const apart = (value: number): number => Math.abs(value - middle) / middle;
    const near = sorted.filter((value) => apart(value) <= close).length;
    if (near < members.length * 0.8) return [];
    const show = (value: number): string => (as === 'length' ? showNear(value, this.unit) : value.toFixed(2));
    const cell = (value: number): number =>
      as === 'length' ? Number(toUnit(value, this.unit.small).toPrecision(9)) : value;
    // A price that others paid is another day's price, a drop that others have another storey's.
    const alone = (value: number): boolean =>
      all.filter((one) => Math.abs(one.value - value) <= value * 0.02).length === 1;
    return members
      .filter(({ value, explained }) => !explained && apart(value) > far && alone(value))
      .map(({ row, value, whose, note }) => {
        const about = finding(
          'unlikeItsJob',
          column,
          column,
          show(value),
          `“${called}”`,
          `${near} of ${members.length}`,
          show(middle),
          as === 'length' ? guess(value / middle, this.unit) : 'Check it against the list or the quote.',
        );
        return meant(
          told(row, about, {
            measure: as,
            found: cell(value),
            expected: cell(middle),
            sure: 'possible',
            whose,
          }),
          note,
        );
      });
  }
}

/** What the proportion to the usual figure suggests. */
function guess(proportion: number, unit: Unit): string {
  const near = (factor: number): boolean => Math.abs(proportion / factor - 1) < 0.05;
  const inch = UNITS.in / UNITS.cm;
  const other = unit === INCHES ? inch : 1 / inch;
  if (near(other)) return `Possibly it was typed in ${unit === INCHES ? 'centimetres' : 'inches'}.`;
  if ([10, 100, 0.1, 0.01].some(near)) return 'Possibly its decimal point slipped.';
  return 'Measure it again, or let it stand where the window is different.';
}
