/** New values set into a sheet's text: only the cells concerned change, and rows and cells that were missing. */
import { cellText, letters, readAddress } from '../../book/address';
import { errorOf } from '../../core/cell/fields';
import type { CellValue } from '../../engine/workbook';
import { Problem } from '../problem';
import type { CellSeen, RowSeen, SheetSeen } from './sheet';
import { escaped } from '../../book/markup';
import { edited, escapedControls, type Edit } from './xml';

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

function cellXml(write: CellWrite, old: CellSeen | undefined, xml: string, prefix: string): string {
  const { type, inside } = written(write.value, prefix);
  const was = old === undefined ? '' : xml.slice(old.from, old.to);
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

export function patchSheet(xml: string, part: string, seen: SheetSeen, writes: readonly CellWrite[]): string {
  const { prefix, rows } = seen;
  const byRow = new Map<number, CellWrite[]>();
  for (const write of writes) {
    const list = byRow.get(write.row);
    if (list === undefined) byRow.set(write.row, [write]);
    else list.push(write);
  }
  for (const list of byRow.values()) list.sort((one, other) => one.column - other.column);
  const known = new Map(rows.map((row) => [row.row, row]));
  const edits: Edit[] = [];
  const fresh: string[][] = rows.map(() => []);
  const last: string[] = [];
  for (const [at, list] of [...byRow].sort(([one], [other]) => one - other)) {
    const row = known.get(at);
    if (row !== undefined) {
      edits.push(...patchRow(xml, part, seen, row, list));
      continue;
    }
    const filled = list.filter(({ value }) => value !== null);
    if (filled.length === 0) continue;
    const text = `<${prefix}row r="${at + 1}">${filled.map((one) => cellXml(one, undefined, xml, prefix)).join('')}</${prefix}row>`;
    (fresh[rows.findIndex((one) => one.row > at)] ?? last).push(text);
  }
  for (const [at, texts] of fresh.entries()) {
    const before = rows[at]?.from;
    if (before !== undefined && texts.length > 0)
      edits.push({ from: before, to: before, text: texts.join('') });
  }
  if (last.length > 0) {
    const { from, to, closing, selfClosing } = seen.data;
    edits.push(
      selfClosing
        ? { from, to, text: `<${prefix}sheetData>${last.join('')}</${prefix}sheetData>` }
        : { from: closing, to: closing, text: last.join('') },
    );
  }
  return edited(xml, [...edits, ...dimension(xml, seen, writes)]);
}

function patchRow(
  xml: string,
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
    const text = cellXml(write, old, xml, prefix);
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
    const open = xml.slice(row.from, row.to).replace(/\s*\/>$/, '>');
    return [{ from: row.from, to: row.to, text: `${open}${inside}</${prefix}row>` }];
  }
  for (const [at, texts] of inserts) edits.push({ from: at, to: at, text: texts.join('') });
  if (inserts.size > 0) edits.push(...spans(xml, row, list));
  return edits;
}

/** A row that says from which column to which it is filled says so of the new cells too. */
function spans(xml: string, row: RowSeen, list: readonly CellWrite[]): Edit[] {
  const open = xml.slice(row.from, row.opened);
  const [said, from, to] = /\sspans="(\d+):(\d+)"/.exec(open) ?? [];
  if (said === undefined) return [];
  const columns = list.filter(({ value }) => value !== null).map(({ column }) => column + 1);
  const text = ` spans="${Math.min(Number(from), ...columns)}:${Math.max(Number(to), ...columns)}"`;
  return text === said ? [] : [{ from: row.from, to: row.opened, text: open.replace(said, text) }];
}

/** The filled area the sheet declares, grown where a spill went beyond it. */
function dimension(xml: string, seen: SheetSeen, writes: readonly CellWrite[]): Edit[] {
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
  return [{ from, to, text: xml.slice(from, to).replace(/ref="[^"]*"/, `ref="${ref}"`) }];
}
