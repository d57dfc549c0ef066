/**
 * What a table charges and allows by its own words and figures: so much a yard by the kind of lining, so much more
 * than the drop by heading, widths × cut up to the half yard. It is told from the first orders, as its sums are.
 */
import { isBlank, type CellIn } from '../cell/fields';
import { digits } from '../exact/unit';
import type { OrderTable } from '../window/reader/order-rows';
import { figureIn, judgedIn, LEAST_ORDERS, type Figures } from './own-figures';

export interface OwnRate {
  readonly target: number;
  /** Multiplied with each other and the rate; where `adds`, the one that the rate is added to. */
  readonly factors: readonly number[];
  readonly adds: boolean;
  /** The columns whose words say which rate. */
  readonly words: readonly number[];
  /** Or the column from whose figures on it is another, the least first. */
  readonly from?: { readonly at: number; readonly figures: readonly number[] };
  readonly rates: ReadonlyMap<string, number>;
  /** Up to the next of it; 0 leaves it exact. */
  readonly step: number;
  readonly within: number;
  /** So many times as much comes more than once: a surcharge, a reduction. */
  readonly also: readonly number[];
  /** The least that is charged. */
  readonly least: number;
  readonly held: number;
  readonly outOf: number;
}

/** A column of words down the first orders. */
export interface Words {
  readonly at: number;
  readonly down: readonly string[];
  readonly different: number;
}

const MOST_WORDS = 12;
const MOST_FACTORS = 18;
const MOST_MEASURES = 16;
/** So many orders of a word tell its rate, and so many of them have it. */
const LEAST_A_WORD = 3;
const HOLDS_A_WORD = 0.7;
/** It speaks of so many of the orders that fill the column, and holds in so many of these. */
const SPEAKS = 0.6;
const HOLDS = 0.9;
/** Without what comes more than once. */
const HOLDS_PLAINLY = 0.7;
/** A figure up to a step tells how it was reckoned where it is so many steps. */
const LEAST_STEPS = 8;

const wordIn = (cell: CellIn): string =>
  isBlank(cell) || cell === 0 || typeof cell === 'object' ? '' : String(cell).trim().toLowerCase();

/** Choices of a few words, like the heading, the draw or the lining; a room or a name charges nothing. */
export function wordsDown({ found: columns }: OrderTable, rows: readonly (readonly CellIn[])[]): Words[] {
  const found: Words[] = [];
  for (const { at, kind } of columns) {
    if (kind.quantity !== 'choice') continue;
    const down = rows.map((cells) => wordIn(cells[at]));
    const filled = down.filter((word) => word !== '').length;
    const different = new Set(down).size;
    if (filled * 2 < rows.length || different < 2 || different > Math.min(MOST_WORDS, rows.length / 5))
      continue;
    found.push({ at, down, different });
  }
  return found;
}

/** Orders parted by their words. */
interface Parted {
  readonly words: readonly Words[];
  readonly keys: readonly string[];
  readonly parts: ReadonlyMap<string, readonly number[]>;
  readonly inAll: number;
}

function parted(words: readonly Words[], rows: readonly number[]): Parted {
  const keys: string[] = [];
  const parts = new Map<string, number[]>();
  for (const row of rows) {
    const key = words.map(({ down }) => down[row] ?? '').join('|');
    keys[row] = key;
    const those = parts.get(key);
    if (those === undefined) parts.set(key, [row]);
    else those.push(row);
  }
  return { words, keys, parts, inAll: rows.length };
}

const upTo = (value: number, step: number): number =>
  step === 0 ? value : Math.ceil(value / step - 1e-6) * step;

const STEPS = [1, 0.5, 0.25, 0.125, 0.1, 0.05] as const;
/** The step that all figures but slips are whole multiples of; 0 where there is none. */
function stepOf(figures: readonly number[]): number {
  for (const step of STEPS) {
    const whole = figures.filter((one) => Math.abs(one / step - Math.round(one / step)) < 1e-6).length;
    if (whole >= figures.length * 0.95) return step;
  }
  return 0;
}

/** Figures to an inch, centimetre or millimetre in yards or metres, of one panel or two. */
const SCALES = [1, 1 / 36, 1 / 100, 1 / 1000].flatMap((scale) => [scale, 2 * scale]);
const COUNTS = [1, 2];

interface Form extends Pick<OwnRate, 'adds' | 'step' | 'within'> {
  readonly factors: readonly Figures[];
  /** The only rates it may have. */
  readonly scales?: readonly number[];
}

