import { describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { readFloor } from '../../../src/book/floor/floor';
import { adviceOf } from '../../../src/book/floor/advice';
import { MemoryBook } from '../../../src/book/memory';
import { survey } from '../../../src/book/survey';
import { WANTED } from '../../../src/book/wanted';
import { money } from '../../../src/core/exact/money';
import { INCHES } from '../../../src/core/exact/unit';

const HEADINGS = ['Room', 'Rod', 'Drop', 'Style', 'Fabric', 'Fabric W', 'Fullness', 'Qty'];
const ROWS = [
  [401, 77, 96, 'pinch', 'Ostrel linen', 54, 2.25, 23],
  [402, 77, 96, 'pinch', 'Ostrel linen', 54, 2.25, 23],
];

/** Whole widths in each panel, and an overlap on rings too. */
const RULES = {
  rows: [
    ['widths rounding', 'whole per panel'],
    ['overlap on rings', 3],
  ],
};

async function floorOf(rows: readonly (readonly (string | number)[])[]) {
  const book = new MemoryBook({ Floor: { rows: [HEADINGS, ...rows] } });
  const { read } = await survey(book, WANTED, INCHES, areaAt('Floor', 0, 0));
  return readFloor(read, RULES);
}

describe('advice over a floor', () => {
  it('says how much narrower the rods must be, what that saves at all windows, and what it is worth', async () => {
    const floor = await floorOf(ROWS);
    const [advice] = adviceOf(
      floor,
      new Map([['Ostrel linen', { breaks: [{ from: 0, price: money(38) }] }]]),
    );
    // A panel of 77 ÷ 2 + 3 1/2 + 3 = 45 in is 101 1/4 in flat, which hems and seams take past 2 widths of 54.
    // Each window saves 2 widths of 112 in, 6 2/9 yd; 23 of them 143 1/9, in eighths as ordered 143 1/8.
    expect(advice?.sentence).toBe(
      'Ostrel linen: 1/4 in less extension on the rods of 77 in, or a fullness of 2.24, saves 92 widths at 46 windows: 286 1/4 yd, 10877.50.',
    );
    // The same windows asked anew: a quarter less needs the fewer widths, an eighth less does not.
    const widthsAt = async (rod: number) =>
      (await floorOf([[401, rod, 96, 'pinch', 'Ostrel linen', 54, 2.25, 1]])).windows[0]!.work.widths();
    expect(await Promise.all([77, 76.875, 76.75].map(widthsAt))).toEqual([6, 6, 4]);
  });

  it('names a fullness a little less where the rod would have to be far narrower', async () => {
    // A panel of 180 ÷ 2 + 6 1/2 = 96 1/2 in × 2.5 = 241 1/4, which hems and seams take past 4 1/2 widths of 54: 5.
    // 4 give 54 × 4 − 3 − 6 = 207: 2.14 only. At 2.2, 212.3 + 6 is past 4 by 5 in, a rod 4.8 narrower; 2.14 is 0.06 less.
    const rows = [[401, 180, 96, 'pinch', 'Ostrel linen', 54, 2.2, 1]];
    const [advice] = adviceOf(await floorOf(rows), new Map());
    expect(advice?.sentence).toMatch(
      /^Ostrel linen: a fullness of 2\.14 on the rods of 180 in saves 2 widths at 1 window: 6 [\d/]+ yd\.$/,
    );
    const less = (await floorOf([[401, 180, 96, 'pinch', 'Ostrel linen', 54, 2.14, 1]])).windows[0]!.work;
    expect([less.widths(), (await floorOf(rows)).windows[0]!.work.widths()]).toEqual([8, 10]);
    // A tenth and more would be seen.
    expect(
      adviceOf(await floorOf([[401, 180, 96, 'pinch', 'Ostrel linen', 54, 2.5, 1]]), new Map())
        .map(({ sentence }) => sentence)
        .join(),
    ).not.toContain('a fullness of');
  });

  it('has nothing to say of rods far from a step, and says what turning the cloth saves', async () => {
    expect(adviceOf(await floorOf([[401, 60, 96, 'pinch', 'Ostrel linen', 54, 2, 1]]), new Map())).toEqual(
      [],
    );
    const turned = adviceOf(await floorOf([[401, 120, 96, 'pinch', 'Tide sheer', 118, 2, 4]]), new Map());
    expect(turned.map(({ sentence }) => sentence).join(' ')).toMatch(
      /Tide sheer railroaded saves .+ yd, if its pattern and pile allow it to be turned\./,
    );
  });

  it('says what a little less cut saves, and what it is worth', async () => {
    const headings = [...HEADINGS, 'Repeat'];
    const book = new MemoryBook({
      Floor: { rows: [headings, [401, 152, 94, 'pinch', 'Ostrel linen', 54, 2.5, 1, 27]] },
    });
    const { read } = await survey(book, WANTED, INCHES, areaAt('Floor', 0, 0));
    const prices = new Map([['Ostrel linen', { breaks: [{ from: 0, price: money(42) }] }]]);
    // 8 cuts, each a repeat of 27 in shorter: 6 yd at 42.00.
    expect(adviceOf(readFloor(read, undefined), prices).map(({ sentence }) => sentence)).toContain(
      'Ostrel linen: 94 + 16 = 110 goes up to 135; 2 in less gives 108 and saves 6 yd, 252.00.',
    );
  });

  it('says last what a bolt a little wider would save', async () => {
    const sentences = adviceOf(
      await floorOf([[401, 105, 96, 'pinch', 'Ostrel linen', 54, 2.5, 2]]),
      new Map(),
    );
    // 105 ÷ 2 + 6½ = 59 a panel, × 2.5 = 147½ + 6: 3 of 54 each; so 3 of 60.
    expect(sentences.map(({ sentence }) => sentence).join(' ')).not.toContain('of a bolt');
    const wide = adviceOf(await floorOf([[401, 77, 96, 'pinch', 'Ostrel linen', 54, 2.25, 2]]), new Map());
    // 45 × 2.25 = 101¼ + 6: 3 of 54, 2 of 60; 12 × 112 in are 37⅓ yd, up to 37⅜; 8 × 112 are 24 8/9, up to 25.
    expect(wide.at(-1)?.sentence).toBe(
      'Ostrel linen: of a bolt 60 in wide it takes 4 widths and 12 3/8 yd less, at that bolt’s own price.',
    );
  });

  it('is worth the price that the whole floor reaches', async () => {
    const breaks = [
      { from: 0, price: money(50) },
      { from: 100, price: money(38) },
      { from: 5000, price: money(20) },
    ];
    const [advice] = adviceOf(await floorOf(ROWS), new Map([['Ostrel linen', { breaks }]]));
    expect(advice?.worth.toFixed(2)).toBe('10877.50');
  });

  it('reads headings in centimetres as centimetres', async () => {
    const book = new MemoryBook({
      Floor: {
        rows: [
          HEADINGS.map((one) => (one === 'Rod' ? 'Rod (cm)' : one)),
          [401, 195.58, ...ROWS[0]!.slice(2)],
        ],
      },
    });
    const { read } = await survey(book, WANTED, INCHES, areaAt('Floor', 0, 0));
    expect(readFloor(read, RULES).windows[0]!.work.rod).toBe(77 * 25_400_000);
  });
});
