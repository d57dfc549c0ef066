import { spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';

const SCRIPT = fileURLToPath(new URL('../../src/make/ready.mjs', import.meta.url));
const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

interface Clone {
  readonly locked: Record<string, object>;
  readonly installed?: Record<string, object>;
  readonly npmEnds?: number;
  readonly words?: readonly string[];
}

/** A bare clone with a lockfile and an npm that only says how it was called. */
function runIn({ locked, installed, npmEnds = 0, words = [] }: Clone) {
  const top = mkdtempSync(join(tmpdir(), 'hemledger-'));
  folders.push(top);
  mkdirSync(join(top, 'src/make'), { recursive: true });
  copyFileSync(SCRIPT, join(top, 'src/make/ready.mjs'));
  writeFileSync(join(top, 'package-lock.json'), JSON.stringify({ packages: { '': {}, ...locked } }));
  if (installed !== undefined) {
    mkdirSync(join(top, 'node_modules'));
    writeFileSync(join(top, 'node_modules/.package-lock.json'), JSON.stringify({ packages: installed }));
  }
  const npm = join(top, 'bin/npm');
  mkdirSync(join(top, 'bin'));
  writeFileSync(npm, `#!/bin/sh\necho "npm $*"\nexit ${npmEnds}\n`);
  chmodSync(npm, 0o755);
  const path = [join(top, 'bin'), dirname(process.execPath), process.env['PATH']].join(delimiter);
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(top, 'src/make/ready.mjs'), ...words],
    {
      encoding: 'utf8',
      env: { ...process.env, PATH: path },
    },
  );
  return { status, stdout, stderr };
}

const cloth = { 'node_modules/cloth': { version: '1.0.0' } };

describe('before every command', () => {
  it('what is missing is installed, and one line says so', () => {
    const { status, stdout, stderr } = runIn({ locked: cloth });
    expect(stderr).toBe(
      'Installing what Hemledger needs, once (npm ci) …\nnpm ci --ignore-scripts --no-progress --loglevel=error\n',
    );
    expect(stdout).toBe('');
    expect(status).toBe(0);
  });

  it('an older installation than the lockfile asks for is renewed', () => {
    const older = { 'node_modules/cloth': { version: '0.9.0' } };
    expect(runIn({ locked: cloth, installed: older }).stderr).toContain('npm ci');
  });

  it('a whole installation is left alone, without a word', () => {
    const other = { 'node_modules/other-platform': { version: '2.0.0', optional: true } };
    expect(runIn({ locked: { ...cloth, ...other }, installed: cloth })).toEqual({
      status: 0,
      stdout: '',
      stderr: '',
    });
  });

  it('the command alone asks for less than what builds and checks it', () => {
    const locked = { ...cloth, 'node_modules/loom': { version: '3.0.0', dev: true } };
    expect(runIn({ locked, words: ['run'] }).stderr).toContain('npm ci --omit=dev --ignore-scripts ');
    expect(runIn({ locked, installed: cloth, words: ['run'] }).stderr).toBe('');
    expect(runIn({ locked, installed: cloth }).stderr).toContain('npm ci --ignore-scripts ');
  });

  it('a failed installation stops the command with a sentence', () => {
    const { status, stderr } = runIn({ locked: cloth, npmEnds: 3 });
    expect(status).toBe(3);
    expect(stderr).toContain('The installation failed. Check the connection, then run the command again.');
  });
});
