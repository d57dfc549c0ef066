/** Builds a part of the add-in with the project's own webpack configuration, as `npm run build` does. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import webpack, { type Configuration, type Stats, type StatsModule } from 'webpack';

const CONFIGURATION = new URL('../../webpack.config.mjs', import.meta.url).href;
const TOP = fileURLToPath(new URL('../../', import.meta.url));

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

/** Builds the configuration of that name, hands its folder over and clears it away. */
export async function packed<T>(
  part: string,
  use: (folder: string, files: readonly string[]) => Promise<T>,
): Promise<T> {
  const { default: configurations } = (await import(/* @vite-ignore */ CONFIGURATION)) as {
    default: Configuration[];
  };
  const configuration = configurations.find(({ name }) => name === part);
  if (configuration === undefined) throw new Error(`webpack.config.mjs has no part named ${part}`);
  const path = await mkdtemp(join(tmpdir(), 'hemledger-'));
  try {
    const compiler = webpack({
      ...configuration,
      mode: 'production',
      output: { ...configuration.output, path },
    });
    const files = await new Promise<readonly string[]>((done, failed) => {
      compiler.run((error, stats) => {
        compiler.close(() => undefined);
        if (stats === undefined) failed(error ?? new Error('webpack gave no account'));
        else if (stats.hasErrors()) failed(new Error(stats.toString('errors-only')));
        else done(filesOf(stats));
      });
    });
    return await use(path, files);
  } finally {
    await rm(path, { recursive: true });
  }
}
