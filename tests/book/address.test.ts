import { describe, expect, it } from 'vitest';
import {
  areaAt,
  areaText,
  columnOf,
  common,
  letters,
  readAddress,
  sheetText,
  within,
} from '../../src/book/address';

describe('columns', () => {
  // Excel's last column is XFD, its 16,384th (Microsoft, “Excel specifications and limits”).
  it.each([
    [0, 'A'],
    [25, 'Z'],
    [26, 'AA'],
    [701, 'ZZ'],
    [702, 'AAA'],
    [16_383, 'XFD'],
  ])('column %i is %s', (column, text) => {
    expect(letters(column)).toBe(text);
    expect(columnOf(text)).toBe(column);
  });
});

describe('addresses', () => {
  it.each([
    ['Windows!A1', areaAt('Windows', 0, 0)],
    ["'Ground floor'!$B$2:$C$4", areaAt('Ground floor', 1, 1, 3, 2)],
    ["'Ann''s job'!C4:B2", areaAt("Ann's job", 1, 1, 3, 2)],
    ['D10', areaAt('Here', 9, 3)],
  ])('%s is read', (text, area) => {
    expect(readAddress(text, 'Here')).toEqual(area);
  });
  it.each(['', 'A0', 'A:A', '#REF!', 'Width', 'A1:B2:C3'])('“%s” is no address', (text) => {
    expect(readAddress(text, 'Here')).toBeUndefined();
  });
  it('what is written is read back', () => {
    for (const sheet of ['Windows', 'Windows 2', "Ann's", 'A1', 'RC', 'Étage', '2nd floor']) {
      const area = areaAt(sheet, 3, 27, 5, 2);
      expect(readAddress(areaText(area, true))).toEqual(area);
    }
  });
  it('a sheet that reads like a cell is quoted', () => {
    expect(sheetText('AB12')).toBe("'AB12'");
    expect(sheetText('R1C1')).toBe("'R1C1'");
    expect(sheetText('Windows')).toBe('Windows');
  });
  it('areas meet only on their own sheet', () => {
    expect(common(areaAt('A', 0, 0, 3, 3), areaAt('a', 2, 2, 3, 3))).toEqual(areaAt('A', 2, 2));
    expect(common(areaAt('A', 0, 0, 3, 3), areaAt('B', 2, 2, 3, 3))).toBeUndefined();
    expect(within(areaAt('A', 1, 1), areaAt('A', 0, 0, 2, 2))).toBe(true);
    expect(within(areaAt('A', 1, 1, 2, 2), areaAt('A', 0, 0, 2, 2))).toBe(false);
  });
});
