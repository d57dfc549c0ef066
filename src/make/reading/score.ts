/**
 * How well the reader reads tables of which is known what a careful bookkeeper reads in them:
 *   npx tsx src/make/reading/score.ts FOLDER [--all]
 * Each .json file of the folder is one table, in the form that tests/core/window/tables/README.md says.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { CENTIMETRES, INCHES } from '../../core/exact/unit';
import { readingAsData } from '../../core/window/reader/data';
import { readTable, type SheetIn } from '../../core/window/reader/read';

interface KnownColumn {
  readonly means: string | readonly string[] | null;
  readonly unit?: string;
  readonly per?: string;
}

/** One sheet and what is read in it. */
export interface KnownTable {
  readonly name: string;
  readonly unit: 'in' | 'cm';
  readonly rows: readonly (readonly (string | number | boolean | null | { readonly date: string })[])[];
  readonly merged?: readonly string[];
  readonly header?: readonly number[];
  readonly columns: Readonly<Record<string, KnownColumn>>;
  readonly lines: Readonly<Record<string, string>>;
  readonly values: Readonly<Record<string, Readonly<Record<string, string | number>>>>;
  readonly assumed?: readonly string[];
  readonly ask?: readonly { readonly column?: string; readonly cell?: string }[];
  readonly 'no windows'?: boolean;
}

interface Share {
  right: number;
  all: number;
}

export interface Score {
  readonly columns: Share;
  /** Columns called sure, and how many of them are right. */
  readonly sure: Share;
  /** Columns asked that the table does not ask, of all. */
  asked: number;
  readonly rows: Share;
  readonly values: Share;
  /** Values read otherwise than a careful reader, without a finding or a question about their column. */
  silent: number;
  readonly assumed: Share;
  readonly wrong: string[];
}

export const noScore = (): Score => ({
  columns: { right: 0, all: 0 },
  sure: { right: 0, all: 0 },
  asked: 0,
  rows: { right: 0, all: 0 },
  values: { right: 0, all: 0 },
  silent: 0,
  assumed: { right: 0, all: 0 },
  wrong: [],
});

const columnAt = (name: string): number =>
  [...name].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

