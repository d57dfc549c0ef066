/**
 * Columns whose headings say little, by what their figures come to: money that is price × yards, widths
 * that are one panel’s × panels. A column gets the meaning only as one that it may have; the reading
 * of the whole table decides.
 */
import { saidFor, type Evidence } from './evidence';
import { inchesOfCloth, MONEY_OF_LINE } from './arithmetic';
import type { Per } from './heading';
import type { MeaningKey } from './meanings';
import { drawOfText } from './treatment-text';
import { panelsOf } from '../../cell/treatment';

type Figure = (row: number) => number;

const LINING: ReadonlySet<string> = new Set(['lining', 'blackout']);
/** Money apart, what a heading that names a lining counts may be its cloth. */
const saysLining = ({ heading }: Evidence): boolean =>
  !heading.money && heading.words.some(({ stands }) => stands.some(({ idea }) => LINING.has(idea)));

/** A meaning, and what its figure would be in a row; `near` is how far it may lie above and below. */
interface Law {
  readonly key: MeaningKey;
  readonly expected: Figure;
  readonly near: (figure: number, expected: number) => boolean;
}

const MOST_ROWS = 60;
const LEAST_ROWS = 3;
const HELD = 0.8;
/** A column that says a fact so well is taken for it here. */
const KNOWN = 0.8;
/** One that says so much of it may be it, where the figures of a whole relation then agree. */
const HALF_SAID = 0.4;
/** Another column’s meaning counts where the heading says it less than this. */
const SAID_LITTLE = 0.9;
const CENT = 0.0105;
const PIECES: ReadonlySet<Per | undefined> = new Set<Per>(['panel', 'window']);
const FOR_EACH = 0.4;
const WELL_SAID = 0.6;
const MOST_PARTS = 9;
/** Hems and headings together, in inches. */
const LEAST_CUT = 6;
const MOST_CUT = 40;
/** Money or making by the width or panel is a rate. */
const byWidth = (own: Evidence): boolean => {
  const { per, money } = own.heading;
  return (per === 'width' || per === 'panel') && (money || saidFor(own, 'labor') >= HALF_SAID);
};
const GOODS_OR_MAKING: readonly MeaningKey[] = [
  'labor',
  'hardware',
  'installation',
  'freight',
  'tax',
  'liningAmount',
];
const COUNTS: readonly MeaningKey[] = ['quantity', 'widths', 'panels'];
/** Neither a lining’s nor what a heading calls a count. */
const isFaceCloth = (own: Evidence): boolean =>
  !saysLining(own) && !COUNTS.some((one) => saidFor(own, one) >= HALF_SAID);

const isMoney = (own: Evidence): boolean => own.heading.money || saidFor(own, 'amount') >= HALF_SAID;

const toTheCent = (figure: number, expected: number): boolean => Math.abs(figure - expected) <= CENT;
/** Yards are rounded up, by a step that is not known here. */
const upTo = (figure: number, expected: number): boolean =>
  figure >= expected - 0.06 && figure <= expected + Math.min(1.02, 0.06 * expected + 0.3);
/** Widths, whole or half, that leave little of the yards bought. */
const cutFrom = (figure: number, expected: number): boolean =>
  Number.isInteger(figure * 2) && figure <= expected * 1.005 && figure >= expected * 0.88 - 0.1;
const exactly = (figure: number, expected: number): boolean => Math.abs(figure - expected) < 1e-6;

export class ByFigures {
  private readonly laws: readonly Law[];
  private readonly rows: readonly number[];
  private readonly pairs: ReadonlyMap<Evidence, MeaningKey>;

  constructor(private readonly all: readonly Evidence[]) {
    const length = all[0]?.cells.length ?? 0;
    const step = Math.max(1, Math.ceil(length / MOST_ROWS));
    this.rows = Array.from({ length: Math.ceil(length / step) }, (_, at) => at * step);
    this.laws = this.lawsOf();
    this.pairs = this.liningBeside();
  }

  /** What one of two columns headed alike is, by the figures of both. */
  told(own: Evidence): MeaningKey | undefined {
    return this.pairs.get(own);
  }

  /**
   * Two yardages with their money each, headed alike: a lining costs the same in every room, a face what
   * its fabric costs.
   */
  private liningBeside(): ReadonlyMap<Evidence, MeaningKey> {
    const pairs = this.all.flatMap((yards, at) => {
      const money = this.all[at + 1];
      const fits = money !== undefined && saidFor(yards, 'yardage') >= WELL_SAID && isMoney(money);
      return fits ? [{ yards, money, price: this.steadyPrice(yards, money) }] : [];
    });
    const [one, other, ...more] = pairs;
    if (one === undefined || other === undefined || more.length > 0) return new Map();
    if ((one.price === undefined) === (other.price === undefined)) return new Map();
    const [lining, face] = one.price === undefined ? [other, one] : [one, other];
    return new Map<Evidence, MeaningKey>([
      [lining.yards, 'liningYardage'],
      [lining.money, 'liningAmount'],
      [face.yards, 'yardage'],
      [face.money, 'amount'],
    ]);
  }

