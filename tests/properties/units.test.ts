import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../functions/declare';
import type { CellIn } from '../../src/core/cell/fields';
import { ask, nanometres } from './ask';
import {
  draw,
  drop,
  fabric,
  fullness,
  heading,
  house,
  match,
  quantity,
  rangeOf,
  repeat,
  rod,
  written,
} from './given';

/** The same window in two workbooks; every rule that is not the same in both is given as a written length. */
const inchHouse = (words: Readonly<Record<string, CellIn>>): CellIn => rangeOf({ ...words, unit: 'inches' });
const metricHouse = (words: Readonly<Record<string, CellIn>>): CellIn =>
  rangeOf({ ...words, unit: 'centimetres' });

/** What a cell shows, as nanometres, as a count, or the code of the refusal. */
function physical(outcome: Outcome, unit: Parameters<typeof nanometres>[1] | undefined): unknown {
  if ('error' in outcome) return outcome.finding.code;
  return [outcome.cells]
    .flat(2)
    .map((cell) => (typeof cell === 'number' && unit !== undefined ? nanometres(cell, unit) : cell));
}

const window = fc.record({
  rod,
  drop,
  fabric,
  fullness,
  heading,
  draw,
  quantity,
  match,
  up: repeat,
  across: repeat,
  house,
});

describe('a window means the same in inches and in centimetres', () => {
  it('by every function that gives a length, a count or a yardage', () => {
    let answered = 0;
    fc.assert(
      fc.property(window, (window) => {
        const [rod, drop, fabric] = [window.rod, window.drop, window.fabric].map(written);
        const up = window.up === undefined ? undefined : written(window.up);
        const across = window.across === undefined ? undefined : written(window.across);
        const { heading, draw, fullness, quantity, match } = window;
        const calls: readonly (readonly [string, 'small' | 'large' | undefined, readonly CellIn[]])[] = [
          ['EXTENSION', 'small', [rod, 'high']],
          ['RODWIDTH', 'small', [rod, '', written(9)]],
          ['RODHEIGHT', 'small', [drop, written(140), heading]],
          ['DROP', 'small', [drop, heading, undefined, 'break']],
          ['FINISHEDWIDTH', 'small', [rod, heading, draw, undefined, undefined]],
          ['STACK', 'small', [rod, heading, draw, 'lined']],
          ['WIDTHS', undefined, [rod, heading, fabric, draw, fullness, across]],
          ['PANELS', undefined, [rod, heading, fabric, 2, draw, fullness]],
          ['FULLNESS', undefined, [rod, 12, heading, fabric, draw]],
          ['CUTLENGTH', 'small', [drop, heading, up, 'face']],
          ['CUTLENGTH', 'small', [drop, heading, up, 'lining']],
          ['YARDAGE', 'large', [rod, drop, heading, fabric, up, quantity, draw, fullness, match, across]],
          ['LINING', 'large', [rod, drop, heading, fabric, quantity, draw, fullness, 'lining']],
          ['RAILROADED', 'large', [rod, drop, heading, fabric, quantity, draw, fullness, up, across]],
          ['SAVEWIDTH', 'small', [rod, heading, fabric, draw, fullness]],
          ['RINGS', undefined, [rod, 12, heading, draw]],
          ['BRACKETS', undefined, [rod, undefined]],
          ['POCKET', 'small', [written(3.125)]],
        ];
        for (const [name, scale, inputs] of calls) {
          const inch = ask(name, ...inputs, inchHouse(window.house));
          const metric = ask(name, ...inputs, metricHouse(window.house));
          expect(physical(metric, scale && ({ small: 'cm', large: 'm' }[scale] as 'cm' | 'm')), name).toEqual(
            physical(inch, scale && ({ small: 'in', large: 'yd' }[scale] as 'in' | 'yd')),
          );
          if (!('error' in inch)) answered++;
        }
      }),
      { numRuns: 400 },
    );
    expect(answered).toBeGreaterThan(4000);
  });

  it('by the marks of a heading', () => {
    fc.assert(
      fc.property(window, fc.integer({ min: 2, max: 30 }), (window, widths) => {
        for (const heading of ['pinch', 'box', 'wave']) {
          const inputs = [written(window.rod), widths, heading, written(window.fabric), window.draw];
          const inch = ask('PLEATS', ...inputs, inchHouse({}));
          const metric = ask('PLEATS', ...inputs, metricHouse({}));
          if ('error' in inch || 'error' in metric) {
            expect('error' in metric && metric.finding.code).toBe('error' in inch && inch.finding.code);
            continue;
          }
          const [a = [], b = []] = [inch.cells, metric.cells].map((cells) => [cells].flat(2).map(Number));
          expect(b.slice(0, 2)).toEqual(a.slice(0, 2));
          for (const at of [2, 3]) expect((b[at] ?? NaN) / 2.54).toBeCloseTo(a[at] ?? NaN, 9);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('and a bare figure is taken in the house’s own unit', () => {
    fc.assert(
      fc.property(rod, (inches) => {
        const inch = ask('RODWIDTH', inches, 0, 0, inchHouse({}));
        const metric = ask('RODWIDTH', inches * 2.54, 0, 0, metricHouse({}));
        expect(physical(metric, 'cm')).toEqual(physical(inch, 'in'));
      }),
    );
  });
});
