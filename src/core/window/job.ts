/**
 * One window through all the steps. Each figure is worked out when first asked for and kept;
 * a job is many windows.
 */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  numberFigure,
  Refusal,
  refuse,
  renamed,
  step,
  type Answer,
  type Finding,
  type Step,
} from '../cell/answer';
import { arealOf, behindOf, layerOf, type Behind } from '../cloth/behind';
import { WINDOW_COLUMNS, type ColumnKey, type Window } from './columns';
import { widthOf } from '../cell/opening';
import { flatsOfPanel } from '../cloth/bolt';
import { cutLength, forSheer } from '../cloth/cuts';
import { bayPieces, brackets, rodPieces, type RodPieces } from '../heading/hardware';
import { costOf, fittings, pricedFittings, type Fittings } from '../heading/fittings';
import { grommets } from '../heading/grommets';
import { mounting, type Mounting } from '../heading/mounting';
import { isPleated, pleats, type PleatsOfWidth } from '../heading/pleats';
import { rings } from '../heading/rings';
import { exact, NO_LENGTH, toUnit, type Length } from '../exact/length';
import type { Money } from '../exact/money';
import type { Ratio } from '../exact/ratio';
import { addedAtBottom, drop, rodWidth } from '../measure/measure';
import { stack } from '../measure/stack';
import { makingCharge } from '../price/price';
import { unitOf, type Rules } from '../house/rules';
import { namedBy } from './sheet-words';
import { isEdge, panelsOf } from '../cell/treatment';
import { digits } from '../exact/unit';
import {
  clothWeight,
  railroaded,
  refuseToTurn,
  shorterCutSaves,
  widerBoltSaves,
  workTurned,
  workYardage,
  yardage,
  type BoltSaved,
  type Covered,
  type CutSaved,
  type TurnedWork,
  type YardageWork,
} from '../cloth/yardage';
import { fullnessOfOneLess } from '../cloth/advice';
import { lining, workLining, type Lined, type LiningWork } from '../cloth/lining';
import { coveredByPanel, finishedWidth, fullnessOf, overlapOf, returnOf, type Hung } from '../cloth/hung';
import {
  billedTurned,
  billedWidths,
  chargedWidths,
  saveWidth,
  toOneLess,
  type Clothed,
  type Gathered,
  type WidthsWork,
  workWidths,
} from '../cloth/widths';

type Given<K extends ColumnKey> = NonNullable<Window[K]>;

/** Marks along one panel's heading; their distances are shares, not cuts, so not whole nanometres. */
export interface SetOut {
  readonly count: number;
  /** Between pleats, or from centre to centre of grommets; of a wave, between its carriers. */
  readonly space: number | undefined;
  /** Of grommets, each centre from the leading edge. */
  readonly centres?: readonly number[];
  readonly takeUp: number | undefined;
  /** From the leading edge to the first: of pleats along the finished heading, else along the flat cloth. */
  readonly first?: number;
  /** Of a box pleat, as wide as it shows. */
  readonly face?: Length;
  /** Pleats from seam to seam, from the leading edge to the return. */
  readonly byWidth?: readonly PleatsOfWidth[];
}

/** A sheer hangs behind its drapery and ends above it. */
function underDrapery({ value, steps, findings }: Answer<Length>, { sheerShorter }: Rules): Answer<Length> {
  const shorter = exact(value - sheerShorter);
  return answer(
    shorter,
    () => [
      ...steps,
      step(
        'sheer under its drapery',
        '{} − {}',
        [value, sheerShorter].map(lengthFigure),
        lengthFigure(shorter),
      ),
    ],
    findings,
  );
}

/** A window as measured, and everything that follows from it under the house rules. */
export class WindowWork {
  /** As the row has it; of a sheer without a lining, and with the sheers' fullness where none is given. */
  readonly window: Window;
  /** Of the house, or of the window where it says what it hangs on and that it is a sheer. */
  readonly rules: Rules;
  private readonly leftOut: readonly Finding[];

