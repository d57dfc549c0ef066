/**
 * The house rules: each with its default, its kind (and so its unit), its words and its source.
 * A rules range in the workbook overrides them by name; without one, these stand.
 */
import { finding, type Finding } from './answer';
import {
  ALLOWANCE,
  AREAL_WEIGHT,
  choiceKind,
  FULLNESS,
  isBlank,
  listKind,
  oneCell,
  PRICE,
  PROPORTION,
  RATE,
  readBack,
  rowsOf,
  SHARE,
  SHIFT,
  SIZE,
  WEIGHT,
  YARD_STEP,
  type CellIn,
  type Kind,
} from './fields';
import { inches, UNITS, type Length } from './length';
import { ratio } from './ratio';
import { money, type Money, type Rounding } from './money';
import { bare, choices, HEADINGS, type Heading } from './treatment';
import { CENTIMETRES, INCHES, type Unit, type UnitName } from './unit';

export interface Rule<T> {
  readonly kind: Kind<T>;
  readonly standard: T | ((unit: Unit) => T);
  readonly says: string;
  readonly source: string;
}
/** A rule without a default: only the workroom can say, as with a price. */
export interface OwnRule<T> {
  readonly ownKind: Kind<T>;
  readonly says: string;
  readonly source: string;
}
/** One rule a heading: “fullness pinch”, “fullness wave” … */
export interface HeadingRule<T> {
  readonly each: Readonly<Record<Heading, T | undefined>>;
  readonly kind: Kind<T>;
  readonly says: string;
  readonly source: string;
}

const COMMON = 'common practice, no source';
const HOUSE = 'house default, no source';
const YOURS = 'no default: your own figure';
const UFGS = 'UFGS 12 22 00 (2010)';
const BOOKLET = 'How to Make Draperies (1960), Project Gutenberg #63282';
const STEPHENSON = 'J. W. Stephenson, Cutting and Draping (1905), Project Gutenberg #70586';

const rule = <T>(
  kind: Kind<T>,
  standard: T | ((unit: Unit) => T),
  says: string,
  source: string,
): Rule<T> => ({ kind, standard, says, source });
const own = <T>(ownKind: Kind<T>, says: string, source = YOURS): OwnRule<T> => ({ ownKind, says, source });

const heads = <T>(rest: T, some: Partial<Record<Heading, T>> = {}): Record<Heading, T> =>
  Object.fromEntries(
    HEADINGS.list.map(({ word }) => [word, word in some ? some[word as Heading] : rest]),
  ) as Record<Heading, T>;
const each = <T>(kind: Kind<T>, of: Record<Heading, T>, says: string, source: string): HeadingRule<T> => ({
  kind,
  each: of,
  says,
  source,
});
const ownEach = <T>(kind: Kind<T>, says: string): HeadingRule<T | undefined> =>
  each(kind as Kind<T | undefined>, heads<T | undefined>(undefined), says, YOURS);

const UNIT_NAMES = choices<UnitName>(
  { word: 'inches', says: 'inches and yards', also: ['inch', 'in', 'imperial'] },
  {
    word: 'centimetres',
    says: 'centimetres and metres',
    also: ['centimetre', 'centimeter', 'centimeters', 'cm', 'metric'],
  },
);

export type YesNo = 'yes' | 'no';
const YES_NO = choices<YesNo>(
  { word: 'yes', says: 'yes', also: ['true', 'y'] },
  { word: 'no', says: 'no', also: ['false', 'n'] },
);

export type WidthsRounding = 'whole per panel' | 'half per panel' | 'whole per pair' | 'nearest';
const WIDTHS_ROUNDINGS = choices<WidthsRounding>(
  {
    word: 'whole per panel',
    says: 'each panel up to whole widths',
    also: ['up to whole per panel', 'up to whole'],
  },
  {
    word: 'half per panel',
    says: 'each panel up to half widths',
    also: ['up to half per panel', 'up to half'],
  },
  {
    word: 'whole per pair',
    says: 'the treatment up to whole widths, shared by its panels',
    also: ['up to whole per pair'],
  },
  { word: 'nearest', says: 'the treatment to the nearest whole width, which may deliver less fullness' },
);

export type FullnessBasis = 'finished width' | 'rod width';
const FULLNESS_BASES = choices<FullnessBasis>(
  { word: 'finished width', says: 'fullness on rod, returns and overlaps' },
  {
    word: 'rod width',
    says: 'fullness on the rod alone; returns and overlaps are added flat',
    also: ['rod', 'rod alone'],
  },
);

