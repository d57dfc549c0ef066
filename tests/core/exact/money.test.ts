import { describe, expect, it } from 'vitest';
import { money, toCent, type Rounding } from '../../../src/core/exact/money';

const cent = (figure: number | string, rounding?: Rounding): string =>
  toCent(money(figure), rounding).toString();

describe('money', () => {
  it('is what the cell shows, not its binary neighbour', () => {
    expect(money(12.46).times(3).toString()).toBe('37.38');
    expect(money(1.005).toString()).toBe('1.005');
    expect(money(0.1).plus(money(0.2)).toString()).toBe('0.3');
  });

  it('rounds a half cent up where nothing else is said (Streamlined Sales and Use Tax Agreement, section 324)', () => {
    expect(cent(1.005)).toBe('1.01');
    expect(cent('0.904')).toBe('0.9');
    expect(cent('0.905')).toBe('0.91');
  });

  it('never rounds twice: 0.2346 is 0.23', () => {
    expect(cent('0.2346')).toBe('0.23');
  });

  it.each([
    ['half up', '2.44', '2.46', '2.44', '-2.45'],
    ['half even', '2.44', '2.46', '2.44', '-2.44'],
    ['up', '2.44', '2.46', '2.45', '-2.45'],
    ['down', '2.43', '2.45', '2.44', '-2.44'],
  ] as const)('%s', (rounding, first, second, third, below) => {
    const figures = {
      'half up': ['2.435', '2.455', '2.4449', '-2.445'],
      'half even': ['2.435', '2.455', '2.4449', '-2.445'],
      up: ['2.4301', '2.451', '2.4401', '-2.441'],
      down: ['2.4399', '2.459', '2.4499', '-2.449'],
    }[rounding];
    expect(figures.map((one) => cent(one, rounding))).toEqual([first, second, third, below]);
  });
});
