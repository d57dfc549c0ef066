/** House rules: heading marks and hardware. */
import { choiceKind } from '../cell/fields';
import { PLEAT_COUNT, PROPORTION, WEIGHT } from '../cell/figure-kinds';
import { ALLOWANCE, SIZE } from '../cell/length-kinds';
import { inches } from '../exact/length';
import { ratio } from '../exact/ratio';
import { rule, own, each, heads, listOf, COMMON, HOUSE, BOOKLET, STEPHENSON } from '../cell/rule';
import { PLEATS_BY, YES_NO, type PleatsBy, type YesNo } from '../cell/ways';
import { INCHES, type Unit } from '../exact/unit';

const STOCK = listOf(SIZE, 'rod lengths, like 48, 72, 96');

export const HEADING_RULES = {
  // Heading marks
  pleatsBy: rule(
    choiceKind('width, space or take-up', PLEATS_BY),
    'width' as PleatsBy,
    'how pleats are counted, before the bands below',
    `${COMMON}; a pinch-pleat brochure prints pleats by the width`,
  ),
  pleatsAWidth: rule(
    PLEAT_COUNT,
    5,
    'pleats in a width, where counted by width; a half width takes the smaller number',
    `a pinch-pleat brochure: 5; ${COMMON}: 4 in some houses`,
  ),
  pleatsCountedOn: rule(
    SIZE,
    inches(54),
    'the bolt width that holds so many; other bolts hold them for each such width of flat cloth',
    'a pinch-pleat brochure: 54 in',
  ),
  pleatSpace: rule(
    SIZE,
    inches(4),
    'space between pleats, as near as it goes, where counted by space',
    COMMON,
  ),
  takeUp: rule(
    SIZE,
    inches(5),
    'cloth a pleat takes up, as near as it goes, where counted by take-up',
    HOUSE,
  ),
  takeUpLow: rule(SIZE, inches(4), 'cloth a pleat takes up, at least', COMMON),
  takeUpHigh: rule(SIZE, inches(8), 'cloth a pleat takes up, at most', `${COMMON}; ${BOOKLET} has 7 in`),
  takeUpMost: rule(
    SIZE,
    inches(9),
    'the same, where no count of pleats keeps the usual space and take-up',
    HOUSE,
  ),
  spaceLow: rule(SIZE, inches(3), 'space between pleats, at least', COMMON),
  spaceHigh: rule(SIZE, inches(5), 'space between pleats, at most', COMMON),
  spaceLeast: rule(
    SIZE,
    inches(2.5),
    'space between pleats, at least, where no count keeps the usual space and take-up',
    HOUSE,
  ),
  edgeToFirstPleat: own(
    ALLOWANCE,
    'leading edge to the first pleat; blank is the overlap; at the return it is the return',
    `${BOOKLET}: 2 in beside an overlap of 1`,
  ),
  underfold: rule(SIZE, inches(1), 'depth of each underfold of a box pleat', BOOKLET),
  boxFace: rule(SIZE, inches(2), 'face of a box pleat', BOOKLET),
  grommetSpacing: rule(SIZE, inches(6), 'grommets from centre to centre, at most', HOUSE),
  grommetEdge: own(
    SIZE,
    'first grommet centre from the edge; blank is half the spacing',
    'common practice, no source: half the spacing',
  ),
  grommetFromSeam: rule(SIZE, inches(1), 'grommet centres from a seam, at least', COMMON),
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
  wands: rule(
    choiceKind('yes or no', YES_NO),
    'no' as YesNo,
    'whether a drapery is drawn by hand with a wand, one a panel',
    HOUSE,
  ),
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
    (heading) => (heading === 'pinch' ? 'a drapery school’s stacking guide: a third of the rod' : HOUSE),
  ),
  stackLined: rule(PROPORTION, ratio(1.1), 'a lined stack to an unlined one', HOUSE),
  stackInterlined: rule(PROPORTION, ratio(1.25), 'an interlined stack to an unlined one', HOUSE),
};
