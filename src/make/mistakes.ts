/** The mistakes planted into true orders, one kind at a time, each with the findings that name it. */
import type { Window } from '../core/window/columns';
import { Refusal } from '../core/cell/answer';
import type { FindingCode } from '../core/findings/table';
import type { Length } from '../core/exact/length';
import type { House } from '../core/house/house';
import { addUp, figuresOf, type Chance, type Made, type OrderRow } from './orders';

export interface Mistake {
  readonly kind: string;
  readonly codes: readonly FindingCode[];
  /** The rest of the job is the witness: planted once in a job. */
  readonly oncePerJob?: boolean;
  /** Changes the row as the mistake would; false where it makes no difference to this order. */
  plant(row: OrderRow, made: Made, house: House, chance: Chance, all: readonly Made[]): boolean;
}

const num = (row: OrderRow, heading: string): number => Number(row[heading]);
const tidy = (figure: number): number => Number(figure.toPrecision(10));

/** Reckons the ordered figures as if the window were otherwise; false where nothing ordered changes. */
function reckonAsIf(row: OrderRow, { drawn }: Made, house: House, other: Partial<Window>): boolean {
  const figures = figuresOf({ ...drawn, window: { ...drawn.window, ...other } }, house);
  delete figures['rod width'];
  delete figures['finished drop'];
  const { lengthTolerance, yardageTolerance } = house.rules;
  const { small, large } = house.unit;
  const per = { in: 25.4e6, cm: 1e7, yd: 914.4e6, m: 1e9 } as Record<string, number>;
  const changed = Object.entries(figures).some(([heading, figure]) => {
    if (row[heading] === figure || typeof figure !== 'number') return false;
    const apart = Math.abs(figure - num(row, heading));
    if (heading.includes('yardage')) return apart * (per[large] as number) > yardageTolerance;
    if (heading === 'cut length' || heading === 'finished width')
      return apart * (per[small] as number) > lengthTolerance;
    return true;
  });
  Object.assign(row, figures);
  addUp(row);
  return changed;
}

const FIGURES = ['rod width', 'finished drop', 'finished width', 'widths', 'cut length', 'yardage'];

