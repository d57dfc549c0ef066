/** Writes the files that follow from the catalogue and the version: `npm run make`. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { versionWith, type Version } from './version';
import { placeOf, written } from './written';

for (const [path, text] of await written()) {
  const place = placeOf(path);
  const stands = existsSync(place) && readFileSync(place, 'utf8') === text;
  if (!stands) writeFileSync(place, text);
  console.log(`${path}: ${stands ? 'is as the catalogue says' : 'written'}`);
}

const read = (path: string): string => readFileSync(placeOf(path), 'utf8');
const kept = JSON.parse(read('functions/version.json')) as Version;
const { version } = JSON.parse(read('package.json')) as { version: string };
if (versionWith(kept, version, read('functions/functions.json')) === undefined) {
  console.error(
    `functions.json has changed since version ${kept.version}. Raise the version (npm version minor --no-git-tag-version), and run npm run make again.`,
  );
  process.exitCode = 1;
}
