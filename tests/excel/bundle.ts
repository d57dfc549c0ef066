/** Builds the functions bundle as it is shipped and runs it as Excel's JavaScript-only runtime would. */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import webpack, { type Configuration, type Stats, type StatsModule } from 'webpack';

const CONFIGURATION = new URL('../../webpack.config.mjs', import.meta.url).href;

export interface Built {
  readonly text: string;
  /** The files it is made of, from the project's top. */
  readonly modules: readonly string[];
}

/** functions.js, built by the project's own webpack configuration. */
export async function build(): Promise<Built> {
  const { default: configurations } = (await import(/* @vite-ignore */ CONFIGURATION)) as {
    default: Configuration[];
  };
  const functions = configurations.find(({ name }) => name === 'functions');
  if (functions === undefined) throw new Error('webpack.config.mjs has no configuration named functions');
  const path = await mkdtemp(join(tmpdir(), 'hemledger-'));
  try {
    const compiler = webpack({ ...functions, mode: 'production', output: { ...functions.output, path } });
    const modules = await new Promise<readonly string[]>((done, failed) => {
      compiler.run((error, stats) => {
        compiler.close(() => undefined);
        if (stats === undefined) failed(error ?? new Error('webpack gave no account'));
        else if (stats.hasErrors()) failed(new Error(stats.toString('errors-only')));
        else done(filesOf(stats));
      });
    });
    return { text: await readFile(join(path, 'functions.js'), 'utf8'), modules };
  } finally {
    await rm(path, { recursive: true });
  }
}

function filesOf(stats: Stats): readonly string[] {
  const all = (modules: readonly StatsModule[]): string[] =>
    modules.flatMap((one) => [one.nameForCondition ?? '', ...all(one.modules ?? [])]);
  const { modules = [] } = stats.toJson({
    all: false,
    modules: true,
    nestedModules: true,
    modulesSpace: 10_000,
    nestedModulesSpace: 10_000,
  });
  const top = fileURLToPath(new URL('../../', import.meta.url));
  return all(modules)
    .filter((file) => file.startsWith(top))
    .map((file) => file.slice(top.length));
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
  for (const of of [Number, Date, Array, Object]) delete of.prototype.toLocaleString;
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
