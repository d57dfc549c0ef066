/** Auditing past orders, and learning from them. */
import { table } from './entry';
import { parameter } from './parameters';

export const AUDIT_FINDINGS = table({
  // Auditing past orders: the sheet as a whole
  oneRowWanted: {
    weight: 'stop',
    says: (rows: number) =>
      `${parameter('row')} takes one order row, and ${rows} rows were given. Point at one, or use AUDIT.`,
  },
  secondColumn: {
    weight: 'check',
    says: (heading: string, meaning: string, first: string) =>
      heading === first
        ? `Two columns are headed “${heading}”: the first is read as the ${meaning}, and the other is left out. Rename the one that means something else.`
        : `“${heading}” is a second column for the ${meaning}; “${first}” is read and this one is left out. Rename the one that means something else.`,
  },
  rowTooLong: {
    weight: 'check',
    says: (cells: number, headings: number, beyond: string) =>
      `The row has ${cells} cells and there are ${headings} headings, so its figures may stand one column too far on; beyond the last stands ${beyond}. In a CSV, a text with a comma stands in quotation marks.`,
  },
  columnInOtherUnit: {
    weight: 'note',
    says: (heading: string, unit: string, house: string) =>
      `“${heading}” is headed in ${unit} where the house rules say ${house}; its bare figures are read as ${unit}.`,
  },
  columnMissing: {
    weight: 'check',
    says: (missing: string, figures: string) =>
      `No column is headed ${missing}, so ${figures} cannot be worked out again and stays unchecked. Add the column, or name it so.`,
  },
  nothingToCompare: {
    weight: 'check',
    says: () =>
      'No ordered figure stands in the table (rod width, finished drop, widths, cut length, yardage …), so the rows are only looked over. Add the columns that were ordered.',
  },
  mixedUnits: {
    weight: 'check',
    says: (heading: string, one: string, other: string, unit: string) =>
      `${heading} mixes units: ${one} and ${other}. Bare figures are read as ${unit}; write one unit throughout.`,
  },
  currencySigns: {
    weight: 'note',
    says: (heading: string, sign: string) =>
      `${heading} is written with ${sign}; the sign is passed over and the figures are compared as they stand.`,
  },
  mixedCurrencies: {
    weight: 'check',
    says: (heading: string, signs: string) =>
      `${heading} holds amounts in several currencies (${signs}). They are compared as plain figures: keep one currency in a column.`,
  },
  datesAsText: {
    weight: 'note',
    says: (heading: string, example: string) =>
      `${heading} holds dates written as text, like ${example}. They are read by their figures; 2026-03-09 leaves no doubt.`,
  },
  rowSays: {
    weight: 'note',
    says: (note: string, what: string) => `The row says “${note}”. ${what}`,
  },
  laborUnchecked: {
    weight: 'note',
    says: (heading: string) =>
      `“${heading}” stays unchecked: no house rule says what making costs. Enter “labor pinch” and its kin, the price of a width by heading.`,
  },
  dateDoubtful: {
    weight: 'check',
    says: (heading: string, one: string, other: string) =>
      `${heading} could be ${one} or ${other}, and other rules or prices stood on each; the earlier is taken. Write the date like ${one}.`,
  },
  totalRowDiffers: {
    weight: 'check',
    says: (heading: string, found: string, expected: string) =>
      `The totals row reads ${found} for ${heading}, and the rows above it add up to ${expected}. Add the column up again.`,
  },

  // Auditing past orders: a figure against its working
  figureDiffers: {
    weight: 'check',
    says: (heading: string, found: string, expected: string, difference: string) =>
      `${heading} reads ${found}; worked out from the row it is ${expected}, ${difference}. Correct the order, or the figure it comes from.`,
  },
  notWorkedOut: {
    weight: 'check',
    says: (figures: string, why: string) => `${figures} could not be checked: ${why}`,
  },
  rodOutsideBand: {
    weight: 'check',
    says: (heading: string, found: string, low: string, high: string) =>
      `${heading} reads ${found}; for this opening the usual side extensions make it ${low} to ${high}. Check the rod, or enter the extensions that were meant.`,
  },

  // Auditing past orders: slips
  swapped: {
    weight: 'stop',
    says: (sure: string, one: string, other: string, read: string, agrees: string, witness: string) =>
      `${sure}: ${one} and ${other} are swapped. They read ${read}; ${agrees} would agree with ${witness}. Swap them back.`,
  },
  unitSlip: {
    weight: 'stop',
    says: (sure: string, heading: string, read: string, unit: string, means: string, witness: string) =>
      `${sure}: ${heading} was typed in ${unit}. It reads ${read}; ${means} would agree with ${witness}. Enter ${means}.`,
  },
  unitOutOfRange: {
    weight: 'check',
    says: (heading: string, read: string, unit: string, means: string) =>
      `Possibly ${heading} was typed in ${unit}: ${read} is out of the usual range, ${means} within it. Check the measurement.`,
  },
  outOfRange: {
    weight: 'check',
    says: (heading: string, read: string, usual: string) =>
      `${heading} reads ${read}; usual is ${usual}. Check the figure and its decimal point.`,
  },
  decimalSlip: {
    weight: 'stop',
    says: (sure: string, heading: string, read: string, means: string, witness: string) =>
      `${sure}: the decimal point of ${heading} slipped. It reads ${read}; ${means} would agree with ${witness}. Enter ${means}.`,
  },
  returnLeftOut: {
    weight: 'stop',
    says: (sure: string, which: string, figure: string, found: string, expected: string) =>
      `${sure}: ${which} left out. ${figure} reads ${found}, as if without; with it, it is ${expected}. Add it where it is not cut yet.`,
  },
  overlapLeftOut: {
    weight: 'stop',
    says: (sure: string, figure: string, found: string, expected: string) =>
      `${sure}: the overlap is left out. ${figure} reads ${found}, as if without; with it, it is ${expected}. Add it where it is not cut yet.`,
  },
  repeatIgnored: {
    weight: 'stop',
    says: (sure: string, repeat: string, figure: string, found: string, expected: string) =>
      `${sure}: the repeat of ${repeat} is ignored. ${figure} reads ${found}, the plain cut; with the repeat it is ${expected}. Order the difference where it is not cut yet.`,
  },
  repeatTurned: {
    weight: 'stop',
    says: (
      sure: string,
      horizontal: string,
      vertical: string,
      figure: string,
      found: string,
      expected: string,
    ) =>
      `${sure}: the repeat is taken from the wrong direction. ${figure} reads ${found}, as from ${horizontal}; the vertical repeat is ${vertical}, which gives ${expected}.`,
  },
  quantityLeftOut: {
    weight: 'stop',
    says: (sure: string, figure: string, found: string, quantity: string, expected: string) =>
      `${sure}: the quantity is left out. ${figure} reads ${found}, enough for one window; the row orders ${quantity}, which takes ${expected}.`,
  },
  partsDoNotAdd: {
    weight: 'check',
    says: (heading: string, found: string, parts: string, expected: string) =>
      `${heading} reads ${found}, and its parts (${parts}) add up to ${expected}. Add them again.`,
  },
  amountDiffers: {
    weight: 'check',
    says: (heading: string, found: string, price: string, expected: string) =>
      `${heading} reads ${found}; at ${price} it is ${expected}. Multiply again.`,
  },
  depositAboveTotal: {
    weight: 'check',
    says: (heading: string, found: string, total: string) =>
      `${heading} reads ${found}, more than the total of ${total}. Check both.`,
  },
  oddGrommets: {
    weight: 'stop',
    says: (heading: string, found: string, expected: string) =>
      `${heading} reads ${found}, an odd count: one edge would turn into the room. Use ${expected}.`,
  },
  stackOverGlass: {
    weight: 'check',
    says: (stack: string, extension: string, over: string, rod: string) =>
      `Drawn back it stacks ${stack} a side and has ${extension} beside the opening: ${over} lies over the glass. A rod of ${rod} would clear it.`,
  },
  liningOfASheer: {
    weight: 'stop',
    says: (name: string, read: string) =>
      `${name} reads ${read}, and the row is a sheer, which is never lined. Take it off the order, or give the drapery a row of its own.`,
  },
  orderTooNarrowToTurn: {
    weight: 'stop',
    says: (why: string) => `It is ordered railroaded. ${why}`,
  },
  noCertificate: {
    weight: 'stop',
    says: (read: string) =>
      `A public job and ${read} flame certificate. Ask for the certificate of this lot (NFPA 701, EN 13773, BS 5867-2 or what the place asks for); local codes and licensed practice decide.`,
  },
  aboveMethodOne: {
    weight: 'check',
    says: (heading: string, read: string, most: string) =>
      `${heading} reads ${read}, and the certificate names Method 1, which NFPA 701 keeps for cloth up to ${most}. Ask for Method 2; local codes and licensed practice decide.`,
  },
  cordInReach: {
    weight: 'stop',
    says: (read: string) =>
      `It is drawn by ${read} where a child can reach it: a strangulation hazard (ANSI/WCMA A100.1-2022; 16 CFR 1120.3 for stock products). Change to a wand, hand or motor; local codes and licensed practice decide.`,
  },
  leftBlank: {
    weight: 'check',
    says: (heading: string, whose: string) =>
      `${heading} is blank, and nearly every other ${whose} has it. Add it, or note why it has none.`,
  },
  duplicateOrder: {
    weight: 'check',
    says: (row: number, what: string) =>
      `The same window stands in row ${row} (${what}). Strike one of them if it was entered twice.`,
  },
  unlikeItsJob: {
    weight: 'check',
    says: (heading: string, read: string, group: string, others: string, usual: string, guess: string) =>
      `${heading} reads ${read}; in ${group} ${others} stand at about ${usual}. ${guess}`,
  },
  priceOffList: {
    weight: 'check',
    says: (heading: string, read: string, fabric: string, listed: string, since: string) =>
      `${heading} reads ${read}; the list in force has ${fabric} at ${listed}${since}. Check the price.`,
  },

  priceOfAnotherDay: {
    elsewhere: true,
    weight: 'check',
    says: (heading: string, read: string, fabric: string, usual: string, when: string) =>
      `${heading} reads ${read}, which ${fabric} cost ${when}; other orders of its days have it at ${usual}. Check which list it was priced by.`,
  },

  // Orders that go by other rules than those they are checked against
  otherRules: {
    elsewhere: true,
    weight: 'check',
    says: (heading: string, differ: number, outOf: string, rules: string, fit: number) =>
      `${differ} of the first ${outOf} differ in ${heading} from the rules they are checked against; ${fit} of these agree with ${rules}. Are these the rules of their day? What differs by that alone is said here once, and not row by row.`,
  },
  readInstead: {
    elsewhere: true,
    weight: 'note',
    says: (heading: string, means: string, better: number, outOf: string) =>
      `${heading} is taken for ${means}: in ${better} of the first ${outOf} more figures then agree with the rules. If it is another, say which.`,
  },
  ruleSeen: {
    elsewhere: true,
    weight: 'note',
    says: (rule: string, value: string, standing: string, better: number, outOf: string) =>
      `“${rule}” is “${value}” in these orders, not “${standing}”: of ${outOf} in which the two part, ${better} agree with it. They are checked so. Where it is the house’s, set it.`,
  },
  practiceSeen: {
    elsewhere: true,
    weight: 'note',
    says: (heading: string, practice: string, fit: number, outOf: string, alone: number) =>
      `${heading} is ${practice} in these orders: ${fit} of the first ${outOf} then agree with the rules, ${alone} without. It is checked so. Where a house rule says it, set that.`,
  },
  clothSeen: {
    elsewhere: true,
    weight: 'note',
    says: (way: string, fit: number, outOf: number) =>
      `These orders buy ${way}: ${fit} of the ${outOf} that can tell agree with it. They are checked so.`,
  },
  habitSeen: {
    elsewhere: true,
    weight: 'note',
    says: (heading: string, what: string, where: string, fit: number, outOf: number) =>
      `${heading} is ${what} than by the rules${where}: ${fit} of ${outOf} of these orders have it. It is checked so. Where a house rule says it, set that.`,
  },
  otherRulesUnknown: {
    elsewhere: true,
    weight: 'check',
    says: (heading: string, differ: number, outOf: string) =>
      `${differ} of the first ${outOf} differ in ${heading} from the rules they are checked against. Are these the rules of their day?`,
  },
  inMostRows: {
    elsewhere: true,
    weight: 'check',
    says: (column: string, count: number, orders: number, row: number, sentence: string) =>
      `${count} of the first ${orders} orders that fill ${column} have this, row ${row} first: ${sentence} It is taken for a way of this table, or for a column that is not what it seems; it is said here once and not checked row by row.`,
  },
  wordInRows: {
    elsewhere: true,
    weight: 'check',
    says: (count: number, orders: number, row: number, sentence: string) =>
      `${count} of the first ${orders} orders have this, row ${row} first: ${sentence} It is said here once.`,
  },
  sameDifference: {
    elsewhere: true,
    weight: 'check',
    says: (column: string, count: number, orders: number, row: number, much: string) =>
      `In ${count} of the first ${orders} orders ${column} is ${much} than it should be, row ${row} first, and no column says why. It is taken for a charge or a reduction of the house's own and said here once; give it a column.`,
  },
  notItsOwnSum: {
    elsewhere: true,
    weight: 'check',
    says: (column: string, read: string, held: number, outOf: number, way: string, here: string) =>
      `${column} reads ${read}; in ${held} of the first ${outOf} orders it is ${way}, here ${here}. Look which of them is wrong.`,
  },
  ofOtherRules: {
    weight: 'note',
    says: (orders: string) => `${orders} differ by the other rules alone and are not listed.`,
  },

  // Learning the house's rules from past orders
  learned: {
    elsewhere: true,
    weight: 'note',
    says: (rule: string, value: string, fit: number, outOf: number, standing: string, fitStanding: number) =>
      `${fit} of ${outOf} past orders fit ${rule} ${value}; the rule in force, ${standing}, fits ${fitStanding}.`,
  },
  nothingLearned: {
    elsewhere: true,
    weight: 'note',
    says: () => 'Too few rows hold both what was measured and what was ordered to learn a rule from.',
  },
});
