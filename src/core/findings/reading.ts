/** How a table was read: what is taken, asked, assumed and left unread. */
import { table } from './entry';

const headed = (column: string, heading: string): string =>
  heading === '' ? `Column ${column}` : `Column ${column}, headed “${heading}”,`;

export const READING_FINDINGS = table({
  columnTaken: {
    weight: 'check',
    says: (column: string, heading: string, meaning: string) =>
      `${headed(column, heading)} is taken for ${meaning}. If it is another, say which.`,
  },
  columnAsked: {
    weight: 'check',
    says: (column: string, heading: string, meanings: string) =>
      `${headed(column, heading)} could be ${meanings}, and nothing in the table tells which. It is left unread: say what it is.`,
  },
  columnsAlike: {
    weight: 'check',
    says: (heading: string, count: number, meaning: string) =>
      `${count} columns are headed “${heading}”, and nothing tells which of them is the ${meaning}: none of them is read. Rename those that mean something else.`,
  },
  columnNotTold: {
    weight: 'stop',
    says: (column: string, heading: string, meanings: string, rows: number) =>
      `${headed(column, heading)} could be ${meanings}, and ${
        rows === 1 ? 'one row does not tell which' : 'nothing in these rows tells which'
      }. Say in its heading which it is.`,
  },
  columnNotRead: {
    weight: 'note',
    says: (column: string, heading: string) => `${headed(column, heading)} is not read.`,
  },
  cellsUnread: {
    weight: 'check',
    says: (column: string, meaning: string, count: number, cell: string, text: string) =>
      count === 1
        ? `${cell} reads “${text}”, which cannot be read as ${meaning}. It is left out.`
        : `${count} cells of column ${column} cannot be read as ${meaning} and are left out; the first, ${cell}, reads “${text}”.`,
  },
  dayOrderAsked: {
    weight: 'check',
    says: (column: string, cell: string) =>
      `No date of column ${column} tells whether the day or the month comes first (${cell}). They are left out: say which comes first.`,
  },
  dateAmongFractions: {
    elsewhere: true,
    weight: 'check',
    says: (cell: string, fraction: string) =>
      `${cell} holds a date where its column holds fractions; it is read as ${fraction}. Check it.`,
  },
  dateNoFigure: {
    elsewhere: true,
    weight: 'check',
    says: (cell: string, meaning: string) =>
      `${cell} holds a date, and ${meaning} is a figure. It is left out: type it again.`,
  },
  tableAssumes: {
    elsewhere: true,
    weight: 'note',
    says: (what: string, rows: number) =>
      `${rows === 1 ? 'One row says' : `${rows} rows say`} nothing of ${what}: ${
        what === 'draw' ? 'a pair' : what === 'quantity' ? 'one window' : 'the house’s usual point'
      } is assumed there.`,
  },
  unitTaken: {
    elsewhere: true,
    weight: 'check',
    says: (unit: string, house: string) =>
      `No heading names a unit, and the figures are taken for ${unit} rather than ${house}. Write the unit into the headings.`,
  },
  unitOfNote: {
    elsewhere: true,
    weight: 'note',
    says: (unit: string, note: string) =>
      `Sizes are read in ${unit}, as a line of the sheet says: “${note}”.`,
  },
  perTold: {
    weight: 'note',
    says: (column: string, meaning: string, per: string) =>
      `The ${meaning} of column ${column} is for one ${per}, as the figures of the rows show.`,
  },
  tableBelow: {
    elsewhere: true,
    weight: 'check',
    says: (row: number) =>
      `Another table begins at row ${row}. It is not read: read it by itself, its headings in row ${row}.`,
  },
  figuresDisagree: {
    elsewhere: true,
    weight: 'check',
    says: (meanings: string) =>
      `The figures of the columns read as ${meanings} do not agree with each other. Check what these columns are.`,
  },
});
