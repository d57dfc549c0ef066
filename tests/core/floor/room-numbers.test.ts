import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/core/cell/answer';
import { roomNumbers } from '../../../src/core/floor/room-numbers';

const refusal = (pattern: string): string => {
  try {
    return `read as ${roomNumbers(pattern).join(' ')}`;
  } catch (thrown) {
    return thrown instanceof Refusal ? thrown.finding.sentence : String(thrown);
  }
};

describe('rooms by pattern', () => {
  it('a range holds both its ends', () => {
    const rooms = roomNumbers('401-448');
    expect([rooms.length, rooms[0], rooms.at(-1)]).toEqual([48, '401', '448']);
  });

  it('one side of the corridor', () => {
    expect(roomNumbers('401–409 odd')).toEqual(['401', '403', '405', '407', '409']);
    expect(roomNumbers('401 to 406 even side')).toEqual(['402', '404', '406']);
  });

  it('rooms left out, singles added, each once', () => {
    expect(roomNumbers('401-405, 12, 403 not 404')).toEqual(['401', '402', '403', '405', '12']);
    expect(roomNumbers('401-448 skip 404, 413')).toHaveLength(46);
  });

  it('a prefix and leading noughts stay', () => {
    expect(roomNumbers('A008-A011')).toEqual(['A008', 'A009', 'A010', 'A011']);
  });

  it.each([
    ['448-401', 'runs backwards'],
    ['four hundred', 'Write numbers and ranges'],
    ['401-405 not 410', 'Room 410 is to be left out'],
    ['402 odd', 'Write numbers and ranges'],
    ['401-401 even', 'leaves no room'],
    ['1-99999', 'more than 5000 rooms'],
    ['', 'leaves no room'],
  ])('“%s” is refused: %s', (pattern, words) => {
    expect(refusal(pattern)).toContain(words);
  });
});
