import { describe, expect, it } from 'vitest';
import {
  HOUSE_LINES,
  houseKey,
  houseWords,
  letterheadOf,
  linesOf,
} from '../../../src/core/papers/house-lines';

describe('the house’s words', () => {
  it('are ours where the house wrote nothing, none where it wrote none', () => {
    const house = houseWords(new Map([['term1', { value: 'none' }]]), 'letter');
    expect(house.term1).toBeUndefined();
    expect(house.term2?.value).toMatch(/approved in writing/);
    expect(house.name).toBeUndefined();
  });

  it('keep the cell they were typed in', () => {
    const house = houseWords(new Map([['name', { value: 'Alder & Finch', at: 'House!B4' }]]), 'a4');
    expect(letterheadOf(house)).toEqual([{ as: 'words', value: 'Alder & Finch', at: 'House!B4' }]);
    expect(linesOf(house, 'address1', 'name')).toHaveLength(1);
  });

  it('know each line by its label, whatever its case', () => {
    for (const { key, label } of HOUSE_LINES) expect(houseKey(label.toUpperCase())).toBe(key);
    expect(houseKey('colour of the door')).toBeUndefined();
  });

  // 30 to a Letter sheet, 24 to an A4: common practice, no source.
  it.each([
    ['letter', 30],
    ['a4', 24],
  ] as const)('a sheet of %s has %d labels', (size, labels) => {
    const house = houseWords(new Map(), size);
    expect(Number(house.labelsAcross?.value) * Number(house.labelsDown?.value)).toBe(labels);
  });
});
