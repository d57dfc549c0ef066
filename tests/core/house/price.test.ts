import { expect, it } from 'vitest';
import { PRICE_RULES as RULES } from '../../../src/core/house/price';
import { ownOnes, readBack } from './read-back';

it('every default is read from a cell as it is written there', () => {
  expect(readBack(RULES)).toBeGreaterThan(20);
});

it('no charge has a default: what a workroom takes only the workroom can say', () => {
  const charges = Object.keys(RULES).filter((name) =>
    /^(pricePer|freight|installation|laborLined)/.test(name),
  );
  expect(charges.length).toBeGreaterThan(12);
  expect(ownOnes(RULES)).toEqual(expect.arrayContaining(charges));
});

it('nothing is marked up, taken off or taxed until it is set', () => {
  for (const { standard } of [RULES.sellRate, RULES.discount, RULES.taxRate])
    expect(Number(standard)).toBe(0);
});
