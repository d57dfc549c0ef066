/** The checksum a zip keeps of each part; the unzipping library does not look at it. */
import * as zlib from 'node:zlib';

const END = 0x06054b50;
const ENTRY = 0x02014b50;

/** The parts whose bytes are not the ones that were zipped. None where this Node cannot tell. */
export function damagedParts(zip: Uint8Array, parts: ReadonlyMap<string, Uint8Array>): string[] {
  // Node 20 before 20.15 has no crc32.
  const crc32 = (zlib as { crc32?: typeof zlib.crc32 }).crc32;
  if (crc32 === undefined) return [];
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  let end = zip.length - 22;
  while (end >= 0 && view.getUint32(end, true) !== END) end -= 1;
  if (end < 0) return [];
  const damaged: string[] = [];
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left--) {
    if (at + 46 > zip.length || view.getUint32(at, true) !== ENTRY) break;
    const length = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(zip.subarray(at + 46, at + 46 + length));
    const bytes = parts.get(name);
    if (bytes !== undefined && crc32(bytes) !== view.getUint32(at + 16, true)) damaged.push(name);
    at += 46 + length + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return damaged;
}
