/**
 * The house rules: each with its default, its kind (and so its unit), its words and its source.
 * A rules range in the workbook overrides them by name; without one, these stand.
 */
import { ATTIC_STOCK } from './attic';
import {
  ALLOWANCE,
  AREAL_WEIGHT,
  choiceKind,
  COUNT,
  FULLNESS,
  listKind,
  oneCell,
  PRICE,
  PROPORTION,
  RATE,
  SHARE,
  SHIFT,
  SIZE,
  WEIGHT,
  YARD_STEP,
  type Kind,
} from './fields';
import { FIRST_DAY } from './day';
import { inches, UNITS, type Length } from './length';
import { MAKING_BREAKS } from './making-breaks';
import { money, type Money, type Rounding } from './money';
import { distance } from './nearest';
import { ratio } from './ratio';
import { bare, HEADINGS, type Heading } from './treatment';
import { CENTIMETRES, INCHES, type Unit, type UnitName } from './unit';
import {
  UNIT_NAMES,
  YES_NO,
  WIDTHS_ROUNDINGS,
  FULLNESS_BASES,
  REPEAT_RULES,
  ROLL_STARTS,
  HANGS_ON,
  RETURN_ENDS,
  ROUNDED_BY,
  LINING_CUTS,
  SELL_BASES,
  TAX_BASES,
  ROUNDING_WORDS,
  MAKING_BREAKS_ON,
  MOCK_UPS,
  type YesNo,
  type WidthsRounding,
  type FullnessBasis,
  type RepeatRule,
  type RollStart,
  type HangsOn,
  type ReturnEnds,
  type RoundedBy,
  type LiningCut,
  type SellBasis,
  type TaxBasis,
  type MakingBreaksOn,
  type MockUpOf,
} from './ways';

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
  inForceFrom: own(
    FIRST_DAY,
    'the first day these rules stood, for auditing past orders; blank is always',
    'no default: your own date',
  ),
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
  rollStart: rule(
    choiceKind('none or one repeat', ROLL_STARTS),
    'none' as RollStart,
    'what a patterned cloth gives up at the start of a roll, and after a flaw, to reach the pattern',
    HOUSE,
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
    'whether two windows may share a width cut in half; never where yardage is rounded by window',
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

  makingBreaks: own(
    MAKING_BREAKS,
    'making charged less from so many widths, like 100 5 %; 400 8 %',
    `${COMMON}: your own figures`,
  ),
  makingBreaksOn: rule(
    choiceKind('a basis', MAKING_BREAKS_ON),
    'whole' as MakingBreaksOn,
    'what a making break takes off',
    HOUSE,
  ),

  // The job's price
  pricePerRing: own(PRICE, 'cost of a ring or carrier'),
  pricePerBracket: own(PRICE, 'cost of a bracket'),
  pricePerRodFoot: own(PRICE, 'cost of the rod, a foot (a metre in a centimetre house)'),
  pricePerFinial: own(PRICE, 'cost of a finial; two a rod'),
  installationPerWindow: own(PRICE, 'charge for hanging one window, not marked up'),
  freight: own(PRICE, 'freight of the job, not marked up'),
  freightPerWeight: own(PRICE, 'freight by weight, a pound of cloth (a kilogram in a centimetre house)'),
  cartonHolds: own(WEIGHT, 'cloth a carton holds (lb or kg), where freight goes by the carton'),
  freightPerCarton: own(PRICE, 'freight of a carton'),
  liningWeight: own(AREAL_WEIGHT, 'areal weight of the lining (oz/yd² or g/m²), for freight by weight'),
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
  atticStock: own(
    ATTIC_STOCK,
    'cloth of each fabric kept for later repairs: a share of the windows’ cuts (5 %) or whole cuts (2), the longest',
    `${COMMON}: your own figure`,
  ),
  mockUpWindows: rule(COUNT, 0, 'windows made and hung first to be approved, an order of their own', HOUSE),
  mockUpOf: rule(
    choiceKind('what is made first', MOCK_UPS),
    'first room' as MockUpOf,
    'whose windows are made first',
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

/** Labour is labor in the catalogue, and either where people write. */
export const ruleLine = (name: string): RuleLine | undefined =>
  LINES.get(bare(name)) ?? LINES.get(bare(name).replace('labour', 'labor'));

/** The value of one line under a set of rules. */
export const ruleValue = (rules: Rules, line: RuleLine): unknown =>
  line.heading === undefined ? rules[line.key] : (rules[line.key] as Record<Heading, unknown>)[line.heading];

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

export const unitOf = (rules: Rules): Unit => (rules.unit === 'inches' ? INCHES : CENTIMETRES);
