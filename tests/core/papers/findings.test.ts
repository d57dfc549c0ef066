import { describe, expect, it } from 'vitest';
import { findingsPaper } from '../../../src/core/papers/findings';
import { words } from '../../../src/core/papers/paper';
import { inches, jobWith, READING_ROOM, windowAs } from './invented';

const said = (...given: Parameters<typeof jobWith>): string =>
  JSON.stringify(findingsPaper(jobWith(...given)).blocks);

describe('the statement of findings', () => {
  it('says what CHECK says, under its room', () => {
    // An opening of 84 in asks 11 to 15 in each side, by common practice; 4 is too little.
    const narrow = windowAs({ ...READING_ROOM, leftExtension: inches(4), rightExtension: inches(4) });
    expect(said([narrow])).toMatch(/"group".*Reading room.*the usual side extension is 11 in to 15 in/);
  });
  it('says once what is so in every room', () => {
    const narrow = { ...READING_ROOM, leftExtension: inches(4), rightExtension: inches(4) };
    const text = said([windowAs(narrow), windowAs({ ...narrow, room: 'Landing' }, 2)]);
    expect(text).toContain('Every room');
    // Of the left side and of the right.
    expect(text.split('the usual side extension is 11 in')).toHaveLength(3);
    expect(said([windowAs(narrow), windowAs({ ...READING_ROOM, room: 'Landing' }, 2)])).toMatch(
      /Reading room.*the usual side extension/,
    );
  });
  it('names a cloth whose match the windows were not worked out by', () => {
    const patterned = windowAs({ ...READING_ROOM, verticalRepeat: inches(20) });
    const cloths = (match: string) => ({ cloths: [{ name: 'Garden print', match: words(match) }] });
    expect(said([patterned], cloths('1/2 drop'))).toMatch(
      /Garden print is “1\/2 drop”.*worked out as straight/,
    );
    expect(said([patterned], cloths('straight'))).not.toContain('worked out as');
    // Without a repeat there is nothing to match.
    expect(said([windowAs(READING_ROOM)], cloths('half-drop'))).not.toContain('worked out as');
  });
  it('tells rows that could not be worked out', () => {
    expect(said([], { unread: ['Windows, row 9: no heading.'] })).toContain('Windows, row 9: no heading.');
  });
  it('lists what is to be handed in on a public job alone', () => {
    expect(said([windowAs(READING_ROOM)], { publicBuilding: true })).toContain('Submittals');
    expect(said([windowAs(READING_ROOM)])).not.toContain('Submittals');
  });
});
