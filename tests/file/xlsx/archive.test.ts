import { chmodSync, mkdirSync, readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { openArchive, replaceFile, zipped } from '../../../src/file/xlsx/archive';
import { Problem } from '../../../src/file/problem';
import { readWorkbook } from '../../../src/file/xlsx/workbook';
import { golden, scratch, smallBook } from '../book';

async function sentence(path: string): Promise<string> {
  try {
    readWorkbook(await openArchive(path));
  } catch (thrown) {
    if (thrown instanceof Problem) {
      expect(thrown.exit).toBe(3);
      return thrown.message;
    }
    throw thrown;
  }
  throw new Error(`${path} was read`);
}

function file(name: string, bytes: Uint8Array | string): string {
  const path = join(scratch(), name);
  writeFileSync(path, bytes);
  return path;
}

describe('a file that cannot be taken', () => {
  const whole = readFileSync(golden('floor.xlsx'));
  it.each<[string, () => string, RegExp]>([
    ['is not there', () => join(scratch(), 'none.xlsx'), /^“.*none\.xlsx” is not there\. Check the name/],
    ['is in a folder that is not there', () => join(golden('floor.xlsx'), 'in.xlsx'), /is not there/],
    ['is a folder', scratch, /is a folder\. Name a workbook file/],
    ['is empty', () => file('a.xlsx', ''), /is empty \(0 bytes\)/],
    ['has a password', () => golden('bad/password.xlsx'), /protected with a password.*take the password off/],
    [
      'is an old .xls',
      () => golden('bad/old.xls'),
      /is an old \.xls workbook\. Open it .* save it as \.xlsx/,
    ],
    [
      'is an old .xls renamed',
      () => file('new.xlsx', readFileSync(golden('bad/old.xls'))),
      /is an old \.xls workbook, whatever its name says/,
    ],
    ['is text', () => file('a.csv', 'a,b\n1,2\n'), /is a text file, not a workbook/],
    ['is text renamed', () => file('a.xlsx', 'a,b\n1,2\n'), /is not an \.xlsx workbook, though its name/],
    [
      'is another kind of zip',
      () => file('a.xlsx', zipSync({ 'a.txt': new Uint8Array(9) })),
      /is not an \.xlsx/,
    ],
    [
      'is a binary workbook',
      () => file('a.xlsb', zipSync({ 'xl/workbook.bin': new Uint8Array(9) })),
      /\.xlsb/,
    ],
    ['is cut short', () => file('a.xlsx', whole.subarray(0, whole.length / 2)), /is cut short or damaged/],
    [
      'lost its last byte of directory',
      () => file('a.xlsx', whole.subarray(0, whole.length - 23)),
      /cut short/,
    ],
    [
      'holds a damaged part',
      () => file('a.xlsx', smallBook('<row r="1"><c r="A1"></row>')),
      /part xl\/worksheets\/sheet1\.xml is damaged/,
    ],
    [
      'holds no workbook',
      () => file('a.xlsx', zipSync({ '[Content_Types].xml': new TextEncoder().encode('<Types/>') })),
      /holds no workbook/,
    ],
    [
      'is too large',
      () => {
        const path = file('a.xlsx', '');
        truncateSync(path, 300 * 1_048_576);
        return path;
      },
      /is too large: 300 MB, and 256 MB is the most taken/,
    ],
  ])('that %s is answered with one sentence', async (_, make, said) => {
    expect(await sentence(make())).toMatch(said);
  });

  it('that may not be read says so', async ({ skip }) => {
    const path = file('mine.xlsx', 'x');
    chmodSync(path, 0);
    try {
      readFileSync(path);
      skip('this user may read everything');
    } catch {
      expect(await sentence(path)).toMatch(/may not be read by you/);
    }
  });
});

describe('replacing a file', () => {
  it('that cannot be written leaves the old one and nothing beside it', async () => {
    const folder = scratch();
    const path = join(folder, 'book');
    mkdirSync(path);
    writeFileSync(join(path, 'in it'), 'old');
    await expect(replaceFile(path, new Uint8Array(3))).rejects.toThrow(/could not be written/);
    expect(readFileSync(join(path, 'in it'), 'utf8')).toBe('old');
  });

  it('writes through a link to the file it names', async () => {
    const folder = scratch();
    writeFileSync(join(folder, 'real.xlsx'), 'old');
    symlinkSync(join(folder, 'real.xlsx'), join(folder, 'link.xlsx'));
    await replaceFile(join(folder, 'link.xlsx'), new TextEncoder().encode('new'));
    expect(readFileSync(join(folder, 'real.xlsx'), 'utf8')).toBe('new');
  });
});

it('write(read(x)) = x: every part comes back byte for byte, in its order', async () => {
  const parts = await openArchive(golden('floor.xlsx'));
  const again = await openArchive(file('again.xlsx', zipped(parts)));
  expect([...again]).toEqual([...parts]);
});
