/**
 * The ordered figures of a row against the same figures worked out again. A figure agrees where it
 * follows from the figures ordered before it or from what was measured, so that one mistake is
 * found once and not again in everything that was reckoned from it.
 */
import { Refusal } from '../cell/answer';
import type { ColumnKey, Window } from '../window/columns';
import { plainCut, type Dropped } from '../cloth/cuts';
import { halfDropCuts, honestYardages } from './cut-orders';
import { WindowWork } from '../window/job';
import { extension } from '../measure/measure';
import { exact, inches, TooLarge, type Length } from '../exact/length';
import type { Rules } from '../house/rules';
import { panelsOf } from '../cell/treatment';
import { money } from '../exact/money';
import { rowMaking } from '../price/job-making';
import { workedOutNumber } from '../window/figure';
import type { FigureKey } from '../window/figures';
import { FACTS, type Facts } from '../window/facts';
import { FIGURE_KEYS, orderedFigure, type OrderKey } from '../window/meanings';
import { practised, type KeptHabits, type Practice, type Practices } from './practice';

export type Ordered = Readonly<Partial<Record<FigureKey, number>>>;

/** A window whose widths are as they were ordered. */
class AsOrdered extends WindowWork {
  constructor(
    window: Window,
    rules: Rules,
    private readonly orderedWidths: number,
  ) {
    super(window, rules);
  }
  override widths(): number {
    return this.orderedWidths;
  }
}

const figureOf = (key: FigureKey, work: WindowWork): number | undefined =>
  workedOutNumber(orderedFigure(key), work);

/** What a figure is reckoned from, beyond what every figure of the cloth needs. */
export function restsOn(figure: FigureKey, column: OrderKey): boolean {
  // No size follows from whose it is, when, or what it costs.
  if (column === 'room' || column === 'fabric' || column in FACTS) return false;
  return orderedFigure(figure).reckonedFrom?.includes(column as ColumnKey) ?? true;
}

const stands = (window: Window, either: readonly ColumnKey[]): boolean => {
  for (const key of either) if (window[key] !== undefined) return true;
  return false;
};

export function canBeWorkedOut(figure: FigureKey, window: Window): boolean {
  for (const either of orderedFigure(figure).needs) if (!stands(window, either)) return false;
  return true;
}

export interface Wrong {
  readonly key: FigureKey;
  readonly found: number;
  readonly expected: number;
}

export interface Comparison {
  readonly wrong: readonly Wrong[];
  /** Figures that agree. */
  readonly right: readonly FigureKey[];
  /** Why a figure could not be worked out. */
  readonly refusals: readonly { readonly key: FigureKey; readonly refusal: Refusal }[];
}

/** How far a figure may differ from its working. */
export function within(key: FigureKey, found: number, expected: number, rules: Rules): boolean {
  const apart = Math.abs(found - expected);
  const { kind, mayDifferBy } = orderedFigure(key);
  if (mayDifferBy !== undefined) return apart <= expected * mayDifferBy;
  switch (kind.quantity) {
    case 'length':
      return apart <= rules.lengthTolerance;
    case 'yardage':
      return apart <= rules.yardageTolerance;
    case 'money':
      return apart <= rules.moneyTolerance.toNumber() + 1e-9;
    case 'fullness':
    case 'share':
    case 'weight':
      return apart <= expected * 0.02;
    default:
      return apart < 1e-9;
  }
}

/** Finished width of a panel back to the rod it would cover. */
function rodUnder(finishedWidth: number, work: WindowWork): Length | undefined {
  const panels = panelsOf(work.window.draw ?? 'pair');
  const rod = work.window.rodWidth ?? work.rodWidth().value;
  const parts = work.finishedWidth().value * panels - rod;
  return finishedWidth * panels > parts ? exact(finishedWidth * panels - parts) : undefined;
}

/** Widths do not depend on the drop; where a sheet has none, any will do. */
const ANY_DROP = inches(84);

