/**
 * Orders of an invented workroom: true ones, reckoned from what was measured, and the same with
 * mistakes of one kind at known rows. The audit is measured against them.
 */
import { showDay } from '../core/cell/day';
import { isBlank } from '../core/cell/fields';
import { WindowWork } from '../core/window/job';
import { exact, toUnit, type Length } from '../core/exact/length';
import type { Window } from '../core/window/columns';
import { money } from '../core/exact/money';
import { readHouse, type House } from '../core/house/house';
import type { Rules } from '../core/house/rules';
import { overlapOf } from '../core/cloth/hung';
import { ratio } from '../core/exact/ratio';
import type { Draw, Heading, Lining } from '../core/cell/treatment';
import type { Unit } from '../core/exact/unit';

export type Chance = () => number;

/** Mulberry32: the same seed, the same orders. */
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const pick = <T>(chance: Chance, list: readonly T[]): T => list[Math.floor(chance() * list.length)] as T;
const between = (chance: Chance, low: number, high: number, step: number): number =>
  low + Math.floor(chance() * ((high - low) / step + 1)) * step;

export type Cell = number | string;
export type OrderRow = Record<string, Cell>;

export const HEADINGS_OF_ORDERS = [
  'customer',
  'job',
  'room',
  'order no',
  'date',
  'inside width',
  'left extension',
  'right extension',
  'rod width',
  'measured height',
  'heading',
  'finished drop',
  'draw',
  'return',
  'overlap',
  'fullness',
  'fabric',
  'fabric width',
  'vertical repeat',
  'horizontal repeat',
  'lining',
  'lining width',
  'quantity',
  'finished width',
  'widths',
  'cut length',
  'yardage',
  'lining yardage',
  'heading marks',
  'rings',
  'brackets',
  'unit price',
  'amount',
  'hardware',
  'installation',
  'tax',
  'total',
  'deposit',
  'public job',
  'flame certificate',
  'drawn by',
  'children',
  'child safe',
  'railroaded',
  'clear of glass',
] as const;

/** House rules as no other house has them. */
export function someRules(chance: Chance, unit: 'inches' | 'centimetres'): (readonly [string, Cell])[] {
  const inch = unit === 'inches';
  return [
    ['unit', unit],
    ['widths rounding', pick(chance, ['whole per panel', 'half per panel', 'whole per pair', 'nearest'])],
    ['fullness basis', pick(chance, ['finished width', 'rod width'])],
    ['repeat rule', pick(chance, ['every cut up', 'first cut exact', 'one repeat each'])],
    ['bottom allowance', pick(chance, inch ? [6, 8, 10] : [15, 20, 25])],
    ['top allowance pinch', pick(chance, inch ? [6, 8] : [15, 20])],
    ['return', pick(chance, inch ? [3.5, 4, 6] : [9, 10, 15])],
    ['overlap', pick(chance, inch ? [2, 3] : [5, 7.5])],
    ['overlap on rings', pick(chance, inch ? [1, 2] : [2.5, 5])],
    ['side hem', pick(chance, inch ? [1.5, 3] : [4, 7.5])],
    ['yardage step', pick(chance, inch ? [0.125, 0.25, 0.5, 1] : [0.1, 0.5])],
    ['yardage rounded by', pick(chance, ['order', 'window'])],
    ['one way returns', pick(chance, ['both ends', 'one end'])],
  ];
}

const FABRICS = ['Marl wool', 'Reed linen', 'Harbour velvet', 'Chalk cotton', 'Fern print', 'Oat bouclé'];
const PRICES = [38, 24.5, 62, 18.75, 31.2, 44];
/** The list the invented house sells by: one fabric's price rose on the first day of 2025. */
export const PRICE_LIST: readonly (readonly Cell[])[] = [
  ['fabric', 'price', 'from'],
  ...FABRICS.map((fabric, at) => [fabric, PRICES[at] as number, '2023-01-01']),
  ['Reed linen', 27, '2025-01-01'],
];
const DAY_OF_RISE = 45_658;
const priceOf = (at: number, day: number): number =>
  FABRICS[at] === 'Reed linen' && day >= DAY_OF_RISE ? 27 : (PRICES[at] as number);

