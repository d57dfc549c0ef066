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
});
