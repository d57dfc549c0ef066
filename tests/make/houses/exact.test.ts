import { expect, it } from 'vitest';
import { cents, exact, feetAndInches, plain, tape, upTo } from '../../../src/make/houses/exact';

it('takes decimals as written: 180 × 2.7 ÷ 54 is 9 and 180 × 2.2 ÷ 36 is 11', () => {
  expect(exact(180).mul(exact(2.7)).div(54).ceil().toString()).toBe('9');
  expect(exact(180).mul(exact(2.2)).div(36).ceil().toString()).toBe('11');
});

it('goes up to a step, and stays on one', () => {
  expect(upTo(exact('5.01'), exact('0.125')).toString()).toBe('5.125');
  expect(upTo(exact('5.5'), exact('0.125')).toString()).toBe('5.5');
});

it('rounds half a cent up: 7.25 % of 12.46 and of three of them (Streamlined Sales and Use Tax Agreement § 324)', () => {
  const rate = exact('0.0725');
  const each = cents(exact('12.46').mul(rate));
  expect([each.mul(3).toString(), cents(exact('37.38').mul(rate)).toString()]).toEqual(['2.7', '2.71']);
  expect(cents(exact('0.2346')).toString()).toBe('0.23');
});

it('writes lengths as a tape reads and in feet', () => {
  expect([tape(exact('84.5')), tape(exact('0.375')), tape(exact(96)), tape(exact('213.36'))]).toEqual([
    '84 1/2',
    '3/8',
    '96',
    '213.36',
  ]);
  expect([feetAndInches(exact('90.5')), feetAndInches(exact(84))]).toEqual([`7' 6 1/2"`, `7'`]);
  expect(plain(exact('1/3'), 3)).toBe(0.333);
});
