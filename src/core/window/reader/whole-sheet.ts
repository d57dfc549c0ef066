/** A whole sheet understood: its headings are looked for, and what stands above and beside them is heard. */
import { letters } from '../../cell/letters';
import type { OrderKey } from '../meanings';
import type { Cell, Row } from './cells';
import { codesIn } from './codes';
import { findHeader, headingScore, type Header, type Merged } from './header';
import { saidByWords } from './house-words';
import { withLegend } from './legend';
import type { Plan } from './slots';
import { measuredOfNote, statedInNote } from './treatment-text';
import {
  understand,
  type Look,
  type Sheet,
  type Trouble,
  type Understanding,
  type Whole,
} from './understand';

/** Two tables beside each other, parted by a blank column and headed alike. */
function sideBySide(header: Header, rows: readonly Row[]): string | undefined {
  const blank = header.texts.flatMap((texts, at) =>
    texts.length === 0 && rows.every((row) => (row[at] ?? null) === null) ? [at] : [],
  );
  for (const gap of blank) {
    const part = (from: number, to: number): string[] =>
      header.texts
        .slice(from, to)
        .map((texts) => texts.join(' ').toLowerCase())
        .filter((text) => text !== '');
    const [left, right] = [part(0, gap), part(gap + 1, header.texts.length)];
    const known = (list: readonly string[]): number =>
      list.filter((text) => headingScore(text) >= 0.6).length;
    const same = right.filter((text) => left.includes(text)).length;
    if (known(left) >= 3 && known(right) >= 3 && same >= 3 && same * 2 >= Math.min(left.length, right.length))
      return `Two tables stand side by side: one up to column ${letters(gap - 1)}, another from column ${letters(gap + 1)}. Move one to a sheet of its own.`;
  }
  return undefined;
}

/** A merged range below the headings speaks for each of its rows. */
function spread(rows: readonly Cell[][], merged: readonly Merged[], below: number): void {
  for (const { row, column, rows: down } of merged) {
    const value = rows[row]?.[column] ?? null;
    if (down < 2 || row <= below || value === null) continue;
    for (let at = row + 1; at < Math.min(row + down, rows.length); at++) {
      const line = rows[at] as Cell[];
      while (line.length <= column) line.push(null);
      line[column] ??= value;
    }
  }
}

/** Draw and lining that a line above says for all, where no column says them. */
function stated(above: readonly Row[], has: (key: OrderKey) => boolean): Plan['stated'] {
  const found: { draw?: string; lining?: string } = {};
  for (const cell of above.flat()) {
    if (typeof cell !== 'string') continue;
    const note = statedInNote(cell);
    if (note.draw !== undefined && !has('draw')) found.draw ??= note.draw;
    if (note.lining !== undefined && !has('lining')) found.lining ??= note.lining;
  }
  return found;
}

/** The point measured to, where a line above the headings says it. */
function measuredTo(above: readonly Row[]): ReturnType<typeof measuredOfNote> {
  for (const cell of above.flat()) {
    const found = typeof cell === 'string' ? measuredOfNote(cell) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

const WHOLE: Whole = { findHeader, spread, sideBySide, withLegend, codesIn, saidByWords, stated, measuredTo };

export const understandSheet = (sheet: Sheet, look: Look): Understanding | Trouble =>
  understand(sheet, look, WHOLE);
