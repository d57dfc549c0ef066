/** From the opening to the finished drop. */
import { choiceKind, listKind, optional, required } from '../src/core/cell/fields';
import { ALLOWANCE, SIZE } from '../src/core/cell/length-kinds';
import { OPENING, widthOf, type Opening } from '../src/core/cell/opening';
import { drop, extension, rodHeight, rodWidth, type End } from '../src/core/measure/measure';
import { choices, FLOOR_FINISHES, HEADINGS, MEASURED_TO } from '../src/core/cell/treatment';
import { cellFunction } from './declare';
import { LENGTH } from './gives';
import { DRAW, HEADING, HEADING_IF_KNOWN, LINING } from './inputs';

const ENDS = choices<End>(
  { word: 'low', says: 'the low end of the band' },
  { word: 'high', says: 'the high end of the band' },
  { word: 'clear', says: 'the least that the drawn-back stack does not pass', also: ['clear of the glass'] },
);

const OPENING_WIDTH = required(
  OPENING,
  'the opening, measured inside the frame; a bay by its straight parts, as a range or like 30 + 60 + 30',
);

/** Its width, and its parts where it was written in parts. */
const asOpening = ({ parts, inParts }: Opening) => ({
  openingWidth: widthOf(parts),
  parts: inParts ? parts : undefined,
});

export const EXTENSION = cellFunction({
  name: 'EXTENSION',
  chapter: 'Measure',
  says: 'How far the rod should run past the opening on one side.',
  takes: {
    openingWidth: OPENING_WIDTH,
    end: optional(
      choiceKind('low, high or clear', ENDS),
      'low (default) or high end of the band, or clear: the least that the drawn-back stack does not pass',
    ),
  },
  joined: {
    heading: optional(choiceKind('a heading', HEADINGS), 'the heading that stacks; blank is pinch'),
    draw: DRAW,
    lining: LINING,
  },
  gives: LENGTH,
  examples: [
    {
      formula: 'HEM.EXTENSION(44)',
      gives: 6,
      because: 'An opening up to 44 in takes 6 to 10 in each side; the low end is 6.',
    },
    {
      formula: 'HEM.EXTENSION(96,"high")',
      gives: 15,
      because: 'Over 44 to 96 in takes 11 to 15 in each side.',
    },
    {
      formula: 'HEM.EXTENSION("8\' 1""")',
      gives: 16,
      because: '97 in is over 96 in: 16 to 20 in each side.',
    },
    {
      formula: 'HEM.EXTENSION(100,"clear",,"wave")',
      gives: 12.5,
      because: 'A wave pair stacks 0.1 of the rod on each side: 0.1 × (100 + 2 × 12½) is 12½.',
    },
  ],
  answer: ({ openingWidth, ...more }, rules) => extension({ ...more, ...asOpening(openingWidth) }, rules),
});

export const RODWIDTH = cellFunction({
  name: 'RODWIDTH',
  chapter: 'Measure',
  says: 'What the rod is ordered by: inside width with both side extensions, returns not in it.',
  takes: {
    openingWidth: OPENING_WIDTH,
    leftExtension: optional(
      ALLOWANCE,
      'past the opening on the left; blank takes the recommended low end, 0 is none',
    ),
    rightExtension: optional(
      ALLOWANCE,
      'past the opening on the right; blank takes the recommended low end, 0 is none',
    ),
  },
  gives: LENGTH,
  examples: [
    {
      formula: 'HEM.RODWIDTH(72)',
      gives: 94,
      because: '72 + 11 + 11: the low end for an opening over 44 up to 96 in.',
    },
    {
      formula: 'HEM.RODWIDTH("84 1/2",12,10)',
      gives: 106.5,
      because: '84½ + 12 + 10; the sides may differ.',
    },
    {
      formula: 'HEM.RODWIDTH(60,0,0)',
      gives: 60,
      because: 'Inside the frame: 0 is no extension, blank would be the usual one.',
    },
    {
      formula: 'HEM.RODWIDTH("30 + 60 + 30")',
      gives: 152,
      because: 'A bay of three straight parts, 120 in together, over 96: 16 in more at each end.',
    },
  ],
  answer: ({ openingWidth, ...more }, rules) => rodWidth({ ...more, ...asOpening(openingWidth) }, rules),
});

export const RODHEIGHT = cellFunction({
  name: 'RODHEIGHT',
  chapter: 'Measure',
  says: 'Floor to the middle of the rod, kept below the ceiling’s clearance.',
  takes: {
    openingTop: required(SIZE, 'floor to the top of the opening'),
    ceiling: optional(SIZE, 'floor to the ceiling'),
    heading: HEADING_IF_KNOWN,
  },
  gives: LENGTH,
  examples: [
    {
      formula: 'HEM.RODHEIGHT(84)',
      gives: 94,
      because: 'The middle of the rod stands 10 in above the opening.',
    },
    {
      formula: 'HEM.RODHEIGHT(84,96,"grommet")',
      gives: 93.5,
      because: 'A grommet rod keeps 2½ in below the ceiling: 96 − 2½.',
    },
  ],
  answer: rodHeight,
});

export const DROP = cellFunction({
  name: 'DROP',
  chapter: 'Measure',
  says: 'Finished drop, top edge to bottom edge, from what was measured.',
  takes: {
    measured: required(
      listKind(SIZE, 'a length'),
      'floor to the point measured: one cell, or the readings at left, centre and right',
    ),
    heading: HEADING,
    measuredTo: optional(
      choiceKind('a point measured to', MEASURED_TO),
      'the point measured to; blank is the middle of a rod still to be hung (for a heading on a track, the track)',
    ),
    floorFinish: optional(
      choiceKind('a floor finish', FLOOR_FINISHES),
      'how it meets the floor: clear (default), kiss, break or puddle; or the edge it ends at and is measured from: sill, apron (below the sill), radiator or counter',
    ),
  },
  gives: LENGTH,
  examples: [
    {
      formula: 'HEM.DROP(98,"pinch")',
      gives: 96,
      because: 'On rings, to the middle of a rod still to be hung: − 2.',
    },
    {
      formula: 'HEM.DROP(96.5,"pinch","hung ring")',
      gives: 96,
      because: 'To the bottom of a hung ring: − ½.',
    },
    { formula: 'HEM.DROP(94,"grommet")', gives: 96, because: 'Grommet, rod still to be hung: + 2.' },
    {
      formula: 'HEM.DROP(94.5,"grommet","hung rod")',
      gives: 96,
      because: 'Grommet, rod already hung: + 1½.',
    },
    {
      formula: 'HEM.DROP({98.25,98,98.5},"pinch")',
      gives: 96,
      because: 'The shortest of three floor readings rules.',
    },
    {
      formula: 'HEM.DROP(60,"pinch",,"apron")',
      gives: 62.5,
      because: 'Measured from the sill: 60 − 2 on rings, ½ of it the clearance, then 4 below the sill.',
    },
  ],
  answer: drop,
});
