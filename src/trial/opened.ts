/** An .xlsx file into the grid: cells, looks, tables, names, choices, protection, and what was remembered. */
import { Workbook as FileBook, type Cell, type Worksheet } from '@cj-tech-master/excelts';
import {
  BorderStyleTypes,
  CellValueType,
  HorizontalAlign,
  type IBorderData,
  type ICellData,
  type IStyleData,
  type IWorksheetData,
} from '@univerjs/core';
import type { FWorkbook } from '@univerjs/preset-sheets-core';
import { strFromU8, unzipSync } from 'fflate';
import { readAddress } from '../book/address';
import type { Changes, Validation } from '../book/book';
import { typed } from '../file/recalculate/formula';
import { cellOf, rangeOf } from './cells';
import type { Grid } from './grid';
import { PIXELS_A_POINT, pixelsFor } from './letters';
import { KEPT } from './saved';
import { Writer } from './write';

/** A file that is no workbook we can open, in a sentence. */
export class NotAWorkbook extends Error {}

const WEIGHTS: Readonly<Record<string, BorderStyleTypes>> = {
  hair: BorderStyleTypes.HAIR,
  medium: BorderStyleTypes.MEDIUM,
};
const ALIGNED: Readonly<Record<string, HorizontalAlign>> = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
};

function bordersOf({ top, right, bottom, left }: NonNullable<Cell['border']>): IBorderData {
  const line = (one: typeof top) =>
    one?.style === undefined
      ? undefined
      : {
          s: WEIGHTS[one.style] ?? BorderStyleTypes.THIN,
          cl: { rgb: `#${(one.color?.argb ?? '000000').slice(-6)}` },
        };
  const sides = { t: line(top), r: line(right), b: line(bottom), l: line(left) };
  return Object.fromEntries(Object.entries(sides).filter(([, side]) => side !== undefined));
}

const alignedAs = (alignment: Partial<Cell>['alignment']): IStyleData => ({
  ...(alignment?.wrapText === true && { tb: 3 }),
  ...(alignment?.horizontal !== undefined && { ht: ALIGNED[alignment.horizontal] ?? 0 }),
});

function styleOf({ font, fill, numFmt, alignment, border }: Cell): IStyleData {
  const colour = (argb: string | undefined) =>
    argb === undefined ? undefined : { rgb: `#${argb.slice(-6)}` };
  const ground =
    fill?.type === 'pattern' && fill.pattern === 'solid' ? colour(fill.fgColor?.argb) : undefined;
  const ink = colour(font?.color?.argb);
  return {
    ...(font?.bold === true && { bl: 1 }),
    ...(font?.italic === true && { it: 1 }),
    ...(font?.size !== undefined && { fs: font.size }),
    ...(ink !== undefined && { cl: ink }),
    ...(ground !== undefined && { bg: ground }),
    ...alignedAs(alignment),
    ...(border !== undefined && { bd: bordersOf(border) }),
    ...(typeof numFmt === 'string' && numFmt !== 'General' && { n: { pattern: numFmt } }),
  };
}

function plain(value: unknown): string | number | boolean | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
  if (value instanceof Date) return value.getTime() / 86_400_000 + 25_569;
  const rich = value as { error?: string; text?: unknown; richText?: readonly { text: string }[] };
  if (rich.error !== undefined) return rich.error;
  if (rich.richText !== undefined) return rich.richText.map((one) => one.text).join('');
  return rich.text === undefined ? String(value as string) : plain(rich.text);
}

function cellData(cell: Cell): ICellData {
  const formula = cell.formula;
  const value = plain(formula === undefined ? cell.value : cell.result);
  const { v, t } = cellOf(value);
  const style = styleOf(cell);
  return {
    ...(v === null || v === undefined ? {} : { v, t: t ?? CellValueType.STRING }),
    ...(formula === undefined ? {} : { f: `=${typed(formula).replace(/^=/, '')}` }),
    ...(Object.keys(style).length > 0 && { s: style }),
  };
}