  constructor(
    given: Window,
    rules: Rules,
    /** The sheet's own words for its columns; without them a finding says the functions' words. */
    private readonly names?: Partial<Record<ColumnKey, string>>,
  ) {
    const { hangOn, lining, fullness, windowLayer = 'drapery' } = given;
    const hung =
      hangOn === undefined || hangOn === 'none' || hangOn === rules.hangOn ? rules : { ...rules, hangOn };
    const isSheer = windowLayer !== 'drapery';
    this.rules = isSheer ? forSheer(hung) : hung;
    this.window = isSheer
      ? { ...given, lining: 'unlined', fullness: fullness ?? rules.sheerFullness }
      : given;
    this.leftOut =
      isSheer && lining !== undefined && lining !== 'unlined'
        ? [finding('sheerIsNotLined', parameter('lining'), lining)]
        : [];
  }

  private need<K extends ColumnKey>(key: K): Given<K> {
    const value = this.window[key];
    if (value !== undefined) return value as Given<K>;
    const name = this.names?.[key] ?? WINDOW_COLUMNS[key].heading;
    return refuse('missing', name, name, WINDOW_COLUMNS[key].field.kind.noun);
  }

  private readonly kept: Record<string, Answer<unknown>> = {};
  private keep<T>(name: string, work: () => Answer<T>): Answer<T> {
    return (this.kept[name] ??= this.named(work)) as Answer<T>;
  }

  /** Why there is no answer is said in the sheet's own words, as the findings are. */
  private named<T>(work: () => T): T {
    try {
      return work();
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      throw new Refusal(this.inSheetWords(thrown.finding), thrown.error);
    }
  }
  private inSheetWords(found: Finding): Finding {
    const { names, window } = this;
    if (names === undefined) return found;
    const naming = namedBy((key) => names[key as ColumnKey], {
      heading: window.heading,
      gives: (key) => window[key as ColumnKey] !== undefined,
    });
    return renamed(found, naming);
  }

  get quantity(): number {
    return this.window.quantity ?? 1;
  }

  rodWidth(): Answer<Length> {
    return this.keep('rod width', () => {
      const { openingWidth, rodWidth: known, leftExtension, rightExtension } = this.window;
      if (openingWidth === undefined && known !== undefined) return answer(known);
      const { openingParts, heading, draw, lining } = this.window;
      return rodWidth(
        {
          openingWidth: this.need('openingWidth'),
          parts: openingParts,
          leftExtension,
          rightExtension,
          heading,
          draw,
          lining,
        },
        this.rules,
      );
    });
  }

  finishedDrop(): Answer<Length> {
    return this.keep('finished drop', () => {
      const {
        measured,
        measuredCentre,
        measuredRight,
        finishedDrop: known,
        measuredTo,
        floorFinish,
      } = this.window;
      if (measured === undefined && known !== undefined) return answer(known);
      const readings = [this.need('measured'), measuredCentre, measuredRight].filter(
        (one): one is Length => one !== undefined,
      );
      const hangs = drop(
        { measured: readings, heading: this.need('heading'), measuredTo, floorFinish },
        this.rules,
      );
      return this.window.windowLayer === 'sheer' ? underDrapery(hangs, this.rules) : hangs;
    });
  }

  /** The finished top edge above the floor; undefined where the height is measured from an edge. */
  get topAboveFloor(): Length | undefined {
    const { floorFinish = 'clear', windowLayer } = this.window;
    if (isEdge(floorFinish)) return undefined;
    const { floorClearance, sheerShorter } = this.rules;
    const hem = floorClearance - addedAtBottom(floorFinish, this.rules);
    return exact(hem + (windowLayer === 'sheer' ? sheerShorter : 0) + this.orderedDrop);
  }

  private hungKept: Hung | undefined;
  private hung(): Hung {
    const { window } = this;
    return (this.hungKept ??= {
      rodWidth: this.rod,
      heading: this.need('heading'),
      draw: window.draw,
      return: this.returnGiven(),
      overlap: window.overlap,
      widthsEach: window.widthsEach,
      fabricWidth: window.fabricWidth,
      horizontalRepeat: window.horizontalRepeat,
      fullness: window.fullness,
    });
  }

  /** As given, none in a recess, or by the rod's projection; undefined where the house's stands. */
  private returnGiven(): Length | undefined {
    const { return: given, mount, projection } = this.window;
    if (given !== undefined) return given;
    if (mount === 'recess') return NO_LENGTH;
    return projection === undefined ? undefined : exact(projection + this.rules.returnPastProjection);
  }

