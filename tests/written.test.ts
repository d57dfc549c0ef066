import { readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { placeOf, written } from '../src/make/written';

it.each(['functions/functions.json', 'src/pane/help.html', 'README.md'])(
  '%s is as the catalogue says (npm run make writes it)',
  async (path) => {
    const stands = await readFile(placeOf(path), 'utf8');
    expect(stands === (await written()).get(path)).toBe(true);
  },
);
