import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { OrderFinding } from '../../../src/core/audit/finding';
import { told } from '../../../src/core/audit/finding';
import { finding } from '../../../src/core/cell/answer';
import { CENTIMETRES, INCHES, type Unit } from '../../../src/core/exact/unit';
import { findingCells, findingsBook } from '../../../src/file/audit/findings-book';
import { settledIn, settledKey } from '../../../src/file/audit/settled';
import { openArchive } from '../../../src/file/xlsx/archive';
import { partText } from '../../../src/file/xlsx/workbook';
import { attribute, tagsNamed } from '../../../src/file/xlsx/xml';
import { scratch } from '../book';

const ABOUT = finding('outOfRange', 'rod width', 'rod width', '1 in', '2 in');
const off = (measure: OrderFinding['measure'], found: number, expected: number): OrderFinding =>
  told(3, ABOUT, { ...(measure !== '' && { measure }), found, expected, money: 12 });

const LENGTH = off('length', 84.375, 83.328125);
const COMPUTED = off('length', 41.33, 41.3333333333);
const YARDS = off('yardage', 18.625, 18.1);

/** The number formats of a finding's found, expected, difference and money. */
async function formats(one: OrderFinding, unit: Unit): Promise<string[]> {
  const path = join(scratch(), 'findings.xlsx');
  writeFileSync(path, findingsBook([one], [], [], { unit }));
  const parts = await openArchive(path);
  const styles = partText(parts, 'xl/styles.xml') as string;
  const codes = new Map(
    tagsNamed(styles, 'styles', 'numFmt').map((tag) => [
      attribute(tag, 'numFmtId'),
      attribute(tag, 'formatCode'),
    ]),
  );
  const [, cells = ''] = styles.split('<cellXfs');
  const ids = [...cells.matchAll(/<xf(?: numFmtId="(\d+)")?/g)].map(([, id]) => id ?? '0');
  const sheet = partText(parts, 'xl/worksheets/sheet1.xml') as string;
  return ['H2', 'I2', 'J2', 'K2'].map((at) => {
    const style = new RegExp(`<c r="${at}" s="(\\d+)"><v>`).exec(sheet)?.[1];
    const id = style === undefined ? 'none' : ids[Number(style)];
    return codes.get(id) ?? `format ${String(id)}`;
  });
}

it('lengths in inches are shown as a tape reads them, yardages in eighths, money to the cent', async () => {
  expect(await formats(LENGTH, INCHES)).toEqual(['# ??/??', '# ??/??', '# ??/??', 'format 4']);
  expect(await formats(YARDS, INCHES)).toEqual(['# ?/?', 'format 0', 'format 0', 'format 4']);
});

it('a length that no tape reads is shown to the nearest sixty-fourth', async () => {
  expect((await formats(COMPUTED, INCHES)).slice(0, 2)).toEqual(['# ??/64', '# ??/64']);
});

it('centimetres, counts and what nobody knows stay plain figures', async () => {
  const plain = ['format 0', 'format 0', 'format 0', 'format 4'];
  expect(await formats(LENGTH, CENTIMETRES)).toEqual(plain);
  expect(await formats(off('count', 7, 5), INCHES)).toEqual(plain);
  expect(await formats(off('', 7.5, 5), INCHES)).toEqual(plain);
});

it('what was settled is found again beside a length', async () => {
  const path = join(scratch(), 'findings.xlsx');
  const key = settledKey(findingCells(LENGTH));
  writeFileSync(path, findingsBook([LENGTH], [], [], { unit: INCHES, settled: new Map([[key, 'recut']]) }));
  expect((await settledIn(path)).get(key)).toBe('recut');
});