  /** The row says that its cloth is railroaded. */
  get isTurned(): boolean {
    return this.window.railroaded === 'railroaded';
  }

  /** What one panel covers of the rod, closed. */
  coveredByPanel(): Length {
    return coveredByPanel(this.hung(), this.rules);
  }

  /** Rod to wall at each outer side. */
  get returnDepth(): Length {
    return returnOf({ return: this.returnGiven() }, this.rules);
  }

  /** What each leading edge is carried past the centre. */
  get overlapEach(): Length {
    return overlapOf(this.hung(), this.rules);
  }

  /** The drop as ordered where a sheet states it, else as worked out. */
  get orderedDrop(): Length {
    return this.window.finishedDrop ?? this.finishedDrop().value;
  }
  private gatheredKept: Gathered | undefined;
  private gathered(): Gathered {
    if (this.gatheredKept !== undefined) return this.gatheredKept;
    const hung = this.hung();
    // Each by its name: a spread of objects that differ in shape is slow, and this is asked of every row.
    return (this.gatheredKept = {
      rodWidth: hung.rodWidth,
      heading: hung.heading,
      draw: hung.draw,
      return: hung.return,
      overlap: hung.overlap,
      widthsEach: hung.widthsEach,
      fabricWidth: this.need('fabricWidth'),
      fullness: hung.fullness,
      horizontalRepeat: hung.horizontalRepeat,
    });
  }

  private coveredKept: Covered | undefined;
  private covered(): Covered {
    const { window } = this;
    if (this.coveredKept !== undefined) return this.coveredKept;
    const gathered = this.gathered();
    return (this.coveredKept = {
      rodWidth: gathered.rodWidth,
      heading: gathered.heading,
      draw: gathered.draw,
      return: gathered.return,
      overlap: gathered.overlap,
      widthsEach: gathered.widthsEach,
      finishedDrop: this.orderedDrop,
      fabricWidth: gathered.fabricWidth,
      fullness: gathered.fullness,
      verticalRepeat: window.verticalRepeat,
      horizontalRepeat: gathered.horizontalRepeat,
      match: window.match,
      quantity: this.quantity,
    });
  }
  private madeUpKept: (Clothed & { widths: number }) | undefined;
  /** The treatment as cut. */
  private madeUp(): Clothed & { widths: number } {
    if (this.madeUpKept !== undefined) return this.madeUpKept;
    return (this.madeUpKept = {
      ...this.hung(),
      fabricWidth: this.need('fabricWidth'),
      widths: this.widths(),
    });
  }

  finishedWidth(): Answer<Length> {
    return this.keep('finished width', () => finishedWidth(this.hung(), this.rules));
  }

  private countedKept: WidthsWork | undefined;
  /** Widths without their steps; they need no drop. */
  counted(): WidthsWork {
    return (this.countedKept ??= this.named(() => workWidths(this.gathered(), this.rules)));
  }

  private clothKept: YardageWork | undefined;
  /** Widths, cut and yardage without their steps. */
  cloth(): YardageWork {
    return (this.clothKept ??= this.named(() => workYardage(this.covered(), this.rules, this.counted())));
  }

  widths(): number {
    return this.counted().widths;
  }

  /** Cut length of a further width, its repeat in it. */
  cutLength(): Answer<Length> {
    return this.keep('cut length', () => {
      const { verticalRepeat, match } = this.window;
      const finishedDrop = this.orderedDrop;
      const heading = this.need('heading');
      return cutLength({ finishedDrop, heading, verticalRepeat, match, layer: 'face' }, this.rules);
    });
  }

  /** The face of all the windows as the row says that its cloth lies; refused where it is too narrow to be turned. */
  laid(): TurnedWork {
    if (!this.isTurned) return this.cloth();
    return this.named(() => this.turned() ?? refuseToTurn(this.covered(), this.rules));
  }

  yardage(): Answer<Length> {
    if (!this.isTurned) return this.keep('yardage', () => yardage(this.covered(), this.rules));
    return this.keep('yardage', () => {
      const { value, steps, findings } = this.railroaded();
      return answer(value, () => steps, [...findings, finding('turnedByRow', parameter('fabricWidth'))]);
    });
  }

