/** A file is replaced whole or not at all: each step of it fails once, with a full disk and with a dead one. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
  return { ...real, open, rename, default: { ...real, open, rename } };
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
