/** Every paper of a hard job, turned into PDF by LibreOffice once for each size of paper, and read back. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { viewOf } from '../../../src/book/papers/page-view';
import { papersDraft } from '../../../src/book/papers/write';
import { orNone } from '../../../src/core/papers/client-words';
import { dayInWords, entryText, type Block, type Entry, type Paper } from '../../../src/core/papers/paper';
import { CORDS, EXITS, FLAME, HEATERS, LOAD, MOTORS } from '../../../src/core/papers/cautions';
import { namedAs, type PapersJob } from '../../../src/core/papers/job';
import { figure as tapeOf, madeUp } from '../../../src/core/papers/made';
import { planOf } from '../../../src/core/papers/order';
import { heightsOf } from '../../../src/core/drawing/elevation';
import { tally } from '../../../src/core/floor/tally';
import { clothsOf } from '../../../src/core/floor/floor-cuts';
import { papersOf } from '../../../src/core/papers/papers';
import { FIGURES } from '../../../src/core/window/figures';
import { showLength, showRemnant, showYardage } from '../../../src/core/exact/unit';
import { exact, fromUnit } from '../../../src/core/exact/length';
import { jobIn } from '../../../src/file/papers';
import { writePdfs } from '../../../src/file/papers/pdf';
import { workbookOf } from '../../../src/file/papers/values-only';
import { refill } from '../../../src/file/recalculate/refill';
import { openArchive, zipped } from '../../../src/file/xlsx/archive';
import { readWorkbook, type WorkbookFile } from '../../../src/file/xlsx/workbook';
import { scratch, shown } from '../book';
import { FABRIC, WINDOW, writeJob } from './job-file';

const LONG = 'The long gallery over the water gate, north side, bay window';
const ROOMS = [LONG, 'Salón de té «Ærøskøbing», Łódź', 'غرفة القراءة', 'Landing'];

/** Whole numbers, decimals and fractions, each by itself: a line may break between 50 and 1/2. 105.50 is 105.5. */
const figuresIn = (text: string): Set<string> =>
  new Set(
    (text.match(/\d[\d,]*(?:\.\d+)?(?:\/\d+)?/g) ?? []).map((one) =>
      one
        .replace(/,$/, '')
        .replace(/(\.\d*?)0+$/, '$1')
        .replace(/\.$/, ''),
    ),
  );

const entriesOf = (block: Block): readonly (Entry | undefined)[] => {
  switch (block.is) {
    case 'letterhead':
      return [...block.house, ...block.facts.map(({ entry }) => entry)];
    case 'pairs':
    case 'totals':
      return block.pairs.map(({ entry }) => entry);
    case 'table':
      return block.rows.flatMap(({ cells }) => cells);
    case 'notes':
      return block.lines;
    case 'labels':
      return block.labels.flat();
    default:
      return [];
  }
};
const allEntries = (papers: readonly Paper[]): readonly Entry[] =>
  papers.flatMap(({ blocks }) => blocks.flatMap(entriesOf)).flatMap((entry) => entry ?? []);

/** All that the pages show: entries, the words of drawings, headings, the foot. */
function sayingsOf(papers: readonly Paper[]): string {
  return papers
    .map((paper) => {
      const { pages } = viewOf(paper);
      const bands = pages.flatMap((page) => page.bands);
      const cells = bands.flatMap(({ cells: list }) =>
        list.flatMap(({ entry }) => (entry === undefined ? [] : [entryText(entry)])),
      );
      const drawn = bands.flatMap(({ drawn: one }) => one?.words.map(({ words }) => words) ?? []);
      return [...cells, ...drawn, paper.foot].join('\n');
    })
    .join('\n');
}

/** Every number in an answer, however deep. */
function numbersIn(answer: unknown): readonly number[] {
  if (typeof answer === 'number') return Number.isFinite(answer) ? [answer] : [];
  if (Array.isArray(answer)) return answer.flatMap(numbersIn);
  return typeof answer === 'object' && answer !== null ? Object.values(answer).flatMap(numbersIn) : [];
}
const flatOf = (widths: readonly { readonly flat: number }[]): number =>
  widths.reduce((sum, { flat }) => sum + flat, 0);

async function jobOf(
  size: 'letter' | 'a4',
): Promise<{ file: WorkbookFile; job: PapersJob; papers: readonly Paper[] }> {
  const path = join(scratch(), 'job.xlsx');
  writeJob(path, {
    windows: ROOMS.map((room, at) => ({ ...WINDOW, room, quantity: at === 3 ? 2 : 1, 'inside width': 84 + at })),
    fabrics: [{ ...FABRIC, 'whole roll': 47 }],
    extras: [
      { 'for line': 1, what: 'band', along: 'leading edges', 'strips cut': 6, 'of cloth wide': 54, 'counted in': 'yd', supplier: 'Fen Row Mill', 'what one': 30 },
      { what: 'travel', 'your price': 0 },
      { what: 'motor', 'in the client’s words': 'motor and remote', 'your price': 1_000_000 },
    ],
    facts: { 'public building': 'yes' },
  }); // prettier-ignore
  const { parts } = refill(readWorkbook(await openArchive(path)));
  const file = readWorkbook(parts);
  const job = await jobIn(file, path, { only: [], size, today: 46_353 });
  const made = papersOf(job);
  expect(made.missing).toEqual([]);
  return { file, job, papers: made.papers };
}