function sheetData(sheet: Worksheet, id: string): Partial<IWorksheetData> {
  const cells: Record<number, Record<number, ICellData>> = {};
  const rowData: NonNullable<IWorksheetData['rowData']> = {};
  sheet.eachRow({ includeEmpty: false }, (row, number) => {
    if (row.hidden) rowData[number - 1] = { hd: 1 };
    if (row.height !== undefined)
      rowData[number - 1] = { ...rowData[number - 1], h: row.height * PIXELS_A_POINT };
    row.eachCell({ includeEmpty: true }, (cell, column) => {
      const merged = cell.isMerged && cell.master.address !== cell.address;
      const data = merged ? {} : cellData(cell);
      if (Object.keys(data).length > 0) (cells[number - 1] ??= {})[column - 1] = data;
    });
  });
  const columnData: NonNullable<IWorksheetData['columnData']> = {};
  for (let at = 0; at < sheet.columnCount; at++) {
    const { width, hidden } = sheet.getColumn(at + 1);
    if (width !== undefined) columnData[at] = { w: pixelsFor(width) };
    if (hidden) columnData[at] = { ...columnData[at], hd: 1 };
  }
  const frozen = (sheet.views as Worksheet['views'] | undefined)?.find((view) => view.state === 'frozen') as
    { xSplit?: number; ySplit?: number } | undefined;
  const [across, down] = [frozen?.xSplit ?? 0, frozen?.ySplit ?? 0];
  return {
    id,
    name: sheet.name,
    hidden: sheet.state === 'visible' ? 0 : 1,
    cellData: cells,
    rowData,
    columnData,
    rowCount: Math.max(200, sheet.rowCount + 100),
    columnCount: Math.max(26, sheet.columnCount + 12),
    mergeData: (sheet.model.mergeCells ?? []).flatMap((text) => {
      const area = readAddress(text);
      return area === undefined ? [] : [rangeOf(area)];
    }),
    ...(across + down > 0 && {
      freeze: { xSplit: across, ySplit: down, startRow: down, startColumn: across },
    }),
  };
}

function validationsOf(sheet: Worksheet): Validation[] {
  const model = sheet.dataValidations.model as Readonly<
    Record<
      string,
      { type: string; formulae?: readonly unknown[]; error?: string; errorStyle?: string } | undefined
    >
  >;
  return Object.entries(model).flatMap(([place, rule]): Validation[] => {
    const area = readAddress(place.replace(/^range:/, ''), sheet.name);
    const first = String(rule?.formulae?.[0] ?? '');
    if (area === undefined || rule?.type !== 'list' || first === '') return [];
    const words = /^"(.*)"$/.exec(first)?.[1];
    const otherwise = rule.errorStyle === 'warning' ? 'warn' : 'stop';
    return [
      {
        area,
        says: rule.error ?? 'Choose one of the list.',
        otherwise,
        ...(words === undefined ? { from: first } : { words: words.split(',') }),
      },
    ];
  });
}

/** What the Book remembered travels in the file as a part of its own. */
function keptIn(bytes: Uint8Array): Record<string, unknown> | undefined {
  const part = unzipSync(bytes, { filter: ({ name }) => name === KEPT })[KEPT];
  const text = part === undefined ? undefined : /<kept>([\s\S]*)<\/kept>/.exec(strFromU8(part))?.[1];
  if (text === undefined) return undefined;
  return JSON.parse(decodeURIComponent(text)) as Record<string, unknown>;
}

/** Opens the file's bytes as the grid's one workbook. */
export async function openFile(grid: Grid, bytes: Uint8Array, name: string): Promise<FWorkbook> {
  const file = new FileBook();
  let kept: Record<string, unknown> | undefined;
  try {
    await file.xlsx.load(bytes as unknown as Parameters<typeof file.xlsx.load>[0]);
    kept = keptIn(bytes);
  } catch (thrown) {
    throw new NotAWorkbook(
      `“${name}” cannot be opened: it is no .xlsx workbook, or it is damaged or has a password. Open it in a spreadsheet program and save it as .xlsx.`,
      { cause: thrown },
    );
  }
  const ids = file.worksheets.map((_, at) => `sheet-${at}`);
  const workbook = grid.api.createWorkbook({
    id: `book-${crypto.randomUUID()}`,
    name: name.replace(/\.xlsx$/i, ''),
    sheetOrder: ids,
    sheets: Object.fromEntries(
      file.worksheets.map((sheet, at) => [ids[at], sheetData(sheet, ids[at] ?? '')] as const),
    ),
    ...(kept !== undefined && { custom: kept }),
  });
  const changes: Changes = {
    newTables: file.worksheets.flatMap((sheet) =>
      sheet.getTables().flatMap((table) => {
        const { name: called, tableRef } = table.model ?? {};
        const area = tableRef === undefined ? undefined : readAddress(tableRef, sheet.name);
        return area === undefined || called === undefined ? [] : [{ name: called, area }];
      }),
    ),
    newNames: file.model.definedNames.flatMap(({ name: called, ranges }) => {
      const area = readAddress(ranges[0] ?? '');
      return area === undefined || called.startsWith('_xlnm.') ? [] : [{ name: called, area }];
    }),
    validations: file.worksheets.flatMap(validationsOf),
  };
  await new Writer(grid.api, workbook, grid.univer.__getInjector()).write(changes);
  for (const sheet of file.worksheets) {
    if (sheet.model.sheetProtection?.sheet !== true) continue;
    await workbook.getSheetByName(sheet.name)?.getWorksheetPermission().protect();
  }
  return workbook;
}
