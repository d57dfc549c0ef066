/** From the finished drop to the cut. */
import { cutLength } from '../src/core/cloth/cuts';
import { choiceKind, optional } from '../src/core/cell/fields';
import { LAYERS } from '../src/core/cell/treatment';
import { cellFunction } from './declare';
import { LENGTH } from './gives';
import { FINISHED_DROP, HEADING, VERTICAL_REPEAT } from './inputs';

export const CUTLENGTH = cellFunction({
  name: 'CUTLENGTH',
  chapter: 'Cloth',
  says: 'What is cut off the bolt for one width: drop, allowances, shrinkage, then the repeat.',
  takes: {
    finishedDrop: FINISHED_DROP,
    heading: HEADING,
    verticalRepeat: VERTICAL_REPEAT,
    layer: optional(choiceKind('a layer', LAYERS), 'face (default), sheer, lining or interlining'),
  },
  gives: LENGTH,
  examples: [
    { formula: 'HEM.CUTLENGTH(96,"pinch")', gives: 112, because: '96 + 8 at the top + 8 at the bottom.' },
    {
      formula: 'HEM.CUTLENGTH(95.5,"pinch",,"sheer")',
      gives: 113.5,
      because: 'A sheer has a 5 in double hem: 95½ + 8 + 10.',
    },
    { formula: 'HEM.CUTLENGTH(68,"pinch",24)', gives: 96, because: '68 + 16 = 84, up to 4 repeats of 24.' },
    {
      formula: 'HEM.CUTLENGTH(96,"pinch",,,{"shrinkage",0.04})',
      gives: 116,
      because: '96 ÷ (1 − 0.04) is exactly 100, and 100 + 16 is 116.',
    },
    {
      formula:
        'HEM.CUTLENGTH(90,"pinch",,"lining",{"lining cut","less than face";"top allowance pinch",5;"bottom allowance",3.5})',
      gives: 88.5,
      because: 'Face cut 98½, lining 10 in less (Project Gutenberg #63282).',
    },
  ],
  answer: cutLength,
});
