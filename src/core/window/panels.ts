/**
 * One row's panels and the cuts they are made of: every cut off the bolt has a number in the order of cutting,
 * every panel its widths from the leading edge to the return.
 */
import { inTurn, leastOrder, type Start } from '../cloth/half-drop';
import { flatsOfPanel, usableWidth } from '../cloth/bolt';
import { halfDropGroups, isShared, runOfCuts, type Cutting } from '../cloth/repeat';
import type { Starts } from '../cloth/half-drop';
import { sharesHalfWidths } from '../cloth/yardage';
import { exact, type Length } from '../exact/length';
import { panelsOf, type Draw } from '../cell/treatment';
import type { WindowWork } from './job';

export type Side = 'left' | 'right';

/** A cut off the bolt. */
export interface Cut {
  /** In the order of cutting, from 1. */
  readonly number: number;
  readonly length: Length;
  /** Of a half-drop: where its pattern begins. */
  readonly start?: Start;
}

/** A width as it is sewn into a panel: a whole cut, or a half of one. */
export interface SewnWidth {
  readonly cut: Cut;
  /** Which half of the cut, seen from its face with its top up. */
  readonly half?: Side;
  /** Of flat cloth from seam to seam, or to the hem. */
  readonly flat: number;
}

export interface PanelMade {
  /** Of the windows alike, from 1. */
  readonly window: number;
  readonly side: Side;
  /** Its edge that leads; the other stands at the return. */
  readonly leads: Side;
  /** From the leading edge to the return. */
  readonly widths: readonly SewnWidth[];
}

export interface Making {
  readonly cuts: readonly Cut[];
  readonly panels: readonly PanelMade[];
  /** Cuts of which a half is not used. */
  readonly leftOver: readonly Cut[];
}

/** The sides of a treatment's panels. */
export const sidesOf = (draw: Draw | undefined): readonly Side[] => {
  const way = draw ?? 'pair';
  if (panelsOf(way) === 2) return ['left', 'right'];
  return [way === 'one-way right' ? 'right' : 'left'];
};

/** The leading edge of a panel is the one away from its side's wall. */
const leadsOf = (side: Side): Side => (side === 'left' ? 'right' : 'left');

/** A run's cuts in their order, with the letter of each; a shared one serves two starts. */
function cutsInTurn(
  cutting: Cutting,
  starts: Starts,
): readonly { length: Length; start?: Start; shared?: true }[] {
  if (!cutting.halfDrop || cutting.repeat === undefined)
    return runOfCuts(cutting, starts).flatMap(({ length, count }) =>
      Array.from({ length: count }, () => ({ length })),
    );
  const groups = halfDropGroups(cutting, starts);
  return [...inTurn(groups, leastOrder(groups))].map(({ at, length }) => ({
    length: exact(length),
    start: groups[at]?.start ?? 'A',
    ...(isShared(at) && { shared: true as const }),
  }));
}

const SHARED = 'shared';
type Pool = Map<Start | typeof SHARED | '', Cut[]>;

/** Where a panel's whole widths and its half begin: A, B, A … from its leading edge, or on through the window. */
function startsOfPanel(
  { side, whole, half }: { side: Side; whole: number; half: boolean },
  runsOn: boolean,
): { readonly widths: readonly Start[]; readonly half: Start | typeof SHARED } {
  const letter = (at: number): Start => (at % 2 === 0 ? 'A' : 'B');
  if (!runsOn) return { widths: Array.from({ length: whole }, (_, at) => letter(at)), half: letter(whole) };
  const first = half ? 1 : 0;
  const widths = Array.from({ length: whole }, (_, at) =>
    letter(side === 'left' ? first + whole - 1 - at : first + whole + at),
  );
  return { widths, half: SHARED };
}

/** The half of a cut that meets its neighbour at the selvage: the left half goes to the right panel. */
const halfFor = (side: Side): Side => (side === 'left' ? 'right' : 'left');

interface Drafted {
  readonly window: number;
  readonly side: Side;
  readonly widths: { readonly cut: Cut; readonly half?: Side }[];
}

/** Hands the cuts of one run to the panels of its windows: whole widths first, then the halves. */
class Dealing {
  private readonly pool: Pool = new Map();
  private open: { cut: Cut; key: string; half: Side }[] = [];
  readonly leftOver: Cut[] = [];

