/** One line of an order as it was made or as the sheet shows it: by word of the trade, lengths in the house's unit. */
import type Fraction from 'fraction.js';

/** Lengths, counts and money. */
export type Figure =
  | 'inside width'
  | 'left extension'
  | 'right extension'
  | 'rod width'
  | 'measured height'
  | 'finished drop'
  | 'fullness'
  | 'fabric width'
  | 'vertical repeat'
  | 'horizontal repeat'
  | 'quantity'
  | 'finished width'
  | 'panels'
  | 'widths'
  | 'cut length'
  | 'yards each'
  | 'yardage'
  | 'lining yardage'
  | 'heading marks'
  | 'unit price'
  | 'amount'
  | 'lining price'
  | 'lining amount'
  | 'labor rate'
  | 'labor'
  | 'hardware'
  | 'installation'
  | 'discount'
  | 'tax'
  | 'total'
  | 'deposit';

/** Choices and names. */
export type Text =
  | 'customer'
  | 'order no'
  | 'date'
  | 'room'
  | 'measured to'
  | 'heading'
  | 'draw'
  | 'fabric'
  | 'match'
  | 'lining'
  | 'railroaded'
  | 'note';

export type Word = Figure | Text;

export type Line = Partial<Record<Figure, Fraction | undefined>> & Partial<Record<Text, string | undefined>>;

/** The figure, which must stand there. */
export function figure(line: Line, word: Figure): Fraction {
  const found = line[word];
  if (found === undefined) throw new Error(`the line has no ${word}`);
  return found;
}
