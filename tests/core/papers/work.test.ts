import { describe, expect, it } from 'vitest';
import { toUnit } from '../../../src/core/exact/length';
import { entryText, words, type Block } from '../../../src/core/papers/paper';
import { workPaper } from '../../../src/core/papers/work';
import { readHouse } from '../../../src/core/house/house';
import { WindowWork } from '../../../src/core/window/job';
import type { Window } from '../../../src/core/window/columns';
import { inches, jobWith, READING_ROOM, windowAs } from './invented';

/** Drop 97 1/2 − … as measured; the pattern meets half a repeat down. */
const PATTERNED: Window = {
  ...READING_ROOM,
  verticalRepeat: inches(25),
  match: 'half-drop',
  overlap: inches(3),
};
const blocksOf = (window: Window, more = {}): readonly Block[] =>
  workPaper(jobWith([windowAs(window, 1, more)])).blocks;
const pairsOf = (blocks: readonly Block[]): Readonly<Record<string, string>> =>
  Object.fromEntries(
    blocks.flatMap((block) =>
      block.is === 'pairs'
        ? block.pairs.map(({ label, entry }) => [label, entry === undefined ? '' : entryText(entry)])
        : [],
    ),
  );
const rowsUnder = (blocks: readonly Block[], heading: string): readonly (readonly string[])[] =>
  blocks.flatMap((block) =>
    block.is === 'table' && block.columns.some((column) => column.heading === heading)
      ? block.rows.map(({ cells }) => cells.map((cell) => (cell === undefined ? '' : entryText(cell))))
      : [],
  );
const textOf = (blocks: readonly Block[]): string => JSON.stringify(blocks);

