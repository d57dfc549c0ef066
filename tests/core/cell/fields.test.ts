import { describe, expect, it } from 'vitest';
import { listKind } from '../../../src/core/cell/fields';
import { SIZE } from '../../../src/core/cell/length-kinds';
import { inches } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import { read } from './read-kind';

describe('a cell', () => {
  it('is plain whether it comes alone, as a range of one, or with a format', () => {
    for (const raw of [84.5, '84 1/2', [[84.5]], { type: 'FormattedNumber', basicValue: 84.5 }])
      expect(read(SIZE, raw)).toBe(inches(84.5));
  });

  it('that shows an error is named, in each way a platform hands one over', () => {
    for (const raw of [
      '#N/A',
      { type: 'Error', basicValue: '#N/A' },
      { basicType: 'Error', basicValue: '#N/A' },
      [['#N/A']],
    ])
      expect(read(SIZE, raw)).toBe('rod_width points at a cell that shows #N/A. Mend that cell first.');
  });

  it('that is a range is refused with its size', () => {
    expect(
      read(SIZE, [
        [1, 2, 3],
        [4, 5, 6],
      ]),
    ).toContain('2 rows × 3 columns');
  });

  it('that is blank is nothing', () => {
    for (const raw of [undefined, null, '', '  ', [['']]]) expect(read(SIZE, raw)).toBeUndefined();
  });
});

describe('a list', () => {
  const list = listKind(SIZE, 'lengths');

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
