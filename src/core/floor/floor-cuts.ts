/**
 * The cuts of a floor, cloth by cloth: every face fabric, every lining and interlining comes on rolls
 * of its own. Off one bolt a cloth's cuts come to its windows' yardage before it is rounded up, less the odd
 * half widths that two rows of one room make into one cut; off rolls every roll's last needs only its own length.
 */
import { parameter } from '../findings/parameters';
import { finding, type Finding } from '../cell/answer';
import { BEHIND, layerOf, type Behind } from '../cloth/behind';
import type { Start, Starts } from '../cloth/half-drop';
import {
  allAlike,
  clothForCuts,
  furtherCut,
  patternStart,
  plainCutting,
  type Cutting,
} from '../cloth/repeat';
import {
  cutLines,
  cutsOfRow,
  fromHalfWidths,
  sparesOf,
  type CutLine,
  type CuttingJob,
  type Roll,
} from '../rolls/cutting';
import type { CutPlan } from '../rolls/plan';
import { motifFindings } from './motif';
import type { WindowWork } from '../window/job';
import { exact, NO_LENGTH, times, type Length } from '../exact/length';
import { checkJob, planFindings } from '../rolls/rolls';
import { unitOf, type Rules } from '../house/rules';
import { fabricOf } from './tally';
import { panelsOf, type Layer } from '../cell/treatment';
import { showLength, type Unit } from '../exact/unit';
import { cutsOf, halvesOf, sharesHalfWidths } from '../cloth/yardage';

export interface Cloth {
  readonly name: string;
  /** As it is totalled and priced: its name without a bolt width. */
  readonly pricedAs: string;
  readonly layer: Layer;
  readonly cuts: readonly CutLine[];
  /** Of each of them, which of the windows asked for it, from 0. */
  readonly askedBy: readonly number[];
  /** Cuts ordered beyond the windows' by the house rule, of the face alone. */
  readonly spares: readonly CutLine[];
  /** What they take off one bolt, row by row: the windows' yardage before it is rounded up. */
  readonly cloth: Length;
  /** Whole cuts that odd half widths of different rows save by making one together. */
  readonly paired: number;
  /** What a stretch of its rolls gives up to reach the pattern's start; nothing where the house gives up none. */
  readonly toStart: Length;
  /** Of its pattern, where windows of one room must meet. */
  readonly findings: readonly Finding[];
}

/** What one row asks of one cloth. */
interface Ask {
  readonly work: WindowWork;
  readonly layer: Layer;
  readonly name: string;
  /** Of the bolt: linings of two widths are two cloths. */
  readonly boltWidth: Length;
  readonly widths: number;
  readonly cutting: Cutting;
  /** Cuts of so many windows, by where the pattern begins. */
  readonly starts: (windows: number) => Starts;
  /** Where a half width of a half-drop begins. */
  readonly halfStart?: Start;
}

function faceAsk(work: WindowWork): Ask {
  return work.isTurned ? turnedAsk(work) : uprightAsk(work);
}

/** Turned cloth is cut panel by panel, each in one piece. */
function turnedAsk(work: WindowWork): Ask {
  const { cutting, starts } = work.laid();
  const widths = panelsOf(work.window.draw ?? 'pair');
  return { work, layer: 'face', name: fabricOf(work), boltWidth: NO_LENGTH, widths, cutting, starts };
}

function uprightAsk(work: WindowWork): Ask {
  const { work: widths, cutting, starts } = work.cloth();
  const whole = Math.floor(widths.widths / widths.panels);
  return {
    work,
    layer: 'face',
    // A fabric is known by its name, whatever width a row was worked out with.
    name: fabricOf(work),
    boltWidth: NO_LENGTH,
    widths: widths.widths,
    cutting,
    starts,
    ...(cutting.halfDrop && { halfStart: whole % 2 === 0 ? 'A' : 'B' }),
  };
}

function behindAsk(work: WindowWork, name: Behind): Ask[] {
  const behind = work.behind(name);
  if (behind === undefined) return [];
  const { widths, cut } = behind;
  return [
    {
      work,
      layer: layerOf(name),
      name,
      boltWidth: work.boltWidth(layerOf(name)),
      widths,
      cutting: plainCutting(cut),
      starts: (windows) => allAlike(cutsOf(widths, windows, work.rules)),
    },
  ];
}

