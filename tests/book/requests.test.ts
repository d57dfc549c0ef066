import { describe, expect, it } from 'vitest';
import { areaAt } from '../../src/book/address';
import type { Changes, Put } from '../../src/book/book';
import { inParts, MOST_AT_ONCE } from '../../src/book/requests';

const column = (at: number, rows: number): Put => ({
  area: areaAt('Floor', 1, at, rows),
  cells: Array.from({ length: rows }, (_, row) => [row]),
});
const formula = (at: number, rows: number): Put => ({ area: areaAt('Floor', 1, at, rows), formula: '=A2' });
const rowsIn = (parts: readonly Changes[]): number[] =>
  parts.map(({ puts = [] }) => puts.reduce((sum, { area }) => sum + area.rows * area.columns, 0));

describe('a change in parts', () => {
  it('is one where it fits, table, headings, formulas and looks together', () => {
    const grown = { table: 'Openings', area: areaAt('Floor', 0, 0, 11, 3) };
    const dress = [{ area: areaAt('Floor', 1, 2, 10), format: '0.00' }];
    const heading = { area: areaAt('Floor', 0, 2), cells: [['Rod']] };
    const all = { resize: [grown], puts: [formula(2, 10), heading], dress };
    expect(inParts(all, MOST_AT_ONCE)).toEqual([{ resize: [grown], puts: [heading, formula(2, 10)], dress }]);
  });

  it.each([
    ['cells are cut at the most a request takes', [column(1, 50_000)], 20_000, [20_000, 20_000, 10_000]],
    [
      'a part that is full to the last cell is no reason for another',
      [column(1, 15_000), column(2, 5_000)],
      20_000,
      [20_000],
    ],
    [
      'a put fills what room is left before it is cut',
      [column(1, 15_000), column(2, 15_000)],
      20_000,
      [20_000, 10_000],
    ],
    [
      'one formula for many cells weighs what the host says',
      [formula(1, 10_000), formula(2, 10_000), formula(3, 10_000)],
      400_000,
      [30_000],
    ],
    ['and is cut as cells are where each cell is written', [formula(1, 30_000)], 20_000, [20_000, 10_000]],
  ])('%s', (_, puts, fills, sizes) => {
    expect(rowsIn(inParts({ puts }, fills))).toEqual(sizes);
  });

  it('a formula that is cut goes on where it was', () => {
    const parts = inParts({ puts: [formula(1, 30_000)] }, 20_000);
    expect(parts.map(({ puts }) => puts?.[0])).toEqual([
      { area: areaAt('Floor', 1, 1, 20_000), formula: '=A2' },
      { area: areaAt('Floor', 20_001, 1, 10_000), formula: '=A20002' },
    ]);
  });

  it('long texts are cut by their length, and a row that is too long by itself still goes', () => {
    const long = (length: number, rows: number): Put => ({
      area: areaAt('Floor', 0, 0, rows),
      cells: Array.from({ length: rows }, () => ['x'.repeat(length)]),
    });
    expect(rowsIn(inParts({ puts: [long(30_000, 100)] }, 20_000))).toEqual([49, 49, 2]);
    expect(rowsIn(inParts({ puts: [long(2_000_000, 2)] }, 20_000))).toEqual([1, 1]);
  });

  it('tables and names stand before any formula, and looks that cannot be taken back come last', () => {
    const newTables = [{ name: 'Openings', area: areaAt('Floor', 0, 0, 3, 2) }];
    const dress = [{ area: areaAt('Floor', 0, 0), role: 'heading' as const }];
    const parts = inParts({ puts: [formula(2, 2), column(1, 2)], newTables, dress }, 20_000, true);
    expect(parts).toEqual([{ puts: [column(1, 2)], newTables }, { puts: [formula(2, 2)] }, { dress }]);
  });

  it('nothing is no request', () => {
    expect(inParts({ puts: [], dress: [] }, 20_000)).toEqual([]);
  });
});
