/** A part's bytes as text and back, byte for byte the same. */
import { Problem } from '../problem';

export function textOf(bytes: Uint8Array, part: string): string {
  try {
    // The mark at the start is kept, so that it is written back.
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Problem(
      `Its part ${part} is not in UTF-8. Open it in a spreadsheet program, save it again and try again.`,
    );
  }
}

export const bytesOfText = (text: string): Uint8Array => new TextEncoder().encode(text);
