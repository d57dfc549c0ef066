/** House rules: widths, cuts and yardage of the face and of what lies behind it. */
import { choiceKind } from '../cell/fields';
import { FULLNESS, SHARE, WIDTH_COUNT } from '../cell/figure-kinds';
import { ALLOWANCE, SIZE, YARD_STEP } from '../cell/length-kinds';
import { inches, UNITS, type Length } from '../exact/length';
import { ratio } from '../exact/ratio';
import { rule, own, each, heads, listOf, yards, COMMON, HOUSE, UFGS, BOOKLET } from '../cell/rule';
import { INCHES, type Unit } from '../exact/unit';
import {
  YES_NO,
  WIDTHS_ROUNDINGS,
  FULLNESS_BASES,
  HALF_CHARGES,
  REPEAT_RULES,
  HALF_DROP_STARTS,
  PATTERN_FROM,
  PATTERN_STARTS,
  BOTTOM_EDGES,
  RETURN_ENDS,
  ROUNDED_BY,
  INTERLINING_CUTS,
  LINING_CUTS,
  LINING_WIDTHS,
  type YesNo,
  type WidthsRounding,
  type FullnessBasis,
  type HalfCharge,
  type RepeatRule,
  type HalfDropStarts,
  type PatternFrom,
  type PatternStart,
  type BottomEdge,
  type ReturnEnds,
  type RoundedBy,
  type InterliningCut,
  type LiningCut,
  type LiningWidths,
} from '../cell/ways';

