/** A sheet's part, read with the place of every row and cell in its text. */
import { cellText, columnOf, MOST_COLUMNS, MOST_ROWS } from '../../book/address';
import type { CellValue } from '../../engine/workbook';
import { AlikeText } from '../../book/alike-text';
import { damaged, unescapedControls, walk, type Tag, type Visitor } from './xml';

/** What many cells of a sheet have alike, kept once. */
export interface Look {
  readonly style: string | undefined;
  readonly metadata: string | undefined;
  readonly type: string | undefined;
  readonly rich: boolean;
  readonly phonetic: string | undefined;
  readonly formula: FormulaLook | undefined;
}
export interface FormulaLook {
  readonly kind: 'plain' | 'shared' | 'array' | 'table';
  /** Where it reaches, as the file says it; “own” where that is its own cell. */
  readonly ref: string | undefined;
  readonly shared: string | undefined;
  readonly always: boolean;
}
const OWN = 'own';

/** A cell's formula. */
export class FormulaSeen {
  constructor(
    readonly cell: CellSeen,
    readonly look: FormulaLook,
  ) {}

  /** As the file holds it, without “=”; undefined where a shared formula stands in its first cell only. */
  get text(): string | undefined {
    const { held, row, column } = this.cell;
    return held instanceof AlikeText ? held.at(row, column) : held;
  }
  get kind(): FormulaLook['kind'] {
    return this.look.kind;
  }
  /** Where an array formula reaches, as the file says it. */
  get ref(): string | undefined {
    return this.alone ? cellText(this.cell.row, this.cell.column) : this.look.ref;
  }
  /** Whether it says that it reaches its own cell, no further. */
  get alone(): boolean {
    return this.look.ref === OWN;
  }
  get shared(): string | undefined {
    return this.look.shared;
  }
  /** Whether it is to be computed whenever the workbook is opened. */
  get always(): boolean {
    return this.look.always;
  }
}

export class CellSeen {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  readonly look: Look;
  /** Its formula's text, or what it has alike with other cells. */
  readonly held: AlikeText | string | undefined;
  /** Where “<c” begins and where it ends. */
  readonly from: number;
  readonly to: number;

  constructor({ row, column, from }: CellOpen, { value, look, held, to }: CellClosed) {
    this.row = row;
    this.column = column;
    this.value = value;
    this.look = look;
    this.held = held;
    this.from = from;
    this.to = to;
  }

  get formula(): FormulaSeen | undefined {
    return this.look.formula === undefined ? undefined : new FormulaSeen(this, this.look.formula);
  }
  /** The style, as the file numbers it. */
  get style(): string | undefined {
    return this.look.style;
  }
  /** The cell metadata, as the file numbers it. */
  get metadata(): string | undefined {
    return this.look.metadata;
  }
  /** How its value is to be read, as the file says it: s, str, b, e …; undefined for a number. */
  get type(): string | undefined {
    return this.look.type;
  }
  /** Whether it holds more than a plain value: a picture, a linked fact. */
  get rich(): boolean {
    return this.look.rich;
  }
  /** Whether its reading aids are shown, as the file says it. */
  get phonetic(): string | undefined {
    return this.look.phonetic;
  }
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

/** A cell whose tag is open. */
interface CellOpen {
  readonly row: number;
  readonly column: number;
  readonly attributes: Tag['attributes'];
  readonly from: number;
}

type CellClosed = Pick<CellSeen, 'value' | 'look' | 'held' | 'to'>;

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
  #cell: CellOpen | undefined;
  #formula: FormulaLook | undefined;
  #held = { f: '', v: '', t: '' };
  #inside: Inside;
  #inline = false;
  #phonetic = false;
  #nextColumn = 0;
  /** The columns filled in this row. */
  readonly #taken = new Set<number>();
  #lastRow = -1;
  readonly #looks = new Map<string, Look>();
  /** The last look and the last formula in each column: the next row's is mostly the same. */
  readonly #lookAbove: (Look | undefined)[] = [];
  readonly #textAbove: (AlikeText | undefined)[] = [];

