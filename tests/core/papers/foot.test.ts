import { expect, it } from 'vitest';
import { footOf } from '../../../src/core/papers/foot';
import { words } from '../../../src/core/papers/paper';

it('the foot says which paper and whose, as far as it is known', () => {
  expect(footOf({ reference: words('2611-04'), client: words('The Pellmere') }, 'Quote')).toBe(
    'Quote · 2611-04 · The Pellmere',
  );
  expect(footOf({}, 'Quote')).toBe('Quote');
});
