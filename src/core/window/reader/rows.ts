/** Rows read one by one through a fixed reading, with a bounded memory of what carries down. */
import type { OrderKey } from '../meanings';
import { Above } from './above';
import { feetByDash, isDitto, type Cell, type Row } from './cells';
import { spelledOut } from './codes';
import { withPoint } from './decimal-comma';
import { CARRIED, RowKinds } from './row-kind';
import { valuesOfRow } from './row-values';
import type { Plan, RowKind, RowRead } from './slots';

const NOTE_WORDS =
  /[.;!?]|, |\b(?:not|see|by|please|check|call|note|from|under|with|are|is|was|hold|ship|prices?|all|measured|incl|excl|per|must|to be|client|confirm|approx|deposit|terms|signed|page)\b|\*|^n\.?b\b/i;

/** “11 windows, 3 cubicles” below the last of them. */
const COUNTED = /^\d+ (?:windows?|openings?|pairs?|prs?|curtains?|drapes|rooms?|rms?|units?|panels?)\b/i;
/** A name in capitals heads what follows it. */
const TITLE = /^[A-Z]{3,}\b/;

const STOREY =
  /\b(?:wing|floor|block|ground|storey|level|annexe?|fl|flr|basement|phase|building|house|tower)\b/i;
const NAME = /^[\w\s&'’/-]+(?:\(cont'?d?\.?\))?$/i;
const SENTENCE = /\b(?:not|see|please|check|call|note|are|is|was|hold|must)\b/i;

/** Whether a short line heads the rows below it and is no note. */
const headsRows = (text: string): boolean =>
  !NOTE_WORDS.test(text) ||
  TITLE.test(text) ||
  STOREY.test(text) ||
  (NAME.test(text) && !SENTENCE.test(text));

const words = (cell: Cell): string => (typeof cell === 'string' ? cell : '');
const plain = (row: number, is: RowKind): RowRead => ({ row, is, values: {}, unread: [], dated: [] });

interface Waiting {
  readonly row: number;
  readonly cells: Row;
}

export class RowReader {
  private waiting: Waiting[] = [];
  private readonly kinds: RowKinds;
  private readonly carries: readonly OrderKey[];

  constructor(
    private readonly plan: Plan,
    private readonly above: Above = new Above(),
  ) {
    this.kinds = new RowKinds(plan);
    this.carries = CARRIED.filter((key) => plan.slots.some(({ keys }) => keys.includes(key)));
  }

  /** Takes the next row and gives the rows that are certain now: a line of words waits for what follows it. */
  push(row: number, given: Row): RowRead[] {
    const pointed = this.plan.decimalComma ? given.map(withPoint) : given;
    const cells = spelledOut(pointed, this.plan.codes);
    const kind = this.kinds.kindOf(cells);
    if (kind === 'words') {
      this.waiting.push({ row, cells });
      return [];
    }
    if (kind === 'blank') {
      if (this.waiting.length === 0) return [plain(row, 'blank')];
      this.waiting.push({ row, cells });
      return [];
    }
    const before = this.settle(['window', 'other goods', 'repeat header'].includes(kind));
    if (kind === 'window') return [...before, this.window(row, cells)];
    // A cancelled line says order and date for those below all the same.
    if (kind === 'other goods' || (kind === 'note' && this.kinds.hasWindowFacts(cells))) {
      this.carry(row, cells);
    }
    if (kind === 'total') this.above.begin();
    return [...before, plain(row, kind)];
  }

  end(): RowRead[] {
    return this.settle(false);
  }

  /** Lines of words before a window are sections where they are short; at the end they are notes. */
  private settle(windowFollows: boolean): RowRead[] {
    const list = this.waiting.map(({ row, cells }): RowRead => {
      const texts = cells.filter((cell) => cell !== null);
      if (texts.length === 0) return plain(row, 'blank');
      const text = texts.map(words).join(' ');
      const titled = texts.length === 1 && text.length <= 40 && text.split(' ').length <= 5;
      if (!windowFollows && titled && COUNTED.test(text)) return plain(row, 'total');
      const section = windowFollows && titled && headsRows(text);
      if (section) this.above.begin();
      return plain(row, section ? 'section' : 'note');
    });
    this.waiting = [];
    return list;
  }

  /** The cells that are read, a ditto as the cell it repeats. */
  private resolved(cells: Row): Cell[] {
    return this.plan.slots.map(({ at, other, dashed }, place) => {
      const cell = cells[at] ?? null;
      if (isDitto(cell) || (cell === null && other === 'place')) return this.above.cell(place) ?? cell;
      if (cell !== null) this.above.remember(place, cell);
      return dashed === true ? (feetByDash(cell) ?? cell) : cell;
    });
  }

  /** Room, order, date and client belong to the lines below too. */
  private carry(row: number, cells: Row): void {
    const { values } = valuesOfRow(row, this.resolved(cells), this.plan);
    for (const key of CARRIED) if (values[key] !== undefined) this.above.carry(key, values[key]);
  }

  private window(row: number, cells: Row): RowRead {
    const read = valuesOfRow(row, this.resolved(cells), this.plan);
    const { values } = read;
    for (const key of this.carries) {
      if (values[key] === undefined) {
        if (read.unread.some((one) => one.key === key)) continue;
        const above = this.above.value(key);
        if (above !== undefined) values[key] = above;
      } else this.above.carry(key, values[key]);
    }
    if (
      values.measuredTo === undefined &&
      this.plan.measuredTo !== undefined &&
      values.measured !== undefined
    )
      values.measuredTo = this.plan.measuredTo;
    return read;
  }
}
