import { describe, expect, it } from 'vitest';
import {
  Above,
  answerAlike,
  NOTHING_SAID,
  saidAfter,
  type Said,
} from '../../../../src/core/window/reader/above';

const BEFORE: Said = { carried: { room: 'Hall', job: 'Weir House' }, cells: ['Hall', 54] };

describe('what the rows above say', () => {
  it('is what was said last, of these rows or of those before them', () => {
    const above = new Above(BEFORE);
    above.carry('room', 'Den');
    above.remember(0, 'Den');
    expect([above.value('room'), above.value('job'), above.value('date')]).toEqual([
      'Den',
      'Weir House',
      undefined,
    ]);
    expect([above.cell(0), above.cell(1), above.cell(2)]).toEqual(['Den', 54, undefined]);
    expect(saidAfter(BEFORE, above.since)).toEqual({
      carried: { room: 'Den', job: 'Weir House' },
      cells: ['Den', 54],
    });
  });

  it('carries nothing into a new section, where a ditto still repeats the cell above', () => {
    const above = new Above(BEFORE);
    above.begin();
    expect([above.value('room'), above.cell(0)]).toEqual([undefined, 'Hall']);
    expect(saidAfter(BEFORE, above.since)).toEqual({ carried: {}, cells: ['Hall', 54] });
  });

  it('notes what only the rows before could tell, so that a guess of these can be proved', () => {
    const above = new Above(BEFORE);
    above.carry('room', 'Den');
    above.value('room');
    above.value('job');
    above.cell(1);
    expect(above.asked).toEqual({ carried: ['job'], cells: [1] });
    expect(answerAlike(above.asked, BEFORE, { ...BEFORE, carried: { job: 'Weir House' } })).toBe(true);
    expect(answerAlike(above.asked, BEFORE, NOTHING_SAID)).toBe(false);
    above.forget();
    expect(above.asked).toEqual({ carried: [], cells: [] });
    expect(above.value('room')).toBe('Hall');
  });
});
