/** A workbook file as its parts: opened with care, and replaced only when the new one is whole. */
import { randomBytes } from 'node:crypto';
import { access, constants, open, readFile, realpath, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { entriesOf, isSound, unpacked, zip, type Entry } from './zip';
import { Problem } from '../problem';

export type Parts = Map<string, Uint8Array>;

const MEGABYTE = 1_048_576;
/** Beyond these a workbook does not fit into memory as text. */
const MOST_FILE = 256 * MEGABYTE;
const MOST_PART = 400 * MEGABYTE;
const MOST_WHOLE = 1_500 * MEGABYTE;

const startsWith = (bytes: Uint8Array, ...signs: readonly number[]): boolean =>
  signs.every((sign, at) => bytes[at] === sign);

function codeOf(thrown: unknown): string {
  return thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
}

/** The owner file a spreadsheet program leaves beside a workbook while it is open. */
async function openElsewhere(path: string): Promise<boolean> {
  const name = basename(path);
  for (const owner of [`~$${name}`, `.~lock.${name}#`]) {
    try {
      await access(join(dirname(path), owner));
      return true;
    } catch {
      // not there
    }
  }
  return false;
}

async function bytesOf(path: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(path).then((seen) => {
      if (seen.isDirectory())
        throw new Problem(`“${path}” is a folder. Name a workbook file (.xlsx or .xlsm) in it.`);
      return seen;
    });
    if (size > MOST_FILE) throw tooLarge(path, size, MOST_FILE);
    return await readFile(path);
  } catch (thrown) {
    if (thrown instanceof Problem) throw thrown;
    switch (codeOf(thrown)) {
      case 'ENOENT':
      case 'ENOTDIR':
        throw new Problem(`“${path}” is not there. Check the name and the folder.`);
      case 'EACCES':
      case 'EPERM':
        throw new Problem(`“${path}” may not be read by you. Ask whoever owns it for the right to read.`);
      case 'EBUSY':
        throw locked(path);
      default:
        throw new Problem(`“${path}” could not be read (${codeOf(thrown) || String(thrown)}). Try again.`);
    }
  }
}

const locked = (path: string): Problem =>
  new Problem(`“${path}” is open in a spreadsheet program. Close it there and run this again.`);

const tooLarge = (path: string, size: number, most: number): Problem =>
  new Problem(
    `“${path}” is too large: ${Math.ceil(size / MEGABYTE)} MB, and ${most / MEGABYTE} MB is the most taken. Split the workbook.`,
  );

/** Says what a file that is no .xlsx is instead. */
function strange(path: string, bytes: Uint8Array): Problem {
  const extension = extname(path).toLowerCase();
  if (bytes.length === 0) return new Problem(`“${path}” is empty (0 bytes). Find a whole copy of it.`);
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1)) {
    // An encrypted workbook and an .xls of old are kept in the same kind of container.
    return Buffer.from(bytes).includes(Buffer.from('EncryptedPackage', 'utf16le'))
      ? new Problem(
          `“${path}” is protected with a password, so it cannot be read. Open it, take the password off (File, Info, Protect Workbook, Encrypt with Password, leave it empty), save it and try again.`,
        )
      : new Problem(
          `“${path}” is an old .xls workbook${extension === '.xls' ? '' : `, whatever its name says`}. Open it in a spreadsheet program, save it as .xlsx and try again.`,
        );
  }
  if (extension === '.csv' || extension === '.txt' || extension === '.tsv')
    return new Problem(
      `“${path}” is a text file, not a workbook. Open it in a spreadsheet program, save it as .xlsx and try again.`,
    );
  return new Problem(
    `“${path}” is not an .xlsx workbook, though its name may say so. Open it in a spreadsheet program, save it as .xlsx and try again.`,
  );
}

