/** Worksheet functions against values that Excel gives; each file of cases says where they are from. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import '../../../src/engine/native/all';
import { errorOf } from '../../../src/core/cell/fields';
import { natives } from '../../../src/engine/native/call';
import { compiled, type Directory } from '../../../src/engine/native/compile';
import { Unreadable } from '../../../src/engine/native/parse';
import { Fault, faultOf, Unproven, type Scalar, type Value } from '../../../src/engine/native/values';
import { World, type Columns, type Sheets } from '../../../src/engine/native/world';
import { functionsIn } from '../../../src/file/recalculate/formula';

type Held = number | string | boolean | null;
interface Case {
  readonly formula: string;
  /** The cells it reads, row by row from A1. */
  readonly cells?: readonly (readonly Held[])[];
  readonly gives?: Held;
  /** It stands here so that its cells are named, with why: no value of it is sure. */
  readonly refused?: true;
}
interface Cases {
  readonly about: string;
  readonly cases: readonly Case[];
}
const folder = fileURLToPath(new URL('cases', import.meta.url));

const DIRECTORY: Directory = {
  sheet: (name) => (name === 'Sheet1' ? 0 : undefined),
  defined: () => undefined,
  table: (name) => {
    throw new Unreadable(`there is no table ${name ?? ''}`);
  },
};

/** One sheet: numbers 1 to 3 in A1:A3, the text 84 in A4, nothing in A5. */
const CELLS: readonly (readonly Scalar[])[] = [[1, 2, 3, '84']];
const sheetsOf = (columns: Columns, hidden: number): Sheets => ({
  names: ['Sheet1'],
  columns: () => columns,
  rows: () => Math.max(...columns.map((column) => column?.length ?? 0)),
  hidden: (_, row) => (row === hidden ? 'hidden' : 'no'),
  formula: () => undefined,
  spill: () => undefined,
  name: () => 'Sheet1!A1',
  from1904: false,
});
const SHEETS = sheetsOf(CELLS, 1);
const PLACE = { sheet: 0, row: 200, column: 30 };

function given(formula: string, sheets = SHEETS): Value {
  const world = new World(sheets);
  world.at(PLACE.sheet, PLACE.row, PLACE.column);
  return world.value(compiled(formula, PLACE, DIRECTORY, true).run(world));
}

const held = (one: Held): Scalar =>
  typeof one === 'string' && errorOf(one) !== undefined ? faultOf(one) : one;
/** A case's cells, column by column. */
const columnsOf = (rows: readonly (readonly Held[])[]): Columns =>
  (rows[0] ?? []).map((_, column) => rows.map((row) => held(row[column] ?? null) ?? undefined));
const shown = (value: Value): unknown => (value instanceof Fault ? value.code : value);

const ALL = readdirSync(folder).map((name) => JSON.parse(readFileSync(`${folder}/${name}`, 'utf8')) as Cases);

for (const { about, cases } of ALL)
  describe(about, () => {
    it.each(cases.map((one) => [one.formula, one.gives, one] as const))('%s → %j', (formula, gives, one) => {
      const sheets = sheetsOf(columnsOf(one.cells ?? [[]]), -1);
      if (one.refused === true) {
        expect(() => given(formula, sheets)).toThrow(Unproven);
        return;
      }
      const value = shown(given(formula, sheets));
      if (typeof gives !== 'number') expect(value).toEqual(gives);
      else
        expect(Math.abs(Number(value) - gives)).toBeLessThanOrEqual(
          1e-14 * Math.max(1, Math.abs(gives)) * 10,
        );
    });
  });

it('every function has a case with a value that Excel gave', () => {
  const called = new Set(ALL.flatMap(({ cases }) => cases.flatMap(({ formula }) => functionsIn(formula))));
  expect([...natives.keys()].filter((name) => !called.has(name))).toEqual([]);
});

describe('cells', () => {
  it.each<[string, unknown]>([
    ['SUM(A1:A4)', 6],
    ['SUM(A:A)', 6],
    ['A4*1', 84],
    ['A5&""', ''],
    ['A5=0', true],
    ['A5=""', true],
    ['COUNTBLANK(A1:A5)', 1],
    ['COUNTIF(A1:A5,">1")', 2],
    ['COUNTIF(A1:A5,84)', 1],
    ['COUNTIF(A1:A5,"<>84")', 5],
    ['SUMIF(A1:A3,">1")', 5],
    ['SUMIFS(A1:A3,A1:A3,"<3",A1:A3,">1")', 2],
    ['MAXIFS(A1:A3,A1:A3,">9")', 0],
    ['SUBTOTAL(9,A1:A3)', 6],
    ['SUBTOTAL(109,A1:A3)', 4],
    ['AGGREGATE(9,5,A1:A3)', 4],
    ['ROWS(A1:A5)', 5],
    ['ISBLANK(A5)', true],
    ['INDEX(A1:A3,2)', 2],
    ['SUM(OFFSET(A1,1,0,2))', 5],
    ['SUM(A1:INDEX(A1:A3,2))', 3],
    ['INDIRECT("A3")', 3],
    ['VLOOKUP(2,A1:A3,1,FALSE)', 2],
    ['SUM(A1:A2 A2:A3)', 2],
    ['HYPERLINK("a","b")', 'b'],
  ])('%s → %j', (formula, gives) => {
    expect(shown(given(formula))).toEqual(gives);
  });

  it('where a formula may not spill, a range means the cell beside it', () => {
    const world = new World(SHEETS);
    world.at(0, 1, 5);
    const { run } = compiled('A1:A3*10', { sheet: 0, row: 1, column: 5 }, DIRECTORY, false);
    expect(run(world)).toBe(20);
  });
});

describe('what is not sure is refused', () => {
  it.each(['"1/2"+0', 'TODAY()', '"a-b"<"ab"', 'MATCH(2,{3,1,2},1)', '(0.1+0.2-0.3)*1', 'TEXT(1.5,"# ?/?")'])(
    '%s',
    (formula) => {
      expect(() => given(formula)).toThrow(Unproven);
    },
  );
  it.each(['NOSUCH(1)', 'SUM(', '=[', 'Nix', 'ROUND(1)'])('%s cannot be read', (formula) => {
    expect(() => given(formula)).toThrow(Unreadable);
  });
});

it.each(['TEXT(1.5,"0.00")', 'TEXT(1,"dd")', 'FIXED(1.5)', 'DOLLAR(1.5)'])(
  'in a workbook that was saved in another language %s is refused',
  (formula) => {
    expect(() => given(formula, { ...SHEETS, elsewhere: true })).toThrow(/another language/);
    expect(given('TEXT(7,"000")', { ...SHEETS, elsewhere: true })).toBe('007');
  },
);

describe('Excel’s own limits', () => {
  it('a sum of 4,000 terms is no deep one', () => {
    expect(given(Array.from({ length: 4_000 }, () => '1').join('+'))).toBe(4_000);
  });
  it('64 calls in one another are computed, 65 are refused', () => {
    const nested = (count: number): string => 'ABS('.repeat(count) + '1' + ')'.repeat(count);
    expect(given(nested(64))).toBe(1);
    expect(() => given(nested(65))).toThrow(/64 deep/);
  });
  it('more than 8,192 signs are refused', () => {
    expect(() => given(`1${'+1'.repeat(4_096)}`)).toThrow(/8,192/);
  });
});
