import { describe, expect, it } from 'vitest';
import { UNITS, type LengthUnit } from '../../../src/core/exact/length';
import { readDecimal, readWritten } from '../../../src/core/exact/written';

/** In inches, whatever it is written in. */
const read = (text: string, unit: LengthUnit = 'in'): number | string => {
  const reading = readWritten(text, unit);
  if ('length' in reading) return reading.length / UNITS.in;
  return 'doubt' in reading ? reading.doubt.join(' or ') : 'unreadable';
};

describe('a measure as people write it', () => {
  it.each([
    ['84 1/2', 84.5],
    ['84-1/2', 84.5],
    ['84 - 1/2', 84.5],
    ['84½', 84.5],
    ['84 ½', 84.5],
    ['84 1⁄2', 84.5],
    ['1/2', 0.5],
    ['.5', 0.5],
    [',5', 0.5],
    ['84,5', 84.5],
    ['84.5 in.', 84.5],
    ['84 1/2"', 84.5],
    ['84 1/2”', 84.5],
    ['84 1/2″', 84.5],
    ["84 1/2''", 84.5],
    ["7'", 84],
    ["7' 6", 90],
    ['7\' 6"', 90],
    ['7\'6"', 90],
    ['7\'-6"', 90],
    ['7\' - 6 1/2"', 90.5],
    ["7'-6", 90],
    ['7’ 6”', 90],
    ['7′ 6½″', 90.5],
    ['7\' 1/2"', 84.5],
    ['7 ft 6', 90],
    ['7 ft. 6 1/4 in.', 90.25],
    ['7 FEET 6 Inches', 90],
    ['7 1/2 ft', 90],
    ['2 yd', 72],
    ['2 yd 1 ft 3 in', 87],
    ['3 1/4 yd', 117],
    ['-1/2', -0.5],
    ['−2', -2],
    ['254 cm', 100],
    ['25,4 cm', 10],
    ['2,54 m', 100],
    ['2.54m', 100],
    ['2540 mm', 100],
    ['2 m 54 cm', 100],
    ['1,234.5 mm', 1234.5 / 25.4],
    ['1.234,5 mm', 1234.5 / 25.4],
    ['  84   1/2  ', 84.5],
    ['84\u00a01/2', 84.5],
  ])('%j reads %d in', (text, figure) => {
    expect(read(text)).toBeCloseTo(figure as number, 9);
  });

  it.each([
    ['7 6', '7 ft 6 in or 76'],
    ['7-6', '7 ft 6 in or 76'],
    ['1,234', '1.234 or 1234'],
    ['1,234 mm', '1.234 mm or 1234 mm'],
    ['2 m 5', '5 cm after the metres or 5 mm after the metres'],
    ['2 m 1/2', '1/2 cm after the metres or 1/2 mm after the metres'],
  ])('%j is refused: %s', (text, doubt) => {
    expect(read(text)).toBe(doubt);
  });

  it.each([
    '',
    '  ',
    '-',
    'wide',
    '84 about',
    '84 x 96',
    '1/0',
    '84 1/0',
    '8 in 7 ft',
    '84 84 84',
    '84.5 1/2',
    '1e5',
    '--2',
    '2 m 5 in',
    '6"6"',
    '84 1/2/3',
    '½½',
    'in',
    'NaN',
    'Infinity',
  ])('%j is unreadable', (text) => {
    expect(read(text)).toBe('unreadable');
  });

  it('takes a bare figure in the unit of the place', () => {
    expect(read('100', 'cm')).toBeCloseTo(100 / 2.54, 9);
    expect(read('3 1/4', 'yd')).toBe(117);
  });

  it('refuses what is too long to be exact', () => {
    expect(read('9'.repeat(30))).toBe('unreadable');
  });
});

describe('a plain figure', () => {
  it.each([
    ['2.5', 2.5],
    ['2,5', 2.5],
    ['-3', -3],
    ['+3', 3],
    ['1,234.5', 1234.5],
    ['1.234.567', 1_234_567],
    ['2 1/2', 2.5],
    ['2½', 2.5],
    ['-3/4', -0.75],
  ])('%j reads %d', (text, figure) => {
    expect(readDecimal(text)).toBe(figure);
  });

  it('names both readings of 1,234, and reads nothing into words', () => {
    expect(readDecimal('1,234')).toEqual(['1.234', '1234']);
    for (const text of ['', 'two', '2.5 x', '1,23,4', '1.2.3', '21/2', '1/0'])
      expect(readDecimal(text)).toBeNaN();
  });
});