export type RepeatRule = 'every cut up' | 'first cut exact' | 'one repeat each' | 'half-drop alternating';
export const REPEAT_RULES = choices<RepeatRule>(
  { word: 'every cut up', says: 'every cut up to the next whole repeat' },
  {
    word: 'first cut exact',
    says: 'the first cut as it is, the others up to the next whole repeat',
    also: ['first exact'],
  },
  {
    word: 'one repeat each',
    says: 'every cut as it is, and one full repeat for each further length',
    also: ['one full repeat per further length'],
  },
  {
    word: 'half-drop alternating',
    says: 'every pattern is cut as a half-drop, starts alternating',
    also: ['half drop'],
  },
);

export type HangsOn = 'rings' | 'track';
const HANGS_ON = choices<HangsOn>(
  { word: 'rings', says: 'on rings on a rod' },
  { word: 'track', says: 'on carriers in a track' },
);

export type ReturnEnds = 'both ends' | 'one end';
const RETURN_ENDS = choices<ReturnEnds>(
  { word: 'both ends', says: 'a return at each end of the rod', also: ['two', '2', 'both'] },
  { word: 'one end', says: 'a return at the stack end only', also: ['one', '1'] },
);

export type RoundedBy = 'order' | 'window';
const ROUNDED_BY = choices<RoundedBy>(
  { word: 'order', says: 'once, over all the windows of the line' },
  { word: 'window', says: 'window by window' },
);

export type LiningCut = 'own allowances' | 'less than face';
const LINING_CUTS = choices<LiningCut>(
  { word: 'own allowances', says: 'the drop, shortened, with its own top and bottom' },
  { word: 'less than face', says: 'so much less than the cut of the face fabric' },
);

export type SellBasis = 'markup on cost' | 'margin on selling price';
export const SELL_BASES = choices<SellBasis>(
  { word: 'markup on cost', says: 'cost × (1 + rate)', also: ['markup', 'mark up', 'on cost', 'cost'] },
  {
    word: 'margin on selling price',
    says: 'cost ÷ (1 − rate)',
    also: ['margin', 'on selling price', 'selling price'],
  },
);

export type TaxBasis = 'line' | 'invoice';
export const TAX_BASES = choices<TaxBasis>(
  { word: 'line', says: 'each line rounded, then added', also: ['by line', 'per line', 'item'] },
  { word: 'invoice', says: 'the sum taxed, then rounded once', also: ['by invoice', 'per invoice', 'total'] },
);

export const ROUNDING_WORDS = choices<Rounding>(
  { word: 'half up', says: 'a half cent goes up' },
  { word: 'half even', says: 'a half cent goes to the even cent' },
  { word: 'up', says: 'any part of a cent goes up' },
  { word: 'down', says: 'any part of a cent is dropped' },
);

const STOCK = listOf(SIZE, 'rod lengths, like 48, 72, 96');

/** A list written in one cell, parted by semicolons or commas with a space. */
function listOf<T>(kind: Kind<T>, noun: string): Kind<readonly T[]> {
  const inRange = listKind(kind, noun);
  return {
    noun,
    shape: 'cell',
    read(raw, place) {
      const cell = oneCell(raw, place);
      if (cell === undefined) return undefined;
      const parts = typeof cell === 'string' ? cell.split(/;|,\s/).map((one) => one.trim()) : [cell];
      return inRange.read([parts], place);
    },
    write: (value, unit) => value.map((one) => String(kind.write?.(one, unit) ?? '')).join('; '),
  };
}

const yards = (figure: number): Length => Math.round(figure * UNITS.yd) as Length;

