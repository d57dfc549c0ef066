/** What stands in brackets behind a table's name, as rows and columns of its sheet. */
import { readAddress, type Area } from '../../book/address';
import type { TableFile } from '../xlsx/workbook';

/** The cell a formula stands in. */
export interface At {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

/** Why a formula cannot be made plain. */
export class Unresolved extends Error {}

export interface Referred {
  readonly rows: { readonly from: number; readonly to: number };
  readonly columns: { readonly from: number; readonly to: number };
  readonly whole: Area;
  /** Whether the rows are the formula's own row. */
  readonly thisRow: boolean;
}

export function referred(table: TableFile, inside: string, at: At): Referred {
  const whole = readAddress(table.ref);
  if (whole === undefined) throw new Unresolved(`the table ${table.name} covers no cells`);
  const { sections, columns } = readBrackets(inside, table);
  const rows = rowsOf(sections, table, whole, at);
  return { rows, columns, whole, thisRow: sections.length === 1 && sections[0] === 'this row' };
}

type Section = 'all' | 'data' | 'headers' | 'totals' | 'this row';
const SECTIONS: readonly Section[] = ['all', 'data', 'headers', 'totals', 'this row'];

/** “[[#Headers],[A]:[C]]”, “[@Rod]”, “[@[Rod width]]”, “[Rod]” or nothing. */
function readBrackets(
  brackets: string,
  table: TableFile,
): { sections: Section[]; columns: { from: number; to: number } } {
  let inside = brackets.slice(1, -1);
  const sections: Section[] = [];
  if (/^\s*@/.test(inside)) {
    sections.push('this row');
    inside = inside.replace(/^\s*@/, '');
  }
  const nested = inside.replace(/'./g, '').includes('[');
  const items = nested
    ? (inside.match(/\[(?:'.|[^[\]'])*\]/g) ?? []).map((item) => item.slice(1, -1))
    : [inside];
  const places: number[] = [];
  for (const text of items) {
    if (text.trim() === '') continue;
    const section = SECTIONS.find((one) => text.trim().toLowerCase() === `#${one}`);
    if (section !== undefined) sections.push(section);
    else places.push(columnIn(table, text.replace(/'(.)/g, '$1')));
  }
  const columns =
    places.length === 0
      ? { from: 0, to: table.columns.length - 1 }
      : { from: Math.min(...places), to: Math.max(...places) };
  return { sections, columns };
}

function columnIn(table: TableFile, heading: string): number {
  const lower = (text: string): string => text.toLowerCase();
  const plain = (text: string): string => lower(text).replace(/\s+/g, ' ').trim();
  // Headings may differ in their blanks alone: the one that is written so comes first.
  const exact = table.columns.findIndex((one) => lower(one) === lower(heading));
  const at = exact === -1 ? table.columns.findIndex((one) => plain(one) === plain(heading)) : exact;
  if (at === -1) throw new Unresolved(`the table ${table.name} has no column “${heading}”`);
  return at;
}

function rowsOf(
  sections: readonly Section[],
  table: TableFile,
  whole: Area,
  at: At,
): { from: number; to: number } {
  const last = whole.row + whole.rows - 1;
  const data = { from: whole.row + table.headerRows, to: last - table.totalsRows };
  const parts = (sections.length === 0 ? (['data'] as const) : sections).map((section) => {
    switch (section) {
      case 'all':
        return { from: whole.row, to: last };
      case 'data':
        return data;
      case 'headers':
        if (table.headerRows === 0) throw new Unresolved(`the table ${table.name} has no header row`);
        return { from: whole.row, to: whole.row + table.headerRows - 1 };
      case 'totals':
        if (table.totalsRows === 0) throw new Unresolved(`the table ${table.name} has no totals row`);
        return { from: last - table.totalsRows + 1, to: last };
      case 'this row':
        if (at.row < data.from || at.row > data.to)
          throw new Unresolved(`it takes this row of the table ${table.name} and stands beside no row of it`);
        return { from: at.row, to: at.row };
    }
  });
  return {
    from: Math.min(...parts.map((part) => part.from)),
    to: Math.max(...parts.map((part) => part.to)),
  };
}
