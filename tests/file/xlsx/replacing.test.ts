/** A file is replaced whole or not at all: each step of it fails once, with a full disk and with a dead one. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { hem } from '../../../src/file/hem';
import { replaceFile } from '../../../src/file/xlsx/archive';
import { listening, smallBook } from '../book';

const STEPS = ['open', 'writeFile', 'sync', 'close', 'rename'] as const;
type Step = (typeof STEPS)[number];
const fault = vi.hoisted(() => ({
  step: undefined as string | undefined,
  code: 'ENOSPC',
  /** Done once, before the step that it names. */
  before: {} as Record<string, (() => void) | undefined>,
}));

vi.mock(import('node:fs/promises'), async (original) => {
  const real = await original();
  const now = (step: Step): void => {
    fault.before[step]?.();
    if (fault.step === step) throw Object.assign(new Error(fault.code), { code: fault.code });
  };
  const open: typeof real.open = async (...given) => {
    now('open');
    const file = await real.open(...given);
    for (const step of ['writeFile', 'sync', 'close'] as const) {
      const done = file[step].bind(file) as (...args: unknown[]) => Promise<void>;
      Object.assign(file, {
        [step]: async (...args: unknown[]) => {
          // What was opened is closed though closing fails, as the system does.
          if (step === 'close') await done();
          now(step);
          if (step !== 'close') await done(...args);
        },
      });
    }
    return file;
  };
  const rename: typeof real.rename = async (...given) => {
    now('rename');
    await real.rename(...given);
  };
  const readFile = (async (...given: Parameters<typeof real.readFile>) => {
    const found = await real.readFile(...given);
    fault.before['read']?.();
    return found;
  }) as typeof real.readFile;
  return { ...real, open, rename, readFile, default: { ...real, open, rename, readFile } };
});

let folder: string;
beforeEach(() => {
  Object.assign(fault, { step: undefined, code: 'ENOSPC', before: {} });
  folder = mkdtempSync(join(tmpdir(), 'hem-test-'));
  writeFileSync(join(folder, 'old.xlsx'), 'old');
});
const there = (): string[] => readdirSync(folder);

describe.each(STEPS)('where %s fails', (step) => {
  it.each([
    ['ENOSPC', /^There is no room left to write “.*old\.xlsx”\. The old file is as it was\.$/],
    ['EIO', /^“.*old\.xlsx” could not be written \(EIO\)\.$/],
    ['EBUSY', /^“.*old\.xlsx” is open in a spreadsheet program\. Close it there/],
  ])(
    'with %s, the old file stays, nothing stands beside it, and the sentence is true',
    async (code, says) => {
      Object.assign(fault, { step, code });
      await expect(replaceFile(join(folder, 'old.xlsx'), new Uint8Array(3))).rejects.toThrow(says);
      expect(readFileSync(join(folder, 'old.xlsx'), 'utf8')).toBe('old');
      expect(there()).toEqual(['old.xlsx']);
    },
  );
});

it('until the last step whoever opens the file finds the old one, whole', async () => {
  const seen: string[] = [];
  for (const step of STEPS)
    fault.before[step] = () => seen.push(readFileSync(join(folder, 'old.xlsx'), 'utf8'));
  await replaceFile(join(folder, 'old.xlsx'), new TextEncoder().encode('new'));
  expect(seen).toEqual(STEPS.map(() => 'old'));
  expect([readFileSync(join(folder, 'old.xlsx'), 'utf8'), there()]).toEqual(['new', ['old.xlsx']]);
});

describe('a workbook filled into itself', () => {
  const HEM = '<row r="1"><c r="A1"><f>_xldudf_HEM_MEASURED(5)</f></c></row>';
  const path = (): string => join(folder, 'old.xlsx');

  it('that was saved by another program meanwhile is not written over', async () => {
    writeFileSync(path(), smallBook(HEM));
    const io = listening();
    const progress = (): void => writeFileSync(path(), smallBook(HEM.replace('5', '77')));
    expect(await hem(['fill', path(), '-o', path()], { ...io, progress })).toBe(3);
    expect(io.complained.join()).toMatch(
      /was saved by another program while it was filled, and nothing was written\. Run this again\.$/,
    );
    expect(readFileSync(path()).equals(Buffer.from(smallBook(HEM.replace('5', '77'))))).toBe(true);
  });

  it('that was saved by another program while it was read is not taken for either', async () => {
    writeFileSync(path(), smallBook(HEM));
    const io = listening();
    const other = smallBook(HEM.replace('5', '777'));
    fault.before['read'] = () => writeFileSync(path(), other);
    expect(await hem(['fill', path(), '-o', join(folder, 'new.xlsx')], io)).toBe(3);
    expect(io.complained.join()).toMatch(/was saved by another program while it was read, and nothing was/);
    expect(there()).toEqual(['old.xlsx']);
  });

  it('that was opened in a spreadsheet program meanwhile is not written over', async () => {
    writeFileSync(path(), smallBook(HEM));
    const old = readFileSync(path());
    const io = listening();
    const progress = (): void => writeFileSync(join(folder, '~$old.xlsx'), 'x');
    expect(await hem(['fill', path(), '-o', path()], { ...io, progress })).toBe(3);
    expect(io.complained.join()).toMatch(/is open in a spreadsheet program\. Close it there/);
    expect(readFileSync(path()).equals(old)).toBe(true);
  });
});

describe('a process that is killed', () => {
  /** In the process itself, for no signal from here would come at the right step. */
  const dying = (step: Step): string =>
    `data:text/javascript,${encodeURIComponent(`
      import real from 'node:fs/promises';
      import { syncBuiltinESMExports } from 'node:module';
      const die = () => process.kill(process.pid, 'SIGKILL');
      const { open, rename } = real;
      real.rename = async (...given) => { if ('${step}' === 'rename') die(); return rename(...given); };
      real.open = async (...given) => {
        if ('${step}' === 'open') die();
        const file = await open(...given);
        if (!['open', 'rename'].includes('${step}')) file['${step}'] = async () => die();
        return file;
      };
      syncBuiltinESMExports();`)}`;

  it.each(STEPS)('at %s leaves the old file, which then is filled as ever', async (step) => {
    const path = join(folder, 'old.xlsx');
    writeFileSync(path, smallBook('<row r="1"><c r="A1"><f>_xldudf_HEM_MEASURED(5)</f></c></row>'));
    const old = readFileSync(path);
    const command = fileURLToPath(new URL('../../../src/make/hem.mjs', import.meta.url));
    const { signal } = spawnSync(process.execPath, [
      '--import',
      dying(step),
      command,
      'fill',
      path,
      '-o',
      path,
    ]);
    expect(signal).toBe('SIGKILL');
    expect(readFileSync(path).equals(old)).toBe(true);
    expect(await hem(['fill', path, '-o', path], listening())).toBe(0);
    expect(readFileSync(path).equals(old)).toBe(false);
  });
});
