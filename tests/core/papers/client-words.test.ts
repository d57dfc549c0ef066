import { describe, expect, it } from 'vitest';
import { clientWords, specification } from '../../../src/core/papers/client-words';
import type { Window } from '../../../src/core/window/columns';
import { inches, READING_ROOM, windowAs } from './invented';

const workOf = (more: Partial<Window>) => windowAs({ ...READING_ROOM, ...more }).work;

describe('a window in the client’s words', () => {
  it.each<[Partial<Window>, string]>([
    [{}, 'pair of lined pinch-pleated draperies, Garden print, floor length, on a 104 in rod, installed'],
    [
      { draw: 'one-way left', lining: 'blackout', floorFinish: 'break' },
      'blackout-lined pinch-pleated drapery, one panel drawn to the left, Garden print, breaking on the floor, on a 104 in rod, installed',
    ],
    [
      { heading: 'wave', hangOn: 'none', lining: undefined },
      'pair of wave-headed draperies, Garden print, floor length, installed',
    ],
    [
      { measured: undefined, finishedDrop: inches(60.5), mount: 'recess', fabric: undefined },
      'pair of lined pinch-pleated draperies, 60 1/2 in long, on a 104 in rod, inside the opening, installed',
    ],
    [
      { draw: 'stationary', heading: 'goblet' },
      'pair of lined goblet-pleated side panels that stay open, Garden print, floor length, on a 104 in rod, installed',
    ],
  ])('%j', (more, said) => {
    expect(clientWords(workOf(more), true)).toBe(said);
  });

  it('says installed only where it is', () => {
    expect(clientWords(workOf({}), false)).not.toContain('installed');
  });
});

describe('its specification', () => {
  // By hand: rod 104 ÷ 2 + return 3½ + overlap 0 on rings = 55½; drop 98 − 2 = 96.
  it('has the finished sizes, the fullness delivered, what is behind and how it draws', () => {
    const said = specification(workOf({}), { drawnBy: 'wand', ownMaterial: true });
    expect(said).toContain('each panel 55 1/2 in wide by 96 in long');
    expect(said).toMatch(/\d\.\d\d times full; with lining; rod with \d brackets, \d+ rings, finials/);
    expect(said).toContain('opens from the centre, drawn by a wand; made from your own material');
  });

  it('says nothing of hardware where none is ordered, nor of drawing what stays', () => {
    const said = specification(workOf({ hangOn: 'none', draw: 'stationary cover' }));
    expect(said).not.toMatch(/rod|bracket|ring|opens|stacks/);
  });
});
