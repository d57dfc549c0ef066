import { createRequire } from 'node:module';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Decimal } from 'decimal.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { moneyAlone, operations } from '../../src/make/money-alone.mjs';

const LIBRARY = join(dirname(createRequire(import.meta.url).resolve('decimal.js')), 'decimal.mjs');
const FIGURES = ['0', '-0', '1', '-1', '0.005', '12.46', '-12.455', '1e-7', '9007199254740993.25', '3'];

type Asked = Record<string, (...given: unknown[]) => unknown>;
type Library = new (figure: string | number) => Asked;

const folder = mkdtempSync(join(tmpdir(), 'hemledger-'));
let text = '';
let Alone: Library;
beforeAll(async () => {
  text = moneyAlone(readFileSync(LIBRARY, 'utf8'));
  const file = join(folder, 'alone.mjs');
  writeFileSync(file, text);
  ({ Decimal: Alone } = (await import(/* @vite-ignore */ file)) as { Decimal: Library });
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** What an operation is given besides another amount: so many places, and how they are rounded. */
function givenTo(name: string, other: unknown): readonly (readonly unknown[])[] {
  if (name === 'toFixed') return [[0], [2]];
  if (name === 'toDecimalPlaces') return [0, 2].flatMap((places) => [0, 1, 4, 6].map((how) => [places, how]));
  return ['abs', 'neg', 'isZero', 'toNumber', 'toString'].includes(name) ? [[]] : [[other]];
}

describe('decimal.js for money alone', () => {
  it.each(operations())('%s answers as in the whole library', (name) => {
    const Whole = Decimal as unknown as Library;
    for (const one of FIGURES) {
      for (const other of FIGURES) {
        for (const given of givenTo(name, other)) {
          const [alone, whole] = [Alone, Whole].map((Library) => new Library(one)[name]?.(...given));
          expect(String(alone), `${one} ${name} ${given.join()}`).toBe(String(whole));
        }
      }
    }
  });

  it('reads numbers and written figures alike, and refuses what is neither', () => {
    for (const one of [0.1, 1e21, -5e-7, 123456789.125])
      expect(String(new Alone(one))).toBe(String(new Decimal(one)));
    expect(() => new Alone('twelve')).toThrow('twelve');
  });

  it('has nothing else of the library in it', () => {
    const asked = Object.getOwnPropertyNames(Reflect.get(Alone, 'prototype') as object);
    for (const name of ['sin', 'ln', 'sqrt', 'pow', 'toFraction', 'toBinary'])
      expect(asked).not.toContain(name);
    expect(asked).toEqual(expect.arrayContaining([...operations()]));
    expect(text).not.toMatch(/\d{500}/);
  });
});
