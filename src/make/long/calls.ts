/**
 * Functions called by chance with valid, edge and hostile inputs: whatever comes of a call is a value that a
 * cell may hold, or a sentence. A call follows from the seed and its number alone, so that it can be done again.
 */
import { build } from 'esbuild';
import { CATALOGUE } from '../../../functions/index';
import type { CellIn } from '../../core/cell/fields';
import { bareOf } from '../duckdb';
import { placeOf } from '../written';
import { chances } from './fuzz';

export interface Call {
  readonly name: string;
  readonly inputs: readonly CellIn[];
}

/** What an answer is, whoever gives it. */
export type Answered = { readonly value: unknown } | { readonly error: string; readonly sentence: string };
export type Caller = (call: Call) => Answered;

const EDGES: readonly CellIn[] = [
  ...[0, -0, 1, -1, 0.5, 0.001, 1e-9, 1e-300, 54, 94, 96, 1e4, 1e6, 1e9, 1e12, 2 ** 53, 1e15, 1e300, 46_000],
  ...[null, undefined, '', ' ', true, false, NaN, Infinity, -Infinity, Number.MAX_VALUE],
  ...[
    '84 1/2',
    '7\' 6"',
    '-12 1/2',
    '1,234',
    '1.234,5',
    '50 %',
    '2.5x',
    '30 + 60 + 30',
    '½',
    '1e400',
    '9'.repeat(400),
  ],
  ...[
    'pinch',
    'grommet',
    'wave',
    'pair',
    'one-way left',
    'half-drop',
    'unlined',
    'yes',
    'no',
    'none',
    'railroaded',
  ],
  ...[
    '=1+1',
    '<b>',
    '\u0000',
    '\uD800',
    '￿',
    'x'.repeat(9_000),
    '__proto__',
    'constructor',
    '#N/A',
    '#BUSY!',
  ],
  [[]],
  [[null, '']],
  [[1, 2], [3]],
  [
    ['rule', 'value'],
    ['bottom allowance', 1e12],
  ],
  [
    ['unit', 'centimetres'],
    ['fullness pinch', 'x'],
  ],
  [['rod width', 'drop', 'heading']],
  Array.from({ length: 300 }, (_, at) => [at, `room ${at}`, 94]),
  { type: 'Error', basicValue: '#REF!' },
  { day: 46_000 },
];

const pick = <T>(next: () => number, list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;

/** A number of any size, as people write it or as it is. */
function figure(next: () => number): CellIn {
  const size = 10 ** Math.floor(next() * 8 - 2);
  const number = Math.round(next() * size * 64) / 64;
  return next() < 0.8 ? number : `${Math.floor(number)} ${1 + Math.floor(next() * 15)}/16`;
}

export function callOf(seed: number, number: number, examples: (formula: string) => Call): Call {
  const next = chances((seed * 1_000_003 + number) >>> 0);
  const known = pick(next, CATALOGUE);
  const { inputs } = examples(pick(next, known.examples).formula);
  const most = known.parameters.length + (known.parameters.at(-1)?.repeats === true ? 3 : 0);
  const given: CellIn[] = [...inputs];
  for (let changes = Math.floor(next() * 4); changes > 0; changes--) {
    const at = Math.floor(next() * Math.max(1, most));
    while (given.length < at) given.push(null);
    given[at] = next() < 0.5 ? figure(next) : pick(next, EDGES);
  }
  return { name: known.name, inputs: given };
}

const cellsOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value.flat() : [value]);

/** What is wrong with an answer; undefined where all is well. */
export function wrongWith(answer: Answered): string | undefined {
  if ('error' in answer) return answer.sentence.trim() === '' ? 'an error without a sentence' : undefined;
  for (const cell of cellsOf(answer.value)) {
    if (
      typeof cell === 'number'
        ? !Number.isFinite(cell)
        : typeof cell !== 'string' && typeof cell !== 'boolean'
    )
      return `“${String(cell)}” in a cell`;
    if (typeof cell === 'string' && /\bundefined\b|\bNaN\b|\[object /.test(cell))
      return `“${cell}” in a cell`;
  }
  return undefined;
}

/** A call that takes longer hangs. */
const MOST_SECONDS = 5;

export function fuzzCalls(
  count: number,
  seed: number,
  { examples, caller }: { readonly examples: (formula: string) => Call; readonly caller: Caller },
): string[] {
  const found: string[] = [];
  for (let number = 0; number < count; number++) {
    const call = callOf(seed, number, examples);
    const began = performance.now();
    let wrong: string | undefined;
    try {
      wrong = wrongWith(caller(call));
    } catch (thrown) {
      wrong = `it threw ${String(thrown)}`;
    }
    const seconds = (performance.now() - began) / 1_000;
    if (seconds > MOST_SECONDS) wrong ??= `it took ${seconds.toFixed(0)} s`;
    if (wrong !== undefined)
      found.push(
        `seed ${seed}, call ${number}: ${call.name} ${JSON.stringify(call.inputs).slice(0, 300)}: ${wrong}`,
      );
  }
  return found;
}

/** Straight to the catalogue. */
export const throughCore: Caller = ({ name, inputs }) => {
  const outcome = CATALOGUE.find((one) => one.name === name)?.call(inputs);
  if (outcome === undefined) return { error: '#NAME?', sentence: '' };
  return 'error' in outcome
    ? { error: outcome.error, sentence: outcome.finding.sentence }
    : { value: outcome.cells };
};

/** Through the bundle for any JavaScript engine, as it is built. */
export async function throughBundle(): Promise<Caller> {
  const { outputFiles } = await build({
    entryPoints: [placeOf('functions/bare.ts')],
    bundle: true,
    write: false,
    format: 'iife',
    globalName: 'hemledger',
    target: 'es2018',
    logLevel: 'silent',
  });
  const bare = bareOf(outputFiles[0]?.text ?? '');
  return ({ name, inputs }) => bare.call(name, inputs);
}

/** As a formula has it; undefined where no formula can say it. */
function typed(input: CellIn): string | undefined {
  if (input === null || input === undefined) return '';
  if (typeof input === 'boolean') return input ? 'TRUE' : 'FALSE';
  if (typeof input === 'number') return Number.isFinite(input) ? String(input).toUpperCase() : undefined;
  if (typeof input === 'string') return `"${input.replaceAll('"', '""')}"`;
  if (!Array.isArray(input) || input.length === 0) return undefined;
  const rows = (input as unknown[]).map((row) => (Array.isArray(row) ? (row as CellIn[]) : [row as CellIn]));
  const cells = rows.map((row) => row.map((cell) => (Array.isArray(cell) ? undefined : typed(cell))));
  const isWhole = cells.every(
    (row) => row.length === cells[0]?.length && row.every((cell) => cell !== undefined && cell !== ''),
  );
  return isWhole ? `{${cells.map((row) => row.join(',')).join(';')}}` : undefined;
}

/** The formula of a call; what no formula can say is left out. */
export const formulaOf = ({ name, inputs }: Call): string =>
  `HEM.${name}(${inputs.map((input) => typed(input) ?? '').join(',')})`;