const cell = (figure: number, unit: Unit['small'] | Unit['large']): number =>
  Number(toUnit(figure, unit).toPrecision(12));

interface Drawn {
  readonly window: Window;
  readonly railroaded: boolean;
}

/** The ordered figures of a window as the house would write them. */
export function figuresOf({ window, railroaded }: Drawn, { rules, unit }: House): OrderRow {
  const work = new WindowWork({ ...window, rodWidth: undefined, finishedDrop: undefined }, rules);
  const small = (figure: number): number => cell(figure, unit.small);
  const large = (figure: number): number => cell(figure, unit.large);
  return {
    'rod width': small(work.rodWidth().value),
    'finished drop': small(work.finishedDrop().value),
    'finished width': small(work.finishedWidth().value),
    widths: work.widths(),
    'cut length': small(work.cutLength().value),
    yardage: large(railroaded ? work.railroaded().value : work.cloth().yardage),
    'lining yardage': work.isLined ? large(work.liningYardage().value) : '',
    'heading marks': work.marks().value || '',
    rings: work.rings().value,
    brackets: work.brackets().value,
  };
}

/** Amount, tax, total and deposit from the yardage and the price. */
export function addUp(row: OrderRow): void {
  const amount = money(Number(row['yardage'])).times(Number(row['unit price'])).toDecimalPlaces(2);
  const parts = amount.plus(Number(row['hardware'])).plus(Number(row['installation']));
  const tax = parts.times(0.0725).toDecimalPlaces(2);
  row['amount'] = amount.toNumber();
  row['tax'] = tax.toNumber();
  row['total'] = parts.plus(tax).toNumber();
  row['deposit'] = parts.plus(tax).div(2).toDecimalPlaces(2).toNumber();
}

interface JobPlan {
  readonly customer: string;
  readonly job: string;
  readonly order: string;
  readonly day: number;
  readonly isPublic: boolean;
  readonly heights: readonly number[];
  readonly fabrics: readonly number[];
  readonly heading: Heading | undefined;
}

const HEADS: readonly Heading[] = [
  'pinch',
  'goblet',
  'box',
  'pencil',
  'rod pocket',
  'grommet',
  'wave',
  'flat',
];

function planJob(chance: Chance, at: number, inch: boolean): JobPlan {
  const high = (): number => (inch ? between(chance, 80, 124, 0.5) : between(chance, 205, 315, 1));
  const kind = chance();
  // One height throughout, two storeys, or a house where every window differs.
  const heights = Array.from({ length: kind < 0.4 ? 1 : kind < 0.6 ? 2 : 40 }, high);
  return {
    customer: `Client ${Math.floor(at / 3) + 1}`,
    job: `Job ${at + 1}`,
    order: `H-${1000 + at}`,
    day: between(chance, 45_300, 46_000, 1),
    isPublic: chance() < 0.3,
    heights,
    fabrics: [Math.floor(chance() * 6), Math.floor(chance() * 6)],
    heading: kind < 0.4 ? pick(chance, HEADS) : undefined,
  };
}

