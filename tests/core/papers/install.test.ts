import { describe, expect, it } from 'vitest';
import { installPaper } from '../../../src/core/papers/install';
import { labelsPaper } from '../../../src/core/papers/labels';
import { entryText, words, type Block } from '../../../src/core/papers/paper';
import { workPaper } from '../../../src/core/papers/work';
import { inches, jobWith, READING_ROOM, windowAs } from './invented';

const textIn = (blocks: readonly Block[]): string => JSON.stringify(blocks);
const pairs = (blocks: readonly Block[]): Readonly<Record<string, string>> =>
  Object.fromEntries(
    blocks.flatMap((block) =>
      block.is === 'pairs'
        ? block.pairs.map(({ label, entry }) => [label, entry === undefined ? '' : entryText(entry)])
        : [],
    ),
  );
const sheetOf = (window = READING_ROOM, more = {}, job = {}) =>
  installPaper(jobWith([windowAs(window, 1, more)], job)).blocks;

describe('the install sheet', () => {
  it('says rod, brackets, heights and stack as they were worked out', () => {
    const { work } = windowAs(READING_ROOM);
    const said = pairs(sheetOf());
    // By hand: rod 104 in spans of 48 at most takes three spans, so four brackets 34 2/3 apart.
    expect(said['Rod']).toBe('104 in of 1 × 120 in');
    expect(said['Brackets']).toBe('4: left end · ≈ 34 11/16 in · ≈ 69 5/16 in · right end');
    expect(said['Above the floor']).toBe('middle of the rod 98 in; means of access chosen on site');
    expect(said['Drop']).toBe('96 in');
    expect(said['Clear of the floor']).toBe('1/2 in');
    expect(said['With']).toBe(`${work.rings().value} rings, 2 finials, side walls left ____, right ____ off`);
    expect(said['Substrate']).toBe('');
    expect(said['Anchor']).toBe('');
  });

  it('puts a bracket at each bend of a bay, and draws its plan with angles to be measured', () => {
    const bay = {
      ...READING_ROOM,
      openingWidth: inches(120),
      openingParts: [30, 60, 30].map(inches),
    };
    const { work } = windowAs(bay);
    const blocks = sheetOf(bay);
    // By hand: 10 in of extension at each end, so parts of 40, 60 and 40; spans of 48 at most: 1 + 2 + 1.
    expect(pairs(blocks)['Bends']).toBe('2, 40 in, 100 in from the left end');
    expect(pairs(blocks)['Brackets']).toBe('5: left end · 40 in · 70 in · 100 in · right end');
    expect(work.brackets().value).toBe(5);
    const drawn = blocks.flatMap((block) => (block.is === 'drawing' ? [block.drawing.title] : []));
    expect(drawn.at(-1)).toBe(
      'Plan to scale, from above, the room below: 40 in, 60 in, 40 in; bends to be measured, to be measured',
    );
  });

  it('weighs all layers as cut, says which it knows nothing of, and never divides by the brackets', () => {
    const heavy = { ...READING_ROOM, arealWeight: 10, lining: 'unlined' as const };
    const { work } = windowAs(heavy);
    // By hand: six widths of 54 in, cut 112 in: 6 × 1.5 × 3 1/9 yd² at 10 oz.
    const pounds = (6 * 1.5 * (112 / 36) * 10) / 16;
    expect(work.widths()).toBe(6);
    expect(pairs(sheetOf(heavy))['Total weight']).toBe(
      `cloth as cut ${(Math.ceil(pounds * 10) / 10).toFixed(1)} lb, rod and trim ______, in all ______`,
    );
    expect(pairs(sheetOf({ ...heavy, lining: 'lined' }))['Total weight']).toContain('without lining');
    expect(pairs(sheetOf())['Total weight']).toContain('cloth as cut ______');
    expect(textIn(sheetOf(heavy))).not.toMatch(/per bracket|each bracket/i);
  });

  it('asks about cords wherever nothing says that there are none', () => {
    expect(textIn(sheetOf())).toContain('tension device fixed');
    expect(textIn(sheetOf(READING_ROOM, { facts: { drawnBy: 'cord' } }))).toContain('warning tag left on');
    for (const drawnBy of ['wand', 'hand', 'motor'] as const)
      expect(textIn(sheetOf(READING_ROOM, { facts: { drawnBy } }))).not.toContain('tension device');
    expect(textIn(sheetOf({ ...READING_ROOM, draw: 'stationary' }))).not.toContain('tension device');
    expect(textIn(sheetOf(READING_ROOM, { facts: { drawnBy: 'motor' } }))).toContain('licensed electrician');
  });

  it('leaves clearance, exits and certificate to whoever looks on site', () => {
    const text = textIn(sheetOf(READING_ROOM, { facts: { certificate: 'K-204' } }));
    expect(text).toContain('maker’s clearance ____');
    expect(text).toContain('No exit door or way out is covered or hidden');
    expect(text).toContain('Flame certificate no. K-204 seen by ____');
    expect(textIn(sheetOf())).not.toContain('Flame certificate');
    expect(textIn(sheetOf(READING_ROOM, {}, { publicBuilding: true }))).toContain(
      'Flame certificate no. ____',
    );
  });

  it('keeps the layers of a room on one sheet', () => {
    const job = jobWith([
      windowAs(READING_ROOM, 1),
      windowAs({ ...READING_ROOM, room: 'Landing' }, 2),
      windowAs({ ...READING_ROOM, heading: 'wave', measuredTo: 'track' }, 3),
    ]);
    const { blocks } = installPaper(job);
    expect(blocks.filter(({ is }) => is === 'page')).toHaveLength(2);
  });

  it('never says that a thing is certified, safe or enough, and names no ladder', () => {
    const job = jobWith(
      [
        windowAs({ ...READING_ROOM, quantity: 2, verticalRepeat: inches(20) }, 1, {
          facts: { certificate: 'K-204', drawnBy: 'cord' },
          remarks: words('Centre the motif'),
        }),
        windowAs({ ...READING_ROOM, heading: 'grommet' }, 2, { facts: { drawnBy: 'motor' } }),
      ],
      { publicBuilding: true },
    );
    for (const paper of [workPaper(job), labelsPaper(job), installPaper(job)])
      expect(textIn(paper.blocks)).not.toMatch(
        /\b(?:certified|safe|safely|sufficient|adequate|ladder|compliant|complies)\b/i,
      );
  });
});