/** `isKept`: which parts stay packed. */
function unzip(path: string, bytes: Uint8Array, isKept: (entry: Entry) => boolean): Opened {
  let whole = 0;
  try {
    const parts: Parts = new Map();
    const packed = new Map<string, Entry>();
    let damaged: string | undefined;
    for (const entry of entriesOf(bytes)) {
      const { name, size } = entry;
      if (isKept(entry)) {
        packed.set(name, entry);
        continue;
      }
      whole += size;
      if (size > MOST_PART) throw tooLarge(`${path}: ${name}`, size, MOST_PART);
      if (whole > MOST_WHOLE) throw tooLarge(path, whole, MOST_WHOLE);
      const part = unpacked(entry);
      if (!isSound(entry, part)) damaged ??= name;
      parts.set(name, part);
    }
    if (damaged !== undefined)
      throw new Problem(
        `“${path}” is damaged: its part ${damaged} is not what was saved. Find a whole copy of it, or restore it from a backup.`,
      );
    return { parts, packed };
  } catch (thrown) {
    if (thrown instanceof Problem) throw thrown;
    throw doesNotUnpack(path);
  }
}

export const doesNotUnpack = (path: string): Problem =>
  new Problem(
    `“${path}” is cut short or damaged: it does not unpack. Find a whole copy of it, or restore it from a backup.`,
  );

export interface Opened {
  readonly parts: Parts;
  readonly packed: ReadonlyMap<string, Entry>;
}

export const openArchive = async (path: string): Promise<Parts> =>
  (await openPartly(path, () => false)).parts;

/** The same, with some parts left as they are packed. */
export async function openPartly(path: string, isKept: (entry: Entry) => boolean): Promise<Opened> {
  const bytes = await bytesOf(path);
  if (!startsWith(bytes, 0x50, 0x4b)) throw strange(path, bytes);
  const { parts, packed } = unzip(path, bytes, isKept);
  if (parts.has('xl/workbook.bin'))
    throw new Problem(
      `“${path}” is a binary workbook (.xlsb). Open it in a spreadsheet program, save it as .xlsx and try again.`,
    );
  if (!parts.has('[Content_Types].xml')) throw strange(path, bytes);
  return { parts, packed };
}

/** What the parts weigh zipped again. Folders and order stay as they were. */
export function zipped(parts: Parts): Uint8Array {
  return zip(parts);
}

/** Which state of a file stands there: another one after every saving. */
export async function stateOf(path: string): Promise<string> {
  const { ino, size, mtimeMs } = await stat(path);
  return `${ino} ${size} ${mtimeMs}`;
}

/** Fails early where the workbook could not be written at the end. */
export async function checkWritable(path: string): Promise<void> {
  const folder = dirname(path);
  try {
    await access(folder, constants.W_OK);
  } catch (thrown) {
    throw codeOf(thrown) === 'ENOENT'
      ? new Problem(`The folder “${folder}” is not there. Make it, or name another file after -o.`)
      : new Problem(`Nothing may be written into “${folder}”. Name another file after -o.`);
  }
  const there = await stat(path).catch(() => undefined);
  if (there?.isDirectory() === true)
    throw new Problem(`“${path}” is a folder. Name the file to be written after -o.`);
  if (there !== undefined && (await openElsewhere(path))) throw locked(path);
  if (there !== undefined) {
    await access(path, constants.W_OK).catch(() => {
      throw new Problem(`“${path}” is write-protected. Take that off, or name another file after -o.`);
    });
  }
}

/** Written beside and renamed: whoever opens the file sees the old one or the new one, never a part. */
export async function replaceFile(named: string, bytes: Uint8Array): Promise<void> {
  const path = await realpath(named).catch(() => named);
  const beside = join(dirname(path), `.${basename(path)}.${randomBytes(4).toString('hex')}.part`);
  try {
    const mode = await stat(path).then(
      (seen) => seen.mode & 0o777,
      () => 0o666,
    );
    const file = await open(beside, 'wx', mode);
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(beside, path);
  } catch (thrown) {
    await rm(beside, { force: true });
    if (codeOf(thrown) === 'EBUSY' || codeOf(thrown) === 'EPERM') throw locked(path);
    if (codeOf(thrown) === 'ENOSPC')
      throw new Problem(`There is no room left to write “${path}”. The old file is as it was.`);
    throw new Problem(`“${path}” could not be written (${codeOf(thrown) || String(thrown)}).`);
  }
}
