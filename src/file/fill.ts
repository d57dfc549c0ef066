/** npm run hem -- fill: what must be computed of a workbook, written back; everything else in it as it was. */
import { extname, resolve } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { checkWritable, openArchive, replaceFile, stateOf, zipped, type Parts } from './xlsx/archive';
import { packedPieces } from './xlsx/zip';
import { readWords, type Command, type Io } from './command';
import { ceilings } from './ceilings';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';
import { progressOf } from './progress';
import { differencesOf, type Difference } from './recalculate/differences';
import { refill } from './recalculate/refill';
import { reportOf, type Report } from './recalculate/report';
import { readWorkbook } from './xlsx/workbook';

const HELP = `npm run hem -- fill IN.xlsx -o OUT.xlsx [options]

Computes the HEM functions of a workbook and writes values and spills back. HEM formulas are
stored as Excel stores them. IN and OUT may be the same: the old file is replaced only when the
new one is whole.

  npm run hem -- fill quote.xlsx -o filled.xlsx

What is computed: every cell with a HEM function; every formula that has no value yet; and what
depends on a cell whose value changed. What is kept: every other formula's value, as Excel left it.
A workbook that says of itself that its values are to be computed on opening has no values yet.
Ordinary functions are computed only where their answers were seen to agree with Excel's. A formula
that needs another function, the day, chance or another workbook loses its value rather than keep a
wrong one: it is named here, and marked so that a spreadsheet program computes it on opening. Until
then the cell is empty, also in a viewer that does not compute. Circles keep their values.

  -o, --output FILE  the file to write, with the same ending as IN
  --recalculate      every formula that can be computed; says by function what differs from the file
  --seconds N        stop after so many seconds, and write nothing
  --memory MB        stop where more memory than this is needed, and write nothing
  --all              every finding; without it the first 20 of a kind
  --json             the report as one JSON object
  --help             this

Exit code: 0 fine · 1 a formula could not be computed or spilled · 2 not used so ·
           3 a file cannot be read or written, or a ceiling was reached`;

const ENDINGS = new Set(['.xlsx', '.xlsm', '.xltx', '.xltm']);
const SHOWN = 20;
const WEIGHTS = ['stop', 'check', 'note'];

function tell(report: Report, changed: number, path: string, all: boolean, io: Io): void {
  const { formulas, computed, kept, ours, errors, findings, left, keptNotes } = report;
  const keeping = kept > 0 ? `, ${kept.toLocaleString('en-US')} kept as they were` : '';
  io.out(
    `${path}: ${computed.toLocaleString('en-US')} of ${counted(formulas, 'formula')} computed, ${ours.toLocaleString('en-US')} of them with HEM functions${keeping}; ${counted(changed, 'cell')} changed.`,
  );
  for (const note of keptNotes) io.out(note);
  some(errors, all, io.out, ({ cell, error, message }) => `${cell} shows ${error}: ${message}`);
  const heavyFirst = [...findings].sort(
    (one, other) => WEIGHTS.indexOf(one.weight) - WEIGHTS.indexOf(other.weight),
  );
  some(heavyFirst, all, io.out, ({ cell, weight, sentence }) => `${weight} ${cell}: ${sentence}`);
  some(left, all, io.err, ({ sentence }) => sentence);
}

function some<T>(
  list: readonly T[],
  all: boolean,
  say: (line: string) => void,
  line: (one: T) => string,
): void {
  for (const one of all ? list : list.slice(0, SHOWN)) say(line(one));
  if (!all && list.length > SHOWN) say(`… and ${list.length - SHOWN} more (see all with --all)`);
}

function tellDifferences(list: readonly Difference[], io: Io): void {
  if (list.length === 0) io.out('Every formula computed gives what the file held.');
  for (const { name, formulas, differing, first } of list)
    io.out(`${name}: ${differing} of ${counted(formulas, 'formula')} differ from the file, first ${first}`);
}

/** The two files asked for. */
function filesAsked(positionals: readonly string[], to: string | undefined): readonly [string, string] {
  const [from, ...others] = positionals;
  if (from === undefined || others.length > 0 || to === undefined)
    throw new Problem(
      'fill wants one workbook and where to write it: fill IN.xlsx -o OUT.xlsx. See npm run hem -- fill --help.',
      USAGE,
    );
  const endings = [from, to].map((path) => extname(path).toLowerCase());
  if (ENDINGS.has(endings[0] ?? '') && endings[0] !== endings[1])
    throw new Problem(`“${to}” must end in ${endings[0]}, as “${from}” does. Name it so after -o.`, USAGE);
  return [from, to];
}

/** What somebody saved while it was filled is not written over. */
async function checkUnchanged(path: string, state: string, doing: 'read' | 'filled'): Promise<void> {
  if ((await stateOf(path).catch(() => '')) === state) return;
  throw new Problem(
    `“${path}” was saved by another program while it was ${doing}, and nothing was written. Run this again.`,
  );
}

/** From here on memory is cleared more often: 100,000 rows then need 0.95 GB instead of 1.3. */
const LARGE = 32 * 1_048_576;
const sizeOf = (parts: Parts): number => [...parts.values()].reduce((sum, { length }) => sum + length, 0);

export const command: Command = {
  help: HELP,
  async run(words, io) {
    const { values, positionals } = readWords(
      words,
      {
        output: { type: 'string', short: 'o' },
        recalculate: { type: 'boolean' },
        seconds: { type: 'string' },
        memory: { type: 'string' },
        all: { type: 'boolean' },
        json: { type: 'boolean' },
      },
      'fill',
    );
    const [from, to] = filesAsked(positionals, values.output);
    const watch = ceilings(values);
    const state = await stateOf(from).catch(() => '');
    const archive = await openArchive(from);
    await checkUnchanged(from, state, 'read');
    if (sizeOf(archive) > LARGE) setFlagsFromString('--heap-growing-percent=25');
    await checkWritable(to);
    const file = readWorkbook(archive, (sheet) => {
      io.progress(`… reading ${sheet}`);
      watch();
    });
    const everything = values.recalculate === true;
    const { parts, done, changed } = refill(file, {
      everything,
      watch,
      progress: progressOf(io),
      pack: packedPieces,
    });
    const same = [...parts].every(([name, bytes]) => archive.get(name) === bytes);
    const over = resolve(from) === resolve(to);
    if (!same || !over) {
      const packed = zipped(parts);
      await checkWritable(to);
      if (over) await checkUnchanged(from, state, 'filled');
      await replaceFile(to, packed);
    }
    const report = reportOf(done);
    const differences = everything ? differencesOf(done) : undefined;
    if (values.json === true)
      io.out(
        JSON.stringify({
          file: to,
          changed,
          ...report,
          ...(differences === undefined ? {} : { differences }),
        }),
      );
    else {
      tell(report, changed, to, values.all === true, io);
      if (differences !== undefined) tellDifferences(differences, io);
    }
    return report.left.length > 0 ? NOT_COMPUTED : FINE;
  },
};
