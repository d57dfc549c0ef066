/** A sheet's part, read with the place of every row and cell in its text. */
import { columnOf } from '../../book/address';
import type { CellValue } from '../../engine/workbook';
import { unescapedControls, walk, type Tag } from './xml';

export interface FormulaSeen {
  /** As the file holds it, without “=”; undefined where a shared formula stands in its first cell only. */
  readonly text: string | undefined;
  readonly kind: 'plain' | 'shared' | 'array' | 'table';
  /** Where an array formula reaches, as the file says it. */
  readonly ref: string | undefined;
  readonly shared: string | undefined;
  /** Whether it is to be computed whenever the workbook is opened. */
  readonly always: boolean;
}

export interface CellSeen {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  readonly formula: FormulaSeen | undefined;
  /** The style, as the file numbers it. */
  readonly style: string | undefined;
  /** The cell metadata, as the file numbers it. */
  readonly metadata: string | undefined;
  /** Whether it holds something else that a value written here must keep in step: rich values, phonetics. */
  readonly attributes: Readonly<Record<string, string | undefined>>;
  /** Where “<c” begins and where it ends. */
  readonly from: number;
  readonly to: number;
}

export interface RowSeen {
  readonly row: number;
  readonly from: number;
  /** Just after the opening tag. */
  readonly opened: number;
  /** Where “</row>” begins; the same as `from` where the row closes itself. */
  readonly closing: number;
  readonly to: number;
  readonly selfClosing: boolean;
  readonly hidden: boolean;
  readonly cells: readonly CellSeen[];
}

export interface SheetSeen {
  readonly rows: readonly RowSeen[];
  readonly merged: readonly string[];
  /** Where the rows' own tag opens and closes. */
  readonly data: {
    readonly from: number;
    readonly to: number;
    readonly opened: number;
    readonly closing: number;
    readonly selfClosing: boolean;
  };
  /** The prefix the part's tags carry: "" or "x:". */
  readonly prefix: string;
  /** Where the sheet says how far it is filled. */
  readonly dimension: { readonly from: number; readonly to: number; readonly ref: string } | undefined;
  /** Whether every row and cell says where it stands. */
  readonly addressed: boolean;
  /** The rows that a filter in force may hide. */
  readonly filtered: string | undefined;
}

const ADDRESS = /^\$?([A-Za-z]{1,3})\$?(\d{1,7})$/;

function valueOf(type: string | undefined, text: string, strings: readonly string[]): CellValue {
  switch (type) {
    case 's':
      return strings[Number(text)] ?? null;
    case 'str':
    case 'inlineStr':
      return unescapedControls(text);
    case 'd':
      return serialOf(text.trim());
    case 'b':
      return text.trim() === '1' || text.trim().toLowerCase() === 'true';
    case 'e':
      return text.trim();
    case undefined:
    default:
      // A number no one can read stays the text it is.
      return text.trim() === '' ? null : Number.isNaN(Number(text)) ? text : Number(text);
  }
}

