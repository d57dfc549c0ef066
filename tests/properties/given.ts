/** Windows, cloths and houses for properties; every length is a written one, so it means the same in any unit. */
import fc from 'fast-check';
import type { CellIn } from '../../src/core/cell/fields';

/** Whole 64ths of an inch, as a tape is read. */
export const sixtyFourths = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: least * 64, max: most * 64 }).map((whole) => whole / 64);

/** Inches as a text that says so: “84 1/2 in”. */
export const written = (inches: number): string => {
  const over = Math.round((inches % 1) * 64);
  return over === 0 ? `${inches} in` : `${Math.floor(inches)} ${over}/64 in`;
};

export const fullness = fc.constantFrom<number>(1, 1.5, 2, 2.2, 2.25, 2.3333, 2.5, 2.7, 3);
export const draw = fc.constantFrom('pair', 'one-way left', 'one-way right', 'stationary cover', undefined);
export const heading = fc.constantFrom(
  'pinch',
  'goblet',
  'cartridge',
  'box',
  'inverted',
  'pencil',
  'rod pocket',
  'tab top',
  'grommet',
  'wave',
  'flat',
);
export const rod = sixtyFourths(12, 700);
export const drop = sixtyFourths(12, 200);
export const fabric = sixtyFourths(30, 126);
export const repeat = fc.option(sixtyFourths(2, 40), { nil: undefined });
export const quantity = fc.constantFrom<number | undefined>(undefined, 1, 2, 3, 46);
export const match = fc.constantFrom(undefined, 'straight', 'half-drop');

const allowance = (...inches: readonly number[]): fc.Arbitrary<string> =>
  fc.constantFrom(...inches.map(written));

const RULES = {
  return: allowance(0, 3, 3.5),
  overlap: allowance(0, 1.5, 3),
  'side hem': allowance(0, 1, 3),
  seam: allowance(0, 0.5, 1),
  selvage: allowance(0, 0.5),
  'fullness basis': fc.constantFrom('finished width', 'rod width'),
  'widths rounding': fc.constantFrom('whole per panel', 'half per panel', 'whole per pair', 'nearest'),
  'one way returns': fc.constantFrom('both ends', 'one end'),
  'bottom allowance': allowance(4, 8),
  shrinkage: fc.constantFrom(0, 0.03),
  'repeat rule': fc.constantFrom(
    'every cut up',
    'first cut exact',
    'one repeat each',
    'half-drop alternating',
  ),
  'lining cut': fc.constantFrom('own allowances', 'less than face'),
  'yardage step': fc.constantFrom('0 yd', '1/8 yd', '1/2 yd', '0.1 m'),
  'yardage rounded by': fc.constantFrom('order', 'window'),
  'share half widths': fc.constantFrom('no', 'yes'),
} satisfies Record<string, fc.Arbitrary<CellIn>>;

export type HouseWords = Partial<Record<keyof typeof RULES, CellIn>>;

/** A house with any of its rules left out, which then stand at their defaults. */
export const house: fc.Arbitrary<HouseWords> = fc.record(RULES, { requiredKeys: ['yardage step'] });

export const rangeOf = (words: Readonly<Record<string, CellIn>>): CellIn => [
  ['rule', 'value'],
  ...Object.entries(words),
];
