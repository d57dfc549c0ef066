import { expect, it } from 'vitest';
import { hardwarePapers } from '../../../src/core/papers/hardware';
import { entryText } from '../../../src/core/papers/paper';
import { inches, jobWith, READING_ROOM, windowAs } from './invented';

const rowsOf = (windows: Parameters<typeof jobWith>[0]): string[] =>
  (hardwarePapers(jobWith(windows))[0]?.blocks ?? []).flatMap((block) =>
    block.is === 'table'
      ? block.rows.map(({ cells }) =>
          cells.map((one) => (one === undefined ? '' : entryText(one))).join(' | '),
        )
      : [],
  );

it('counts rods of one length together, the longest first, and what hangs on them', () => {
  const rows = rowsOf([
    windowAs({ ...READING_ROOM, quantity: 2 }),
    windowAs({ ...READING_ROOM, room: 'Landing', openingWidth: inches(40) }, 2),
    windowAs({ ...READING_ROOM, room: 'Study' }, 3),
  ]);
  expect(rows[0]).toMatch(/^3 \| rod 104 in \| .+ \| Reading room; Study$/);
  expect(rows[1]).toMatch(/^1 \| rod 60 in \|/);
  // Two finials a rod: four rods.
  expect(rows).toContain('8 | finials | ');
});

it('is not written where no hardware is ordered', () => {
  expect(hardwarePapers(jobWith([windowAs({ ...READING_ROOM, hangOn: 'none' })]))).toEqual([]);
});
