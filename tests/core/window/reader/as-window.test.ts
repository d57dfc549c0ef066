import { expect, it } from 'vitest';
import { UNITS } from '../../../../src/core/exact/length';
import { CENTIMETRES, INCHES } from '../../../../src/core/exact/unit';
import { windowOf } from '../../../../src/core/window/reader/as-window';

it('a projection and a mount, which the reader leaves as they are written, are read as their columns are', () => {
  expect(windowOf({ projection: '3 1/2', mount: 'inside' }, INCHES)).toEqual({
    projection: 3.5 * UNITS.in,
    mount: 'recess',
  });
  expect(windowOf({ projection: '9' }, CENTIMETRES)).toEqual({ projection: 9 * UNITS.cm });
});

it('what cannot be read so is left out', () => {
  expect(windowOf({ projection: 'standard', mount: 'as before' }, INCHES)).toEqual({
    projection: undefined,
    mount: undefined,
  });
});
