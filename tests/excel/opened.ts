/** An ExcelBook on a stand-in for Excel, through the genuine client. */
import type { Area } from '../../src/book/address';
import type { CellValue, Changes } from '../../src/book/book';
import { ExcelBook } from '../../src/excel/book';
import { readArea } from '../office/address';
import { readEntry } from '../office/entry';
import { ExcelHost } from '../office/host';
import { Workbook, type Sheet } from '../office/model';
import { connect, type Client } from '../office/node';
import { ensure } from './ensure';

export interface Opened {
  readonly book: ExcelBook;
  readonly host: ExcelHost;
  readonly sheet: Sheet;
  /** Requests since the last look. */
  trips(): number;
}

/** The same workbook in a pane that is opened anew: another client, nothing remembered but what the workbook holds. */
export function reopened({ host, book }: Opened, owner = book.owner): Promise<ExcelBook> {
  const client = connect(host, '1.20');
  return ExcelBook.open({ Excel: client.Excel, requirements: client.Office.context.requirements }, { owner });
}

export async function openedIn(
  rows: readonly (readonly CellValue[])[] = [],
  given: {
    version?: string;
    patience?: number;
    sheets?: readonly string[];
    client?: (host: ExcelHost) => Client;
  } = {},
): Promise<Opened> {
  const host = new ExcelHost(new Workbook(...(given.sheets ?? ['Windows'])));
  const sheet = host.book.active;
  rows.forEach((row, at) => {
    row.forEach((value, column) => {
      if (value === null) return;
      const { formula } = readEntry(value, 'General');
      Object.assign(sheet.open(at, column), formula === undefined ? { value } : { value: 0, formula });
    });
  });
  const client = given.client?.(host) ?? connect(host, given.version ?? '1.20');
  const book = await ExcelBook.open(
    { Excel: client.Excel, requirements: client.Office.context.requirements },
    given.patience === undefined ? {} : { patience: given.patience },
  );
  let looked = host.trips.length;
  return {
    book,
    host,
    sheet,
    trips() {
      const since = host.trips.length - looked;
      looked = host.trips.length;
      return since;
    },
  };
}

/** `at('B2:C9')` on the first sheet. */
export const at = (address: string, sheet = 'Windows'): Area => ({ sheet, ...ensure(readArea(address)) });

/** The same, with how every cell looks. */
export const pictureInFull = ({ host }: Pick<Opened, 'host'>): string =>
  JSON.stringify([
    picture({ host }),
    host.book.sheets.map((sheet) =>
      [...sheet.cells].flatMap(([key, { style }]) =>
        style === undefined || Object.keys(style).length === 0 ? [] : [[key, style]],
      ),
    ),
    host.book.comments.map(({ content }) => content),
    [...host.book.settings],
  ]);

/** Everything that stands in the workbook, to compare before and after. */
export const picture = ({ host }: Pick<Opened, 'host'>): string =>
  JSON.stringify({
    sheets: host.book.sheets.map((sheet) => [
      sheet.name,
      [...sheet.cells]
        .filter(([, cell]) => cell.value !== '' || cell.formula !== undefined)
        .map(([key, cell]) => [key, cell.formula ?? cell.value]),
    ]),
    tables: host.book.tables.map((one) => [one.name, one.area, one.columns.map(({ name }) => name)]),
    names: host.book.names.map((one) => [one.name, one.formula]),
  });

export const ROWS = [
  ['Room', 'Width', 'Heading'],
  ['hall', 94, 'pinch'],
  ['study', '84 1/2', 'grommet'],
] as const;

export const write = (opened: Opened, changes: Changes): Promise<void> =>
  opened.book.inOneStep('Try', (put) => put(changes));

export async function withTable(): Promise<Opened> {
  const opened = await openedIn(ROWS);
  await write(opened, { newTables: [{ name: 'Openings', area: at('A1:C3') }] });
  opened.trips();
  return opened;
}