/** Every cloth of these windows: the face fabrics as they first appear, then what lies behind them. */
export function clothsOf(windows: readonly WindowWork[]): readonly Cloth[] {
  const asks = [
    ...windows.map(faceAsk),
    ...BEHIND.flatMap((name) => windows.flatMap((work) => behindAsk(work, name))),
  ];
  const byCloth = new Map<string, Ask[]>();
  for (const ask of asks) {
    const key = `${ask.layer} ${ask.boltWidth} ${ask.name}`;
    const same = byCloth.get(key);
    if (same === undefined) byCloth.set(key, [ask]);
    else same.push(ask);
  }
  const groups = [...byCloth.values()];
  const boltsOf = (name: string): number =>
    groups.filter(([first]) => first?.name === name && first.layer !== 'face').length;
  return groups.map((group): Cloth => {
    const { work, layer, name, boltWidth } = group[0] as Ask;
    const wide = layer !== 'face' && boltsOf(name) > 1;
    return {
      name: wide ? `${name}, ${showLength(boltWidth, unitOf(work.rules))} wide` : name,
      pricedAs: name,
      layer,
      ...cutsOfCloth(group, windows),
      spares: layer === 'face' ? sparesOfCloth(group, work.rules) : [],
      toStart: toPatternStart(group, work.rules),
      findings: layer === 'face' ? motifFindings(group.map((ask) => ask.work)) : [],
    };
  });
}

/** Counted row by row, whatever halves of two rows make together: as the totals count them. */
const sparesOfCloth = (asks: readonly Ask[], rules: Rules): readonly CutLine[] =>
  sparesOf(
    asks.flatMap((ask) => cutsOfRow(ask, ask.work.quantity, rules)),
    rules.spareWindows,
  );

function cutsOfCloth(
  asks: readonly Ask[],
  windows: readonly WindowWork[],
): Pick<Cloth, 'cuts' | 'askedBy' | 'cloth' | 'paired'> {
  const { rules } = (asks[0] as Ask).work;
  const halves = asks.map(({ work, widths, cutting, halfStart }): CutLine => ({
    length: furtherCut(cutting),
    bare: cutting.cut,
    count: halvesOf(widths, work.quantity, rules),
    start: halfStart,
    room: work.window.room,
  }));
  const whole = fromHalfWidths(halves, sharesHalfWidths(rules));
  const alone = fromHalfWidths(halves, false);
  let paired = 0;
  let cloth = NO_LENGTH;
  const askedBy: number[] = [];
  const cuts = whole.flatMap(({ count, room }, at): CutLine[] => {
    const { work, cutting, starts, halfStart } = asks[at] as Ask;
    const saved = (alone[at]?.count ?? 0) - count;
    paired += saved;
    // Rounded window by window, every window is a run of its own.
    const runs = rules.yardageRoundedBy === 'window' ? Math.max(1, work.quantity) : 1;
    const all = starts(runs === 1 ? work.quantity : 1);
    const own = halfStart === 'B' ? { ...all, b: all.b - saved } : { ...all, a: all.a - saved };
    cloth = exact(cloth + times(clothForCuts(cutting, own), runs));
    const lines = cutLines(cutting, own).map((line) => ({ ...line, count: line.count * runs, room }));
    askedBy.push(...lines.map(() => windows.indexOf(work)));
    return lines;
  });
  return { cuts, askedBy, cloth, paired };
}

const toPatternStart = (asks: readonly Ask[], rules: Rules): Length =>
  asks.reduce((most, { cutting }) => {
    const start = patternStart(cutting.repeat, rules);
    return start > most ? start : most;
  }, NO_LENGTH);

/** What the cloth comes on: as many rolls of one length as it takes, or the rolls received. */
export type RollSupply = { readonly ordered: Length } | { readonly received: readonly Roll[] };

/** A cloth's cuts, spares among them, with its rolls; refused in a sentence where no plan can be made. */
export function clothJob(cloth: Cloth, supply: RollSupply, unit: Unit): CuttingJob {
  const { toStart } = cloth;
  const given = 'ordered' in supply ? [{ length: supply.ordered }] : supply.received;
  const job: CuttingJob = {
    cuts: [...cloth.cuts, ...cloth.spares],
    rolls: toStart > 0 ? given.map((roll) => ({ ...roll, toStart })) : given,
    supply: 'ordered' in supply ? 'as many as it takes' : 'in hand',
  };
  checkJob(job, unit);
  return job;
}

/** What a reader of a cloth's plan must know besides the plan. */
export function clothFindings(cloth: Cloth, job: CuttingJob, plan: CutPlan, unit: Unit): readonly Finding[] {
  const found = [...cloth.findings, ...planFindings(job, plan, unit)];
  return cloth.paired === 0 ? found : [...found, finding('halvesPaired', parameter('widths'), cloth.paired)];
}
