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
function needs(of: Window): Record<string, number | undefined> {
  const rules = rangeOf(of.house);
  const { rod, drop, heading, fabric, draw, fullness, quantity } = of;
  return {
    widths: figure('WIDTHS', rod, heading, fabric, draw, fullness, of.across, rules),
    panels: figure('PANELS', rod, heading, fabric, 2, draw, fullness, rules),
    'cut length': figure('CUTLENGTH', drop, heading, of.up, 'face', rules),
    'lining cut': figure('CUTLENGTH', drop, heading, undefined, 'lining', rules),
    yardage: figure(
      'YARDAGE',
      rod,
      drop,
      heading,
      fabric,
      of.up,
      quantity,
      draw,
      fullness,
      of.match,
      of.across,
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
      of.up,
      of.across,
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
      fc.property(window, rod, (of, other) => {
        expectNoLess({ ...of, rod: Math.min(of.rod, other) }, { ...of, rod: Math.max(of.rod, other) });
      }),
      { numRuns: 800 },
    );
  });

  it('more fullness', () => {
    fc.assert(
      fc.property(window, fullness, (of, other) => {
        expectNoLess(
          { ...of, fullness: Math.min(of.fullness, other) },
          { ...of, fullness: Math.max(of.fullness, other) },
        );
      }),
      { numRuns: 800 },
    );
  });

  it('a longer drop', () => {
    fc.assert(
      fc.property(window, drop, (of, other) => {
        expectNoLess({ ...of, drop: Math.min(of.drop, other) }, { ...of, drop: Math.max(of.drop, other) });
      }),
      { numRuns: 800 },
    );
  });

  it('more windows', () => {
    fc.assert(
      fc.property(window, fc.integer({ min: 1, max: 60 }), (of, windows) => {
        expectNoLess({ ...of, quantity: windows }, { ...of, quantity: windows + 1 });
      }),
      { numRuns: 1000 },
    );
  });

  it('a repeat, against plain cloth cut the same way', () => {
    fc.assert(
      fc.property(window, (of) => {
        const plain = needs({ ...of, up: undefined, across: undefined });
        const patterned = needs(of);
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
      fc.property(window, (of) => {
        const rules = rangeOf(of.house);
        const widths = figure(
          'WIDTHS',
          of.rod,
          of.heading,
          of.fabric,
          of.draw,
          of.fullness,
          undefined,
          rules,
        );
        const delivered = figure('FULLNESS', of.rod, widths, of.heading, of.fabric, of.draw, rules);
        if (widths === undefined || of.house['widths rounding'] === 'nearest') return;
        expect(delivered).toBeGreaterThanOrEqual(of.fullness - 1e-12);
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
