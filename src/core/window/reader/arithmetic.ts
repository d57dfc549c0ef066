/**
 * What the figures of the rows say to each other: rod = opening + both extensions, yards = widths ×
 * cut × quantity, amount = yards × price, total = sum of the money. It confirms a reading, breaks a
 * tie, contradicts, and tells what one figure is for.
 */
import { toUnit, UNITS } from '../../exact/length';
import type { Evidence } from './evidence';
import type { Per } from './heading';
import type { MeaningKey } from './meanings';

/** Columns by meaning, as places in the evidence. */
export type Assigned = ReadonlyMap<MeaningKey, number>;

export interface Sums {
  /** Added to the score of the whole reading. */
  readonly score: number;
  /** Meanings the figures prove. */
  readonly proven: ReadonlySet<MeaningKey>;
  /** What a figure is for, where the figures tell. */
  readonly per: ReadonlyMap<MeaningKey, Per | 'row'>;
  /** Meanings the figures speak against. */
  readonly against: ReadonlySet<MeaningKey>;
}

const MOST_ROWS = 240;
const CENT = 0.0105;
export const MONEY_OF_LINE: readonly MeaningKey[] = [
  'amount',
  'labor',
  'liningAmount',
  'interliningAmount',
  'hardware',
  'installation',
  'freight',
  'extras',
  'tax',
];

/** What cloth is bought by, the metre or the yard, in inches. */
export const inchesOfCloth = (metric: boolean): number => toUnit(UNITS[metric ? 'm' : 'yd'], 'in');

type Get = (row: number) => number;

interface Tally {
  readonly rows: number;
  readonly share: number;
}

type Pers = Map<MeaningKey, Per | 'row'>;
const isPlain = ({ rows, share }: Tally): boolean => rows >= 2 && share >= 0.9;

/** A row’s cloth, and the columns it is read from. */
interface Cloth {
  readonly widths: Get;
  readonly yards: Get;
  readonly many: Get;
  readonly places: string;
}

export class Arithmetic {
  private readonly rows: readonly number[];
  private readonly kept = new Map<string, Tally>();

  constructor(
    private readonly all: readonly Evidence[],
    private readonly panels: Get,
    private readonly metric: boolean,
    /** Windows a row stands for, where its room says so. */
    private readonly counts: Get = () => 1,
    /** Panels of a row's window by its draw alone. */
    private readonly drawn: Get = () => NaN,
  ) {
    const length = all[0]?.cells.length ?? 0;
    const step = Math.max(1, Math.ceil(length / MOST_ROWS));
    this.rows = Array.from({ length: Math.ceil(length / step) }, (_, at) => at * step);
  }

  /** Of one row alone no figure proves anything. */
  get speaks(): boolean {
    return this.rows.length > 1;
  }

  private inches(at: number | undefined): Get | undefined {
    const lengths = at === undefined ? undefined : this.all[at]?.inches;
    return lengths === undefined ? undefined : (row) => lengths[row] ?? NaN;
  }

  private figures(at: number | undefined): Get | undefined {
    const figures = at === undefined ? undefined : this.all[at]?.figures;
    return figures === undefined ? undefined : (row) => figures[row] ?? NaN;
  }

  /** Windows of a row. */
  private many(on: Assigned): Get {
    return this.figures(on.get('quantity')) ?? this.counts;
  }

  /** The share of rows with every figure on which a test holds. */
  private tally(key: string, needs: readonly Get[], test: (row: number) => boolean): Tally {
    const kept = this.kept.get(key);
    if (kept !== undefined) return kept;
    let [rows, held] = [0, 0];
    for (const row of this.rows) {
      if (needs.some((get) => Number.isNaN(get(row)))) continue;
      rows++;
      if (test(row)) held++;
    }
    const found = { rows, share: rows === 0 ? 0 : held / rows };
    this.kept.set(key, found);
    return found;
  }

