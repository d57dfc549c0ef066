/** House rules: heading marks and hardware. */
import { PROPORTION, WEIGHT } from '../cell/figure-kinds';
import { ALLOWANCE, SIZE } from '../cell/length-kinds';
import { inches } from '../exact/length';
import { ratio } from '../exact/ratio';
import { rule, own, each, heads, listOf, COMMON, HOUSE, BOOKLET, STEPHENSON } from '../cell/rule';
import { INCHES, type Unit } from '../exact/unit';

const STOCK = listOf(SIZE, 'rod lengths, like 48, 72, 96');

export const HEADING_RULES = {
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
};
