/** Writes changes into the workbook: everything of one part in one request. */
import { areaText, letters, placeText, type Area } from '../book/address';
import type {
  Ability,
  Changes,
  Dress,
  Layout,
  NewChart,
  NewDrawing,
  Note,
  Put,
  Validation,
} from '../book/book';
import { pointsOf } from '../book/column-width';
import { countedFrom } from '../book/formula';
import { FONT, FOOT_LETTERS } from '../book/roles';
import { addressesOf, downward, dressAlike, rowsAlike } from '../book/alike';
import { addDrawings } from './drawings';
import { entered } from './entry';
import { dressUp } from './role-formats';
import { rangeOf } from './read';

/** The name a key is remembered under. */
export const settingOf = (key: string): string => `Hemledger.${key}`;

export interface Desk {
  readonly context: Excel.RequestContext;
  readonly lacks: ReadonlyMap<Ability, string>;
  /** Told where Excel refused what its version should know. */
  readonly without: (ability: 'drawings') => void;
}

const sheetOf = ({ context }: Desk, name: string): Excel.Worksheet =>
  context.workbook.worksheets.getItem(name);

/** A formula for many cells is sent once, its references counted from each cell. */
function write({ context }: Desk, { area, cells, formula }: Put): void {
  const range = rangeOf(context, area);
  // One value stands for all cells of a range; the types know only the grid.
  if (formula !== undefined)
    range.formulasR1C1 = countedFrom(formula, area.row, area.column) as unknown as string[][];
  else
    range.formulas = Array.from({ length: area.rows }, (_, row) =>
      Array.from({ length: area.columns }, (__, column) => entered(cells?.[row]?.[column])),
    );
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

/** A paper's page: what of the sheet is printed, its margins, where pages begin, its foot. */
function pageOf(
  sheet: Excel.Worksheet,
  { area, margins, breaks = [], foot }: NonNullable<Layout['print']>,
): void {
  const { pageLayout } = sheet;
  if (area !== undefined) pageLayout.setPrintArea(placeText(area));
  if (margins !== undefined) {
    const [left, top, right, bottom] = margins;
    pageLayout.setPrintMargins('Inches', { left, top, right, bottom });
  }
  for (const row of breaks) sheet.horizontalPageBreaks.add(`A${row + 1}`);
  if (foot === undefined) return;
  // An ampersand begins a code.
  pageLayout.headersFooters.defaultForAllPages.leftFooter = `${FOOT_LETTERS}${foot.replace(/&/g, '&&')}`;
  pageLayout.headersFooters.defaultForAllPages.rightFooter = `${FOOT_LETTERS}page &P of &N`;
}

function printAs(sheet: Excel.Worksheet, print: NonNullable<Layout['print']>): void {
  const { pageLayout } = sheet;
  pageLayout.orientation = print.landscape ? 'Landscape' : 'Portrait';
  pageLayout.paperSize = print.paper === 'a4' ? 'A4' : 'Letter';
  pageLayout.zoom = { horizontalFitToPages: print.pagesWide ?? 1 };
  if (print.repeatRows !== undefined) {
    const [first, last] = print.repeatRows;
    pageLayout.setPrintTitleRows(`$${first + 1}:$${last + 1}`);
  }
  if (print.repeatColumns !== undefined) {
    const [first, last] = print.repeatColumns;
    pageLayout.setPrintTitleColumns(`$${letters(first)}:$${letters(last)}`);
  }
  pageOf(sheet, print);
}

function freeze(sheet: Excel.Worksheet, { frozenRows = 0, frozenColumns = 0 }: Layout): void {
  if (frozenRows > 0 && frozenColumns > 0) {
    sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, frozenRows, frozenColumns));
  } else if (frozenRows > 0) sheet.freezePanes.freezeRows(frozenRows);
  else if (frozenColumns > 0) sheet.freezePanes.freezeColumns(frozenColumns);
}

function layOut(desk: Desk, layout: Layout): void {
  const { sheet: name, widths, heights, print } = layout;
  const sheet = sheetOf(desk, name);
  if (layout.plain === true) sheet.showGridlines = false;
  for (const area of downward(layout.merged ?? [])) rangeOf(desk.context, area).merge(true);
  freeze(sheet, layout);
  for (const [column, characters] of Object.entries(widths ?? {})) {
    sheet.getRangeByIndexes(0, Number(column), 1, 1).format.columnWidth = pointsOf(characters);
  }
  for (const { points, areas } of rowsAlike(name, heights ?? {}))
    for (const address of addressesOf(areas)) sheet.getRanges(address).format.rowHeight = points;
  if (print !== undefined) printAs(sheet, print);
}

const ALIGNED = { left: 'Left', right: 'Right', center: 'Center' } as const;
function alignTo(range: Pick<Excel.Range, 'format'>, align: Dress['align']): void {
  if (align !== undefined) range.format.horizontalAlignment = ALIGNED[align];
}

function dressOne(desk: Desk, { area, role, format, align }: Dress): void {
  const range = rangeOf(desk.context, area);
  alignTo(range, align);
  if (role !== undefined) dressUp(range, role, area.rows, area.columns);
  if (format !== undefined) range.numberFormat = format as unknown as string[][];
}

/** The cells of a paper never overlap, so that those of one look can be dressed together. */
function dressPaper(desk: Desk, sheet: string, dress: readonly Dress[]): void {
  // Rows are as high as this font needs, whatever the workbook's own.
  sheetOf(desk, sheet).getRange().format.font.name = FONT;
  for (const { role, align, areas } of dressAlike(dress)) {
    const [{ rows, columns } = { rows: 1, columns: 1 }] = areas;
    for (const address of addressesOf(areas)) {
      const ranges = sheetOf(desk, sheet).getRanges(address);
      alignTo(ranges, align);
      if (role !== undefined) dressUp(ranges, role, rows, columns);
    }
  }
  // Several areas take no number format together.
  for (const { area, format } of dress) if (format !== undefined) dressOne(desk, { area, format });
}

