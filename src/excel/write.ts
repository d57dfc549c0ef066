/** Writes changes into the workbook: everything of one part in one request, more only where it grows too large. */
import { areaText, placeText, type Area } from '../book/address';
import type { Ability, Changes, Layout, NewChart, Note, Put, Validation } from '../book/book';
import { shifted } from '../book/formula';
import { entered } from './entry';
import { dressUp, pointsOf } from './looks';
import { rangeOf } from './read';

/** Characters of cells in one request: Excel on the web takes 5 MB, and the client wraps them. */
const MOST_CHARACTERS = 2_000_000;

export interface Desk {
  readonly context: Excel.RequestContext;
  readonly lacks: ReadonlyMap<Ability, string>;
}

const sheetOf = ({ context }: Desk, name: string): Excel.Worksheet =>
  context.workbook.worksheets.getItem(name);

const entriesOf = ({ area, cells, formula }: Put): (string | number | boolean | null)[][] =>
  Array.from({ length: area.rows }, (_, row) =>
    Array.from({ length: area.columns }, (__, column) =>
      formula === undefined ? entered(cells?.[row]?.[column]) : shifted(formula, row, column),
    ),
  );

async function write(desk: Desk, puts: readonly Put[]): Promise<void> {
  let gathered = 0;
  for (const put of puts) {
    const entries = entriesOf(put);
    let from = 0;
    while (from < entries.length) {
      let to = from;
      while (to < entries.length && (to === from || gathered < MOST_CHARACTERS)) {
        gathered += (entries[to] ?? []).reduce((sum: number, one) => sum + String(one).length + 4, 0);
        to += 1;
      }
      rangeOf(desk.context, { ...put.area, row: put.area.row + from, rows: to - from }).formulas =
        entries.slice(from, to);
      from = to;
      if (gathered >= MOST_CHARACTERS) {
        await desk.context.sync();
        gathered = 0;
      }
    }
  }
}

function validate(desk: Desk, { area, words, from, number, says, otherwise }: Validation): void {
  const { dataValidation } = rangeOf(desk.context, area);
  const source = words === undefined ? `=${from ?? ''}` : words.join(',');
  dataValidation.rule =
    number === undefined
      ? { list: { inCellDropDown: true, source } }
      : {
          [number.whole === true ? 'wholeNumber' : 'decimal']:
            number.most === undefined
              ? { formula1: number.least, operator: 'GreaterThanOrEqualTo' }
              : { formula1: number.least, formula2: number.most, operator: 'Between' },
        };
  const message = says.slice(0, 255);
  dataValidation.prompt = { message, showPrompt: true, title: '' };
  dataValidation.errorAlert = {
    message,
    showAlert: true,
    style: otherwise === 'stop' ? 'Stop' : 'Warning',
    title: '',
  };
}

function layOut(desk: Desk, { sheet: name, frozenRows = 0, frozenColumns = 0, widths, print }: Layout): void {
  const sheet = sheetOf(desk, name);
  if (frozenRows > 0 && frozenColumns > 0) {
    sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, frozenRows, frozenColumns));
  } else if (frozenRows > 0) sheet.freezePanes.freezeRows(frozenRows);
  else if (frozenColumns > 0) sheet.freezePanes.freezeColumns(frozenColumns);
  for (const [column, characters] of Object.entries(widths ?? {})) {
    sheet.getRangeByIndexes(0, Number(column), 1, 1).format.columnWidth = pointsOf(characters);
  }
  if (print === undefined) return;
  sheet.pageLayout.orientation = print.landscape ? 'Landscape' : 'Portrait';
  sheet.pageLayout.paperSize = print.paper === 'a4' ? 'A4' : 'Letter';
  sheet.pageLayout.zoom = { horizontalFitToPages: 1 };
  if (print.repeatRows !== undefined) {
    const [first, last] = print.repeatRows;
    sheet.pageLayout.setPrintTitleRows(`$${first + 1}:$${last + 1}`);
  }
}

