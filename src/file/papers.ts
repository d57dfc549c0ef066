/** npm run hem -- papers: what leaves the workroom, as sheets of the job's workbook, ready to print. */
import { extname } from 'node:path';
import { columnOf } from '../book/address';
import { noWindowsIn } from '../book/no-windows';
import { readPapersJob } from '../book/papers/read';
import { papersIn, type Standing } from '../book/papers/again';
import { firstUseDraft } from '../book/papers/first-use';
import { papersDraft } from '../book/papers/write';
import { today } from '../book/today';
import { together } from '../book/sheets/draft';
import { PAPER_KINDS, type Paper, type PaperKind, type PaperSize } from '../core/papers/paper';
import { withoutPlaces, type PapersJob } from '../core/papers/job';
import { papersOf, type PapersMade } from '../core/papers/papers';
import { DATE } from '../core/cell/day';
import { INCHES } from '../core/exact/unit';
import { readWords, type Command, type Io } from './command';
import { readCorrections } from './corrections';
import { asUsage } from './floor/options';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { progressOf } from './progress';
import { refill } from './recalculate/refill';
import { reportOf, type Report } from './recalculate/report';
import { sheetsIn } from './sheets';
import { writePdfs } from './papers/pdf';
import { workbookOf } from './papers/values-only';
import { addSheets, namesTaken } from './xlsx/add-sheets';
import { checkWritable, openArchive, replaceFile, zipped, type Parts } from './xlsx/archive';
import { readingOf } from './xlsx/book-read';
import { removeSheets } from './xlsx/remove-sheets';
import { readWorkbook, type WorkbookFile } from './xlsx/workbook';

const HELP = `npm run hem -- papers JOB.xlsx -o PAPERS.xlsx [options]

Writes the papers of a job as sheets ready to print: one page wide, the headings on every page,
page n of m at the foot. What they show points at the cells of the job, so they follow it. The job
may be one of ours or a table of your own, read as \`read\` reads it.

  npm run hem -- papers job.xlsx -o papers.xlsx
  npm run hem -- papers job.xlsx -o papers.xlsx --only quote

A quote is only written where every window has a price and the job a total; what is missing is said.
A paper that somebody changed is kept, and the new one stands beside it; one that nobody touched is
made anew in its place. The first time, a sheet for the house's own words joins the workbook: type
letterhead, terms and lead times there once.

  npm run hem -- papers job.xlsx -o to-the-client.xlsx --values --pdf

  -o, --output FILE  the file to write, with the same ending as JOB
  --only KINDS       some of the papers: ${PAPER_KINDS.join(', ')}
  --values           a workbook of papers alone, to send: values without formulas, nothing of the job
                     behind them; the quote, unless --only says others
  --pdf              each paper as PDF beside the file, by the office suite (soffice)
  --paper SIZE       letter or a4; else as the house measures: letter in inches, a4 in centimetres
  --date DAY         the day the papers bear, like 2026-03-09; else today
  --columns WORDS    your word for columns of the table: "K=vertical repeat; M="
  --beside OTHER     the same windows made of another cloth or fullness, in a second workbook or on another
                     sheet of JOB: the quote shows their prices as option B
  --price COLUMN     the column of what the client pays, like V, where it is not found
  --help             this

Exit code: 0 fine · 1 a paper could not be made · 2 not used so · 3 a file problem`;

const OPTIONS = {
  output: { type: 'string', short: 'o' },
  only: { type: 'string' },
  values: { type: 'boolean' },
  pdf: { type: 'boolean' },
  paper: { type: 'string' },
  date: { type: 'string' },
  columns: { type: 'string' },
  beside: { type: 'string' },
  price: { type: 'string' },
} as const;

