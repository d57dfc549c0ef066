/** New values set into a sheet's text: only the cells concerned change, and rows and cells that were missing. */
import { cellText, letters, readAddress } from '../../book/address';
import { errorOf } from '../../core/cell/fields';
import type { CellValue } from '../../engine/workbook';
import { Problem } from '../problem';
import type { CellSeen, RowSeen, SheetSeen } from './sheet';
import { escaped } from '../../book/markup';
import { PassingText } from './passing-text';
import { escapedControls, type Edit } from './xml';

export interface CellWrite {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  /** A formula that may spill, stored form, without “=”, and the cells it fills; absent keeps what stands. */
  readonly spilling?: { readonly text: string; readonly ref: string; readonly mark: string };
  /** The formula has no value now: whoever opens the file computes this cell. */
  readonly dropped?: boolean;
  /** The formula has its value again, and need not be computed on opening. */
  readonly computed?: boolean;
}

const KEPT_ERRORS = /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A)$/;
const FORMULA = /<(?:\w+:)?f(?:\s[^>]*?)?(?:\/>|>[\s\S]*?<\/(?:\w+:)?f>)/;
const EXTENSION = /<(?:\w+:)?extLst[\s>][\s\S]*<\/(?:\w+:)?extLst>/;

/** The file knows seven errors; the newer ones stand as text, which every program opens. */
function written(value: CellValue, prefix: string): { type: string; inside: string } {
  const v = (text: string): string => `<${prefix}v>${text}</${prefix}v>`;
  if (value === null) return { type: '', inside: '' };
  if (typeof value === 'number') return { type: '', inside: v(String(value).replace('e', 'E')) };
  if (typeof value === 'boolean') return { type: ' t="b"', inside: v(value ? '1' : '0') };
  if (errorOf(value) !== undefined && KEPT_ERRORS.test(value)) return { type: ' t="e"', inside: v(value) };
  return { type: ' t="str"', inside: v(escaped(escapedControls(value))) };
}

/** Whether an array is computed with every other one (aca) stays as the file says it. */
const kept = (cell: string): string => /<(?:\w+:)?f\s[^>]*?(\saca="[^"]*")/.exec(cell)?.[1] ?? '';

/** ca="1" says of a formula that it is to be computed on opening. */
function marked(formula: string, { dropped, computed }: CellWrite): string {
  if (dropped !== true && computed !== true) return formula;
  const end = formula.search(/\/?>/);
  const open = formula.slice(0, end).replace(/\sca="[^"]*"/, '');
  return `${open}${dropped === true ? ' ca="1"' : ''}${formula.slice(end)}`;
}

function cellXml(write: CellWrite, old: CellSeen | undefined, slice: Slice, prefix: string): string {
  const { type, inside } = written(write.value, prefix);
  const was = old === undefined ? '' : slice(old.from, old.to);
  const style = old?.style === undefined ? '' : ` s="${old.style}"`;
  const mark = write.spilling?.mark ?? old?.metadata;
  const metadata =
    mark === undefined || (write.value === null && write.dropped !== true) ? '' : ` cm="${mark}"`;
  const phonetic = old?.phonetic === undefined ? '' : ` ph="${old.phonetic}"`;
  const formula =
    write.spilling === undefined
      ? marked(FORMULA.exec(was)?.[0] ?? '', write)
      : `<${prefix}f t="array"${kept(was)} ref="${write.spilling.ref}">${escaped(escapedControls(write.spilling.text))}</${prefix}f>`;
  const keep = formula === '' && old?.formula === undefined ? '' : metadata;
  const body = formula + inside + (EXTENSION.exec(was)?.[0] ?? '');
  const open = `<${prefix}c r="${cellText(write.row, write.column)}"${style}${type}${keep}${phonetic}`;
  return body === '' ? `${open}/>` : `${open}>${body}</${prefix}c>`;
}

type Slice = (from: number, to: number) => string;

/** The part with these cells, in pieces; `xml` is the part as it is, whole or in pieces too. */
export function* patchSheet(
  xml: Iterable<string>,
  part: string,
  seen: SheetSeen,
  writes: readonly CellWrite[],
): Generator<string> {
  const text = new PassingText(xml);
  for (const edits of editsOf(text.slice, part, seen, writes))
    for (const { from, to, text: fresh } of edits.sort(
      (one, other) => one.from - other.from || one.to - other.to,
    )) {
      yield* text.upTo(from);
      text.skip(to);
      yield fresh;
    }
  yield* text.rest();
}

