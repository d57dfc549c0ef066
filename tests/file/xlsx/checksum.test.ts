import { readFileSync } from 'node:fs';
import { unzipSync, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { damagedParts } from '../../../src/file/xlsx/checksum';
import { golden } from '../book';

const whole = new Uint8Array(readFileSync(golden('floor.xlsx')));

it('a whole file has no damaged part', () => {
  expect(damagedParts(whole, new Map(Object.entries(unzipSync(whole))))).toEqual([]);
});

it('one wrong byte of a stored part is noticed, by the part’s name', () => {
  const zip = zipSync({ a: new Uint8Array([1, 2, 3, 4]), b: new Uint8Array([5, 6]) }, { level: 0 });
  const at = zip.findIndex((_, here) => zip[here] === 1 && zip[here + 1] === 2 && zip[here + 2] === 3);
  zip[at + 1] = 9;
  expect(damagedParts(zip, new Map(Object.entries(unzipSync(zip))))).toEqual(['a']);
});

it('what is no zip, or cut short, is left for the unzipping to refuse', () => {
  expect(damagedParts(new Uint8Array(3), new Map())).toEqual([]);
  expect(damagedParts(whole.subarray(0, 500), new Map())).toEqual([]);
});
