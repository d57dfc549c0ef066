import { describe, expect, it } from 'vitest';
import { findingsPaper } from '../../../src/core/papers/findings';
import { inches, jobWith, READING_ROOM, windowAs } from './invented';

const said = (...given: Parameters<typeof jobWith>): string =>
  JSON.stringify(findingsPaper(jobWith(...given)).blocks);

describe('the statement of findings', () => {
  it('says what CHECK says, under its room', () => {
    // An opening of 84 in asks 11 to 15 in each side, by common practice; 4 is too little.
    const narrow = windowAs({ ...READING_ROOM, leftExtension: inches(4), rightExtension: inches(4) });
    expect(said([narrow])).toMatch(/"group".*Reading room.*the usual side extension is 11 in to 15 in/);
  });
  it('tells rows that could not be worked out', () => {
    expect(said([], { unread: ['Windows, row 9: no heading.'] })).toContain('Windows, row 9: no heading.');
  });
  it('lists what is to be handed in on a public job alone', () => {
    expect(said([windowAs(READING_ROOM)], { publicBuilding: true })).toContain('Submittals');
    expect(said([windowAs(READING_ROOM)])).not.toContain('Submittals');
  });
});
