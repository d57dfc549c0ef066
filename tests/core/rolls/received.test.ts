import { describe, expect, it } from 'vitest';
import { UNITS } from '../../../src/core/exact/length';
import { readFlaws, receivedIn } from '../../../src/core/rolls/received';
import { CENTIMETRES, INCHES } from '../../../src/core/exact/unit';

const HEAD = ['roll of', 'dye lot', 'roll length (yd)', 'flaws at (yd)', 'whole cuts'];

describe('a table of rolls', () => {
  it('is read by its headings: cloth, length, lot and flaws; a line without a length is no roll', () => {
    const rolls = receivedIn(
      [
        HEAD,
        ['Ostrel linen', 'A', 58.5, '12-12 1/2; 30', 16],
        ['ostrel  Linen ', 'B', '61 1/2', null, 17],
        ['Lining', null, 60, 0, null],
        ['Fen voile', 'C', null, null, null],
        [null, null, null, null, null],
      ],
      INCHES,
    );
    expect([...(rolls ?? [])]).toEqual([
      [
        'ostrel linen',
        [
          { length: '58.5', lot: 'A', flaws: '12-12 1/2; 30' },
          { length: '61 1/2', lot: 'B', flaws: '' },
        ],
      ],
      ['lining', [{ length: '60', lot: '', flaws: '' }]],
    ]);
  });

  it.each([
    ['Fabric', 'Lot', 'Length'],
    ['Cloth', 'Batch', 'Length received (yd)'],
    ['Material', 'Dye lot no.', 'Roll'],
  ])('is told by “%s”, “%s”, “%s” too, below a title', (...headings) => {
    const rows = [['Rolls in hand'], headings, ['Fen voile', 'A', 50]];
    expect(receivedIn(rows, INCHES)?.get('fen voile')).toEqual([{ length: '50', lot: 'A', flaws: '' }]);
  });

  it('takes a flaw from either end of it, and one at a point', () => {
    const flaws = (text: string) =>
      readFlaws(text, 'roll 1, flaws', INCHES).map(({ from, length }) => [
        from / UNITS.yd,
        length / UNITS.yd,
      ]);
    expect(flaws('12-12 1/2; 30')).toEqual([
      [12, 0.5],
      [30, 0],
    ]);
    expect(flaws('12 1/2 to 12, 0-1')).toEqual([
      [12, 0.5],
      [0, 1],
    ]);
  });

  it('keeps metres as metres in an inch house', () => {
    const rows = [
      ['fabric', 'lot', 'roll length (m)'],
      ['Fen voile', 'A', 50],
      ['Fen voile', 'A', '50 yd'],
    ];
    expect(
      receivedIn(rows, INCHES)
        ?.get('fen voile')
        ?.map(({ length }) => length),
    ).toEqual(['50 m', '50 yd']);
    expect(receivedIn(rows, CENTIMETRES)?.get('fen voile')?.[0]?.length).toBe('50');
  });

  it.each([
    ['windows', ['room', 'fabric', 'length', 'heading']],
    ['a cutter’s list', ['cloth', 'roll', 'dye lot', 'roll length (yd)', 'cut length (in)']],
    ['fabrics', ['fabric', 'supplier', 'price a yd']],
  ])('%s are no rolls', (_, headings) => {
    expect(receivedIn([headings, ['Fen voile', 'A', 60, 96, 96]], INCHES)).toBeUndefined();
  });
});
