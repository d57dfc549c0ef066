/** What changes nothing of a table changes no figure read in it: other known words, sections, notes, units. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { readTable } from '../../../../src/core/window/reader/read';

type Cell = string | number | null;
type Line = readonly Cell[];

/** Headings by their meaning, each in words a workroom writes. */
const WORDS = {
  room: ['Room', 'Rm', 'Location', 'Area'],
  openingWidth: ['Inside width', 'Opening', 'IW', 'Opening width', 'Inside W'],
  leftExtension: ['Left extension', 'Ext L', 'Left ext.'],
  rightExtension: ['Right extension', 'Ext R', 'Right ext.'],
  rodWidth: ['Rod width', 'Rod', 'Rod W', 'RW'],
  finishedDrop: ['Finished drop', 'Fin. length', 'FL', 'Finished length'],
  heading: ['Heading', 'Hdg', 'Heading style', 'Pleat style'],
  draw: ['Draw', 'Pair/panel', 'Opens'],
  fabric: ['Fabric', 'Cloth', 'Fab', 'Material'],
  fabricWidth: ['Fabric width', 'Fab W', 'Goods width', 'Cloth width', 'Bolt width'],
  verticalRepeat: ['Vertical repeat', 'V Rpt', 'Vert. rep.', 'Repeat'],
  widths: ['Widths', 'Wds', 'No. of widths', '# widths'],
  cutLength: ['Cut length', 'CL', 'Cut lgth'],
  quantity: ['Quantity', 'Qty', 'No. of windows'],
  yardage: ['Yardage', 'Yds', 'Total yards', 'Yards'],
} as const;
const KEYS = Object.keys(WORDS) as readonly (keyof typeof WORDS)[];
const LENGTHS = new Set<string>([
  'openingWidth',
  'leftExtension',
  'rightExtension',
  'rodWidth',
  'finishedDrop',
  'fabricWidth',
  'verticalRepeat',
  'cutLength',
]);

const ROWS: readonly Line[] = [
  ['Lobby', 72, 11, 11, 94, 96, 'pinch', 'pair', 'Ash', 54, 27, 5, 135, 2, 37.5],
  ['Den', 40, 8, 8, 56, 84, 'pinch', 'pair', 'Elm', 54, 0, 3, 100, 1, 8.375],
  ['Hall', 30, 6, 6, 42, 90, 'grommet', 'one-way left', 'Elm', 54, 0, 2, 106, 1, 6],
  ['Study', 60, 10, 10, 80, 96, 'goblet', 'pair', 'Ash', 54, 27, 4, 135, 1, 15],
  ['Attic', 48, 9, 9, 66, 60, 'pinch', 'pair', 'Ash', 54, 27, 4, 81, 3, 27],
  ['Porch', 90, 12, 12, 114, 96, 'grommet', 'pair', 'Elm', 54, 0, 5, 112, 1, 15.625],
];
const HEAD: Line = KEYS.map((key) => WORDS[key][0]);

/** Every window's values, in whole nanometres, whichever rows they stand in. */
function valuesIn(rows: readonly Line[]): unknown {
  const read = readTable({ rows }, { unit: INCHES });
  if (!('columns' in read)) return read.none;
  return read.rows.filter(({ is }) => is === 'window').map(({ values }) => values);
}
const AS_IT_STANDS = valuesIn([HEAD, ...ROWS]);
const BOUNDED = { numRuns: 60 };

const words: fc.Arbitrary<Line> = fc.tuple(...KEYS.map((key) => fc.constantFrom(...WORDS[key])));
/** So much stands before the row of that place. */
const places = fc.uniqueArray(fc.integer({ min: 0, max: ROWS.length - 1 }), { maxLength: 3 });
const before = (at: readonly number[], line: Line): Line[] =>
  ROWS.flatMap((row, place) => (at.includes(place) ? [line, row] : [row]));

describe('no figure changes', () => {
  it('the table is read at all', () => {
    expect(AS_IT_STANDS).toHaveLength(ROWS.length);
  });

  it('where headings are renamed among known words', () => {
    fc.assert(
      fc.property(words, (head) => {
        expect(valuesIn([head, ...ROWS])).toEqual(AS_IT_STANDS);
      }),
      BOUNDED,
    );
  });

  it('where sections, notes, blank rows or the headings again stand between the rows', () => {
    const between = fc.constantFrom<Line>(['SECOND FLOOR'], ['East wing'], [], HEAD);
    fc.assert(
      fc.property(places, between, (at, line) => {
        expect(valuesIn([HEAD, ...before(at, line)])).toEqual(AS_IT_STANDS);
      }),
      BOUNDED,
    );
    expect(valuesIn([HEAD, ...ROWS, [], ['* rods are to be hung before the fitting.']])).toEqual(
      AS_IT_STANDS,
    );
  });

  it('where titles stand above, and a row of units below', () => {
    const title = fc.constantFrom<Line[]>([['Harbour Hotel, third floor']], [['Job 3381'], []], []);
    const units: Line = KEYS.map((key) => (LENGTHS.has(key) ? 'in' : null));
    fc.assert(
      fc.property(words, title, fc.boolean(), (head, above, unitRow) => {
        expect(valuesIn([...above, head, ...(unitRow ? [units] : []), ...ROWS])).toEqual(AS_IT_STANDS);
      }),
      BOUNDED,
    );
  });

  it('where lengths are written in another unit, which the heading or a row of units says', () => {
    const unit = fc.constantFrom(['cm', 2.54] as const, ['mm', 25.4] as const);
    fc.assert(
      fc.property(words, unit, fc.boolean(), (head, [name, by], unitRow) => {
        const rows = ROWS.map((row) =>
          row.map((cell, at) =>
            LENGTHS.has(KEYS[at] ?? '') ? Number((Number(cell) * by).toFixed(4)) : cell,
          ),
        );
        const units: Line = KEYS.map((key) => (LENGTHS.has(key) ? name : null));
        const said = unitRow
          ? [head, units]
          : [head.map((word, at) => (LENGTHS.has(KEYS[at] ?? '') ? `${String(word)} (${name})` : word))];
        expect(valuesIn([...said, ...rows])).toEqual(AS_IT_STANDS);
      }),
      BOUNDED,
    );
  });
});
