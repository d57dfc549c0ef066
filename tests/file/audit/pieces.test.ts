import fc from 'fast-check';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Auditor } from '../../../src/core/audit/audit';
import type { OrderFinding } from '../../../src/core/audit/finding';
import { OneByOne } from '../../../src/core/audit/one-by-one';
import { INCHES } from '../../../src/core/exact/unit';
import { DEFAULT_HOUSE } from '../../../src/core/house/house';
import { csvBlocks, openCsv, type Csv } from '../../../src/file/csv/csv';
import { auditPiece, Standing, type Piece, type PieceWork } from '../../../src/file/audit/pieces';
import { tableUnder } from '../../core/window/ordered';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pieces-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const HEADINGS = ['job', 'room', 'rod width', 'drop', 'heading', 'fabric width', 'yardage', 'unit price'];
const LINES = [
  'Weir House,Hall,94,96,pinch,54,15.625,$20',
  ',,94,96,pinch,54,18.625,20',
  '",",Den,94,97,pinch,54,15.625,20',
  'ditto,",",94,96,pinch,54,15.625,20',
  '"Mill\nHouse",Study,94,96,pinch,54,15.625,£20',
  ',"do.",94,96,pinch,54,15.625,20',
  'Total,,,,,,50,',
  'First floor,,,,,,,',
  'The client will call,,,,,,,',
  ',,,,,,,',
  '',
];
const by = { periods: [{ from: undefined, house: DEFAULT_HOUSE }] };
const table = tableUnder(
  HEADINGS,
  LINES.slice(0, 3).map((line) => line.split(',')),
  INCHES,
);

/** A piece begins at each of these rows; `early`: how many are begun before the first is done. */
async function inPieces(csv: Csv, starts: readonly number[], early: number): Promise<OrderFinding[]> {
  const places: { byte: number; row: number }[] = [];
  for await (const block of csvBlocks(csv))
    for (let at = 0; at < block.count; at++) places.push({ byte: block.byteOf(at), row: places.length + 1 });
  const pieces = starts.flatMap((start, at): Piece[] => {
    const from = places[start];
    if (from === undefined) return [];
    const last = Math.min(starts[at + 1] ?? places.length, places.length);
    return [{ from, last, before: places[Math.max(start - 2, starts[at - 1] ?? 0)] ?? from }];
  });
  const work: PieceWork = { csv, table, alone: new OneByOne(table, by), below: 1 };
  const turn = new Auditor(table, by);
  const standing = new Standing();
  const begun = pieces.slice(0, early).map((piece, at) => auditPiece(work, piece, standing.guess(at), false));
  const found: OrderFinding[] = [];
  for (const [at, piece] of pieces.entries()) {
    let done = await (begun[at] ?? auditPiece(work, piece, standing.guess(at), false));
    if (!standing.takes(at, done, false)) {
      done = await auditPiece(work, piece, standing.start, true);
      expect(standing.takes(at, done, true)).toBe(true);
    }
    found.push(...done.audited.flatMap((one) => turn.take(one)));
    turn.takeMarks(done.marks);
  }
  return [...found, ...turn.end()];
}

it('a file audited in pieces, cut anywhere, gives what it gives as a whole', async () => {
  let number = 0;
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.oneof(fc.constantFrom(...LINES.slice(0, 3)), fc.constantFrom(...LINES)), {
        minLength: 8,
        maxLength: 24,
      }),
      fc.uniqueArray(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 5 }),
      fc.integer({ min: 0, max: 5 }),
      async (lines, cuts, early) => {
        const path = join(folder, `${number++}.csv`);
        await writeFile(path, [HEADINGS.join(','), ...lines].join('\n'));
        const csv = await openCsv(path, { name: 'utf-8', says: undefined });
        const whole = await inPieces(csv, [0], 0);
        const starts = [0, ...cuts.sort((one, other) => one - other)];
        expect(await inPieces(csv, starts, early)).toEqual(whole);
      },
    ),
    { numRuns: 150 },
  );
});

it('a section whose line waits above a blank row is known where a piece begins behind it', async () => {
  const path = join(folder, 'waits.csv');
  const lines = [LINES[0], 'First floor,,,,,,,', ',,,,,,,', LINES[1], LINES[0]];
  await writeFile(path, [HEADINGS.join(','), ...lines].join('\n'));
  const csv = await openCsv(path, { name: 'utf-8', says: undefined });
  const whole = await inPieces(csv, [0], 0);
  for (const starts of [
    [0, 3, 4],
    [0, 2, 3, 4],
    [0, 4],
  ])
    // prettier-ignore
    expect(await inPieces(csv, starts, 0)).toEqual(whole);
});

it('one audit row by row gives the same as one piece', async () => {
  const path = join(folder, 'one.csv');
  const rows = [...LINES, ...LINES].filter((line) => !line.includes('\n'));
  await writeFile(path, [HEADINGS.join(','), ...rows].join('\r\n'));
  const csv = await openCsv(path, { name: 'utf-8', says: undefined });
  const auditor = new Auditor(table, by);
  const found: OrderFinding[] = [];
  let at = 1;
  for await (const block of csvBlocks(csv))
    for (const row of block.rows()) if (at++ > 1) found.push(...auditor.row(at - 1, row));
  expect(await inPieces(csv, [0], 0)).toEqual([...found, ...auditor.end()]);
});

it('a file that grew shorter meanwhile is said', async () => {
  const path = join(folder, 'shorter.csv');
  await writeFile(path, `${HEADINGS.join(',')}\n${LINES[0] ?? ''}\n`);
  const csv = await openCsv(path, { name: 'utf-8', says: undefined });
  const work: PieceWork = { csv, table, alone: new OneByOne(table, by), below: 1 };
  const from = { byte: 0, row: 1 };
  const piece = { from, last: 5, before: from };
  await expect(auditPiece(work, piece, new Standing().start, true)).rejects.toThrow(
    'was changed while it was read',
  );
});
