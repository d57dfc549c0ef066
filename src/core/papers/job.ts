/** A job as its papers need it: who it is for, its windows with their facts and figures, its cloths, its sums. */
import { bare } from '../cell/treatment';
import type { Length } from '../exact/length';
import type { Unit } from '../exact/unit';
import type { Rules } from '../house/rules';
import type { WindowWork } from '../window/job';
import type { Facts } from '../window/facts';
import type { HouseWords } from './house-lines';
import { day, type Entry, type Pair, type PaperSize } from './paper';

export interface JobWindow {
  /** Sheet row, from 0. */
  readonly row: number;
  /** As the job numbers its lines, from 1. */
  readonly line: number;
  readonly room: Entry;
  readonly quantity: Entry;
  readonly work: WindowWork;
  /** What the row says beside its measures. */
  readonly facts: Facts;
  /** What the client pays for the row; undefined where nothing says so. */
  readonly price?: Entry | undefined;
  readonly remarks?: Entry | undefined;
}

/** A cloth as the job's own table of fabrics has it. */
export interface JobCloth {
  readonly name: string;
  readonly supplier?: Entry | undefined;
  readonly colour?: Entry | undefined;
  readonly content?: Entry | undefined;
  readonly width?: Entry | undefined;
  readonly verticalRepeat?: Entry | undefined;
  readonly horizontalRepeat?: Entry | undefined;
  readonly match?: Entry | undefined;
  readonly mayBeTurned?: Entry | undefined;
  /** Of its area, in the house's own unit. */
  readonly weight?: Entry | undefined;
  readonly price?: Entry | undefined;
  readonly toOrder?: Entry | undefined;
  readonly wholeRoll?: Entry | undefined;
  readonly certificate?: Entry | undefined;
  readonly reserve?: Entry | undefined;
  readonly neededBy?: Entry | undefined;
}

/** What the client sends is made up and never ordered: its supplier is the client, or COM. */
export const isClients = (cloth: JobCloth | undefined): boolean =>
  /\b(?:customer|client)\b|^\s*com\b/i.test(String(cloth?.supplier?.value ?? ''));

/** The one of that name, however it is spaced and cased. */
export const namedAs = <T extends { readonly name: string }>(
  list: readonly T[],
  name: string | undefined,
): T | undefined => (name === undefined ? undefined : list.find((one) => bare(one.name) === bare(name)));

/** Of whom the house buys. */
export interface Supplier {
  readonly name: string;
  readonly account?: Entry | undefined;
  readonly address?: Entry | undefined;
  readonly shipBy?: Entry | undefined;
}

/** A further line of the job: a valance, tiebacks, a trim, travel. */
export interface JobExtra {
  /** Of which line; of the whole job where it is left out. */
  readonly line?: number | undefined;
  readonly what: Entry;
  /** In the client's words. */
  readonly words?: Entry | undefined;
  readonly quantity: Entry;
  /** Of a trim: the edges it follows. */
  readonly along?: Entry | undefined;
  /** Of a band cut from cloth: how wide its strips are cut, and the usable width of the cloth. */
  readonly strips?: { readonly cut: Length; readonly cloth: Length } | undefined;
  readonly supplier?: Entry | undefined;
  /** What one costs the house. */
  readonly each?: Entry | undefined;
  /** What the client pays for the line. */
  readonly price?: Entry | undefined;
}

/** What stands under the lines: installation, freight, tax, total … */
export interface Sum {
  readonly label: string;
  /** A discount is a share, and in the prices already. */
  readonly is: 'discount' | 'part' | 'subtotal' | 'tax' | 'total' | 'deposit' | 'balance';
  readonly entry: Entry;
}

export interface PapersJob {
  readonly unit: Unit;
  readonly rules: Rules;
  readonly size: PaperSize;
  /** The day the papers bear, as spreadsheets count. */
  readonly today: number;
  readonly house: HouseWords;
  readonly client?: Entry | undefined;
  readonly place?: Entry | undefined;
  readonly reference?: Entry | undefined;
  readonly measuredBy?: Entry | undefined;
  readonly measuredOn?: Entry | undefined;
  readonly validUntil?: Entry | undefined;
  readonly publicBuilding: boolean;
  readonly children: boolean;
  readonly windows: readonly JobWindow[];
  readonly cloths: readonly JobCloth[];
  readonly suppliers: readonly Supplier[];
  readonly extras: readonly JobExtra[];
  readonly sums: readonly Sum[];
  /** Rows that cannot be worked out, each in a sentence. */
  readonly unread: readonly string[];
  /** Rows whose quantity is 0: no windows, and said. */
  readonly noWindows?: readonly string[];
  /** The sheet its windows stand on. */
  readonly sheet?: string;
  /** Further sheets of priced windows in the same workbook. */
  readonly others?: readonly string[];
  /** The same windows made otherwise, for the quote to show both prices. */
  readonly beside?: PapersJob | undefined;
}

/** Of another workbook: what it shows, without the places of its cells. */
export function withoutPlaces(job: PapersJob): PapersJob {
  const plain = (entry: Entry): Entry => ({ ...entry, at: undefined });
  return {
    ...job,
    windows: job.windows.map((one) => ({
      ...one,
      room: plain(one.room),
      quantity: plain(one.quantity),
      price: one.price && plain(one.price),
      remarks: one.remarks && plain(one.remarks),
    })),
    extras: job.extras.map((one) => ({
      ...one,
      what: plain(one.what),
      words: one.words && plain(one.words),
      quantity: plain(one.quantity),
      price: one.price && plain(one.price),
    })),
    sums: job.sums.map((one) => ({ ...one, entry: plain(one.entry) })),
  };
}

/** Windows by room, in the order the rooms first appear: layers of one window stay together. */
export function byRoom<T extends { readonly room: Entry }>(
  list: readonly T[],
): readonly { readonly room: Entry; readonly windows: readonly T[] }[] {
  const rooms = new Map<string, { room: Entry; windows: T[] }>();
  for (const one of list) {
    const key = String(one.room.value).trim().toLowerCase();
    const same = rooms.get(key);
    if (same === undefined) rooms.set(key, { room: one.room, windows: [one] });
    else same.windows.push(one);
  }
  return [...rooms.values()];
}

/** What the head of a paper says of its day. */
export const datedOf = ({ today }: PapersJob): Pair => ({ label: 'Date', entry: day(today) });

/** The job's own reference, where it has one. */
export const referenceOf = ({ reference }: PapersJob): readonly Pair[] =>
  reference === undefined ? [] : [{ label: 'Reference', entry: reference }];
