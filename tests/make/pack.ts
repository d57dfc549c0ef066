/** Builds a part of the add-in with the project's own webpack configuration, as `npm run build` does: once a run. */
import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import webpack, { type Configuration, type Stats, type StatsModule } from 'webpack';

const CONFIGURATION = new URL('../../webpack.config.mjs', import.meta.url).href;
const TOP = fileURLToPath(new URL('../../', import.meta.url));
const WAIT = 100;

/** The project's files and packages a bundle is made of, from the project's top. */
function filesOf(stats: Stats): readonly string[] {
  const all = (modules: readonly StatsModule[]): string[] =>
    modules.flatMap((one) => [one.nameForCondition ?? '', ...all(one.modules ?? [])]);
  const { modules = [] } = stats.toJson({
    all: false,
    modules: true,
    nestedModules: true,
    modulesSpace: Infinity,
    nestedModulesSpace: Infinity,
  });
  return all(modules)
    .filter((file) => file.startsWith(TOP))
    .map((file) => file.slice(TOP.length));
}

async function build(part: string, path: string): Promise<readonly string[]> {
  const { default: configurations } = (await import(/* @vite-ignore */ CONFIGURATION)) as {
    default: Configuration[];
  };
  const configuration = configurations.find(({ name }) => name === part);
  if (configuration === undefined) throw new Error(`webpack.config.mjs has no part named ${part}`);
  const compiler = webpack({
    ...configuration,
    mode: 'production',
    output: { ...configuration.output, path },
  });
  return new Promise((done, failed) => {
    compiler.run((error, stats) => {
      compiler.close(() => undefined);
      if (stats === undefined) failed(error ?? new Error('webpack gave no account'));
      else if (stats.hasErrors()) failed(new Error(stats.toString('errors-only')));
      else done(filesOf(stats));
    });
  });
}

export interface Packed {
  /** What was built; it belongs to all test files, so nothing may be changed in it. */
  readonly folder: string;
  /** The files it is made of, from the project's top. */
  readonly files: readonly string[];
}

/** The part of that name. Test files run side by side: the first that asks builds, the others wait. */
export async function packed(part: string): Promise<Packed> {
  const place = join(process.env['HEMLEDGER_BUILT'] ?? '', part);
  const [folder, list, failure] = ['folder', 'files.json', 'failure'].map((name) => join(place, name)) as [
    string,
    string,
    string,
  ];
  // Whoever makes the folder builds.
  if (
    await mkdir(place).then(
      () => true,
      () => false,
    )
  )
    // prettier-ignore
    try {
      const files = await build(part, join(place, 'half'));
      await writeFile(list, JSON.stringify(files));
      await rename(join(place, 'half'), folder);
    } catch (error) {
      await writeFile(failure, String(error));
    }
  while (!existsSync(folder)) {
    if (existsSync(failure)) throw new Error(await readFile(failure, 'utf8'));
    await new Promise((resolve) => setTimeout(resolve, WAIT));
  }
  return { folder, files: JSON.parse(await readFile(list, 'utf8')) as string[] };
}
