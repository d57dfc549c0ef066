/** The workbook's sheets, and what a sheet may be called. */
import { collection, found, invalidArgument, itemAlreadyExists, thing, type Kind } from '../kind';
import type { Sheet, Workbook } from '../model';
import { WORKSHEET } from './worksheet';

/** Refuses a name Excel refuses: longer than 31 characters, with []:*?/\ in it, or taken. */
export function checkSheetName(book: Workbook, name: string, own?: Sheet): void {
  if (name === '' || name.length > 31 || /[[\]:*?/\\]/.test(name) || /^'|'$/.test(name))
    throw invalidArgument();
  const taken = book.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  if (taken !== undefined && taken !== own) throw itemAlreadyExists();
}

const shownSheets = (book: Workbook, visibleOnly: unknown): Sheet[] =>
  visibleOnly === true ? book.sheets.filter((sheet) => sheet.visibility === 'Visible') : book.sheets;

const base = collection<Workbook, Sheet>('WorksheetCollection', () => WORKSHEET, {
  items: (book) => book.sheets,
  named: (sheet) => [sheet.id, sheet.name],
});

export const WORKSHEETS: Kind<Workbook> = {
  ...base,
  methods: {
    ...base.methods,
    Add(book, [name]) {
      let given = String(name ?? '');
      if (given === '') {
        let count = book.sheets.length + 1;
        while (book.sheetNamed(`Sheet${String(count)}`) !== undefined) count += 1;
        given = `Sheet${String(count)}`;
      }
      checkSheetName(book, given);
      return thing(WORKSHEET, book.addSheet(given));
    },
    GetActiveWorksheet: (book) => thing(WORKSHEET, book.active),
    GetFirst: (book, [visibleOnly]) => thing(WORKSHEET, found(shownSheets(book, visibleOnly)[0])),
    GetLast: (book, [visibleOnly]) => thing(WORKSHEET, found(shownSheets(book, visibleOnly).at(-1))),
    GetCount: (book, [visibleOnly]) => shownSheets(book, visibleOnly).length,
  },
};
