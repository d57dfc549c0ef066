/**
 * Room numbers by pattern: "401-448", "401-447 odd", "401-448 even not 404, 413", "12, 14, 20-26".
 * Parts are joined by commas; `even` and `odd` take one side of the corridor; `not` leaves rooms out.
 */
import { parameter } from '../findings/parameters';
import { refuse } from '../cell/answer';

const MOST_ROOMS = 5_000;
const PART =
  /^([a-z]*?)(\d+)([a-z]?)(?:\s*(?:-|–|to)\s*([a-z]*?)(\d+)([a-z]?))?(?:\s+(even|odd)(?:\s+side)?)?$/i;

const unreadable = (part: string): never => refuse('roomsUnreadable', parameter('rooms'), part);

/** One part written out; refuses what is no room or range of rooms. */
function roomsOfPart(part: string): readonly string[] {
  const [, prefix = '', from = '', suffix = '', otherPrefix, to, otherSuffix, side] = PART.exec(part) ?? [];
  if (from === '') return unreadable(part);
  if (to === undefined) return side === undefined ? [prefix + from + suffix] : unreadable(part);
  const samePrefix = otherPrefix === '' || otherPrefix?.toLowerCase() === prefix.toLowerCase();
  if (!samePrefix || suffix !== '' || otherSuffix !== '') return unreadable(part);
  const [first, last] = [Number(from), Number(to)];
  if (last < first) return refuse('roomsBackwards', parameter('rooms'), part);
  if (last - first >= MOST_ROOMS) return refuse('tooManyRooms', parameter('rooms'), part, MOST_ROOMS);
  const all = Array.from({ length: last - first + 1 }, (_, at) => first + at);
  return all.filter(onSide(side)).map((room) => prefix + String(room).padStart(from.length, '0'));
}

/** The rooms of one side of a corridor, or of both. */
const onSide =
  (side: string | undefined) =>
  (room: number): boolean =>
    side === undefined || (side.toLowerCase() === 'even') === (room % 2 === 0);

const roomsOfList = (list: string): readonly string[] =>
  list
    .split(/[,;]/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .flatMap(roomsOfPart);

/** Every room of a pattern, each once, in the order written. */
export function roomNumbers(pattern: string): readonly string[] {
  const [wanted = '', ...left] = pattern.split(/\b(?:not|without|skip|except)\b/i);
  if (left.length > 1) return refuse('roomsUnreadable', parameter('rooms'), pattern);
  const out = new Set(roomsOfList(left[0] ?? ''));
  const rooms = [...new Set(roomsOfList(wanted))];
  const kept = rooms.filter((room) => !out.has(room));
  const missing = [...out].find((room) => !rooms.includes(room));
  if (missing !== undefined) return refuse('roomNotInPattern', parameter('rooms'), missing, pattern);
  return kept.length === 0 ? refuse('noRooms', parameter('rooms'), pattern) : kept;
}