export const CLOTH_RULES = {
  // The finished width and the widths
  return: rule(
    ALLOWANCE,
    inches(3.5),
    'rod to wall at each outer side, where the rod’s projection is not known',
    COMMON,
  ),
  rodProjection: own(
    SIZE,
    'the middle of the rod from the wall; the return is then this and a little more; blank where rods differ',
  ),
  returnPastProjection: rule(
    ALLOWANCE,
    inches(0.5),
    'the return is so much more than the projection of its rod',
    COMMON,
  ),
  overlap: rule(
    ALLOWANCE,
    inches(3),
    'what each leading edge of a pair on a track is carried past the centre; two cover each other by twice that',
    `${COMMON}; ${UFGS}: at least 3 in for the pair`,
  ),
  overlapOnRings: rule(
    ALLOWANCE,
    inches(0),
    'the same of a pair on rings on a pole, where nothing carries one edge past the other',
    COMMON,
  ),
  stationaryWidths: rule(
    WIDTH_COUNT,
    1,
    'widths of each side panel that is not drawn, where the order does not say',
    COMMON,
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
    (heading) =>
      heading === 'pinch'
        ? `${UFGS}: French pleats at 2, 2½ or 3`
        : heading === 'wave'
          ? `${UFGS}: snap tape at 2, 2½ or 3`
          : COMMON,
  ),
  fullnessBasis: rule(
    choiceKind('a basis', FULLNESS_BASES),
    'finished width' as FullnessBasis,
    'what the fullness multiplies',
    `${HOUSE}; ${UFGS} multiplies the rod width and adds overlaps and returns`,
  ),
  widthsRounding: rule(
    choiceKind('a rounding', WIDTHS_ROUNDINGS),
    'whole per pair' as WidthsRounding,
    'how widths are rounded',
    `${UFGS}: panels of full or half widths`,
  ),
  sideHem: rule(ALLOWANCE, inches(3), 'cloth taken by the hem of each side of a panel', COMMON),
  seam: rule(ALLOWANCE, inches(1), 'cloth taken by each seam between two widths', HOUSE),
  trimTurning: rule(
    ALLOWANCE,
    inches(1.5),
    'trim or band turned under at each end of the edge it follows',
    COMMON,
  ),
  selvage: rule(
    ALLOWANCE,
    inches(0),
    'taken off each side of the bolt; 0 where the width given is the usable one',
    HOUSE,
  ),
  usualFabricWidth: rule(SIZE, inches(54), 'the fabric width where none is given', HOUSE),
  boltWidths: rule(
    listOf(SIZE, 'bolt widths, like 48, 54, 60'),
    (unit: Unit) =>
      unit === INCHES
        ? [45, 48, 54, 60].map(inches)
        : [120, 130, 137, 140, 150].map((cm) => (cm * UNITS.cm) as Length),
    'bolt widths that cloth comes in, for advice on another bolt',
    COMMON,
  ),
  usualLiningWidth: rule(
    SIZE,
    inches(54),
    'the bolt width of lining, blackout and interlining where none is given',
    HOUSE,
  ),
  interliningWidth: own(SIZE, 'the bolt width of interlining; blank is the lining’s'),

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
  bottomEdge: rule(
    choiceKind('hemmed or finished', BOTTOM_EDGES),
    'hemmed' as BottomEdge,
    'the bottom edge of turned cloth; one finished by the mill takes no bottom allowance',
    COMMON,
  ),
  pocketTakeUp: rule(
    ALLOWANCE,
    inches(0),
    'length that a rod pocket takes up on its rod once gathered, added to the cut',
    HOUSE,
  ),
  bottomAllowance: rule(ALLOWANCE, inches(8), 'bottom hem allowance of a cut', COMMON),
  sheerFullness: rule(FULLNESS, ratio(3), 'fullness of a sheer where none is given', `${COMMON}: 3 to 4`),
  sheerBottomAllowance: rule(
    ALLOWANCE,
    inches(10),
    'bottom hem allowance of a sheer: 5 in, turned twice',
    COMMON,
  ),
  sheerShorter: rule(ALLOWANCE, inches(0.5), 'a sheer ends so much above the drapery before it', COMMON),
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
  halfDropStarts: rule(
    choiceKind('a way of starting', HALF_DROP_STARTS),
    'each panel alike' as HalfDropStarts,
    'which widths of a half-drop begin half a repeat down',
    `${UFGS}: identical designs on each window of a room`,
  ),
  patternStart: rule(
    choiceKind('nothing, one repeat or one yard', PATTERN_STARTS),
    'nothing' as PatternStart,
    'bought once with the order of a patterned cloth, to reach the pattern’s start; given up by a plan at the start of every roll, and after a flaw',
    `${COMMON}: one repeat or one yard an order`,
  ),
  patternFrom: rule(
    choiceKind('the top or the hem', PATTERN_FROM),
    (unit: Unit): PatternFrom => (unit === INCHES ? 'top' : 'hem'),
    'where the full motif lands; windows of one room match at one height above the floor',
    `${COMMON}: the top in inches, the hem in centimetres`,
  ),
  liningWidths: rule(
    choiceKind('a way of counting', LINING_WIDTHS),
    'by its own width' as LiningWidths,
    'how many widths a lining or interlining has',
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
  liningShrinkage: rule(
    SHARE,
    ratio(0),
    'lengthwise shrinkage of a lining cut by its own allowances',
    'ASTM D3691 allows up to 3 %',
  ),
  interliningCut: rule(
    choiceKind('an interlining rule', INTERLINING_CUTS),
    'as the face' as InterliningCut,
    'how an interlining is cut; in widths it follows the face',
    `${COMMON}: as the face`,
  ),
  interliningShorter: rule(
    ALLOWANCE,
    inches(0),
    'the interlining ends so much above the face, where cut by its own allowances',
    HOUSE,
  ),
  interliningTop: rule(
    ALLOWANCE,
    inches(4),
    'top allowance of an interlining, where cut by its own allowances',
    HOUSE,
  ),
  interliningBottom: rule(
    ALLOWANCE,
    inches(0),
    'bottom allowance of an interlining, where cut by its own allowances',
    HOUSE,
  ),
  yardageStep: rule(
    YARD_STEP,
    (unit: Unit) => (unit === INCHES ? yards(1 / 8) : ((UNITS.m / 10) as Length)),
    'yardage goes up to the next step; 0 leaves it exact',
    `${BOOKLET}: ⅛, ¼, ½ or 1 yd`,
  ),
  yardageRoundedBy: rule(
    choiceKind('line or window', ROUNDED_BY),
    'line' as RoundedBy,
    'where the yardage is rounded',
    HOUSE,
  ),
  shareHalfWidths: rule(
    choiceKind('yes or no', YES_NO),
    'no' as YesNo,
    'whether two windows may share a width cut in half; never where yardage is rounded by window',
    HOUSE,
  ),
  halfWidthCharged: rule(
    choiceKind('as a half or as a whole', HALF_CHARGES),
    'as a half' as HalfCharge,
    'how the making charge counts the half width of a panel',
    HOUSE,
  ),
  billableWidth: own(
    SIZE,
    'the making charge counts wide and turned cloth by so much of its flat width, up, like 54 in; blank counts it by its widths',
    `${COMMON}: 54 in, by which two widths of 118 are five`,
  ),
};
