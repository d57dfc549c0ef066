/**
 * The line to scroll to so that another is the first in sight. The grid measures what it scrolls away from its first
 * line on, though frozen lines stay where they are: above high headings it would scroll too far.
 */
export function scrolledTo(line: number, frozen: number, sizeOf: (at: number) => number): number {
  let away = 0;
  for (let at = frozen; at < line; at++) away += sizeOf(at);
  let first = 0;
  while (first < line && away >= sizeOf(first)) away -= sizeOf(first++);
  return first + frozen;
}