function dressAll(desk: Desk, { dress = [], layouts = [] }: Changes): void {
  const papers = new Set(layouts.flatMap(({ sheet, plain }) => (plain === true ? [sheet] : [])));
  for (const one of dress) if (!papers.has(one.area.sheet)) dressOne(desk, one);
  for (const sheet of papers) {
    const own = dress.filter(({ area }) => area.sheet === sheet);
    dressPaper(desk, sheet, own);
  }
}

const CHARTS = { bar: 'BarClustered', column: 'ColumnClustered', line: 'Line' } as const;

function draw(desk: Desk, { name, title, kind, block, at }: NewChart): void {
  const chart = sheetOf(desk, at.sheet).charts.add(CHARTS[kind], rangeOf(desk.context, block), 'Columns');
  chart.name = name;
  chart.title.text = title;
  chart.legend.visible = block.columns > 2;
  if (kind === 'bar') {
    // Read from the top, as their rows are; the figures stand at the ends of the bars.
    chart.axes.categoryAxis.reversePlotOrder = true;
    chart.axes.valueAxis.visible = false;
    chart.axes.valueAxis.majorGridlines.visible = false;
    for (let at = 0; at < block.columns - 1; at++) chart.series.getItemAt(at).hasDataLabels = true;
  }
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

/** Cells that someone has remarked on: they keep that remark. */
async function remarkedOn(desk: Desk, notes: readonly Note[]): Promise<ReadonlySet<string> | undefined> {
  if (notes.length === 0 || desk.lacks.has('comments')) return undefined;
  return new Set((await commentsAt(desk)).map(({ cell }) => cell.address));
}

async function standing({ context }: Desk, remove: NonNullable<Changes['remove']>) {
  const { worksheets, names } = context.workbook;
  const found = [
    ...(remove.sheets ?? []).map((name) => worksheets.getItemOrNullObject(name)),
    ...(remove.names ?? []).map((name) => names.getItemOrNullObject(name)),
  ];
  if (found.length > 0) await context.sync();
  return found.filter((one) => !one.isNullObject);
}

/** Tables and names that stand already get their new areas. */
function move({ context, lacks }: Desk, { resize = [], movedNames = [] }: Changes): void {
  const { tables, names } = context.workbook;
  if (!lacks.has('tables'))
    for (const { table, area } of resize) tables.getItem(table).resize(rangeOf(context, area));
  for (const { name, area } of movedNames) names.getItem(name).formula = `=${areaText(area, true)}`;
}

function fill(desk: Desk, { clear = [], puts = [] }: Changes): void {
  for (const { area, looksToo } of clear) rangeOf(desk.context, area).clear(looksToo ? 'All' : 'Contents');
  for (const put of puts) write(desk, put);
}

function nameNew(desk: Desk, { newTables = [], newNames = [] }: Changes): void {
  const { context } = desk;
  for (const { name, area } of newTables) {
    const table = sheetOf(desk, area.sheet).tables.add(rangeOf(context, area), true);
    table.name = name;
    table.style = 'TableStyleLight1';
  }
  for (const { name, area, says } of newNames) context.workbook.names.add(name, rangeOf(context, area), says);
}

/** Everything about cells that is not in them. */
function furnish(desk: Desk, changes: Changes): void {
  dressAll(desk, changes);
  for (const one of changes.validations ?? []) validate(desk, one);
  for (const one of changes.layouts ?? []) layOut(desk, one);
  for (const one of changes.newCharts ?? []) draw(desk, one);
}

/** Notes for the cells that nobody has remarked on; for none where it is not known. */
function remark({ context }: Desk, notes: readonly Note[], remarked: ReadonlySet<string> | undefined): void {
  if (remarked === undefined) return;
  for (const { area, text } of notes)
    if (!remarked.has(cellOf(area)))
      context.workbook.comments.add(rangeOf(context, { ...area, rows: 1, columns: 1 }), text);
}

/** Carries one part out, in one request once what must be known is known; resolves when it has reached the workbook. */
export async function carryOut(desk: Desk, changes: Changes): Promise<void> {
  const { context } = desk;
  const { workbook } = context;
  const { notes = [], remember, forget } = changes;
  const remarked = await remarkedOn(desk, notes);
  const removed = await standing(desk, changes.remove ?? {});
  if (remember !== undefined) workbook.settings.add(settingOf(remember.key), JSON.stringify(remember.value));
  workbook.application.suspendApiCalculationUntilNextSync();
  for (const { name } of changes.newSheets ?? []) workbook.worksheets.add(name);
  move(desk, changes);
  fill(desk, changes);
  nameNew(desk, changes);
  furnish(desk, changes);
  remark(desk, notes, remarked);
  for (const one of removed) one.delete();
  if (forget !== undefined) workbook.settings.getItem(settingOf(forget)).delete();
  await context.sync();
  await drawAll(desk, changes.newDrawings ?? []);
}

/** What stands in a drawing stands in words beside it: a sheet without one is whole. */
async function drawAll({ context, lacks, without }: Desk, drawings: readonly NewDrawing[]): Promise<void> {
  if (drawings.length === 0 || lacks.has('drawings')) return;
  if (!(await addDrawings(context, drawings))) without('drawings');
}