export const RULES = {
  unit: rule(
    choiceKind('a unit', UNIT_NAMES),
    'inches' as UnitName,
    'the unit of every length in the workbook',
    HOUSE,
  ),

  // The rod over the opening
  extensionSmallUpTo: rule(SIZE, inches(44), 'an opening up to this is small', COMMON),
  extensionSmallLow: rule(ALLOWANCE, inches(6), 'side extension over a small opening, at least', COMMON),
  extensionSmallHigh: rule(ALLOWANCE, inches(10), 'side extension over a small opening, at most', COMMON),
  extensionMediumUpTo: rule(SIZE, inches(96), 'an opening up to this is medium', COMMON),
  extensionMediumLow: rule(ALLOWANCE, inches(11), 'side extension over a medium opening, at least', COMMON),
  extensionMediumHigh: rule(ALLOWANCE, inches(15), 'side extension over a medium opening, at most', COMMON),
  extensionLargeLow: rule(ALLOWANCE, inches(16), 'side extension over a large opening, at least', COMMON),
  extensionLargeHigh: rule(ALLOWANCE, inches(20), 'side extension over a large opening, at most', COMMON),
  rodAboveOpening: rule(
    ALLOWANCE,
    inches(10),
    'middle of the rod above the top of the opening',
    `${COMMON}: 10 to 12 in`,
  ),
  ceilingClearanceGrommet: rule(
    ALLOWANCE,
    inches(2.5),
    'middle of a grommet rod below the ceiling, at least',
    COMMON,
  ),
  ceilingClearance: rule(ALLOWANCE, inches(1), 'middle of any other rod below the ceiling, at least', HOUSE),

  // The drop
  dropNewRodRings: rule(
    SHIFT,
    inches(-2),
    'drop on rings, from the middle of a rod still to be hung',
    COMMON,
  ),
  dropHungRing: rule(SHIFT, inches(-0.5), 'drop on rings, from the bottom of a hung ring', COMMON),
  dropNewRodGrommet: rule(
    SHIFT,
    inches(2),
    'drop of a grommet heading, from the middle of a rod still to be hung',
    COMMON,
  ),
  dropHungRodGrommet: rule(
    SHIFT,
    inches(1.5),
    'drop of a grommet heading, from the middle of a hung rod',
    COMMON,
  ),
  floorClearance: rule(ALLOWANCE, inches(0.5), 'clearance at the floor for every other heading', COMMON),
  rodDiameter: rule(ALLOWANCE, inches(1), 'the rod, across', `${COMMON}: 1 to 1⅛ in`),
  pocketHeader: rule(ALLOWANCE, inches(0), 'ruffle that stands above a rod pocket', HOUSE),
  tabDrop: rule(ALLOWANCE, inches(2), 'middle of the rod down to the cloth of a tab top', HOUSE),
  trackToTop: rule(ALLOWANCE, inches(0.5), "track's underside down to the top edge", COMMON),
  trackHeight: rule(ALLOWANCE, inches(1), "ceiling down to a ceiling track's underside", HOUSE),
  hangOn: rule(
    choiceKind('rings or track', HANGS_ON),
    'rings' as HangsOn,
    'what pinch, goblet, cartridge and flat headings hang on',
    COMMON,
  ),
  floorClear: rule(SHIFT, inches(0), 'added to the drop where the cloth hangs clear', COMMON),
  floorKiss: rule(SHIFT, inches(0.5), 'added where the cloth just touches the floor', HOUSE),
  floorBreak: rule(SHIFT, inches(1.5), 'added where the cloth breaks on the floor', HOUSE),
  floorPuddle: rule(SHIFT, inches(6), 'added where the cloth lies on the floor', HOUSE),
  readingSpread: rule(
    ALLOWANCE,
    inches(0.5),
    'floor readings that differ by more are worth a second look',
    HOUSE,
  ),

  // The finished width and the widths
  return: rule(ALLOWANCE, inches(3.5), 'rod to wall, each outer side', COMMON),
  overlap: rule(
    ALLOWANCE,
    inches(3),
    'what each leading edge of a pair is given beyond the centre',
    `${UFGS}: at least 3 in`,
  ),
  oneWayReturns: rule(
    choiceKind('both ends or one end', RETURN_ENDS),
    'both ends' as ReturnEnds,
    'the returns of a one-way panel',
    HOUSE,
  ),
  fullness: each(
    FULLNESS,
    heads(ratio(2.5), { 'tab top': ratio(2), grommet: ratio(2), wave: ratio(2), flat: ratio(1.5) }),
    'fullness where none is given',
    `${UFGS}: 2, 2½ or 3`,
  ),
  fullnessBasis: rule(
    choiceKind('a basis', FULLNESS_BASES),
    'finished width' as FullnessBasis,
    'what the fullness multiplies',
    UFGS,
  ),
  widthsRounding: rule(
    choiceKind('a rounding', WIDTHS_ROUNDINGS),
    'whole per panel' as WidthsRounding,
    'how widths are rounded',
    HOUSE,
  ),
  sideHem: rule(ALLOWANCE, inches(3), 'cloth taken by the hem of each side of a panel', COMMON),
  seam: rule(ALLOWANCE, inches(1), 'cloth taken by each seam between two widths', HOUSE),
  selvage: rule(
    ALLOWANCE,
    inches(0),
    'taken off each side of the bolt; 0 where the width given is the usable one',
    HOUSE,
  ),
  usualFabricWidth: rule(SIZE, inches(54), 'the fabric width where none is given', HOUSE),

  // The cut
  topAllowance: each(
    ALLOWANCE,
    heads(inches(8), {
      pencil: inches(4),
      'rod pocket': inches(6),
      'tab top': inches(4),
      wave: inches(4),
      flat: inches(4),
    }),
    'heading allowance of a cut',
    `pinch 8: ${COMMON}; others ${HOUSE}`,
  ),
  bottomAllowance: rule(ALLOWANCE, inches(8), 'bottom hem allowance of a cut', COMMON),
  shrinkage: rule(
    SHARE,
    ratio(0),
    'lengthwise shrinkage of the face fabric; drop ÷ (1 − shrinkage)',
    'ASTM D3691 allows up to 3 %',
  ),
  repeatRule: rule(
    choiceKind('a repeat rule', REPEAT_RULES),
    'every cut up' as RepeatRule,
    'how a vertical repeat lengthens the cuts',
    BOOKLET,
  ),
  liningCut: rule(
    choiceKind('a lining rule', LINING_CUTS),
    'own allowances' as LiningCut,
    'how a lining is cut',
    BOOKLET,
  ),
  liningShorter: rule(ALLOWANCE, inches(1), 'the lining ends so much above the face', COMMON),
  liningTop: rule(ALLOWANCE, inches(4), 'top allowance of a lining', HOUSE),
  liningBottom: rule(ALLOWANCE, inches(4), 'bottom hem allowance of a lining', HOUSE),
  liningLess: rule(
    ALLOWANCE,
    inches(10),
    'a lining cut is so much shorter than the face cut, where cut that way',
    BOOKLET,
  ),
  liningMarginLeading: rule(ALLOWANCE, inches(2), 'face turned over the lining at the leading edge', BOOKLET),
  liningMarginOuter: rule(ALLOWANCE, inches(1), 'face turned over the lining at the outer edge', BOOKLET),
  interliningShorter: rule(ALLOWANCE, inches(0), 'the interlining ends so much above the face', HOUSE),
  interliningTop: rule(ALLOWANCE, inches(4), 'top allowance of an interlining', HOUSE),
  interliningBottom: rule(ALLOWANCE, inches(0), 'bottom allowance of an interlining', HOUSE),
  yardageStep: rule(
    YARD_STEP,
    (unit: Unit) => (unit === INCHES ? yards(1 / 8) : ((UNITS.m / 10) as Length)),
    'yardage goes up to the next step; 0 leaves it exact',
    `${BOOKLET}: ⅛, ¼, ½ or 1 yd`,
  ),
  yardageRoundedBy: rule(
    choiceKind('order or window', ROUNDED_BY),
    'order' as RoundedBy,
    'where the yardage is rounded',
    HOUSE,
  ),
  shareHalfWidths: rule(
    choiceKind('yes or no', YES_NO),
    'no' as YesNo,
    'whether two windows may share a width cut in half',
    HOUSE,
  ),

  // Heading marks
  takeUp: rule(SIZE, inches(5), 'cloth a pleat takes up, as near as it goes', HOUSE),
  takeUpLow: rule(SIZE, inches(4), 'cloth a pleat takes up, at least', COMMON),
  takeUpHigh: rule(SIZE, inches(6.5), 'cloth a pleat takes up, at most', COMMON),
  spaceLow: rule(SIZE, inches(3.5), 'space between pleats, at least', COMMON),
  spaceHigh: rule(SIZE, inches(4), 'space between pleats, at most', COMMON),
  underfold: rule(SIZE, inches(1), 'depth of each underfold of a box pleat', BOOKLET),
  boxFace: rule(SIZE, inches(2), 'face of a box pleat', BOOKLET),
  grommetSpacing: rule(SIZE, inches(6), 'grommets from centre to centre, at most', HOUSE),
  grommetEdge: own(
    SIZE,
    'first grommet centre from the edge; blank is half the spacing',
    'common practice, no source: half the spacing',
  ),
  snapSpacing: rule(SIZE, inches(4.25), 'snaps of a wave tape, centre to centre along the cloth', HOUSE),
  waveRatioLow: rule(PROPORTION, ratio(1.6), 'cloth to track of a wave heading, at least', COMMON),
  waveRatioHigh: rule(PROPORTION, ratio(2.2), 'cloth to track of a wave heading, at most', COMMON),
  rodAround: rule(SIZE, inches(3.125), 'the rod, measured loosely round', STEPHENSON),
  pocketEase: rule(ALLOWANCE, inches(0.625), 'ease of a rod pocket, all round', STEPHENSON),
  hookSpacing: rule(SIZE, inches(3), 'hooks of a pencil heading, at most', HOUSE),
  ringSpacing: rule(SIZE, inches(6), 'rings of a flat heading, at most', HOUSE),

  // Hardware
  bracketSpanLight: rule(
    SIZE,
    inches(48),
    'between brackets under a light drapery, at most',
    `${COMMON}: 40 to 48 in`,
  ),
  bracketSpanHeavy: rule(
    SIZE,
    inches(36),
    'between brackets under a heavy drapery, at most',
    `${COMMON}: 24 to 36 in`,
  ),
  heavyFrom: rule(
    WEIGHT,
    (unit: Unit) => (unit === INCHES ? 20 : 9),
    'a drapery is heavy from this weight in all (lb or kg)',
    HOUSE,
  ),
  stockRods: rule(STOCK, [48, 72, 96, 120, 144].map(inches), 'rod lengths in stock', HOUSE),
  stackShare: each(
    PROPORTION,
    heads(ratio(0.33), {
      grommet: ratio(0.25),
      wave: ratio(0.2),
      flat: ratio(0.25),
      'rod pocket': ratio(0.5),
      'tab top': ratio(0.4),
    }),
    'stack to rod covered, unlined',
    HOUSE,
  ),
  stackLined: rule(PROPORTION, ratio(1.1), 'a lined stack to an unlined one', HOUSE),
  stackInterlined: rule(PROPORTION, ratio(1.25), 'an interlined stack to an unlined one', HOUSE),

  // Making charge
  labor: ownEach(PRICE, 'making charge a width'),
  laborLined: own(PRICE, 'added a width where lined'),
  laborInterlined: own(PRICE, 'added a width where interlined'),
  laborBlackout: own(PRICE, 'added a width where blackout lined'),
  laborHeightFrom: rule(SIZE, inches(108), 'a drop above this bears the height surcharge', HOUSE),
  laborHeightSurcharge: own<Money>(RATE, 'height surcharge, a share of the making charge'),
  centRounding: rule(
    choiceKind('a rounding', ROUNDING_WORDS),
    'half up' as Rounding,
    'the half-cent rule',
    'Streamlined Sales and Use Tax Agreement, section 324',
  ),

  // The job's price
  pricePerRing: own(PRICE, 'cost of a ring or carrier'),
  pricePerBracket: own(PRICE, 'cost of a bracket'),
  pricePerRodFoot: own(PRICE, 'cost of the rod, a foot (a metre in a centimetre house)'),
  pricePerFinial: own(PRICE, 'cost of a finial; two a rod'),
  installationPerWindow: own(PRICE, 'charge for hanging one window, not marked up'),
  freight: own(PRICE, 'freight of the job, not marked up'),
  sellBasis: rule(
    choiceKind('a basis', SELL_BASES),
    'markup on cost' as SellBasis,
    'how materials and making are priced up',
    HOUSE,
  ),
  sellRate: rule<Money>(RATE, money(0), 'the markup or margin; 0 sells at cost', HOUSE),
  discount: rule<Money>(RATE, money(0), 'off the whole before tax', HOUSE),
  taxRate: rule<Money>(RATE, money(0), 'sales tax', YOURS),
  taxBasis: rule(
    choiceKind('a basis', TAX_BASES),
    'line' as TaxBasis,
    'where the tax is rounded',
    'Streamlined Sales and Use Tax Agreement, section 324',
  ),
  taxLabor: rule(
    choiceKind('yes or no', YES_NO),
    'yes' as YesNo,
    'whether making is taxed',
    'your state or country decides',
  ),
  taxInstallation: rule(
    choiceKind('yes or no', YES_NO),
    'no' as YesNo,
    'whether installation is taxed',
    'your state or country decides',
  ),
  deposit: rule<Money>(RATE, money('0.5'), 'asked with the order, a share of the total', HOUSE),
  spareWindows: rule<Money>(
    RATE,
    money(0),
    'cloth ordered beyond the windows, a share of the cuts of each fabric',
    HOUSE,
  ),

  // Auditing past orders
  lengthTolerance: rule(
    ALLOWANCE,
    inches(0.25),
    'an ordered length may differ from the worked-out one by so much',
    `${UFGS}: ± ¼ in`,
  ),
  yardageTolerance: rule(
    YARD_STEP,
    (unit: Unit) => (unit === INCHES ? yards(1 / 8) : ((UNITS.m / 10) as Length)),
    'an ordered yardage may differ by so much',
    HOUSE,
  ),
  moneyTolerance: rule(PRICE, money(0.01), 'an amount may differ by so much', HOUSE),
  usualLongest: rule(SIZE, inches(240), 'an opening or a drop above this is looked at twice', HOUSE),
  usualShortest: rule(SIZE, inches(12), 'an opening or a drop below this is looked at twice', HOUSE),
  usualWidestCloth: rule(
    SIZE,
    (unit: Unit) => (unit === INCHES ? inches(126) : inches(130)),
    'a fabric width above this is looked at twice',
    HOUSE,
  ),
  usualNarrowestCloth: rule(SIZE, inches(24), 'a fabric width below this is looked at twice', HOUSE),
  keepGlassClear: rule(
    choiceKind('yes or no', YES_NO),
    'no' as YesNo,
    'whether every drawn-back drapery must clear the glass',
    HOUSE,
  ),
  flameMethodOneUpTo: rule(
    AREAL_WEIGHT,
    (unit: Unit) => (unit === INCHES ? 21 : 700),
    'cloth above this areal weight is outside NFPA 701 Method 1',
    'NFPA 701 scope: 700 g/m² (21 oz/yd²), compared in the unit given',
  ),
};

