/** What can stand in the way of reading or writing a workbook: one class, one table of sentences. */

const SAYS = {
  protected: (sheet: string) =>
    `The sheet “${sheet}” is protected, so nothing was written. Take the protection off (Review, Unprotect Sheet) and try again.`,
  editing: () =>
    'A cell is being edited, so nothing was written. Finish it with Enter, or leave it with Esc, and try again.',
  merged: (cells: string) =>
    `${cells} is a merged cell and stands in the way, so nothing was written. Unmerge it, or point at other columns.`,
  filled: (cells: string) =>
    `${cells} already holds something, so nothing was written. Point at an empty column, or allow this column to be overwritten.`,
  array: (cells: string) =>
    `${cells} is part of a spilled or array formula and cannot be changed by itself, so nothing was written. Point at other columns.`,
  hidden: (rows: string) =>
    `${rows}, so nothing was written. Show all rows (clear the filter), or say that hidden rows may be filled too.`,
  nameClash: (name: string) =>
    `The name “${name}” is already used in this workbook, so nothing was written. Give another name.`,
  badName: (name: string, why: string) => `“${name}” cannot be used as a name here: ${why}.`,
  missing: (what: string) =>
    `${what} is no longer in the workbook. It may have been renamed or deleted: choose it again.`,
  noHeader: (sheet: string) =>
    `No row of “${sheet}” names at least two columns of a window schedule, like width, drop or style. Select the row that holds the headings.`,
  noRows: (sheet: string) =>
    `No row below the headings of “${sheet}” holds a window. Enter the windows first, or select another table.`,
  needsColumn: (output: string, column: string) =>
    `${output} needs ${column}, and no column is taken for it. Say which column holds it, or give one figure for every row.`,
  noRoom: (table: string, column: string) =>
    `Column ${column} beside the table “${table}” is not empty, so the table cannot grow there. Clear it, or point at other columns.`,
  twice: (column: string, one: string, other: string) =>
    `Column ${column} is meant for ${one} and for ${other}. Give each its own column.`,
  ownInput: (column: string, heading: string) =>
    `Column ${column} holds ${heading}, which is worked with, so it cannot be overwritten. Point at another column.`,
  notARow: (name: string) =>
    `The selected cell is in no row of windows of “${name}”. Select the row that the others are to be like.`,
  noColumn: (what: string, name: string) =>
    `“${name}” has no column taken for ${what}. Say which column holds it, and try again.`,
  roomThere: (room: string, row: number) =>
    `Room ${room} stands in row ${row} already, so nothing was written. Leave it out of the rooms, or delete that row first.`,
  roomsMissing: (rooms: string, name: string) =>
    `${rooms} of these rooms ${/,|and/.test(rooms) ? 'are' : 'is'} not in “${name}”, so nothing was written. Check the rooms, or leave them out.`,
  ownFormula: (cells: string) =>
    `${cells} holds a formula, so nothing was written. Change what the formula reads, or choose another column.`,
  rowsInTheWay: (cells: string) =>
    `${cells} already holds something where the new rows would stand, so nothing was written. Make room below the last window, and try again.`,
  totalsBelow: (table: string) =>
    `The table “${table}” has a totals row below its windows and cannot grow by itself. Insert empty rows above the totals row, and try again.`,
  matrixShape: (cells: string) =>
    `${cells} is no matrix of rooms. Select the types down the left, the floors along the top and the numbers between them, headings included.`,
  matrixNumber: (cell: string, read: string) =>
    `${cell} reads “${read}”. Write how many rooms of that type are on that floor, a whole number, or leave it blank.`,
  matrixType: (cell: string, type: string, name: string) =>
    `${cell} names the type “${type}”, and no row of “${name}” has it as its room. Enter one window of that type first.`,
  tooLarge: (what: string) => `${what} is more than one sheet or one request can hold. Take fewer rows.`,
  tooOld: (what: string) => `This version of the spreadsheet program cannot ${what}.`,
  tooMuchToKeep: (cells: string) =>
    `${cells} is more than can be written safely in one go, so nothing was written. Take fewer rows at a time.`,
  unfinished: () =>
    'An earlier change to this workbook is still under way or was left half done, so nothing was written. Close this pane and open it again: it offers to put that change back.',
  lost: () =>
    'The connection to the workbook is lost. Close this pane and open it again: what was left half done can be put back there.',
  closed: () =>
    'The workbook was closed. Open it and this pane again: what was left half done can be put back there.',
  cancelled: () => 'Stopped. The workbook is as it was.',
  halfway: (cells: string) =>
    `The fill stopped and the workbook could not be put back as it was: look at ${cells}, or undo once.`,
  refused: (said: string) => `The spreadsheet program refused: ${said}. Nothing was written.`,
};

export type TroubleCode = keyof typeof SAYS;

/** Everything a Book throws on purpose; `message` is a sentence for a person. */
export class Trouble extends Error {
  constructor(
    readonly code: TroubleCode,
    sentence: string,
    override readonly cause?: unknown,
  ) {
    super(sentence);
    this.name = 'Trouble';
  }
}

/** `throw trouble('protected', 'Windows')` */
export const trouble = <C extends TroubleCode>(code: C, ...words: Parameters<(typeof SAYS)[C]>): Trouble =>
  new Trouble(code, (SAYS[code] as (...w: Parameters<(typeof SAYS)[C]>) => string)(...words));