  railroaded(): Answer<Length> {
    return this.keep('railroaded', () => railroaded(this.covered(), this.rules));
  }

  /** Panels and yardage of the turned cloth; undefined where it is too narrow. */
  turned(): TurnedWork | undefined {
    return workTurned(this.covered(), this.rules);
  }

  /** How much narrower the rod must be for a step of widths less; undefined at the fewest. */
  toOneLess(): Length | undefined {
    return toOneLess(this.gathered(), this.counted(), this.rules);
  }

  /** The fullness asked for, and the one that a step of widths less serves; undefined at the fewest. */
  fullnessOfOneLess(): { readonly asked: Ratio; readonly serves: Ratio } | undefined {
    const covered = this.covered();
    const serves = fullnessOfOneLess(covered, this.cloth().work, this.rules);
    return serves && { asked: fullnessOf(covered, this.rules), serves };
  }

  /** A little less allowance or drop that saves a repeat. */
  shorterCut(): CutSaved | undefined {
    return shorterCutSaves(this.covered(), this.cloth(), this.rules);
  }

  /** A bolt a little wider that saves widths. */
  widerBolt(): BoltSaved | undefined {
    return widerBoltSaves(this.covered(), this.cloth(), this.rules);
  }

  saveWidth(): Answer<Length> {
    return this.keep('save width', () => saveWidth(this.covered(), this.rules));
  }

  /** The rod as ordered where a sheet states it, else as worked out. */
  get rod(): Length {
    return this.window.rodWidth ?? this.rodWidth().value;
  }

  /** Whether the house sets a making charge for this heading. */
  get isPriced(): boolean {
    return this.rules.labor[this.need('heading')] !== undefined;
  }

  /** The cloths behind the face, the lining first. */
  get clothsBehind(): readonly Behind[] {
    return behindOf(this.window.lining);
  }

  get isLined(): boolean {
    return this.clothsBehind.length > 0;
  }

  /** Yardage of the lining, blackout or not; nothing for an unlined window. */
  liningYardage(): Answer<Length> {
    return this.layerYardage('lining');
  }

  interliningYardage(): Answer<Length> {
    return this.layerYardage('interlining');
  }

  private layerYardage(layer: ReturnType<typeof layerOf>): Answer<Length> {
    return this.keep(layer, () =>
      this.clothsBehind.some((cloth) => layerOf(cloth) === layer)
        ? lining(this.lined(layer), this.rules)
        : answer(NO_LENGTH),
    );
  }

  private lined(layer: Lined['layer']): Lined {
    return {
      ...this.hung(),
      finishedDrop: this.orderedDrop,
      fabricWidth: this.window.fabricWidth,
      fullness: this.window.fullness,
      quantity: this.quantity,
      faceWidths: this.window.fabricWidth === undefined ? undefined : this.widths(),
      liningWidth: this.boltWidth(layer),
      layer,
    };
  }

  /** Of what lies behind the face. */
  boltWidth(layer: Lined['layer']): Length {
    const own = layer === 'interlining' ? this.rules.interliningWidth : undefined;
    return own ?? this.window.liningWidth ?? this.rules.usualLiningWidth;
  }

  /** Widths, cut and yardage of a cloth behind the face; undefined where the window has none of it. */
  behind(cloth: Behind): LiningWork | undefined {
    if (!this.clothsBehind.includes(cloth)) return undefined;
    return this.named(() => workLining(this.lined(layerOf(cloth)), this.rules));
  }

  stack(): Answer<Length> {
    return this.keep('stack', () => {
      const { rodWidth, heading, draw } = this.hung();
      return stack({ rodWidth, heading, draw, lining: this.window.lining }, this.rules);
    });
  }

  /** Rings or carriers of one window. */
  rings(): Answer<number> {
    return this.keep('rings', () => rings(this.madeUp(), this.rules));
  }

  /** Rod to wall at each edge of a panel, 0 where the edge leads. */
  private turnsTheCorner(): { readonly leading: Length; readonly outer: Length } {
    const { draw = 'pair' } = this.window;
    const oneWay = draw === 'one-way left' || draw === 'one-way right';
    const bothEnds = draw === 'stationary cover' || (oneWay && this.rules.oneWayReturns === 'both ends');
    return { leading: bothEnds ? this.returnDepth : NO_LENGTH, outer: this.returnDepth };
  }

