import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions';
import { Engine } from '../../src/engine/engine';
import { nodeLibrary } from '../../src/engine/node';
import { functionTable, withTable } from '../../src/make/readme';
import { HOSTS } from '../book/engine-book';

describe("README's table", () => {
  it('has a line for every function, with its parameters', () => {
    const table = functionTable(CATALOGUE);
    for (const { name } of CATALOGUE) expect(table).toContain(`| \`HEM.${name}(`);
    expect(table).toContain('`HEM.RODWIDTH(opening_width, [left_extension], [right_extension], [rules])`');
  });

  it('stands between its markers and leaves the rest as it is', () => {
    const before =
      'words\n<!-- the table of functions is written by npm run make -->\nold\n<!-- end of the table of functions -->\nmore\n';
    const after = withTable(before, CATALOGUE);
    expect(after).toMatch(/^words\n/);
    expect(after).toMatch(/\nmore\n$/);
    expect(after).not.toContain('old');
    expect(withTable(after, CATALOGUE)).toBe(after);
  });

  it('is refused a place where the markers are lost', () => {
    expect(() => withTable('no markers', CATALOGUE)).toThrow('README.md has lost its markers');
  });
});

describe('the formulas README prints', () => {
  const HEADINGS =
    'room,qty,inside width,left ext,right ext,measured left,measured centre,measured right,heading,draw,fabric width,return,rod width,finished drop'.split(
      ',',
    );
  const [blank, PINCH] = [null, 'pinch'];
  /** A bar and a snug of our own invention; what is not known is empty. */
  const ROWS = [
    ['Bar', blank, 72, blank, blank, 98.25, 98, blank, PINCH, blank, 54, blank, 94, 96],
    ['Snug', 2, 60, 0, 0, 98, blank, blank, PINCH, blank, 54, 0, 60, 96],
  ];
  const RULES = [
    ['rule', 'value'],
    ['side hem', 2],
    ['return', blank],
  ];
  const cellsAt = (rows: readonly (readonly (string | number | null)[])[], from: number, right: number) =>
    rows.flatMap((row, at) =>
      row.map((value, column) => ({ row: from + at, column: right + column, value })),
    );

  it.each(HOSTS)('give the same where an empty cell is handed over as %s', async (_host, empties) => {
    const readme = await readFile('README.md', 'utf8');
    const printed = [...readme.matchAll(/^(=HEM\..*?)(?: {2,}|$)/gm)].map(([, formula = '']) => formula);
    expect(printed).toHaveLength(5);
    const engine = new Engine(
      nodeLibrary(),
      {
        sheets: [
          {
            name: 'Floor',
            cells: [...cellsAt([HEADINGS, ...ROWS], 5, 0), ...cellsAt(RULES, 0, 20)],
          },
        ],
        names: [{ name: 'Rules', refersTo: 'Floor!$U$1:$V$3' }],
      },
      empties,
    );
    const given = [];
    for (const formula of printed) given.push(await engine.ask(formula));
    engine.dispose();
    const [rod, drop, widths, schedule, working] = given;
    // 72 + 11 + 11; the shortest reading is 98, less 2; both as the functions' own examples have it.
    expect([rod?.value, drop?.value]).toEqual([94, 96]);
    // Each panel 47 + 3.5 finished, × 2.5 is 126.25, with 2 in hems 130.25: 2½ widths of 54 with their seams are 133.
    expect(widths?.value).toBe(5);
    // 5 cuts of 112 in are 15 5⁄9 yd, up to 15 5⁄8. Two rods of 60 without returns: 30 × 2.5 is 75, with hems
    // 81, a seam more than a width and a half: 2 widths a panel, 8 cuts of 112 in are 24 8⁄9 yd, up to 25.
    expect(schedule?.spill).toEqual([
      [5, 15.625],
      [4, 25],
    ]);
    expect(working?.spill?.flat().join(' ')).toMatch(/yardage.* = 15 5\/8 yd/);
  });
});
