/** Which column is what: from headings in plain words, with samples, doubts, and the user's corrections. */
import { Refusal } from '../core/cell/answer';
import type { Field } from '../core/cell/fields';
import { INCHES, type Unit } from '../core/exact/unit';
import { cellText, letters } from './address';
import type { Block, CellValue } from './book';
import { filled, findHeader, lineKind, named, type Header, type LineKind, type Named } from './header';
import { readHeading, type UnitWord } from './headings';

/** A column a window row may have. */
export interface WantedColumn extends Named {
  readonly field: Field<unknown>;
  readonly says: string;
  /** Whether rows without it cannot be worked out. */
  readonly needed: boolean;
  /** Whether it is a figure worked out elsewhere: words alone are none. */
  readonly figure?: boolean;
}

export type Confidence = 'sure' | 'likely' | 'unsure';

export interface SheetColumn {
  /** Sheet column, from 0. */
  readonly column: number;
  readonly heading: string;
  /** The heading, told apart from others of the same words: what a mapping remembers. */
  readonly id: string;
  readonly unit: UnitWord | undefined;
  /** The first few different contents, as they stand. */
  readonly samples: readonly string[];
  /** Which of the wanted columns it is taken for. */
  readonly key: string | undefined;
  readonly confidence: Confidence | undefined;
  /** Whether the user said so. */
  readonly corrected: boolean;
  /** Sentences for the pane, to look at before going on. */
  readonly doubts: readonly string[];
}

export interface Line {
  /** Sheet row. */
  readonly row: number;
  readonly kind: LineKind;
}

export interface ColumnsRead {
  readonly block: Block;
  readonly header: Header;
  readonly columns: readonly SheetColumn[];
  /** Every row below the header. */
  readonly lines: readonly Line[];
}

/** What the user said: a column's id → the wanted key, or null for “none of them”. */
export type Corrections = Readonly<Record<string, string | null>>;

const SURE = 0.9;
const LIKELY = 0.72;
const UNSURE = 0.65;
const SAMPLES = 5;
const MOST_CHECKED = 500;
/** A choice of which more than this share cannot be read is no such choice. */
const MOST_BAD = 0.5;

interface Seen {
  readonly column: number;
  readonly heading: string;
  readonly id: string;
  readonly unit: UnitWord | undefined;
  /** Filled cells of window rows, with their sheet rows. */
  readonly cells: readonly { readonly row: number; readonly value: CellValue }[];
  readonly windows: number;
}

function look(block: Block, header: Header, lines: readonly Line[]): Seen[] {
  const windows = lines.filter((line) => line.kind === 'window');
  const times = new Map<string, number>();
  return header.headings.map((heading, at): Seen => {
    const column = block.area.column + at;
    const plain = heading.toLowerCase() || `column ${letters(column)}`;
    const time = (times.get(plain) ?? 0) + 1;
    times.set(plain, time);
    return {
      column,
      heading,
      id: time === 1 ? plain : `${plain} #${time}`,
      unit: readHeading(heading).unit,
      cells: windows.flatMap(({ row }) => {
        const value = block.values[row - block.area.row]?.[at] ?? null;
        return filled(value) ? [{ row, value }] : [];
      }),
      windows: windows.length,
    };
  });
}

const lookedAt = ({ cells }: Seen): number => Math.min(cells.length, MOST_CHECKED);

/** Cells that cannot be read as this column, of those looked at. */
function unreadable(
  seen: Seen,
  wanted: WantedColumn,
  unit: Unit,
): readonly { row: number; sentence: string }[] {
  return seen.cells.slice(0, MOST_CHECKED).flatMap(({ row, value }) => {
    try {
      wanted.field.kind.read(value, { name: cellText(row, seen.column), unit });
      return [];
    } catch (thrown) {
      if (thrown instanceof Refusal) return [{ row, sentence: thrown.finding.sentence }];
      throw thrown;
    }
  });
}

/** How many cells of those looked at cannot be read as this column; no further than one more than `most`. */
function unreadCount(seen: Seen, wanted: WantedColumn, unit: Unit, most = Infinity): number {
  const read = new Map<CellValue, boolean>();
  let bad = 0;
  for (const { value } of seen.cells.slice(0, MOST_CHECKED)) {
    let reads = read.get(value);
    if (reads === undefined)
      read.set(
        value,
        (reads = unreadable({ ...seen, cells: [{ row: 0, value }] }, wanted, unit).length === 0),
      );
    if (!reads && ++bad > most) break;
  }
  return bad;
}