type Catalogue = typeof RULES;
export type RuleKey = keyof Catalogue;
export type Rules = {
  readonly [K in RuleKey]: Catalogue[K] extends HeadingRule<infer T>
    ? Readonly<Record<Heading, T>>
    : Catalogue[K] extends OwnRule<infer T>
      ? T | undefined
      : Catalogue[K] extends Rule<infer T>
        ? T
        : never;
};

/** A rules range once read, with what was odd about it. */
export interface House {
  readonly rules: Rules;
  readonly unit: Unit;
  readonly findings: readonly Finding[];
  /** The names set by the workbook. */
  readonly set: ReadonlySet<string>;
}

/** One line of the rules sheet. */
export interface RuleLine {
  readonly name: string;
  readonly key: RuleKey;
  readonly heading?: Heading;
  readonly kind: Kind<unknown>;
  readonly says: string;
  readonly source: string;
  standard(unit: Unit): unknown;
}

const spaced = (key: string): string => key.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);

/** Every house rule by the name people write, in the order they meet them. */
export const RULE_LINES: readonly RuleLine[] = (Object.keys(RULES) as RuleKey[]).flatMap(
  (key): RuleLine[] => {
    const of = RULES[key] as Rule<unknown> | OwnRule<unknown> | HeadingRule<unknown>;
    const { says, source } = of;
    if ('ownKind' in of)
      return [{ name: spaced(key), key, kind: of.ownKind, says, source, standard: () => undefined }];
    const { kind } = of;
    if ('standard' in of) {
      const { standard } = of;
      return [
        {
          name: spaced(key),
          key,
          kind,
          says,
          source,
          standard: (unit) =>
            typeof standard === 'function' ? (standard as (unit: Unit) => unknown)(unit) : standard,
        },
      ];
    }
    return HEADINGS.list.map(({ word }) => ({
      name: `${spaced(key)} ${word}`,
      key,
      heading: word as Heading,
      kind,
      says: `${says}: ${word}`,
      source,
      standard: () => of.each[word as Heading],
    }));
  },
);

