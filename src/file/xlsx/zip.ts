/**
 * A zip's parts, in their order and under any name, and back. A part that did not change keeps the very
 * bytes it was packed as, so that only what changed is packed again.
 */
import * as zlib from 'node:zlib';

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
export const STORED = 0;
const DEFLATED = 8;
const UTF8 = 0x0800;
const ENCRYPTED = 1;
/** A tenth larger than the usual level 6 makes them, in two thirds of the time. */
const LEVEL = 4;
const MOST_ENTRIES = 0xffff;

/** What a zip says of one part. */
export interface Entry {
  readonly name: string;
  readonly method: number;
  readonly checksum: number;
  readonly size: number;
  readonly packed: Uint8Array;
}

/** How a part's bytes were packed when they were read. */
const packedAs = new WeakMap<Uint8Array, Entry>();

export class BrokenZip extends Error {}

/** The parts as the directory at the end lists them. */
export function entriesOf(zip: Uint8Array): Entry[] {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  let end = zip.length - 22;
  while (end >= 0 && view.getUint32(end, true) !== END) end -= 1;
  if (end < 0) throw new BrokenZip('it has no directory');
  const list: Entry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left--) {
    if (at + 46 > zip.length || view.getUint32(at, true) !== ENTRY)
      throw new BrokenZip('its directory is cut short');
    const flags = view.getUint16(at + 8, true);
    if ((flags & ENCRYPTED) !== 0) throw new BrokenZip('it is encrypted');
    const length = view.getUint16(at + 28, true);
    const packed = view.getUint32(at + 20, true);
    const local = view.getUint32(at + 42, true);
    if (local + 30 > zip.length || view.getUint32(local, true) !== LOCAL)
      throw new BrokenZip('a part is not where it should be');
    const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    if (from + packed > zip.length) throw new BrokenZip('a part is cut short');
    list.push({
      name: new TextDecoder(flags & UTF8 ? 'utf-8' : 'latin1').decode(
        zip.subarray(at + 46, at + 46 + length),
      ),
      method: view.getUint16(at + 10, true),
      checksum: view.getUint32(at + 16, true),
      size: view.getUint32(at + 24, true),
      packed: zip.subarray(from, from + packed),
    });
    at += 46 + length + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return list;
}

/** Node 20 before 20.15 has no crc32; there the parts are not checked. */
export const nodeChecksum = (zlib as { crc32?: typeof zlib.crc32 }).crc32;

/** In one block of memory from the start: a large part would else be there twice or thrice for a while. */
function inflated(bytes: Uint8Array, size: number): Uint8Array {
  const { buffer, byteOffset, length } = zlib.inflateRawSync(bytes, {
    maxOutputLength: Math.max(size, 1),
    chunkSize: Math.max(size + 1, 64),
  });
  return new Uint8Array(buffer, byteOffset, length);
}

/** A part's own bytes; throws where they are not those that were packed. */
export function unpacked(entry: Entry): Uint8Array {
  const { method, packed, size } = entry;
  if (method !== STORED && method !== DEFLATED) throw new BrokenZip('it is packed in a way not known here');
  const bytes = method === STORED ? new Uint8Array(packed) : inflated(packed, size);
  if (bytes.length !== size) throw new BrokenZip('a part has another size than it should');
  packedAs.set(bytes, entry);
  return bytes;
}
export const isSound = (entry: Entry, bytes: Uint8Array): boolean =>
  nodeChecksum === undefined || nodeChecksum(bytes) === entry.checksum;

const TABLE = Array.from({ length: 256 }, (_, number) => {
  let value = number;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value >>> 0;
});
const START = nodeChecksum === undefined ? 0xffffffff : 0;
function summed(bytes: Uint8Array, sum: number): number {
  // Of no bytes some versions of Node give 0, whatever came before.
  if (bytes.length === 0) return sum;
  if (nodeChecksum !== undefined) return nodeChecksum(bytes, sum);
  let value = sum;
  for (const byte of bytes) value = (TABLE[(value ^ byte) & 0xff] ?? 0) ^ (value >>> 8);
  return value;
}
const ended = (sum: number): number => (nodeChecksum === undefined ? (sum ^ 0xffffffff) >>> 0 : sum);
const checksum = (bytes: Uint8Array): number => ended(summed(bytes, START));

