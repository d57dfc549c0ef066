/** Where the heading is marked. */
import { optional, required } from '../src/core/cell/fields';
import { SIZE } from '../src/core/cell/length-kinds';
import { grommets, type Grommets } from '../src/core/heading/grommets';
import { pleats, type Pleats } from '../src/core/heading/pleats';
import { pocket } from '../src/core/heading/pocket';
import { rings } from '../src/core/heading/rings';
import { toUnit } from '../src/core/exact/length';
import { cellFunction } from './declare';
import { COUNT, LENGTH, spill } from './gives';
import { DRAW, FABRIC_WIDTH, HEADING, ROD_WIDTH, WIDTHS_IN_ALL } from './inputs';

export const PLEATS = cellFunction({
  name: 'PLEATS',
  chapter: 'Heading and hardware',
  says: 'Sets out the pleats of one panel; for a wave, its snaps and the carriers’ distance.',
  takes: {
    rodWidth: ROD_WIDTH,
    widths: WIDTHS_IN_ALL,
    heading: HEADING,
    fabricWidth: FABRIC_WIDTH,
    draw: DRAW,
  },
  gives: spill<Pleats>(
    'pleats a panel, spaces, space, take-up a pleat',
    ['pleats', 'spaces', 'space', 'take-up'],
    (pleats, { small }) => [
      [pleats.pleats, pleats.spaces, toUnit(pleats.space, small), toUnit(pleats.takeUp, small)],
    ],
  ),
  examples: [
    {
      formula: 'HEM.PLEATS(112,6,"pinch",54,"pair",{"overlap",0})',
      gives: [[15, 14, 4, 6.3]],
      because: '5 to a width; 56 ÷ 14 spaces is 4; flat 154 less finished 59½ is 94½, ÷ 15 is 6.30.',
    },
    {
      formula: 'HEM.PLEATS(65,3,"pinch",52,"one-way right",{"side hem",0;"seam",0;"return",0})',
      gives: [[14, 13, 5, 6.5]],
      because: '156 in hold 14 at 5 to each 54 in; 65 ÷ 13 spaces is 5; 156 − 65 is 91, ÷ 14 is 6.50.',
    },
    {
      formula: 'HEM.PLEATS(60,3,"pinch",54,"one-way right",{"pleats by","space";"return",0})',
      gives: [[16, 15, 4, 94 / 16]],
      because: 'The nearest to 4 in apart: 60 ÷ 4 is 15 spaces; 154 − 60 = 94, ÷ 16 pleats is 5.88.',
    },
  ],
  answer: pleats,
});

export const GROMMETS = cellFunction({
  name: 'GROMMETS',
  chapter: 'Heading and hardware',
  says: 'Sets out the grommets of one panel: an even count, so that both edges turn to the wall.',
  takes: { flatWidth: required(SIZE, 'the panel’s flat width, hemmed') },
  gives: spill<Grommets>(
    'count, spacing, first centre',
    ['count', 'spacing', 'first centre'],
    (grommets, { small }) => [
      [grommets.count, toUnit(grommets.spacing, small), toUnit(grommets.firstCentre, small)],
    ],
  ),
  examples: [
    {
      formula: 'HEM.GROMMETS(96)',
      gives: [[16, 6, 3]],
      because: '96 ÷ 6 is 16, even already; the first centre stands half a spacing in.',
    },
    {
      formula: 'HEM.GROMMETS(100)',
      gives: [[18, 100 / 18, 100 / 36]],
      because: '17 would turn one edge into the room; 18 stand 5.56 apart.',
    },
  ],
  answer: grommets,
});

export const RINGS = cellFunction({
  name: 'RINGS',
  chapter: 'Heading and hardware',
  says: 'Rings or carriers in all: by pleats and ends.',
  takes: { rodWidth: ROD_WIDTH, widths: WIDTHS_IN_ALL, heading: HEADING, draw: DRAW },
  joined: { fabricWidth: optional(SIZE, 'the bolt’s width; blank takes the house’s usual one') },
  gives: COUNT,
  examples: [
    { formula: 'HEM.RINGS(105,6,"pinch")', gives: 34, because: 'Each panel has 15 pleats and 2 ends.' },
    { formula: 'HEM.RINGS(105,6,"grommet")', gives: 0, because: 'The rod runs through the heading.' },
  ],
  answer: rings,
});

export const POCKET = cellFunction({
  name: 'POCKET',
  chapter: 'Heading and hardware',
  says: 'Depth of a rod pocket between its stitching lines: half of the rod’s round and its ease.',
  takes: { rodAround: optional(SIZE, 'the rod, measured loosely round; blank takes the house’s') },
  gives: LENGTH,
  examples: [
    {
      formula: 'HEM.POCKET("3 1/8")',
      gives: 1.875,
      because:
        'A 1 in pole measures 3⅛ loosely round; with ⅝ ease the pocket is 3¾ round, stitched 1⅞ apart (Project Gutenberg #70586).',
    },
    { formula: 'HEM.POCKET(4.375)', gives: 2.5, because: '(4⅜ + ⅝) ÷ 2.' },
  ],
  answer: pocket,
});
