import { readFileSync } from 'node:fs';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import {
  BrokenZip,
  entriesOf,
  isSound,
  packedPieces,
  unpacked,
  zip,
  type Entry,
} from '../../../src/file/xlsx/zip';
import { golden } from '../book';

const whole = new Uint8Array(readFileSync(golden('floor.xlsx')));
const read = (bytes: Uint8Array): Map<string, Uint8Array> =>
  new Map(entriesOf(bytes).map((entry) => [entry.name, unpacked(entry)]));

it('a whole file’s parts are those that another unzipping library reads', () => {
  expect(Object.fromEntries(read(whole))).toEqual(
    Object.fromEntries(
      Object.entries(unzipSync(whole)).map(([name, bytes]) => [name, new Uint8Array(bytes)]),
    ),
  );
});

it('another unzipping library reads what is zipped here, changed parts too', () => {
  const parts = read(whole);
  parts.set('xl/new ü.xml', strToU8('<new/>'.repeat(1000)));
  const again = unzipSync(zip(parts));
  for (const [name, bytes] of parts) expect(Buffer.compare(again[name] ?? new Uint8Array(), bytes)).toBe(0);
});

it('names like __proto__ and names of digits keep their order', () => {
  const names = ['b', '10', '__proto__', '2', 'constructor', 'a'];
  const bytes = zip(new Map(names.map((name) => [name, strToU8(name)])));
  expect(entriesOf(bytes).map(({ name }) => name)).toEqual(names);
});

it('one wrong byte of a stored part is noticed', () => {
  const bytes = zipSync({ a: new Uint8Array([1, 2, 3, 4]), b: new Uint8Array([5, 6]) }, { level: 0 });
  const at = bytes.findIndex(
    (_, here) => bytes[here] === 1 && bytes[here + 1] === 2 && bytes[here + 2] === 3,
  );
  bytes[at + 1] = 9;
  expect(entriesOf(bytes).map((entry) => isSound(entry, unpacked(entry)))).toEqual([false, true]);
});

it('what is no zip, or cut short, is refused', () => {
  expect(() => entriesOf(new Uint8Array(30))).toThrow(BrokenZip);
  expect(() => entriesOf(whole.subarray(0, 500))).toThrow(BrokenZip);
});

it('a part that is packed while it comes is the one it would be at once', () => {
  const pieces = ['one ', '', 'two ', 'three'].map((text) => new TextEncoder().encode(text));
  const [entry] = entriesOf(zip(new Map([['a', packedPieces('a', pieces)]])));
  const bytes = unpacked(entry as Entry);
  expect(new TextDecoder().decode(bytes)).toBe('one two three');
  expect(isSound(entry as Entry, bytes)).toBe(true);
});
