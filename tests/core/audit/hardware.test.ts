import { describe, expect, it } from 'vitest';
import { oddGrommets, stackOverGlass, tooNarrowToTurn } from '../../../src/core/audit/hardware';
import { checked, findsBy } from './row';

it('grommets are even in count, of whatever heading has them', () => {
  const found = (heading: string, grommets: number) => findsBy(oddGrommets, { heading, grommets });
  expect(found('grommet', 17)).toEqual(['oddGrommets at grommets']);
  expect(found('grommet', 18)).toEqual([]);
  expect(found('pinch', 17)).toEqual([]);
});

describe('the stack beside the glass', () => {
  const row = { 'inside width': 72, heading: 'pinch', 'left ext': 11, 'right ext': 11 };
  it('is looked at only where the glass is to be clear', () => {
    expect(findsBy(stackOverGlass, row)).toEqual([]);
    // A third of a rod of 94 is 31⅓ in, 15⅔ a side, and 11 in are beside the glass: common practice, no source.
    expect(findsBy(stackOverGlass, { ...row, 'clear of glass': 'yes' })).toEqual([
      'stackOverGlass at rod width',
    ]);
    expect(findsBy(stackOverGlass, row, [['keep glass clear', 'yes']])).toHaveLength(1);
    expect(
      findsBy(stackOverGlass, { ...row, 'left ext': 40, 'right ext': 40, 'clear of glass': 'yes' }),
    ).toEqual([]);
  });
});

it('cloth too narrow to turn explains its yardage, which is then not compared', () => {
  const row = {
    'rod width': 94,
    drop: 96,
    heading: 'pinch',
    'fabric width': 54,
    railroaded: 'yes',
    yardage: 40,
  };
  expect(findsBy(tooNarrowToTurn, row)).toEqual(['orderTooNarrowToTurn at fabric width']);
  expect([...checked(row).explained()]).toEqual(['yardage', 'railroadedYardage']);
  expect(findsBy(tooNarrowToTurn, { ...row, 'fabric width': 126 })).toEqual([]);
});
