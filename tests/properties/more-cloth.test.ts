import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figure } from './ask';
import { draw, drop, fabric, fullness, heading, house, match, quantity, rangeOf, repeat, rod } from './given';

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
type Window = typeof window extends fc.Arbitrary<infer T> ? T : never;

/** What a window takes, by every function that says so. */
function needs(window: Window): Record<string, number | undefined> {
  const rules = rangeOf(window.house);
  const { rod, drop, heading, fabric, draw, fullness, quantity } = window;
  return {
    widths: figure('WIDTHS', rod, heading, fabric, draw, fullness, window.across, rules),
    panels: figure('PANELS', rod, heading, fabric, 2, draw, fullness, rules),
    'cut length': figure('CUTLENGTH', drop, heading, window.up, 'face', rules),
    'lining cut': figure('CUTLENGTH', drop, heading, undefined, 'lining', rules),
    yardage: figure(
      'YARDAGE',
      rod,
      drop,
      heading,
      fabric,
      window.up,
      quantity,
      draw,
      fullness,
      window.match,
      window.across,
      rules,
    ),
    lining: figure('LINING', rod, drop, heading, fabric, quantity, draw, fullness, 'lining', rules),
    interlining: figure('LINING', rod, drop, heading, fabric, quantity, draw, fullness, 'interlining', rules),
    railroaded: figure(
      'RAILROADED',
      rod,
      drop,
      heading,
      fabric,
      quantity,
      draw,
      fullness,
      window.up,
      window.across,
      rules,
    ),
    weight: figure('CLOTHWEIGHT', rod, drop, heading, fabric, 12, draw, fullness, rules),
    finished: figure('FINISHEDWIDTH', rod, heading, draw, undefined, undefined, rules),
    brackets: figure('BRACKETS', rod),
  };
}

function expectNoLess(less: Window, more: Window): void {
  const before = needs(less);
  for (const [what, after] of Object.entries(needs(more))) {
    const was = before[what];
    if (was !== undefined && after !== undefined) expect(after, what).toBeGreaterThanOrEqual(was);
  }
}

describe('more never needs less', () => {
  it('a wider rod', () => {
    fc.assert(
      fc.property(window, rod, (window, other) => {
        expectNoLess(
          { ...window, rod: Math.min(window.rod, other) },
          { ...window, rod: Math.max(window.rod, other) },
        );
      }),
      { numRuns: 800 },
    );
  });

  it('more fullness', () => {
    fc.assert(
      fc.property(window, fullness, (window, other) => {
        expectNoLess(
          { ...window, fullness: Math.min(window.fullness, other) },
          { ...window, fullness: Math.max(window.fullness, other) },
        );
      }),
      { numRuns: 800 },
    );
  });

  it('a longer drop', () => {
    fc.assert(
      fc.property(window, drop, (window, other) => {
        expectNoLess(
          { ...window, drop: Math.min(window.drop, other) },
          { ...window, drop: Math.max(window.drop, other) },
        );
      }),
      { numRuns: 800 },
    );
  });

  it('more windows', () => {
    fc.assert(
      fc.property(window, fc.integer({ min: 1, max: 60 }), (window, windows) => {
        expectNoLess({ ...window, quantity: windows }, { ...window, quantity: windows + 1 });
      }),
      { numRuns: 1000 },
    );
  });

  it('a repeat, against plain cloth cut the same way', () => {
    fc.assert(
      fc.property(window, (window) => {
        const plain = needs({ ...window, up: undefined, across: undefined });
        const patterned = needs(window);
        for (const what of ['widths', 'cut length', 'yardage', 'railroaded']) {
          const [was, now] = [plain[what], patterned[what]];
          if (was !== undefined && now !== undefined) expect(now, what).toBeGreaterThanOrEqual(was);
        }
      }),
      { numRuns: 800 },
    );
  });
});

describe('the delivered fullness', () => {
  it('is never less than was asked, save where the widths are rounded to the nearest', () => {
    fc.assert(
      fc.property(window, (window) => {
        const rules = rangeOf(window.house);
        const widths = figure(
          'WIDTHS',
          window.rod,
          window.heading,
          window.fabric,
          window.draw,
          window.fullness,
          undefined,
          rules,
        );
        const delivered = figure(
          'FULLNESS',
          window.rod,
          widths,
          window.heading,
          window.fabric,
          window.draw,
          rules,
        );
        if (widths === undefined || window.house['widths rounding'] === 'nearest') return;
        expect(delivered).toBeGreaterThanOrEqual(window.fullness - 1e-12);
      }),
      { numRuns: 2000 },
    );
  });

  it('to the nearest falls short by less than half a width, and exceeds by no more', () => {
    fc.assert(
      fc.property(rod, fabric, fullness, draw, (rod, fabric, fullness, draw) => {
        const rules = rangeOf({
          'widths rounding': 'nearest',
          'side hem': 0,
          seam: 0,
          return: 0,
          overlap: 0,
        });
        const widths = figure('WIDTHS', rod, 'flat', fabric, draw, fullness, undefined, rules) ?? NaN;
        const short = rod * fullness - widths * fabric;
        expect(short).toBeLessThan(fabric / 2);
        if (widths > 1) expect(short).toBeGreaterThanOrEqual(-fabric / 2 - 1e-9);
      }),
      { numRuns: 2000 },
    );
  });
});