  /** The seams of a panel, from its leading edge along the flat cloth. */
  private seams(): readonly number[] {
    const { widths, panels, usable } = this.counted();
    let from = 0;
    return flatsOfPanel(widths / panels, usable)
      .slice(0, -1)
      .map((flat) => (from += flat));
  }

  /** Where one panel's heading is marked: pleats, snaps or grommets; none where it has none. */
  setOut(): Answer<SetOut> {
    return this.keep('marks', (): Answer<SetOut> => {
      const made = this.madeUp();
      if (isPleated(made.heading) || made.heading === 'wave') {
        const set = pleats(made, this.rules);
        const { pleats: count, space, byWidth, first, face } = set.value;
        const takeUp = made.heading === 'wave' ? undefined : set.value.takeUp;
        return answer({ count, space, takeUp, first, face, byWidth }, () => set.steps, set.findings);
      }
      if (made.heading !== 'grommet') return answer({ count: 0, space: undefined, takeUp: undefined });
      const flat = exact(Math.floor(this.counted().flat / panelsOf(made.draw ?? 'pair')));
      const set = grommets(
        { flatWidth: flat, returns: this.turnsTheCorner(), seams: this.seams() },
        this.rules,
      );
      const { count, spacing: space, firstCentre: first, centres } = set.value;
      return answer({ count, space, takeUp: undefined, first, centres }, () => set.steps, set.findings);
    });
  }

  /** Pleats, snaps or grommets of one panel; nothing where the heading has none. */
  marks(): Answer<number> {
    const set = this.setOut();
    return answer(set.value.count, () => set.steps, set.findings);
  }

  /** The rod's straight parts: of a bay the end ones longer by their extensions; undefined where it is straight. */
  get rodParts(): readonly Length[] | undefined {
    const { openingParts: parts = [], leftExtension, rightExtension } = this.window;
    if (parts.length < 2) return undefined;
    const spare = Math.max(0, this.rod - widthOf(parts));
    const left = Math.min(
      spare,
      leftExtension ?? (rightExtension === undefined ? Math.floor(spare / 2) : spare - rightExtension),
    );
    return parts.map((part, at) =>
      exact(part + (at === 0 ? left : at === parts.length - 1 ? spare - left : 0)),
    );
  }

  /** Bends of its rod or track. */
  get bends(): number {
    return (this.rodParts?.length ?? 1) - 1;
  }

  /** Stock pieces for one rod. */
  rodPieces(): Answer<RodPieces> {
    return this.keep('rod pieces', () => {
      const parts = this.rodParts;
      if (parts !== undefined) return bayPieces(parts, this.rules);
      return rodPieces({ rodWidth: this.rod, stockLengths: undefined }, this.rules);
    });
  }

  /** Weight of the face of one window; undefined where the cloth's weight is not known. */
  weight(): Answer<number> | undefined {
    const { arealWeight } = this.window;
    if (arealWeight === undefined) return undefined;
    return this.keep('weight', () => clothWeight({ ...this.covered(), arealWeight }, this.rules));
  }

  /** Weight of what hangs on one rod: every layer whose weight is known; undefined where none is. */
  hangs(): number | undefined {
    const { large, areal } = unitOf(this.rules);
    const behind = this.clothsBehind.flatMap((cloth): number[] => {
      const own = arealOf(cloth, this.rules);
      const behind = own === undefined ? undefined : this.behind(cloth);
      if (behind === undefined || own === undefined) return [];
      const wide = behind.widths * toUnit(this.boltWidth(layerOf(cloth)), large);
      return [(wide * toUnit(behind.cut, large) * own) / (areal === 'oz/yd²' ? 16 : 1000)];
    });
    const face = this.weight()?.value;
    if (face === undefined && behind.length === 0) return undefined;
    // Without a float's tail, so that a drapery of 20 lb is heavy from 20 lb.
    return Number(digits(behind.reduce((sum, one) => sum + one, face ?? 0)));
  }

  /** The layers whose weight nothing says. */
  get layersUnweighed(): readonly string[] {
    return [
      ...(this.window.arealWeight === undefined ? ['face'] : []),
      ...this.clothsBehind.filter((cloth) => arealOf(cloth, this.rules) === undefined),
    ];
  }

