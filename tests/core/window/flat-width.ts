/** A figure that the project does not have, declared as a new one would be, and nowhere else. */
import { lengthFigure } from '../../../src/core/cell/answer';
import { SIZE } from '../../../src/core/cell/length-kinds';
import { exact } from '../../../src/core/exact/length';
import type { WindowFigure } from '../../../src/core/window/figure';

export const FLAT_WIDTH: WindowFigure = {
  key: 'flatWidth',
  group: 'Cloth',
  heading: 'flat width',
  also: ['laid flat'],
  says: 'the cloth of both panels before pleating',
  kind: SIZE,
  format: '0.0',
  from: 'SCHEDULE',
  onlyFrom: 'SCHEDULE',
  needs: [['rodWidth', 'openingWidth'], ['heading'], ['fabricWidth']],
  ordered: true,
  work: (window) => lengthFigure(exact(Math.round(window.cloth().work.flat))),
};
