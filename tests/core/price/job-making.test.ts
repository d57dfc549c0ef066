import { describe, expect, it } from 'vitest';
import { money } from '../../../src/core/exact/money';
import { readHouse } from '../../../src/core/house/house';
import { jobMaking, rowMaking } from '../../../src/core/price/job-making';
import type { CellIn } from '../../../src/core/cell/fields';
import { functionNamed } from '../../../functions';

const cell = (name: string, ...inputs: readonly CellIn[]): unknown => {
  const outcome = functionNamed(name)?.call(inputs);
  return outcome !== undefined && 'cells' in outcome ? outcome.cells : outcome;
};

const { rules } = readHouse([
  ['making minimum', 140],
  ['making breaks', '10 5 %'],
]);
const jobOf = (making: number | undefined, widths: number): string => {
  const { charge, says } = jobMaking(making === undefined ? undefined : money(making), widths, rules);
  return [charge?.toFixed(2), ...says].join(', ');
};

describe('the making charge of a whole job', () => {
  it('is at least the house’s least, after its break', () => {
    expect(jobOf(72, 6)).toBe('140.00, at least 140.00');
    expect(jobOf(140, 6)).toBe('140.00');
    expect(jobOf(200, 10)).toBe('190.00, 5 % less from 10 widths');
    expect(jobOf(144, 12)).toBe('140.00, 5 % less from 10 widths, at least 140.00');
  });

  it('is nothing where nothing is made, and unknown where no price is set', () => {
    expect(jobOf(0, 0)).toBe('0.00');
    expect(jobOf(undefined, 12)).toBe('');
  });

  it('leaves a row its own charge, that of a break, or the least where the row is the job', () => {
    const rowOf = (making: number, widths: number): string[] =>
      [...rowMaking(money(making), widths, rules)].map((one) => one.toFixed(2));
    expect(rowOf(72, 6)).toEqual(['72.00', '68.40', '140.00']);
    expect(rowOf(200, 6)).toEqual(['200.00', '190.00']);
    expect(rowOf(0, 0)).toEqual(['0.00', '0.00']);
  });
});

it('CHECK takes a row at the least charge of its job or at its own, and nothing between', () => {
  const headers = ['rod width', 'finished drop', 'heading', 'fabric width', 'labor'];
  const house = [
    ['labor pinch', 12],
    ['making minimum', 140],
  ];
  const checked = (labor: number): unknown =>
    cell('CHECK', [headers], [[105, 96, 'pinch', 54, labor]], house);
  expect(checked(72)).toBe('');
  expect(checked(140)).toBe('');
  expect(checked(100)).toMatch(/^labor reads 100/);
  expect(cell('LABOR', 6, 'pinch', 96, null, house)).toBe(72);
});
