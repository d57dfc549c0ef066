/** Every published figure against the cell functions: a new one is a new file in cases/. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Check, GivenWords } from './check';
import { expectMet } from './met';

interface Published {
  readonly id: string;
  readonly source: string;
  /** How much of the source was read before the figure was taken from it. */
  readonly read: 'whole' | 'part' | 'memory' | 'common practice';
  readonly given: string;
  readonly published: string;
  readonly rule: string;
  readonly note?: string;
  readonly words?: GivenWords;
  readonly checks: readonly Check[];
}

const folder = fileURLToPath(new URL('cases/', import.meta.url));
const cases = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => [name, JSON.parse(readFileSync(folder + name, 'utf8')) as Published] as const);

const WANTED =
  'U1 U2 U3 U4 U5 U6 U7 U8 U9 U10 D1 D2 D3 D4 D5 D6 D7 D8 D9 E1 E2 F1 G1 G2 G3 T1 S1 S2 S3 P1 P2 P3 P4 P5 P6 P7 P8 P9 P10 P11'.split(
    ' ',
  );

describe('the published figures', () => {
  it('are all there, each in a file of its own', () => {
    expect(cases.map(([, { id }]) => id).sort()).toEqual([...WANTED].sort());
  });

  it('name their source, and common practice says that it has none', () => {
    for (const [name, { read, source, checks }] of cases) {
      expect(['whole', 'part', 'memory', 'common practice'], name).toContain(read);
      expect(/no source/.test(source), name).toBe(read === 'common practice');
      expect(checks.length, name).toBeGreaterThan(0);
    }
  });
});

describe.each(cases)('%s', (_, { id, source, read, published, words = {}, checks }) => {
  describe(`${id}: ${published} (${source} [${read}])`, () => {
    it.each(checks.map((check) => [`${check.formula} ${check.because ?? ''}`.trim(), check] as const))(
      '%s',
      (_title, check) => {
        expectMet(check, words);
      },
    );
  });
});
