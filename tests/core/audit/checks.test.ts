import { describe, expect, it } from 'vitest';
import type { Check } from '../../../src/core/audit/check';
import { CHECKS } from '../../../src/core/audit/checks';
import { compareFigures } from '../../../src/core/audit/compare-figures';
import { rowTooLong, unreadCells } from '../../../src/core/audit/reading';
import { FIGURES } from '../../../src/core/window/figures';

describe('the checks of an order row', () => {
  it('stand in the list once each', () => {
    expect(new Set(CHECKS).size).toBe(CHECKS.length);
  });

  it('begin with what cannot be read, since every other figure hangs on it', () => {
    expect(CHECKS.slice(0, 2)).toEqual([rowTooLong, unreadCells]);
  });

  it('explain figures that orders state, each of them compared but for what was explained', () => {
    const ordered = new Set<string>(FIGURES.filter((one) => one.ordered === true).map(({ key }) => key));
    const given = { order: { problems: [] }, ordered: [], has: () => true } as never;
    const explained = CHECKS.filter((one: Check) => one !== unreadCells).flatMap(
      (one) => one.explains?.(given) ?? [],
    );
    expect(explained.length).toBeGreaterThan(1);
    for (const key of explained) expect(ordered.has(key), key).toBe(true);
    expect(compareFigures.explains).toBeUndefined();
  });
});
