/** House rules: making charge and the price of a job. */
import { ATTIC_STOCK } from '../cell/attic';
import { choiceKind } from '../cell/fields';
import { AREAL_WEIGHT, COUNT, orNone, PART, PRICE, RATE, setOrNone, WEIGHT } from '../cell/figure-kinds';
import { SIZE } from '../cell/length-kinds';
import { inches } from '../exact/length';
import { MAKING_BREAKS } from '../cell/making-breaks';
import { money, type Money, type Rounding } from '../exact/money';
import { rule, own, ownEach, COMMON, HOUSE, YOURS } from '../cell/rule';
import {
  YES_NO,
  SELL_BASES,
  TAX_BASES,
  ROUNDING_WORDS,
  LABOR_BYS,
  MAKING_BREAKS_ON,
  MOCK_UPS,
  type YesNo,
  type SellBasis,
  type TaxBasis,
  type LaborBy,
  type MakingBreaksOn,
  type MockUpOf,
} from '../cell/ways';

/** Prices and rates that only the house can say. */
const CHARGE = setOrNone(PRICE);
const SET_RATE = setOrNone(RATE);
const SET_PART = setOrNone(PART);
/** Rates that are 0 where nothing is set. */
const RATE_OR_NONE = orNone(RATE);
const PART_OR_NONE = orNone(PART);

export const PRICE_RULES = {
  // Making charge
  labor: ownEach(CHARGE, 'making charge of each width, or of what “labor by” names'),
  laborBy: rule(
    choiceKind('width, panel or window', LABOR_BYS),
    'width' as LaborBy,
    'what the making charges are so much a piece of',
    HOUSE,
  ),
  laborLined: own(CHARGE, 'added to each where lined'),
  laborInterlined: own(CHARGE, 'added to each where interlined'),
  laborBlackout: own(CHARGE, 'added to each where blackout lined'),
  laborHeightFrom: rule(SIZE, inches(108), 'a drop above this bears the height surcharge', HOUSE),
  laborHeightSurcharge: own<Money>(SET_RATE, 'height surcharge, a share of the making charge'),
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

  makingMinimum: own(CHARGE, 'making charge of a whole job, at least; a row or window shows its own'),

  // The job's price
  pricePerRing: own(CHARGE, 'cost of a ring or carrier'),
  pricePerBracket: own(CHARGE, 'cost of a bracket'),
  pricePerRodFoot: own(CHARGE, 'cost of the rod, a foot (a metre in a centimetre house)'),
  pricePerRodMetre: own(CHARGE, 'cost of the rod, a metre, where it is sold so'),
  pricePerRodPiece: own(CHARGE, 'cost of the rod, a stock piece, where it is sold so'),
  pricePerFinial: own(CHARGE, 'cost of a finial; two a rod'),
  pricePerGrommet: own(CHARGE, 'cost of a grommet, set'),
  pricePerEndStop: own(CHARGE, 'cost of an end stop; two a track'),
  pricePerWand: own(CHARGE, 'cost of a wand'),
  pricePerBend: own(CHARGE, 'cost of a bend of a rod or track; a bay of three parts has two'),
  installationPerWindow: own(CHARGE, 'charge for hanging one window, not marked up'),
  freight: own(CHARGE, 'freight of the job, not marked up'),
  freightPerWeight: own(CHARGE, 'freight by weight, a pound of cloth (a kilogram in a centimetre house)'),
  cartonHolds: own(WEIGHT, 'cloth a carton holds (lb or kg), where freight goes by the carton'),
  freightPerCarton: own(CHARGE, 'freight of a carton'),
  liningWeight: own(AREAL_WEIGHT, 'areal weight of the lining (oz/yd² or g/m²), for brackets and freight'),
  blackoutLiningWeight: own(AREAL_WEIGHT, 'areal weight of a blackout lining; blank is the lining’s'),
  interliningWeight: own(AREAL_WEIGHT, 'areal weight of the interlining'),
  sellBasis: rule(
    choiceKind('a basis', SELL_BASES),
    'markup on cost' as SellBasis,
    'how materials and making are priced up',
    HOUSE,
  ),
  sellRate: rule<Money>(RATE_OR_NONE, money(0), 'the markup or margin; 0 sells at cost', HOUSE),
  discount: rule<Money>(PART_OR_NONE, money(0), 'off the whole before tax', HOUSE),
  taxRate: rule<Money>(PART_OR_NONE, money(0), 'sales tax', YOURS),
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
  deposit: rule<Money>(SET_PART, money('0.5'), 'asked with the order, a share of the total', HOUSE),
  spareWindows: rule<Money>(
    PART_OR_NONE,
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
};
