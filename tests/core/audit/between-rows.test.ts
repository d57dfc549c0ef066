import { describe, expect, it } from 'vitest';
import { auditAll } from './audited';

const ROOMS = ['Hall', 'Study', 'Attic', 'Den', 'Bath', 'Loft'];

describe('what only shows between rows', () => {
  const LINED = ['room', 'rod width', 'drop', 'heading', 'fabric width', 'lining', 'lining yardage'];
  const lined = (room: string, lining: string, yards: number | null) =>
    [room, 94, 96, 'pinch', 54, lining, yards] as const;
  const codes = (rows: readonly (readonly (string | number | null)[])[]) =>
    auditAll(LINED, rows).flatMap(({ row, code }) => (code === 'leftBlank' ? [row] : []));

  it('a lining forgotten, where nearly every other lined window has its yardage', () => {
    const sound = ROOMS.map((room) => lined(room, 'lined', 15.375));
    expect(codes([...sound, lined('Nook', 'blackout', null)])).toEqual([7]);
    expect(codes([...sound, lined('Nook', 'blackout', 0)])).toEqual([7]);
    expect(codes([...sound, lined('Nook', 'unlined', null)])).toEqual([]);
  });

  it('no lining is missed where the sheet gives half of them', () => {
    const rows = ROOMS.map((room, at) => lined(room, 'lined', at % 2 === 0 ? null : 15.375));
    expect(codes(rows)).toEqual([]);
  });

  it('a price unlike the others of its cloth, whoever buys it', () => {
    const head = ['client', 'room', 'rod width', 'drop', 'heading', 'fabric', 'fabric width', 'unit price'];
    const rows = ROOMS.map((room, at) => [
      `Client ${at}`,
      room,
      94,
      96 + at,
      'pinch',
      'Ash',
      54,
      at === 3 ? 31 : 22,
    ]);
    expect(auditAll(head, rows).map(({ row, code }) => [row, code])).toEqual([[4, 'unlikeItsJob']]);
  });
});