const LINES = new Map(RULE_LINES.map((line) => [bare(line.name), line]));

export const ruleLine = (name: string): RuleLine | undefined => LINES.get(bare(name));

/** The value of one line under a set of rules. */
export const ruleValue = (rules: Rules, line: RuleLine): unknown =>
  line.heading === undefined ? rules[line.key] : (rules[line.key] as Record<Heading, unknown>)[line.heading];

/** How many letters must change to make one word the other. */
function distance(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, at) => at);
  for (let i = 1; i <= one.length; i++) {
    const next = [i];
    for (let j = 1; j <= other.length; j++) {
      const same = one[i - 1] === other[j - 1] ? 0 : 1;
      next.push(Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + same));
    }
    row = next;
  }
  return row[other.length] ?? 0;
}

export function nearestRule(name: string): string {
  const wanted = bare(name);
  let best = RULE_LINES[0] as RuleLine;
  let least = Infinity;
  for (const [key, line] of LINES) {
    const apart = distance(wanted, key);
    if (apart < least) [best, least] = [line, apart];
  }
  return best.name;
}

function standing(unit: Unit): Rules {
  const rules: Record<string, unknown> = {};
  for (const line of RULE_LINES) {
    const standard = line.standard(unit);
    if (line.heading === undefined) rules[line.key] = standard;
    else rules[line.key] = { ...(rules[line.key] as object | undefined), [line.heading]: standard };
  }
  rules['unit'] = unit.name;
  return rules as Rules;
}

