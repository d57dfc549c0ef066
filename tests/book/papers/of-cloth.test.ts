import { describe, expect, it } from 'vitest';
import { withCloth, withLinings } from '../../../src/book/papers/of-cloth';
import { DEFAULT_HOUSE } from '../../../src/core/house/house';
import { count, words } from '../../../src/core/papers/paper';
import type { RowRead } from '../../../src/core/window/reader/slots';

const row = (values: RowRead['values']): RowRead => ({ row: 4, is: 'window', values, unread: [], dated: [] });
const cloths = [
  { name: 'Heron linen', match: words('1/2 drop'), weight: count(14) },
  { name: 'lining', weight: count(5) },
];

describe('a window’s cloth', () => {
  it('says its match and weight where the row says none, however its name is written', () => {
    expect(withCloth(row({ fabric: 'HERON  linen', match: undefined }), cloths).values).toEqual({
      fabric: 'HERON  linen',
      match: 'half-drop',
      arealWeight: 14,
    });
  });
  it('never speaks over the row', () => {
    const own = { fabric: 'Heron linen', match: 'straight', arealWeight: 9 } as const;
    expect(withCloth(row(own), cloths).values).toEqual(own);
  });
  it('of another name, or a weight of 0, says nothing', () => {
    expect(withCloth(row({ fabric: 'Moss' }), cloths).values).toEqual({ fabric: 'Moss' });
    const none = [{ name: 'Moss', weight: count(0) }];
    expect(withCloth(row({ fabric: 'Moss' }), none).values.arealWeight).toBeUndefined();
  });
});

it('a lining weighs what its row says, unless the house rules say it', () => {
  expect(withLinings(DEFAULT_HOUSE, cloths).rules.liningWeight).toBe(5);
  const set = { ...DEFAULT_HOUSE, rules: { ...DEFAULT_HOUSE.rules, liningWeight: 4 } };
  expect(withLinings(set, cloths).rules.liningWeight).toBe(4);
});