const baseOf = ({ factors }: Form, row: number): number =>
  factors.reduce((all, { down }) => all * (down[row] as number), 1);
const gives = ({ adds, step }: Pick<Form, 'adds' | 'step'>, rate: number, base: number): number =>
  upTo(adds ? base + rate : base * rate, step);

function median(figures: number[]): number {
  figures.sort((one, other) => one - other);
  return figures[figures.length >> 1] ?? NaN;
}

/** The rate most of these orders have, and how many have it. */
function rateOf(form: Form, target: Figures, rows: readonly number[]): { rate: number; held: number } {
  const implied = rows.map((row) => {
    const [figure, base] = [target.down[row] as number, baseOf(form, row)];
    return form.adds ? figure - base : figure / base;
  });
  const middle = median(implied);
  const tried = form.scales ?? [100, 1000, 10_000, 1e9].map((fine) => Math.round(middle * fine) / fine);
  let best = { rate: NaN, held: 0 };
  for (const rate of tried) {
    let held = 0;
    for (const row of rows)
      if (Math.abs((target.down[row] as number) - gives(form, rate, baseOf(form, row))) <= form.within)
        held++;
    if (held > best.held) best = { rate, held };
  }
  return best;
}

/** Not one of these: such a slip is made more than once. */
const isSimple = (ratio: number): boolean =>
  [ratio, 1 / ratio].some((one) => Math.abs(one - Math.round(one)) < 1e-3 || Math.abs(one - 1.5) < 1e-3);

/** Which of the steps that begin at these figures. */
const tierOf = (figure: number, figures: readonly number[]): string =>
  String(figures.filter((one) => one <= figure).length);

const MOST_TIERS = 4;
/** Orders parted where a rate changes with a figure: a price that breaks at a quantity. */
function tiersOf(
  form: Form,
  target: Figures,
  rows: readonly number[],
): (Parted & Pick<OwnRate, 'from'>) | undefined {
  for (const { at, down, isPlain } of form.factors) {
    if (!isPlain) continue;
    const sorted = rows
      .filter((row) => baseOf(form, row) > 0)
      .map((row) => ({
        figure: down[row] as number,
        ratio: Math.round(((target.down[row] as number) / baseOf(form, row)) * 1000),
      }))
      .sort((one, other) => one.figure - other.figure);
    const figures: number[] = [];
    let now = NaN;
    for (let place = 0; place + 2 < sorted.length; place++) {
      const [one, two, three] = sorted.slice(place, place + 3).map(({ ratio }) => ratio);
      // Three that follow each other alike begin a step; a slip does not.
      if (one !== two || two !== three || one === now) continue;
      if (!Number.isNaN(now)) figures.push(sorted[place]?.figure ?? NaN);
      now = one ?? NaN;
    }
    if (figures.length === 0 || figures.length >= MOST_TIERS) continue;
    const keys: string[] = [];
    const parts = new Map<string, number[]>();
    for (const row of rows) {
      const key = tierOf(down[row] as number, figures);
      keys[row] = key;
      parts.set(key, [...(parts.get(key) ?? []), row]);
    }
    return { words: [], keys, parts, inAll: rows.length, from: { at, figures } };
  }
  return undefined;
}

/** What comes more than once among the figures that differ: a share more or less, or a least charge. */
function comesAgain(
  off: readonly { figure: number; expected: number }[],
  all: readonly number[],
): Pick<OwnRate, 'also' | 'least'> {
  const times = new Map<number, number>();
  const fixed = new Map<number, number>();
  for (const { figure, expected } of off) {
    const ratio = Math.round((figure / expected) * 1000) / 1000;
    if (!isSimple(ratio)) times.set(ratio, (times.get(ratio) ?? 0) + 1);
    if (figure > expected) fixed.set(figure, (fixed.get(figure) ?? 0) + 1);
  }
  const also = [...times].filter(([, count]) => count > 1).map(([ratio]) => ratio);
  // Nothing, or hardly anything, is charged less than the least.
  const isLeast = ([figure, count]: readonly [number, number]): boolean =>
    count > 1 && all.filter((one) => one < figure).length * 2 <= count;
  const [least = 0] = [...fixed].filter(isLeast).map(([figure]) => figure);
  return { also, least };
}

const isUsual = (
  { also, least }: Pick<OwnRate, 'also' | 'least'>,
  figure: number,
  expected: number,
): boolean =>
  (figure === least && expected < least) ||
  also.some((ratio) => Math.abs(figure / expected - ratio) <= 0.0008);