  brackets(): Answer<number> {
    return this.keep('brackets', () =>
      brackets({ rodWidth: this.rod, weight: this.hangs(), parts: this.rodParts }, this.rules),
    );
  }

  /** Where its brackets stand, from the rod's left end; of a bay part by part, with one at each bend. */
  mounting(): Mounting & { readonly bends: readonly Length[] } {
    const parts = this.rodParts ?? [this.rod];
    const weight = this.hangs();
    const found = { brackets: new Set<Length>(), splices: [] as Length[], bends: [] as Length[], added: 0 };
    let from = 0;
    for (const part of parts) {
      const mounted = mounting({
        rodWidth: part,
        brackets: brackets({ rodWidth: part, weight }, this.rules).value,
        pieces: rodPieces({ rodWidth: part, stockLengths: undefined }, this.rules).value,
      });
      for (const at of mounted.brackets) found.brackets.add(exact(from + at));
      found.splices.push(...mounted.splices.map((at) => exact(from + at)));
      found.added += mounted.added;
      if (from > 0) found.bends.push(exact(from));
      from += part;
    }
    return { ...found, brackets: [...found.brackets] };
  }

  private fittingsKept: Fittings | undefined;
  /** Hardware of one window, as far as its heading has a use for it. */
  fittings(): Fittings {
    return (this.fittingsKept ??= fittings(
      {
        heading: this.need('heading'),
        draw: this.window.draw,
        hangOn: this.window.hangOn,
        rod: this.rod,
        bends: this.bends,
        pieces: () => this.rodPieces().value.pieces.reduce((sum, { count }) => sum + count, 0),
        brackets: () => this.brackets().value,
        rings: () => this.rings().value,
        grommets: () => this.setOut().value.count,
      },
      this.rules,
    ));
  }

  /** Cost of the hardware of one window, as far as it has prices. */
  hardwareCost(): Money {
    return costOf(pricedFittings(this.fittings(), this.rules));
  }

  /** Making charge of one window. */
  labor(): Answer<Money> {
    return this.keep('labor', () => {
      const panels = panelsOf(this.window.draw ?? 'pair');
      const { laborBy } = this.rules;
      if (laborBy !== 'width') return this.laborOf(laborBy === 'panel' ? panels : 1);
      const fabricWidth = this.need('fabricWidth');
      const charged = chargedWidths(this.widths(), panels, this.rules);
      const turned = this.isTurned ? this.laborTurned() : undefined;
      if (turned !== undefined) return turned;
      const billed = billedWidths(charged, fabricWidth, this.rules);
      const made = this.laborOf(billed);
      if (billed === charged) return made;
      return answer(
        made.value,
        () => [
          step(
            'widths charged',
            '{} of {} by the house’s billable width, up',
            [numberFigure(charged), lengthFigure(fabricWidth)],
            numberFigure(billed),
          ),
          ...made.steps,
        ],
        made.findings,
      );
    });
  }

  /** The same with the cloth turned; undefined where it cannot be, or the house does not charge it by flat cloth. */
  laborTurned(): Answer<Money> | undefined {
    if (this.rules.laborBy !== 'width') return undefined;
    const turned = this.turned();
    const along = turned && exact(turned.cutting.cut * panelsOf(this.window.draw ?? 'pair'));
    const billed = along && billedTurned(along, this.rules);
    return billed === undefined ? undefined : this.laborOf(billed);
  }

  private laborOf(count: number): Answer<Money> {
    const { lining } = this.window;
    return makingCharge(
      { count, heading: this.need('heading'), finishedDrop: this.orderedDrop, lining },
      this.rules,
    );
  }

  /** How everything asked for so far was worked out. */
  steps(): readonly Step[] {
    return Object.values(this.kept).flatMap((one) => one.steps);
  }

  /** What is worth knowing of everything asked for so far. */
  findings(): readonly Finding[] {
    const all = [...this.leftOut, ...Object.values(this.kept).flatMap((one) => one.findings)];
    return all
      .filter((one, at) => all.findIndex((other) => other.sentence === one.sentence) === at)
      .map((one) => this.inSheetWords(one));
  }
}
