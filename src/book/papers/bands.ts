/** A paper's blocks as rows of its sheet: what stands where on the page's columns, how high, how it looks. */
import {
  entryText,
  words,
  type Block,
  type Entry,
  type Pair,
  type Paper,
  type TableRow,
} from '../../core/papers/paper';
import type { Dress, PaperRole } from '../book';
import { laidOut, type LaidOut } from '../../core/drawing/laid-out';
import type { Unit } from '../../core/exact/unit';
import { LOOKS, USUAL_SIZE } from '../roles';
import { BOLD, heightOf, linesOf } from './words';

export interface BandCell {
  readonly from: number;
  readonly span: number;
  readonly role: PaperRole;
  readonly entry?: Entry | undefined;
  readonly align?: Dress['align'];
}

/** One row of the sheet. */
export interface Band {
  /** In points. */
  readonly height: number;
  readonly cells: readonly BandCell[];
  /** Whether the next row stays on its page. */
  readonly keep?: boolean;
  readonly newPage?: boolean;
  /** Whether it stands on every further page. */
  readonly repeated?: boolean;
  /** What is drawn on it, from its left edge. */
  readonly drawn?: LaidOut;
  /** Whether it is a row below such a header. */
  readonly ofRepeated?: boolean;
}

const PADDING = 5;
/** How a label's height is shared by its lines, below what stays blank at its upper edge. */
const LABEL_EDGE = 0.1;
const LABEL_LINES = [0.4, 0.25, 0.25];
/** Rows of a sheet are so many whole points high: a pixel, 96 to the inch. */
const PIXEL = 0.75;
/** Of the words in a drawing, in points. */
export const LETTERS = 8;

/** The height that the longest of these cells needs. */
function tall(cells: readonly BandCell[], columnPoints: number, least = 0): number {
  return cells.reduce((most, { entry, span, role }) => {
    if (entry === undefined) return most;
    const { size = USUAL_SIZE, wrapped, bold } = LOOKS[role];
    const room = (span * columnPoints - PADDING) / (bold === true ? BOLD : 1);
    const lines = wrapped === true ? linesOf(entryText(entry), room, size) : 1;
    return Math.max(most, heightOf(lines, size));
  }, least);
}

/** Space between blocks. */
const GAP: Band = { height: 6, cells: [] };
/** So that words stand clear of the line above them. */
const BELOW_LINE: Band = { height: 3, cells: [], keep: true };
const LINE = 15;
const TO_WRITE_ON = 20;
const TO_SIGN_ON = 23;
/** Above a line to write on: room for what is written, with its label still beside it. */
const TO_WRITE_UNDER: Band = { height: TO_WRITE_ON - LINE, cells: [], keep: true };
/** Rows that stay with the one above them. */
const STAYS_WITH: ReadonlySet<TableRow['is']> = new Set(['detail', 'sum', 'total']);

/** So many lines of notes, or rows of pairs, stay on one page. */
const MOST_KEPT = 8;

class Bands {
  readonly all: Band[] = [];

  constructor(
    private readonly columns: number,
    private readonly columnPoints: number,
  ) {}

  add(cells: readonly BandCell[], more: Partial<Band> = {}): void {
    this.all.push({ cells, ...more, height: tall(cells, this.columnPoints, more.height) });
  }

  /** One entry over the whole page. */
  whole(entry: Entry, role: PaperRole, more: Partial<Band> = {}): void {
    this.add([{ from: 0, span: this.columns, role, entry }], more);
  }

  /** Between blocks; it keeps what it stands between where the block above is to stay with the next. */
  gap(keep: boolean): void {
    if (this.all.length > 0) this.all.push(keep ? { ...GAP, keep } : GAP);
  }

  title(text: string | undefined): void {
    if (text === undefined) return;
    this.whole(words(text), 'section', { keep: true });
    this.all.push(BELOW_LINE);
  }

  letterhead({ house, title, facts }: Extract<Block, { is: 'letterhead' }>): void {
    const half = Math.ceil(this.columns * 0.58);
    const right = this.columns - half;
    const label = Math.floor(right * 0.45);
    const rows = Math.max(house.length, facts.length + 1);
    for (let at = 0; at < rows; at++) {
      const own = house[at];
      const fact = facts[at - 1];
      this.add(
        [
          {
            from: 0,
            span: half,
            role: at === 0 ? 'letterhead' : 'small',
            entry: own,
          },
          ...(at === 0
            ? [
                {
                  from: half,
                  span: right,
                  role: 'paper title' as const,
                  entry: words(title),
                  align: 'right' as const,
                },
              ]
            : fact === undefined
              ? []
              : [
                  {
                    from: half,
                    span: label,
                    role: 'label' as const,
                    entry: words(fact.label),
                    align: 'right' as const,
                  },
                  ...valueOf(fact, half + label, right - label, 'small', 'right'),
                ]),
        ],
        { keep: true },
      );
    }
  }

