/** The slips that people make in order sheets, planted one to a line. */
import { fitsTurned, isLined, isTurned, panelsOf } from './cloth';
import { cents, exact, HALF, ONE, plain, ZERO } from './exact';
import type { Chance } from './chance';
import type { House } from './house';
import { figure, type Figure, type Line, type Word } from './line';
import { addUp, bill, reckon, taxesOf } from './reckon';
import { wordsShown, type Style } from './style';

export interface Scene {
  readonly style: Style;
  readonly chance: Chance;
  /** Every true line of the sheet, for slips that take another line's figure. */
  readonly lines: readonly Line[];
}

export interface Mistake {
  readonly kind: string;
  /** Changes the line as the slip would and names the word that is wrong; undefined where it cannot happen here. */
  plant(line: Line, scene: Scene): Word | undefined;
}

const CLOTH: readonly Figure[] = [
  'finished width',
  'widths',
  'cut length',
  'yards each',
  'yardage',
  'lining yardage',
  'heading marks',
];

/** What was typed in, not worked out. */
const inputs = ({ style }: Scene): Figure[] => {
  const shown = wordsShown(style);
  const height: Figure = shown.has('measured height') ? 'measured height' : 'finished drop';
  const across: Figure = shown.has('inside width') ? 'inside width' : 'rod width';
  return [across, height];
};

const pay = (line: Line, { style }: Scene): void => {
  Object.assign(line, bill(line, style.house, style.prices));
};

/** The cloth figures as if some givens, some rules or the widths were otherwise; the money follows. */
function asIf(
  line: Line,
  scene: Scene,
  other: { readonly given?: Line; readonly rules?: Partial<House>; readonly more?: number },
  words: readonly Figure[] = CLOTH,
): void {
  const { house } = scene.style;
  const due = reckon({ ...line, ...other.given }, { ...house, ...other.rules }, exact(other.more ?? 0));
  for (const word of words) if (line[word] !== undefined && due[word] !== undefined) line[word] = due[word];
  pay(line, scene);
}

const otherLine = (
  line: Line,
  { lines, chance }: Scene,
  fits: (other: Line) => boolean,
): Line | undefined => {
  for (let tries = 0; tries < 40; tries++) {
    const other = chance.pick(lines);
    if (other['order no'] !== line['order no'] && fits(other)) return other;
  }
  return undefined;
};

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

const shownFigures = (line: Line, { style }: Scene, words: readonly Figure[]): Figure[] => {
  const shown = wordsShown(style);
  return words.filter((word) => shown.has(word) && line[word] !== undefined);
};

const MEASURES: readonly Mistake[] = [
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

const widthsApart = (line: Line, { style }: Scene): number =>
  style.house.rounding === 'whole per panel' ? panelsOf(line.draw) : 1;

const CLOTHS: readonly Mistake[] = [
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

const MONEY: readonly Mistake[] = [
  {
    kind: 'price of another cloth',
    plant(line, scene) {
      const own = line['unit price'];
      if (own === undefined) return undefined;
      const others = scene.style.cloths.flatMap(({ price }) =>
        price === undefined || own.equals(exact(price)) ? [] : [price],
      );
      line['unit price'] = exact(scene.chance.pick(others));
      pay(line, scene);
      return 'unit price';
    },
  },
  {
    kind: 'amount multiplied wrongly',
    plant(line, scene) {
      const other = otherLine(line, scene, (one) => one.yardage !== undefined);
      if (line.amount === undefined || other?.yardage === undefined) return undefined;
      line.amount = cents(figure(line, 'unit price').mul(other.yardage));
      Object.assign(line, addUp(line, scene.style.house, scene.style.prices));
      return 'amount';
    },
  },
  {
    kind: 'parts do not add up',
    plant(line, scene) {
      const { parts } = scene.style.prices;
      const there = parts.filter((part) => line[part] !== undefined);
      const left = scene.chance.pick(there);
      if (line.total === undefined) return undefined;
      line.total = line.total.sub(figure(line, left));
      line.deposit = cents(line.total.mul(exact(scene.style.house.deposit)));
      return 'total';
    },
  },
  {
    kind: 'tax on labor that is exempt',
    plant(line, { style }) {
      if (style.house.taxLabor || line.tax === undefined) return undefined;
      const { together } = taxesOf(line, { ...style.house, taxLabor: true }, style.prices);
      line.total = figure(line, 'total').sub(line.tax).add(together);
      line.tax = together;
      line.deposit = cents(line.total.mul(exact(style.house.deposit)));
      return 'tax';
    },
  },
  {
    kind: 'discount taken twice',
    plant(line, { style, chance }) {
      const { discount, total } = line;
      if (discount === undefined || total === undefined) return undefined;
      line.total = total.sub(discount);
      if (chance.oneIn(2)) line.discount = discount.mul(2);
      line.deposit = cents(line.total.mul(exact(style.house.deposit)));
      return line.discount === discount ? 'total' : 'discount';
    },
  },
];

export const MISTAKES: readonly Mistake[] = [...MEASURES, ...CLOTHS, ...MONEY];
