import { expect, it } from 'vitest';
import { progressOf } from '../../src/file/progress';
import { listening } from './book';

it('says nothing in the first second, then now and then', () => {
  const said: string[] = [];
  let time = 0;
  const tell = progressOf({ ...listening(), progress: (line) => said.push(line) }, () => time);
  for (const [at, done] of [
    [500, 100],
    [1_000, 2_000],
    [1_200, 2_400],
    [1_600, 3_000],
  ] as const) {
    time = at;
    tell(done, 40_000);
  }
  expect(said).toEqual(['… 2,000 of 40,000 formulas computed', '… 3,000 of 40,000 formulas computed']);
});