  constructor(
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

  #openData({ prefix, from, to, selfClosing }: Tag): void {
    this.#began = true;
    this.#data = { from, to, opened: to, closing: from, selfClosing };
    this.#prefix = prefix;
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

  #openCell({ attributes, from }: Tag): void {
    const place = ADDRESS.exec(attributes['r'] ?? '');
    if (place === null) this.#addressed = false;
    const column = place === null ? this.#nextColumn : columnOf(place[1] ?? '');
    if (column >= MOST_COLUMNS) throw damaged(this.part, `a cell is called “${attributes['r'] ?? ''}”`);
    if (this.#taken.has(column))
      throw damaged(this.part, `the cell ${cellText(this.#row?.row ?? 0, column)} stands in it twice`);
    this.#taken.add(column);
    this.#nextColumn = column + 1;
    this.#cell = { row: this.#row?.row ?? 0, column, attributes, from };
    this.#formula = undefined;
    this.#held = { f: '', v: '', t: '' };
  }

  /** What the cell has alike with others. */
  #look({ column, attributes }: CellOpen): Look {
    const { s: style, cm: metadata, t: type, ph: phonetic } = attributes;
    const rich = attributes['vm'] !== undefined;
    const formula = this.#formula;
    const above = this.#lookAbove[column];
    if (
      above !== undefined &&
      above.style === style &&
      above.metadata === metadata &&
      above.type === type &&
      above.rich === rich &&
      above.phonetic === phonetic &&
      sameFormula(above.formula, formula)
    )
      return above;
    const look: Look = { style, metadata, type, rich, phonetic, formula };
    const key = JSON.stringify(look);
    const known = this.#looks.get(key) ?? look;
    this.#looks.set(key, known);
    this.#lookAbove[column] = known;
    return known;
  }

  #text({ row, column }: CellOpen): AlikeText | string | undefined {
    if (this.#formula === undefined || this.#held.f === '') return undefined;
    const text = unescapedControls(this.#held.f);
    const above = this.#textAbove[column];
    if (above?.reads(text, row, column) === true) return above;
    this.#textAbove[column] = new AlikeText(text, row, column);
    return text;
  }

  #openInside({ name, attributes }: Tag): void {
    switch (name) {
      case 'f':
        this.#inside = 'f';
        this.#held.f = '';
        this.#formula = {
          kind: kindOf(attributes['t']),
          ref: this.#ownRef(attributes['ref']),
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
    const look = this.#look(cell);
    const { type } = look;
    const { v: value, t: inline } = this.#held;
    const shown = type === 'inlineStr' ? unescapedControls(inline) : valueOf(type, value, this.strings);
    const none = type !== undefined && type !== 'inlineStr' && value === '' && type !== 'str';
    const held = this.#text(cell);
    this.#row.cells.push(new CellSeen(cell, { value: none ? null : shown, look, held, to }));
    this.#cell = undefined;
  }

  #ownRef(ref: string | undefined): string | undefined {
    const cell = this.#cell;
    return ref !== undefined && cell !== undefined && ref === cellText(cell.row, cell.column) ? OWN : ref;
  }
}

const sameFormula = (one: FormulaLook | undefined, other: FormulaLook | undefined): boolean =>
  one === other ||
  (one?.kind === other?.kind &&
    one?.ref === other?.ref &&
    one?.shared === other?.shared &&
    one?.always === other?.always);

/** `xml` whole, or in pieces one after the other. */
export function readSheet(
  xml: string | Iterable<string>,
  part: string,
  strings: readonly string[],
): SheetSeen {
  const reading = new SheetReading(part, strings);
  walk(xml, part, reading);
  return reading.seen;
}

function kindOf(type: string | undefined): FormulaLook['kind'] {
  if (type === 'shared' || type === 'array') return type;
  return type === 'dataTable' ? 'table' : 'plain';
}