function way(
  form: Form,
  target: Figures,
  { words, keys, parts, inAll, from }: Parted & Pick<OwnRate, 'from'>,
): OwnRate | undefined {
  const rates = new Map<string, number>();
  const judged: number[] = [];
  let held = 0;
  let left = inAll;
  for (const [key, rows] of parts) {
    if (left < inAll * SPEAKS * HOLDS_PLAINLY) return undefined;
    left -= rows.length;
    const usable = rows.filter((row) => !Number.isNaN(baseOf(form, row)) && baseOf(form, row) !== 0);
    if (usable.length < LEAST_A_WORD) continue;
    const best = rateOf(form, target, usable);
    if (best.held < Math.max(LEAST_A_WORD, usable.length * HOLDS_A_WORD)) continue;
    rates.set(key, best.rate);
    held += best.held;
    left += best.held;
    judged.push(...usable);
  }
  const outOf = judged.length;
  if (
    outOf < Math.max(LEAST_ORDERS, inAll * SPEAKS) ||
    held < outOf * HOLDS_PLAINLY ||
    rates.size > outOf / 4
  )
    return undefined;
  const off = judged.flatMap((row) => {
    const figure = target.down[row] as number;
    const expected = gives(form, rates.get(keys[row] ?? '') ?? NaN, baseOf(form, row));
    return Math.abs(figure - expected) <= form.within ? [] : [{ figure, expected }];
  });
  const usual =
    form.adds || form.step > 0 || !target.isMoney
      ? { also: [], least: 0 }
      : comesAgain(
          off,
          judged.map((row) => target.down[row] as number),
        );
  const explained = off.filter(({ figure, expected }) => isUsual(usual, figure, expected)).length;
  if (held + explained < outOf * HOLDS) return undefined;
  const { adds, step, within } = form;
  const factors = form.factors.map(({ at }) => at);
  const places = words.map(({ at }) => at);
  const by = { words: places, ...(from !== undefined && { from }) };
  return { target: target.at, factors, adds, ...by, rates, step, within, ...usual, held, outOf };
}

function* pairs<T>(all: readonly T[]): Generator<readonly T[]> {
  for (const [place, one] of all.entries()) for (const other of all.slice(place + 1)) yield [one, other];
}
function* threes<T>(all: readonly T[]): Generator<readonly T[]> {
  for (const [place, one] of all.entries())
    for (const two of pairs(all.slice(place + 1))) yield [one, ...two];
}

/** What may give a column: a rate times others, so much more than another, others up to a step. */
function* formsOf(target: Figures, before: readonly Figures[]): Generator<Form> {
  const { isMoney, within } = target;
  const exact = { adds: false, step: 0, within };
  if (isMoney) yield { ...exact, factors: [] };
  for (const one of before) yield { ...exact, factors: [one] };
  for (const two of pairs(before)) yield { ...exact, factors: two };
  if (!target.isPlain) return;
  const plain = before.filter((one) => one.isPlain).slice(-MOST_MEASURES);
  for (const one of plain) yield { adds: true, step: 0, within: 0.02, factors: [one] };
  const figures = target.down.filter((one) => !Number.isNaN(one));
  const step = stepOf(figures);
  if (step === 0) return;
  const scales = median(figures) >= step * LEAST_STEPS ? SCALES : COUNTS;
  const up = { adds: false, step, scales, within: 1e-6 };
  for (const some of pairs(plain)) yield { ...up, factors: some };
  for (const some of threes(plain)) yield { ...up, factors: some };
}

/** Orders counted down the rows. */
const isCount = ({ down }: Figures): boolean =>
  down.every((one, row) => row === 0 || one > (down[row - 1] ?? NaN));

const costOf = ({ rates, factors, words, held, step, also }: OwnRate): number =>
  held - 2 * rates.size - factors.length / 2 - words.length / 4 - (step > 0 ? 1 : 0) - also.length;

/** Only what is priced breaks at a quantity: so many of one column at the price in another. */
function tiersFor(form: Form, target: Figures, rows: readonly number[]): readonly Parted[] {
  if (form.factors.length !== 2 || !target.isMoney || form.step > 0 || target.different < 12) return [];
  const tiers = tiersOf(form, target, rows);
  return tiers === undefined ? [] : [tiers];
}

