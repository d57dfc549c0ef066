import { expect, it } from 'vitest';
import { inches } from '../../../src/core/exact/length';
import { MEASURE_RULES as RULES } from '../../../src/core/house/measure';
import { readBack } from './read-back';

it('every default is read from a cell as it is written there', () => {
  expect(readBack(RULES)).toBeGreaterThan(30);
});

/** Common practice, no source: 6 to 10 in, 11 to 15 in and 16 to 20 in a side, for openings up to 44 in, to 96 in and beyond. */
it('the bands of the side extension grow with the opening and leave no gap', () => {
  const bands = [
    [RULES.extensionSmallLow, RULES.extensionSmallHigh],
    [RULES.extensionMediumLow, RULES.extensionMediumHigh],
    [RULES.extensionLargeLow, RULES.extensionLargeHigh],
  ].map((band) => band.map(({ standard }) => standard));
  expect(bands).toEqual([
    [inches(6), inches(10)],
    [inches(11), inches(15)],
    [inches(16), inches(20)],
  ]);
  expect([RULES.extensionSmallUpTo.standard, RULES.extensionMediumUpTo.standard]).toEqual([
    inches(44),
    inches(96),
  ]);
});
