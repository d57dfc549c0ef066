/** The grid's workbook as an .xlsx file: written plainly, then computed and marked by the command's own code. */
import { Workbook as FileBook, type Cell, type Worksheet } from '@cj-tech-master/excelts';
import * as core from '@univerjs/core';
import type { FWorkbook, FWorksheet } from '@univerjs/preset-sheets-core';
import { SheetsNoteModel } from '@univerjs/preset-sheets-note';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { areaText, cellText, letters, placeText, sameSheet, type Area } from '../book/address';
import type { Book, Layout } from '../book/book';
import type { Parts } from '../file/xlsx/archive';
import { addCharts, addShapes } from '../file/xlsx/chart';
import { shapesOn } from '../file/xlsx/shapes';
import { FONT, FOOT_LETTERS, USUAL_SIZE } from '../book/roles';
import { LINE, linesOf, USUAL } from '../book/sheets/draft';
import { storedForm } from '../file/recalculate/formula';
import { widthInFile } from '../file/xlsx/ruler';
import { refill } from '../file/recalculate/refill';
import { readWorkbook } from '../file/xlsx/workbook';
import { areaOf } from './cells';
import type { Grid } from './grid';
import { charactersIn, PIXELS_A_POINT } from './letters';
import { longForm } from './this-row';
import { keptDrawn } from './write';

export const KEPT = 'customXml/item1.xml';
const KEPT_KIND = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml';
const RELATIONS = 'xl/_rels/workbook.xml.rels';

const argb = (rgb: core.Nullable<string>): string | undefined =>
  typeof rgb === 'string' && /^#[0-9a-f]{6}$/i.test(rgb) ? `FF${rgb.slice(1).toUpperCase()}` : undefined;

function dress(cell: Cell, style: core.IStyleData): void {
  const ink = argb(style.cl?.rgb);
  const ground = argb(style.bg?.rgb);
  cell.font = {
    name: FONT,
    size: style.fs ?? USUAL_SIZE,
    ...(style.bl === 1 && { bold: true }),
    ...(style.it === 1 && { italic: true }),
    ...(ink !== undefined && { color: { argb: ink } }),
  };
  if (ground !== undefined) cell.fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: ground } };
  const wraps = style.tb === core.WrapStrategy.WRAP;
  const horizontal = ALIGNED.get(style.ht ?? core.HorizontalAlign.UNSPECIFIED);
  if (wraps || horizontal !== undefined)
    cell.alignment = {
      ...(wraps && { wrapText: true, vertical: 'top' as const }),
      ...(horizontal !== undefined && { horizontal }),
    };
  if (style.n) cell.numFmt = style.n.pattern;
  if (style.bd) cell.border = bordersIn(style.bd);
}

const ALIGNED = new Map<core.HorizontalAlign, 'left' | 'center' | 'right'>([
  [core.HorizontalAlign.LEFT, 'left'],
  [core.HorizontalAlign.CENTER, 'center'],
  [core.HorizontalAlign.RIGHT, 'right'],
]);

const WEIGHTS = new Map<core.BorderStyleTypes, 'hair' | 'thin' | 'medium'>([
  [core.BorderStyleTypes.HAIR, 'hair'],
  [core.BorderStyleTypes.MEDIUM, 'medium'],
]);

function bordersIn({ t, r, b, l }: core.IBorderData): Cell['border'] {
  const line = (one: core.Nullable<core.IBorderStyleData>) =>
    one && {
      style: WEIGHTS.get(one.s) ?? ('thin' as const),
      color: { argb: argb(one.cl.rgb) ?? 'FF000000' },
    };
  const sides = { top: line(t), right: line(r), bottom: line(b), left: line(l) };
  return Object.fromEntries(Object.entries(sides).filter(([, side]) => Boolean(side))) as Cell['border'];
}

