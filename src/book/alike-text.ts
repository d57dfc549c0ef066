/** The text of a formula that stands alike in many cells, counted from each: kept once for all of them. */
import { letters, MOST_COLUMNS, MOST_ROWS } from './address';
import { referencesIn } from './formula';

/** What stays as it is, or a row or column that is counted from the formula's own cell. */
type Piece = string | { readonly axis: 'row' | 'column'; readonly by: number };

export class AlikeText {
  readonly #pieces: readonly Piece[];
  /** Whether a reference in brackets, whose meaning hangs on the table around it, may be in it. */
  readonly bracketed: boolean;

  constructor(text: string, row: number, column: number) {
    this.#pieces = piecesOf(text, row, column);
    this.bracketed = text.includes('[');
  }

  /** As it stands in this cell; undefined where it would point off the sheet. */
  at(row: number, column: number): string | undefined {
    let text = '';
    for (const piece of this.#pieces) {
      if (typeof piece === 'string') {
        text += piece;
        continue;
      }
      const place = piece.by + (piece.axis === 'row' ? row : column);
      if (place < 0 || place >= (piece.axis === 'row' ? MOST_ROWS : MOST_COLUMNS)) return undefined;
      text += piece.axis === 'row' ? String(place + 1) : letters(place);
    }
    return text;
  }

  /** Whether this is what stands in this cell. */
  reads(text: string, row: number, column: number): boolean {
    let at = 0;
    for (const piece of this.#pieces) {
      let part = piece;
      if (typeof part !== 'string') {
        const place = part.by + (part.axis === 'row' ? row : column);
        if (place < 0 || place >= (part.axis === 'row' ? MOST_ROWS : MOST_COLUMNS)) return false;
        part = part.axis === 'row' ? String(place + 1) : letters(place);
      }
      if (!text.startsWith(part, at)) return false;
      at += part.length;
    }
    return at === text.length;
  }
}

function piecesOf(text: string, row: number, column: number): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  for (const { from, to, axis, place } of referencesIn(text)) {
    pieces.push(text.slice(at, from), { axis, by: place - (axis === 'row' ? row : column) });
    at = to;
  }
  pieces.push(text.slice(at));
  return pieces;
}
