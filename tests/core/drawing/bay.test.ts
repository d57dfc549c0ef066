import { describe, expect, it } from 'vitest';
import { bayPlan } from '../../../src/core/drawing/bay';
import { inches, toUnit } from '../../../src/core/exact/length';
import { INCHES, showLength } from '../../../src/core/exact/unit';

const plan = (parts: readonly number[], bends: readonly number[]) =>
  bayPlan({ parts: parts.map(inches), bends, show: (length) => showLength(length, INCHES) });
const corner = (bends: readonly number[] | undefined): readonly number[] =>
  (bends ?? []).map((nm) => Math.round(toUnit(nm, 'in') * 100) / 100);

describe('the plan of a bay', () => {
  it('is level over its middle part: sides of 24 in at 135° reach 24 ÷ √2 into the bay', () => {
    const { lines } = plan([24, 60, 24], [135, 135]);
    expect(corner(lines[0]?.to)).toEqual([16.97, 16.97]);
    expect(corner(lines[1]?.to)).toEqual([76.97, 16.97]);
    expect(corner(lines[2]?.to)).toEqual([93.94, 0]);
  });

  it('says every length and every bend', () => {
    const { title, labels } = plan([48, 36], [90]);
    expect(labels.map(({ words }) => words)).toEqual(['48 in', '36 in', '90°']);
    expect(title).toContain('48 in, 36 in; bends 90°');
  });

  it('draws one straight part without a bend', () => {
    const { lines, labels } = plan([60], []);
    expect(corner(lines[0]?.to)).toEqual([60, 0]);
    expect(labels).toHaveLength(1);
  });
});
