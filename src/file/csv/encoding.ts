/** Which encoding a text file is in: told by its mark, else by what it holds. */
import { createReadStream } from 'node:fs';
import { Problem } from '../problem';

export interface Encoding {
  readonly name: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  /** What the person should know of it. */
  readonly says: string | undefined;
}

const OLDER: Encoding = {
  name: 'windows-1252',
  says: 'It is not in UTF-8, and is read as Windows-1252: check names with accents.',
};
const LOOKED_AT = 65_536;

function byMark(bytes: Uint8Array): Encoding | undefined {
  const [one, other] = bytes;
  if (one === 0xff && other === 0xfe) return { name: 'utf-16le', says: undefined };
  if (one === 0xfe && other === 0xff) return { name: 'utf-16be', says: undefined };
  return undefined;
}

/** UTF-16 without a mark shows as a zero in every other byte of plain text. */
function byZeros(bytes: Uint8Array, path: string): Encoding | undefined {
  const zeros = [0, 0] as [number, number];
  for (let at = 0; at < bytes.length; at++) if (bytes[at] === 0) zeros[at % 2 === 0 ? 0 : 1]++;
  if (zeros[0] + zeros[1] === 0) return undefined;
  const half = bytes.length / 2;
  const says = 'It is in UTF-16 without a mark, and is read so.';
  if (zeros[1] > half * 0.6 && zeros[0] < half * 0.05) return { name: 'utf-16le', says };
  if (zeros[0] > half * 0.6 && zeros[1] < half * 0.05) return { name: 'utf-16be', says };
  throw new Problem(
    `“${path}” is not a text file, whatever its name says. Save the orders as CSV in UTF-8, or as .xlsx, and try again.`,
  );
}

/** Why a file cannot be read, in a sentence. */
function unread(path: string, thrown: unknown): Problem {
  const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
  if (code === 'ENOENT' || code === 'ENOTDIR')
    return new Problem(`“${path}” is not there. Check the name and the folder.`);
  if (code === 'EISDIR') return new Problem(`“${path}” is a folder. Name a file of orders in it.`);
  if (code === 'EACCES' || code === 'EPERM')
    return new Problem(`“${path}” may not be read by you. Ask whoever owns it for the right to read.`);
  return new Problem(`“${path}” could not be read (${code || String(thrown)}). Try again.`);
}

/** Of bytes that come only once: told by the first of them. */
export function encodingOfFirst(bytes: Uint8Array, name: string): Encoding {
  const known = byMark(bytes) ?? byZeros(bytes.subarray(0, LOOKED_AT), name);
  if (known !== undefined) return known;
  try {
    // What comes after is not looked at: the last character may be cut off.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return { name: 'utf-8', says: undefined };
  } catch {
    return OLDER;
  }
}

export async function encodingOf(path: string): Promise<Encoding> {
  try {
    return await lookThrough(path);
  } catch (thrown) {
    throw thrown instanceof Problem ? thrown : unread(path, thrown);
  }
}

/** Reads the file once through: a byte that UTF-8 does not know shows an older encoding. */
async function lookThrough(path: string): Promise<Encoding> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let first = true;
  let isUtf8 = true;
  for await (const chunk of createReadStream(path, { highWaterMark: 1 << 20 })) {
    const bytes = chunk as Buffer;
    if (first) {
      const known = byMark(bytes) ?? byZeros(bytes.subarray(0, LOOKED_AT), path);
      if (known !== undefined) return known;
      first = false;
    }
    if (!isUtf8) continue;
    try {
      decoder.decode(bytes, { stream: true });
    } catch {
      isUtf8 = false;
      break;
    }
  }
  if (first) throw new Problem(`“${path}” is empty (0 bytes). Find a whole copy of it.`);
  if (isUtf8) {
    try {
      decoder.decode();
      return { name: 'utf-8', says: undefined };
    } catch {
      // cut off inside a character
    }
  }
  return OLDER;
}
