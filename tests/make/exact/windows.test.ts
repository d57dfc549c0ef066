/** What the comparison tries: every heading and draw, cells as people and programs write them, rods on the brink. */
import { describe, expect, it } from 'vitest';
import { chance } from '../../../src/make/exact/chance';
import { anyHouse, STANDARD } from '../../../src/make/exact/house';
import { DRAWS, HEADINGS } from '../../../src/make/exact/words';
import { windowsOf } from '../../../src/make/exact/windows';

const seeded = chance(7);
const windows = [STANDARD, ...Array.from({ length: 5 }, (_, at) => anyHouse(at, seeded))].flatMap((house) =>
  windowsOf(house, 1, seeded),
);

describe('the windows compared', () => {
  it('are of every heading with every draw', () => {
    const met = new Set(windows.map(({ heading, draw }) => `${heading}, ${draw}`));
    expect(met.size).toBe(HEADINGS.length * DRAWS.length);
  });

  it('hold rods with a binary residue, written rods, and rods a nanometre beside each other', () => {
    const rods = windows.map(({ cells }) => cells.rod);
    expect(rods.some((rod) => typeof rod === 'string')).toBe(true);
    const residues = windows.filter(
      ({ cells, rod }) => typeof cells.rod === 'number' && (cells.rod * 25_400_000) % 1 !== 0 && rod.d === 1n,
    );
    expect(residues.length).toBeGreaterThan(10);
    const grains = new Set(windows.map(({ rod }) => rod.valueOf()));
    expect([...grains].filter((grain) => grains.has(grain + 1)).length).toBeGreaterThan(30);
  });

  it('hold empty cells in every way that programs hand them over', () => {
    const blanks = new Set(windows.map(({ cells }) => cells.horizontalRepeat));
    for (const blank of [undefined, null, '', 0]) expect(blanks).toContain(blank);
  });
});
