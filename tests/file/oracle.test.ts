/** Ordinary formulas computed by us and, as a second opinion, by LibreOffice where it is installed. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { hem } from '../../src/file/hem';
import { formulaAt, golden, listening, opened, scratch, shown } from './book';

/** Asks for every formula to be computed on opening; without it the cached values are believed. */
const SETTINGS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item></oor:items>`;

/** Where the two differ and a worksheet's documented answer is ours; from memory of Excel's documentation. */
const OTHERWISE: Readonly<Record<string, string>> = {
  '"a"&1&TRUE': 'TRUE joins text as the word TRUE',
  'SUM(Qty,1,"2")': 'a number written as text counts where it stands in the call itself',
  'SUM(Data!B:B)': 'a TRUE in a cell is not summed',
  'SQRT(-1)': '#NUM!; LibreOffice stores its own error, which it writes as #VALUE!',
};
it('426 of 429 ordinary formulas give what LibreOffice gives', async ({ skip }) => {
  if (spawnSync('soffice', ['--version']).status !== 0) skip('soffice is not installed here');
  const folder = scratch();
  const mine = join(folder, 'mine.xlsx');
  const io = listening();
  expect(await hem(['fill', golden('natives.xlsx'), '-o', mine], io)).toBe(1);
  // What Excel makes of these to the last digit is not sure, so they are not computed.
  const unsure = [
    'Sums!B155 could not be computed: it looks for a rate that Excel finds only nearly.',
    'Sums!B156 could not be computed: it looks for a rate that Excel finds only nearly.',
    'Sums!B187 could not be computed: it comes so near to nothing that only rounding is left.',
  ];
  expect(io.complained).toEqual(
    unsure.map((sentence) => `${sentence} It shows no value until a spreadsheet program computes it.`),
  );
  mkdirSync(join(folder, 'profile', 'user'), { recursive: true });
  writeFileSync(join(folder, 'profile', 'user', 'registrymodifications.xcu'), SETTINGS);
  execFileSync(
    'soffice',
    [
      `-env:UserInstallation=file://${folder}/profile`,
      '--headless',
      '--convert-to',
      'xlsx:Calc MS Excel 2007 XML',
      '--outdir',
      folder,
      golden('natives.xlsx'),
    ],
    { stdio: 'ignore' },
  );
  const theirs = shown(await opened(join(folder, 'natives.xlsx')));
  const file = await opened(mine);
  const differing: unknown[] = [];
  let compared = 0;
  for (const [cell, value] of shown(file)) {
    const formula = formulaAt(file, cell)?.replaceAll('_xlfn.', '');
    if (formula === undefined || value === null) continue;
    const other = theirs.get(cell) ?? '';
    compared += 1;
    const same =
      typeof value === 'number' && typeof other === 'number'
        ? Math.abs(value - other) <= 1e-9 * Math.max(1, Math.abs(value))
        : value === other;
    if (!same && OTHERWISE[formula] === undefined) differing.push({ cell, formula, value, other });
  }
  expect(differing).toEqual([]);
  expect(compared).toBe(426);
}, 180_000);