  judge(assigned: Assigned): Sums {
    const proven = new Set<MeaningKey>();
    const against = new Set<MeaningKey>();
    const per = new Map<MeaningKey, Per | 'row'>();
    let score = 0;
    if (!this.speaks) return { score, proven, per, against };
    const hold = (
      { rows, share }: Tally,
      most: number,
      less: number,
      keys: readonly MeaningKey[],
    ): boolean => {
      if (rows < 2) return false;
      if (share >= 0.75) {
        score += most * Math.min(1, 0.6 + rows * 0.1);
        if (rows >= 3 || share === 1) for (const key of keys) proven.add(key);
        return true;
      }
      if (less > 0 && share < 0.4 && rows >= 3) {
        score -= less;
        for (const key of keys) against.add(key);
      }
      return false;
    };
    this.rod(assigned, hold);
    this.cutAndDrop(assigned, hold);
    this.money(assigned, per, hold);
    this.yards(assigned, per, hold);
    this.finished(assigned, per, hold);
    this.totals(assigned, hold);
    this.labor(assigned, hold);
    this.each(assigned, hold);
    this.widths(assigned, hold);
    this.pieces(assigned, hold);
    return { score, proven, per, against };
  }

  private rod(on: Assigned, hold: Hold): void {
    const [rodAt, openAt, leftAt, rightAt] = [
      on.get('rodWidth'),
      on.get('openingWidth'),
      on.get('leftExtension'),
      on.get('rightExtension'),
    ];
    const [rod, open, left, right] = [
      this.inches(rodAt),
      this.inches(openAt),
      this.inches(leftAt),
      this.inches(rightAt),
    ];
    if (rod === undefined || open === undefined) return;
    if (left !== undefined && right !== undefined) {
      const sum = this.tally(
        `rod ${rodAt} ${openAt} ${leftAt} ${rightAt}`,
        [rod, open, left, right],
        (row) => Math.abs(rod(row) - open(row) - left(row) - right(row)) < 0.04,
      );
      // Of two layers only one hangs on the outer rod.
      if (sum.rows >= 2 && sum.share >= 0.45)
        hold({ ...sum, share: 1 }, 0.7, 0, ['rodWidth', 'openingWidth', 'leftExtension', 'rightExtension']);
      else hold(sum, 0, 0.35, ['rodWidth', 'openingWidth']);
      return;
    }
    const over = this.tally(
      `over ${rodAt} ${openAt}`,
      [rod, open],
      (row) => rod(row) >= open(row) && rod(row) <= open(row) + 60,
    );
    hold(over, 0.12, 0.4, []);
    const same = this.tally(
      `steady ${rodAt} ${openAt}`,
      [rod, open],
      (row) => Math.abs(rod(row) - open(row) - (rod(this.rows[0] ?? 0) - open(this.rows[0] ?? 0))) < 0.04,
    );
    if (same.rows >= 3 && same.share > 0.9 && rod(this.rows[0] ?? 0) > open(this.rows[0] ?? 0))
      hold(same, 0.2, 0, ['rodWidth', 'openingWidth']);
  }

