/** The functions bundle as it ships: what it weighs and of what, how fast it starts, how fast its cells are. */
import { existsSync, readFileSync } from 'node:fs';
import { createContext, Script } from 'node:vm';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { plain } from './for-people.mjs';
import { moneyAlone } from './money-alone.mjs';
import { placeOf } from './written';

const CELLS = 10_000;
const STARTS = 9;

type Cell = (...received: readonly unknown[]) => unknown;

/** The columns of a new job's windows, CHECK apart, as Excel hands a row over: nothing for what is left out. */
const COLUMNS: readonly (readonly [string, readonly unknown[]])[] = [
  ['RODWIDTH', [72, null, null, null]],
  ['DROP', [[[98], [98.5], [99]], 'pinch', null, null, null]],
  ['WIDTHS', [94, 'pinch', 54, 'pair', 2.5, null, null]],
  ['CUTLENGTH', [96, 'pinch', 25.25, null, null]],
  ['YARDAGE', [94, 96, 'pinch', 54, 25.25, 2, 'pair', 2.5, null, null, null]],
  ['LINING', [94, 96, 'pinch', 54, 2, 'pair', 2.5, null, null, null, null]],
  ['SAVEWIDTH', [94, 'pinch', 54, 'pair', 2.5, null]],
  ['STACK', [94, 'pinch', null, null, null]],
  ['RINGS', [94, 5, 'pinch', 'pair', null, null]],
  ['FINISHEDWIDTH', [94, 'pinch', 'pair', null, null, null]],
];

function started(script: Script): ReadonlyMap<string, Cell> {
  const cells = new Map<string, Cell>();
  const context = createContext({
    CustomFunctions: {
      Error,
      ErrorCode: { invalidValue: '#VALUE!', notAvailable: '#N/A' },
      associate: (id: string, cell: Cell) => cells.set(id, cell),
    },
  });
  script.runInContext(context);
  return cells;
}

/** Processor time in ms, which a busy machine does not stretch. */
const now = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const median = (list: readonly number[]): number => list.toSorted((a, b) => a - b)[list.length >> 1] ?? NaN;

const gzipped = (text: string): number => gzipSync(text, { level: 9 }).length;
const kB = (bytes: number): string => (bytes / 1000).toFixed(1);

/** Folder or package of a source; the reader of tables by itself. */
const partOf = (file: string): string =>
  /^(node_modules\/(?:@[^/]+\/)?[^/]+|src\/core\/window\/reader|src\/\w+\/\w+|\w+)/.exec(file)?.[1] ?? file;

/** The bundle's text by part: minified but for its lines, each file below a line that names it. */
async function textByPart(): Promise<ReadonlyMap<string, string>> {
  const { outputFiles } = await build({
    entryPoints: [placeOf('src/excel/functions.ts')],
    absWorkingDir: placeOf('.'),
    bundle: true,
    write: false,
    minifyIdentifiers: true,
    minifySyntax: true,
    format: 'iife',
    target: 'es2018',
    outfile: 'unused.js',
    plugins: [
      {
        name: 'for people',
        setup: ({ onLoad }) => {
          onLoad({ filter: /\.ts$/ }, ({ path }) => {
            const text = readFileSync(path, 'utf8');
            return { contents: /[\\/](findings|reader)[\\/]/.test(path) ? text : plain(text), loader: 'ts' };
          });
          onLoad({ filter: /decimal\.mjs$/ }, ({ path }) => ({
            contents: moneyAlone(readFileSync(path, 'utf8')),
            loader: 'js',
          }));
        },
      },
    ],
  });
  const parts = new Map<string, string>();
  let part = 'its frame';
  for (const line of outputFiles[0]?.text.split('\n') ?? []) {
    const file = /^ {2}\/\/ (\S+\.\w+)$/.exec(line)?.[1];
    if (file !== undefined) part = partOf(file);
    else parts.set(part, `${parts.get(part) ?? ''}${line.trim()}\n`);
  }
  return parts;
}

/** What the bundle would be smaller by, gzipped, if a part were not in it. */
async function costs(): Promise<readonly string[]> {
  const parts = await textByPart();
  const whole = gzipped([...parts.values()].join(''));
  const costOf = (part: string): number =>
    whole - gzipped([...parts].map(([one, text]) => (one === part ? '' : text)).join(''));
  return [...parts.keys()]
    .map((part) => [part, costOf(part)] as const)
    .sort(([, one], [, other]) => other - one)
    .map(([part, cost]) => `  ${part.padEnd(28)}${kB(cost).padStart(7)} kB gzipped`);
}

/** Of dist/functions.js, as npm run build left it. */
export async function benchBundle(): Promise<readonly string[]> {
  const file = placeOf('dist/functions.js');
  if (!existsSync(file)) return ['left out: npm run build makes dist/functions.js, and has not run'];
  const text = readFileSync(file, 'utf8');
  const starts = Array.from({ length: STARTS }, () => {
    const began = now();
    started(new Script(text));
    return now() - began;
  });
  const cells = started(new Script(text));
  const rows = CELLS / COLUMNS.length;
  const began = now();
  for (let row = 0; row < rows; row++)
    for (const [name, inputs] of COLUMNS) cells.get(name)?.(...inputs, { address: `Windows!A${row}` });
  const took = now() - began;
  const cold = median(starts);
  const said = (met: boolean): string => (met ? 'met' : 'not met in this run');
  return [
    `functions.js: ${(text.length / 1000).toFixed(0)} kB, ${kB(gzipped(text))} kB gzipped; without a part it were less by`,
    ...(await costs()),
    `a cold start in a bare context: ${cold.toFixed(1)} ms; aim under 30 ms, ${said(cold < 30)}`,
    `${CELLS} cells of a new job’s columns: ${(took / 1000).toFixed(2)} s; aim under 1 s, ${said(took < 1000)}`,
  ];
}
