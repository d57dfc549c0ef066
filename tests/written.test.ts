import { readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { placeOf, written } from '../src/make/written';

const asTheCatalogueSays = written();

it.each([
  'functions/functions.json',
  'functions/version.json',
  'manifest.xml',
  'src/pane/help.html',
  'README.md',
])('%s is as the catalogue says (npm run make writes it)', async (path) => {
  const stands = await readFile(placeOf(path), 'utf8');
  expect(stands === (await asTheCatalogueSays).get(path)).toBe(true);
});

it('DEVELOPERS.md gives a reason for every dependency, and for none that is gone', async () => {
  const text = await readFile(placeOf('DEVELOPERS.md'), 'utf8');
  const reasons = text.slice(text.indexOf('## Dependencies'));
  const named = [...reasons.matchAll(/`((?:@[\w-]+\/)?[\w.-]+)`/g)].map((match) => match[1]);
  const { dependencies, devDependencies } = JSON.parse(
    await readFile(placeOf('package.json'), 'utf8'),
  ) as Record<'dependencies' | 'devDependencies', Record<string, string>>;
  const asked = Object.keys({ ...dependencies, ...devDependencies });
  expect(named.filter((one) => one !== undefined && !one.endsWith('.json')).sort()).toEqual(asked.sort());
});
