/** Papers as PDF, by the office suite where one is installed. */
import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { replaceFile } from '../xlsx/archive';

const run = promisify(execFile);
const SECONDS = 180;

const isNotThere = (thrown: unknown): boolean =>
  thrown instanceof Error && 'code' in thrown && thrown.code === 'ENOENT';

/**
 * Turns workbooks into PDF files, all in one run; false where no office suite is installed. Each is
 * given as its bytes and the path of its PDF.
 */
export async function writePdfs(
  books: readonly { readonly bytes: Uint8Array; readonly to: string }[],
): Promise<boolean> {
  const folder = await mkdtemp(join(tmpdir(), 'hem-papers-'));
  try {
    const named = books.map((book, at) => ({ ...book, from: join(folder, `paper${at + 1}.xlsx`) }));
    for (const { bytes, from } of named) await writeFile(from, bytes);
    // A profile of its own, so that an office suite that is open is left alone.
    const profile = pathToFileURL(join(folder, 'profile')).href;
    await run(
      'soffice',
      [
        `-env:UserInstallation=${profile}`,
        '--headless',
        '--convert-to',
        'pdf',
        '--outdir',
        folder,
        ...named.map(({ from }) => from),
      ],
      { timeout: SECONDS * 1000 },
    );
    for (const { from, to } of named)
      await replaceFile(to, new Uint8Array(await readFile(from.replace(/\.xlsx$/, '.pdf'))));
    return true;
  } catch (thrown) {
    if (isNotThere(thrown)) return false;
    throw thrown;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