export const MISTAKES: readonly Mistake[] = [
  {
    kind: 'width and height swapped',
    codes: ['swapped'],
    plant(row) {
      const [width, height] = [num(row, 'inside width'), num(row, 'measured height')];
      [row['inside width'], row['measured height']] = [height, width];
      return Math.abs(width - height) > 1;
    },
  },
  {
    kind: 'typed in the other unit',
    codes: ['unitSlip', 'unitOutOfRange'],
    plant(row, _made, { unit }, chance) {
      const heading = ['inside width', 'measured height', 'fabric width'][Math.floor(chance() * 3)] as string;
      const factor = unit.name === 'inches' ? 2.54 : 1 / 2.54;
      row[heading] = tidy(num(row, heading) * factor);
      return true;
    },
  },
  {
    kind: 'decimal point slipped',
    codes: ['decimalSlip', 'outOfRange', 'figureDiffers'],
    plant(row, _made, _house, chance) {
      const headings = ['inside width', 'measured height', 'rod width', 'cut length', 'yardage'];
      const heading = headings[Math.floor(chance() * headings.length)] as string;
      row[heading] = tidy(num(row, heading) * (chance() < 0.5 ? 10 : 0.1));
      if (heading === 'yardage') addUp(row);
      return true;
    },
  },
  {
    kind: 'return left out',
    codes: ['returnLeftOut', 'figureDiffers'],
    plant: (row, made, house) => reckonAsIf(row, made, house, { return: 0 as Length }),
  },
  {
    kind: 'overlap left out',
    codes: ['overlapLeftOut', 'returnLeftOut', 'figureDiffers'],
    plant: (row, made, house) =>
      made.drawn.window.draw === 'pair' && reckonAsIf(row, made, house, { overlap: 0 as Length }),
  },
  {
    kind: 'repeat ignored',
    codes: ['repeatIgnored', 'figureDiffers'],
    plant: (row, made, house) =>
      made.drawn.window.verticalRepeat !== undefined &&
      reckonAsIf(row, made, house, { verticalRepeat: undefined }),
  },
  {
    kind: 'repeat from the wrong direction',
    codes: ['repeatTurned', 'repeatIgnored', 'figureDiffers'],
    plant(row, made, house) {
      const { verticalRepeat, horizontalRepeat } = made.drawn.window;
      if (verticalRepeat === undefined || horizontalRepeat === undefined) return false;
      return reckonAsIf(row, made, house, { verticalRepeat: horizontalRepeat });
    },
  },
  {
    kind: 'quantity left out',
    codes: ['quantityLeftOut', 'figureDiffers'],
    plant: (row, made, house) =>
      (made.drawn.window.quantity ?? 1) > 1 && reckonAsIf(row, made, house, { quantity: 1 }),
  },
  {
    kind: 'a figure typed wrongly',
    codes: ['figureDiffers', 'rodOutsideBand', 'returnLeftOut', 'overlapLeftOut', 'repeatIgnored'],
    plant(row, _made, _house, chance) {
      const heading = FIGURES[Math.floor(chance() * FIGURES.length)] as string;
      row[heading] = num(row, heading) + (chance() < 0.5 || num(row, heading) < 4 ? 2 : -2);
      if (heading === 'yardage') addUp(row);
      return true;
    },
  },
  {
    kind: 'parts that do not add up',
    codes: ['partsDoNotAdd'],
    plant(row, _made, _house, chance) {
      row['total'] = tidy(num(row, 'total') + (chance() < 0.5 ? num(row, 'tax') : -num(row, 'hardware')));
      row['deposit'] = '';
      return true;
    },
  },
  {
    kind: 'price × yardage multiplied wrongly',
    codes: ['amountDiffers'],
    plant(row) {
      const before = num(row, 'amount');
      row['amount'] = tidy(before + 9);
      row['total'] = tidy(num(row, 'total') + 9);
      return true;
    },
  },
  {
    kind: 'odd grommets',
    codes: ['oddGrommets'],
    plant(row) {
      if (row['heading'] !== 'grommet') return false;
      row['heading marks'] = num(row, 'heading marks') + 1;
      return true;
    },
  },
  {
    kind: 'stack over the glass',
    codes: ['stackOverGlass'],
    plant(row, { drawn }) {
      row['clear of glass'] = 'yes';
      // A third of half the rod never fits beside an opening this wide.
      const { heading, openingWidth } = drawn.window;
      return heading === 'pinch' && (openingWidth as number) > 55 * 25_400_000;
    },
  },
  {
    kind: 'too narrow to railroad',
    codes: ['orderTooNarrowToTurn'],
    plant(row) {
      if (row['railroaded'] === 'yes' || num(row, 'cut length') <= num(row, 'fabric width')) return false;
      row['railroaded'] = 'yes';
      return true;
    },
  },
  {
    kind: 'no flame certificate',
    codes: ['noCertificate'],
    plant(row) {
      if (row['public job'] !== 'yes') return false;
      row['flame certificate'] = '';
      return true;
    },
  },
  {
    kind: 'cords in reach of a child',
    codes: ['cordInReach'],
    plant(row) {
      Object.assign(row, { 'drawn by': 'cord', children: 'yes', 'child safe': '' });
      return true;
    },
  },
  {
    kind: 'ordered twice',
    codes: ['duplicateOrder'],
    oncePerJob: true,
    plant(row, made, _house, _chance, all) {
      const at = all.indexOf(made);
      const before = all[at - 1];
      if (before === undefined || before.row['job'] !== row['job']) return false;
      Object.assign(row, before.row);
      return true;
    },
  },
  {
    kind: 'measured wrongly in a job of one height',
    codes: ['unlikeItsJob'],
    oncePerJob: true,
    plant(row, made, house, _chance, all) {
      const job = all.filter((one) => one.row['job'] === row['job']);
      if (job.length < 6 || job.some((one) => one.row['measured height'] !== row['measured height']))
        return false;
      if (job.some((one) => one.row['heading'] !== row['heading'])) return false;
      const measured = Math.round((made.drawn.window.measured as number) * 0.65) as Length;
      const drawn = { ...made.drawn, window: { ...made.drawn.window, measured } };
      try {
        Object.assign(row, figuresOf(drawn, house));
      } catch (thrown) {
        if (thrown instanceof Refusal) return false;
        throw thrown;
      }
      row['measured height'] = tidy(num(row, 'measured height') * 0.65);
      addUp(row);
      return true;
    },
  },
  {
    kind: 'a price off the list',
    codes: ['priceOffList'],
    plant(row) {
      row['unit price'] = tidy(num(row, 'unit price') + 2.5);
      addUp(row);
      return true;
    },
  },
];
