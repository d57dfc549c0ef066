/** A house: its rules as exact figures, and the same rules as the range that a cell would hand over. */
import { lengthCell, ratioCell, type Cell, type Range, type Unit } from './cells';
import type { Chance } from './chance';
import { centimetres, exact, inches, type Exact } from './figures';
import { HEADINGS, type Heading } from './words';

/** Lengths of the rules in inches: the default first, then others that a house may have. */
const LENGTHS = {
  return: ['3.5', '0', '3', '4', '6', '3.125'],
  overlap: ['3', '0', '2', '2.5', '3.5', '1.75'],
  'overlap on rings': ['0', '1.5', '3'],
  'return past projection': ['0.5', '0.25', '1'],
  'side hem': ['3', '0', '1.5', '2', '4'],
  seam: ['1', '0', '0.5', '1.25'],
  'usual fabric width': ['54', '48', '60'],
  selvage: ['0', '0.5', '0.75', '1'],
  'bottom allowance': ['8', '4', '6', '10', '0'],
  'pocket take up': ['0', '0.5', '1'],
  'lining shorter': ['1', '0', '0.5', '1.5'],
  'lining top': ['4', '0', '1', '2.5'],
  'lining bottom': ['4', '2', '3', '6'],
  'lining less': ['10', '4', '8', '6.5'],
  'lining margin leading': ['2', '0', '1.5', '3'],
  'lining margin outer': ['1', '0', '0.5', '3'],
  'interlining shorter': ['0', '0.5', '1'],
  'interlining top': ['4', '0', '2'],
  'interlining bottom': ['0', '2', '4'],
  'take up': ['5', '4', '4.5', '6'],
  'take up low': ['4', '3.5'],
  'take up high': ['8', '6.5', '7'],
  'take up most': ['9', '10'],
  'space low': ['3', '3.5'],
  'space high': ['5', '4', '4.5'],
  'space least': ['2.5', '2'],
  'pleat space': ['4', '3.5', '4.25'],
  'pleats counted on': ['54', '48', '60'],
  'box face': ['2', '1.5', '3', '4'],
  underfold: ['1', '1.5', '2'],
  'grommet spacing': ['6', '5', '6.5', '7.25', '4'],
  'snap spacing': ['4.25', '3.125', '4', '5.5'],
  'hook spacing': ['3', '2.5', '4'],
  'ring spacing': ['6', '4', '5', '7.5'],
  'rod around': ['3.125', '2', '4.5', '6.25'],
  'pocket ease': ['0.625', '0.5', '1'],
  'rod diameter': ['1', '1.125', '1.375', '2'],
  'bracket span light': ['48', '40', '44'],
  'bracket span heavy': ['36', '24', '30'],
  'extension small up to': ['44', '40', '48'],
  'extension small low': ['6', '5', '8'],
  'extension small high': ['10', '9', '12'],
  'extension medium up to': ['96', '90', '100'],
  'extension medium low': ['11', '10', '12.5'],
  'extension medium high': ['15', '14', '16'],
  'extension large low': ['16', '17', '18'],
  'extension large high': ['20', '22', '24'],
  'rod above opening': ['10', '11', '12', '6'],
  'ceiling clearance grommet': ['2.5', '3', '4'],
  'ceiling clearance': ['1', '2', '0.5'],
  'floor clearance': ['0.5', '1', '0.25'],
  'pocket header': ['0', '1', '2'],
  'tab drop': ['2', '3', '2.5'],
  'track to top': ['0.5', '0.25', '1'],
  'track height': ['1', '1.5', '0.75'],
  'floor clear': ['0'],
  'floor kiss': ['0.5', '0.75'],
  'floor break': ['1.5', '1', '2'],
  'floor puddle': ['6', '8', '12'],
  'sill clearance': ['0.5', '0.25', '1', '0'],
  'apron below sill': ['4', '5', '6', '3.5'],
  'counter clearance': ['0.5', '1', '0.75'],
  // The maker's: no default.
  'radiator clearance': ['4', '6', '12', '2.5'],
  'sheer bottom allowance': ['10', '8', '6', '4'],
  'sheer shorter': ['0.5', '1', '0.25', '0'],
  'labor height from': ['108', '96', '120'],
} as const;
export type LengthRule = keyof typeof LENGTHS | `top allowance ${Heading}`;

