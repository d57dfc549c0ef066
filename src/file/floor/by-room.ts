/** From one window row to many: rooms by pattern, types by quantity. The workbook's own rows stay as they are. */
import { placeOf, type FloorWindow } from '../../book/floor/floor';
import type { Window } from '../../core/window/columns';
import { WindowWork } from '../../core/window/job';
import { sameName } from '../../core/rolls/received';
import { roomNumbers } from '../../core/floor/room-numbers';
import { asUsage, parts, type Values } from './options';
import { Problem, USAGE } from '../problem';

function changed(floorWindow: FloorWindow, change: Partial<Window>): FloorWindow {
  const { work, type, floor } = floorWindow;
  const { room } = change;
  const place = room === undefined ? { type, floor } : { type, floor: placeOf(room).floor };
  return { row: floorWindow.row, work: new WindowWork({ ...work.window, ...change }, work.rules), ...place };
}

const nameOf = ({ work, row }: FloorWindow): string => work.window.room ?? `row ${row + 1}`;

/** The one row of that name; without a name, the one row there is. */
function rowNamed(windows: readonly FloorWindow[], name: string | undefined, option: string): FloorWindow {
  const found =
    name === undefined ? windows : windows.filter((one) => sameName(nameOf(one)) === sameName(name));
  const [only] = found;
  if (only !== undefined && found.length === 1) return only;
  const some = windows.slice(0, 4).map(nameOf).join(', ');
  const why =
    name === undefined
      ? `does not say which of the ${windows.length} rows it takes`
      : `names the row “${name}”, and ${found.length === 0 ? 'there is none' : `there are ${found.length}`}`;
  throw new Problem(
    `${option} ${why}. Write the row's room before a colon, like “${nameOf(windows[0] as FloorWindow)}: …” (${some} …).`,
    USAGE,
  );
}

/** --rooms "King: 401-448 even; not 413": the row becomes a window, or as many as it counts, in each room. */
function byRooms(windows: readonly FloorWindow[], text: string): readonly FloorWindow[] {
  const [, name, pattern = ''] = /^(?:([^:]*):)?([^:]*)$/.exec(text) ?? [];
  const like = rowNamed(windows, name, '--rooms');
  const rooms = asUsage(() => roomNumbers(pattern));
  return windows.flatMap((one) => (one === like ? rooms.map((room) => changed(like, { room })) : [one]));
}

/** --types "King: 12; Suite: 4": the row of each type counts so many times. */
function byTypes(windows: readonly FloorWindow[], text: string): readonly FloorWindow[] {
  const counts = new Map(
    parts(text).map((one) => {
      const [, name = '', count = ''] = /^(.+):\s*(\d+)$/.exec(one) ?? [];
      if (count === '')
        throw new Problem(
          `--types reads “${one}”. Write the row's room and a count, like “King: 12”.`,
          USAGE,
        );
      return [rowNamed(windows, name, '--types'), Number(count)] as const;
    }),
  );
  return windows.map((one) => {
    const count = counts.get(one);
    return count === undefined ? one : changed(one, { quantity: one.work.quantity * count });
  });
}

export function multiplied(windows: readonly FloorWindow[], values: Values): readonly FloorWindow[] {
  const typed = values.types === undefined ? windows : byTypes(windows, values.types);
  return (values.rooms ?? []).reduce(byRooms, typed);
}
