/** Columns headed alike that are all asked: said once, with their count. */
import { finding, type Finding } from '../../cell/answer';
import { nameOf } from './meanings';
import type { ColumnRead } from './understand';

/** The columns that are asked because another is headed alike, by their heading. */
export function headedAlike(columns: readonly ColumnRead[]): ReadonlyMap<string, readonly ColumnRead[]> {
  const alike = new Map<string, ColumnRead[]>();
  for (const column of columns)
    if (column.sure === 'asked' && column.means.length === 0 && column.couldBe.length === 1) {
      const heading = column.heading.toLowerCase();
      alike.set(heading, [...(alike.get(heading) ?? []), column]);
    }
  return new Map([...alike].filter(([, list]) => list.length > 1));
}

/** A sentence for each such heading. */
export const aboutAlike = (columns: readonly ColumnRead[]): Finding[] =>
  [...headedAlike(columns).values()].flatMap((list) =>
    list
      .slice(0, 1)
      .map(({ heading, couldBe: [key] }) =>
        finding('columnsAlike', heading, heading, list.length, key === undefined ? 'one' : nameOf(key)),
      ),
  );
