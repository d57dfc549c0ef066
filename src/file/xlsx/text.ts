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

const TOGETHER = 1 << 18;

/** The bytes of a text that comes in pieces; `near` is about how many there will be. */
export function bytesOfPieces(pieces: Iterable<string>, near: number): Uint8Array {
  const encoder = new TextEncoder();
  // What is not written to takes no memory.
  let bytes = new Uint8Array(near * 2 + TOGETHER);
  let [size, length] = [0, 0];
  let waiting: string[] = [];
  const put = (): void => {
    const text = waiting.join('');
    [waiting, length] = [[], 0];
    if (size + text.length * 3 > bytes.length) {
      const more = new Uint8Array((size + text.length * 3) * 2);
      more.set(bytes.subarray(0, size));
      bytes = more;
    }
    size += encoder.encodeInto(text, bytes.subarray(size)).written;
  };
  for (const piece of pieces) {
    waiting.push(piece);
    length += piece.length;
    if (length >= TOGETHER) put();
  }
  put();
  return bytes.subarray(0, size);
}
