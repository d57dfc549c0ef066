/**
 * `npm run mutants -- --seed N`: changes lines of the core and the functions by chance, one at a time, and sees
 * whether a test notices. `--lines N` says how many lines, `--in FOLDER` where (a folder is then taken whole
 * without `--lines`). What no test noticed is listed; the same seed takes the same lines.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { chanceFrom } from './orders';
import { placeOf } from './written';

/** As many lines as give some 1,500 changes. */
const LINES = 1_500;
const SOURCES = ['src/core', 'functions'];
/** Nothing of these can be noticed: words for people, types, imports. */
const EMPTY = /^\s*(?:$|\/\/|\/?\*|import\b|export type|\}|\)|\])/;

interface Line {
  readonly file: string;
  readonly line: number;
}

const sourcesIn = (folder: string): string[] =>
  folder.endsWith('.ts')
    ? [folder]
    : readdirSync(placeOf(folder), { recursive: true, encoding: 'utf8' })
        .filter((file) => file.endsWith('.ts'))
        .map((file) => join(folder, file))
        .sort();

function linesIn(folders: readonly string[]): Line[] {
  return folders.flatMap(sourcesIn).flatMap((file) =>
    readFileSync(placeOf(file), 'utf8')
      .split('\n')
      .flatMap((text, at) => (EMPTY.test(text) ? [] : [{ file, line: at + 1 }])),
  );
}

/** So many of the lines, every one as likely, the same for the same seed. */
export function sampled(lines: readonly Line[], count: number, seed: number): Line[] {
  const chance = chanceFrom(seed);
  const left = [...lines];
  const taken: Line[] = [];
  while (taken.length < count && left.length > 0)
    taken.push(...left.splice(Math.floor(chance() * left.length), 1));
  return taken.sort((one, other) => one.file.localeCompare(other.file) || one.line - other.line);
}

export interface Mutant {
  readonly status: string;
  readonly mutatorName: string;
  readonly replacement?: string;
  readonly location: { readonly start: { readonly line: number } };
}

/** How many were noticed, and what was not. Those that do not compile or run for ever are noticed. */
export function counted(files: Readonly<Record<string, { readonly mutants: readonly Mutant[] }>>): {
  readonly killed: number;
  readonly all: number;
  readonly survivors: readonly string[];
} {
  let [killed, all] = [0, 0];
  const survivors: string[] = [];
  for (const [file, { mutants }] of Object.entries(files))
    for (const { status, mutatorName, replacement = '', location } of mutants) {
      if (status === 'Ignored' || status === 'CompileError') continue;
      all++;
      if (status === 'Killed' || status === 'Timeout' || status === 'RuntimeError') killed++;
      else
        survivors.push(
          `${file}:${location.start.line} ${mutatorName}: ${replacement.replace(/\s+/g, ' ').slice(0, 90)}${status === 'NoCoverage' ? ' (no test runs it)' : ''}`,
        );
    }
  return { killed, all, survivors };
}

/** Whole books of past orders, which audit and reader meet together. */
const BOOKS = 'tests/make/houses/audited.test.ts';

/** The tests of the pure rooms; of one folder, or file, those that mirror it. */
const testsOf = (folder: string | undefined): string =>
  folder === undefined
    ? `tests/core/**/*.test.ts tests/functions/*.test.ts tests/checks/*.test.ts tests/jobs/*.test.ts ${BOOKS}`
    : folder.endsWith('.ts')
      ? folder.replace(/^(?:src\/)?/, 'tests/').replace(/\.ts$/, '.test.ts')
      : `${folder.replace(/^(?:src\/)?/, 'tests/')}/**/*.test.ts`;

function main(): void {
  const { values } = parseArgs({
    options: { seed: { type: 'string' }, lines: { type: 'string' }, in: { type: 'string' } },
  });
  const seed = Number(values.seed ?? '1');
  const all = linesIn(values.in === undefined ? SOURCES : [values.in]);
  const count = Number(values.lines ?? (values.in === undefined ? LINES : all.length));
  const lines = sampled(all, count, seed);
  const folder = placeOf('out/mutants');
  mkdirSync(folder, { recursive: true });
  const report = join(folder, 'report.json');
  const settings = {
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    // The tests are chosen by the settings, not by what they import.
    vitest: { configFile: 'vitest.config.ts', related: false },
    // A sentence changed is a sentence: what it says is held by other tests than those of the figures.
    mutator: { excludedMutations: ['StringLiteral'] },
    mutate: lines.map(({ file, line }) => `${file}:${line}-${line}`),
    coverageAnalysis: 'perTest',
    concurrency: 2,
    timeoutMS: 60_000,
    dryRunTimeoutMinutes: 30,
    tempDirName: 'out/mutants/tmp',
    reporters: ['json', 'progress'],
    jsonReporter: { fileName: report },
    checkers: [],
    disableTypeChecks: false,
  };
  const config = join(folder, 'stryker.json');
  writeFileSync(config, JSON.stringify(settings));
  console.log(`seed ${seed}: ${lines.length} of ${all.length} lines`);
  const run = spawnSync('npx', ['stryker', 'run', config], {
    cwd: placeOf('.'),
    stdio: 'inherit',
    env: { ...process.env, HEMLEDGER_MUTANTS: testsOf(values.in) },
  });
  if (run.status !== 0) {
    process.exitCode = run.status ?? 1;
    return;
  }
  const { files } = JSON.parse(readFileSync(report, 'utf8')) as {
    files: Record<string, { mutants: Mutant[] }>;
  };
  const { killed, all: changed, survivors } = counted(files);
  for (const one of survivors) console.log(`not noticed: ${one}`);
  const share = changed === 0 ? 0 : (100 * killed) / changed;
  console.log(`${changed} changes, ${killed} noticed (${share.toFixed(1)} %; aim 90 %), seed ${seed}`);
}

if (process.argv[1]?.endsWith('mutants.ts') === true) main();
