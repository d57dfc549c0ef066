/** From the rod to the widths of cloth. */
import { optional } from '../src/core/cell/fields';
import { WIDTH_COUNT } from '../src/core/cell/figure-kinds';
import { finishedWidth } from '../src/core/cloth/hung';
import { fullness, panels, saveWidth, widths } from '../src/core/cloth/widths';
import { cellFunction } from './declare';
import { COUNT, LENGTH, NUMBER } from './gives';
import {
  DRAW,
  FABRIC_WIDTH,
  FULLNESS as FULLNESS_WANTED,
  HEADING,
  HORIZONTAL_REPEAT,
  OVERLAP,
  RETURN,
  ROD_WIDTH,
  WIDTHS_IN_ALL,
} from './inputs';

const BARE = '{"return",0;"overlap",0;"side hem",0;"seam",0}';

export const FINISHEDWIDTH = cellFunction({
  name: 'FINISHEDWIDTH',
  chapter: 'Measure',
  says: 'Finished width of one panel: its share of the rod, its return and its overlap.',
  takes: { rodWidth: ROD_WIDTH, heading: HEADING, draw: DRAW, return: RETURN, overlap: OVERLAP },
  gives: LENGTH,
  examples: [
    {
      formula: 'HEM.FINISHEDWIDTH(104,"pinch")',
      gives: 55.5,
      because: 'Each panel of a pair on rings: 104 ÷ 2 + 3½ return; no carriers cross, so no overlap.',
    },
    {
      formula: 'HEM.FINISHEDWIDTH(104,"pinch",,,,{"hang on","track"})',
      gives: 58.5,
      because: 'On a track the leading carriers cross: 104 ÷ 2 + 3½ return + 3 overlap.',
    },
    {
      formula: 'HEM.FINISHEDWIDTH(104,"pinch","stationary")',
      gives: 19.2,
      because: 'Two side panels of one width each: 54 − 6 in hems = 48 flat, ÷ 2.5; the return is in it.',
    },
    {
      formula: 'HEM.FINISHEDWIDTH(104,"pinch","one-way left")',
      gives: 111,
      because: 'One panel: 104 and a 3½ in return at each end.',
    },
    {
      formula: 'HEM.FINISHEDWIDTH(104,"pinch","pair",0,0)',
      gives: 52,
      because: 'Without return and overlap: half the rod.',
    },
  ],
  answer: finishedWidth,
});

export const WIDTHS = cellFunction({
  name: 'WIDTHS',
  chapter: 'Cloth',
  says: 'Widths of cloth for the whole treatment, rounded as the house does.',
  takes: {
    rodWidth: ROD_WIDTH,
    heading: HEADING,
    fabricWidth: FABRIC_WIDTH,
    draw: DRAW,
    fullness: FULLNESS_WANTED,
    horizontalRepeat: HORIZONTAL_REPEAT,
  },
  gives: COUNT,
  examples: [
    {
      formula: `HEM.WIDTHS(180,"pinch",54,"one-way left",2.7,,${BARE})`,
      gives: 9,
      because: '180 × 2.7 = 486, and 486 ÷ 54 is exactly 9: not one width more.',
    },
    {
      formula: 'HEM.WIDTHS(104,"pinch",54)',
      gives: 6,
      because:
        'Each panel: 55½ × 2.5 = 138¾, + 6 hems = 144¾; 2½ widths give 135 − 2 seams = 133, 3 give 160; a pair takes 6.',
    },
    {
      formula:
        'HEM.WIDTHS(104,"pinch",54,"pair",2.5,,{"hang on","track";"fullness basis","rod width";"overlap",1.5;"side hem",0;"seam",0;"widths rounding","whole per pair"})',
      gives: 5,
      because: '104 × 2.5 + 7 returns + 3 overlap = 270, exactly 5 widths of 54 (UFGS 12 22 00).',
    },
  ],
  answer: widths,
});

export const PANELS = cellFunction({
  name: 'PANELS',
  chapter: 'Cloth',
  says: 'Panels of so many widths each that cover the rod; a pair rounds to an even count.',
  takes: {
    rodWidth: ROD_WIDTH,
    heading: HEADING,
    fabricWidth: FABRIC_WIDTH,
    widthsEach: optional(WIDTH_COUNT, 'widths in each panel; blank is 1'),
    draw: DRAW,
    fullness: FULLNESS_WANTED,
  },
  gives: COUNT,
  examples: [
    {
      formula: 'HEM.PANELS(100,"grommet",54)',
      gives: 6,
      because: '107 × 2 = 214 flat; a panel of one width gives 48 after its hems, so 5, up to the even 6.',
    },
    {
      formula: 'HEM.PANELS(100,"grommet",54,2)',
      gives: 4,
      because: 'A panel of two widths gives 101; 214 takes 3, up to the even 4.',
    },
  ],
  answer: panels,
});

export const FULLNESS = cellFunction({
  name: 'FULLNESS',
  chapter: 'Cloth',
  says: 'The fullness that so many widths deliver: flat ÷ finished, hems and seams taken off.',
  takes: {
    rodWidth: ROD_WIDTH,
    widths: WIDTHS_IN_ALL,
    heading: HEADING,
    fabricWidth: FABRIC_WIDTH,
    draw: DRAW,
  },
  gives: NUMBER,
  examples: [
    {
      formula: `HEM.FULLNESS(108,6,"pinch",54,"pair",${BARE})`,
      gives: 3,
      because: '6 × 54 = 324, and 324 ÷ 108 is 3.',
    },
    {
      formula: 'HEM.FULLNESS(64,4,"flat",48,"pair",{"return",0;"overlap",0;"side hem",0;"seam",0})',
      gives: 3,
      because: 'A 64 in window at 3 times takes 4 widths of 48 (Project Gutenberg #63282).',
    },
  ],
  answer: fullness,
});

export const SAVEWIDTH = cellFunction({
  name: 'SAVEWIDTH',
  chapter: 'Cloth',
  says: 'How much narrower the rod must be to need one step of widths less.',
  takes: {
    rodWidth: ROD_WIDTH,
    heading: HEADING,
    fabricWidth: FABRIC_WIDTH,
    draw: DRAW,
    fullness: FULLNESS_WANTED,
  },
  gives: LENGTH,
  examples: [
    {
      formula: `HEM.SAVEWIDTH(110,"pinch",54,"one-way left",2.5,${BARE})`,
      gives: 2,
      because: '110 × 2.5 = 275 takes 6 widths; at 108 it is 270, exactly 5.',
    },
    {
      formula: `HEM.SAVEWIDTH(180,"pinch",54,"one-way left",2.7,${BARE})`,
      gives: 20,
      because: '9 widths are used up to the thread; 8 give 432, and 432 ÷ 2.7 is 160.',
    },
  ],
  answer: saveWidth,
});
