/**
 * What may have gone otherwise in a row: two cells swapped, a unit, a decimal point, an allowance
 * left out, a repeat passed over. Each guess is the row as it would then read, and how it is said.
 */
import { finding, type Finding } from '../cell/answer';
import type { ColumnKey, Window } from '../window/columns';
import type { Ordered, Wrong } from './compared';
import { SURE_WORDS, type Sure } from './finding';
import { figureCells, showNear, showOf, type FigureCells } from './show';
import { inches, toUnit, type Length } from '../exact/length';
import type { FigureKey } from '../window/figures';
import { orderedFigure, type OrderKey } from '../window/meanings';
import { unitOf, type Rules } from '../house/rules';
import { overlapOf, returnOf } from '../cloth/hung';
import { INCHES, type Unit } from '../exact/unit';

export interface Row {
  readonly window: Window;
  readonly ordered: Ordered;
  readonly turned: boolean;
  /** A column as the sheet heads it. */
  name(key: OrderKey): string;
}

/** One thing that may have gone otherwise. */
export interface Guess {
  /** The row as it would have been. */
  readonly window?: Partial<Window>;
  readonly ordered?: Ordered;
  /** Fewest figures that must come to agree. */
  readonly least?: number;
  /** The figures such a slip must show in. */
  readonly shows?: readonly FigureKey[];
  /** Whether the row is right and its figures are as if it were otherwise. */
  readonly asIf?: boolean;
  /** Whether something is left out: that makes no figure larger. */
  readonly less?: boolean;
  say(sure: Sure, agreeing: readonly Wrong[]): Finding;
  cells(agreeing: readonly Wrong[]): FigureCells;
}

type LengthKey = Extract<
  ColumnKey,
  | 'openingWidth'
  | 'measured'
  | 'rodWidth'
  | 'finishedDrop'
  | 'fabricWidth'
  | 'verticalRepeat'
  | 'horizontalRepeat'
  | 'liningWidth'
  | 'leftExtension'
  | 'rightExtension'
  | 'return'
  | 'overlap'
>;
/** Where a slip is looked for, the likeliest first. */
const SLIPPING: readonly LengthKey[] = [
  'openingWidth',
  'measured',
  'fabricWidth',
  'verticalRepeat',
  'rodWidth',
  'finishedDrop',
  'liningWidth',
  'horizontalRepeat',
  'leftExtension',
  'rightExtension',
  'return',
  'overlap',
];
const SWAPS: readonly (readonly [LengthKey, LengthKey])[] = [
  ['openingWidth', 'measured'],
  ['rodWidth', 'finishedDrop'],
  ['openingWidth', 'finishedDrop'],
  ['rodWidth', 'measured'],
];

/** Where a vertical repeat shows. */
const RUN_OF_CLOTH: readonly FigureKey[] = ['cutLength', 'yardage'];
const SIZED: ReadonlySet<LengthKey> = new Set<LengthKey>([
  'openingWidth',
  'measured',
  'rodWidth',
  'finishedDrop',
]);
/** A return or an overlap of a usual size was not mistyped. */
const ALLOWED: ReadonlySet<LengthKey> = new Set<LengthKey>(['return', 'overlap']);
const MOST_ALLOWED = inches(12);
/** Repeats and allowances: 1 to 60 in. */
const [LEAST_SMALL, MOST_SMALL] = [inches(1), inches(60)];

