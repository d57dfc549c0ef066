/** The one browser of a run, for every test file that needs one; what each opens in it is its own. */
import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright-core';

export const CHROMIUM = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
export const thereIsABrowser = existsSync(CHROMIUM);

/** A connection of its own: closing it closes what was opened through it, and leaves the browser to the others. */
export async function connected(): Promise<Browser> {
  const answer = await fetch(process.env['HEMLEDGER_BROWSER'] ?? '');
  const endpoint = await answer.text();
  if (!answer.ok) throw new Error(`The browser could not be launched: ${endpoint}`);
  return chromium.connect(endpoint);
}
