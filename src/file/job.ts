/** npm run job: the demo floor from measure sheet to quote, without Excel; the filled workbooks go to out/. */
import { mkdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { UNITS, type Length } from '../core/exact/length';
import { tally } from '../core/floor/tally';
import { papersOf } from '../core/papers/papers';
import { today } from '../book/today';
import { jobIn, withPapers } from './papers';
import { openArchive, replaceFile, zipped } from './xlsx/archive';
import { counted } from './problem';
import { refill } from './recalculate/refill';
import { reportOf } from './recalculate/report';
import { clothLines, findingLines, hardwareLine, savingLines } from './floor/summary';
import { namedValue, readWindows } from './floor/windows';
import { readWorkbook, type WorkbookFile } from './xlsx/workbook';

const ROLL = (60 * UNITS.yd) as Length;
const OUT = 'out';
const demo = (name: string): string => fileURLToPath(new URL(`demo/${name}`, import.meta.url));
const say = (line = ''): void => void process.stdout.write(`${line}\n`);

/** Computes one demo workbook and writes it; what came of it is said in a line or more. */
async function compute(name: string): Promise<{ readonly file: WorkbookFile; readonly sound: boolean }> {
  const { parts, done } = refill(readWorkbook(await openArchive(demo(name))));
  const file = readWorkbook(parts);
  const path = `${OUT}/${name}`;
  await replaceFile(path, zipped(parts));
  const { computed, ours, left, errors } = reportOf(done);
  say(`  ${path}: ${counted(computed, 'formula')} computed, ${ours} of them with HEM functions`);
  for (const { sentence } of left) say(`  ${sentence}`);
  for (const { cell, error, message } of errors) say(`  ${cell} shows ${error}: ${message}`);
  return { file, sound: left.length === 0 && errors.length === 0 };
}

const PRICES = [
  ['subtotal', 'QuoteSubtotal'],
  ['sales tax', 'QuoteTax'],
  ['total', 'QuoteTotal'],
  ['deposit', 'QuoteDeposit'],
] as const;

// A reader that has seen enough (head) is no trouble.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});
await mkdir(OUT, { recursive: true });
say('Written');
const measures = await compute('measures.xlsx');
const quote = await compute('quote.xlsx');
const job = await jobIn(quote.file, demo('quote.xlsx'), { only: [], today: today() });
const { papers } = papersOf(job);
await replaceFile(`${OUT}/papers.xlsx`, zipped(withPapers(quote.file, job, papers)));
say(`  ${OUT}/papers.xlsx: ${papers.map(({ title }) => title).join(', ')}`);
const read = readWindows(measures.file, demo('measures.xlsx'));
const { windows, house } = read;
const total = tally(windows, house.rules);
say();
say(`Floor: ${counted(windows.length, 'window')} from the sheet “${read.sheet}”`);
say('Cloth, from the measure sheet');
for (const line of clothLines(windows, total, ROLL, house.unit)) say(line);
say('Hardware');
say(hardwareLine(total, house.unit));
say('Price, from the quote workbook');
for (const [words, name] of PRICES) {
  const amount = Number(namedValue(quote.file, name));
  say(
    `  ${words.padEnd(10)}${amount.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 }).padStart(12)}`,
  );
}
say('What would save cloth');
for (const line of savingLines({ windows: read.placed, house })) say(line);
say('Worth a look');
for (const line of findingLines(read)) say(line);
process.exitCode = measures.sound && quote.sound ? 0 : 1;