function drawWindow(chance: Chance, plan: JobPlan, inch: boolean, rules: Rules): Drawn {
  const to = (figure: number): Length => exact(Math.round(figure * (inch ? 25_400_000 : 10_000_000)));
  const heading = plan.heading ?? pick(chance, HEADS);
  const width = inch ? between(chance, 28, 150, 0.5) : between(chance, 70, 380, 1);
  const low = { 44: [6, 10], 96: [11, 15], 999: [16, 20] } as const;
  const inches = inch ? width : width / 2.54;
  const band = low[inches <= 44 ? 44 : inches <= 96 ? 96 : 999];
  const extend = (): number =>
    inch
      ? between(chance, band[0], band[1], 0.5)
      : between(chance, Math.ceil(band[0] * 2.54), Math.floor(band[1] * 2.54), 1);
  const draw: Draw = chance() < 0.7 ? 'pair' : pick(chance, ['one-way left', 'one-way right'] as const);
  const patterned = chance() < 0.5;
  const lining: Lining = pick(chance, ['unlined', 'lined', 'blackout'] as const);
  const wave = heading === 'wave';
  const turned = chance() < 0.06 && !patterned;
  const window: Window = {
    openingWidth: to(width),
    leftExtension: to(extend()),
    rightExtension: to(extend()),
    measured: to(pick(chance, plan.heights)),
    heading,
    draw,
    return: rules.return,
    overlap: draw === 'pair' ? overlapOf({ heading, draw }, rules) : undefined,
    fullness: ratio(wave ? 2 : heading === 'flat' ? 1.5 : pick(chance, [2, 2.25, 2.5, 3])),
    fabricWidth: to(
      turned ? (inch ? 126 : 320) : pick(chance, inch ? [48, 54, 56, 60] : [120, 137, 140, 150]),
    ),
    verticalRepeat: patterned
      ? to(inch ? between(chance, 9, 27, 0.25) : between(chance, 24, 68, 1))
      : undefined,
    horizontalRepeat: patterned
      ? to(pick(chance, inch ? [13.5, 18, 27, 6.75] : [34, 46, 68, 17]))
      : undefined,
    lining,
    liningWidth: lining === 'unlined' ? undefined : to(inch ? 54 : 137),
    quantity: chance() < 0.3 ? between(chance, 2, 24, 1) : 1,
  };
  const work = new WindowWork(window, rules);
  const fits = (work.finishedDrop().value as number) + (inch ? 20 : 50) * (inch ? 25_400_000 : 10_000_000);
  return { window, railroaded: turned && fits < (window.fabricWidth as number) };
}

export interface Made {
  readonly row: OrderRow;
  readonly drawn: Drawn;
}

/** So many true orders, in jobs of 4 to 30 rows. */
export function trueOrders(count: number, house: House, chance: Chance): Made[] {
  const { unit, rules } = house;
  const inch = unit.name === 'inches';
  const made: Made[] = [];
  for (let job = 0; made.length < count; job++) {
    const plan = planJob(chance, job, inch);
    const rows = Math.min(between(chance, 4, 30, 1), count - made.length);
    for (let at = 0; at < rows; at++) {
      const drawn = drawWindow(chance, plan, inch, rules);
      const { window } = drawn;
      const small = (length: Length | undefined): Cell =>
        length === undefined ? '' : cell(length, unit.small);
      const fabric = pick(chance, plan.fabrics);
      const children = chance() < 0.3 ? 'yes' : 'no';
      const drawnBy = pick(chance, ['cord', 'wand', 'hand', 'motor']);
      const row: OrderRow = {
        customer: plan.customer,
        job: plan.job,
        room: `${101 + at}`,
        'order no': plan.order,
        date: showDay(plan.day),
        'inside width': small(window.openingWidth),
        'left extension': small(window.leftExtension),
        'right extension': small(window.rightExtension),
        'measured height': small(window.measured),
        heading: window.heading as string,
        draw: window.draw as string,
        return: small(window.return),
        overlap: small(window.overlap),
        fullness: (window.fullness as number) / 10_000,
        fabric: FABRICS[fabric] as string,
        'fabric width': small(window.fabricWidth),
        'vertical repeat': small(window.verticalRepeat),
        'horizontal repeat': small(window.horizontalRepeat),
        lining: window.lining as string,
        'lining width': small(window.liningWidth),
        quantity: window.quantity as number,
        ...figuresOf(drawn, house),
        'unit price': priceOf(fabric, plan.day),
        hardware: between(chance, 40, 400, 0.25),
        installation: between(chance, 0, 250, 5),
        'public job': plan.isPublic ? 'yes' : 'no',
        'flame certificate': plan.isPublic ? `lot ${between(chance, 100, 999, 1)}` : '',
        'drawn by': drawnBy,
        children,
        'child safe': children === 'yes' && drawnBy === 'cord' ? 'yes' : '',
        railroaded: drawn.railroaded ? 'yes' : '',
        'clear of glass': '',
      };
      addUp(row);
      made.push({ row, drawn });
    }
  }
  return made;
}

export const rowCells = (row: OrderRow, headings: readonly string[] = HEADINGS_OF_ORDERS): Cell[] =>
  headings.map((heading) => (isBlank(row[heading]) ? '' : (row[heading] as Cell)));

export const houseOf = (rules: readonly (readonly [string, Cell])[]): House => readHouse(rules);
