/** What holds it up. */
import { listKind, optional } from '../src/core/cell/fields';
import { WEIGHT } from '../src/core/cell/figure-kinds';
import { SIZE } from '../src/core/cell/length-kinds';
import { brackets, rodPieces, type RodPieces } from '../src/core/heading/hardware';
import { stack } from '../src/core/measure/stack';
import { toUnit } from '../src/core/exact/length';
import { cellFunction } from './declare';
import { COUNT, LENGTH, spill } from './gives';
import { DRAW, HEADING, LINING, ROD_WIDTH } from './inputs';

export const STACK = cellFunction({
  name: 'STACK',
  chapter: 'Measure',
  says: 'Width the drawn-back drapery covers, per side.',
  takes: { rodWidth: ROD_WIDTH, heading: HEADING, draw: DRAW, lining: LINING },
  gives: LENGTH,
  examples: [
    {
      formula: 'HEM.STACK(100,"pinch")',
      gives: 16.5,
      because: 'Each side covers 50 in of rod; pinch pleats stack to 0.33 of it.',
    },
    {
      formula: 'HEM.STACK(100,"grommet","one-way left","lined")',
      gives: 27.5,
      because: 'One side: 100 × 0.25, a tenth more where lined.',
    },
  ],
  answer: stack,
});

export const BRACKETS = cellFunction({
  name: 'BRACKETS',
  chapter: 'Heading and hardware',
  says: 'Brackets, ends included, by the largest span for the weight. Anchors and load are the installer’s judgement.',
  takes: {
    rodWidth: ROD_WIDTH,
    weight: optional(WEIGHT, 'of the whole drapery, lb or kg by the house’s unit; blank is light'),
  },
  gives: COUNT,
  examples: [
    { formula: 'HEM.BRACKETS(96)', gives: 3, because: 'Two spans of 48 in, so 3 brackets.' },
    {
      formula: 'HEM.BRACKETS(96,24)',
      gives: 4,
      because: 'From 20 lb it is heavy: three spans of 36 in at most.',
    },
  ],
  answer: brackets,
});

export const RODPIECES = cellFunction({
  name: 'RODPIECES',
  chapter: 'Heading and hardware',
  says: 'Stock pieces for a rod: the fewest pieces, then the least length; splices at a bracket.',
  takes: {
    rodWidth: ROD_WIDTH,
    stockLengths: optional(
      listKind(SIZE, 'rod lengths'),
      'the rod lengths you can buy; blank takes the house’s',
    ),
  },
  gives: spill<RodPieces>(
    'stock length, count, splices',
    ['stock length', 'count', 'splices'],
    (rod, { small }) =>
      rod.pieces.map((piece, at) => [
        toUnit(piece.stockLength, small),
        piece.count,
        at === 0 ? rod.splices : '',
      ]),
  ),
  examples: [
    {
      formula: 'HEM.RODPIECES(110)',
      gives: [[120, 1, 0]],
      because: 'The shortest stock rod that covers 110 in.',
    },
    {
      formula: 'HEM.RODPIECES(200,{96,144})',
      gives: [
        [144, 1, 1],
        [96, 1, ''],
      ],
      because: 'Two pieces; 144 + 96 covers 200 with the least cut off.',
    },
  ],
  answer: rodPieces,
});