/** A paper's own page: what of it is printed, its margins, where pages begin, its foot, and every row's height. */
function pageOf(
  sheet: FWorksheet,
  into: Worksheet,
  { area, margins, breaks = [], foot }: NonNullable<Layout['print']>,
): void {
  if (margins !== undefined) {
    const [left, top, right, bottom] = margins;
    into.pageSetup.margins = { left, top, right, bottom, header: 0.3, footer: 0.3 };
  }
  if (foot !== undefined)
    into.headerFooter.oddFooter = `&L${FOOT_LETTERS}${foot.replace(/&/g, '&&')}&R${FOOT_LETTERS}page &P of &N`;
  if (area === undefined) return;
  // The writer of files puts the first dollar of each corner.
  into.pageSetup.printArea = placeText(area).replace(/\d+/g, '$$$&');
  into.views = [{ showGridLines: false }];
  for (let row = 0; row < area.rows; row++)
    into.getRow(row + 1).height = sheet.getRowHeight(row) / PIXELS_A_POINT;
  for (const row of breaks) into.getRow(row).addPageBreak();
}

function layOut(sheet: FWorksheet, into: Worksheet, columns: number): void {
  const { xSplit, ySplit } = sheet.getFreeze();
  if (xSplit + ySplit > 0) into.views = [{ state: 'frozen', xSplit, ySplit }];
  const print = sheet.getCustomMetadata()?.['print'] as Layout['print'];
  // A paper’s columns are as wide as its page needs them.
  const least = print?.area === undefined ? 4 : 0;
  for (let at = 0; at < columns; at++)
    into.getColumn(at + 1).width = widthInFile(Math.max(least, charactersIn(sheet.getColumnWidth(at))));
  if (print === undefined) return;
  into.pageSetup.orientation = print.landscape ? 'landscape' : 'portrait';
  into.pageSetup.paperSize = print.paper === 'a4' ? 9 : 1;
  into.pageSetup.fitToPage = true;
  into.pageSetup.fitToWidth = print.pagesWide ?? 1;
  into.pageSetup.fitToHeight = 0;
  if (print.repeatRows !== undefined)
    into.pageSetup.printTitlesRow = `${print.repeatRows[0] + 1}:${print.repeatRows[1] + 1}`;
  if (print.repeatColumns !== undefined)
    into.pageSetup.printTitlesColumn = print.repeatColumns.map(letters).join(':');
  pageOf(sheet, into, print);
}

function validate(sheet: FWorksheet, into: Worksheet): void {
  for (const one of sheet.getDataValidations()) {
    const { type, formula1, formula2, operator, allowBlank, error, prompt, errorStyle, ranges } = one.rule;
    const listed = formula1 ?? '';
    const first =
      type === 'list' ? (listed.startsWith('=') ? listed.slice(1) : `"${listed}"`) : Number(listed);
    for (const range of ranges) {
      const place = placeText(areaOf('', range));
      const rule = {
        type,
        formulae: formula2 === undefined ? [first] : [first, Number(formula2)],
        allowBlank: allowBlank ?? true,
        showErrorMessage: true,
        showInputMessage: true,
        ...(type !== 'list' && { operator }),
        ...(error !== undefined && { error }),
        ...(prompt !== undefined && { prompt }),
        errorStyle: errorStyle === core.DataValidationErrorStyle.WARNING ? 'warning' : 'stop',
      };
      into.dataValidations.add(place, rule as Parameters<typeof into.dataValidations.add>[1]);
    }
  }
}

/** Every table first: making one writes its headings over the cells. */
async function fillSheet(grid: Grid, book: Book, sheet: FWorksheet, into: Worksheet): Promise<void> {
  const contents = await book.contents();
  const name = sheet.getSheetName();
  const used = contents.sheets.find((one) => one.name === name)?.used;
  layOut(sheet, into, used === undefined ? 0 : used.column + used.columns);
  for (const { name: called, area, columns } of contents.tables.filter((one) => one.area.sheet === name)) {
    into.addTable({
      name: called,
      ref: cellText(area.row, area.column),
      headerRow: true,
      style: { theme: 'TableStyleLight1', showRowStripes: true },
      columns: columns.map((heading) => ({ name: heading, filterButton: true })),
      rows: Array.from({ length: area.rows - 1 }, () => columns.map(() => null)),
    });
  }
  if (used !== undefined) await fillCells(book, sheet, used, into);
  for (const range of sheet.getSheet().getMergeData()) into.mergeCells(placeText(areaOf('', range)));
  validate(sheet, into);
  const notes = grid.univer.__getInjector().get(SheetsNoteModel);
  const { id } = sheet.getWorkbook() as unknown as { id: string };
  for (const { row, col, note } of notes.getSheetNotes(id, sheet.getSheetId())?.values() ?? [])
    into.getCell(row + 1, col + 1).note = note;
  if (sheet.getWorksheetPermission().isProtected()) await into.protect('', {});
}

