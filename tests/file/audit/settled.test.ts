import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { INCHES } from '../../../src/core/exact/unit';
import type { OrderFinding } from '../../../src/core/audit/finding';
import { findingCells, findingsBook } from '../../../src/file/audit/findings-book';
import { settledIn, settledKey } from '../../../src/file/audit/settled';
import { scratch } from '../book';

const found = (more: Partial<OrderFinding>): OrderFinding => ({
  row: 3,
  order: 'K7',
  customer: 'Ames',
  room: 'Den',
  code: 'figureDiffers',
  weight: 'check',
  sure: 'sure',
  column: 'widths',
  measure: 'count',
  found: 7,
  expected: 5,
  difference: 2,
  money: '',
  sentence: 'widths reads 7.',
  ...more,
});

const keyOf = (one: OrderFinding): string => settledKey(findingCells(one));

it('what was settled is found again beside the same finding, in whatever row it now stands', async () => {
  const path = join(scratch(), 'findings.xlsx');
  const settled = new Map([[keyOf(found({})), 'agreed with Ames, 3 March']]);
  writeFileSync(path, findingsBook([found({}), found({ room: 'Hall' })], [], [], { unit: INCHES, settled }));
  const again = await settledIn(path);
  expect([...again.values()]).toEqual(['agreed with Ames, 3 March']);
  expect(again.get(keyOf(found({ row: 9 })))).toBe('agreed with Ames, 3 March');
  expect(again.get(keyOf(found({ found: 8 })))).toBeUndefined();
});

it('rows that name no order are told apart by where they stand', () => {
  const bare = { order: '', customer: '', room: '' };
  expect(keyOf(found({ ...bare, row: 3 }))).not.toBe(keyOf(found({ ...bare, row: 4 })));
});

it('a workbook that is not there, or another one, has nothing settled', async () => {
  expect((await settledIn(join(scratch(), 'none.xlsx'))).size).toBe(0);
});