const listed = (words: readonly string[]): string =>
  words.length <= 1
    ? words.join('')
    : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1] ?? ''}`;

export class Guesses {
  private readonly unit: Unit;
  private readonly otherUnit: string;

  constructor(
    private readonly row: Row,
    private readonly rules: Rules,
    private readonly wrong: readonly Wrong[],
  ) {
    this.unit = unitOf(rules);
    this.otherUnit = this.unit === INCHES ? 'centimetres' : 'inches';
  }

  private readonly show = (length: number): string => showNear(length, this.unit);
  private readonly cell = (length: number): number => Number(toUnit(length, this.unit.small).toPrecision(9));
  private readonly lengths = (found: number, expected: number): FigureCells => ({
    measure: 'length',
    found: this.cell(found),
    expected: this.cell(expected),
  });

  /** Nobody meant a figure out of the usual range. */
  private usual(key: LengthKey, length: number): boolean {
    const { rules } = this;
    if (key === 'fabricWidth' || key === 'liningWidth')
      return length >= rules.usualNarrowestCloth && length <= rules.usualWidestCloth;
    if (SIZED.has(key)) return length >= rules.usualShortest && length <= rules.usualLongest;
    return length >= LEAST_SMALL && length <= MOST_SMALL;
  }

  private witness(agreeing: readonly Wrong[], except: readonly OrderKey[]): string {
    const names = agreeing.filter(({ key }) => !except.includes(key)).map(({ key }) => this.row.name(key));
    return names.length === 0 ? 'what was measured' : `the ordered ${listed(names)}`;
  }

  *swaps(): Generator<Guess> {
    const { window, ordered } = this.row;
    for (const [one, other] of SWAPS) {
      const [a, b] = [window[one], window[other]];
      if (a === undefined || b === undefined || Math.abs(a - b) <= this.rules.lengthTolerance) continue;
      const swapped = { [one]: b, [other]: a };
      yield {
        window: swapped,
        ordered: Object.fromEntries(Object.entries(swapped).filter(([key]) => key in ordered)),
        least: Math.min(2, this.wrong.length),
        say: (sure, agreeing) =>
          finding(
            'swapped',
            this.row.name(one),
            SURE_WORDS[sure],
            this.row.name(one),
            this.row.name(other),
            `${this.show(a)} × ${this.show(b)}`,
            `${this.show(b)} × ${this.show(a)}`,
            this.witness(agreeing, [one, other]),
          ),
        cells: () => this.lengths(a, b),
      };
    }
  }

  /** Cells of the row times a factor, each alone and the measured pair together. */
  private *scaled(factor: number, code: 'unitSlip' | 'decimalSlip'): Generator<Guess> {
    const { window, ordered } = this.row;
    const pair: readonly LengthKey[] = ['openingWidth', 'measured'];
    const alone = SLIPPING.filter((key) => window[key] !== undefined && window[key] !== 0).map((key) => [
      key,
    ]);
    const together = pair.every((key) => window[key] !== undefined) ? [pair] : [];
    for (const keys of [...alone, ...together]) {
      const first = keys[0] as LengthKey;
      const was = window[first] as Length;
      const is = keys.map((key) => [key, Math.round((window[key] as Length) * factor)] as const);
      if (!is.every(([key, length]) => this.usual(key, length))) continue;
      if (ALLOWED.has(first) && was >= LEAST_SMALL / 2 && was <= MOST_ALLOWED) continue;
      yield {
        window: Object.fromEntries(is),
        ordered: Object.fromEntries(is.filter(([key]) => key in ordered)),
        say: (sure, agreeing) =>
          this.sayScaled(
            code,
            first,
            listed(keys.map(this.row.name)),
            keys.map((key) => this.show(window[key] as Length)).join(' × '),
            is.map(([, length]) => this.show(length)).join(' × '),
            sure,
            this.witness(agreeing, keys),
          ),
        cells: () => this.lengths(was, was * factor),
      };
    }
    const quantity = window.quantity;
    if (code === 'decimalSlip' && quantity !== undefined && Number.isInteger(quantity * factor)) {
      const is = quantity * factor;
      yield {
        window: { quantity: is },
        say: (sure, agreeing) =>
          this.sayScaled(
            code,
            'quantity',
            this.row.name('quantity'),
            String(quantity),
            String(is),
            sure,
            this.witness(agreeing, []),
          ),
        cells: () => ({ measure: 'count', found: quantity, expected: is }),
      };
    }
    yield* this.scaledFigures(factor, code);
  }

  private sayScaled(
    code: 'unitSlip' | 'decimalSlip',
    about: OrderKey,
    heading: string,
    read: string,
    means: string,
    sure: Sure,
    witness: string,
    unit = this.otherUnit,
  ): Finding {
    const name = this.row.name(about);
    return code === 'decimalSlip'
      ? finding(code, name, SURE_WORDS[sure], heading, read, means, witness)
      : finding(code, name, SURE_WORDS[sure], heading, read, unit, means, witness);
  }

  /** An ordered figure that is no input: only itself can have slipped. */
  private *scaledFigures(factor: number, code: 'unitSlip' | 'decimalSlip'): Generator<Guess> {
    for (const { key, found, expected } of this.wrong) {
      if (key in this.row.window) continue;
      const { quantity } = orderedFigure(key).kind;
      const by =
        code === 'decimalSlip'
          ? factor
          : quantity === 'length'
            ? factor
            : quantity === 'yardage'
              ? this.unit === INCHES
                ? 1 / 0.9144
                : 0.9144
              : undefined;
      if (by === undefined) continue;
      // A yardage typed in metres was rounded there: it is the step that counts.
      const yards = code === 'unitSlip' && quantity === 'yardage';
      if (yards && Math.abs(found * by - expected) > expected * 0.01) continue;
      const means = yards ? expected : found * by;
      const large = yards ? (this.unit === INCHES ? 'metres' : 'yards') : undefined;
      yield {
        ordered: { [key]: means },
        say: (sure) =>
          this.sayScaled(
            code,
            key,
            this.row.name(key),
            showOf(key, found, this.unit),
            showOf(key, means, this.unit),
            sure,
            'the rest of the row',
            large,
          ),
        cells: () => figureCells(key, found, means, this.unit),
      };
    }
  }

  private asIf(
    window: Partial<Window>,
    say: (sure: Sure, first: Wrong) => Finding,
    shows?: readonly FigureKey[],
  ): Guess {
    return {
      window,
      asIf: true,
      less: !('verticalRepeat' in window && window.verticalRepeat !== undefined),
      ...(shows === undefined ? {} : { shows }),
      say: (sure, agreeing) => say(sure, agreeing[0] as Wrong),
      cells: ([first]) => {
        const { key, found, expected } = first as Wrong;
        return figureCells(key, found, expected, this.unit);
      },
    };
  }

  private *leftOut(): Generator<Guess> {
    const { window } = this.row;
    const side = returnOf(window, this.rules);
    const about = (first: Wrong) =>
      [
        this.row.name(first.key),
        showOf(first.key, first.found, this.unit),
        showOf(first.key, first.expected, this.unit),
      ] as const;
    const none = 0 as Length;
    if (side > 0) {
      yield this.asIf({ return: none }, (sure, first) =>
        finding(
          'returnLeftOut',
          this.row.name(first.key),
          SURE_WORDS[sure],
          'the return is',
          ...about(first),
        ),
      );
    }
    const lap = overlapOf({ ...window, heading: window.heading ?? 'pinch', draw: window.draw }, this.rules);
    const isPair = (window.draw ?? 'pair') === 'pair';
    if (isPair && lap > 0) {
      yield this.asIf({ overlap: none }, (sure, first) =>
        finding('overlapLeftOut', this.row.name(first.key), SURE_WORDS[sure], ...about(first)),
      );
    }
    if (side > 0 && isPair && lap > 0) {
      yield this.asIf({ return: none, overlap: none }, (sure, first) =>
        finding(
          'returnLeftOut',
          this.row.name(first.key),
          SURE_WORDS[sure],
          'the return and the overlap are',
          ...about(first),
        ),
      );
    }
    if (side > 0) {
      yield this.asIf({ return: Math.floor(side / 2) as Length }, (sure, first) =>
        finding(
          'returnLeftOut',
          this.row.name(first.key),
          SURE_WORDS[sure],
          'the return of one end is',
          ...about(first),
        ),
      );
    }
  }

  private *repeats(): Generator<Guess> {
    const { verticalRepeat, horizontalRepeat } = this.row.window;
    if (verticalRepeat === undefined) return;
    const about = ({ key, found, expected }: Wrong) =>
      [this.row.name(key), showOf(key, found, this.unit), showOf(key, expected, this.unit)] as const;
    yield this.asIf(
      { verticalRepeat: undefined, match: undefined },
      (sure, first) =>
        finding(
          'repeatIgnored',
          this.row.name(first.key),
          SURE_WORDS[sure],
          this.show(verticalRepeat),
          ...about(first),
        ),
      RUN_OF_CLOTH,
    );
    if (horizontalRepeat === undefined || horizontalRepeat === verticalRepeat) return;
    for (const window of [
      { verticalRepeat: horizontalRepeat },
      { verticalRepeat: horizontalRepeat, horizontalRepeat: verticalRepeat },
    ])
      yield this.asIf(
        window,
        (sure, first) =>
          finding(
            'repeatTurned',
            this.row.name(first.key),
            SURE_WORDS[sure],
            this.show(horizontalRepeat),
            this.show(verticalRepeat),
            ...about(first),
          ),
        RUN_OF_CLOTH,
      );
  }

  private *quantities(): Generator<Guess> {
    const { quantity } = this.row.window;
    if (quantity === undefined || quantity < 2) return;
    yield this.asIf({ quantity: 1 }, (sure, { key, found, expected }) =>
      finding(
        'quantityLeftOut',
        this.row.name(key),
        SURE_WORDS[sure],
        this.row.name(key),
        showOf(key, found, this.unit),
        String(quantity),
        showOf(key, expected, this.unit),
      ),
    );
  }

  *all(): Generator<Guess> {
    yield* this.swaps();
    yield* this.leftOut();
    yield* this.repeats();
    yield* this.quantities();
    for (const factor of [0.1, 10, 0.01, 100]) yield* this.scaled(factor, 'decimalSlip');
    yield* this.scaled(this.unit === INCHES ? 1 / 2.54 : 2.54, 'unitSlip');
  }
}