const NO_FINDINGS: readonly Finding[] = [];
const NONE_SET: ReadonlySet<string> = new Set();
export const DEFAULT_HOUSE: House = {
  rules: standing(INCHES),
  unit: INCHES,
  findings: NO_FINDINGS,
  set: NONE_SET,
};
export const DEFAULT_RULES: Rules = DEFAULT_HOUSE.rules;

const TITLES = new Set(['rule', 'houserule', 'name', 'rules']);

function readAfresh(rows: readonly (readonly CellIn[])[]): House {
  const found: Finding[] = [];
  const named = rows.flatMap((row, at): { line: RuleLine; raw: CellIn }[] => {
    const name = oneCell(row[0], { name: 'rules', unit: INCHES });
    // An empty cell is 0 on some platforms.
    if (name === undefined || name === 0 || (at === 0 && TITLES.has(bare(String(name))))) return [];
    const line = ruleLine(String(name));
    if (line !== undefined) return [{ line, raw: row[1] }];
    found.push(finding('unknownRule', 'rules', readBack(name), nearestRule(String(name))));
    return [];
  });
  const unitRow = named.filter(({ line, raw }) => line.key === 'unit' && !isBlank(raw)).at(-1);
  const unitName =
    unitRow === undefined
      ? undefined
      : RULES.unit.kind.read(unitRow.raw, { name: 'house rule “unit”', unit: INCHES });
  const unit = unitName === 'centimetres' ? CENTIMETRES : INCHES;
  const rules = standing(unit) as unknown as Record<string, unknown>;
  const set = new Map<string, unknown>();
  for (const { line, raw } of named) {
    const value = isBlank(raw) ? undefined : line.kind.read(raw, { name: `house rule “${line.name}”`, unit });
    if (value === undefined) continue;
    if (set.has(line.name) && String(set.get(line.name)) !== String(value))
      found.push(finding('repeatedRule', 'rules', line.name));
    set.set(line.name, value);
    if (line.heading === undefined) rules[line.key] = value;
    else (rules[line.key] as Record<string, unknown>)[line.heading] = value;
  }
  return { rules: rules as unknown as Rules, unit, findings: found, set: new Set(set.keys()) };
}

let lastRows: readonly (readonly CellIn[])[] = [];
let lastHouse: House | undefined;

const sameRows = (one: readonly (readonly CellIn[])[], other: readonly (readonly CellIn[])[]): boolean =>
  one.length === other.length &&
  one.every((row, i) => row.length === other[i]?.length && row.every((cell, j) => cell === other[i]?.[j]));

/**
 * Reads a rules range: columns rule, value. Thousands of cells point at one range,
 * so the last one read is kept; it is compared cell by cell, never by identity.
 */
export function readHouse(raw: CellIn): House {
  if (isBlank(raw)) return DEFAULT_HOUSE;
  const rows = rowsOf(raw);
  if (lastHouse !== undefined && sameRows(rows, lastRows)) return lastHouse;
  const house = readAfresh(rows);
  lastRows = rows.map((row) => [...row]);
  lastHouse = house;
  return house;
}

export const unitOf = (rules: Rules): Unit => (rules.unit === 'inches' ? INCHES : CENTIMETRES);
