/** npm run hem -- fill: a workbook computed anew and written back, everything else in it as it was. */
import { extname, resolve } from 'node:path';
import { nodeLibrary } from '../engine/node';
import { checkWritable, openArchive, replaceFile, zipped } from './xlsx/archive';
import { readWords, type Command, type Io } from './command';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { progressOf } from './progress';
import { refill } from './recalculate/refill';
import { reportOf, type Report } from './recalculate/report';
import { readWorkbook } from './xlsx/workbook';

const HELP = `npm run hem -- fill IN.xlsx -o OUT.xlsx [options]

Computes every formula of a workbook, HEM functions included, and writes values and spills
back. Nothing else of the file changes. HEM formulas are stored as Excel stores them.
IN and OUT may be the same: the old file is replaced only when the new one is whole.

  npm run hem -- fill quote.xlsx -o filled.xlsx

  -o, --output FILE  the file to write, with the same ending as IN
  --all              every finding; without it the first ${20} of a kind
  --json             the report as one JSON object
  --help             this

A formula that cannot be computed is named and keeps its old value; the others are computed.
Exit code: 0 fine · 1 a formula could not be computed or spilled · 2 not used so ·
           3 a file cannot be read or written`;

const ENDINGS = new Set(['.xlsx', '.xlsm', '.xltx', '.xltm']);
const SHOWN = 20;
const WEIGHTS = ['stop', 'check', 'note'];

function tell(report: Report, changed: number, path: string, all: boolean, io: Io): void {
  const { formulas, computed, ours, errors, findings, left } = report;
  io.out(
    `${path}: ${computed.toLocaleString('en-US')} of ${counted(formulas, 'formula')} computed, ${ours.toLocaleString('en-US')} of them with HEM functions; ${counted(changed, 'cell')} changed.`,
  );
  some(errors, all, io, ({ cell, error, message }) => `${cell} shows ${error}: ${message}`);
  const heavyFirst = [...findings].sort(
    (one, other) => WEIGHTS.indexOf(one.weight) - WEIGHTS.indexOf(other.weight),
  );
  some(heavyFirst, all, io, ({ cell, weight, sentence }) => `${weight} ${cell}: ${sentence}`);
  for (const { sentence } of left) io.err(sentence);
}

function some<T>(list: readonly T[], all: boolean, io: Io, line: (one: T) => string): void {
  for (const one of all ? list : list.slice(0, SHOWN)) io.out(line(one));
  if (!all && list.length > SHOWN) io.out(`… and ${list.length - SHOWN} more (see all with --all)`);
}

export const command: Command = {
  help: HELP,
  async run(words, io) {
    const { values, positionals } = readWords(
      words,
      { output: { type: 'string', short: 'o' }, all: { type: 'boolean' }, json: { type: 'boolean' } },
      'fill',
    );
    const [from, ...others] = positionals;
    const to = values.output;
    if (from === undefined || others.length > 0 || to === undefined)
      throw new Problem(
        'fill wants one workbook and where to write it: fill IN.xlsx -o OUT.xlsx. See npm run hem -- fill --help.',
        USAGE,
      );
    const endings = [from, to].map((path) => extname(path).toLowerCase());
    if (ENDINGS.has(endings[0] ?? '') && endings[0] !== endings[1])
      throw new Problem(`“${to}” must end in ${endings[0]}, as “${from}” does. Name it so after -o.`, USAGE);
    const archive = await openArchive(from);
    await checkWritable(to);
    const file = readWorkbook(archive, (sheet) => {
      io.progress(`… reading ${sheet}`);
    });
    const { parts, results, changed } = await refill(file, nodeLibrary(), progressOf(io));
    const same = [...parts].every(([name, bytes]) => archive.get(name) === bytes);
    if (!same || resolve(from) !== resolve(to)) await replaceFile(to, zipped(parts));
    const report = reportOf(file, results);
    if (values.json === true) io.out(JSON.stringify({ file: to, changed, ...report }));
    else tell(report, changed, to, values.all === true, io);
    return report.left.length > 0 ? NOT_COMPUTED : FINE;
  },
};
