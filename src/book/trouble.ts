/** What can stand in the way of reading or writing a workbook: one class, one table of sentences. */

/** What stands in the way, and what to do: between them stands what became of the workbook. */
interface Said {
  readonly why: string;
  readonly so: string;
  readonly then: string;
}
const unwritten = (why: string, then: string): Said => ({ why, so: ', so nothing was written.', then });
const plainly = (why: string, then: string): Said => ({ why, so: '.', then });

const SAYS = {
  protected: (sheet: string) =>
    unwritten(
      `The sheet “${sheet}” is protected`,
      'Take the protection off (Review, Unprotect Sheet) and try again.',
    ),
  editing: () =>
    unwritten('A cell is being edited', 'Finish it with Enter, or leave it with Esc, and try again.'),
  merged: (cells: string) =>
    unwritten(`${cells} is a merged cell and stands in the way`, 'Unmerge it, or point at other columns.'),
  filled: (cells: string) =>
    unwritten(
      `${cells} already holds something`,
      'Point at an empty column, or allow this column to be overwritten.',
    ),
  array: (cells: string) =>
    unwritten(
      `${cells} is part of a spilled or array formula and cannot be changed by itself`,
      'Point at other columns.',
    ),
  hidden: (rows: string) =>
    unwritten(rows, 'Show all rows (clear the filter), or say that hidden rows may be filled too.'),
  nameClash: (name: string) =>
    unwritten(`The name “${name}” is already used in this workbook`, 'Give another name.'),
  badName: (name: string, why: string) => `“${name}” cannot be used as a name here: ${why}.`,
  missing: (what: string) =>
    plainly(`${what} is no longer in the workbook`, 'It may have been renamed or deleted: choose it again.'),
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
    unwritten(
      `Room ${room} stands in row ${row} already`,
      'Leave it out of the rooms, or delete that row first.',
    ),
  roomsMissing: (rooms: string, name: string) =>
    unwritten(
      `${rooms} of these rooms ${/,|and/.test(rooms) ? 'are' : 'is'} not in “${name}”`,
      'Check the rooms, or leave them out.',
    ),
  ownFormula: (cells: string) =>
    unwritten(`${cells} holds a formula`, 'Change what the formula reads, or choose another column.'),
  rowsInTheWay: (cells: string) =>
    unwritten(
      `${cells} already holds something where the new rows would stand`,
      'Make room below the last window, and try again.',
    ),
  totalsBelow: (table: string) =>
    `The table “${table}” has a totals row below its windows and cannot grow by itself. Insert empty rows above the totals row, and try again.`,
  matrixShape: (cells: string) =>
    `${cells} is no matrix of rooms. Select the types down the left, the floors along the top and the numbers between them, headings included.`,
  matrixNumber: (cell: string, read: string) =>
    `${cell} reads “${read}”. Write how many rooms of that type are on that floor, a whole number, or leave it blank.`,
  matrixType: (cell: string, type: string, name: string) =>
    `${cell} names the type “${type}”, and no row of “${name}” has it as its room. Enter one window of that type first.`,
  tooLarge: (what: string) =>
    plainly(`${what} is more than one sheet or one request can hold`, 'Take fewer rows.'),
  tooOld: (what: string) => plainly(`This version of the spreadsheet program cannot ${what}`, ''),
  tooMuchToKeep: (cells: string) =>
    unwritten(`${cells} is more than can be written safely in one go`, 'Take fewer rows at a time.'),
  unfinished: () =>
    unwritten(
      'An earlier change to this workbook is still under way or was left half done',
      'Close this pane and open it again: it offers to put that change back.',
    ),
  lost: () => plainly('The connection to the workbook is lost', 'Close this pane and open it again.'),
  lostMidway: (says: string, why: string) =>
    `${why}, and it is not known how much of “${says}” stands. Close this pane and open it again: where it was left half done, it can be put back there.`,
  lostAsItWas: () =>
    unwritten('The connection to the workbook was lost for a while', 'The workbook is as it was: try again.'),
  closed: () => plainly('The workbook was closed', 'Open it and this pane again.'),
  cancelled: () => 'Stopped. The workbook is as it was.',
  halfDone: (says: string, why: string) =>
    `${why}. “${says}” was left half done: at the top of this pane it can be put back.`,
  halfLeft: (cells: string, why: string) =>
    `${why}. The change was left half done: look at ${cells}, and undo once.`,
  halfBack: (says: string, why: string) =>
    `${why}. “${says}” is put back in part only: press Put it back once more.`,
  changedMeanwhile: (cells: string) =>
    unwritten(
      `${cells} was changed while the pane waited for a cell to be left`,
      'Look at it, and try again.',
    ),
  takenBack: () =>
    unwritten(
      'While the pane waited for a cell to be left, the change was put back in another window',
      'Try again.',
    ),
  refused: (said: string) =>
    unwritten(`The spreadsheet program refused: ${said}`, 'Change that, and try again.'),
  unmarked: (why: string) => `${why}. No finding is marked now: mark them again.`,
  partlyMarked: (why: string, marked: string) =>
    `${why}. ${marked} marked now: mark the findings again, or take the marks away.`,
};

export type TroubleCode = keyof typeof SAYS;

/** Everything a Book throws on purpose; `message` is a sentence for a person. */
export class Trouble extends Error {
  constructor(
    readonly code: TroubleCode,
    sentence: string,
    /** What stands in the way, without a full stop, and what to do: empty where the sentence is one. */
    private readonly said: Omit<Said, 'so'> = { why: '', then: '' },
  ) {
    super(sentence);
    this.name = 'Trouble';
  }

  get why(): string {
    return this.said.why === '' ? this.message.replace(/\.$/, '') : this.said.why;
  }

  /** The same, where something had been written and was put back. */
  putBack(): Trouble {
    const { why, then } = this.said;
    if (why === '') return this;
    const so = 'What had been written until then was put back, so the workbook is as it was.';
    return new Trouble(this.code, `${why}. ${so} ${then}`.trim(), this.said);
  }
}

/** `throw trouble('protected', 'Windows')` */
export function trouble<C extends TroubleCode>(code: C, ...words: Parameters<(typeof SAYS)[C]>): Trouble {
  const said = (SAYS[code] as (...given: Parameters<(typeof SAYS)[C]>) => string | Said)(...words);
  if (typeof said === 'string') return new Trouble(code, said);
  return new Trouble(code, `${said.why}${said.so} ${said.then}`.trim(), said);
}
