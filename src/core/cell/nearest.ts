/** How near one word stands to another, for “did you mean”. */

/** How many letters must change to make one word the other. */
export function distance(one: string, other: string): number {
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
