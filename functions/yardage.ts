/** Yardage of face and lining, and their weight. */
import { choiceKind, optional, required } from '../src/core/cell/fields';
import { AREAL_WEIGHT } from '../src/core/cell/figure-kinds';
import { REPEAT, SIZE } from '../src/core/cell/length-kinds';
import { choices, type LayerBehind } from '../src/core/cell/treatment';
import { lining } from '../src/core/cloth/lining';
import { clothWeight, railroaded, yardage } from '../src/core/cloth/yardage';
import { cellFunction } from './declare';
import { NUMBER, YARDAGE as YARDS } from './gives';
import {
  DRAW,
  FABRIC_WIDTH,
  FINISHED_DROP,
  FULLNESS,
  HEADING,
  HORIZONTAL_REPEAT,
  MATCH,
  QUANTITY,
  ROD_WIDTH,
  VERTICAL_REPEAT,
} from './inputs';

const LINING_LAYERS = choices<LayerBehind>(
  { word: 'lining', says: 'the lining or blackout', also: ['blackout'] },
  { word: 'interlining', says: 'the layer between face and lining' },
);

export const YARDAGE = cellFunction({
  name: 'YARDAGE',
  chapter: 'Cloth',
  says: 'Yardage of the face fabric for all the windows of a line.',
  takes: {
    rodWidth: ROD_WIDTH,
    finishedDrop: FINISHED_DROP,
    heading: HEADING,
    fabricWidth: FABRIC_WIDTH,
    verticalRepeat: VERTICAL_REPEAT,
    quantity: QUANTITY,
    draw: DRAW,
    fullness: FULLNESS,
    match: MATCH,
    horizontalRepeat: HORIZONTAL_REPEAT,
  },
  gives: YARDS,
  examples: [
    {
      formula: 'HEM.YARDAGE(104,96,"pinch",54)',
      gives: 18.75,
      because: '6 widths × 112 in ÷ 36 = 18⅔, up to the next ⅛ yd.',
    },
    {
      formula: 'HEM.YARDAGE(104,96,"pinch",54,,46)',
      gives: 858.75,
      because: '276 cuts × 112 in ÷ 36 = 858⅔, rounded once over the 46 windows.',
    },
    {
      formula:
        'HEM.YARDAGE(64,68,"flat",48,24,,,3,,,{"return",0;"overlap",0;"side hem",0;"seam",0;"top allowance flat",8;"yardage step",0})',
      gives: 32 / 3,
      because:
        '4 lengths of 84 in, a 24 in repeat: every cut up to 96 in, 10⅔ yd (Project Gutenberg #63282).',
    },
    {
      formula: 'HEM.YARDAGE(104,96,"pinch",54,20,,,,"half-drop")',
      gives: 20.375,
      because:
        'Each panel A, B, A: 4 A and 2 B. 112 in takes 120 before one like it and 130 before the other start: all A, then all B, 3 × 120 + 130 + 2 × 120 = 730 in, 20⅜ yd.',
    },
  ],
  answer: yardage,
});

export const LINING = cellFunction({
  name: 'LINING',
  chapter: 'Cloth',
  says: 'Yardage of a lining or interlining behind a face: its widths follow the face’s, its cut has no repeat.',
  takes: {
    rodWidth: ROD_WIDTH,
    finishedDrop: FINISHED_DROP,
    heading: HEADING,
    liningWidth: required(SIZE, 'the lining’s bolt width'),
    quantity: QUANTITY,
    draw: DRAW,
    fullness: FULLNESS,
    layer: optional(choiceKind('a layer', LINING_LAYERS), 'lining (default) or interlining'),
  },
  joined: {
    fabricWidth: optional(
      SIZE,
      'the bolt width of the face it lines; blank is the house’s usual fabric width',
    ),
    horizontalRepeat: optional(REPEAT, 'the pattern’s width of that face; blank or 0 is no repeat'),
  },
  gives: YARDS,
  examples: [
    {
      formula: 'HEM.LINING(104,96,"pinch",54)',
      gives: 17.25,
      because: '6 widths × 103 in (96 − 1 + 4 + 4) ÷ 36 = 17⅙, up to ⅛ yd.',
    },
    {
      formula: 'HEM.LINING(104,96,"pinch",54,10,,,"interlining")',
      gives: 186.75,
      because: '60 cuts as long as the face’s, 96 + 8 + 8 = 112 in: 186⅔ yd, rounded once.',
    },
    {
      formula: 'HEM.LINING(78,210,"pinch",54,1,"one-way left")',
      gives: 30.25,
      because: 'The face takes 5 widths for its hems and seams, and so does its lining: 5 × 217 in.',
    },
  ],
  answer: lining,
});

export const RAILROADED = cellFunction({
  name: 'RAILROADED',
  chapter: 'Cloth',
  says: 'Yardage with the cloth turned so that its width runs up the drop; #N/A with the reason where it is too narrow.',
  takes: {
    rodWidth: ROD_WIDTH,
    finishedDrop: FINISHED_DROP,
    heading: HEADING,
    fabricWidth: FABRIC_WIDTH,
    quantity: QUANTITY,
    draw: DRAW,
    fullness: FULLNESS,
    verticalRepeat: VERTICAL_REPEAT,
    horizontalRepeat: HORIZONTAL_REPEAT,
  },
  gives: YARDS,
  examples: [
    {
      formula: 'HEM.RAILROADED(104,96,"pinch",118)',
      gives: 8.125,
      because: 'The 112 in cut fits 118; each panel runs 138¾ + 6 = 144¾ in along the bolt, two are 8.04 yd.',
    },
    {
      formula: 'HEM.RAILROADED(104,96,"pinch",112,10)',
      gives: 80.5,
      because: 'It still fits exactly; 20 panels × 144¾ ÷ 36 = 80.42, up to ⅛ yd.',
    },
  ],
  answer: railroaded,
});

export const CLOTHWEIGHT = cellFunction({
  name: 'CLOTHWEIGHT',
  chapter: 'Cloth',
  says: 'Weight of the made-up layer of one window: pounds from oz/yd², kilograms from g/m² in a centimetre house.',
  takes: {
    rodWidth: ROD_WIDTH,
    finishedDrop: FINISHED_DROP,
    heading: HEADING,
    fabricWidth: FABRIC_WIDTH,
    arealWeight: required(AREAL_WEIGHT, 'weight of the cloth, oz/yd² or g/m² by the house’s unit'),
    draw: DRAW,
    fullness: FULLNESS,
  },
  gives: NUMBER,
  examples: [
    {
      formula: 'HEM.CLOTHWEIGHT(104,96,"pinch",54,12)',
      gives: 21,
      because: '6 widths × 1½ yd × 3.111 yd = 28 yd²; 28 × 12 ÷ 16 = 21 lb.',
    },
    {
      formula:
        'HEM.CLOTHWEIGHT(250,240,"pinch",140,300,,,{"unit","centimetres";"top allowance pinch",20;"bottom allowance",20})',
      gives: 7.056,
      because: '6 widths × 1.4 m × 2.8 m = 23.52 m²; × 300 g is 7.056 kg.',
    },
  ],
  answer: clothWeight,
});