const TOPS: Readonly<Record<Heading, string>> = {
  pinch: '8',
  goblet: '8',
  cartridge: '8',
  box: '8',
  inverted: '8',
  pencil: '4',
  'rod pocket': '6',
  'tab top': '4',
  grommet: '8',
  wave: '4',
  flat: '4',
};

const FULLNESSES: Readonly<Record<Heading, string>> = {
  pinch: '2.5',
  goblet: '2.5',
  cartridge: '2.5',
  box: '2.5',
  inverted: '2.5',
  pencil: '2.5',
  'rod pocket': '2.5',
  'tab top': '2',
  grommet: '2',
  wave: '2',
  flat: '1.5',
};

const STACKS: Readonly<Record<Heading, string>> = {
  pinch: '0.33',
  goblet: '0.33',
  cartridge: '0.33',
  box: '0.33',
  inverted: '0.33',
  pencil: '0.33',
  'rod pocket': '0.5',
  'tab top': '0.4',
  grommet: '0.25',
  wave: '0.2',
  flat: '0.25',
};

const RATIOS = {
  shrinkage: ['0', '0.01', '0.03', '0.025', '0.04'],
  'lining shrinkage': ['0', '0.02', '0.03', '0.015'],
  'sheer fullness': ['3', '2.5', '2', '3.5'],
  'stack lined': ['1.1', '1', '1.2', '1.05'],
  'stack interlined': ['1.25', '1.2', '1.4'],
} as const;
export type RatioRule = keyof typeof RATIOS | `fullness ${Heading}` | `stack share ${Heading}`;

const WORDS = {
  'hang on': ['rings', 'track'],
  'one way returns': ['both ends', 'one end'],
  'fullness basis': ['finished width', 'rod width'],
  'widths rounding': ['whole per pair', 'whole per panel', 'half per panel', 'nearest'],
  'repeat rule': ['every cut up', 'first cut exact', 'one repeat each', 'one repeat with every length'],
  'pattern start': ['nothing', 'one repeat', 'one yard'],
  'half drop starts': ['each panel alike', 'run on'],
  'half width charged': ['as a half', 'as a whole'],
  'lining cut': ['own allowances', 'less than face'],
  'bottom edge': ['hemmed', 'finished'],
  'interlining cut': ['as the face', 'as the lining', 'own allowances'],
  'yardage rounded by': ['order', 'window'],
  'share half widths': ['no', 'yes'],
  'pleats by': ['width', 'space', 'take-up'],
} as const;
export type WordRule = keyof typeof WORDS;

/** From this weight a drapery is heavy, in pounds or kilograms. */
const HEAVY = ['20', '16', '25.5'];

/** Counts: the default first. */
const COUNTS = {
  'stationary widths': ['1', '1.5', '2'],
  'pleats a width': ['5', '4'],
} as const;
export type CountRule = keyof typeof COUNTS;

const STEPS = { inches: ['0.125', '0.25', '0.5', '1', '0'], centimetres: ['0.1', '0.05', '0.5', '1', '0'] };

export interface House {
  readonly unit: Unit;
  readonly lengths: Readonly<Record<LengthRule, Exact>>;
  readonly ratios: Readonly<Record<RatioRule, Exact>>;
  readonly counts: Readonly<Record<CountRule, Exact>>;
  readonly words: { readonly [R in WordRule]: (typeof WORDS)[R][number] };
  /** Of yards or metres; 0 leaves the cloth as it is. */
  readonly step: Exact;
  readonly heavyFrom: Exact;
  /** Where the first grommet stands; undefined is half the spacing. */
  readonly grommetEdge: Exact | undefined;
  /** Where the first pleat stands; undefined is the overlap. */
  readonly pleatEdge: Exact | undefined;
  /** The range of rules; undefined is the house of the defaults. */
  readonly rows: Range | undefined;
}

const entries = <K extends string, V>(record: Readonly<Record<K, V>>): readonly (readonly [K, V])[] =>
  Object.entries(record) as [K, V][];

