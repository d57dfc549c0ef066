import { describe, expect, it } from 'vitest';
import { ByFigures } from '../../../../src/core/window/reader/by-figures';
import { gather } from '../../../../src/core/window/reader/evidence';
import { readHeading } from '../../../../src/core/window/reader/heading';

const evidenceOf = (headings: readonly string[], rows: readonly (readonly number[])[]) =>
  gather(
    headings.map((text) => [text]),
    headings.map((text) => readHeading(text)),
    { rows, unitOf: () => 'in' },
  );

const PRICED = [
  [7.5, 62, 465],
  [3, 88, 264],
  [10.5, 47, 493.5],
];

describe('what the figures of a column come to', () => {
  it('is a price where yards times it are the amount, whatever heads it', () => {
    const found = new ByFigures(evidenceOf(['Yds', 'Net', 'Fabric $'], PRICED));
    expect(found.of(1)).toEqual(['unitPrice']);
  });

  it('is a lining where all of it costs the same, and the face beside it does not', () => {
    const rows = [
      [21.8, 113.36, 25.2, 322.56],
      [16.4, 85.28, 18.9, 351.54],
      [10.8, 56.16, 12.6, 161.28],
      [5.4, 28.08, 6.3, 140.49],
    ];
    const evidence = evidenceOf(['Mtr', '$', 'Mtr', '$'], rows);
    const found = new ByFigures(evidence);
    expect(evidence.map((own) => found.told(own))).toEqual([
      'liningYardage',
      'liningAmount',
      'yardage',
      'amount',
    ]);
    // One cloth throughout costs the same as well: nothing tells them apart.
    const alike = rows.map(([one = 0, two = 0]) => [one, two, one * 2, two * 4]);
    const two = evidenceOf(['Mtr', '$', 'Mtr', '$'], alike);
    expect(new ByFigures(two).told(two[0]!)).toBeUndefined();
  });

  it('is none where one row in three comes out otherwise', () => {
    const wrong = PRICED.map((row, at) => (at === 2 ? [10.5, 47, 500] : row));
    expect(new ByFigures(evidenceOf(['Yds', 'Net', 'Fabric $'], wrong)).of(1)).toEqual([]);
  });

  it('tells the widths of all windows from those of one', () => {
    const rows = [
      [2, 5, 10],
      [1, 4, 4],
      [3, 6, 18],
    ];
    expect(new ByFigures(evidenceOf(['Qty', 'W ea', 'W ext'], rows)).of(2)).toEqual(['widthsOfAll']);
  });

  it('tells nothing by a count that is always one', () => {
    const rows = [
      [1, 5, 5],
      [1, 4, 4],
      [1, 6, 6],
    ];
    expect(new ByFigures(evidenceOf(['Qty', 'W ea', 'W ext'], rows)).of(2)).toEqual([]);
  });

  it('is the total where it is the sum of the money beside it', () => {
    const rows = PRICED.map(([yards = 0, price = 0, amount = 0], at) => [
      yards,
      price,
      amount,
      40 + at,
      amount + 40 + at,
    ]);
    const headings = ['Yds', '$/yd', 'Fabric $', 'Making $', 'Ex'];
    expect(new ByFigures(evidenceOf(headings, rows)).of(4)).toEqual(['total']);
    const wrong = rows.map((row, at) => [...row.slice(0, 4), (row[4] ?? 0) + at]);
    expect(new ByFigures(evidenceOf(headings, wrong)).of(4)).toEqual([]);
  });

  it('is a cut where it is always as much longer than the finished drop', () => {
    const cuts = (over: number) => [84, 96, 108].map((drop) => [drop, drop + over]);
    expect(new ByFigures(evidenceOf(['Finished drop', 'Zz'], cuts(16))).of(1)).toEqual(['cutLength']);
    expect(new ByFigures(evidenceOf(['Finished drop', 'Zz'], cuts(2))).of(1)).toEqual([]);
  });

  it('is labor where it is the widths of every window at a rate', () => {
    const rows = [
      [2, 5, 21, 210],
      [1, 4, 18, 72],
      [3, 6, 21, 378],
    ];
    expect(new ByFigures(evidenceOf(['Qty', 'Widths', '$/width', 'Zz'], rows)).of(3)).toEqual(['labor']);
  });

  it('is yardage where widths × cut come to it, rounded up by some step', () => {
    const rows = [
      [5, 100, 14],
      [4, 112, 12.5],
      [6, 96, 16],
    ];
    expect(new ByFigures(evidenceOf(['Widths', 'Cut length', 'Zz'], rows)).of(2)).toEqual(['yardage']);
  });

  it('is the making where it is what the total lacks, unless its heading says otherwise', () => {
    const rows = PRICED.map(([yards = 0, price = 0, amount = 0], at) => [
      yards,
      price,
      amount,
      40 + at,
      amount + 40 + at,
    ]);
    const making = (heading: string) =>
      new ByFigures(evidenceOf(['Yds', '$/yd', 'Fabric $', heading, 'Total $'], rows)).of(3);
    expect(making('Zz')).toEqual(['labor']);
    expect(making('Installing $')).toEqual([]);
  });

  it('is a cut where it is so many whole repeats, longer than the drop', () => {
    const rows = (cut: number) => [
      [84, 27, 108],
      [96, 25, 125],
      [101, 24, cut],
    ];
    const headings = ['Finished drop', 'Vertical repeat', 'Zz'];
    expect(new ByFigures(evidenceOf(headings, rows(120))).of(2)).toEqual(['cutLength']);
    expect(new ByFigures(evidenceOf(headings, rows(125))).of(2)).toEqual([]);
  });

  it('is widths where so many cuts are what the yards hold', () => {
    const rows = [
      [100, 14, 5],
      [112, 12.5, 4],
      [96, 16, 6],
    ];
    expect(new ByFigures(evidenceOf(['Cut length', 'Yards', 'Zz'], rows)).of(2)).toEqual(['widths']);
  });
});
