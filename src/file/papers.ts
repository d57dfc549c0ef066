/** npm run hem -- papers: what leaves the workroom, as sheets of the job's workbook, ready to print. */
import { extname } from 'node:path';
import { columnOf } from '../book/address';
import { readPapersJob } from '../book/papers/read';
import { papersDraft } from '../book/papers/write';
import { PAPER_KINDS, type PaperKind, type PaperSize } from '../core/papers/paper';
import type { PapersJob } from '../core/papers/job';
import { MADE_KINDS, papersOf } from '../core/papers/papers';
import { DATE } from '../core/cell/day';
import { INCHES } from '../core/exact/unit';
import { readWords, type Command, type Io } from './command';
import { readCorrections } from './corrections';
import { asUsage } from './floor/options';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { progressOf } from './progress';
import { refill } from './recalculate/refill';
import { sheetsIn } from './sheets';
import { addSheets } from './xlsx/add-sheets';
import { checkWritable, openArchive, replaceFile, zipped } from './xlsx/archive';
import { readingOf } from './xlsx/book-read';
import { readWorkbook, type WorkbookFile } from './xlsx/workbook';

const HELP = `npm run hem -- papers JOB.xlsx -o PAPERS.xlsx [options]

Writes the papers of a job as sheets ready to print: one page wide, the headings on every page,
page n of m at the foot. What they show points at the cells of the job, so they follow it. The job
may be one of ours or a table of your own, read as \`read\` reads it.

  npm run hem -- papers job.xlsx -o papers.xlsx
  npm run hem -- papers job.xlsx -o papers.xlsx --only quote

A quote is only written where every window has a price and the job a total; what is missing is said.

  -o, --output FILE  the file to write, with the same ending as JOB
  --only KINDS       some of the papers: ${MADE_KINDS.join(', ')}
  --paper SIZE       letter or a4; else as the house measures: letter in inches, a4 in centimetres
  --date DAY         the day the papers bear, like 2026-03-09; else today
  --columns WORDS    your word for columns of the table: "K=vertical repeat; M="
  --price COLUMN     the column of what the client pays, like V, where it is not found
  --help             this

Exit code: 0 fine · 1 a paper could not be made · 2 not used so · 3 a file problem`;

const OPTIONS = {
  output: { type: 'string', short: 'o' },
  only: { type: 'string' },
  paper: { type: 'string' },
  date: { type: 'string' },
  columns: { type: 'string' },
  price: { type: 'string' },
} as const;

function kindsAsked(text: string | undefined): readonly PaperKind[] {
  if (text === undefined) return MADE_KINDS;
  return text
    .split(/[,; ]+/)
    .filter((one) => one !== '')
    .map((one) => {
      const kind = PAPER_KINDS.find((known) => known === one.toLowerCase());
      if (kind === undefined || !MADE_KINDS.includes(kind))
        throw new Problem(`--only reads “${one}”. Use one of: ${MADE_KINDS.join(', ')}.`, USAGE);
      return kind;
    });
}

function sizeAsked(text: string | undefined): PaperSize | undefined {
  if (text === undefined) return undefined;
  const size = text.toLowerCase();
  if (size === 'letter' || size === 'a4') return size;
  throw new Problem(`--paper reads “${text}”. Write letter or a4.`, USAGE);
}

function columnAsked(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  if (/^[a-z]{1,3}$/i.test(text.trim())) return columnOf(text.trim());
  throw new Problem(`--price reads “${text}”. Write the letters of a column, like V.`, USAGE);
}

const EPOCH = Date.UTC(1899, 11, 30);
/** Today as spreadsheets count days, by this machine's own calendar. */
function today(): number {
  const now = new Date();
  return Math.round((Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) - EPOCH) / 86_400_000);
}

const dayAsked = (text: string | undefined): number =>
  text === undefined
    ? today()
    : (asUsage(() => DATE.read(text, { name: '--date', unit: INCHES }))?.early ?? today());

export interface PapersWish {
  readonly only: readonly PaperKind[];
  readonly size?: PaperSize | undefined;
  readonly today: number;
  readonly columns?: string | undefined;
  readonly price?: number | undefined;
}

/** The job of a computed workbook. */
export async function jobIn(file: WorkbookFile, path: string, wish: PapersWish): Promise<PapersJob> {
  const contents = await readingOf(file).contents();
  const read = (size: PaperSize): PapersJob | undefined =>
    readPapersJob({
      contents,
      sheets: sheetsIn(file),
      size,
      today: wish.today,
      said: readCorrections(wish.columns),
      priceColumn: wish.price,
    });
  const job = read(wish.size ?? 'letter');
  if (job === undefined)
    throw new Problem(
      `“${path}” holds no table of windows. Its headings should say things like opening, measured height, heading and fabric width.`,
    );
  return wish.size === undefined && job.unit.small === 'cm' ? (read('a4') ?? job) : job;
}

function tell(job: PapersJob, made: ReturnType<typeof papersOf>, to: string, io: Io): void {
  const titles = made.papers.map(({ title }) => title);
  io.out(
    `${to}: ${counted(titles.length, 'paper')} for ${counted(job.windows.length, 'row')} of windows: ${titles.join(', ')}.`,
  );
  for (const { kind, sentences } of made.missing) {
    io.err(`No ${kind} is written:`);
    for (const sentence of sentences) io.err(`  ${sentence}`);
  }
}

export const command: Command = {
  help: HELP,
  async run(given, io) {
    const { values, positionals } = readWords(given, OPTIONS, 'papers');
    const [from, ...others] = positionals;
    const to = values.output;
    if (from === undefined || others.length > 0 || to === undefined)
      throw new Problem(
        'papers wants one workbook and where to write: papers JOB.xlsx -o PAPERS.xlsx. See npm run hem -- papers --help.',
        USAGE,
      );
    if (extname(from).toLowerCase() !== extname(to).toLowerCase())
      throw new Problem(
        `“${to}” must end in ${extname(from)}, as “${from}” does. Name it so after -o.`,
        USAGE,
      );
    const wish: PapersWish = {
      only: kindsAsked(values.only),
      size: sizeAsked(values.paper),
      today: dayAsked(values.date),
      columns: values.columns,
      price: columnAsked(values.price),
    };
    const archive = await openArchive(from);
    await checkWritable(to);
    const { parts } = refill(readWorkbook(archive), { progress: progressOf(io) });
    const file = readWorkbook(parts);
    const job = await jobIn(file, from, wish);
    const made = papersOf(job, wish.only);
    if (made.papers.length > 0) {
      const draft = papersDraft(
        made.papers,
        job,
        file.sheets.map(({ name }) => name),
      );
      await replaceFile(to, zipped(refill(readWorkbook(addSheets(file, draft))).parts));
    }
    tell(job, made, to, io);
    return made.missing.length > 0 ? NOT_COMPUTED : FINE;
  },
};
