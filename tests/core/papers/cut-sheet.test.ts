import { expect, it } from 'vitest';
import { cutSheet } from '../../../src/core/papers/cut-sheet';
import type { JobCloth } from '../../../src/core/papers/job';
import { count, entryText, words } from '../../../src/core/papers/paper';
import { jobWith, READING_ROOM, windowAs } from './invented';

const windows = [windowAs({ ...READING_ROOM, quantity: 6 })];
const sheetFor = (cloth: Partial<JobCloth>) =>
  cutSheet(jobWith(windows, { cloths: [{ name: 'Garden print', ...cloth }] }));

// By hand: a cut of 96 + 8 + 8 = 112 in; 60 yd ÷ 112 in = 19 cuts. Six windows of 6 widths are 36 cuts: 19 and
// 17; 60 yd − 19 × 112 in = 32 in, 60 yd − 17 × 112 in = 256 in = 7 yd 4 in are left.
it('draws every roll to scale and says its cuts in words', () => {
  const blocks = sheetFor({ wholeRoll: count(60) });
  expect(blocks[0]).toEqual({ is: 'page' });
  const rows = blocks.flatMap((block) =>
    block.is === 'table' ? block.rows.map(({ cells }) => cells.map((one) => one && entryText(one))) : [],
  );
  expect(rows).toEqual([
    ['Roll 1: 60 yd, 32 in left', '19 × 112 in Reading room', undefined],
    ['Roll 2: 60 yd, 7 yd 4 in left', '17 × 112 in Reading room', undefined],
  ]);
  const drawings = blocks.flatMap((block) => (block.is === 'drawing' ? [block.drawing] : []));
  expect(drawings.map(({ title }) => title)).toEqual([
    'Roll 1: 60 yd, 32 in left. 19 cuts',
    'Roll 2: 60 yd, 7 yd 4 in left. 17 cuts',
  ]);
  expect(drawings[0]?.boxes.filter(({ part }) => part === 'cut')).toHaveLength(19);
});

it('names the rows of a table that has no rooms', () => {
  const { room: _none, ...roomless } = READING_ROOM;
  const named = windowAs({ ...roomless, quantity: 2 }, 1, { room: words('King, east') });
  const job = jobWith([named], { cloths: [{ name: 'Garden print', wholeRoll: count(60) }] });
  expect(JSON.stringify(cutSheet(job))).toContain('12 × 112 in King, east');
});

it('is no page where no put-up is known', () => {
  expect(sheetFor({})).toEqual([]);
});