function workOf(window: Window, rules: Rules): WindowWork {
  const isDropped = window.finishedDrop !== undefined || window.measured !== undefined;
  return new WindowWork(isDropped ? window : { ...window, finishedDrop: ANY_DROP }, rules);
}

/** Figures that do not follow from the widths as such, or are reckoned from the ordered ones elsewhere. */
const NOT_FROM_WIDTHS: ReadonlySet<FigureKey> = new Set<FigureKey>(['widths', 'yardage', 'cutLength']);

/** What the readings of one row have in common, by what it was reckoned from. */
interface Known {
  /** The yardages that follow from ordered cuts. */
  readonly yardages: Map<string, readonly number[]>;
  /** The drop that follows from a height measured. */
  readonly drops: Map<Length, Length>;
}

/** What is known of a row beside its window and its figures. */
export interface How {
  /** Whether its cloth is turned. */
  readonly turned?: boolean;
  /** What its house does beside the rules. */
  readonly practices?: Practices | undefined;
  readonly facts?: Facts | undefined;
}

/** One row's figures under one reading of it. */
export class Compared {
  readonly work: WindowWork;
  /** With what its house does beside them in such a row. */
  readonly rules: Rules;
  private readonly known: Known;
  private readonly habits: KeptHabits | undefined;

  constructor(
    readonly window: Window,
    readonly ordered: Ordered,
    private readonly standing: Rules,
    readonly how: How = {},
    /** The same row under another reading, for what both have in common. */
    like?: Compared,
  ) {
    const { practices, facts } = how;
    this.habits = practices?.habits?.({ window, ordered, facts }, standing);
    const rules = this.habits?.rules ?? standing;
    this.rules = rules;
    this.work = like?.window === window ? like.work : workOf(window, rules);
    const known = this.habits === undefined ? like?.known : undefined;
    this.known = known ?? { yardages: new Map(), drops: new Map() };
  }

  /** The row once more under another reading of it. */
  readAs(window: Partial<Window> | undefined, ordered: Ordered | undefined): Compared {
    return new Compared(
      window === undefined ? this.window : { ...this.window, ...window },
      ordered === undefined ? this.ordered : { ...this.ordered, ...ordered },
      this.standing,
      this.how,
      this,
    );
  }

  /** Other ways the same row may have been reckoned, none of them a mistake of the figure itself. */
  private *otherReadings(key: FigureKey): Generator<WindowWork> {
    const { window, ordered, rules } = this;
    const asMeasured = this.asMeasured();
    if (asMeasured !== undefined) yield new WindowWork(asMeasured, rules);
    if (!NOT_FROM_WIDTHS.has(key) && ordered.widths !== undefined)
      yield new AsOrdered(window, rules, ordered.widths);
    if (
      key !== 'finishedWidth' &&
      ordered.finishedWidth !== undefined &&
      canBeWorkedOut('finishedWidth', window)
    ) {
      const rodWidth = rodUnder(ordered.finishedWidth, this.work);
      if (rodWidth !== undefined && rodWidth !== this.work.rod) yield workOf({ ...window, rodWidth }, rules);
    }
  }

  /** The row with its sizes as they follow from what was measured; undefined where these are the same. */
  private asMeasured(): Window | undefined {
    const { window } = this;
    const { rodWidth, finishedDrop, openingWidth, leftExtension, rightExtension, measured } = window;
    const extended = leftExtension !== undefined && rightExtension !== undefined;
    const rod =
      rodWidth === undefined || openingWidth === undefined || !extended
        ? rodWidth
        : exact(openingWidth + leftExtension + rightExtension);
    const drop =
      finishedDrop === undefined || measured === undefined ? finishedDrop : this.dropMeasured(measured);
    if (rod === rodWidth && drop === finishedDrop) return undefined;
    return { ...window, rodWidth: rod, finishedDrop: drop };
  }