describe('every figure of the papers', () => {
  let made: Awaited<ReturnType<typeof jobOf>>;
  beforeAll(async () => {
    made = await jobOf('letter');
  });

  it('that has a cell of the job is what that cell shows', () => {
    const cells = shown(made.file);
    const placed = allEntries(made.papers).filter(({ at }) => at !== undefined);
    expect(placed.length).toBeGreaterThan(60);
    for (const { at = '', value } of placed) {
      const held = cells.get(at.replace(/'/g, ''));
      expect([at, value]).toEqual([at, typeof held === 'string' ? held.trim() : held]);
    }
  });

  it('that has none stands in the job’s cells or in the working of its windows', () => {
    const { file, job, papers } = made;
    const { unit } = job;
    const sources: string[] = [];
    for (const value of shown(file).values())
      if (typeof value === 'string') sources.push(value);
      else if (typeof value === 'number')
        sources.push(
          String(value),
          entryText({ as: 'money', value }),
          ...(Math.abs(value) < 1e6
            ? [showLength(fromUnit(value, 'in'), unit), showYardage(fromUnit(value, 'yd'), unit)]
            : []),
        );
    for (const one of job.windows) {
      const { work } = one;
      const made = madeUp(one);
      const answers = [
        ...FIGURES.map((figure) => orNone(() => figure.work(work))),
        [work.setOut(), work.mounting(), work.fittings(), work.rodPieces(), work.rod, work.stack()],
        [heightsOf(work), work.cloth(), made, made.panels.map(({ widths }) => flatOf(widths))],
        work.clothsBehind.map((cloth) => work.behind(cloth)),
      ];
      for (const figure of numbersIn(answers))
        sources.push(String(figure), showLength(exact(Math.round(figure)), unit), tapeOf(figure, unit));
      sources.push(work.cloth().work.delivered.toFixed(2), JSON.stringify(work.findings()));
    }
    for (const cloth of clothsOf(job.windows.map(({ work }) => work)))
      for (const figure of numbersIn([cloth, planOf(job, cloth, namedAs(job.cloths, cloth.name))]))
        sources.push(String(figure), showRemnant(exact(Math.round(figure)), unit));
    sources.push(
      ...numbersIn(
        tally(
          job.windows.map(({ work }) => work),
          job.rules,
        ),
      ).map(String),
    );
    // What is said of every job, with its sources, and the day.
    sources.push(CORDS, FLAME, EXITS, HEATERS, LOAD, MOTORS, dayInWords(job.today));
    const known = figuresIn(sources.join('\n'));
    const left = [...figuresIn(allEntries(papers).map(entryText).join('\n'))].filter(
      (one) => !known.has(one),
    );
    expect(left).toEqual([]);
  });
});

const suite =
  ['/usr/bin/soffice', '/usr/local/bin/soffice'].some(existsSync) && existsSync('/usr/bin/pdftotext');

describe.skipIf(!suite).each([
  ['letter', '612 x 792'],
  ['a4', '595'],
] as const)('as PDF on %s', (size, points) => {
  let papers: readonly Paper[] = [];
  let pages: string[] = [];
  let info = '';
  beforeAll(async () => {
    const made = await jobOf(size);
    papers = made.papers;
    const to = join(scratch(), 'all.pdf');
    const bytes = zipped(workbookOf(papersDraft(papers, made.job, { sheets: [], values: true })));
    expect(await writePdfs([{ bytes, to }])).toBe(true);
    info = execFileSync('pdfinfo', [to], { encoding: 'utf8' });
    pages = execFileSync('pdftotext', ['-layout', to, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
  }, 120_000);

  it('every paper takes the pages it was laid out on, one page wide', () => {
    expect(info).toContain(points);
    const laid = papers.map((paper) => viewOf(paper).pages.length);
    expect(pages).toHaveLength(laid.reduce((sum, one) => sum + one, 0));
    for (const [at, { foot }] of papers.entries())
      if (foot !== '' && papers.filter((one) => one.foot === foot).length === 1)
        expect([foot, pages.filter((page) => page.includes(`${foot} `)).length]).toEqual([foot, laid[at]]);
  });

  it('every figure that is printed is one of the papers’, and every one of theirs is printed', () => {
    const numbered = pages.map((_, at) => `page ${at + 1} of ${pages.length}`).join('\n');
    const [printed, meant] = [figuresIn(pages.join('\n')), figuresIn(`${sayingsOf(papers)}\n${numbered}`)];
    expect([...printed].filter((one) => !meant.has(one))).toEqual([]);
    expect([...meant].filter((one) => !printed.has(one))).toEqual([]);
  });

  it('names of 60 letters, with accents and from right to left stand on the page', () => {
    const text = pages.join('\n').replace(/\s+/g, ' ');
    for (const words of ['The long gallery over the water gate', 'Ærøskøbing', 'Łódź', 'غرفة'])
      expect(text).toContain(words);
    expect(text).toContain('1,000,000.00');
    expect(text).toMatch(/Travel +1 +no charge/);
    expect(text).not.toMatch(/#NAME|#REF|#VALUE|###/);
  });
});
