import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions';
import { cellFigure, writeStep } from '../../src/core/cell/steps';
import { readFormula } from '../../src/make/example';

/** What these say behind the answer, because it follows from it. */
const FOLLOWING: Readonly<Record<string, readonly string[]>> = {
  WIDTHS: ['flat width cut', 'delivered fullness'],
  CUTLENGTH: ['repeats in a cut'],
  ROLLCUTS: ['not to be counted on'],
};
/** Their answers are sentences or whole tables, and no sum leads to them. */
const WITHOUT = ['AUDIT', 'CHECK', 'SCHEDULE', 'TAPE', 'WORKING'];

/** The figure by itself, not as a part of a longer one. */
const shows = (line: string, figure: string): boolean =>
  new RegExp(`(?<![\\d.])${figure.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?!\\.?\\d)`).test(line);

describe('the working of an example', () => {
  const examples = CATALOGUE.flatMap((cellFunction) =>
    cellFunction.examples.map(({ formula }) => [formula, cellFunction] as const),
  );

  it.each(examples.filter(([, cellFunction]) => !WITHOUT.includes(cellFunction.name)))(
    '%s ends in its answer',
    (formula, cellFunction) => {
      const outcome = cellFunction.call(readFormula(formula).inputs);
      if ('error' in outcome) return;
      const { cells, steps, unit } = outcome;
      const following = FOLLOWING[cellFunction.name] ?? [];
      const own = steps.filter(({ what }) => !following.includes(what));
      const last = own.at(-1);
      if (last === undefined) return expect.fail('no step is given');
      const written = writeStep(last, unit);
      if (!Array.isArray(cells)) {
        const answer = typeof cells === 'number' ? String(Number(cells.toFixed(4))) : String(cells);
        const shown = String(cellFigure(last.result, unit));
        // As its result, or, where the last line proves the answer, within the line.
        expect(shows(`${shown} · ${written}`, answer), `${written} shows ${answer}`).toBe(true);
        return;
      }
      // Of a table, the last step shows one of its figures; PLEATS ends with what lies behind them.
      if (cellFunction.name === 'PLEATS') return expect(steps.length).toBeGreaterThan(2);
      const figures = (cells as readonly (readonly unknown[])[])
        .flat()
        .filter((cell): cell is number => typeof cell === 'number')
        .map((figure) => String(Number(figure.toFixed(4))));
      expect(
        figures.some((figure) => shows(written, figure)),
        written,
      ).toBe(true);
    },
  );
});
