import { expect, it } from 'vitest';
import { byRoom } from '../../../src/core/papers/job';
import { READING_ROOM, windowAs } from './invented';

it('layers of one room stand together, rooms in the order they first appear', () => {
  const rooms = ['Reading room', 'Landing', 'reading room '].map((room, at) =>
    windowAs({ ...READING_ROOM, room }, at + 1),
  );
  expect(byRoom(rooms).map(({ room, windows }) => [room.value, windows.map(({ line }) => line)])).toEqual([
    ['Reading room', [1, 3]],
    ['Landing', [2]],
  ]);
});
