import { expect, it } from 'vitest';
import { flatInAll, flatOfPanel, usableWidth } from '../../../src/core/cloth/bolt';
import { Refusal } from '../../../src/core/cell/answer';
import { inches, toUnit } from '../../../src/core/exact/length';
import { DEFAULT_HOUSE } from '../../../src/core/house/house';

const { rules } = DEFAULT_HOUSE;
const bolt = { fabricWidth: inches(54) };

it('two and a half widths of 54 in lose two seams of 1 in and two side hems of 3 in', () => {
  const usable = usableWidth(bolt, rules);
  // 135 − 2 − 6, and for the pair twice that.
  expect(toUnit(flatOfPanel(2.5, usable) as never, 'in')).toBe(127);
  expect(toUnit(flatInAll(5, 2, usable) as never, 'in')).toBe(254);
});

it('selvages come off both edges', () => {
  expect(toUnit(usableWidth(bolt, { ...rules, selvage: inches(0.5) }).plain, 'in')).toBe(53);
});

it('a pattern leaves whole repeats from seam to seam, and its seam lies in what is wasted', () => {
  const { each, seam } = usableWidth({ ...bolt, horizontalRepeat: inches(20) }, rules);
  expect([toUnit(each, 'in'), seam]).toEqual([40, 0]);
  const whole = usableWidth({ ...bolt, horizontalRepeat: inches(13.5) }, rules);
  expect([toUnit(whole.each, 'in'), toUnit(whole.seam, 'in')]).toEqual([54, 1]);
});

it('a repeat wider than the cloth is said, and the cloth is taken as plain', () => {
  const { each, findings } = usableWidth({ ...bolt, horizontalRepeat: inches(60) }, rules);
  expect(toUnit(each, 'in')).toBe(54);
  expect(findings.map(({ code }) => code)).toEqual(['repeatWiderThanCloth']);
});

it('cloth that seams and selvages take whole is refused', () => {
  expect(() => usableWidth({ fabricWidth: inches(2) }, rules)).toThrow(Refusal);
});