const lengthLists = (): readonly (readonly [LengthRule, readonly string[]])[] => [
  ...entries(LENGTHS),
  ...HEADINGS.map((heading): [LengthRule, string[]] => [
    `top allowance ${heading}`,
    [TOPS[heading], '3', '6.5', '10', '4'],
  ]),
];
const ratioLists = (): readonly (readonly [RatioRule, readonly string[]])[] => [
  ...entries(RATIOS),
  ...HEADINGS.map((heading): [RatioRule, string[]] => [
    `fullness ${heading}`,
    [FULLNESSES[heading], '2', '2.25', '3', '1.8'],
  ]),
  ...HEADINGS.map((heading): [RatioRule, string[]] => [
    `stack share ${heading}`,
    [STACKS[heading], '0.2', '0.3', '0.15'],
  ]),
];

type Chosen<T> = (rule: string, list: readonly T[]) => T;

/** Metric houses keep whole millimetres: nothing is converted there and back. */
const metric = (figure: string): Exact => centimetres(exact(figure).mul(25).round().div(10).toFraction());

function figuresOf(
  unit: Unit,
  chosen: Chosen<string>,
): Pick<House, 'lengths' | 'ratios' | 'counts' | 'words' | 'step' | 'heavyFrom'> {
  const length = unit === 'inches' ? inches : metric;
  return {
    lengths: Object.fromEntries(
      lengthLists().map(([rule, list]) => [rule, length(chosen(rule, list))]),
    ) as House['lengths'],
    ratios: Object.fromEntries(
      ratioLists().map(([rule, list]) => [rule, exact(chosen(rule, list))]),
    ) as House['ratios'],
    counts: Object.fromEntries(
      entries(COUNTS).map(([rule, list]) => [rule, exact(chosen(rule, list))]),
    ) as House['counts'],
    words: Object.fromEntries(
      entries(WORDS).map(([rule, list]) => [rule, chosen(rule, list)]),
    ) as House['words'],
    step: exact(chosen('yardage step', STEPS[unit])),
    heavyFrom: exact(chosen('heavy from', HEAVY)),
  };
}

/** The house that has set nothing. */
export const STANDARD: House = {
  unit: 'inches',
  ...figuresOf('inches', (rule, list) => {
    const first = list[0];
    if (first === undefined) throw new Error(`${rule} has no default`);
    return first;
  }),
  grommetEdge: undefined,
  pleatEdge: undefined,
  rows: undefined,
};

/** Each choice of these comes in turn, so that a few houses already have them all. */
const IN_TURN: Readonly<Record<string, (at: number) => number>> = {
  'repeat rule': (at) => at,
  'half drop starts': (at) => Math.floor(at / 4),
  'widths rounding': (at) => at + Math.floor(at / 4),
  'pattern start': (at) => at,
  'pleats by': (at) => at,
  'hang on': (at) => Math.floor(at / 2),
};

/** A house that has set every rule, often to the default. */
export function anyHouse(at: number, chance: Chance): House {
  const unit: Unit = chance.inHundred(65) ? 'inches' : 'centimetres';
  const length = unit === 'inches' ? inches : metric;
  const figures = figuresOf(unit, (rule, list) => {
    const turn = IN_TURN[rule];
    if (turn !== undefined) return list[turn(at) % list.length] ?? '';
    return rule in WORDS || chance.inHundred(60) ? chance.pick(list) : (list[0] ?? '');
  });
  const edge = (list: readonly string[]): Exact | undefined =>
    chance.inHundred(70) ? undefined : length(chance.pick(list));
  const grommetEdge = edge(['2', '1.5', '3']);
  const pleatEdge = edge(['2', '3', '3.5']);
  const rows: (readonly Cell[])[] = [
    ['unit', unit],
    ...entries(figures.lengths).map(([rule, figure]) => [rule, lengthCell(figure, unit, chance)]),
    ...entries(figures.ratios).map(([rule, figure]) => [rule, ratioCell(figure, chance)]),
    ...entries(figures.counts).map(([rule, figure]) => [rule, figure.valueOf()]),
    ...entries(figures.words).map(([rule, word]) => [rule, word]),
    ['yardage step', figures.step.valueOf()],
    ['heavy from', figures.heavyFrom.valueOf()],
    ['grommet edge', grommetEdge === undefined ? '' : lengthCell(grommetEdge, unit, chance)],
    ['edge to first pleat', pleatEdge === undefined ? '' : lengthCell(pleatEdge, unit, chance)],
  ];
  return { unit, ...figures, grommetEdge, pleatEdge, rows };
}