function kindsAsked(text: string | undefined): readonly PaperKind[] {
  if (text === undefined) return PAPER_KINDS;
  return text
    .split(/[,; ]+/)
    .filter((one) => one !== '')
    .map((one) => {
      const kind = PAPER_KINDS.find((known) => known === one.toLowerCase());
      if (kind === undefined)
        throw new Problem(`--only reads “${one}”. Use one of: ${PAPER_KINDS.join(', ')}.`, USAGE);
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
  /** The sheet of the windows made otherwise. */
  readonly beside?: string | undefined;
}

/** The job of a computed workbook. */
export async function jobIn(
  file: WorkbookFile,
  path: string,
  wish: PapersWish,
  /** Sheets that hold papers and so are no part of the job. */
  papers: readonly string[] = [],
): Promise<PapersJob> {
  const sheets = sheetsIn(file).filter(({ name }) => !papers.includes(name));
  const contents = await readingOf(file).contents();
  const job = readPapersJob({
    contents,
    sheets,
    size: wish.size,
    today: wish.today,
    said: readCorrections(wish.columns),
    priceColumn: wish.price,
    beside: wish.beside,
  });
  if (job === undefined) throw new Problem(noWindowsIn(path));
  return job;
}

/** The other way of making the job's windows, from a workbook of its own. */
async function optionIn(path: string, wish: PapersWish, io: Io): Promise<PapersJob> {
  const { parts, done } = refill(readWorkbook(await openArchive(path)), { progress: progressOf(io) });
  tellLeft(reportOf(done), io);
  return withoutPlaces(await jobIn(readWorkbook(parts), path, wish));
}

/** Papers that nobody touched go: of the kinds asked for, they are made anew. */
async function withoutOld(file: WorkbookFile, only: readonly PaperKind[]) {
  const book = readingOf(file);
  const standing = await papersIn(book, await book.contents());
  const old = standing.filter(({ kind, edited }) => !edited && only.includes(kind));
  const left =
    old.length === 0
      ? file
      : readWorkbook(
          removeSheets(
            file,
            old.map(({ sheet }) => sheet),
          ),
        );
  const kept = standing.filter((one) => !old.includes(one));
  return { file: left, kept };
}

/** The workbook with its papers, and with a sheet for the house's words where it had none. */
export function withPapers(file: WorkbookFile, job: PapersJob, papers: readonly Paper[]): Parts {
  const first = firstUseDraft(namesTaken(file), job.unit, job.size);
  const sheets = [...file.sheets, ...(first.newSheets ?? [])].map(({ name }) => name);
  const draft = together(papersDraft(papers, job, { sheets }), first);
  return refill(readWorkbook(addSheets(file, draft))).parts;
}

const valuesAlone = (job: PapersJob, papers: readonly Paper[]): Parts =>
  workbookOf(papersDraft(papers, job, { sheets: [], values: true }));

/** out.xlsx and the sheet “Order Quill & Sedge”: out-order-quill-sedge.pdf. */
const pdfPath = (to: string, { sheet }: Paper): string => {
  const named = sheet
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return `${to.slice(0, to.length - extname(to).length)}-${named}.pdf`;
};

/** Each paper by itself, for whom it is and with pages numbered of its own. */
async function writePdf(job: PapersJob, papers: readonly Paper[], to: string, io: Io): Promise<void> {
  const taken = new Set<string>();
  const books = papers.map((paper) => {
    let path = pdfPath(to, paper);
    for (let number = 2; taken.has(path); number++)
      path = pdfPath(to, { ...paper, sheet: `${paper.sheet} ${number}` });
    taken.add(path);
    return { bytes: zipped(valuesAlone(job, [paper])), to: path };
  });
  if (await writePdfs(books)) for (const book of books) io.out(book.to);
  else
    io.err(
      'No PDF is written: no office suite is found. Install LibreOffice, whose soffice makes it, or print the sheets.',
    );
}

interface Told {
  readonly job: PapersJob;
  readonly made: PapersMade;
  readonly kept: readonly Standing[];
  readonly to: string;
}

function tell({ job, made, kept, to }: Told, io: Io): void {
  const titles = made.papers.map(({ title }) => title);
  if (titles.length > 0)
    io.out(
      `${to}: ${counted(titles.length, 'paper')} for ${counted(job.windows.length, 'row')} of windows: ${titles.join(', ')}.`,
    );
  for (const { sheet, edited } of kept)
    if (edited) io.out(`“${sheet}” was changed by hand and is kept; the new paper stands beside it.`);
  if (job.house.name === undefined && titles.length > 0)
    io.err('The papers bear no house name yet: type it on the sheet “House”, and make them again.');
  const said = new Set(made.missing.flatMap(({ sentences }) => sentences));
  for (const sentence of [...job.unread, ...(job.noWindows ?? [])])
    if (!said.has(sentence)) io.err(`Left out: ${sentence}`);
  for (const { kind, sentences } of made.missing) {
    io.err(`No ${kind} is written:`);
    for (const sentence of sentences) io.err(`  ${sentence}`);
  }
}

/** What could not be computed leaves its cells, and so the papers, without a value. */
function tellLeft({ left }: Report, io: Io): void {
  const [first] = left;
  if (first === undefined) return;
  io.err(
    `${counted(left.length, 'formula')} of the job could not be computed, so what they say is missing on the papers. The first: ${first.sentence}`,
  );
}

/** The two files asked for. */
function filesAsked(positionals: readonly string[], to: string | undefined): readonly [string, string] {
  const [from, ...others] = positionals;
  if (from === undefined || others.length > 0 || to === undefined)
    throw new Problem(
      'papers wants one workbook and where to write: papers JOB.xlsx -o PAPERS.xlsx. See npm run hem -- papers --help.',
      USAGE,
    );
  if (extname(from).toLowerCase() !== extname(to).toLowerCase())
    throw new Problem(`“${to}” must end in ${extname(from)}, as “${from}” does. Name it so after -o.`, USAGE);
  return [from, to];
}

export const command: Command = {
  help: HELP,
  async run(given, io) {
    const { values, positionals } = readWords(given, OPTIONS, 'papers');
    const [from, to] = filesAsked(positionals, values.output);
    const wish: PapersWish = {
      only: kindsAsked(values.only ?? (values.values === true ? 'quote' : undefined)),
      size: sizeAsked(values.paper),
      today: dayAsked(values.date),
      columns: values.columns,
      price: columnAsked(values.price),
    };
    const archive = await openArchive(from);
    await checkWritable(to);
    const { parts, done } = refill(readWorkbook(archive), { progress: progressOf(io) });
    tellLeft(reportOf(done), io);
    const { file, kept } = await withoutOld(readWorkbook(parts), wish.only);
    const papers = kept.map(({ sheet }) => sheet);
    const read = await jobIn(file, from, wish, papers);
    const { beside } = values;
    const sheet = read.others?.find((one) => one.toLowerCase() === beside?.toLowerCase());
    const job =
      beside === undefined
        ? read
        : sheet === undefined
          ? { ...read, beside: await optionIn(beside, wish, io) }
          : await jobIn(file, from, { ...wish, beside: sheet }, papers);
    const made = papersOf(job, wish.only);
    if (made.papers.length > 0) {
      const written =
        values.values === true ? valuesAlone(job, made.papers) : withPapers(file, job, made.papers);
      await replaceFile(to, zipped(written));
      if (values.pdf === true) await writePdf(job, made.papers, to, io);
    }
    tell({ job, made, kept: values.values === true ? [] : kept, to }, io);
    return made.missing.length > 0 ? NOT_COMPUTED : FINE;
  },
};
