/**
 * `npm run package`: the add-in as a folder to put on any static https host, and the same as a zip.
 * HEMLEDGER_ORIGIN, or a word after the command, says where its files will be served; sub-paths are fine.
 * The same sources give the same bytes.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { zipSync } from 'fflate';
import webpack, { type Configuration } from 'webpack';
import { place } from './served.mjs';
import { placeOf } from './written';

/** A zip keeps a time for each file; this one is the earliest it can hold, the same on every machine. */
const NO_TIME = new Date(1980, 0, 1);

export function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/** Builds the add-in for that place into the folder, and gives the zip of it. */
export async function packageInto(folder: string, where: string): Promise<Uint8Array> {
  const { addin } = (await import(pathToFileURL(placeOf('webpack.config.mjs')).href)) as {
    addin: (where: string) => readonly Configuration[];
  };
  rmSync(folder, { recursive: true, force: true });
  const compiler = webpack(
    addin(where).map((part): Configuration => {
      return { ...part, mode: 'production', output: { ...part.output, path: folder } };
    }),
  );
  await new Promise<void>((done, failed) => {
    compiler.run((error, stats) => {
      compiler.close(() => undefined);
      if (error !== null || stats === undefined) failed(error ?? new Error('webpack gave no account'));
      else if (stats.hasErrors()) failed(new Error(stats.toString('errors-only')));
      else done();
    });
  });
  return zipOf(folder);
}

export function zipOf(folder: string): Uint8Array {
  const files = filesIn(folder).map(
    (file) => [file, new Uint8Array(readFileSync(join(folder, file)))] as const,
  );
  return zipSync(Object.fromEntries(files), { level: 9, mtime: NO_TIME });
}

export async function main(asked: string | undefined): Promise<void> {
  if (asked === undefined)
    throw new Error(
      'Say where the files will be served: npm run package -- https://addins.example.org/drapery (or HEMLEDGER_ORIGIN=https://…).',
    );
  const where = place(asked);
  const { version } = JSON.parse(readFileSync(placeOf('package.json'), 'utf8')) as { version: string };
  const folder = placeOf(`out/hemledger-${version}`);
  mkdirSync(placeOf('out'), { recursive: true });
  const zip = await packageInto(folder, where);
  writeFileSync(`${folder}.zip`, zip);
  console.log(`Hemledger ${version} for ${where} stands in\n  ${folder}\n  ${folder}.zip`);
  console.log(`SHA-256 of the zip: ${createHash('sha256').update(zip).digest('hex')}`);
  console.log(
    `Put the folder’s files at ${where}/, then give manifest.xml to Excel: installing.html says how.`,
  );
}
