/** Slips in widths, repeats, yardage and lining. */
import { fitsTurned, isLined, isTurned, panelsOf } from '../cloth';
import { ONE, ZERO } from '../exact';
import type { Line } from '../line';
import { bill, reckon } from '../reckon';
import { wordsShown } from '../style';
import { asIf, otherLine, pay, type Mistake, type Scene } from './slip';

const widthsApart = (line: Line, { style }: Scene): number =>
  style.house.rounding === 'whole per panel' ? panelsOf(line.draw) : 1;

export const CLOTHS: readonly Mistake[] = [
  {
    kind: 'return left out',
    plant(line, scene) {
      asIf(line, scene, { rules: { return: 0 } });
      return 'finished width';
    },
  },
  {
    kind: 'overlap left out',
    plant(line, scene) {
      asIf(line, scene, { rules: { overlap: 0 } });
      return 'finished width';
    },
  },
  {
    kind: 'repeat ignored',
    plant(line, scene) {
      asIf(line, scene, { given: { 'vertical repeat': undefined, match: undefined } });
      return 'cut length';
    },
  },
  {
    kind: 'repeat from the wrong direction',
    plant(line, scene) {
      if (line['horizontal repeat'] === undefined || !wordsShown(scene.style).has('horizontal repeat'))
        return undefined;
      asIf(line, scene, { given: { 'vertical repeat': line['horizontal repeat'] } });
      return 'cut length';
    },
  },
  {
    kind: 'half-drop ignored',
    plant(line, scene) {
      if (line.match !== 'half-drop') return undefined;
      asIf(line, scene, { given: { match: 'straight' } }, ['yards each', 'yardage']);
      return 'yardage';
    },
  },
  {
    kind: 'a width short',
    plant(line, scene) {
      const fewer = widthsApart(line, scene);
      if (line.widths === undefined || line.widths.compare(fewer + 1) < 0) return undefined;
      asIf(line, scene, { more: -fewer }, ['widths', 'yards each', 'yardage']);
      return 'widths';
    },
  },
  {
    kind: 'a width too many',
    plant(line, scene) {
      if (line.widths === undefined) return undefined;
      asIf(line, scene, { more: widthsApart(line, scene) }, ['widths', 'yards each', 'yardage']);
      return 'widths';
    },
  },
  {
    kind: 'lining forgotten',
    plant(line, scene) {
      if (line['lining yardage'] === undefined) return undefined;
      line['lining yardage'] = scene.chance.oneIn(2) ? ZERO : undefined;
      pay(line, scene);
      return 'lining yardage';
    },
  },
  {
    kind: 'lining of another window',
    plant(line, scene) {
      if (line['lining yardage'] === undefined) return undefined;
      const other = otherLine(line, scene, (one) => one['lining yardage'] !== undefined);
      if (other === undefined) return undefined;
      line['lining yardage'] = other['lining yardage'];
      pay(line, scene);
      return 'lining yardage';
    },
  },
  {
    kind: 'quantity not multiplied',
    plant(line, scene) {
      asIf(line, scene, { given: { quantity: ONE } }, ['yardage', 'lining yardage']);
      return 'yardage';
    },
  },
  {
    kind: 'yard step skipped',
    plant(line, scene) {
      asIf(line, scene, { rules: { yardStep: 0.01 } }, ['yards each', 'yardage']);
      return 'yardage';
    },
  },
  {
    kind: 'odd grommets',
    plant(line, { chance }) {
      const marks = line['heading marks'];
      if (marks === undefined) return undefined;
      line['heading marks'] = chance.oneIn(2) ? marks.add(1) : marks.sub(1);
      return 'heading marks';
    },
  },
  {
    kind: 'cloth too narrow turned',
    plant(line, scene) {
      const { style } = scene;
      const plainCloth = line['vertical repeat'] === undefined && !isLined(line) && !isTurned(line);
      if (!wordsShown(style).has('railroaded') || !plainCloth || fitsTurned(line, style.house))
        return undefined;
      line.railroaded = 'yes';
      Object.assign(line, reckon(line, style.house));
      Object.assign(line, bill(line, style.house, style.prices));
      return 'railroaded';
    },
  },
];
