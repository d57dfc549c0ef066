/** npm run hem -- read: how a table of windows or past orders is read, for people and for scripts. */
import { letters } from '../core/cell/letters';
import { readingAsData } from '../core/window/reader/data';
import { headingOf, nameOf } from '../core/window/reader/meanings';
import { readTable, type NoTable, type ReadOptions, type TableRead } from '../core/window/reader/read';
import type { ColumnRead } from '../core/window/reader/understand';
import { readWords, type Command, type Io } from './command';
import { readCorrections } from './corrections';
import { readWordsBook, wordsAmong } from './house-words';
import { FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { readPeriods } from './rules-file';
import type { NamedSheet } from './sheets';
import { openSheets } from './table';

const HELP = `npm run hem -- read FILE [options]

Shows how a table of windows or past orders is read: where its headings stand, what every column
means and how sure that is, what every row is, and what is assumed or asked.

  --sheet NAME        this sheet of a workbook; else the first that holds a table of windows
  --rules BOOK        the house rules, for the unit of the house
  --columns WORDS     your word for columns: "K=vertical repeat; M=" (M is none of ours)
  --words BOOK        the words of your house: a sheet “Words of this house” with two columns,
                      heading and means; else that sheet of FILE itself
  --header ROWS       the row or rows of the headings, like 4 or 4-5
  --json              everything as one JSON object
  --help              this

Exit code: 0 read · 1 no table of windows · 2 not used so · 3 a file problem`;

const OPTIONS = {
  sheet: { type: 'string' },
  rules: { type: 'string', multiple: true },
  columns: { type: 'string' },
  words: { type: 'string' },
  header: { type: 'string' },
  json: { type: 'boolean' },
} as const;

interface Read {
  readonly sheet: NamedSheet;
  readonly read: TableRead | NoTable;
}

/** The first sheet with windows; else the first in which a table was found; else the first. */
function readFirst(sheets: readonly NamedSheet[], options: ReadOptions): Read | undefined {
  let best: Read | undefined;
  for (const sheet of sheets) {
    const read = readTable(sheet, options);
    if (!('columns' in read)) best ??= { sheet, read };
    else if (read.none === undefined) return { sheet, read };
    else if (best === undefined || !('columns' in best.read)) best = { sheet, read };
  }
  return best;
}

const meaningWords = ({ means, unit, per, sure, couldBe }: ColumnRead): string => {
  if (means.length === 0)
    return sure === 'asked' && couldBe.length > 0
      ? `asked: ${couldBe.map(nameOf).join(' or ')}?`
      : 'not read';
  const words = means.map(headingOf).join(' and ');
  const forOne = per === undefined ? '' : `, for one ${per}`;
  return `${words}${unit === undefined ? '' : `, ${unit}`}${forOne} (${sure})`;
};

function tell({ sheet, read }: Read, io: Io): void {
  if (!('columns' in read)) {
    io.out(read.none);
    return;
  }
  if (read.none !== undefined) io.out(read.none);
  const rows = read.header.map((row) => row + 1);
  io.out(`Sheet “${sheet.name}”, headings in row${rows.length === 1 ? '' : 's'} ${rows.join(' and ')}`);
  for (const column of read.columns)
    io.out(`  ${letters(column.at).padEnd(3)} ${column.heading.padEnd(28)} ${meaningWords(column)}`);
  const kinds = new Map<string, number>();
  for (const { is } of read.rows) kinds.set(is, (kinds.get(is) ?? 0) + 1);
  io.out(`Rows below: ${[...kinds].map(([kind, count]) => `${kind} ${count}`).join(', ')}`);
  if (read.assumed.length > 0) io.out(`Assumed: ${read.assumed.map(headingOf).join(', ')}`);
  for (const { weight, sentence } of read.findings) io.out(`${weight} ${sentence}`);
}

function headerRows(text: string | undefined): readonly number[] | undefined {
  if (text === undefined) return undefined;
  const [, first, last = first] = /^\s*(\d+)(?:\s*-\s*(\d+))?\s*$/.exec(text) ?? [];
  if (
    first === undefined ||
    Number(first) < 1 ||
    Number(last) < Number(first) ||
    Number(last) - Number(first) > 4
  )
    throw new Problem(
      `--header reads “${text}”. Write the row of the headings like 4, or 4-5 where they are two.`,
      USAGE,
    );
  return Array.from({ length: Number(last) - Number(first) + 1 }, (_, at) => Number(first) - 1 + at);
}

export const command: Command = {
  help: HELP,
  async run(words, io) {
    const { values, positionals } = readWords(words, OPTIONS, 'read');
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0)
      throw new Problem('read takes one file. See npm run hem -- read --help.', USAGE);
    const [said, header] = [readCorrections(values.columns), headerRows(values.header)];
    const { periods } = await readPeriods(values.rules ?? []);
    const unit = (periods[0] as (typeof periods)[0]).house.unit;
    const sheets = await openSheets(path, values.sheet);
    const house = (await readWordsBook(values.words)) ?? wordsAmong(await openSheets(path, undefined), path);
    const found = readFirst(sheets, {
      unit,
      ...(said !== undefined && { said }),
      ...(house !== undefined && { words: house }),
      ...(header !== undefined && { header }),
    });
    if (found === undefined) throw new Problem(`“${path}” holds no sheet.`);
    if (values.json === true) io.out(JSON.stringify(readingAsData(found.read, found.sheet.name, unit)));
    else tell(found, io);
    return found.read.none === undefined ? FINE : NOT_COMPUTED;
  },
};