  private cutAndDrop(on: Assigned, hold: Hold): void {
    const [cutAt, dropAt, repeatAt] = [on.get('cutLength'), on.get('finishedDrop'), on.get('verticalRepeat')];
    const [cut, drop, repeat, high] = [
      this.inches(cutAt),
      this.inches(dropAt),
      this.inches(repeatAt),
      this.inches(on.get('measured')),
    ];
    if (cut !== undefined && drop !== undefined)
      hold(
        this.tally(
          `longer ${cutAt} ${dropAt}`,
          [cut, drop],
          (row) => cut(row) > drop(row) && cut(row) < drop(row) + 80,
        ),
        0.12,
        0.6,
        [],
      );
    if (cut !== undefined && repeat !== undefined)
      hold(
        this.tally(
          `repeats ${cutAt} ${repeatAt}`,
          [cut, (row) => (repeat(row) > 0 ? repeat(row) : NaN)],
          (row) => {
            const times = cut(row) / repeat(row);
            return Math.abs(times - Math.round(times)) < 0.004;
          },
        ),
        0.3,
        0,
        ['cutLength', 'verticalRepeat'],
      );
    if (high !== undefined && drop !== undefined)
      hold(
        this.tally(
          `under ${on.get('measured')} ${dropAt}`,
          [high, drop],
          (row) => Math.abs(high(row) - drop(row)) <= 16,
        ),
        0.08,
        0.15,
        [],
      );
    const [centre, right] = [this.inches(on.get('measuredCentre')), this.inches(on.get('measuredRight'))];
    for (const [key, other] of [
      ['measuredCentre', centre],
      ['measuredRight', right],
    ] as const)
      if (high !== undefined && other !== undefined)
        hold(
          this.tally(
            `near ${key} ${on.get(key)} ${on.get('measured')}`,
            [high, other],
            (row) => Math.abs(high(row) - other(row)) < 6,
          ),
          0.1,
          0.3,
          [],
        );
  }

  /** Amount = price × yards, widths, panels, pairs or windows. */
  private money(on: Assigned, per: Pers, hold: Hold): void {
    const [priceAt, amountAt] = [on.get('unitPrice'), on.get('amount')];
    const [price, amount] = [this.figures(priceAt), this.figures(amountAt)];
    if (price === undefined || amount === undefined) return;
    const many: Get = this.many(on);
    const yards = this.figures(on.get('yardage'));
    const widths = this.figures(on.get('widths'));
    const ways: readonly (readonly [Per | 'row', Get | undefined, readonly MeaningKey[]])[] = [
      ['row', yards, ['yardage']],
      ['window', yards && ((row) => yards(row) * many(row)), ['yardage', 'quantity']],
      ['width', widths && ((row) => widths(row) * many(row)), ['widths']],
      ['panel', (row) => this.panels(row) * many(row), []],
      ['panel', this.figures(on.get('panels')), ['panels']],
      ['pair', this.figures(on.get('quantity')), ['quantity']],
    ];
    for (const [way, count, keys] of ways) {
      if (count === undefined) continue;
      const sum = this.tally(
        `amount ${priceAt} ${amountAt} ${way} ${keys.map((key) => on.get(key)).join(' ')} ${on.get('quantity')}`,
        [price, amount, count],
        (row) =>
          Math.abs(price(row) * count(row) - amount(row)) <= CENT + (Number.isInteger(amount(row)) ? 0.5 : 0),
      );
      if (sum.share < 0.75 || sum.rows < 2) continue;
      hold(sum, 0.6, 0, ['unitPrice', 'amount', ...keys]);
      if (way === 'row' || way === 'window') per.set('yardage', way);
      else per.set('unitPrice', way);
      return;
    }
    if (yards === undefined) return;
    hold(
      this.tally(`no amount ${priceAt} ${amountAt}`, [price, amount], () => false),
      0,
      0.2,
      ['unitPrice', 'amount'],
    );
  }

  /** Yards = widths × cut × quantity, up to the house’s step. */
  private yards(on: Assigned, per: Pers, hold: Hold): void {
    const [widths, yards] = [this.figures(on.get('widths')), this.figures(on.get('yardage'))];
    if (widths === undefined || yards === undefined) return;
    const columns = ['widths', 'cutLength', 'yardage', 'quantity', 'finishedDrop'] as const;
    const places = columns.map((key) => String(on.get(key))).join(' ');
    const known: Cloth = { widths, yards, many: this.many(on), places };
    const cut = this.inches(on.get('cutLength'));
    if (cut === undefined) this.yardsOfDrops(on, known, per, hold);
    else this.yardsOfCuts(on, cut, known, per, hold);
  }

