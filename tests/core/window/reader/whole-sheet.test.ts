import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { understand } from '../../../../src/core/window/reader/understand';
import { understandSheet } from '../../../../src/core/window/reader/whole-sheet';

const HEADINGS = ['Room', 'Rod', 'Height', 'Hdg', 'Fabric'];
const ROWS = [
  ['Hall', 90, 84, 'pinch', 'Ash'],
  ['Den', 72, 84, 'pinch', 'Ash'],
  ['Bed', 66, 80, 'pencil', 'Elm'],
];

describe('a whole sheet tells more than its headings and rows', () => {
  it('what a line above says of a height, and the draw that it says for all', () => {
    const found = understandSheet(
      { rows: [['Heights are finished. Pairs'], HEADINGS, ...ROWS], merged: [] },
      { unit: INCHES },
    );
    if ('none' in found) throw new Error(found.none);
    expect(found.header.rows).toEqual([1]);
    expect(found.columns[2]?.means).toEqual(['finishedDrop']);
    expect(found.plan.stated).toEqual({ draw: 'pair' });
  });
  it('which headings and rows alone do not say', () => {
    const found = understand({ rows: [HEADINGS, ...ROWS], merged: [] }, { unit: INCHES, header: [0] });
    if ('none' in found) throw new Error(found.none);
    expect(found.columns[2]?.means).toEqual(['measured']);
    expect(found.plan.stated).toEqual({});
  });
});
