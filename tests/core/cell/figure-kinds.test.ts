import { describe, expect, it } from 'vitest';
import {
  COUNT,
  FULLNESS,
  MONEY,
  PRICE,
  PART,
  RATE,
  SHARE,
  WIDTH_COUNT,
} from '../../../src/core/cell/figure-kinds';
import { read } from './read-kind';

describe('a fullness', () => {
  it('is a ratio', () => {
    expect(read(FULLNESS, 2.5)).toBe(25_000);
    expect(read(FULLNESS, '2,5')).toBe(25_000);
  });

  it('as a percentage is refused: some print 250 % for 2.5, others for 3.5', () => {
    expect(read(FULLNESS, '250 %')).toContain('could be 2.5 times or 3.5 times');
  });

  it('below 1 or above 6 is refused', () => {
    expect(read(FULLNESS, 0.5)).toContain('1 or more');
    // A residue of binary arithmetic below 1 is 1.
    expect(read(FULLNESS, 1 - 2 * Number.EPSILON)).toBe(10_000);
    expect(read(FULLNESS, 1 - Number.EPSILON / 2)).toBe(10_000);
    expect(read(FULLNESS, 250)).toContain('more than the most taken here, 6');
  });
});

describe('a share', () => {
  it('is 0.03 or 3 %', () => {
    expect(read(SHARE, 0.03)).toBe(300);
    expect(read(SHARE, '3 %')).toBe(300);
    expect(read(SHARE, '3%')).toBe(300);
    expect(read(RATE, '8.875%')).toBe('0.08875');
  });

  it('of 3 is refused: it would be 300 %', () => {
    expect(read(SHARE, 3)).toContain('more than the most taken here, 0.5');
  });
});

describe('a count', () => {
  it('is whole, and a width may be half', () => {
    expect(read(COUNT, 46)).toBe(46);
    expect(read(COUNT, 46.00000000001)).toBe(46);
    expect(read(COUNT, 2.5)).toContain('It must be a whole number');
    expect(read(WIDTH_COUNT, 2.5)).toBe(2.5);
    expect(read(WIDTH_COUNT, 2.25)).toContain('whole or half widths');
  });
});

describe('an amount of money', () => {
  it.each([
    ['$1,234.50', '1234.5'],
    ['1.234,50 €', '1234.5'],
    ['12,50', '12.5'],
    ['£ 45', '45'],
    ['1,234', '1234'],
    ['USD 9.95', '9.95'],
  ])('written %j reads %s', (text, amount) => {
    expect(read(PRICE, text)).toBe(amount);
    expect(read(MONEY, text)).toBe(amount);
  });

  it('sheds what binary arithmetic leaves, also where the fifteenth digit is in doubt', () => {
    // 910.05 × (1 − 2 ε) lies a hair below the middle of two figures of 15 digits.
    expect(read(PRICE, 910.0499999999995)).toBe('910.05');
    expect(read(PRICE, 59.99999999999999)).toBe('60');
    expect(read(PRICE, 910.049999999999)).toBe('910.049999999999');
  });

  it('in brackets is a credit, which no price is', () => {
    expect(read(MONEY, '(25.00)')).toBe('-25');
    expect(read(PRICE, '(25.00)')).toBe('rod_width reads “(25.00)”. It must be 0 or more.');
  });

  it('in words is refused as it was written', () => {
    expect(read(PRICE, 'on $ request')).toBe(
      'rod_width reads “on $ request”, which is not a price. Write it like 12.50.',
    );
    expect(read(PRICE, '$')).toBe('rod_width reads “$”, which is not a price. Write it like 12.50.');
  });
});

describe('a fullness', () => {
  it.each(['2.5', '2.5x', '2½', '2 1/2', '2 1/2 ×', '2.5 times', '2.5:1', '2.5 to 1', '2,5'])(
    'written %j is two and a half',
    (text) => {
      expect(read(FULLNESS, text)).toBe(25_000);
    },
  );

  it.each(['x', ':1', '2.5y', '21/2'])('written %j is refused', (text) => {
    expect(read(FULLNESS, text)).toContain(`reads “${text}”`);
  });
});

describe('a part of an amount', () => {
  it('is all of it at most, and more than that is offered as so many per cent', () => {
    expect(read(PART, 1)).toBe('1');
    expect(read(PART, '100 %')).toBe('1');
    expect(read(PART, 8.25)).toBe(
      'rod_width reads 8.25, more than the most taken here, 1. Write it like 8.25 %.',
    );
    expect(read(PART, '825 %')).toBe(
      'rod_width reads “825 %”, more than the most taken here, 1. Write it like 0.0825 or 8.25 %.',
    );
    expect(read(PART, 1.0000000000000002)).toBe('1');
  });
});

describe('a rate', () => {
  it('above the whole is a markup', () => {
    expect(read(RATE, 1.5)).toBe('1.5');
    expect(read(RATE, '150 %')).toBe('1.5');
  });

  it('of 50 shows how 50 % is written', () => {
    expect(read(RATE, 50)).toBe('rod_width reads 50, more than the most taken here, 20. Write it like 50 %.');
  });
});
