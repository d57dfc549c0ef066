/**
 * A text file of orders audited piece by piece, whichever thread takes which: a piece begins with a guess
 * of what the rows above it carry down, and says what of the guess it used, so that it can be proved.
 */
import { marksOf, type Marks } from '../../core/audit/audit';
import type { Audited, OneByOne } from '../../core/audit/one-by-one';
import type { CellIn } from '../../core/cell/fields';
import {
  Above,
  answerAlike,
  NOTHING_SAID,
  saidAfter,
  type Asked,
  type Said,
  type SaidSince,
} from '../../core/window/reader/above';
import { OrderRows, type OrderTable } from '../../core/window/reader/order-rows';
import { csvBlocks, type Block, type Csv } from '../csv/csv';
import { Problem } from '../problem';

/** The byte at which a row begins, and its number from 1. */
interface Place {
  readonly byte: number;
  readonly row: number;
}

export interface Piece {
  readonly from: Place;
  /** Its last row. */
  readonly last: number;
  /** A few rows before it, read for what they carry down. */
  readonly before: Place;
}

/** So many rows before a piece, at most, are read for what they carry down. */
const BEFORE = 128;

/** Cuts a file into the blocks that it is read in. */
export class Pieces {
  readonly all: Piece[] = [];
  private rows = 0;
  private before: Place | undefined;

  see(block: Block): void {
    if (block.count === 0) return;
    const from = { byte: block.byteOf(0), row: this.rows + 1 };
    this.all.push({ from, last: this.rows + block.count, before: this.before ?? from });
    const at = Math.max(0, block.count - BEFORE);
    this.before = { byte: block.byteOf(at), row: this.rows + at + 1 };
    this.rows += block.count;
  }
}

type Row = readonly CellIn[];

/** What stands above a piece's first row: what was said, and the lines that wait for what follows them. */
export interface Start {
  readonly said: Said;
  readonly waiting: readonly (readonly [number, Row])[];
}

export interface PieceAudited {
  readonly audited: readonly Audited[];
  readonly marks: Marks;
  /** What it used of its start; undefined where no guess can tell, so that it needs the true one. */
  readonly asked: Asked | undefined;
  readonly since: SaidSince;
  readonly waiting: Start['waiting'];
}

/** What stands above the next piece, and what was guessed of it for those that were begun early. */
export class Standing {
  private readonly guesses = new Map<number, Start>();
  start: Start = { said: NOTHING_SAID, waiting: [] };

  guess(at: number): Start {
    const guess = { said: this.start.said, waiting: [] };
    this.guesses.set(at, guess);
    return guess;
  }

  /** Takes a piece in its turn; false where its guess was wrong, so that it is audited again from `start`. */
  takes(at: number, { asked, since, waiting }: PieceAudited, isTrue: boolean): boolean {
    const guess = this.guesses.get(at);
    this.guesses.delete(at);
    const { said } = this.start;
    if (!isTrue && (asked === undefined || guess === undefined || !answerAlike(asked, guess.said, said)))
      return false;
    this.start = { said: saidAfter(said, since), waiting };
    return true;
  }
}

export interface PieceWork {
  readonly csv: Csv;
  readonly table: OrderTable;
  readonly alone: OneByOne;
  /** The last row of the header. */
  readonly below: number;
}

/** `isTrue`: the start is what stands above the piece; else a guess, and some rows before it are read too. */
export async function auditPiece(
  { csv, table, alone, below }: PieceWork,
  { from, last, before }: Piece,
  start: Start,
  isTrue: boolean,
): Promise<PieceAudited> {
  const above = new Above(start.said);
  const rows = new OrderRows(table, above);
  const audited: Audited[] = [];
  // Where all the lines before it wait for what follows, a section may have begun above them.
  let isTold = isTrue || before.row === from.row;
  if (isTrue) for (const [at, cells] of start.waiting) rows.push(at, cells);
  let seen = 0;
  for await (const [at, cells] of rowsFrom(csv, isTrue ? from : before)) {
    if (at === from.row) above.forgetAsked();
    // Lines that wait are never orders, so that nothing is lost with those that wait at the end.
    const lines = at <= below ? [] : rows.push(at, cells);
    if (at >= from.row) audited.push(...lines.flatMap((line) => alone.audited(line) ?? []));
    else {
      // A blank row is told at once, and ends no wait.
      isTold ||= lines.some(({ is }) => is !== 'blank');
      // What a row above the piece took from a guess is no proof of anything.
      if (above.asked.cells.length > 0) above.forget();
    }
    seen = at;
    if (at === last) break;
  }
  if (seen !== last) throw changedMeanwhile(csv.path);
  return {
    audited,
    marks: marksOf(rows),
    asked: isTold ? above.asked : undefined,
    since: above.since,
    waiting: rows.waiting,
  };
}

async function* rowsFrom(csv: Csv, place: Place): AsyncGenerator<readonly [number, Row]> {
  let { row } = place;
  for await (const block of csvBlocks(csv, place))
    for (let at = 0; at < block.count; at++) yield [row++, block.row(at)];
}

const changedMeanwhile = (path: string): Problem =>
  new Problem(`“${path}” was changed while it was read. Try again once it is saved.`);
