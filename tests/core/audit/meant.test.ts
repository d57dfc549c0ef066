import { describe, expect, it } from 'vitest';
import { auditAll } from './audited';

const HEAD = ['order', 'client', 'room', 'rod width', 'drop', 'heading', 'fabric width', 'widths', 'remarks'];
/** Rod 94 takes 5 widths of 54. */
const row = (widths: number, remark: string | null, room = 'Den') =>
  ['K7', 'Ames', room, 94, 96, 'pinch', 54, widths, remark] as const;
/** Rows that agree, so that the columns are told. */
const SOUND = ['Hall', 'Study', 'Attic'].map((room) => row(5, null, room));

describe('a row that says why it is unlike', () => {
  it.each([
    "client's request",
    'extra width for fullness',
    'COM',
    'remake',
    'As per designer',
    'customer supplied fabric',
    'wants it scant: 2 x',
    'plus 1.2 m for a cushion',
    '0,5 m extra for cushion',
    'one length more (later repair)',
    '10 yd attic stock added per spec',
    'do-over, my fault',
    'warranty, making n/c',
    'her own cloth',
    'one more width, to match existing',
  ])('“%s” makes a note of what is found, and is quoted', (remark) => {
    const [found, ...more] = auditAll(HEAD, [...SOUND, row(7, remark)]);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ row: 4, weight: 'note', code: 'figureDiffers' });
    expect(found?.sentence).toMatch(`The row says “${remark}”. widths reads 7`);
  });

  it.each([
    'ring before 9',
    'third floor',
    'comfort room',
    'hem by hand',
    'wants by Easter',
    'hold for fabric',
    'call before install',
    null,
  ])('“%s” excuses nothing', (remark) => {
    expect(auditAll(HEAD, [...SOUND, row(7, remark)])).toMatchObject([{ row: 4, weight: 'check' }]);
  });

  it('softens no caution: a cord within a child’s reach stays one', () => {
    const head = ['room', 'rod width', 'heading', 'cord or wand', 'children', 'remarks'];
    const cells = ['Den', 60, 'pinch', 'cord', 'yes', "client's request"];
    expect(auditAll(head, [cells])).toMatchObject([{ code: 'cordInReach', weight: 'stop' }]);
  });
});

it('a finding says whose order it is', () => {
  expect(auditAll(HEAD, [...SOUND, row(7, null)])).toMatchObject([
    { order: 'K7', customer: 'Ames', room: 'Den' },
  ]);
});