  pairs({ title, across, pairs, keep: withNext }: Extract<Block, { is: 'pairs' }>): void {
    this.title(title);
    const each = Math.floor(this.columns / across);
    const label = Math.max(1, Math.round(each * (across === 1 ? 0.22 : 0.4)));
    for (let at = 0; at < pairs.length; at += across) {
      const cells = pairs
        .slice(at, at + across)
        .flatMap((pair, turn): BandCell[] => [
          { from: turn * each, span: label, role: 'label', entry: words(pair.label) },
          ...valueOf(pair, turn * each + label, each - label, 'words'),
        ]);
      if (pairs.slice(at, at + across).some(({ entry }) => entry === undefined))
        this.all.push(TO_WRITE_UNDER);
      this.add(cells, {
        height: LINE,
        keep: at + across < pairs.length ? pairs.length <= MOST_KEPT * across : withNext === true,
      });
    }
  }

  table({ columns, rows, repeated, keep, whole }: Extract<Block, { is: 'table' }>): void {
    const starts = columns.map((_, at) => columns.slice(0, at).reduce((sum, { span }) => sum + span, 0));
    const cell = (at: number, role: PaperRole, entry: Entry | undefined): BandCell => ({
      from: starts[at] ?? 0,
      span: columns[at]?.span ?? 1,
      role,
      entry,
      align: columns[at]?.align,
    });
    if (columns.some(({ heading }) => heading !== ''))
      this.add(
        columns.map(({ heading }, at) => cell(at, 'column', words(heading))),
        { keep: true, height: 16, ...(repeated === true && { repeated }) },
      );
    const first = this.all.length;
    for (const [turn, row] of rows.entries()) this.row(row, rows[turn + 1], columns.length, cell);
    if (repeated === true)
      for (let at = first; at < this.all.length; at++)
        this.all[at] = { ...(this.all[at] as Band), ofRepeated: true };
    if (whole === true)
      for (let at = first; at < this.all.length - 1; at++)
        this.all[at] = { ...(this.all[at] as Band), keep: true };
    const last = this.all.at(-1);
    if (keep === true && last !== undefined) this.all[this.all.length - 1] = { ...last, keep };
  }

  private row(
    { is, cells }: TableRow,
    next: TableRow | undefined,
    columns: number,
    cell: (at: number, role: PaperRole, entry: Entry | undefined) => BandCell,
  ): void {
    if (is === 'group' || is === 'detail') {
      const [entry = words('')] = cells;
      this.whole(entry, is === 'group' ? 'room' : 'small', {
        keep: is === 'group' || next?.is === 'detail',
        ...(is === 'group' && { height: 19 }),
      });
      return;
    }
    const role = is === 'fill' ? 'blank' : is;
    this.add(
      Array.from({ length: columns }, (_, at) => cell(at, role, cells[at])),
      { keep: next !== undefined && STAYS_WITH.has(next.is), height: is === 'fill' ? TO_WRITE_ON : LINE },
    );
  }

  totals({ pairs }: Extract<Block, { is: 'totals' }>): void {
    const label = Math.ceil(this.columns / 3);
    const value = Math.ceil(this.columns / 6);
    const from = this.columns - label - value;
    for (const [at, { label: text, entry, strong }] of pairs.entries()) {
      const role = strong === true ? 'total' : 'sum';
      this.add(
        [
          { from, span: label, role, entry: words(text) },
          { from: from + label, span: value, role, entry, align: 'right' },
        ],
        { keep: at < pairs.length - 1, height: strong === true ? 19 : LINE },
      );
      if (strong === true && at < pairs.length - 1) this.all.push(BELOW_LINE);
    }
  }