  /** Guesses change none but the first of the heights measured. */
  private dropMeasured(measured: Length): Length {
    const { drops } = this.known;
    const known = drops.get(measured) ?? this.work.finishedDrop().value;
    drops.set(measured, known);
    return known;
  }

  /** Every yardage that follows from ordered widths and cut. */
  private orderedYardages(): readonly number[] {
    const { ordered, window, rules } = this;
    const widths = ordered.widths ?? this.work.widths();
    const cutLength = ordered.cutLength as Length | undefined;
    const finishedDrop = this.drop();
    const { verticalRepeat, match, quantity } = window;
    const id = [widths, cutLength, finishedDrop, verticalRepeat, match, quantity].join(' ');
    let known = this.known.yardages.get(id);
    if (known === undefined) {
      const { dropped } = this;
      known = [...honestYardages({ window, dropped, widths, cutLength }, rules, this.how.practices?.cloth)];
      this.known.yardages.set(id, known);
    }
    return known;
  }

  /** The figure from the very figures ordered before it. */
  private *fromOrdered(key: FigureKey): Generator<number> {
    const { window } = this;
    if (key === 'cutLength') yield* this.cuts();
    else if (key === 'widths') yield* this.bought();
    else if (key === 'yardage') yield* this.orderedYardages();
    else if (key === 'liningYardage') yield* this.linings();
    for (const all of orderedFigure(key).alsoStatedFor ?? []) {
      const times = all === 'all panels' ? panelsOf(window.draw ?? 'pair') : (window.quantity ?? 1);
      yield (figureOf(key, this.work) ?? 0) * times;
    }
    if (key === 'labor') yield* this.labors();
  }

  private *cuts(): Generator<number> {
    const { window, rules, dropped } = this;
    yield* halfDropCuts({ window, dropped }, rules);
    // Where the repeat is added between the lengths, many a sheet shows the length without it.
    if (rules.repeatRule === 'one repeat each') yield plainCut(dropped, rules);
  }

  private get dropped(): Dropped {
    return { finishedDrop: this.drop(), heading: this.window.heading ?? 'pinch' };
  }

  private linings(): Iterable<number> {
    const { work, ordered, window, rules } = this;
    const own = this.how.practices?.cloth;
    if (own === undefined) return [];
    const works =
      ordered.widths === undefined ? [work] : [work, new AsOrdered(window, rules, ordered.widths)];
    return own.linings(works, window.quantity ?? 1, rules);
  }

  /** The widths bought: a half that nothing else takes is bought whole. */
  private *bought(): Generator<number> {
    if (this.rules.shareHalfWidths === 'no') yield Math.ceil(this.work.widths());
  }

  /** The making charge of the widths ordered, and of turned cloth by its flat width; as the job's breaks and its least may have it. */
  private *labors(): Generator<number> {
    const { ordered, window, rules } = this;
    const turned = this.how.turned === true ? this.work.laborTurned() : undefined;
    if (turned !== undefined) yield turned.value.times(window.quantity ?? 1).toNumber();
    const charges = [figureOf('labor', this.work) ?? 0];
    if (ordered.widths !== undefined)
      charges.push(figureOf('labor', new AsOrdered(window, rules, ordered.widths)) ?? 0);
    const own = (ordered.widths ?? this.work.widths()) * (window.quantity ?? 1);
    for (const charge of charges)
      for (const made of rowMaking(money(charge), own, rules)) yield made.toNumber();
  }

  /** Where the sheet does not say the extensions, any usual one may have been chosen. */
  rodBand(): { low: number; high: number } | undefined {
    const { openingWidth, leftExtension, rightExtension } = this.window;
    if (openingWidth === undefined || (leftExtension !== undefined && rightExtension !== undefined))
      return undefined;
    const end = (which: 'low' | 'high'): number => {
      const usual = extension({ openingWidth, end: which }, this.rules).value;
      return openingWidth + (leftExtension ?? usual) + (rightExtension ?? usual);
    };
    return { low: end('low'), high: end('high') };
  }

