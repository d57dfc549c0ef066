/** A sheet's part, read with the place of every row and cell in its text. */
import { cellText, columnOf, MOST_COLUMNS, MOST_ROWS } from '../../book/address';
import type { CellValue } from '../../engine/workbook';
import { damaged, unescapedControls, walk, type Tag, type Visitor } from './xml';

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
  /** How its value is to be read, as the file says it: s, str, b, e …; undefined for a number. */
  readonly type: string | undefined;
  /** Whether it holds more than a plain value: a picture, a linked fact. */
  readonly rich: boolean;
  /** Whether its reading aids are shown, as the file says it. */
  readonly phonetic: string | undefined;
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

type RowOpen = Mutable<RowSeen> & { cells: CellSeen[] };

/** The inside of which tag is being read: its text belongs to the cell. */
type Inside = 'f' | 'v' | 't' | undefined;

/** Hears a sheet's tags one after the other, and keeps what stands in them. */
class SheetReading implements Visitor {
  readonly #rows: RowOpen[] = [];
  readonly #merged: string[] = [];
  #data: Mutable<SheetSeen['data']> = { from: 0, to: 0, opened: 0, closing: 0, selfClosing: false };
  #rooted = false;
  #began = false;
  #dimension: SheetSeen['dimension'];
  #filter: string | undefined;
  #filtered: string | undefined;
  #prefix = '';
  #addressed = true;
  #row: RowOpen | undefined;
  #cell: Mutable<CellSeen> | undefined;
  #formula: Mutable<FormulaSeen> | undefined;
  #held = { f: '', v: '', t: '' };
  #inside: Inside;
  #inline = false;
  #phonetic = false;
  #nextColumn = 0;
  /** The columns filled in this row. */
  readonly #taken = new Set<number>();
  #lastRow = -1;
  /** A few words stand in every cell: each is kept once. */
  readonly #words = new Map<string, string>();

  constructor(
    readonly xml: string,
    readonly part: string,
    readonly strings: readonly string[],
  ) {}

  get seen(): SheetSeen {
    return {
      rows: this.#rows,
      merged: this.#merged,
      data: this.#data,
      prefix: this.#prefix,
      dimension: this.#dimension,
      addressed: this.#addressed,
      filtered: this.#filtered,
    };
  }

