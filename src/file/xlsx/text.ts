/** A part's bytes as text and back, byte for byte the same. */
import { Problem } from '../problem';

const PIECE = 1 << 20;

/** In pieces, so that a large part is never text as a whole. */
export function* textPieces(bytes: Uint8Array, part: string): Generator<string> {
  // The mark at the start is kept, so that it is written back.
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  for (let at = 0; at < bytes.length || at === 0; at += PIECE) {
    try {
      yield decoder.decode(bytes.subarray(at, at + PIECE), { stream: at + PIECE < bytes.length });
    } catch (thrown) {
      if (!(thrown instanceof TypeError)) throw thrown;
      throw new Problem(
        `Its part ${part} is not in UTF-8. Open it in a spreadsheet program, save it again and try again.`,
      );
    }
  }
}

export const textOf = (bytes: Uint8Array, part: string): string => [...textPieces(bytes, part)].join('');

export const bytesOfText = (text: string): Uint8Array => new TextEncoder().encode(text);

const TOGETHER = 1 << 20;

/** The bytes of a text that comes in many small pieces, in a few large ones. */
export function* bytesOfPieces(pieces: Iterable<string>): Generator<Uint8Array> {
  let waiting: string[] = [];
  let length = 0;
  for (const piece of pieces) {
    waiting.push(piece);
    length += piece.length;
    if (length < TOGETHER) continue;
    yield bytesOfText(waiting.join(''));
    [waiting, length] = [[], 0];
  }
  yield bytesOfText(waiting.join(''));
}
