/** The catalogue's words as they stand in the help page and the README. */
import { NAMESPACE } from '../../functions';
import type { CellFunction, Room } from '../../functions/declare';

/** HEM.EXTENSION(opening_width, [end], [rules]) */
export function signature(of: CellFunction): string {
  const parameters = of.parameters.map(({ name, optional, repeats }) => {
    const shown = repeats ? `${name} …` : name;
    return optional ? `[${shown}]` : shown;
  });
  return `${NAMESPACE}.${of.name}(${parameters.join(', ')})`;
}

/** The functions room by room, in the catalogue's order. */
export function byRoom(catalogue: readonly CellFunction[]): ReadonlyMap<Room, readonly CellFunction[]> {
  const rooms = new Map<Room, CellFunction[]>();
  for (const of of catalogue) rooms.set(of.room, [...(rooms.get(of.room) ?? []), of]);
  return rooms;
}