interface Partings {
  readonly alone: Parted;
  readonly byOne: readonly Parted[];
  readonly byTwo: readonly Parted[];
}

const LEAST_TOGETHER = 5;
/** So much for each of a count: in enough orders both the count and the charge are more than usual. */
function risesTogether({ factors, adds, step }: Form, target: Figures, { parts }: Parted): boolean {
  const [factor] = factors;
  if (factor === undefined || factors.length > 1 || adds || step > 0) return false;
  const rows = [...parts.values()].flat();
  const usual = ({ down }: Figures): number => median(rows.map((row) => down[row] as number));
  const [many, much] = [usual(factor), usual(target)];
  return (
    rows.filter((row) => (factor.down[row] as number) > many && (target.down[row] as number) > much).length >=
    LEAST_TOGETHER
  );
}

/** What a form's rate may hang on. */
function partedFor(form: Form, target: Figures, { alone, byOne, byTwo }: Partings): readonly Parted[] {
  if (form.factors.length === 0) return [...byOne, ...byTwo];
  // A few figures agree with another column by chance, unless both are often unlike their usual.
  if (target.different < 4) return risesTogether(form, target, alone) ? [alone] : [];
  return form.step > 0 || form.adds ? [alone, ...byOne] : [alone, ...byOne, ...byTwo];
}

/** How a column follows from those before it and from words; of as few rates as may be. */
export function ratesOf(
  target: Figures,
  columns: readonly Figures[],
  words: readonly Words[],
): OwnRate | undefined {
  const rows = target.down.flatMap((figure, row) => (Number.isNaN(judgedIn(figure)) ? [] : [row]));
  if (rows.length < LEAST_ORDERS || target.different < 2 || target.isGiven) return undefined;
  const before = columns
    .filter((one) => one.at < target.at && one.different > 1 && !isCount(one))
    .slice(-MOST_FACTORS);
  const partings = {
    alone: parted([], rows),
    byOne: words.map((one) => parted([one], rows)),
    byTwo: [...pairs(words)].map((two) => parted(two, rows)),
  };
  let best: OwnRate | undefined;
  for (const form of formsOf(target, before))
    for (const one of [...partedFor(form, target, partings), ...tiersFor(form, target, rows)]) {
      const found = way(form, target, one);
      if (found !== undefined && (best === undefined || costOf(found) > costOf(best))) best = found;
    }
  // A column that repeats another tells nothing.
  return best?.factors.length === 1 && best.rates.get('') === 1 ? undefined : best;
}

const keyOf = ({ words, from }: OwnRate, cells: readonly CellIn[]): string =>
  from === undefined
    ? words.map((at) => wordIn(cells[at])).join('|')
    : tierOf(figureIn(cells[from.at]), from.figures);

/** What it gives in an order, or the order's own figure where that is usual too; undefined where it says nothing. */
export function rateGives(way: OwnRate, cells: readonly CellIn[]): number | undefined {
  const rate = way.rates.get(keyOf(way, cells));
  const base = way.factors.reduce((all, at) => all * figureIn(cells[at]), 1);
  if (rate === undefined || Number.isNaN(base) || base === 0) return undefined;
  const expected = gives(way, rate, base);
  const figure = figureIn(cells[way.target]);
  return isUsual(way, figure, expected) ? figure : expected;
}

/** “5.25 × Lining yds for Lined with “dim-out””. */
export function rateInWords(way: OwnRate, headings: readonly string[], cells: readonly CellIn[]): string {
  const names = (places: readonly number[]): string[] => places.map((at) => headings[at] ?? '');
  const rate = way.rates.get(keyOf(way, cells)) ?? 0;
  const shown = digits(Math.round(rate * 1e6) / 1e6);
  const by = names(way.factors).join(' × ');
  const times = rate === 1 ? by : [...(by === '' ? [] : [by]), shown].join(' × ');
  const sum = way.adds ? `${by} ${rate < 0 ? '−' : '+'} ${shown.replace('-', '')}` : times;
  const up = way.step > 0 ? `${sum}, up to ${digits(way.step)}` : sum;
  const where = way.words.map((at) => `“${wordIn(cells[at])}”`).join(' and ');
  const { from } = way;
  if (from !== undefined) {
    const reached = from.figures.filter((one) => one <= figureIn(cells[from.at])).pop();
    return reached === undefined ? up : `${up} from about ${digits(reached)} ${headings[from.at] ?? ''} on`;
  }
  return where === '' ? up : `${up} for ${where}`;
}
