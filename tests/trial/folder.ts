/** Before every run: a folder where the first test that needs the trial workbook builds it; gone afterwards. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export async function setup(): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'hemledger-trial-'));
  process.env['HEMLEDGER_TRIAL'] = folder;
  return () => rm(folder, { recursive: true, force: true });
}
