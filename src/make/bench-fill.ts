/** `hem fill` as a process against LibreOffice, which converts the same chain in native formulas, in one run. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { storedForm } from '../file/recalculate/formula';
import { inputCells, paneCalls, plainWindows, sixFormulas } from './native';
import { convertedByLibreOffice, sheetFile } from './office-suite';
import { placeOf } from './written';

/** What a process needed: seconds of processor time, megabytes at most. */
export interface Spent {
  readonly seconds: number;
  readonly megabytes: number;
}

/** Said by the process itself as its last word, for no clock of ours sees its memory. */
const TELLS = `data:text/javascript,process.on('exit',()=>{const{userCPUTime:u,systemCPUTime:s,maxRSS:m}=process.resourceUsage();process.stderr.write('\\nspent '+[(u+s)/1e6,m/1024].join(' '))})`;

/** The headless command in a process of its own. */
export function spentBy(
  words: readonly string[],
): Spent & { readonly exit: number | null; readonly said: string } {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', TELLS, placeOf('src/make/hem.mjs'), ...words],
    { encoding: 'utf8', maxBuffer: 1 << 28 },
  );
  const [, seconds, megabytes] = /spent (\S+) (\S+)\s*$/.exec(stderr) ?? [];
  return { seconds: Number(seconds), megabytes: Number(megabytes), exit: status, said: stdout };
}

/** The making charge, said once beside the first row. */
const RULES = ['labor pinch', 32.5];

/** A row as a workroom has it: ten inputs, six cells of ours, and where asked six native ones that read them. */
function bookOf(count: number, downstream: boolean): Uint8Array {
  return sheetFile(
    plainWindows(count).map((window, at) => {
      const row = at + 1;
      const ours = paneCalls(row, '$R$1:$S$1').map((text) => ({ stored: storedForm(text.slice(1)) }));
      const rules = at === 0 ? [null, ...RULES] : [null, null, null];
      const native = downstream ? COLUMNS.map((column) => `=ROUND(${column}${row}*1.1,2)`) : [];
      return [...inputCells(window), ...ours, ...rules, ...native];
    }),
  );
}
const COLUMNS = ['K', 'L', 'M', 'N', 'O', 'P'];

const LARGE = 100_000;

/** At most this much of what LibreOffice needs, without and with native formulas downstream. */
const MOST = [1, 2] as const;

/**
 * Aims in seconds are for a quiet machine, on which LibreOffice converts the 10,000 rows in so many; here they
 * are judged by what it takes in the same run.
 */
const QUIET_SUITE = 7.8;
const MOST_LARGE = { seconds: 60, megabytes: 1_024 };

/** A line each; the windows of the first two are as many as LibreOffice converts. */
export function benchFill(count = 10_000, large = LARGE): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'hem-bench-'));
  const fill = (windows: number, downstream: boolean): Spent => {
    const from = join(folder, 'in.xlsx');
    writeFileSync(from, bookOf(windows, downstream));
    const spent = spentBy(['fill', from, '-o', join(folder, 'out.xlsx'), '--json']);
    if (spent.exit !== 0)
      throw new Error(`fill ended with ${String(spent.exit)}: ${spent.said.slice(0, 500)}`);
    return spent;
  };
  try {
    const twin = plainWindows(count).map((one, at) => [...inputCells(one), ...sixFormulas(at + 1)]);
    spentBy(['--help']);
    const suite = convertedByLibreOffice(sheetFile(twin));
    const lines = [
      suite === undefined
        ? 'LibreOffice is not installed and was left out.'
        : `LibreOffice converts ${count.toLocaleString('en-US')} × 6 native formulas in ${suite.toFixed(1)} s of processor time.`,
    ];
    for (const [at, downstream] of [false, true].entries()) {
      const { seconds, megabytes } = fill(count, downstream);
      const ratio =
        suite === undefined ? '' : `, ${(seconds / suite).toFixed(2)} times that (aim ${MOST[at] ?? 1})`;
      lines.push(
        `fill, ${count.toLocaleString('en-US')} × 6 HEM cells${downstream ? ' and as many native ones that read them' : ''}: ${seconds.toFixed(1)} s${ratio}, ${megabytes.toFixed(0)} MB.`,
      );
    }
    const { seconds, megabytes } = fill(large, false);
    const most = MOST_LARGE.seconds * (suite === undefined ? 1 : suite / QUIET_SUITE);
    const met = seconds <= most && megabytes <= MOST_LARGE.megabytes ? 'met' : 'not met in this run';
    lines.push(
      `fill, ${large.toLocaleString('en-US')} × 6: ${seconds.toFixed(0)} s (aim ${MOST_LARGE.seconds} on a quiet machine, ${most.toFixed(0)} by LibreOffice’s time in this run), ${megabytes.toFixed(0)} MB (aim ${MOST_LARGE.megabytes.toLocaleString('en-US')}): ${met}.`,
    );
    return lines;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
