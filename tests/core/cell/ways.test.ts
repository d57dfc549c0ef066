import { expect, it } from 'vitest';
import * as ways from '../../../src/core/cell/ways';
import { choiceKind } from '../../../src/core/cell/fields';
import { INCHES } from '../../../src/core/exact/unit';

const LISTS = Object.entries(ways).filter(([, list]) => typeof list === 'object' && 'list' in list);

it.each(LISTS)('%s is read by each of its words, however they are spelt', (_, list) => {
  const kind = choiceKind<string>('a way', list as never);
  const taken = new Map<string, string>();
  for (const { word, says, also = [] } of (list as typeof ways.YES_NO).list) {
    expect(says).not.toBe('');
    for (const spelt of [word, ...also]) {
      // Two ways behind one word could not be told apart.
      expect(taken.get(spelt) ?? word, spelt).toBe(word);
      taken.set(spelt, word);
      for (const typed of [spelt, spelt.toUpperCase(), ` ${spelt} `])
        expect(kind.read(typed, { name: 'way', unit: INCHES }), typed).toBe(word);
    }
  }
});

it('a pole means rings and a rail a track, where a window says what it hangs on', () => {
  const kind = choiceKind('what it hangs on', ways.WINDOW_HANGS_ON);
  const read = (cell: string) => kind.read(cell, { name: 'hang on', unit: INCHES });
  expect([read('pole'), read('rod'), read('rail'), read('carriers'), read('by others')]).toEqual([
    'rings',
    'rings',
    'track',
    'track',
    'none',
  ]);
});