  /** The yards a row’s cuts come to, rounded up, for the row, a window or a panel. */
  private yardsOfCuts(on: Assigned, cut: Get, cloth: Cloth, per: Pers, hold: Hold): void {
    const { widths, yards, many, places } = cloth;
    const whole = inchesOfCloth(this.metric);
    const near =
      (count: Get): ((row: number) => boolean) =>
      (row) => {
        const bare = (count(row) * cut(row)) / whole;
        const over = yards(row) - bare;
        return over >= -0.06 && over <= Math.min(1.02, 0.06 * bare + 0.3);
      };
    const keys: readonly MeaningKey[] = ['widths', 'cutLength', 'yardage'];
    const all = this.tally(
      `yards ${places}`,
      [widths, cut, yards, many],
      near((row) => widths(row) * many(row)),
    );
    if (hold(all, 0.6, 0, keys)) {
      if (on.has('quantity') && this.varies(many)) per.set('yardage', per.get('yardage') ?? 'row');
      return;
    }
    const apiece = this.tally(`yards apiece ${places}`, [widths, cut, yards], near(widths));
    if (hold(apiece, 0.5, 0, keys)) {
      if (on.has('quantity')) per.set('yardage', per.get('yardage') ?? 'window');
      return;
    }
    const panels = this.tally(
      `yards panels ${places}`,
      [widths, cut, yards],
      near((row) => widths(row) * many(row) * this.panels(row)),
    );
    if (hold(panels, 0.4, 0, ['cutLength', 'yardage'])) per.set('widths', 'panel');
    else hold(all, 0, 0.3, ['cutLength', 'yardage']);
  }

  /** Without a cut: what each width takes is its drop and a little more, a repeat at the most. */
  private yardsOfDrops(on: Assigned, { widths, yards, many, places }: Cloth, per: Pers, hold: Hold): void {
    const drop = this.inches(on.get('finishedDrop'));
    const repeat: Get = this.inches(on.get('verticalRepeat')) ?? (() => 0);
    if (drop === undefined) return;
    const whole = inchesOfCloth(this.metric);
    const like =
      (count: Get): ((row: number) => boolean) =>
      (row) => {
        const apiece = (yards(row) * whole) / count(row) - drop(row);
        return apiece >= 0.5 && apiece <= 34 + (repeat(row) || 0) + whole / count(row);
      };
    const all = this.tally(
      `like yards ${places}`,
      [widths, yards, drop, many],
      like((row) => widths(row) * many(row)),
    );
    const apiece = this.tally(`like yards apiece ${places}`, [widths, yards, drop], like(widths));
    if (this.varies(many) && apiece.share > all.share + 0.25 && apiece.share > 0.8) {
      per.set('yardage', per.get('yardage') ?? 'window');
      hold(apiece, 0.15, 0, []);
    } else hold(all, 0.2, 0.1, []);
  }

  private varies(figure: Get): boolean {
    return this.rows.some((row) => figure(row) > 1);
  }

  /** Whether a finished width is of a panel or of the pair, and whether the cloth is enough for the rod. */
  private finished(on: Assigned, per: Pers, hold: Hold): void {
    const [widthsAt, boltAt] = [on.get('widths'), on.get('fabricWidth')];
    const [finishedAt, rodAt] = [on.get('finishedWidth'), on.get('rodWidth') ?? on.get('openingWidth')];
    const [widths, bolt] = [this.figures(widthsAt), this.inches(boltAt)];
    const [finished, rod] = [this.inches(finishedAt), this.inches(rodAt)];
    const flat: Get | undefined = widths && bolt && ((row) => widths(row) * bolt(row));
    if (finished !== undefined && rod !== undefined)
      this.finishedOfRod(finished, rod, `${finishedAt} ${rodAt}`, per, hold);
    else if (finished !== undefined && flat !== undefined) {
      const halved = this.tally(
        `half ${finishedAt} ${widthsAt} ${boltAt}`,
        [finished, flat, this.two],
        (row) => flat(row) / finished(row) > 4.2,
      );
      if (isPlain(halved)) per.set('finishedWidth', 'panel');
    }
    if (flat !== undefined && rod !== undefined) {
      const enough = this.tally(`full ${widthsAt} ${boltAt} ${rodAt}`, [flat, rod], (row) => {
        const full = flat(row) / rod(row);
        return full >= 1.1 && full <= 4.2;
      });
      hold(enough, 0.12, 0.2, []);
    }
  }