  /** The one price at which all the money is for the yards beside it. */
  private steadyPrice(yards: Evidence, money: Evidence): number | undefined {
    const rows = this.rows.filter((row) => (yards.figures[row] ?? 0) > 0 && (money.figures[row] ?? 0) > 0);
    const prices = rows.map((row) => (money.figures[row] as number) / (yards.figures[row] as number));
    const middle = [...prices].sort((a, b) => a - b)[prices.length >> 1];
    if (middle === undefined || rows.length < LEAST_ROWS) return undefined;
    const held = rows.filter(
      (row) => Math.abs((money.figures[row] as number) - middle * (yards.figures[row] as number)) <= 2 * CENT,
    );
    return held.length >= rows.length * HELD ? middle : undefined;
  }

  /** What the figures of one column may be, beside what its heading says. */
  of(at: number): readonly MeaningKey[] {
    const own = this.all[at] as Evidence;
    if (own.numbers < LEAST_ROWS || own.part !== undefined) return [];
    const found = new Set(
      this.laws
        .filter(({ key }) => saidFor(own, key) < SAID_LITTLE)
        .filter(({ key }) => key !== 'yardage' || isFaceCloth(own))
        .filter((law) => this.holds(law, own))
        .map(({ key }) => key),
    );
    const money = this.inSum(own);
    if (money !== undefined) found.add(money);
    if (this.isCut(own)) found.add('cutLength');
    return [...found];
  }

  /** Whether two or more of the table’s sums of money make it, row by row, or with it make the total. */
  private inSum(own: Evidence): MeaningKey | undefined {
    const total = this.all.find((one) => one !== own && saidFor(one, 'total') >= KNOWN);
    const parts = this.all
      .filter(
        (one) =>
          ![own, total].includes(one) &&
          one.numbers > 0 &&
          MONEY_OF_LINE.some((key) => saidFor(one, key) >= HALF_SAID),
      )
      .slice(0, MOST_PARTS);
    // What is missing of a total is the making, where nothing says that it is anything else.
    const key = total === undefined ? 'total' : 'labor';
    if (saidFor(own, key) >= SAID_LITTLE) return undefined;
    const saysOther =
      GOODS_OR_MAKING.some((one) => saidFor(own, one) >= HALF_SAID) ||
      this.all.some((one) => one !== own && saidFor(one, 'labor') >= WELL_SAID);
    if (key === 'labor' && saysOther) return undefined;
    for (let set = key === 'total' ? 3 : 1; set < 1 << parts.length; set++) {
      if (key === 'total' && (set & (set - 1)) === 0) continue;
      const chosen = parts.filter((_, at) => (set & (1 << at)) !== 0);
      const sum: Figure = (row) => chosen.reduce((all, { figures }) => all + (figures[row] || 0), 0);
      const expected: Figure = total === undefined ? sum : (row) => (total.figures[row] ?? NaN) - sum(row);
      if (this.holds({ key, near: toTheCent, expected }, own)) return key;
    }
    return undefined;
  }

  /** Whether it is always so much longer than the drop, or longer and so many whole repeats. */
  private isCut(own: Evidence): boolean {
    const find = (key: MeaningKey): Float64Array | undefined =>
      this.all.find((one) => one !== own && saidFor(one, key) >= KNOWN)?.inches;
    const [drop, repeat] = [find('finishedDrop'), find('verticalRepeat')];
    if (drop === undefined || saidFor(own, 'cutLength') >= SAID_LITTLE || saysLining(own)) return false;
    const told = this.rows
      .map((row) => ({
        over: (own.inches[row] ?? NaN) - (drop[row] ?? NaN),
        times: (own.inches[row] ?? NaN) / (repeat?.[row] || NaN),
      }))
      .filter(({ over }) => !Number.isNaN(over));
    const plain = told.filter(({ times: each }) => Number.isNaN(each)).map(({ over }) => over);
    const middle = [...plain].sort((a, b) => a - b)[plain.length >> 1] ?? LEAST_CUT;
    const held = told.filter(({ over, times: each }) =>
      Number.isNaN(each)
        ? Math.abs(over - middle) < 0.01
        : over >= LEAST_CUT && Math.abs(each - Math.round(each)) < 0.004,
    );
    return (
      told.length >= LEAST_ROWS &&
      held.length >= told.length * HELD &&
      middle >= LEAST_CUT &&
      middle <= MOST_CUT &&
      new Set(drop.filter((one) => !Number.isNaN(one))).size > 1
    );
  }

