import { expect, it } from 'vitest';
import { HeldLines } from '../../../src/file/audit/held-lines';

it.each([
  ['in memory', 1_000],
  ['in a file', 3],
])('lines kept %s are told as they came, once', async (_, most) => {
  const held = new HeldLines(most);
  const lines = ['one', 'two\nhalves', '', 'bouclé', ...Array.from({ length: 50 }, (_, at) => `row ${at}`)];
  for (const line of lines) held.hold(line);
  const told: string[] = [];
  await held.tell((line) => void told.push(line));
  expect(told.join('\n')).toBe(lines.join('\n'));
  await held.tell(() => told.push('again'));
  expect(told).not.toContain('again');
});

it('lines that are forgotten are never told', async () => {
  const held = new HeldLines(0);
  held.hold('half an answer');
  held.forget();
  const told: string[] = [];
  await held.tell((line) => void told.push(line));
  expect(told).toEqual([]);
});