  private finishedOfRod(finished: Get, rod: Get, places: string, per: Pers, hold: Hold): void {
    const pair = this.tally(
      `pair ${places}`,
      [finished, rod],
      (row) => finished(row) >= rod(row) - 0.1 && finished(row) <= rod(row) + 30,
    );
    const panel = this.tally(
      `panel ${places}`,
      [finished, rod, this.two],
      (row) => finished(row) >= rod(row) / 2 - 0.1 && finished(row) <= rod(row) / 2 + 16,
    );
    if (isPlain(pair)) {
      hold(pair, 0.2, 0, []);
      per.set('finishedWidth', 'pair');
    } else if (isPlain(panel)) {
      hold(panel, 0.2, 0, []);
      per.set('finishedWidth', 'panel');
    } else hold({ rows: pair.rows, share: Math.max(pair.share, panel.share) }, 0, 0.15, []);
  }

  /** 1 where a row has two panels, so that a tally takes no other rows. */
  private readonly two: Get = (row) => (this.panels(row) === 2 ? 1 : NaN);

  /** Total = the sum of some of the money beside it. */
  private totals(on: Assigned, hold: Hold): void {
    this.sums(on, 'total', MONEY_OF_LINE, hold);
    this.sums(on, 'net', MONEY_OF_LINE.slice(0, -1), hold);
  }

  /** Whether money is the sum of some of the money beside it. */
  private sums(on: Assigned, whole: 'total' | 'net', members: readonly MeaningKey[], hold: Hold): void {
    const totalAt = on.get(whole);
    const total = this.figures(totalAt);
    if (total === undefined) return;
    const parts = members.filter((key) => on.has(key));
    const held = parts.map((key) => this.figures(on.get(key)) as Get);
    let best: Tally = { rows: 0, share: 0 };
    let chosenOf: readonly MeaningKey[] = [];
    for (let set = 1; set < 1 << parts.length; set++) {
      const chosen = parts.filter((_, at) => (set & (1 << at)) !== 0);
      if (chosen.length < 2) continue;
      const gets = held.filter((_, at) => (set & (1 << at)) !== 0);
      const sum = this.tally(
        `total ${totalAt} ${chosen.map((key) => on.get(key)).join(' ')}`,
        [total],
        (row) => Math.abs(total(row) - gets.reduce((all, get) => all + (get(row) || 0), 0)) <= CENT,
      );
      if (sum.share > best.share || (sum.share === best.share && chosen.length > chosenOf.length))
        [best, chosenOf] = [sum, chosen];
    }
    if (best.rows >= 2) hold(best, 0.25 + 0.12 * chosenOf.length, 0, [whole, ...chosenOf]);
  }

  /** Labor and lining money are so much for each width, panel or yard. */
  private labor(on: Assigned, hold: Hold): void {
    const labor = this.figures(on.get('labor'));
    const rate = this.figures(on.get('rate'));
    const widths = this.figures(on.get('widths'));
    const many: Get = this.many(on);
    if (labor === undefined || rate === undefined) return;
    hold(
      this.tally(
        `labor ${on.get('labor')} ${on.get('rate')} ${on.get('widths')} ${on.get('quantity')}`,
        [labor, rate],
        (row) =>
          [
            (widths?.(row) ?? NaN) * many(row),
            (widths?.(row) ?? NaN) * many(row) * this.panels(row),
            this.panels(row) * many(row),
            many(row),
          ].some((count) => Math.abs(rate(row) * count - labor(row)) <= CENT),
      ),
      0.3,
      0,
      ['labor'],
    );
  }

