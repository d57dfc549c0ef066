import { describe, expect, it } from 'vitest';
import { toUnit, inches } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import { panelOf, showShare, wholeShare, zoneOf } from '../../../src/core/heading/panel';
import { readHouse } from '../../../src/core/house/house';

const made = (widths: number) =>
  ({
    rodWidth: inches(100),
    heading: 'pinch',
    draw: 'stationary cover',
    fabricWidth: inches(54),
    widths,
  }) as never;

describe('a panel that covers the rod', () => {
  it('lies flat between its hems and seams, and hangs flat at both returns', () => {
    const panel = panelOf(made(5), readHouse(undefined).rules);
    // Five widths of 54 in: its finished width is the rod and a return of 3½ in on each side.
    expect(panel.widths).toBe(5);
    expect(toUnit(panel.finished, 'in')).toBe(107);
    expect(toUnit(panel.share, 'in')).toBe(100);
    expect([toUnit(panel.lead, 'in'), toUnit(panel.outer, 'in')]).toEqual([3.5, 3.5]);
    expect(toUnit(zoneOf(panel), 'in')).toBe(100);
    expect(panel.flat).toBeGreaterThan(panel.finished);
  });

  it('with less cloth than it is to be wide leaves nothing to pleat', () => {
    expect(() => panelOf(made(1), readHouse(undefined).rules)).toThrow(
      /nothing is left to pleat\. Check widths and fabric_width/,
    );
  });
});

it('a share of a length is shown and cut to the nearest nanometre', () => {
  expect(wholeShare(inches(10) / 3)).toBe(84_666_667);
  expect(showShare(inches(10) / 4, INCHES)).toBe('2 1/2 in');
});
