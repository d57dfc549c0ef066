import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FILE } from '../../src/make/licences.mjs';
import { filesIn, packageInto, zipOf } from '../../src/make/package';
import { placeOf } from '../../src/make/written';
import { packed } from './pack';

const HERE = 'https://example.org/drapery';
/** The manifest names the host without its path as well. */
const plainly = (text: string): string => text.replace(/<AppDomain>.*?<\/AppDomain>/, '');
const sha = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

describe('npm run package', () => {
  let folder = '';
  let zip: Uint8Array;
  const read = (file: string): string => readFileSync(join(folder, file), 'utf8');
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'hemledger-'));
    zip = await packageInto(folder, HERE);
  }, 600_000);
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('gives the same bytes wherever it is built, but for its address, and the same zip of them', async () => {
    const compared: string[] = [];
    for (const part of ['functions', 'pane', 'help']) {
      const other = (await packed(part)).folder;
      for (const file of filesIn(other).filter((name) => name !== FILE)) {
        const bytes = readFileSync(join(other, file));
        const moved = /^(manifest\.xml|functions\.json)$/.test(file);
        const there = moved ? bytes.toString().replaceAll('https://localhost:3000', HERE) : bytes;
        const here = readFileSync(join(folder, file));
        if (!moved) expect([file, sha(here)]).toEqual([file, sha(bytes)]);
        else expect(plainly(here.toString())).toBe(plainly(there.toString()));
        compared.push(file);
      }
    }
    expect([...new Set([...compared, FILE])].sort()).toEqual(filesIn(folder));
    expect(sha(zipOf(folder))).toBe(sha(zip));
    expect(zip.length).toBeGreaterThan(1_000_000);
  });

  it('has every file that its manifest names, at its place', () => {
    const manifest = read('manifest.xml');
    const named = [...manifest.matchAll(/DefaultValue="(https:[^"]*)"/g)].map(([, address = '']) => address);
    expect(named.length).toBeGreaterThan(8);
    for (const address of named) {
      expect(address.startsWith(`${HERE}/`), address).toBe(true);
      expect(existsSync(join(folder, address.slice(HERE.length))), address).toBe(true);
    }
    expect(manifest).toContain('<AppDomain>https://example.org</AppDomain>');
    expect(manifest + read('functions.json')).not.toContain('localhost');
    expect(read('functions.json')).toContain(`"${HERE}/help.html#YARDAGE"`);
  });

  it.each(['pane.html', 'functions.html', 'help.html', 'installing.html'])(
    'has what %s asks for beside it, at no address of its own',
    (page) => {
      const asked = [...read(page).matchAll(/(?:src|href)="?([^"\s>]+)/g)].map(([, address = '']) => address);
      const ours = asked.filter(
        (address) => !/^(https:\/\/appsforoffice\.microsoft\.com\/|data:|#)/.test(address),
      );
      expect(ours.length).toBeGreaterThan(0);
      for (const address of ours)
        expect(existsSync(join(folder, address.replace(/[?#].*/, ''))), address).toBe(true);
    },
  );

  it('bears the licence of everything in it, in full, as the lockfile has it', () => {
    const { packages } = JSON.parse(readFileSync(placeOf('package-lock.json'), 'utf8')) as {
      packages: Record<string, { version: string; license?: string }>;
    };
    const text = read(FILE);
    const parts = text.split(`${'='.repeat(72)}\n`).slice(1);
    const named = parts.map((part) => /^(\S+) (\S+) \((.+)\)\n/.exec(part)?.slice(1) ?? []);
    for (const [name = '', version, licence] of named) {
      const locked = packages[`node_modules/${name}`];
      expect([name, version, licence]).toEqual([name, locked?.version, locked?.license]);
    }
    expect(named.map(([name]) => name)).toEqual(expect.arrayContaining(['decimal.js', 'highs', 'preact']));
    for (const part of parts) expect(part.length).toBeGreaterThan(700);
    expect(text).not.toMatch(/GNU (LESSER |AFFERO )?GENERAL PUBLIC/i);
    expect(read('LICENSE.txt')).toBe(readFileSync(placeOf('LICENSE'), 'utf8'));
  });

  const gzipped = (files: readonly string[]): number =>
    files.reduce((all, file) => all + gzipSync(readFileSync(join(folder, file)), { level: 9 }).length, 0);

  // The aims are 85 kB for the functions and 250 kB for what a pane that opens waits for; its parts come later.
  it('keeps the functions below 128 kB, the pane below 250 kB and with all its parts below 370 kB, gzipped', () => {
    expect(gzipped(['functions.js'])).toBeLessThan(128_000);
    const others = /^(functions|help)\./;
    const pane = readdirSync(folder).filter((file) => /\.(js|css)$/.test(file) && !others.test(file));
    expect(pane).toContain('pane.js');
    expect(gzipped(['pane.js', 'pane.css'])).toBeLessThan(250_000);
    expect(gzipped(pane)).toBeLessThan(370_000);
  });

  it('shows the pictures, each of at most 150 kB', () => {
    const pictures = readdirSync(join(folder, 'pictures'));
    expect(pictures).toContain('pane-beside-workbook.png');
    expect(readFileSync(placeOf('README.md'), 'utf8')).toContain(
      '(src/pane/pictures/pane-beside-workbook.png)',
    );
    for (const picture of pictures) {
      expect(readFileSync(join(folder, 'pictures', picture)).length, picture).toBeLessThan(150_000);
      expect(read('installing.html')).toContain(`pictures/${picture}`);
    }
  });
});
