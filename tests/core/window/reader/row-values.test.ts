import { describe, expect, it } from 'vitest';
import { inches, UNITS } from '../../../../src/core/exact/length';
import type { Cell } from '../../../../src/core/window/reader/cells';
import { valuesOfRow } from '../../../../src/core/window/reader/row-values';
import type { Plan, Slot } from '../../../../src/core/window/reader/slots';
import { planOf, slot } from './slots';

const read = (slots: readonly Slot[], cells: readonly Cell[], more: Partial<Plan> = {}) =>
  valuesOfRow(1, cells, planOf(slots, more));

describe('a cell of a row', () => {
  it('is read as its column means, and said to be unread where it cannot be', () => {
    const { values, unread } = read([slot(0, ['rodWidth']), slot(1, ['finishedDrop'])], ['94 1/2', 'high']);
    expect(values).toEqual({ rodWidth: inches(94.5) });
    expect(unread).toEqual([{ at: 1, key: 'finishedDrop', text: 'high' }]);
  });

  it('of two figures gives each to its own meaning', () => {
    const both = [slot(0, ['rodWidth'], { part: 0 }), slot(0, ['finishedDrop'], { part: 1 })];
    expect(read(both, ['94 x 96', '94 x 96']).values).toEqual({
      rodWidth: inches(94),
      finishedDrop: inches(96),
    });
  });

  it('of a cloth and how wide it lies gives both, in the unit that the width must have', () => {
    const both = [slot(0, ['fabric', 'fabricWidth'])];
    for (const [text, name, width] of [
      ['Riverstone 137', 'Riverstone', 137 * UNITS.cm],
      ['Larkhill, 54"', 'Larkhill', inches(54)],
      ['Karee Weave (1400)', 'Karee Weave', 1_400 * UNITS.mm],
    ] as const)
      expect(read(both, [text]).values).toEqual({ fabric: name, fabricWidth: width });
    // No cloth lies 12 in wide.
    expect(read(both, ['Ash 12']).values).toEqual({ fabric: 'Ash 12' });
  });

  it('of a treatment that says its fullness gives it', () => {
    const treatment = [slot(0, ['heading', 'draw', 'fullness', 'lining'])];
    expect(read(treatment, ['Pinch pleat pair @ 2.5, lined']).values).toEqual({
      heading: 'pinch',
      draw: 'pair',
      fullness: 2.5,
      lining: 'lined',
    });
    expect(read(treatment, ['Grommet pair, lined']).values).not.toHaveProperty('fullness');
  });

  it('of one length in two units is read once; of two readings it is unread', () => {
    const rod = [slot(0, ['rodWidth'])];
    expect(read(rod, ['36 (91.4 cm)']).values).toEqual({ rodWidth: inches(36) });
    expect(read(rod, ['186/188'])).toMatchObject({
      values: {},
      unread: [{ key: 'rodWidth', text: '186/188' }],
    });
    expect(read(rod, ['15/16']).values).toEqual({ rodWidth: inches(0.9375) });
  });

  it('of a fraction is added to the whole inches beside it, and a date among fractions is told', () => {
    const parts = [slot(0, ['rodWidth']), slot(1, [], { addsTo: 0 })];
    expect(read(parts, [94, '1/2']).values).toEqual({ rodWidth: inches(94.5) });
    expect(read(parts, [94, { day: 46_024 }]).dated).toEqual([1]);
  });

  it('of a room may count its windows', () => {
    expect(read([slot(0, ['room', 'quantity'])], ['Bed 2 (x3)']).values).toEqual({
      room: 'Bed 2',
      quantity: 3,
    });
  });

  it('of a place stands before the room', () => {
    const places = [slot(0, [], { other: 'place' }), slot(1, ['room'])];
    expect(read(places, ['First floor', 'Den']).values).toEqual({ room: 'First floor, Den' });
  });

  it('of a width may give the widths of each side', () => {
    expect(read([slot(0, ['rodWidth']), slot(1, ['draw'])], ['1½ w ea', 'pair']).values).toEqual({
      widths: 3,
      draw: 'pair',
    });
  });
});

describe('the draw of a row', () => {
  const said = [slot(0, ['heading', 'draw']), slot(1, ['draw'])];
  it('is the word of its own column before that of the treatment', () => {
    expect(read(said, ['pinch pleat pair', 'one way left']).values.draw).toBe('one-way left');
    expect(read(said, ['pinch pleat pair', null]).values.draw).toBe('pair');
  });

  it('to a side that is not said is asked for', () => {
    const { values, unread } = read([slot(0, ['draw'])], ['single'], { stated: { draw: 'pair' } });
    expect(values.draw).toBeUndefined();
    expect(unread).toEqual([
      { at: 0, key: 'draw', text: expect.stringContaining('side') as string, isOneWay: true },
    ]);
  });

  it('and its lining are what a line above says, where the row says none', () => {
    const stated = { draw: 'pair', lining: 'lined' };
    expect(read([slot(0, ['rodWidth'])], [94], { stated }).values).toMatchObject(stated);
  });

  it('of half a pair is one curtain', () => {
    const pairs = [slot(0, ['quantity', 'draw'], { draws: 'each is a pair' })];
    expect(read(pairs, [0.5]).values).toEqual({ quantity: 1 });
    expect(read(pairs, [2]).values).toEqual({ quantity: 2, draw: 'pair' });
  });
});

it('yardage said for a panel is the row’s', () => {
  const slots = [
    slot(0, ['draw']),
    slot(1, ['quantity']),
    slot(2, ['yardage'], { unit: 'yd', per: 'panel' }),
  ];
  expect(read(slots, ['pair', 3, 4]).values.yardage).toBe(24 * UNITS.yd);
});
