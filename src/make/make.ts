/** Writes the files that follow from the catalogue: `npm run make`. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { placeOf, written } from './written';

for (const [path, text] of await written()) {
  const place = placeOf(path);
  const stands = existsSync(place) && readFileSync(place, 'utf8') === text;
  if (!stands) writeFileSync(place, text);
  console.log(`${path}: ${stands ? 'is as the catalogue says' : 'written'}`);
}
