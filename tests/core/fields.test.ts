import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/core/answer';
import * as fields from '../../src/core/fields';
import type { CellIn, Kind } from '../../src/core/fields';
import { inches } from '../../src/core/length';
import { CENTIMETRES, INCHES, type Unit } from '../../src/core/unit';

function read(kind: Kind<unknown>, raw: CellIn, unit: Unit = INCHES): unknown {
  try {
    const value = kind.read(raw, { name: 'rod_width', unit });
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? String(value) : value;
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.finding.sentence;
    throw thrown;
  }
}

describe('a cell', () => {
  it('is plain whether it comes alone, as a range of one, or with a format', () => {
    for (const raw of [84.5, '84 1/2', [[84.5]], { type: 'FormattedNumber', basicValue: 84.5 }])
      expect(read(fields.SIZE, raw)).toBe(inches(84.5));
  });

  it('that shows an error is named, in each way a platform hands one over', () => {
    for (const raw of [
      '#N/A',
      { type: 'Error', basicValue: '#N/A' },
      { basicType: 'Error', basicValue: '#N/A' },
      [['#N/A']],
    ])
      expect(read(fields.SIZE, raw)).toBe(
        'rod_width points at a cell that shows #N/A. Mend that cell first.',
      );
  });

  it('that is a range is refused with its size', () => {
    expect(
      read(fields.SIZE, [
        [1, 2, 3],
        [4, 5, 6],
      ]),
    ).toContain('2 rows × 3 columns');
  });

  it('that is blank is nothing', () => {
    for (const raw of [undefined, null, '', '  ', [['']]]) expect(read(fields.SIZE, raw)).toBeUndefined();
  });
});

describe('a length', () => {
  it('of 0 is blank where it makes no sense, and a figure where it does', () => {
    expect(read(fields.SIZE, 0)).toBeUndefined();
    expect(read(fields.REPEAT, '0')).toBeUndefined();
    expect(read(fields.ALLOWANCE, 0)).toBe(0);
    expect(read(fields.SHIFT, 0)).toBe(0);
  });

  it('below nothing is refused, save as a shift', () => {
    expect(read(fields.SIZE, -3)).toBe('rod_width reads -3. It must be above 0.');
    expect(read(fields.ALLOWANCE, -3)).toBe('rod_width reads -3. It must be 0 or more.');
    expect(read(fields.SHIFT, '-1/2')).toBe(inches(-0.5));
  });

  it('that is absurdly large, no number or infinite is refused', () => {
    for (const raw of [1e6, 1e300, Infinity, NaN])
      expect(read(fields.SIZE, raw)).toContain('more than the most taken here');
  });

  it('is in the house’s unit where it is bare, and in its own where it says so', () => {
    expect(read(fields.SIZE, 100, CENTIMETRES)).toBe(1_000_000_000);
    expect(read(fields.SIZE, '100 cm', INCHES)).toBe(1_000_000_000);
    expect(read(fields.YARDS, 10)).toBe(inches(360));
    expect(read(fields.YARDS, 10, CENTIMETRES)).toBe(10_000_000_000);
  });

  it('that reads in two ways is refused with both', () => {
    expect(read(fields.SIZE, '1,234')).toBe(
      'rod_width reads “1,234”, which could be 1.234 or 1234. Write the one you mean.',
    );
  });

  it('TRUE is no length', () => {
    expect(read(fields.SIZE, true)).toContain('reads TRUE, which is not a length');
  });
});

describe('a fullness', () => {
  it('is a ratio', () => {
    expect(read(fields.FULLNESS, 2.5)).toBe(25_000);
    expect(read(fields.FULLNESS, '2,5')).toBe(25_000);
  });

  it('as a percentage is refused: some print 250 % for 2.5, others for 3.5', () => {
    expect(read(fields.FULLNESS, '250 %')).toContain('could be 2.5 times or 3.5 times');
  });

  it('below 1 or above 6 is refused', () => {
    expect(read(fields.FULLNESS, 0.5)).toContain('1 or more');
    expect(read(fields.FULLNESS, 250)).toContain('more than the most taken here, 6');
  });
});

describe('a share', () => {
  it('is 0.03 or 3 %', () => {
    expect(read(fields.SHARE, 0.03)).toBe(300);
    expect(read(fields.SHARE, '3 %')).toBe(300);
    expect(read(fields.SHARE, '3%')).toBe(300);
    expect(read(fields.RATE, '8.875%')).toBe('0.08875');
  });

  it('of 3 is refused: it would be 300 %', () => {
    expect(read(fields.SHARE, 3)).toContain('more than the most taken here, 0.5');
  });
});

describe('a count', () => {
  it('is whole, and a width may be half', () => {
    expect(read(fields.COUNT, 46)).toBe(46);
    expect(read(fields.COUNT, 46.00000000001)).toBe(46);
    expect(read(fields.COUNT, 2.5)).toContain('It must be a whole number');
    expect(read(fields.WIDTH_COUNT, 2.5)).toBe(2.5);
    expect(read(fields.WIDTH_COUNT, 2.25)).toContain('whole or half widths');
  });
});

describe('a list', () => {
  const list = fields.listKind(fields.SIZE, 'lengths');

  it('passes over blanks, and is nothing where all are blank', () => {
    expect(
      list.read(
        [
          [48, null],
          ['', 72],
        ],
        { name: 'lengths', unit: INCHES },
      ),
    ).toEqual([inches(48), inches(72)]);
    expect(list.read([[null], ['']], { name: 'lengths', unit: INCHES })).toBeUndefined();
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
    expect(read(fields.PRICE, text)).toBe(amount);
    expect(read(fields.MONEY, text)).toBe(amount);
  });

  it('in brackets is a credit, which no price is', () => {
    expect(read(fields.MONEY, '(25.00)')).toBe('-25');
    expect(read(fields.PRICE, '(25.00)')).toBe('rod_width reads “(25.00)”. It must be 0 or more.');
  });

  it('in words is refused as it was written', () => {
    expect(read(fields.PRICE, 'on $ request')).toBe(
      'rod_width reads “on $ request”, which is not a price. Write it like 12.50.',
    );
    expect(read(fields.PRICE, '$')).toBe('rod_width reads “$”, which is not a price. Write it like 12.50.');
  });
});

describe('a fullness', () => {
  it.each(['2.5', '2.5x', '2½', '2 1/2', '2 1/2 ×', '2.5 times', '2.5:1', '2.5 to 1', '2,5'])(
    'written %j is two and a half',
    (text) => {
      expect(read(fields.FULLNESS, text)).toBe(25_000);
    },
  );

  it.each(['x', ':1', '2.5y', '21/2'])('written %j is refused', (text) => {
    expect(read(fields.FULLNESS, text)).toContain(`reads “${text}”`);
  });
});

describe('a rate', () => {
  it('of 50 shows how 50 % is written', () => {
    expect(read(fields.RATE, 50)).toBe(
      'rod_width reads 50, more than the most taken here, 20. Write it like 0.45 or 45 %.',
    );
  });
});