  private rodInBand(found: number): boolean {
    const band = this.rodBand();
    const { lengthTolerance } = this.rules;
    return band !== undefined && found >= band.low - lengthTolerance && found <= band.high + lengthTolerance;
  }

  private drop(): Length {
    return this.window.finishedDrop ?? this.work.finishedDrop().value;
  }

  expected(key: FigureKey): number | undefined {
    const figure = this.byRules(key);
    return figure === undefined ? undefined : practised(figure, this.practiceOf(key));
  }

  private practiceOf(key: FigureKey): Practice | undefined {
    const practice = this.how.practices?.[key];
    return this.habits === undefined ? practice : this.habits.practiceOf(key, practice);
  }

  private byRules(key: FigureKey): number | undefined {
    if (this.how.turned === true && key === 'yardage') return figureOf('railroadedYardage', this.work);
    return (key === 'yardage' ? this.byOwnWay() : undefined) ?? figureOf(key, this.work);
  }

  /** Cloth as the house buys it, where that is no other way. */
  private byOwnWay(): number | undefined {
    const { window, rules, work } = this;
    const own = this.how.practices?.cloth;
    if (own === undefined) return undefined;
    const { dropped } = this;
    if (!own.isAlone({ window, dropped }, rules)) return undefined;
    const cloth = { window, dropped, widths: work.widths(), cutLength: undefined };
    for (const yardage of honestYardages(cloth, rules, own)) return yardage;
    return undefined;
  }

  /** Whatever the rules may make of a figure, as the row stands or as it was ordered. */
  *candidates(key: FigureKey): Generator<number> {
    const first = this.byRules(key);
    if (first !== undefined) yield first;
    yield* this.fromOrdered(key);
    for (const reading of this.otherReadings(key)) {
      const other = figureOf(key, reading);
      if (other !== undefined) yield other;
    }
  }

  private agrees(key: FigureKey, found: number, expected: number): boolean {
    if (within(key, found, expected, this.rules)) return true;
    if (this.how.turned === true && key === 'yardage') return false;
    // A rod or a drop is checked against what was measured and nothing else.
    if (key === 'rodWidth') return this.rodInBand(found);
    if (key === 'finishedDrop') return false;
    const practice = this.practiceOf(key);
    for (const other of this.candidates(key)) {
      const figure = practised(other, practice);
      if (within(key, found, figure, this.rules) || this.isShareOf(key, found, other, practice)) return true;
    }
    return false;
  }

  /** A share more of a yardage that is itself up to a step: nobody knows how far it went up. */
  private isShareOf(key: FigureKey, found: number, figure: number, practice: Practice | undefined): boolean {
    const { yardageStep } = this.rules;
    if (practice === undefined || practice.factor === 1 || orderedFigure(key).kind.quantity !== 'yardage')
      return false;
    const { factor } = practice;
    return found >= (figure - yardageStep) * factor && found < figure * factor + yardageStep;
  }

  compare(figures: readonly FigureKey[] = FIGURE_KEYS): Comparison {
    const wrong: Wrong[] = [];
    const right: FigureKey[] = [];
    const refusals: { key: FigureKey; refusal: Refusal }[] = [];
    for (const key of figures) {
      const found = this.ordered[key];
      if (found === undefined || !canBeWorkedOut(key, this.window)) continue;
      try {
        const expected = this.expected(key);
        if (expected === undefined) continue;
        if (this.agrees(key, found, expected)) right.push(key);
        else wrong.push({ key, found, expected });
      } catch (thrown) {
        if (thrown instanceof Refusal) refusals.push({ key, refusal: thrown });
        else if (!(thrown instanceof TooLarge)) throw thrown;
      }
    }
    return { wrong, right, refusals };
  }
}
