import { expect, it } from 'vitest';
import { auditAll } from './audited';

const HEADINGS = ['room', 'rod width', 'drop', 'heading', 'fabric width', 'lining', 'lining yardage', 'lining amount', 'labor']; // prettier-ignore
const row = (at: number, more: Readonly<Record<number, string | number | null>> = {}) =>
  [`Room ${at}`, 94, 96, 'pinch', 54, 'lined', 15.375, 99.94, 120].map((cell, place) =>
    place in more ? (more[place] ?? null) : cell,
  );
const blank = (...odd: readonly (string | number | null)[][]): string[] =>
  auditAll(HEADINGS, [...Array.from({ length: 24 }, (_, at) => row(at)), ...odd]).flatMap(
    ({ row: at, code, column }) => (code === 'leftBlank' ? [`${at} ${column}`] : []),
  );

it('the price of a lining whose yardage stands is missed, and what lacks both is named once', () => {
  expect(blank(row(30, { 7: null }))).toEqual(['25 lining amount']);
  expect(blank(row(30, { 6: null, 7: null }))).toEqual(['25 lining yardage']);
  expect(blank(row(30, { 5: 'unlined', 6: null, 7: null }))).toEqual([]);
});

it('the making of a window is missed where nearly every other has it', () => {
  expect(blank(row(30, { 8: null }))).toEqual(['25 labor']);
  expect(blank(...[30, 31, 32].map((at) => row(at, { 8: null })))).toEqual([]);
});