const CHARTS = { bar: 'BarClustered', column: 'ColumnClustered', line: 'Line' } as const;

function draw(desk: Desk, { name, title, kind, block, at }: NewChart): void {
  const chart = sheetOf(desk, at.sheet).charts.add(CHARTS[kind], rangeOf(desk.context, block), 'Auto');
  chart.name = name;
  chart.title.text = title;
  const last = placeText({
    ...at,
    row: at.row + at.rows - 1,
    column: at.column + at.columns - 1,
    rows: 1,
    columns: 1,
  });
  chart.setPosition(placeText({ ...at, rows: 1, columns: 1 }), last);
}

/** The comments of the workbook, each with its cell; two requests, whatever their number. */
export async function commentsAt({
  context,
}: Desk): Promise<{ comment: Excel.Comment; cell: Excel.Range }[]> {
  const { comments } = context.workbook;
  comments.load('items/content');
  await context.sync();
  const placed = comments.items.map((comment) => ({ comment, cell: comment.getLocation().load('address') }));
  if (placed.length > 0) await context.sync();
  return placed;
}

/** The first cell of an area as a comment's address gives it. */
export const cellOf = (area: Area): string => areaText({ ...area, rows: 1, columns: 1 });

/** A cell that someone has remarked on already keeps that remark. */
async function remark(desk: Desk, notes: readonly Note[]): Promise<void> {
  const taken = new Set((await commentsAt(desk)).map(({ cell }) => cell.address));
  for (const { area, text } of notes) {
    if (!taken.has(cellOf(area)))
      desk.context.workbook.comments.add(rangeOf(desk.context, { ...area, rows: 1, columns: 1 }), text);
  }
}

async function remove({ context }: Desk, sheets: readonly string[], names: readonly string[]): Promise<void> {
  const { worksheets, names: all } = context.workbook;
  const found = [
    ...sheets.map((name) => worksheets.getItemOrNullObject(name)),
    ...names.map((name) => all.getItemOrNullObject(name)),
  ];
  await context.sync();
  for (const one of found) if (!one.isNullObject) one.delete();
}

/** Carries one part out; resolves when it has reached the workbook. */
export async function carryOut(desk: Desk, changes: Changes): Promise<void> {
  const { context, lacks } = desk;
  const { workbook } = context;
  workbook.application.suspendApiCalculationUntilNextSync();
  for (const { name } of changes.newSheets ?? []) workbook.worksheets.add(name);
  if (!lacks.has('tables')) {
    for (const { table, area } of changes.resize ?? [])
      workbook.tables.getItem(table).resize(rangeOf(context, area));
  }
  for (const { name, area } of changes.movedNames ?? [])
    workbook.names.getItem(name).formula = `=${areaText(area, true)}`;
  await write(desk, changes.puts ?? []);
  for (const { name, area } of changes.newTables ?? []) {
    const table = sheetOf(desk, area.sheet).tables.add(rangeOf(context, area), true);
    table.name = name;
    table.style = 'TableStyleLight1';
  }
  for (const { name, area, says } of changes.newNames ?? [])
    workbook.names.add(name, rangeOf(context, area), says);
  for (const { area, role, format } of changes.dress ?? []) {
    const range = rangeOf(context, area);
    if (role !== undefined) dressUp(range, role, area.rows, area.columns);
    if (format !== undefined) range.numberFormat = format as unknown as string[][];
  }
  for (const one of changes.validations ?? []) validate(desk, one);
  for (const one of changes.layouts ?? []) layOut(desk, one);
  for (const one of changes.newCharts ?? []) draw(desk, one);
  await context.sync();
  const notes = changes.notes ?? [];
  if (notes.length > 0 && !lacks.has('comments')) {
    await remark(desk, notes);
    await context.sync();
  }
  const { sheets = [], names = [] } = changes.remove ?? {};
  if (sheets.length + names.length > 0) {
    await remove(desk, sheets, names);
    await context.sync();
  }
}
