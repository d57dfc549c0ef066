/**
 * Windows of one room match at one height above the floor. Where their tops stand at different heights, a
 * lower one begins further on in the repeat, and the cloth may take part of a repeat more.
 */
import { finding, type Finding } from '../cell/answer';
import { exact, type Length } from '../exact/length';
import { showLength } from '../exact/unit';
import { unitOf } from '../house/rules';
import type { WindowWork } from '../window/job';
import { fabricOf } from './tally';

/** A window that begins elsewhere in the repeat than the highest of its room. */
export interface FurtherOn {
  readonly work: WindowWork;
  /** The window whose motif is met. */
  readonly than: WindowWork;
  /** Part of a repeat. */
  readonly by: Length;
}

interface Stands {
  readonly work: WindowWork;
  readonly repeat: Length;
  /** The finished top edge above the floor. */
  readonly top: Length;
}

/** Undefined without a pattern, and where it is not told how high the top stands. */
function stands(work: WindowWork): Stands | undefined {
  const { verticalRepeat: repeat = 0 } = work.window;
  const top = repeat === 0 ? undefined : work.topAboveFloor;
  return top === undefined ? undefined : { work, repeat: exact(repeat), top };
}

/** So little is not seen across a room. */
const seen = (by: number, { work, repeat }: Stands): boolean => {
  const { lengthTolerance } = work.rules;
  return by > lengthTolerance && repeat - by > lengthTolerance;
};

/** By room and cloth, the windows that begin further on than the highest. */
export function furtherOn(windows: readonly WindowWork[]): readonly FurtherOn[] {
  const rooms = new Map<string, Stands[]>();
  for (const work of windows) {
    const { room } = work.window;
    const one = room === undefined ? undefined : stands(work);
    if (room === undefined || one === undefined) continue;
    const key = JSON.stringify([room, fabricOf(work), one.repeat]);
    rooms.set(key, [...(rooms.get(key) ?? []), one]);
  }
  return [...rooms.values()].flatMap((room) => {
    const highest = room.reduce((most, one) => (one.top > most.top ? one : most));
    return room.flatMap((one): FurtherOn[] => {
      const by = (highest.top - one.top) % one.repeat;
      return seen(by, one) ? [{ work: one.work, than: highest.work, by: exact(by) }] : [];
    });
  });
}

/** Said once for each room, cloth and distance. */
export function motifFindings(windows: readonly WindowWork[]): readonly Finding[] {
  const found = furtherOn(windows).map(({ work, than, by }) => {
    const unit = unitOf(work.rules);
    const [drop, other, further] = [work.orderedDrop, than.orderedDrop, by].map((one) =>
      showLength(one, unit),
    ) as [string, string, string];
    return finding(
      'motifStandsElsewhere',
      'room',
      work.window.room ?? '',
      fabricOf(work),
      drop,
      other,
      further,
    );
  });
  return found.filter((one, at) => found.findIndex(({ sentence }) => sentence === one.sentence) === at);
}