const hasFigure = (value: CellValue): boolean =>
  typeof value === 'number' || /[\d#]/.test(typeof value === 'string' ? value : '');

/** Words are no figure that was worked out, and bare figures no name of a cloth. */
function mayHold({ cells }: Seen, { key, figure }: WantedColumn): boolean {
  if (cells.length === 0) return true;
  if (cells.every(({ value }) => typeof value === 'string' && TWO_MEASURES.test(value))) return false;
  if (figure === true) return cells.some(({ value }) => hasFigure(value));
  return key !== 'fabric' || cells.some(({ value }) => typeof value === 'string');
}

interface Score {
  readonly seen: Seen;
  readonly wanted: WantedColumn;
  /** 0 to 1, by heading and contents. */
  readonly score: number;
}

/** The words of a choice tell a column whatever its heading: “pinch, grommet, pinch” is a heading of drapery. */
function byContents(seen: Seen, wanted: WantedColumn, unit: Unit): number {
  if (wanted.field.kind.choices === undefined || seen.cells.length < 2) return 0;
  if (!seen.cells.every(({ value }) => typeof value === 'string')) return 0;
  const most = lookedAt(seen) * 0.2;
  return unreadCount(seen, wanted, unit, most) <= most ? 0.65 : 0;
}

function scores(all: readonly Seen[], wanted: readonly WantedColumn[], unit: Unit): Score[] {
  return all.flatMap((seen) =>
    wanted.flatMap((one): Score[] => {
      const words = seen.heading === '' ? 0 : named(seen.heading, one);
      const looked = lookedAt(seen);
      // Contents that cannot be read as this column count against the heading.
      const bad = words >= UNSURE && looked > 0 ? unreadCount(seen, one, unit) / looked : 0;
      if (bad > MOST_BAD && one.field.kind.choices !== undefined) return [];
      if (!mayHold(seen, one)) return [];
      const empty = words >= UNSURE && looked === 0 && seen.windows > 0 ? 0.05 : 0;
      const score = Math.max(words * (1 - 0.35 * bad) - empty, byContents(seen, one, unit));
      return score >= UNSURE ? [{ seen, wanted: one, score }] : [];
    }),
  );
}

const confidenceOf = (score: number): Confidence =>
  score >= SURE ? 'sure' : score >= LIKELY ? 'likely' : 'unsure';

interface Taken {
  readonly wanted: WantedColumn;
  readonly score: number;
  readonly corrected: boolean;
}

/** Best first; each column and each wanted one is used once. The user's corrections come before all. */
function assign(
  list: readonly Score[],
  all: readonly Seen[],
  wanted: readonly WantedColumn[],
  said: Corrections,
) {
  const taken = new Map<number, Taken>();
  const used = new Set<string>();
  for (const seen of all) {
    const key = said[seen.id];
    const one = wanted.find((column) => column.key === key);
    if (one === undefined) continue;
    taken.set(seen.column, { wanted: one, score: 1, corrected: true });
    used.add(one.key);
  }
  // A column whose own meaning is taken by another is left alone rather than given a far one.
  const best = new Map<Seen, number>();
  for (const { seen, score } of list) best.set(seen, Math.max(best.get(seen) ?? 0, score));
  const near = list.filter(({ seen, score }) => score >= (best.get(seen) ?? 0) - 0.15);
  const sorted = near.sort((a, b) => b.score - a.score || a.seen.column - b.seen.column);
  for (const { seen, wanted: one, score } of sorted) {
    if (said[seen.id] === null || taken.has(seen.column) || used.has(one.key)) continue;
    taken.set(seen.column, { wanted: one, score, corrected: false });
    used.add(one.key);
  }
  return taken;
}

const listed = (texts: readonly string[]): string =>
  texts.length < 2 ? (texts[0] ?? '') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1) ?? ''}`;

const shownValue = (value: CellValue): string =>
  typeof value === 'number' ? String(Number(value.toPrecision(12))) : String(value).replace(/\s+/g, ' ');

function doubtsOf(
  seen: Seen,
  match: Taken,
  list: readonly Score[],
  taken: ReadonlyMap<number, Taken>,
  all: readonly Seen[],
  unit: Unit,
): string[] {
  const { wanted } = match;
  const doubts: string[] = [];
  const where = `Column ${letters(seen.column)}`;
  if (!match.corrected && match.score < LIKELY) {
    doubts.push(
      `${where}, headed “${seen.heading}”, is taken for ${wanted.heading} as the nearest there is. Confirm it, or choose another.`,
    );
  }
  // A column that is surely something else, or a meaning another column has better, is no rival.
  const rivals = list.filter(
    (one) =>
      one.wanted === wanted &&
      one.seen !== seen &&
      one.score > match.score - 0.1 &&
      (taken.get(one.seen.column)?.score ?? 0) <= one.score,
  );
  if (!match.corrected && rivals.length > 0) {
    doubts.push(
      `${listed([seen, ...rivals.map((one) => one.seen)].map((one) => `${letters(one.column)} (“${one.heading}”)`))} could each be ${wanted.heading}. Column ${letters(seen.column)} is taken; choose another if that is wrong.`,
    );
  }
  const others = list.filter(
    (one) =>
      one.seen === seen &&
      one.wanted !== wanted &&
      one.score > match.score - 0.1 &&
      ![...taken.values()].some((other) => other.wanted === one.wanted && other.score >= one.score),
  );
  if (!match.corrected && others.length > 0) {
    doubts.push(
      `${where}, headed “${seen.heading}”, could also be ${listed(others.map((one) => one.wanted.heading))}. Confirm it, or choose another.`,
    );
  }
  const bad = unreadable(seen, wanted, unit);
  const first = bad[0];
  if (first !== undefined)
    doubts.push(
      bad.length === 1
        ? first.sentence
        : `${bad.length} cells of column ${letters(seen.column)} cannot be read as ${wanted.field.kind.noun}. The first: ${first.sentence}`,
    );
  const blank = seen.windows - seen.cells.length;
  if (wanted.needed && blank > 0 && seen.cells.length > 0)
    doubts.push(
      `${blank} of ${seen.windows} rows have no ${wanted.heading} in column ${letters(seen.column)}.`,
    );
  if (all.every((one) => one.cells.length === 0)) doubts.length = 0;
  return doubts;
}

const TWO_MEASURES = /^[^a-z]*\d[\d\s.,/½¼¾⅛'"′″”]*(?:in|cm|mm|m)?\s*[x×*]\s*\d/i;

/** “72 x 98” is two measures in one cell, which no column of ours can be. */
function twoMeasures({ column, heading, cells }: Seen): string[] {
  const both = cells.filter(({ value }) => typeof value === 'string' && TWO_MEASURES.test(value));
  if (both.length === 0 || both.length * 2 < cells.length) return [];
  const named = heading === '' ? '' : `, headed “${heading}”,`;
  return [
    `Column ${letters(column)}${named} holds two measures in a cell, like ${shownValue(both[0]?.value ?? '')}. Give each a column of its own, and say which is which.`,
  ];
}

/** A heading in centimetres in an inch house, or figures that are too great for the house's unit. */
function unitDoubt(seen: Seen, wanted: WantedColumn, unit: Unit): string[] {
  const small = wanted.field.kind.quantity === 'length';
  if (!small) return [];
  const where = `Column ${letters(seen.column)}, ${wanted.heading}`;
  if (seen.unit !== undefined && seen.unit !== unit.small)
    return [
      `${where}, says ${seen.unit}; the house’s unit is ${unit.name}. Its figures are taken as ${seen.unit}.`,
    ];
  const figures = seen.cells
    .flatMap(({ value }) => (typeof value === 'number' ? [value] : []))
    .sort((a, b) => a - b);
  const middle = figures[Math.floor(figures.length / 2)];
  const most = unit === INCHES ? 200 : 600;
  if (seen.unit === undefined && middle !== undefined && middle > most)
    return [
      `${where}, runs around ${shownValue(middle)}, which is much for ${unit.name}. If it is ${unit === INCHES ? 'centimetres or millimetres' : 'millimetres'}, say so in the heading, like “${wanted.heading} (${unit === INCHES ? 'cm' : 'mm'})”.`,
    ];
  return [];
}

/** Reads a block: header, columns, rows. Undefined where no row names at least two columns. */
export function readColumns(
  block: Block,
  wanted: readonly WantedColumn[],
  unit: Unit,
  said: Corrections = {},
  prefer?: number,
): ColumnsRead | undefined {
  const header =
    block.table?.headerRow === true && block.table.area.row >= block.area.row
      ? headerOfTable(block)
      : findHeader(block, wanted, prefer);
  if (header === undefined) return undefined;
  const lines: Line[] = [];
  const last = lastRow(block);
  for (let row = header.row + header.rows; row <= last; row++)
    lines.push({ row: block.area.row + row, kind: lineKind(block, header, row) });
  const all = look(block, header, lines);
  const list = scores(all, wanted, unit);
  const taken = assign(list, all, wanted, said);
  const columns = all.map((seen): SheetColumn => {
    const match = taken.get(seen.column);
    const samples = [...new Set(seen.cells.map(({ value }) => shownValue(value)))].slice(0, SAMPLES);
    const { column, heading, id } = seen;
    return {
      column,
      heading,
      id,
      unit: seen.unit,
      samples,
      key: match?.wanted.key,
      confidence: match === undefined ? undefined : match.corrected ? 'sure' : confidenceOf(match.score),
      corrected: match?.corrected ?? said[id] === null,
      doubts:
        match === undefined
          ? twoMeasures(seen)
          : [...doubtsOf(seen, match, list, taken, all, unit), ...unitDoubt(seen, match.wanted, unit)],
    };
  });
  return { block, header, columns, lines };
}

function headerOfTable(block: Block): Header {
  const table = block.table;
  const row = (table?.area.row ?? block.area.row) - block.area.row;
  return {
    row,
    rows: 1,
    headings: (block.values[row] ?? []).map((value) =>
      filled(value) ? String(value).replace(/\s+/g, ' ').trim() : '',
    ),
  };
}

/** The last row of the block that holds anything; of a table, the last of its body. */
function lastRow(block: Block): number {
  const { table } = block;
  if (table !== undefined)
    return Math.min(
      table.area.row - block.area.row + table.area.rows - 1 - (table.totalsRow ? 1 : 0),
      block.values.length - 1,
    );
  for (let row = block.values.length - 1; row >= 0; row--)
    if (block.values[row]?.some(filled) === true) return row;
  return -1;
}
