/** How a value crosses the cell’s border, and which rows and rules are read. */
import { table } from './entry';
import { parameter } from './parameters';

export const CELL_FINDINGS = table({
  // How a value crosses the cell's border
  missing: {
    weight: 'stop',
    says: (name: string, noun: string) =>
      `${name} is blank. Enter ${noun}, or point at the cell that holds it.`,
  },
  zeroMissing: {
    weight: 'stop',
    says: (name: string, noun: string) => `${name} is 0 or blank. Enter ${noun} above 0.`,
  },
  noWindowGiven: {
    weight: 'stop',
    says: (name: string) =>
      `${name} reads 0, which is no window. Write 1 or more. For one window leave it out, or hand the cell over as IF(D7="","",D7): an empty cell may arrive as 0.`,
  },
  nothingOrdered: {
    weight: 'stop',
    says: (name: string) =>
      `${name} reads 0, so nothing is ordered. Write what is ordered, or hand the cell over as IF(D7="","",D7): an empty cell may arrive as 0.`,
  },
  noWindowInRow: {
    weight: 'stop',
    says: (name: string) =>
      `${name} reads 0, so the row is no window. Write how many windows are alike; blank is one. A formula hands blank cells over as IF(A7:M52="","",A7:M52).`,
  },
  errorCell: {
    weight: 'stop',
    says: (name: string, read: string) =>
      `${name} points at a cell that shows ${read}. Mend that cell first.`,
  },
  stillWorking: {
    weight: 'note',
    says: (name: string, read: string) =>
      `${name} points at a cell that is still being worked out (${read}). Wait: the answer follows by itself.`,
  },
  oneCellWanted: {
    weight: 'stop',
    says: (name: string, rows: number, columns: number) =>
      `${name} takes one cell, and a range of ${rows} rows × ${columns} columns was given. Point at a single cell.`,
  },
  unreadable: {
    weight: 'stop',
    says: (name: string, read: string, noun: string, example: string) =>
      `${name} reads ${read}, which is not ${noun}. Write it like ${example}.`,
  },
  doubtful: {
    weight: 'stop',
    says: (name: string, read: string, one: string, other: string) =>
      `${name} reads ${read}, which could be ${one} or ${other}. Write the one you mean.`,
  },
  tooSmall: {
    weight: 'stop',
    says: (name: string, read: string, least: string) => `${name} reads ${read}. It must be ${least}.`,
  },
  tooGreat: {
    weight: 'stop',
    says: (name: string, read: string, most: string) =>
      `${name} reads ${read}, more than the most taken here, ${most}. Check the figure and its unit.`,
  },
  tooGreatShare: {
    weight: 'stop',
    says: (name: string, read: string, most: string, example: string) =>
      `${name} reads ${read}, more than the most taken here, ${most}. Write it like ${example}.`,
  },
  notWhole: {
    weight: 'stop',
    says: (name: string, read: string, steps: string) => `${name} reads ${read}. It must be ${steps}.`,
  },
  unknownChoice: {
    weight: 'stop',
    says: (name: string, read: string, list: string) => `${name} reads ${read}. Use one of: ${list}.`,
  },
  tooLarge: {
    weight: 'stop',
    says: (name: string) =>
      `The figures given to ${name} multiply to more than can be computed exactly. Check the quantity and the units.`,
  },
  tooManyInputs: {
    weight: 'stop',
    says: (name: string, most: number, given: number) =>
      `${name} takes ${most} inputs at most, and ${given} were given. Take the last ones away.`,
  },
  partOfNothing: {
    weight: 'stop',
    says: (name: string) =>
      `${name} holds a part of 0. Write the straight parts that are there, like 30 + 60 + 30; a formula hands blank cells over as IF(B7:D7="","",B7:D7).`,
  },
  tooManyParts: {
    weight: 'stop',
    says: (name: string, parts: number, most: number) =>
      `${name} holds ${parts} parts, more than the most taken here, ${most}. Write one bay, from its left end to its right.`,
  },
  rangeTooNarrow: {
    weight: 'stop',
    says: (name: string, wanted: string, columns: number) =>
      `${name} takes ${wanted}, and the range given has ${columns === 1 ? '1 column' : `${columns} columns`}. Widen the range.`,
  },

  // Whole rows
  tooManyRows: {
    weight: 'stop',
    says: (name: string, rows: number, most: number) =>
      `${name} is filled down to row ${rows}, more than the most taken here, ${most} rows. Point at fewer rows, in several formulas.`,
  },
  sameColumnTwice: {
    elsewhere: true,
    weight: 'stop',
    says: (one: string, other: string, meaning: string) =>
      `${parameter('headers')} holds two columns for the ${meaning}: “${one}” and “${other}”. Rename one, or leave it out of the range.`,
  },
  noColumns: {
    weight: 'stop',
    says: (read: string) =>
      `${parameter('headers')} reads ${read}, and none of it is a column known here. Point at the row that heads the table, with columns like inside width, measured height, heading and fabric width.`,
  },
  rowsAndHeaders: {
    weight: 'stop',
    says: (headers: number, columns: number) =>
      `${parameter('headers')} has ${headers} columns and ${parameter('rows')} has ${columns}. Point both at the same columns.`,
  },
  unknownOutput: {
    weight: 'stop',
    says: (read: string, list: string) =>
      `${parameter('outputs')} reads ${read}. Use one or more of: ${list}.`,
  },

  // Rooms by pattern
  roomsUnreadable: {
    elsewhere: true,
    weight: 'stop',
    says: (read: string) =>
      `${parameter('rooms')} reads “${read}”. Write numbers and ranges like 401-448 even, or 401-448 not 404, 413.`,
  },
  roomsBackwards: {
    elsewhere: true,
    weight: 'stop',
    says: (read: string) =>
      `${parameter('rooms')} reads “${read}”, which runs backwards. Put the lower number first.`,
  },
  tooManyRooms: {
    elsewhere: true,
    weight: 'stop',
    says: (read: string, most: number) =>
      `${parameter('rooms')} reads “${read}”, more than ${most} rooms. Check the numbers.`,
  },
  roomNotInPattern: {
    elsewhere: true,
    weight: 'stop',
    says: (room: string, pattern: string) =>
      `Room ${room} is to be left out, but “${pattern}” does not hold it. Check the number.`,
  },
  noRooms: {
    elsewhere: true,
    weight: 'stop',
    says: (pattern: string) => `“${pattern}” leaves no room. Check the numbers and what is left out.`,
  },

  // House rules
  unknownRule: {
    weight: 'check',
    says: (read: string, near: string) =>
      `The house rules hold ${read}, which is no rule's name and is not used. The nearest is “${near}”.`,
  },
  repeatedRule: {
    weight: 'check',
    says: (name: string) =>
      `The house rule “${name}” stands twice with different values; the lower one is used.`,
  },
  noSuchRule: {
    weight: 'stop',
    says: (read: string, near: string) =>
      `name reads ${read}, which is no house rule. The nearest is “${near}”.`,
  },
  noSuchFunction: {
    weight: 'stop',
    says: (read: string, list: string) => `${parameter('functionName')} reads ${read}. Use one of: ${list}.`,
  },
  priceNotSet: {
    weight: 'stop',
    says: (rule: string) =>
      `No price is set for this: add the house rule “${rule}” with your figure, or none where nothing is charged.`,
  },

  panelsNotTold: {
    weight: 'stop',
    says: () =>
      `The house charges making by the panel (house rule “labor by”), and ${parameter('widths')} do not tell the panels. Ask SCHEDULE for “labor”, which counts them by the draw.`,
  },

  // Rules by date
  rulesInTwoUnits: {
    weight: 'stop',
    says: (one: string, other: string) =>
      `The house rules of different days are in different units, ${one} and ${other}. Audit orders in inches and in centimetres apart.`,
  },
  rulesOfOneDay: {
    weight: 'stop',
    says: (day: string) =>
      `Two sets of house rules stand ${day}. Write the first day of the newer one into its rule “in force from”.`,
  },
});