  notes({ title, lines, small, across: beside, keep: withNext }: Extract<Block, { is: 'notes' }>): void {
    this.title(title);
    const across = beside ?? 1;
    const few = lines.length <= MOST_KEPT;
    const each = Math.floor(this.columns / across);
    for (let at = 0; at < lines.length; at += across)
      this.add(
        lines.slice(at, at + across).map((entry, turn) => ({
          from: turn * each,
          // Two beside each other stand apart.
          span: each - (turn < across - 1 ? 1 : 0),
          role: small === true ? ('small' as const) : ('words' as const),
          entry,
        })),
        { keep: at + across < lines.length ? few : withNext === true },
      );
  }

  /** A drawing, as high as it came to be. */
  drawing({ drawing, high }: Extract<Block, { is: 'drawing' }>, unit: Unit): void {
    const wide = this.columns * this.columnPoints - PADDING;
    const drawn = laidOut(drawing, { wide, high, letters: LETTERS }, unit);
    this.all.push({ height: Math.ceil(drawn.high), cells: [], drawn });
  }

  /** Row after row of labels, a page when its sheet is full. */
  labels({ across, down, high, gapDown, labels }: Extract<Block, { is: 'labels' }>): void {
    for (let first = 0; first < labels.length; first += across) {
      const row = (first / across) % down;
      const own = labels.slice(first, first + across);
      let at = row * (high + gapDown);
      // Rounded where it ends, not how high it is, so that a sheet of many labels stays in its grid.
      const add = (height: number, more: Partial<Band> = {}): void => {
        const end = at + height;
        const points = (Math.round(end / PIXEL) - Math.round(at / PIXEL)) * PIXEL;
        at = end;
        if (points > 0) this.all.push({ cells: [], keep: true, ...more, height: points });
      };
      add(high * LABEL_EDGE, { newPage: row === 0 && first > 0 });
      for (const [line, share] of LABEL_LINES.entries())
        add(high * share, {
          cells: own.flatMap((lines, place): BandCell[] => {
            const entry = lines[line];
            return entry === undefined
              ? []
              : [{ from: place * 2, span: 1, role: line === 0 ? 'room' : 'small', entry, align: 'center' }];
          }),
          // A sheet of labels is one page, whole.
          keep: line < LABEL_LINES.length - 1 || row < down - 1,
        });
      if (row < down - 1) add(gapDown);
    }
  }

  /** Two lines to sign side by side. */
  signatures(lines: readonly string[]): void {
    const each = Math.floor(this.columns / 2);
    for (let at = 0; at < lines.length; at += 2) {
      this.all.push({ height: TO_SIGN_ON, cells: [], keep: true });
      this.add(
        lines.slice(at, at + 2).map((text, turn): BandCell => ({
          from: turn * each,
          span: each - (turn === 0 ? 1 : 0),
          role: 'signature',
          entry: words(text),
        })),
        { keep: at + 2 < lines.length },
      );
    }
  }
}

/** A pair's own value, or a line to write on. */
function valueOf(
  { entry }: Pair,
  from: number,
  span: number,
  role: PaperRole,
  align: Dress['align'] = 'left',
): BandCell[] {
  return [
    entry === undefined
      ? { from, span: Math.max(1, span - 1), role: 'blank' }
      : { from, span, role, entry, align },
  ];
}

const staysWithNext = (block: Block): boolean =>
  (block.is === 'notes' || block.is === 'table' || block.is === 'pairs') && block.keep === true;

/** The rows of a paper whose page has columns of so many points. */
export function bandsOf({ page, blocks, unit }: Paper, columnPoints: number): readonly Band[] {
  const bands = new Bands(page.columns, columnPoints);
  let newPage = false;
  let kept = false;
  for (const block of blocks) {
    if (block.is === 'page') {
      newPage = bands.all.length > 0;
      continue;
    }
    if (!newPage) bands.gap(kept);
    kept = staysWithNext(block);
    const from = bands.all.length;
    switch (block.is) {
      case 'letterhead':
        bands.letterhead(block);
        break;
      case 'pairs':
        bands.pairs(block);
        break;
      case 'table':
        bands.table(block);
        break;
      case 'totals':
        bands.totals(block);
        break;
      case 'notes':
        bands.notes(block);
        break;
      case 'signatures':
        bands.signatures(block.lines);
        break;
      case 'labels':
        bands.labels(block);
        break;
      case 'drawing':
        bands.drawing(block, unit);
        break;
    }
    const first = bands.all[from];
    if (newPage && first !== undefined) bands.all[from] = { ...first, newPage: true };
    newPage = false;
  }
  return bands.all;
}
