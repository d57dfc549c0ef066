/** Jobs worked by hand, from the measure to the price: a new one is a new file beside this. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Check, GivenWords } from '../checks/check';
import { expectMet } from '../checks/met';

interface Worked extends Check {
  /** The figure's name; later formulas use the figure found by hand under it. */
  readonly name: string;
}

interface Job {
  readonly name: string;
  readonly source: string;
  readonly given: GivenWords;
  /** As written with a pencil. */
  readonly working: readonly string[];
  readonly answer: readonly Worked[];
}

const folder = fileURLToPath(new URL('.', import.meta.url));
const jobs = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => JSON.parse(readFileSync(folder + file, 'utf8')) as Job);

describe.each(jobs.map((job) => [job.name, job] as const))('%s', (_, { given, answer, working, source }) => {
  it('is worked out on paper, and says where its rules are from', () => {
    expect(source).not.toBe('');
    expect(working.length).toBeGreaterThan(3);
  });

  const words: Record<string, GivenWords[string]> = { ...given };
  for (const one of answer) {
    const before = { ...words };
    it(`${one.name}: ${one.formula}`, () => {
      expectMet(one, before);
    });
    if (typeof one.gives === 'number') words[one.name] = one.gives;
  }
});

it('there are jobs in both units', () => {
  expect(jobs.length).toBeGreaterThan(4);
  expect(jobs.some((job) => JSON.stringify(job.given).includes('centimetres'))).toBe(true);
});
