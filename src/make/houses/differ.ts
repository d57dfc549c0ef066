/** What a careful bookkeeper finds in a shown line: every figure reckoned again from what is measured in it. */
import type Fraction from 'fraction.js';
import { fitsTurned, isTurned } from './cloth';
import { apart, exact } from './exact';
import type { Figure, Line, Word } from './line';
import { addUp, bill, reckon } from './reckon';
import { wordsShown, type Style } from './style';

const LENGTHS: readonly Figure[] = ['rod width', 'finished drop', 'finished width', 'cut length'];
const YARDAGES: readonly Figure[] = ['yards each', 'yardage', 'lining yardage'];
const COUNTS: readonly Figure[] = ['widths', 'heading marks', 'panels'];
const MONEY: readonly Figure[] = ['amount', 'lining amount', 'labor', 'installation'];
const TOTALS: readonly Figure[] = ['discount', 'tax', 'total', 'deposit'];

/** Known from the house's rules or its price list where the sheet does not show them. */
const KNOWN: readonly Word[] = [
  'fabric width',
  'fullness',
  'draw',
  'quantity',
  'lining price',
  'labor rate',
  'match',
];

/** The line as far as the sheet shows it or the rules say it. */
export function seen(line: Line, style: Style): Line {
  const shown = wordsShown(style);
  return Object.fromEntries(
    Object.entries(line).filter(([word]) => shown.has(word as Word) || KNOWN.includes(word as Word)),
  ) as Line;
}

function farApart(shown: Fraction | undefined, due: Fraction | undefined, tolerance: Fraction): boolean {
  if (shown === undefined || due === undefined) return shown !== due;
  return apart(shown, due).compare(tolerance) > 0;
}

/** Every word shown whose figure is beyond the tolerance from what the line's own measures and parts give. */
export function differences(line: Line, style: Style): Word[] {
  const { house, prices } = style;
  const shown = wordsShown(style);
  const visible = seen(line, style);
  const found: Word[] = [];
  const compare = (words: readonly Figure[], due: Line, tolerance: Fraction): void => {
    for (const word of words)
      if (shown.has(word) && farApart(visible[word], due[word], tolerance)) found.push(word);
  };
  const due = reckon(visible, house);
  compare(LENGTHS, due, exact(house.tolerance.length));
  compare(YARDAGES, due, exact(house.tolerance.yardage));
  compare(COUNTS, due, exact(0));
  const cent = exact('0.01');
  const billed = {
    ...visible,
    widths: visible.widths ?? due.widths,
    yardage: visible.yardage ?? due.yardage,
  };
  compare(MONEY, bill(billed, house, prices), cent);
  if (prices.parts.every((part) => shown.has(part))) compare(TOTALS, addUp(visible, house, prices), cent);
  if (isTurned(visible) && !fitsTurned(visible, house)) found.push('railroaded');
  const listed = style.cloths.find(({ name }) => name === visible.fabric)?.price;
  if (
    shown.has('unit price') &&
    farApart(visible['unit price'], listed === undefined ? undefined : exact(listed), cent)
  )
    found.push('unit price');
  return found;
}