/** Not every program makes room for wrapped headings; a paper's rows have their own heights. */
function makeRoom(into: Worksheet, at: number, lines: number): void {
  if (lines > 1) into.getRow(at + 1).height ??= lines * LINE;
}

async function fillCells(book: Book, sheet: FWorksheet, used: Area, into: Worksheet): Promise<void> {
  const matrix = sheet.getSheet();
  const [block] = await book.read([used], 'contents');
  const styles = sheet.getWorkbook().getStyles();
  for (const [i, row] of (block?.values ?? []).entries()) {
    let lines = 1;
    for (const [j, value] of row.entries()) {
      const [at, column] = [used.row + i, used.column + j];
      const raw = matrix.getCellRaw(at, column);
      const style = styles.getStyleByCell(raw);
      const written = block?.formulas[i]?.[j] ?? null;
      // What stands there only because a formula beside it spills is computed again.
      if (written === null && !raw?.v && raw?.v !== 0 && !style) continue;
      const cell = into.getCell(at + 1, column + 1);
      if (written !== null) cell.value = { formula: storedForm(longForm(written).slice(1)), result: 0 };
      else if (raw?.v !== null && raw?.v !== undefined && value !== null) cell.value = value;
      if (style) dress(cell, style);
      if (style?.tb === core.WrapStrategy.WRAP && typeof value === 'string')
        lines = Math.max(lines, linesOf(value, (into.getColumn(column + 1).width ?? USUAL) - 2));
    }
    makeRoom(into, used.row + i, lines);
    if (block?.hiddenRows.includes(used.row + i) === true) into.getRow(used.row + i + 1).hidden = true;
  }
}

/** What the Book remembers travels as a part of its own. */
function withKept(parts: Map<string, Uint8Array>, kept: unknown): void {
  const relations = strFromU8(parts.get(RELATIONS) ?? new Uint8Array());
  const one = `<Relationship Id="rIdKept" Type="${KEPT_KIND}" Target="../${KEPT}"/></Relationships>`;
  parts.set(RELATIONS, strToU8(relations.replace('</Relationships>', one)));
  parts.set(KEPT, strToU8(`<kept>${encodeURIComponent(JSON.stringify(kept))}</kept>`));
}

/** Drawings are the file's alone: the grid shows none. */
function addDrawings(workbook: FWorkbook, all: Parts): void {
  const drawings = keptDrawn(workbook, 'drawings');
  for (const { name, part } of readWorkbook(all).sheets)
    if (part !== undefined) addShapes(all, part, shapesOn(name, drawings));
}

async function drawCharts(workbook: FWorkbook, book: Book, all: Parts): Promise<void> {
  const charts = keptDrawn(workbook, 'charts');
  const blocks = await book.read(
    charts.map(({ block }) => block),
    'contents',
  );
  const drawn = charts.map((chart, at) => ({ ...chart, cells: blocks[at]?.values ?? [] }));
  for (const { name, part } of readWorkbook(all).sheets) {
    const own = drawn.filter(({ at }) => sameSheet(at.sheet, name));
    if (part !== undefined) addCharts(all, part, own);
  }
}

export async function saveFile(grid: Grid, workbook: FWorkbook, book: Book): Promise<Uint8Array> {
  const file = new FileBook();
  for (const sheet of workbook.getSheets()) {
    const into = file.addWorksheet(sheet.getSheetName());
    if (sheet.isSheetHidden()) into.state = 'hidden';
    await fillSheet(grid, book, sheet, into);
  }
  const { names } = await book.contents();
  for (const { name, area } of names)
    if (area !== undefined) file.definedNames.add(areaText(area, true), name);
  const plain = new Uint8Array(await file.xlsx.writeBuffer());
  const parts = new Map(Object.entries(unzipSync(plain)));
  const computed = refill(readWorkbook(parts));
  const all = new Map(computed.parts);
  await drawCharts(workbook, book, all);
  addDrawings(workbook, all);
  const { drawings: _inTheFile, ...kept } = workbook.getCustomMetadata() ?? {};
  if (Object.keys(kept).length > 0) withKept(all, kept);
  return zipSync(Object.fromEntries(all));
}