  private holds({ expected, near }: Law, own: Evidence): boolean {
    let [rows, held] = [0, 0];
    const seen = new Set<number>();
    for (const row of this.rows) {
      const [figure, wanted] = [own.figures[row] ?? NaN, expected(row)];
      if (Number.isNaN(figure) || !Number.isFinite(wanted) || wanted === 0) continue;
      rows++;
      if (near(figure, wanted)) held++;
      else if (rows - held > MOST_ROWS * (1 - HELD)) return false;
      seen.add(figure);
    }
    return rows >= LEAST_ROWS && held >= rows * HELD && seen.size > 1;
  }

  /** The one column that says a meaning best; undefined where none does. */
  private best(key: MeaningKey, least = KNOWN): Evidence | undefined {
    let [best, most] = [undefined as Evidence | undefined, least];
    for (const one of this.all) {
      // “W ea” is a count of widths rather than a width.
      const counted = key === 'widths' && PIECES.has(one.heading.per) ? FOR_EACH : 0;
      const said = saidFor(one, key) + counted;
      if (said >= most && one.numbers > 0) [best, most] = [one, said + 1e-9];
    }
    return best;
  }

  private figures(key: MeaningKey, least = KNOWN): Figure | undefined {
    const figures = this.best(key, least)?.figures;
    return figures && ((row) => figures[row] ?? NaN);
  }

  /** The figures of every column that may well have a meaning. */
  private every(key: MeaningKey, also: (one: Evidence) => boolean = () => false): readonly Figure[] {
    return this.all
      .filter((one) => one.numbers > 0 && (saidFor(one, key) >= HALF_SAID || also(one)))
      .map(
        ({ figures }): Figure =>
          (row) =>
            figures[row] ?? NaN,
      );
  }

  /** Panels of a window by its draw. */
  private drawn(): Figure | undefined {
    const cells = this.all.find((one) => saidFor(one, 'draw') >= HALF_SAID && one.texts > 0)?.cells;
    if (cells === undefined) return undefined;
    return (row) => {
      const draw = drawOfText(String(cells[row] ?? ''));
      return draw === undefined ? NaN : panelsOf(draw);
    };
  }

  private lawsOf(): Law[] {
    const cuts = this.best('cutLength');
    const [widths, cut] = [this.figures('widths'), cuts && clothAlong(cuts)];
    const [many, panels] = [this.figures('quantity', HALF_SAID), this.figures('panels') ?? this.drawn()];
    const laws: Law[] = [];
    const add = (key: MeaningKey, near: Law['near'], expected: Figure | undefined): void => {
      if (expected !== undefined) laws.push({ key, expected, near });
    };
    const [prices, amounts] = [
      this.every('unitPrice', ({ heading }) => heading.per === 'yard'),
      this.every('amount'),
    ];
    for (const yards of this.every('yardage'))
      for (const count of [yards, times(yards, many)]) {
        for (const amount of amounts) add('unitPrice', toTheCent, per(amount, count));
        for (const price of prices) add('amount', toTheCent, times(price, count));
      }
    for (const yards of this.every('yardage'))
      for (const count of [undefined, many]) {
        const bought = per(yards, cut);
        add('widths', cutFrom, count === undefined ? bought : per(bought, count));
      }
    for (const price of prices)
      for (const amount of amounts) {
        add('yardage', nearly, per(amount, price));
        add('yardage', nearly, per(per(amount, price), many));
      }
    const all = [widths, times(widths, many), times(times(widths, panels), many)];
    for (const count of all) {
      for (const rate of this.every('rate', byWidth)) add('labor', toTheCent, times(rate, count));
      add('yardage', upTo, times(count, cut));
    }
    for (const count of all.slice(1)) add('widthsOfAll', exactly, varies(count, widths, this.rows));
    add('widths', exactly, varies(times(widths, panels), widths, this.rows));
    return laws;
  }
}

const IMPERIAL: ReadonlySet<Evidence['unit']> = new Set<Evidence['unit']>(['in', 'ft', 'yd']);
/** Yards or metres as long as the lengths of a column. */
function clothAlong({ inches, unit }: Evidence): Figure {
  const whole = inchesOfCloth(!IMPERIAL.has(unit));
  return (row) => (inches[row] ?? NaN) / whole;
}
/** Yards by the money they cost, which was rounded to the cent. */
const nearly = (figure: number, expected: number): boolean => Math.abs(figure - expected) < 0.02;
const times = (one: Figure | undefined, other: Figure | undefined): Figure | undefined =>
  one === undefined || other === undefined ? undefined : (row) => one(row) * other(row);
const per = (one: Figure | undefined, other: Figure | undefined): Figure | undefined =>
  one === undefined || other === undefined ? undefined : (row) => one(row) / other(row);
/** A multiple that is always once says nothing. */
const varies = (
  found: Figure | undefined,
  base: Figure | undefined,
  rows: readonly number[],
): Figure | undefined =>
  found !== undefined && base !== undefined && rows.some((row) => Math.abs(found(row) - base(row)) > 1e-6)
    ? found
    : undefined;
