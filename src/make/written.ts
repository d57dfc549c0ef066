/** What is said elsewhere about the functions: Excel's metadata, the help page, README's table. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { CATALOGUE } from '../../functions';
import { helpPage } from './help';
import { metadata } from './metadata';
import { withTable } from './readme';

export const placeOf = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** Every written file, by its path, as the catalogue has it now. */
export async function written(): Promise<ReadonlyMap<string, string>> {
  const style = await resolveConfig(placeOf('package.json'));
  const tidy = async (path: string, text: string): Promise<[string, string]> => [
    path,
    await format(text, { ...style, filepath: path }),
  ];
  return new Map([
    await tidy('functions/functions.json', JSON.stringify(metadata(CATALOGUE))),
    await tidy('src/pane/help.html', helpPage(CATALOGUE)),
    await tidy('README.md', withTable(await readFile(placeOf('README.md'), 'utf8'), CATALOGUE)),
  ]);
}