  constructor(
    cuts: readonly (Cut & { shared?: true })[],
    private readonly halfDrop: boolean,
  ) {
    for (const { shared, ...cut } of cuts) {
      const key = shared === true ? SHARED : (cut.start ?? '');
      this.pool.set(key, [...(this.pool.get(key) ?? []), cut]);
    }
  }

  take(start: Start | typeof SHARED): Cut {
    const cut = this.pool.get(this.halfDrop ? start : '')?.shift();
    if (cut === undefined) throw new Error('a row has fewer cuts than its panels take');
    return cut;
  }

  /** A half that waits from another panel, else one of a fresh cut. */
  takeHalf(start: Start | typeof SHARED, wanted: Side): { readonly cut: Cut; readonly half: Side } {
    const at = this.open.findIndex(({ key }) => key === start);
    const [waiting] = at < 0 ? [] : this.open.splice(at, 1);
    if (waiting !== undefined) return waiting;
    const cut = this.take(start);
    this.open.push({ cut, key: start, half: wanted === 'left' ? 'right' : 'left' });
    return { cut, half: wanted };
  }

  /** Halves that nobody waits for any more. */
  close(): void {
    this.leftOver.push(...this.open.map(({ cut }) => cut));
    this.open = [];
  }
}

/** The same with the cloth turned: a cut is a whole panel; undefined where the cloth is too narrow for it. */
export function turnedMaking(work: WindowWork): Making | undefined {
  const turned = work.turned();
  if (turned === undefined) return undefined;
  const sides = sidesOf(work.window.draw);
  const cuts = cutsInTurn(turned.cutting, turned.starts(work.quantity)).map((cut, at): Cut => ({
    length: cut.length,
    number: at + 1,
  }));
  const panels = cuts.map((cut, at): PanelMade => {
    const side = sides[at % sides.length] ?? 'left';
    return {
      window: Math.floor(at / sides.length) + 1,
      side,
      leads: leadsOf(side),
      widths: [{ cut, flat: turned.cut - 2 * work.rules.sideHem }],
    };
  });
  return { cuts, panels, leftOver: [] };
}

/** Every cut and panel of a row's windows, made up the roll. */
export function making(work: WindowWork): Making {
  const { rules, quantity, window } = work;
  const { work: counted, cutting, starts } = work.cloth();
  const sides = sidesOf(window.draw);
  const each = counted.widths / counted.panels;
  const whole = Math.floor(each);
  const half = each > whole;
  const runsOn = rules.halfDropStarts === 'run on' && counted.panels === 2;
  const [runs, windows] = rules.yardageRoundedBy === 'window' ? [quantity, 1] : [1, quantity];
  const cuts: Cut[] = [];
  const drafted: Drafted[] = [];
  const leftOver: Cut[] = [];
  for (let run = 0; run < runs; run++) {
    const listed = cutsInTurn(cutting, starts(windows)).map((cut, at) => ({
      ...cut,
      number: cuts.length + at + 1,
    }));
    cuts.push(...listed.map(({ number, length, start }) => ({ number, length, ...(start && { start }) })));
    const dealing = new Dealing(listed, cutting.halfDrop && cutting.repeat !== undefined);
    const own = Array.from({ length: windows }, (_, at) =>
      sides.map((side): Drafted => ({ window: run * windows + at + 1, side, widths: [] })),
    );
    for (const panel of own.flat())
      for (const start of startsOfPanel({ side: panel.side, whole, half }, runsOn).widths)
        panel.widths.push({ cut: dealing.take(start) });
    if (half)
      for (const panels of own) {
        for (const { side, widths } of panels) {
          const { half: start } = startsOfPanel({ side, whole, half }, runsOn);
          widths.push(dealing.takeHalf(start, halfFor(side)));
        }
        if (!sharesHalfWidths(rules)) dealing.close();
      }
    dealing.close();
    leftOver.push(...dealing.leftOver);
    drafted.push(...own.flat());
  }
  const bolt = { ...window, fabricWidth: window.fabricWidth ?? rules.usualFabricWidth };
  const flats = flatsOfPanel(each, usableWidth(bolt, rules));
  const panels = drafted.map(({ window: number, side, widths }): PanelMade => ({
    window: number,
    side,
    leads: leadsOf(side),
    widths: widths.map((one, at) => ({ ...one, flat: flats[at] ?? 0 })),
  }));
  return { cuts, panels, leftOver };
}
