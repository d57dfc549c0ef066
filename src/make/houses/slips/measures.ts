/** Slips in what is measured and typed. */
import type { Chance } from '../chance';
import { exact, HALF, plain } from '../exact';
import { figure, type Figure } from '../line';
import { asIf, inputs, otherLine, shownFigures, type Mistake } from './slip';

/** Another order of two neighbouring digits; undefined where none gives another figure. */
function transposed(written: string, chance: Chance): string | undefined {
  const places = [...written.slice(0, -1)].flatMap((digit, at) => {
    const next = written[at + 1] ?? '';
    const leads = at === 0 && next === '0';
    return /\d/.test(digit) && /\d/.test(next) && digit !== next && !leads ? [at] : [];
  });
  if (places.length === 0) return undefined;
  const at = chance.pick(places);
  return `${written.slice(0, at)}${written[at + 1] ?? ''}${written[at] ?? ''}${written.slice(at + 2)}`;
}

export const MEASURES: readonly Mistake[] = [
  {
    kind: 'width and height swapped',
    plant(line, scene) {
      const [across, height] = inputs(scene) as [Figure, Figure];
      [line[across], line[height]] = [line[height], line[across]];
      return across;
    },
  },
  {
    kind: 'typed in the other unit',
    plant(line, scene) {
      const word = scene.chance.pick([...inputs(scene), ...shownFigures(line, scene, ['fabric width'])]);
      const inch = exact('2.54');
      const turned =
        scene.style.house.unit === 'inches' ? figure(line, word).mul(inch) : figure(line, word).div(inch);
      line[word] = turned.mul(2).add(HALF).floor().div(2);
      return word;
    },
  },
  {
    kind: 'decimal point slipped',
    plant(line, scene) {
      const figures: Figure[] = [
        ...inputs(scene),
        'rod width',
        'cut length',
        'yardage',
        'unit price',
        'amount',
      ];
      const word = scene.chance.pick(shownFigures(line, scene, figures));
      line[word] = scene.chance.oneIn(2) ? figure(line, word).mul(10) : figure(line, word).div(10);
      return word;
    },
  },
  {
    kind: 'digits transposed',
    plant(line, scene) {
      const figures: Figure[] = [
        ...inputs(scene),
        'rod width',
        'finished drop',
        'cut length',
        'yardage',
        'amount',
        'total',
      ];
      const word = scene.chance.pick(shownFigures(line, scene, figures));
      const other = transposed(String(plain(figure(line, word))), scene.chance);
      if (other === undefined) return undefined;
      line[word] = exact(other);
      return word;
    },
  },
  {
    kind: 'side extension left out of the rod',
    plant(line, scene) {
      if (line['inside width'] === undefined) return undefined;
      const rod = line['inside width'].add(figure(line, 'left extension'));
      asIf(line, scene, { given: { 'inside width': undefined, 'rod width': rod } });
      line['rod width'] = rod;
      return 'rod width';
    },
  },
  {
    kind: 'point measured to ignored',
    plant(line, scene) {
      const height = line['measured height'];
      if (height === undefined) return undefined;
      asIf(line, scene, { given: { 'measured height': undefined, 'finished drop': height } });
      line['finished drop'] = height;
      return 'finished drop';
    },
  },
  {
    kind: 'drop of another row',
    plant(line, scene) {
      const other = otherLine(line, scene, (one) => one['finished drop'] !== undefined);
      if (other === undefined) return undefined;
      asIf(line, scene, { given: { 'measured height': undefined, 'finished drop': other['finished drop'] } });
      return 'cut length';
    },
  },
];
