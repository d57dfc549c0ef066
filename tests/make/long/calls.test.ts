import { describe, expect, it } from 'vitest';
import { readFormula } from '../../../src/make/example';
import {
  callOf,
  formulaOf,
  fuzzCalls,
  throughCore,
  wrongWith,
  type Call,
} from '../../../src/make/long/calls';
import { fuzzFormulas } from '../../../src/make/long/fuzz';
import found from './found.json';

describe('calls by chance', () => {
  it('give a value or a sentence', () => {
    expect(fuzzCalls(400, 11, { examples: readFormula, caller: throughCore })).toEqual([]);
    expect(fuzzFormulas(200, 11, (at) => formulaOf(callOf(11, at, readFormula)))).toEqual([]);
  });

  it('follow from the seed and the number alone', () => {
    expect(callOf(7, 123, readFormula)).toEqual(callOf(7, 123, readFormula));
    expect(callOf(7, 123, readFormula)).not.toEqual(callOf(7, 124, readFormula));
  });

  it.each([
    [{ value: NaN }, '“NaN” in a cell'],
    [{ value: [[1, null]] }, '“null” in a cell'],
    [{ value: '[object Object]' }, '“[object Object]” in a cell'],
    [{ error: '#VALUE!', sentence: ' ' }, 'an error without a sentence'],
    [{ value: [[1, 'a']] }, undefined],
  ])('are judged: %j', (answer, wrong) => {
    expect(wrongWith(answer)).toBe(wrong);
  });

  it('name what throws, with its seed', () => {
    const caller = (): never => {
      throw new Error('out of luck');
    };
    expect(fuzzCalls(1, 5, { examples: readFormula, caller })[0]).toMatch(
      /^seed 5, call 0: .*: it threw Error: out of luck$/,
    );
  });

  it.each(found as readonly Call[])('that once went wrong go well: $name', (call) => {
    expect(wrongWith(throughCore(call))).toBeUndefined();
  });
});
