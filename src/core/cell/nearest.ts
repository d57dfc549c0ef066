/** How near one word stands to another, for “did you mean”. */

/** Nobody means a name by a longer text, and comparing one takes long. */
const LONGEST = 60;

/** How many letters must change to make one word the other; of a text too long for a name, what is plain from its length. */
export function distance(one: string, other: string): number {
  if (Math.max(one.length, other.length) > LONGEST) return Math.max(one.length, other.length);
  let row = Array.from({ length: other.length + 1 }, (_, at) => at);
  for (const [down, letter] of [...one].entries()) {
    const next = [down + 1];
    for (const [across, sign] of [...other].entries()) {
      next.push(
        Math.min(
          (row[across + 1] ?? 0) + 1,
          (next[across] ?? 0) + 1,
          (row[across] ?? 0) + (letter === sign ? 0 : 1),
        ),
      );
    }
    row = next;
  }
  return row.at(-1) ?? 0;
}