describe('the work order', () => {
  it('says every figure as it was worked out', () => {
    const pairs = pairsOf(blocksOf(PATTERNED));
    // By hand: 104 ÷ 2 + 3 1/2 + 3 = 58 1/2; measured 98 − 2 = 96.
    expect(pairs['Finished size']).toBe('each panel 58 1/2 in wide, 96 in long, ± 1/4 in (UFGS 12 22 00)');
    expect(pairs['Return, flat']).toBe('3 1/2 in at the outer edge of each');
    expect(pairs['Overlap, flat']).toBe('3 in at each leading edge');
    expect(pairs['Cloth in hems']).toBe('top 8 in, bottom 8 in, each side 3 in');
    expect(pairs['Repeat']).toBe('25 in high, half-drop');
    expect(pairs['Motif at the top']).toContain('8 in below the cut’s top; of B half a repeat further on');
    expect(pairs['Cut by']).toBe('');
  });

  it('says where the full motif lands: by the house at the hem, and of a lower top further on in the repeat', () => {
    const { rules } = readHouse([['pattern from', 'hem']]);
    const atHem = windowAs(PATTERNED, 1, { work: new WindowWork(PATTERNED, rules) });
    expect(pairsOf(workPaper(jobWith([atHem])).blocks)['Motif at the hem']).toBe(
      'whole at the finished bottom edge, 8 in above the end of its bare length; of B half a repeat further on',
    );
    expect(readHouse([['unit', 'centimetres']]).rules.patternFrom).toBe('hem');
    // 98 − 86 is 12 of a repeat of 25.
    const low = { ...PATTERNED, measured: inches(86) };
    expect(
      pairsOf(workPaper(jobWith([windowAs(PATTERNED, 1), windowAs(low, 2)])).blocks)['Motif at the top'],
    ).toBe(
      'whole at the finished top edge, 8 in below the cut’s top; of B half a repeat further on; here 12 in further on, to meet the windows of 96 in in this room',
    );
  });

  it('lists the cuts in the order of cutting, with their letter, and what lies behind', () => {
    const { work } = windowAs(PATTERNED);
    const rows = rowsUnder(blocksOf(PATTERNED), 'Cut length');
    const faces = rows.filter(([layer]) => layer?.startsWith('face'));
    const cuts = faces.reduce((sum, row) => sum + Number(row[3]), 0);
    expect(cuts).toBe(work.cloth().cuts);
    const inches = faces.reduce((sum, row) => sum + Number(row[3]) * tape(row[4] ?? ''), 0);
    expect(Math.ceil(inches / 4.5) * 4.5).toBe(toUnit(work.cloth().yardage, 'in'));
    expect(faces.every((row) => /number [AB] ↑/.test(row[5] ?? ''))).toBe(true);
    const lining = rows.find(([layer]) => layer?.startsWith('lining'));
    expect(Number(lining?.[3])).toBe(work.behind('lining')?.cuts);
    expect(tape(lining?.[4] ?? '')).toBe(toUnit(work.behind('lining')?.cut ?? 0, 'in'));
  });

  it('draws the heading, and says of each width what it takes up', () => {
    const blocks = blocksOf({ ...PATTERNED, fullness: 30000 as never });
    const drawn = blocks.flatMap((block) => (block.is === 'drawing' ? [block.drawing] : []));
    expect(drawn.length).toBeGreaterThan(0);
    const set = windowAs({ ...PATTERNED, fullness: 30000 as never }).work.setOut().value;
    const byWidth = pairsOf(blocks)['By width, leading edge first'] ?? '';
    expect(byWidth.split(' · ').map((one) => Number(one.split(' ')[0]))).toEqual(
      set.byWidth?.map(({ pleats }) => pleats),
    );
  });

  it('says where the halves of a split width go', () => {
    const five = { ...READING_ROOM, openingWidth: inches(72) };
    const { work } = windowAs(five);
    expect(work.widths() % 2).toBe(1);
    expect(textOf(blocksOf(five))).toContain('the left half of a split width goes to the right panel');
    expect(pairsOf(blocksOf(five))['Right panel']).toMatch(/\(left half\), flat/);
  });

  it('gives every window of a row its own cuts', () => {
    const rows = rowsUnder(blocksOf({ ...READING_ROOM, quantity: 3 }), 'Window');
    expect(rows.map(([window]) => window)).toEqual(['1 of 3', '2 of 3', '3 of 3']);
    const numbers = rows.flatMap((row) => row.slice(1, 3).join(' + ').match(/\d+/g) ?? []);
    expect(new Set(numbers).size).toBe(18);
  });

  it('gives each row a page, and takes room, windows and remarks from the job’s cells', () => {
    const job = jobWith([
      windowAs(READING_ROOM, 1, { remarks: words('Centre the motif', 'Windows!R5') }),
      windowAs({ ...READING_ROOM, heading: 'rod pocket', lining: 'unlined' }, 2),
    ]);
    const { blocks } = workPaper(job);
    expect(blocks.filter(({ is }) => is === 'page')).toHaveLength(2);
    expect(textOf(blocks)).toContain('"at":"Windows!R5"');
    expect(textOf(blocks)).toContain('"at":"Windows!A5"');
  });

  it('works every heading and draw out', () => {
    for (const heading of [
      'pinch',
      'goblet',
      'cartridge',
      'box',
      'inverted',
      'pencil',
      'rod pocket',
      'tab top',
      'grommet',
      'wave',
      'flat',
    ] as const)
      for (const draw of [
        'pair',
        'one-way left',
        'one-way right',
        'stationary',
        'stationary cover',
        'one stationary panel',
      ] as const)
        expect(
          textOf(
            blocksOf({
              ...READING_ROOM,
              heading,
              draw,
              measured: inches(98),
              ...(heading === 'wave' && { measuredTo: 'track' }),
            }),
          ),
        ).not.toMatch(/NaN|undefined|Infinity/);
  });
});

/** “112 1/2 in” as a number; what is only nearly so fails. */
function tape(text: string): number {
  const [, whole = '0', up = '0', down = '1'] = /^(\d+)(?: (\d+)\/(\d+))? in$/.exec(text) ?? [];
  return Number(whole) + Number(up) / Number(down);
}
