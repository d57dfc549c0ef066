/** What is said elsewhere about the functions: Excel's metadata and its version, the help page, README's table. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { CATALOGUE } from '../../functions';
import { helpPage } from './help';
import { metadata } from './metadata';
import { withTable } from './readme';
import { manifestWith, versionWith, type Version } from './version';

export const placeOf = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

const read = (path: string): Promise<string> => readFile(placeOf(path), 'utf8');

/** Every written file, by its path, as the catalogue and package.json have it now. */
export async function written(): Promise<ReadonlyMap<string, string>> {
  const style = await resolveConfig(placeOf('package.json'));
  const tidy = async (path: string, text: string): Promise<[string, string]> => [
    path,
    await format(text, { ...style, filepath: path }),
  ];
  const { version } = JSON.parse(await read('package.json')) as { version: string };
  const functions = await tidy('functions/functions.json', JSON.stringify(metadata(CATALOGUE)));
  const kept = JSON.parse(await read('functions/version.json')) as Version;
  return new Map([
    functions,
    await tidy('functions/version.json', JSON.stringify(versionWith(kept, version, functions[1]) ?? kept)),
    ['manifest.xml', manifestWith(await read('manifest.xml'), version)],
    await tidy('src/pane/help.html', helpPage(CATALOGUE, version)),
    await tidy('README.md', withTable(await read('README.md'), CATALOGUE)),
  ]);
}
