import { expect, it } from 'vitest';
import { counted, sampled } from '../../src/make/mutants';

const LINES = Array.from({ length: 300 }, (_, at) => ({ file: at < 200 ? 'a.ts' : 'b.ts', line: at + 1 }));

it('takes the same lines for the same seed, each once, more of the longer file', () => {
  const lines = sampled(LINES, 60, 4);
  expect(sampled(LINES, 60, 4)).toEqual(lines);
  expect(sampled(LINES, 60, 5)).not.toEqual(lines);
  expect(new Set(lines.map(({ line }) => line)).size).toBe(60);
  expect(lines.filter(({ file }) => file === 'a.ts').length).toBeGreaterThan(30);
  expect(sampled(LINES, 999, 4)).toHaveLength(300);
});

it('counts what was noticed, and lists what was not', () => {
  const mutant = (status: string) => ({
    status,
    mutatorName: 'EqualityOperator',
    replacement: 'a <= b',
    location: { start: { line: 7 } },
  });
  const mutants = ['Killed', 'Timeout', 'Survived', 'NoCoverage', 'Ignored', 'CompileError'].map(mutant);
  expect(counted({ 'src/core/x.ts': { mutants } })).toEqual({
    killed: 2,
    all: 4,
    survivors: [
      'src/core/x.ts:7 EqualityOperator: a <= b',
      'src/core/x.ts:7 EqualityOperator: a <= b (no test runs it)',
    ],
  });
});