/** A day in ISO letters, 2027-01-05T12:00:00, as the number a worksheet holds for it. */
function serialOf(text: string): CellValue {
  const time = Date.parse(
    `${/T/.test(text) ? text : `${text}T00:00:00`}${/Z$|[+-]\d\d:\d\d$/.test(text) ? '' : 'Z'}`,
  );
  return Number.isNaN(time) ? text : (time - Date.UTC(1899, 11, 30)) / 86_400_000;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

export function readSheet(xml: string, part: string, strings: readonly string[]): SheetSeen {
  const rows: (Mutable<RowSeen> & { cells: CellSeen[] })[] = [];
  const merged: string[] = [];
  let data: Mutable<SheetSeen['data']> | undefined;
  let dimension: SheetSeen['dimension'];
  let [filterRef, filtered]: (string | undefined)[] = [];
  let prefix = '';
  let addressed = true;
  let row: (typeof rows)[number] | undefined;
  let cell: Mutable<CellSeen> | undefined;
  let formula: Mutable<FormulaSeen> | undefined;
  let [value, inline, held] = ['', '', ''];
  let [inValue, inFormula, inInline, inText, inPhonetic] = [false, false, false, false, false];
  let nextColumn = 0;

  function openRow({ attributes, from, to, selfClosing }: Tag): void {
    if (attributes['r'] === undefined) addressed = false;
    const at = attributes['r'] === undefined ? (rows.at(-1)?.row ?? -1) + 1 : Number(attributes['r']) - 1;
    const hidden = attributes['hidden'] === '1' || attributes['hidden'] === 'true';
    row = { row: at, from, opened: to, closing: from, to, selfClosing, hidden, cells: [] };
    rows.push(row);
    nextColumn = 0;
  }
  function openCell({ attributes, from, to }: Tag): void {
    const place = ADDRESS.exec(attributes['r'] ?? '');
    if (place === null) addressed = false;
    const column = place === null ? nextColumn : columnOf(place[1] ?? '');
    nextColumn = column + 1;
    cell = {
      row: row?.row ?? 0,
      column,
      value: null,
      formula: undefined,
      style: attributes['s'],
      metadata: attributes['cm'],
      attributes,
      from,
      to,
    };
    formula = undefined;
    [value, inline] = ['', ''];
  }
  function closeCell(to: number): void {
    if (cell === undefined || row === undefined) return;
    const type = cell.attributes['t'];
    cell.to = to;
    cell.value = type === 'inlineStr' ? unescapedControls(inline) : valueOf(type, value, strings);
    if (type !== undefined && type !== 'inlineStr' && value === '' && type !== 'str') cell.value = null;
    cell.formula = formula;
    row.cells.push(cell);
    cell = undefined;
  }

  walk(xml, part, {
    open(tag) {
      const { name, attributes } = tag;
      switch (name) {
        case 'sheetData':
          data = {
            from: tag.from,
            to: tag.to,
            opened: tag.to,
            closing: tag.from,
            selfClosing: tag.selfClosing,
          };
          prefix = xml.slice(tag.from + 1, tag.to).startsWith('sheetData')
            ? ''
            : xml.slice(tag.from + 1, xml.indexOf(':', tag.from) + 1);
          break;
        case 'dimension':
          dimension = { from: tag.from, to: tag.to, ref: attributes['ref'] ?? '' };
          break;
        case 'autoFilter':
          filterRef = attributes['ref'];
          break;
        case 'filterColumn':
          filtered = filterRef;
          break;
        case 'mergeCell':
          if (attributes['ref'] !== undefined) merged.push(attributes['ref']);
          break;
        case 'row':
          if (data !== undefined && cell === undefined) openRow(tag);
          break;
        case 'c':
          if (row !== undefined) openCell(tag);
          break;
        case 'f':
          if (cell === undefined) break;
          inFormula = true;
          held = '';
          formula = {
            text: undefined,
            kind: kindOf(attributes['t']),
            ref: attributes['ref'],
            shared: attributes['si'],
            always: attributes['ca'] === '1' || attributes['ca'] === 'true',
          };
          break;
        case 'v':
          inValue = cell !== undefined;
          break;
        case 'is':
          inInline = cell !== undefined;
          break;
        case 't':
          inText = inInline && !inPhonetic;
          break;
        case 'rPh':
          inPhonetic = true;
          break;
      }
    },
    text(text) {
      if (inFormula) held += text;
      else if (inValue) value += text;
      else if (inText) inline += text;
    },
    close(name, from, to) {
      switch (name) {
        case 'f':
          if (formula !== undefined && held !== '') formula.text = unescapedControls(held);
          inFormula = false;
          break;
        case 'v':
          inValue = false;
          break;
        case 'is':
          inInline = false;
          break;
        case 't':
          inText = false;
          break;
        case 'rPh':
          inPhonetic = false;
          break;
        case 'c':
          closeCell(to);
          break;
        case 'row':
          if (row !== undefined) Object.assign(row, { closing: from, to });
          row = undefined;
          break;
        case 'sheetData':
          if (data !== undefined) Object.assign(data, { closing: from, to });
          break;
      }
    },
  });
  return {
    rows,
    merged,
    data: data ?? { from: 0, to: 0, opened: 0, closing: 0, selfClosing: false },
    prefix,
    dimension,
    addressed,
    filtered,
  };
}

function kindOf(type: string | undefined): FormulaSeen['kind'] {
  if (type === 'shared' || type === 'array') return type;
  return type === 'dataTable' ? 'table' : 'plain';
}
