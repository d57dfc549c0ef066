/** Runs the functions bundle as it is shipped, as Excel's JavaScript-only runtime would. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createContext, runInContext } from 'node:vm';
import { packed, type Packed } from '../make/pack';

export interface Built extends Pick<Packed, 'files'> {
  readonly text: string;
}

export async function build(): Promise<Built> {
  const { folder, files } = await packed('functions');
  return { text: await readFile(join(folder, 'functions.js'), 'utf8'), files };
}

/** What came to JavaScript after ES2018, or depends on the platform's language, is taken away: a call of it fails. */
const NEWER = `
  for (const name of ['at', 'flat', 'flatMap', 'findLast', 'findLastIndex', 'toSorted', 'toReversed',
    'toSpliced', 'with', 'group', 'groupToMap']) delete Array.prototype[name];
  for (const name of ['at', 'matchAll', 'replaceAll', 'trimStart', 'trimEnd', 'trimLeft', 'trimRight',
    'isWellFormed', 'toWellFormed']) delete String.prototype[name];
  for (const name of ['fromEntries', 'hasOwn', 'groupBy']) delete Object[name];
  for (const name of ['allSettled', 'any', 'withResolvers']) delete Promise[name];
  for (const name of ['union', 'intersection', 'difference']) delete Set.prototype[name];
  for (const one of [Number, Date, Array, Object]) delete one.prototype.toLocaleString;
  for (const name of ['localeCompare', 'toLocaleUpperCase', 'toLocaleLowerCase']) delete String.prototype[name];
  delete Symbol.prototype.description;
  delete Map.groupBy;
  for (const name of ['Intl', 'BigInt', 'BigInt64Array', 'BigUint64Array', 'WeakRef', 'FinalizationRegistry',
    'AggregateError', 'globalThis', 'WebAssembly', 'SharedArrayBuffer', 'Atomics', 'Iterator'])
    delete this[name];
`;

/** As `CustomFunctions.Error`: a code and a sentence. */
export class CellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

export type Associated = (...received: unknown[]) => unknown;

/** Runs the bundle in a bare context: no page, no Node, no console, no Intl, nothing newer than ES2018. */
export function associated(bundle: string): ReadonlyMap<string, Associated> {
  const functions = new Map<string, Associated>();
  const context = createContext({
    CustomFunctions: {
      Error: CellError,
      ErrorCode: { invalidValue: '#VALUE!', notAvailable: '#N/A' },
      associate: (id: string, run: Associated) => functions.set(id, run),
    },
  });
  runInContext(NEWER, context);
  runInContext(bundle, context, { filename: 'functions.js' });
  return functions;
}
