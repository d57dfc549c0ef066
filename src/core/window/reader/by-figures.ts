/**
 * Columns whose headings say little, by what their figures come to: money that is price × yards, widths
 * that are one panel’s × panels. A column gets the meaning only as one that it may have; the reading
 * of the whole table decides.
 */
import type { Evidence } from './evidence';
import type { Per } from './heading';
import type { MeaningKey } from './meanings';

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
/** Another column’s meaning counts where the heading says it less than this. */
const SAID_LITTLE = 0.9;
const CENT = 0.0105;
const PIECES: ReadonlySet<Per | undefined> = new Set<Per>(['panel', 'window']);
const FOR_EACH = 0.4;

const toTheCent = (figure: number, expected: number): boolean => Math.abs(figure - expected) <= CENT;
/** A lining is some inches longer than its drop, whatever step its yards go by. */
const justOver = (figure: number, expected: number): boolean =>
  figure >= expected && figure <= expected * 1.3 + 1;
const exactly = (figure: number, expected: number): boolean => Math.abs(figure - expected) < 1e-6;

export class ByFigures {
  private readonly laws: readonly Law[];
  private readonly rows: readonly number[];

  constructor(private readonly all: readonly Evidence[]) {
    const length = all[0]?.cells.length ?? 0;
    const step = Math.max(1, Math.ceil(length / MOST_ROWS));
    this.rows = Array.from({ length: Math.ceil(length / step) }, (_, at) => at * step);
    this.laws = this.lawsOf();
  }

  /** What the figures of one column may be, beside what its heading says. */
  of(at: number): readonly MeaningKey[] {
    const own = this.all[at] as Evidence;
    if (own.numbers < LEAST_ROWS || own.part !== undefined) return [];
    return [
      ...new Set(
        this.laws
          .filter(({ key }) => (own.said.get(key) ?? 0) < SAID_LITTLE)
          .filter(({ key }) => key !== 'liningYardage' || saysLining(own))
          .filter((law) => this.holds(law, own))
          .map(({ key }) => key),
      ),
    ];
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

  /** The figures of the one column that says a meaning best; undefined where none does. */
  private figures(key: MeaningKey): Figure | undefined {
    let [best, most] = [undefined as Evidence | undefined, KNOWN];
    for (const one of this.all) {
      // “W ea” is a count of widths rather than a width.
      const counted = key === 'widths' && PIECES.has(one.heading.per) ? FOR_EACH : 0;
      const said = (one.said.get(key) ?? 0) + counted;
      if (said >= most && one.numbers > 0) [best, most] = [one, said + 1e-9];
    }
    const figures = best?.figures;
    return figures === undefined ? undefined : (row) => figures[row] ?? NaN;
  }

  private lawsOf(): Law[] {
    const [yards, price, amount, widths] = (['yardage', 'unitPrice', 'amount', 'widths'] as const).map(
      (key) => this.figures(key),
    );
    const [many, panels] = [this.figures('quantity'), this.figures('panels')];
    const laws: Law[] = [];
    const add = (key: MeaningKey, near: Law['near'], expected: Figure | undefined): void => {
      if (expected !== undefined) laws.push({ key, expected, near });
    };
    for (const count of [yards, times(yards, many)]) {
      add('unitPrice', toTheCent, per(amount, count));
      add('amount', toTheCent, times(price, count));
    }
    add('liningYardage', justOver, likeLining(this.all, widths, many));
    add('widthsOfAll', exactly, varies(times(widths, many), widths, this.rows));
    add('widths', exactly, varies(times(widths, panels), widths, this.rows));
    add('widthsOfOne', exactly, varies(per(widths, panels), widths, this.rows));
    return laws;
  }
}

const INCHES_A_YARD = 36;
/** Yards of widths as long as the drop. */
function likeLining(
  all: readonly Evidence[],
  widths: Figure | undefined,
  many: Figure | undefined,
): Figure | undefined {
  const drop = all.find(({ said }) => (said.get('finishedDrop') ?? 0) >= KNOWN);
  const inches = drop?.inches;
  const whole = drop?.unit === 'in' || drop?.unit === 'ft' ? INCHES_A_YARD : METRE;
  const drops: Figure | undefined = inches && ((row) => (inches[row] ?? NaN) / whole);
  const one = times(widths, drops);
  return many === undefined ? one : times(one, many);
}
const METRE = 1 / 0.0254;

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
