/** Work orders, labels and install sheets as they leave the command, and as LibreOffice prints them. */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook } from '@cj-tech-master/excelts';
import { describe, expect, it } from 'vitest';
import { command } from '../../../src/file/papers';
import { readWorkbook } from '../../../src/file/xlsx/workbook';
import { openArchive } from '../../../src/file/xlsx/archive';
import { listening, scratch, shown } from '../book';

const HEADINGS = ['room', 'inside width', 'measured height', 'heading', 'fabric', 'fabric width', 'vertical repeat', 'match', 'lining', 'draw', 'drawn by', 'projection', 'quantity', 'remarks']; // prettier-ignore
const LONG = 'The long gallery beside the upper garden stair, north window';
const ROWS: readonly (readonly (string | number | null)[])[] = [
  ['Reading room', 72, 98, 'pinch', 'Garden print', 54, 25, 'half-drop', 'lined', 'pair', 'cord', 3, 1, 'Centre the motif'],
  [LONG, 180, 110, 'goblet', 'Brindle jacquard', 54, 18, 'straight', 'interlined', 'pair', 'wand', null, 2, null],
  ['غرفة الجلوس', 60, 96, 'grommet', 'Ostrel linen', 54, null, null, 'blackout', 'one-way left', 'hand', null, 1, null],
  ['Salle à manger, côté Été', 48, 84, 'rod pocket', 'Ostrel linen', 54, null, null, 'unlined', 'stationary', null, null, 1, null],
  ['Porch', 40, 90, 'box', 'Ostrel linen', 54, null, null, 'lined', 'one-way right', 'motor', null, 1, null],
]; // prettier-ignore

/** The papers of a table of these windows, in a folder of their own. */
async function papersOf(rows: typeof ROWS, ...more: readonly string[]): Promise<string> {
  const folder = scratch();
  const job = join(folder, 'job.xlsx');
  const book = new Workbook();
  const sheet = book.addWorksheet('Windows');
  for (const row of [HEADINGS, ...rows]) sheet.addRow([...row]);
  await book.xlsx.writeFile(job);
  const papers = join(folder, 'papers.xlsx');
  const io = listening();
  await command.run(
    [job, '-o', papers, '--only', 'work,labels,install', '--date', '2026-03-09', ...more],
    io,
  );
  // A table of the user's own says nothing of the house.
  expect(io.complained).toEqual([
    'The papers bear no house name yet: type it on the sheet “House”, and make them again.',
  ]);
  return papers;
}

const hasOffice = (): boolean =>
  spawnSync('soffice', ['--version']).status === 0 && spawnSync('pdftotext', ['-v']).status === 0;

/** The pages as text, by what stands at their foot or, of labels, by having none. */
function printed(path: string): readonly string[] {
  const folder = scratch();
  const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
  execFileSync('soffice', [profile, '--headless', '--convert-to', 'pdf', '--outdir', folder, path]);
  execFileSync('pdftotext', ['-layout', join(folder, 'papers.pdf'), join(folder, 'papers.txt')]);
  return readFileSync(join(folder, 'papers.txt'), 'utf8').split('\f');
}
const withFoot = (pages: readonly string[], foot: string): readonly string[] =>
  pages.filter((page) => new RegExp(`^\\s*${foot}\\s.*page \\d+ of \\d+\\s*$`, 'm').test(page));

describe('the papers of the workroom', () => {
  it('are small, however many windows: 80 rows, 160 panels on six sheets of labels', async () => {
    const rows = Array.from({ length: 80 }, (_, at) => [`Room ${101 + at}`, ...(ROWS[0]?.slice(1) ?? [])]);
    const path = await papersOf(rows);
    expect(statSync(path).size).toBeLessThan(5_000_000);
    const file = readWorkbook(await openArchive(path));
    const cells = [...shown(file)];
    const texts = (sheet: string): readonly string[] =>
      cells.flatMap(([at, value]) =>
        at.startsWith(`${sheet}!`) && typeof value === 'string' ? [value] : [],
      );
    expect(texts('Labels').filter((text) => /^(left|right), [12] of 2$/.test(text))).toHaveLength(160);
    expect(texts('Work order').filter((text) => text === 'Work order')).toHaveLength(80);
    expect(texts('Work order').filter((text) => / of 80$/.test(text))).toHaveLength(80);
  }, 120_000);

  it.skipIf(!hasOffice()).each(['letter', 'a4'])(
    'are printed one page wide on %s, with every name and figure',
    async (size) => {
      const pages = printed(await papersOf(ROWS, '--paper', size));
      const all = pages.join('\n');
      for (const name of ['Reading room', 'غرفة الجلوس', 'Salle à manger, côté Été', 'Porch'])
        expect(all).toContain(name);
      expect(all).toContain('The long gallery');
      const work = withFoot(pages, 'Work order');
      const install = withFoot(pages, 'Install sheet');
      expect(work.length).toBeGreaterThanOrEqual(ROWS.length);
      expect(work.length).toBeLessThanOrEqual(ROWS.length + 2);
      expect(install.length).toBeGreaterThanOrEqual(ROWS.length);
      expect(install.length).toBeLessThanOrEqual(ROWS.length + 2);
      // By hand: opening 72 with 11 in at each side, 94 ÷ 2 + 3 1/2 = 50 1/2; 98 − 2 = 96, cut 112.
      const [first = ''] = work;
      expect(first).toContain('50 1/2 in wide');
      expect(first).toContain('112 1/2 in');
      expect(first).toContain('A B A B A');
      expect(first).toContain('finished width 50 1/2 in');
      expect(install[0]).toContain('rod 94 in');
      expect(install[0]).toContain('tension device fixed');
      expect(all.match(/^.*\b(?:left|right|panel), \d+ of \d+.*$/gm)?.length).toBeGreaterThan(2);
    },
    180_000,
  );

  it.skipIf(!hasOffice())(
    'are three pages for one window',
    async () => {
      const pages = printed(await papersOf(ROWS.slice(4)));
      expect(withFoot(pages, 'Work order')).toHaveLength(1);
      expect(withFoot(pages, 'Install sheet')).toHaveLength(1);
      expect(pages.filter((page) => /panel, 1 of 1/.test(page))).toHaveLength(1);
    },
    180_000,
  );
});