/** The sheet as a host would hand it over. */
export function sheetOf(table: KnownTable): SheetIn {
  return {
    rows: table.rows.map((row) =>
      row.map((cell) =>
        typeof cell === 'object' && cell !== null
          ? { day: Math.round(Date.parse(`${cell.date}T00:00:00Z`) / 86_400_000) + 25_569 }
          : cell,
      ),
    ),
    merged: (table.merged ?? []).map((area) => {
      const [, left = 'A', top = '1', right = left, bottom = top] =
        /^([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(area) ?? [];
      return {
        row: Number(top) - 1,
        column: columnAt(left),
        rows: Number(bottom) - Number(top) + 1,
        columns: columnAt(right) - columnAt(left) + 1,
      };
    }),
  };
}

interface Data {
  readonly none?: string;
  readonly header?: readonly number[];
  readonly columns?: readonly {
    column: string;
    heading: string;
    means: string | string[] | null;
    unit?: string;
    per?: string;
    sure: string;
  }[];
  readonly rows?: readonly { row: number; is: string; values?: Readonly<Record<string, string | number>> }[];
  readonly assumed?: readonly string[];
}

const inWords = (means: string | readonly string[] | null): string =>
  means === null ? 'none' : typeof means === 'string' ? means : [...means].sort().join(' + ');
const same = (one: string | number | undefined, other: string | number | undefined): boolean =>
  typeof one === 'number' && typeof other === 'number' ? Math.abs(one - other) < 1e-6 : one === other;

function count(share: Share, right: boolean): void {
  share.all++;
  if (right) share.right++;
}

function scoreColumns(table: KnownTable, data: Data, score: Score): Set<string> {
  const doubted = new Set<string>();
  for (const [letter, known] of Object.entries(table.columns)) {
    const read = data.columns?.find(({ column }) => column === letter);
    const right =
      inWords(read?.means ?? null) === inWords(known.means) &&
      (known.means === null || (read?.unit === known.unit && read?.per === known.per));
    count(score.columns, right);
    if (read?.sure === 'sure') count(score.sure, right);
    else
      for (const heading of [known.means, read?.means ?? null].flat())
        if (heading !== null) doubted.add(heading);
    const asks = table.ask?.some(({ column }) => column === letter) === true;
    if (read?.sure === 'asked' && !asks) score.asked++;
    if (!right || (asks && read?.sure !== 'asked'))
      score.wrong.push(
        `${letter} “${read?.heading ?? ''}”: ${inWords(read?.means ?? null)} ${read?.unit ?? ''} ${read?.per ?? ''} (${read?.sure ?? 'missing'}), known ${inWords(known.means)} ${known.unit ?? ''} ${known.per ?? ''}${asks ? ', to be asked' : ''}`,
      );
  }
  return doubted;
}

function scoreRows(table: KnownTable, data: Data, score: Score, doubted: ReadonlySet<string>): void {
  for (const [row, kind] of Object.entries(table.lines)) {
    const read = data.rows?.find((one) => one.row === Number(row));
    count(score.rows, read?.is === kind);
    if (read?.is !== kind) score.wrong.push(`row ${row}: ${read?.is ?? 'missing'}, known ${kind}`);
    const [known = {}, values = {}] = [table.values[row], read?.values];
    for (const heading of new Set([...Object.keys(known), ...Object.keys(values)])) {
      const right = same(values[heading], known[heading]);
      count(score.values, right);
      if (right) continue;
      score.wrong.push(
        `row ${row} ${heading}: ${values[heading] ?? 'nothing'}, known ${known[heading] ?? 'nothing'}`,
      );
      if (values[heading] !== undefined && !doubted.has(heading)) score.silent++;
    }
  }
}

/** Reads one table and counts what is right. */
export function scoreTable(table: KnownTable, score: Score): void {
  const unit = table.unit === 'in' ? INCHES : CENTIMETRES;
  const data = readingAsData(readTable(sheetOf(table), { unit }), 'Sheet', unit) as Data;
  if (table['no windows'] === true && data.none === undefined)
    score.wrong.push('windows are read where there are none');
  if (table['no windows'] !== true && data.none !== undefined) score.wrong.push(`none: ${data.none}`);
  if (table.header !== undefined && String(data.header) !== String(table.header))
    score.wrong.push(`header ${String(data.header)}, known ${String(table.header)}`);
  const doubted = scoreColumns(table, data, score);
  scoreRows(table, data, score, doubted);
  const [assumed, known] = [
    [...(data.assumed ?? [])].sort().join(', '),
    [...(table.assumed ?? [])].sort().join(', '),
  ];
  count(score.assumed, assumed === known);
  if (assumed !== known) score.wrong.push(`assumed ${assumed}, known ${known}`);
}

export const tablesIn = (folder: string): readonly { readonly file: string; readonly table: KnownTable }[] =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => ({ file, table: JSON.parse(readFileSync(join(folder, file), 'utf8')) as KnownTable }));

const percent = ({ right, all }: Share): string =>
  `${right} of ${all} (${all === 0 ? '–' : ((right / all) * 100).toFixed(1)} %)`;

/** The sums as lines. */
export const scoreLines = (score: Score): readonly string[] => [
  `columns right        ${percent(score.columns)}`,
  `of columns sure      ${percent(score.sure)} right`,
  `asked, not to be     ${percent({ right: score.asked, all: score.columns.all })}`,
  `rows right           ${percent(score.rows)}`,
  `values right         ${percent(score.values)}`,
  `wrong without a word ${percent({ right: score.silent, all: score.values.all })}`,
  `assumptions right    ${percent(score.assumed)}`,
];

function main(folder: string, all: boolean): void {
  const whole = noScore();
  for (const { file, table } of tablesIn(folder)) {
    const before = whole.wrong.length;
    scoreTable(table, whole);
    const wrong = whole.wrong.slice(before);
    console.log(`${file}: ${wrong.length === 0 ? 'all right' : `${wrong.length} wrong`}`);
    for (const line of all ? wrong : wrong.slice(0, 12)) console.log(`    ${line}`);
  }
  for (const line of scoreLines(whole)) console.log(line);
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href)
  main(process.argv[2] ?? 'tests/core/window/tables', process.argv.includes('--all'));
