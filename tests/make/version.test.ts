import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { manifestWith, versionWith, type Version } from '../../src/make/version';
import { placeOf } from '../../src/make/written';

const read = (path: string): string => readFileSync(placeOf(path), 'utf8');
const json = (path: string): Record<string, unknown> => JSON.parse(read(path)) as Record<string, unknown>;
const { version } = json('package.json') as unknown as Version;
const sha = (text: string): string => createHash('sha256').update(text).digest('hex');

it('the package, its lockfile, the manifest and the help page bear one version', () => {
  expect(version).toMatch(/^\d+\.\d+\.\d+$/);
  const locked = json('package-lock.json') as { version: string; packages: Record<string, Version> };
  expect([locked.version, locked.packages['']?.version]).toEqual([version, version]);
  expect(/<Version>(.*)<\/Version>/.exec(read('manifest.xml'))?.[1]).toBe(`${version}.0`);
  expect(read('src/pane/help.html')).toContain(`This is version ${version}.`);
});

it('functions.json is the one this version was made with: a changed one needs a higher version', () => {
  const kept = json('functions/version.json') as unknown as Version;
  expect(kept.version, 'npm run make writes functions/version.json').toBe(version);
  expect(
    kept.functions,
    'functions.json changed: npm version minor --no-git-tag-version && npm run make',
  ).toBe(sha(read('functions/functions.json')));
});

it('a changed functions.json is taken under a higher version only', () => {
  const kept = { version: '1.9.2', functions: sha('old') };
  expect(versionWith(kept, '1.9.2', 'old')).toEqual(kept);
  expect(versionWith(kept, '1.9.2', 'new')).toBeUndefined();
  expect(versionWith(kept, '1.8.9', 'new')).toBeUndefined();
  for (const higher of ['1.9.3', '1.10.0', '2.0.0'])
    expect(versionWith(kept, higher, 'new')).toEqual({ version: higher, functions: sha('new') });
});

it('a manifest without a version is no manifest', () => {
  expect(() => manifestWith('<OfficeApp></OfficeApp>', '1.0.0')).toThrow('has lost its element Version');
});