/** What is to be changed, in groups that follow one another in the text. */
function* editsOf(
  slice: Slice,
  part: string,
  seen: SheetSeen,
  writes: readonly CellWrite[],
): Generator<Edit[]> {
  const { prefix, rows } = seen;
  const byRow = new Map<number, CellWrite[]>();
  for (const write of writes) {
    const list = byRow.get(write.row);
    if (list === undefined) byRow.set(write.row, [write]);
    else list.push(write);
  }
  for (const list of byRow.values()) list.sort((one, other) => one.column - other.column);
  const grown = dimension(slice, seen, writes);
  const early = (grown[0]?.from ?? 0) < seen.data.from;
  if (early) yield grown;
  const { before, last } = freshRows(seen, byRow);
  for (const [at, row] of rows.entries()) {
    const edits: Edit[] = [];
    const text = before.get(at);
    if (text !== undefined) edits.push({ from: row.from, to: row.from, text: text.join('') });
    const list = byRow.get(row.row);
    if (list !== undefined) edits.push(...patchRow(slice, part, seen, row, list));
    if (edits.length > 0) yield edits;
  }
  if (last.length > 0) {
    const { from, to, closing, selfClosing } = seen.data;
    yield [
      selfClosing
        ? { from, to, text: `<${prefix}sheetData>${last.join('')}</${prefix}sheetData>` }
        : { from: closing, to: closing, text: last.join('') },
    ];
  }
  if (!early) yield grown;
}

/** Rows that the sheet has not yet: before which of its rows they belong, and those behind all of them. */
function freshRows(
  { prefix, rows }: SheetSeen,
  byRow: ReadonlyMap<number, readonly CellWrite[]>,
): { before: Map<number, string[]>; last: string[] } {
  const known = new Set(rows.map(({ row }) => row));
  const before = new Map<number, string[]>();
  const last: string[] = [];
  let next = 0;
  for (const at of [...byRow.keys()].sort((one, other) => one - other)) {
    if (known.has(at)) continue;
    const filled = (byRow.get(at) ?? []).filter(({ value }) => value !== null);
    if (filled.length === 0) continue;
    const text = `<${prefix}row r="${at + 1}">${filled.map((one) => cellXml(one, undefined, NO_TEXT, prefix)).join('')}</${prefix}row>`;
    while (next < rows.length && (rows[next]?.row ?? 0) <= at) next += 1;
    const list = next === rows.length ? last : (before.get(next) ?? []);
    if (next < rows.length) before.set(next, list);
    list.push(text);
  }
  return { before, last };
}
const NO_TEXT: Slice = () => '';

function patchRow(
  slice: Slice,
  part: string,
  seen: SheetSeen,
  row: RowSeen,
  list: readonly CellWrite[],
): Edit[] {
  const { prefix } = seen;
  const edits: Edit[] = [];
  const inserts = new Map<number, string[]>();
  for (const write of list) {
    const old = row.cells.find(({ column }) => column === write.column);
    const text = cellXml(write, old, slice, prefix);
    if (old !== undefined) {
      edits.push({ from: old.from, to: old.to, text });
      continue;
    }
    if (write.value === null) continue;
    if (!seen.addressed)
      throw new Problem(
        `Its part ${part} does not say where its cells stand, so nothing can be added safely. Open it in a spreadsheet program, save it again and try again.`,
      );
    const at = row.cells.find(({ column }) => column > write.column)?.from ?? row.closing;
    inserts.set(at, [...(inserts.get(at) ?? []), text]);
  }
  if (row.selfClosing) {
    const inside = [...inserts.values()].flat().join('');
    if (inside === '') return edits;
    const open = slice(row.from, row.to).replace(/\s*\/>$/, '>');
    return [{ from: row.from, to: row.to, text: `${open}${inside}</${prefix}row>` }];
  }
  for (const [at, texts] of inserts) edits.push({ from: at, to: at, text: texts.join('') });
  if (inserts.size > 0) edits.push(...spans(slice, row, list));
  return edits;
}

/** A row that says from which column to which it is filled says so of the new cells too. */
function spans(slice: Slice, row: RowSeen, list: readonly CellWrite[]): Edit[] {
  const open = slice(row.from, row.opened);
  const [said, from, to] = /\sspans="(\d+):(\d+)"/.exec(open) ?? [];
  if (said === undefined) return [];
  const columns = list.filter(({ value }) => value !== null).map(({ column }) => column + 1);
  const text = ` spans="${Math.min(Number(from), ...columns)}:${Math.max(Number(to), ...columns)}"`;
  return text === said ? [] : [{ from: row.from, to: row.opened, text: open.replace(said, text) }];
}

/** The filled area the sheet declares, grown where a spill went beyond it. */
function dimension(slice: Slice, seen: SheetSeen, writes: readonly CellWrite[]): Edit[] {
  const said = seen.dimension === undefined ? undefined : readAddress(seen.dimension.ref);
  if (said === undefined || seen.dimension === undefined) return [];
  let [top, left] = [said.row, said.column];
  let [bottom, right] = [said.row + said.rows - 1, said.column + said.columns - 1];
  for (const { row, column, value } of writes) {
    if (value === null) continue;
    [top, bottom] = [Math.min(top, row), Math.max(bottom, row)];
    [left, right] = [Math.min(left, column), Math.max(right, column)];
  }
  const ref = `${letters(left)}${top + 1}:${letters(right)}${bottom + 1}`;
  const same =
    bottom === said.row + said.rows - 1 &&
    right === said.column + said.columns - 1 &&
    top === said.row &&
    left === said.column;
  if (same) return [];
  const { from, to } = seen.dimension;
  return [{ from, to, text: slice(from, to).replace(/ref="[^"]*"/, `ref="${ref}"`) }];
}
