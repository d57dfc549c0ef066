import { expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import type { Block, CellValue } from '../../../src/book/book';
import { markOf, standingPaper } from '../../../src/book/papers/again';

const PUTS = [
  { row: 0, column: 0, put: 'Quote' },
  { row: 2, column: 3, put: { formula: '=IF(Costs!P5="","",Costs!P5)' } },
  { row: 2, column: 1, put: 3 },
];

/** The sheet as a host reads it back: formulas with their values. */
function block(
  mark: string,
  change: (values: CellValue[][], formulas: (string | null)[][]) => void = () => undefined,
): Block {
  const values: CellValue[][] = [
    ['Quote', null, null, null, mark],
    [null, null, null, null, null],
    [null, 3, null, 1240.5, null],
  ];
  const formulas = values.map((row) => row.map((): string | null => null));
  formulas[2]![3] = '=IF(Costs!P5="","",Costs!P5)';
  change(values, formulas);
  return {
    area: areaAt('Client quote', 0, 0, 3, 5),
    values,
    formulas,
    formats: [],
    merged: [],
    hiddenRows: [],
    table: undefined,
    protected: false,
  };
}

const MARK = markOf('quote', PUTS);

it('a paper nobody touched is known again, whatever its formulas show by now', () => {
  expect(standingPaper('Client quote', block(MARK))).toEqual({
    sheet: 'Client quote',
    kind: 'quote',
    edited: false,
  });
  expect(
    standingPaper(
      'Client quote',
      block(MARK, (values) => (values[2]![3] = 9)),
    )?.edited,
  ).toBe(false);
});

it.each<[string, Parameters<typeof block>[1]]>([
  ['a word', (values) => (values[0]![0] = 'Estimate')],
  ['a figure', (values) => (values[2]![1] = 4)],
  ['a formula typed over', (_values, formulas) => (formulas[2]![3] = null)],
  ['a line more', (values) => (values[1]![0] = 'call before you come')],
  ['a line less', (values) => (values[2]![1] = null)],
])('%s changed is an edit', (_what, change) => {
  expect(standingPaper('Client quote', block(MARK, change))?.edited).toBe(true);
});

it('a sheet without a mark is no paper', () => {
  expect(standingPaper('Windows', block(''))).toBeUndefined();
});
