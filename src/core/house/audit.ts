/** House rules: auditing past orders. */
import { choiceKind } from '../cell/fields';
import { AREAL_WEIGHT, PRICE } from '../cell/figure-kinds';
import { ALLOWANCE, SIZE, YARD_STEP } from '../cell/length-kinds';
import { inches, UNITS, type Length } from '../exact/length';
import { money } from '../exact/money';
import { rule, yards, HOUSE, UFGS } from '../cell/rule';
import { INCHES, type Unit } from '../exact/unit';
import { YES_NO, type YesNo } from '../cell/ways';

export const AUDIT_RULES = {
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
