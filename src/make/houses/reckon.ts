/** Every figure of a line from what was measured and chosen, and its bill from the figures that stand there. */
import type Fraction from 'fraction.js';
import {
  cutOf,
  cutsDiffer,
  deliveredFlat,
  dropOf,
  finishedWidthOf,
  isLined,
  isTurned,
  panelsOf,
  rodOf,
  widthsOf,
  yardageOf,
} from './cloth';
import { cents, exact, ONE, sum, ZERO } from './exact';
import type { Heading, House } from './house';
import { figure, type Figure, type Line } from './line';
import { liningYardageOf } from './lining';

/** An even count, spaced at most so far; the first half a space in. */
export function grommetsOf(line: Line, house: House): Fraction {
  const spaces = deliveredFlat(line, house).div(exact(house.grommetSpacing)).ceil();
  return spaces.mod(2).equals(0) ? spaces : spaces.add(1);
}

/** Rod, drop and cloth of a line; `more` widths a window beyond what the rules ask, or fewer. */
export function reckon(line: Line, house: House, more: Fraction = ZERO): Line {
  const turned = isTurned(line);
  const still = line.draw === 'stationary';
  const widths = turned ? undefined : widthsOf(line, house).add(more);
  const yardage = yardageOf(line, house, widths ?? ONE);
  return {
    'rod width': rodOf(line),
    'finished drop': dropOf(line, house),
    'finished width': still ? undefined : finishedWidthOf(line, house),
    panels: exact(panelsOf(line.draw)),
    widths,
    'cut length': turned || cutsDiffer(line, house) ? undefined : cutOf(line, house),
    'yards each': house.yardageBy === 'window' ? yardage.div(line.quantity ?? ONE) : undefined,
    yardage,
    'lining yardage': liningYardageOf(line, house),
    'heading marks': line.heading === 'grommet' && !turned && !still ? grommetsOf(line, house) : undefined,
  };
}

/** How a house prices what it sells. */
export interface Prices {
  /** What the cloth's price is for; undefined where the client sends the cloth. */
  readonly cloth?: 'yardage' | 'widths' | 'pair' | 'window';
  /** What the making rate in the sheet is for. */
  readonly making?: 'panel' | 'pair' | 'window' | 'width';
  /** The columns that add up to the line's total. */
  readonly parts: readonly Figure[];
}

/** How many of what a price is for, in all the windows of the line. */
export function countOf(line: Line, per: 'panel' | 'pair' | 'window' | 'width'): Fraction {
  const quantity = line.quantity ?? ONE;
  if (per === 'panel') return exact(panelsOf(line.draw)).mul(quantity);
  return per === 'width' ? figure(line, 'widths').mul(quantity) : quantity;
}

function amountOf(line: Line, { cloth }: Prices): Fraction | undefined {
  const price = line['unit price'];
  if (price === undefined || cloth === undefined) return undefined;
  if (cloth === 'yardage') return cents(figure(line, 'yardage').mul(price));
  return cents(countOf(line, cloth === 'widths' ? 'width' : cloth).mul(price));
}

/** Making by the house's rule: a width, more where lined, a share more where tall. */
export function laborOf(line: Line, house: House, { making }: Prices): Fraction | undefined {
  const { labor } = house;
  if (making !== undefined)
    return line['labor rate'] === undefined
      ? undefined
      : cents(line['labor rate'].mul(countOf(line, making)));
  if (labor === undefined || line.widths === undefined) return undefined;
  const rate = exact(labor.by[(line.heading ?? 'pinch') as Heading] ?? 0);
  const lined = rate.add(isLined(line) ? exact(labor.lined) : ZERO);
  const tall = dropOf(line, house).compare(exact(labor.heightFrom)) > 0;
  const share = tall ? ONE.add(exact(labor.heightSurcharge)) : ONE;
  return cents(
    lined
      .mul(share)
      .mul(line.widths)
      .mul(line.quantity ?? ONE),
  );
}

const isTaxed = (word: Figure, house: House): boolean =>
  word === 'labor' ? house.taxLabor : word === 'installation' ? house.taxInstallation : true;

/** Tax of the line's parts together and part by part; the two may be a cent apart. */
export function taxesOf(
  line: Line,
  house: House,
  { parts }: Prices,
): { together: Fraction; apart: Fraction } {
  const rate = exact(house.taxRate);
  const less = ONE.sub(exact(house.discount));
  const taxed = parts.filter((word) => isTaxed(word, house)).map((word) => (line[word] ?? ZERO).mul(less));
  return {
    together: cents(sum(taxed).mul(rate)),
    apart: sum(taxed.map((part) => cents(part.mul(rate)))),
  };
}

/** The money of a line from its own cloth figures. */
export function bill(line: Line, house: House, prices: Prices): Line {
  const made: Line = {
    amount: amountOf(line, prices),
    'lining amount':
      line['lining price'] === undefined || line['lining yardage'] === undefined
        ? undefined
        : cents(line['lining yardage'].mul(line['lining price'])),
    labor: laborOf(line, house, prices),
    hardware: line.hardware,
    installation:
      house.installation === undefined
        ? undefined
        : cents(exact(house.installation).mul(line.quantity ?? ONE)),
  };
  return { ...made, ...addUp({ ...line, ...made }, house, prices) };
}

/** Discount, tax, total and deposit from the parts that stand in the line. */
export function addUp(line: Line, house: House, prices: Prices): Line {
  const parts = sum(prices.parts.map((word) => line[word] ?? ZERO));
  const discount = house.discount === 0 ? undefined : cents(parts.mul(exact(house.discount)));
  const tax = house.taxRate === 0 ? undefined : taxesOf(line, house, prices).together;
  const total = parts.sub(discount ?? ZERO).add(tax ?? ZERO);
  return { discount, tax, total, deposit: cents(total.mul(exact(house.deposit))) };
}
