import { Linter } from 'eslint';
import { beforeAll, describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions';
import type { CellFunction } from '../../functions/declare';
import type { CellIn } from '../../src/core/cell/fields';
import { readFormula } from '../../src/make/example';
import { associated, build, CellError, type Associated, type Built } from './bundle';

let bundle: Built;
let functions: ReadonlyMap<string, Associated> = new Map();

beforeAll(async () => {
  bundle = await build();
  functions = associated(bundle.text);
});

/** What Excel appends to every call. */
const INVOCATION = { functionName: 'X', address: 'Sheet1!A1' };

/** As Excel hands inputs over: all of them, null for those left out, a range as rows, the repeated ones gathered. */
function received(cellFunction: CellFunction, inputs: readonly CellIn[]): unknown[] {
  const given = cellFunction.parameters.map(({ kind, repeats }, at) => {
    const asRange = (input: CellIn): CellIn =>
      kind.shape === 'range' && input !== null && !Array.isArray(input) ? [[input]] : input;
    return repeats ? inputs.slice(at).map(asRange) : asRange(inputs[at] ?? null);
  });
  return [...given, INVOCATION];
}

/** Objects made inside the context have prototypes of their own. */
const plain = (value: unknown): unknown => (typeof value === 'object' ? structuredClone(value) : value);

function run(id: string, ...given: unknown[]): unknown {
  const associated = functions.get(id);
  if (associated === undefined) throw new Error(`${id} is not associated`);
  return plain(associated(...given));
}

function errorOf(id: string, ...given: unknown[]): CellError {
  try {
    run(id, ...given);
  } catch (thrown) {
    if (thrown instanceof CellError) return thrown;
    throw thrown;
  }
  throw new Error(`${id} gave no error`);
}

describe('the built functions bundle', () => {
  it('associates every function of the catalogue, and nothing else', () => {
    expect([...functions.keys()]).toEqual(CATALOGUE.map(({ name }) => name));
  });

  it('is written in ES2018', () => {
    const faults = new Linter().verify(bundle.text, {
      languageOptions: { ecmaVersion: 2018, sourceType: 'script' },
    });
    expect(faults.filter(({ fatal }) => fatal)).toEqual([]);
  });

  it('is made of the functions, the core and its decimals alone', () => {
    const strangers = bundle.files.filter(
      (file) =>
        !/^(functions|src\/core|node_modules\/decimal\.js)\//.test(file) &&
        !/^src\/excel\/(functions|older)\.ts$/.test(file),
    );
    expect(strangers).toEqual([]);
    expect(bundle.files).toContain('src/core/exact/length.ts');
  });

  it('stays small enough to start at once', () => {
    expect(bundle.text.length).toBeLessThan(400_000);
  });

  describe.each(CATALOGUE.map((cellFunction) => [cellFunction.name, cellFunction] as const))(
    '%s',
    (_, one) => {
      for (const { formula, gives } of one.examples) {
        it(formula, () => {
          expect(run(one.name, ...received(one, readFormula(formula).inputs))).toEqual(gives);
        });
      }
    },
  );
});

describe('what Excel is given', () => {
  it('is #VALUE! with its sentence where an input is wrong', () => {
    const error = errorOf('DROP', [['about 84']], 'pinch', null, null, null, INVOCATION);
    expect(error.code).toBe('#VALUE!');
    expect(error.message).toContain('measured reads “about 84”');
  });

  it('names an input whose cell shows an error, however Excel hands it over', () => {
    const asCode = new CellError('#DIV/0!');
    const asValue = { type: 'Error', basicType: 'Error', basicValue: '#DIV/0!' };
    for (const cell of [asCode, asValue]) {
      const error = errorOf('RODWIDTH', cell, null, null, null, INVOCATION);
      expect(error.message).toBe('opening_width points at a cell that shows #DIV/0!. Mend that cell first.');
    }
    expect(errorOf('DROP', [[98], [asCode]], 'pinch', null, null, null, INVOCATION).message).toContain(
      '#DIV/0!',
    );
  });

  it('is an answer where trailing inputs are left out or cells are blank', () => {
    expect(run('RODWIDTH', 72, INVOCATION)).toBe(94);
    expect(run('RODWIDTH', 72, '', '', [['', '']], INVOCATION)).toBe(94);
    expect(run('DROP', [[98]], 'pinch', '', '', [[null]], INVOCATION)).toBe(96);
  });

  it('is read from a formatted number', () => {
    const formatted = {
      type: 'FormattedNumber',
      basicType: 'Double',
      basicValue: 72,
      numberFormat: '0 "in"',
    };
    expect(run('RODWIDTH', formatted, null, null, null, INVOCATION)).toBe(94);
  });
});