  /** Widths of one panel, of a window, and of all the windows of the row. */
  private widths(on: Assigned, hold: Hold): void {
    const [widths, one, all] = [
      this.figures(on.get('widths')),
      this.figures(on.get('widthsOfOne')),
      this.figures(on.get('widthsOfAll')),
    ];
    if (widths === undefined) return;
    const laws: readonly (readonly [MeaningKey, Get | undefined, Get, Get])[] = [
      ['widthsOfAll', all, widths, this.many(on)],
      ['widthsOfOne', widths, one ?? widths, this.figures(on.get('panels')) ?? this.panels],
    ];
    for (const [key, product, apiece, count] of laws)
      if (product !== undefined && on.has(key) && this.varies(count))
        hold(
          this.tally(
            `${key} ${on.get(key)} ${on.get('widths')} ${on.get('quantity')} ${on.get('panels')}`,
            [product, apiece, count],
            (row) =>
              [1, this.panels(row)].some(
                (pieces) => Math.abs(product(row) - apiece(row) * count(row) * pieces) < 1e-6,
              ),
          ),
          0.4,
          0.3,
          ['widths'],
        );
  }

  private each(on: Assigned, hold: Hold): void {
    const [each, yards, many] = [
      this.figures(on.get('yardsEach')),
      this.figures(on.get('yardage')),
      this.figures(on.get('quantity')),
    ];
    if (each === undefined || yards === undefined || many === undefined) return;
    hold(
      this.tally(
        `each ${on.get('yardsEach')} ${on.get('yardage')} ${on.get('quantity')}`,
        [each, yards, many],
        (row) => Math.abs(each(row) * many(row) - yards(row)) < 0.02,
      ),
      0.4,
      0,
      ['yardage', 'quantity'],
    );
  }

  /** A count that follows the draw row by row counts panels, not windows. */
  private pieces(on: Assigned, hold: Hold): void {
    const [panelsAt, quantityAt] = [on.get('panels'), on.get('quantity')];
    for (const [at, key] of [
      [panelsAt, 'panels'],
      [quantityAt, 'quantity'],
    ] as const) {
      const count = this.figures(at);
      if (count === undefined || !this.rows.some((row) => this.drawn(row) === 1 && count(row) === 1))
        continue;
      const follows = this.tally(
        `pieces ${at}`,
        [count, this.drawn],
        (row) => count(row) === this.drawn(row),
      );
      if (follows.rows < 4 || follows.share < 1 || !this.varies(count)) continue;
      hold(key === 'panels' ? follows : { ...follows, share: 0 }, 0.3, 0.3, []);
    }
  }

  /** What a lining’s yards are for, by the money they make at one price. */
  liningPer(on: Assigned): Per | 'row' | undefined {
    const [yards, amount] = [this.figures(on.get('liningYardage')), this.figures(on.get('liningAmount'))];
    const many = this.figures(on.get('quantity'));
    if (yards === undefined || amount === undefined || many === undefined || !this.varies(many))
      return undefined;
    const steady = (count: Get): boolean => {
      const prices = this.rows
        .map((row) => amount(row) / count(row))
        .filter((price) => Number.isFinite(price) && price > 0);
      const middle = [...prices].sort((a, b) => a - b)[prices.length >> 1] ?? 0;
      return (
        prices.length >= 3 &&
        prices.filter((price) => Math.abs(price - middle) <= middle * 0.004).length >= prices.length * 0.8
      );
    };
    if (steady(yards)) return 'row';
    return steady((row) => yards(row) * many(row)) ? 'window' : undefined;
  }
}

type Hold = (tally: Tally, most: number, less: number, keys: readonly MeaningKey[]) => boolean;