  open(tag: Tag): void {
    const { name, attributes } = tag;
    if (!this.#rooted) this.#root(name);
    switch (name) {
      case 'sheetData':
        this.#openData(tag);
        break;
      case 'dimension':
        this.#dimension = { from: tag.from, to: tag.to, ref: attributes['ref'] ?? '' };
        break;
      case 'autoFilter':
        this.#filter = attributes['ref'];
        break;
      case 'filterColumn':
        this.#filtered = this.#filter;
        break;
      case 'mergeCell':
        if (attributes['ref'] !== undefined) this.#merged.push(attributes['ref']);
        break;
      case 'row':
        if (this.#began && this.#cell === undefined) this.#openRow(tag);
        break;
      case 'c':
        if (this.#row !== undefined) this.#openCell(tag);
        break;
      default:
        if (this.#cell !== undefined) this.#openInside(tag);
    }
  }

  text(text: string): void {
    if (this.#inside !== undefined) this.#held[this.#inside] += text;
  }

  close(name: string, from: number, to: number): void {
    switch (name) {
      case 'f':
        if (this.#formula !== undefined && this.#held.f !== '')
          this.#formula.text = unescapedControls(this.#held.f);
        this.#inside = undefined;
        break;
      case 'v':
      case 't':
        this.#inside = undefined;
        break;
      case 'is':
        this.#inline = false;
        break;
      case 'rPh':
        this.#phonetic = false;
        break;
      case 'c':
        this.#closeCell(to);
        break;
      case 'row':
        if (this.#row !== undefined) Object.assign(this.#row, { closing: from, to });
        this.#row = undefined;
        break;
      case 'sheetData':
        Object.assign(this.#data, { closing: from, to });
        break;
    }
  }

  #root(name: string): void {
    if (name !== 'worksheet') throw damaged(this.part, `it is no sheet but “${name}”`);
    this.#rooted = true;
  }

  #openData({ from, to, selfClosing }: Tag): void {
    this.#began = true;
    this.#data = { from, to, opened: to, closing: from, selfClosing };
    this.#prefix = this.xml.startsWith('sheetData', from + 1)
      ? ''
      : this.xml.slice(from + 1, this.xml.indexOf(':', from) + 1);
  }

  #openRow({ attributes, from, to, selfClosing }: Tag): void {
    if (attributes['r'] === undefined) this.#addressed = false;
    const row =
      attributes['r'] === undefined ? (this.#rows.at(-1)?.row ?? -1) + 1 : Number(attributes['r']) - 1;
    if (!(row >= 0 && row < MOST_ROWS && Number.isInteger(row)))
      throw damaged(this.part, `a row is numbered “${attributes['r'] ?? row + 1}”`);
    if (this.#taken.size > 0) this.#taken.clear();
    if (row <= this.#lastRow && this.#rows.some((one) => one.row === row))
      throw damaged(this.part, `row ${row + 1} stands in it twice`);
    this.#lastRow = Math.max(row, this.#lastRow);
    const hidden = attributes['hidden'] === '1' || attributes['hidden'] === 'true';
    this.#row = { row, from, opened: to, closing: from, to, selfClosing, hidden, cells: [] };
    this.#rows.push(this.#row);
    this.#nextColumn = 0;
  }

  #openCell({ attributes, from, to }: Tag): void {
    const place = ADDRESS.exec(attributes['r'] ?? '');
    if (place === null) this.#addressed = false;
    const column = place === null ? this.#nextColumn : columnOf(place[1] ?? '');
    if (column >= MOST_COLUMNS) throw damaged(this.part, `a cell is called “${attributes['r'] ?? ''}”`);
    if (this.#taken.has(column))
      throw damaged(this.part, `the cell ${cellText(this.#row?.row ?? 0, column)} stands in it twice`);
    this.#taken.add(column);
    this.#nextColumn = column + 1;
    this.#cell = {
      row: this.#row?.row ?? 0,
      column,
      value: null,
      formula: undefined,
      style: this.#once(attributes['s']),
      metadata: this.#once(attributes['cm']),
      type: this.#once(attributes['t']),
      rich: attributes['vm'] !== undefined,
      phonetic: attributes['ph'],
      from,
      to,
    };
    this.#formula = undefined;
    this.#held = { f: '', v: '', t: '' };
  }

  #once(word: string | undefined): string | undefined {
    if (word === undefined) return undefined;
    const known = this.#words.get(word);
    if (known === undefined) this.#words.set(word, word);
    return known ?? word;
  }

  #openInside({ name, attributes }: Tag): void {
    switch (name) {
      case 'f':
        this.#inside = 'f';
        this.#held.f = '';
        this.#formula = {
          text: undefined,
          kind: kindOf(attributes['t']),
          ref: attributes['ref'],
          shared: attributes['si'],
          always: attributes['ca'] === '1' || attributes['ca'] === 'true',
        };
        break;
      case 'v':
        this.#inside = 'v';
        break;
      case 'is':
        this.#inline = true;
        break;
      case 't':
        this.#inside = this.#inline && !this.#phonetic ? 't' : undefined;
        break;
      case 'rPh':
        this.#phonetic = true;
        break;
    }
  }

  #closeCell(to: number): void {
    const cell = this.#cell;
    if (cell === undefined || this.#row === undefined) return;
    const { type } = cell;
    const { v: value, t: inline } = this.#held;
    cell.to = to;
    cell.value = type === 'inlineStr' ? unescapedControls(inline) : valueOf(type, value, this.strings);
    if (type !== undefined && type !== 'inlineStr' && value === '' && type !== 'str') cell.value = null;
    cell.formula = this.#formula;
    this.#row.cells.push(cell);
    this.#cell = undefined;
  }
}

export function readSheet(xml: string, part: string, strings: readonly string[]): SheetSeen {
  const reading = new SheetReading(xml, part, strings);
  walk(xml, part, reading);
  return reading.seen;
}

function kindOf(type: string | undefined): FormulaSeen['kind'] {
  if (type === 'shared' || type === 'array') return type;
  return type === 'dataTable' ? 'table' : 'plain';
}
