/** Labels on paper, measured in the PDF: each in its place of the sheet to a millimetre. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { papersDraft } from '../../../src/book/papers/write';
import { papersOf } from '../../../src/core/papers/papers';
import { jobIn } from '../../../src/file/papers';
import { writePdfs } from '../../../src/file/papers/pdf';
import { workbookOf } from '../../../src/file/papers/values-only';
import { refill } from '../../../src/file/recalculate/refill';
import { openArchive, zipped } from '../../../src/file/xlsx/archive';
import { readWorkbook } from '../../../src/file/xlsx/workbook';
import { scratch } from '../book';
import { WINDOW, writeJob } from './job-file';

const suite =
  ['/usr/bin/soffice', '/usr/local/bin/soffice'].some(existsSync) && existsSync('/usr/bin/pdftotext');
const POINTS_A_MM = 72 / 25.4;

/** Sheets as they are sold: common practice, no source. In millimetres. */
const SHEETS = {
  letter: { across: 3, down: 10, wide: 66.675, high: 25.4, left: 4.7625, top: 12.7, pitch: 69.85 },
  a4: { across: 3, down: 8, wide: 70, high: 37, left: 0, top: 0.5, pitch: 70 },
} as const;

interface Word {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The words of each page with where they stand, in millimetres. */
function wordsOf(pdf: string): readonly (readonly Word[])[] {
  const found = execFileSync('pdftotext', ['-bbox', pdf, '-'], { encoding: 'utf8' });
  return found
    .split('<page ')
    .slice(1)
    .map((page) =>
      [...page.matchAll(/xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">(.*?)</g)].map(
        ([, left, top, right, bottom, text = '']) => ({
          text,
          left: Number(left) / POINTS_A_MM,
          right: Number(right) / POINTS_A_MM,
          top: Number(top) / POINTS_A_MM,
          bottom: Number(bottom) / POINTS_A_MM,
        }),
      ),
    );
}

describe.skipIf(!suite).each(['letter', 'a4'] as const)('labels on %s', (size) => {
  it('stand in the grid of their sheet', async () => {
    const sheet = SHEETS[size];
    const each = sheet.across * sheet.down;
    const path = join(scratch(), 'job.xlsx');
    // Two panels a window: a sheet and a half of them.
    const quantity = Math.floor(each * 0.75);
    writeJob(path, { windows: [{ ...WINDOW, room: 'Landing', quantity }] });
    const file = readWorkbook(refill(readWorkbook(await openArchive(path))).parts);
    const job = await jobIn(file, path, { only: [], size, today: 46_353 });
    const { papers } = papersOf(job, ['labels']);
    const to = join(scratch(), 'labels.pdf');
    const bytes = zipped(workbookOf(papersDraft(papers, job, { sheets: [], values: true })));
    expect(await writePdfs([{ bytes, to }])).toBe(true);

    const pages = wordsOf(to);
    const rooms = pages.map((page) => page.filter(({ text }) => text === 'Landing'));
    expect(rooms.map(({ length }) => length)).toEqual([each, 2 * quantity - each]);
    for (const page of rooms) {
      const [first] = page;
      for (const [at, word] of page.entries()) {
        const [column, row] = [at % sheet.across, Math.floor(at / sheet.across)];
        const middle = sheet.left + column * sheet.pitch + sheet.wide / 2;
        const [across, down] = [
          (word.left + word.right) / 2 - middle,
          word.top - (first?.top ?? 0) - row * sheet.high,
        ];
        expect(Math.max(Math.abs(across), Math.abs(down)), `label ${at + 1}`).toBeLessThanOrEqual(1);
      }
    }
    // No word, its letters’ full height, crosses the edge between two labels.
    for (const { text, top, bottom } of pages.flat()) {
      const row = Math.floor((top - sheet.top) / sheet.high);
      expect([text, row >= 0]).toEqual([text, true]);
      expect([text, bottom <= sheet.top + (row + 1) * sheet.high]).toEqual([text, true]);
    }
  }, 120_000);
});
