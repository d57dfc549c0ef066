/** LibreOffice computes the same chain from native formulas; where it is not installed a line says so. */
import { describe, expect, it } from 'vitest';
import { computedByLibreOffice, sheetFile } from '../../src/make/office-suite';
import { figure } from '../properties/ask';
import { formulas, inputCells, INPUTS, rows, STEPS, type Row } from './chain';

const WINDOWS = rows(4_000);

const theirs = computedByLibreOffice(
  sheetFile(WINDOWS.map((row, at) => [...inputCells(row), ...formulas(at + 1)])),
);
if (theirs === undefined) console.log('LibreOffice is not installed: its answers are not compared.');

/** The same columns from the cell functions. */
function ours(row: Row): readonly (number | undefined)[] {
  const { heading, draw, fabric, fullness, repeat, match, quantity } = row;
  const extension = figure('EXTENSION', row.opening, row.end);
  const rod = figure('RODWIDTH', row.opening, extension, extension);
  const drop = figure('DROP', row.measured, heading, undefined, row.finish);
  const finished = figure('FINISHEDWIDTH', rod, heading, draw);
  const rule = match === 'half-drop' ? [['repeat rule', 'half-drop alternating']] : undefined;
  return [
    extension,
    rod,
    drop,
    finished,
    (finished ?? NaN) * fullness,
    figure('WIDTHS', rod, heading, fabric, draw, fullness),
    figure('CUTLENGTH', drop, heading),
    figure('CUTLENGTH', drop, heading, repeat, 'face', rule),
    figure('YARDAGE', rod, drop, heading, fabric, repeat, quantity, draw, fullness, match),
    figure('LINING', rod, drop, heading, 54, quantity, draw, fullness, undefined, undefined, fabric),
    figure('BRACKETS', rod),
  ];
}

describe.skipIf(theirs === undefined)('LibreOffice, from native formulas', () => {
  it.each(STEPS.map((step, at) => [step, at] as const))(
    `agrees on the %s of ${WINDOWS.length} windows`,
    (_, at) => {
      expect(theirs?.rows).toHaveLength(WINDOWS.length);
      const differing = WINDOWS.flatMap((row, i) => {
        const figure = ours(row)[at] ?? NaN;
        const other = Number(theirs?.rows[i]?.[INPUTS.length + at]);
        return Math.abs(figure - other) < 1e-7 ? [] : [{ ...row, ours: figure, theirs: other }];
      });
      expect(differing).toEqual([]);
    },
  );

  it('is asked about windows of every kind', () => {
    const kinds = (kindOf: (row: Row) => unknown): number => new Set(WINDOWS.map(kindOf)).size;
    expect(kinds(({ heading, draw }) => `${heading} ${draw}`)).toBe(12);
    expect(kinds(({ match, repeat }) => `${match} ${repeat > 0}`)).toBe(4);
    expect(kinds(({ finish, end }) => `${finish} ${end}`)).toBe(8);
  });
});
