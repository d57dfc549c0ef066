/** The papers of the job in the open workbook: read, looked over, and written as sheets of it. */
import type { PapersJob } from '../../core/papers/job';
import type { Paper, PaperKind, PaperSize } from '../../core/papers/paper';
import { papersOf, type PapersMade } from '../../core/papers/papers';
import { apply, type Watch } from '../apply';
import type { Block, Book, BookRead, Contents } from '../book';
import { showsDate } from '../number-format';
import { papersIn, type Standing } from './again';
import type { NamedSheet } from './cells';
import { firstUseDraft } from './first-use';
import { readPapersJob } from './read';
import { papersDraft } from './write';

export interface PapersAsked {
  readonly only: readonly PaperKind[];
  readonly size?: PaperSize | undefined;
  /** As spreadsheets count. */
  readonly today: number;
  /** The sheet of windows, where there are several. */
  readonly sheet?: string | undefined;
  /** The sheet of the same windows made otherwise, as option B of the quote. */
  readonly beside?: string | undefined;
}

export interface PapersFound {
  readonly job: PapersJob;
  readonly made: PapersMade;
  /** Papers of an earlier time that nobody changed: what is made anew may take their place. */
  readonly old: readonly Standing[];
  /** Those that somebody changed: they are kept. */
  readonly edited: readonly Standing[];
}

/** A block as the reader of tables takes a sheet: all rows from A1, a day as a day. */
function sheetOf({ area, values, formats, merged }: Block): NamedSheet {
  const before = Array<null>(area.column).fill(null);
  const rows = values.map((row, down) => [
    ...before,
    ...row.map((value, right) =>
      typeof value === 'number' && showsDate(formats[down]?.[right] ?? '') ? { day: value } : value,
    ),
  ]);
  return {
    name: area.sheet,
    rows: [...Array.from({ length: area.row }, () => []), ...rows],
    merged,
  };
}

async function sheetsIn(
  book: BookRead,
  { sheets }: Contents,
  but: readonly string[],
): Promise<readonly NamedSheet[]> {
  const used = sheets.flatMap((sheet) =>
    sheet.used === undefined || but.includes(sheet.name) ? [] : [sheet.used],
  );
  return (await book.read(used, 'whole')).map(sheetOf);
}

/** Reads the job and makes its papers as data; nothing is written. Undefined where no sheet holds windows. */
export async function lookForPapers(
  book: BookRead,
  { only, ...asked }: PapersAsked,
): Promise<PapersFound | undefined> {
  const contents = await book.contents();
  const standing = await papersIn(book, contents);
  const sheets = await sheetsIn(
    book,
    contents,
    standing.map(({ sheet }) => sheet),
  );
  const job = readPapersJob({ contents, sheets, ...asked });
  if (job === undefined) return undefined;
  const made = papersOf(job, only);
  const again = standing.filter(({ kind }) => made.papers.some((paper) => paper.kind === kind));
  return {
    job,
    made,
    old: again.filter(({ edited }) => !edited),
    edited: again.filter(({ edited }) => edited),
  };
}

export interface PapersWritten {
  /** The sheets of the new papers, in order. */
  readonly sheets: readonly string[];
  /** Sheets that joined for what the house and the job are to say. */
  readonly toFill: readonly string[];
}

/**
 * Each paper is a change of its own, so that one of many windows is not too much for a host, and what was
 * written stands where a later one is stopped. `anew` takes old ones away first.
 */
export async function writePapers(
  book: Book,
  { job, made, old }: PapersFound,
  anew: boolean,
  watch: Watch = {},
): Promise<PapersWritten> {
  // Cells are many and papers few: it is papers that are counted.
  const { progress, ...quietly } = watch;
  const gone = anew ? old.map(({ sheet }) => sheet) : [];
  if (gone.length > 0) await apply(book, 'Take the old papers away', { remove: { sheets: gone } }, quietly);
  const first = firstUseDraft(await book.contents(), job.unit, job.size);
  const toFill = (first.newSheets ?? []).map(({ name }) => name);
  if (toFill.length > 0) await apply(book, 'Add the sheets for the house and the job', first, quietly);
  const sheets: string[] = [];
  for (const [done, paper] of made.papers.entries()) {
    progress?.(done, made.papers.length);
    sheets.push(await writePaper(book, job, paper, quietly));
  }
  return { sheets, toFill };
}

async function writePaper(book: Book, job: PapersJob, paper: Paper, watch: Watch): Promise<string> {
  const { sheets } = await book.contents();
  const draft = papersDraft([paper], job, { sheets: sheets.map(({ name }) => name) });
  await apply(book, `Write ${paper.title}`, draft, watch);
  return draft.newSheets?.[0]?.name ?? paper.sheet;
}