function packed(name: string, bytes: Uint8Array): Entry {
  const known = packedAs.get(bytes);
  if (known?.name === name) return known;
  const plain = bytes.length === 0 || name.endsWith('/');
  return {
    name,
    method: plain ? STORED : DEFLATED,
    checksum: checksum(bytes),
    size: bytes.length,
    packed: plain ? bytes : zlib.deflateRawSync(bytes, { level: LEVEL }),
  };
}

/**
 * A part that is packed while it comes, for a zip and nothing else: what stands for it in the list of parts
 * holds no bytes.
 */
export function packedPieces(name: string, pieces: Iterable<Uint8Array>): Uint8Array {
  const deflated: Uint8Array[] = [];
  let [size, sum] = [0, START];
  for (const piece of pieces) {
    size += piece.length;
    sum = summed(piece, sum);
    deflated.push(zlib.deflateRawSync(piece, { level: LEVEL, finishFlush: zlib.constants.Z_SYNC_FLUSH }));
  }
  deflated.push(zlib.deflateRawSync(new Uint8Array(0)));
  const part = new Uint8Array(0);
  packedAs.set(part, { name, method: DEFLATED, checksum: ended(sum), size, packed: Buffer.concat(deflated) });
  return part;
}

/** 1 January 1980, midday: the same parts give the same bytes whenever they are packed. */
const DAY = 0x0021;
const TIME = 0x6000;

function head(
  signature: number,
  { name, method, checksum: sum, size, packed: body }: Entry,
  local: number,
): Uint8Array {
  const text = new TextEncoder().encode(name);
  const central = signature === ENTRY;
  const bytes = new Uint8Array((central ? 46 : 30) + text.length);
  const view = new DataView(bytes.buffer);
  const shift = central ? 2 : 0;
  view.setUint32(0, signature, true);
  if (central) view.setUint16(4, 20, true);
  view.setUint16(4 + shift, 20, true);
  view.setUint16(6 + shift, text.length === name.length ? 0 : UTF8, true);
  view.setUint16(8 + shift, method, true);
  view.setUint16(10 + shift, TIME, true);
  view.setUint16(12 + shift, DAY, true);
  view.setUint32(14 + shift, sum, true);
  view.setUint32(18 + shift, body.length, true);
  view.setUint32(22 + shift, size, true);
  view.setUint16(26 + shift, text.length, true);
  if (central) view.setUint32(42, local, true);
  bytes.set(text, central ? 46 : 30);
  return bytes;
}

export function zip(parts: ReadonlyMap<string, Uint8Array>): Uint8Array {
  if (parts.size > MOST_ENTRIES) throw new BrokenZip('it has more parts than a zip of this kind can hold');
  const pieces: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  const add = (to: Uint8Array[], bytes: Uint8Array): number => to.push(bytes) && bytes.length;
  for (const [name, bytes] of parts) {
    const entry = packed(name, bytes);
    directory.push(head(ENTRY, entry, at));
    at += add(pieces, head(LOCAL, entry, 0)) + add(pieces, entry.packed);
  }
  const size = directory.reduce((sum, one) => sum + one.length, 0);
  const end = new Uint8Array(22);
  const view = new DataView(end.buffer);
  view.setUint32(0, END, true);
  view.setUint16(8, parts.size, true);
  view.setUint16(10, parts.size, true);
  view.setUint32(12, size, true);
  view.setUint32(16, at, true);
  const whole = new Uint8Array(at + size + end.length);
  let to = 0;
  for (const piece of [...pieces, ...directory, end]) {
    whole.set(piece, to);
    to += piece.length;
  }
  return whole;
}
