import { expect, it } from 'vitest';
import { formulasFor, type FormulaAt } from '../../src/trial/inserted-rows';

const TABLE = { startRow: 3, endRow: 8, startColumn: 0, endColumn: 2 };
/** Column 1 is worked out from column 0; column 2 is the row above and one more, but in row 7. */
const formulaAt: FormulaAt = (row, column) => {
  if (column === 1) return `=A${row + 1}*$D$1`;
  return column === 2 ? (row === 7 ? '=99' : `=C${row}+1`) : undefined;
};

it.each([
  ['in the middle', 5, 5, { 5: { 1: '=A6*$D$1', 2: '=C5+1' } }],
  ['several at once', 5, 6, { 5: { 1: '=A6*$D$1' }, 6: { 1: '=A7*$D$1' } }],
  ['below the headings', 4, 4, { 4: { 1: '=A5*$D$1', 2: '=C4+1' } }],
  ['beside a row that was written otherwise', 6, 6, { 6: { 1: '=A7*$D$1' } }],
  ['above the headings', 3, 3, {}],
  ['below the table', 9, 9, {}],
])('a row inserted %s is filled with the formulas of its columns', (_, first, last, filled) => {
  expect(formulasFor(TABLE, { first, last }, formulaAt)).toEqual(filled);
});
