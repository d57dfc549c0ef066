/** Cells that are to look alike, told to Excel in few words: a paper has thousands of them. */
import { placeText, type Area } from './address';
import type { Dress } from './book';

/** In characters; `getRanges` takes 8,192. */
const LONGEST_ADDRESS = 2_000;

const startOf = (area: Area): string => placeText({ ...area, rows: 1, columns: 1 });

/** “A1:C1,A4:C4”: areas as few addresses. */
export function addressesOf(areas: readonly Area[]): readonly string[] {
  const all: string[] = [];
  for (const area of areas) {
    const one = area.rows * area.columns === 1 ? startOf(area) : placeText(area);
    const last = all.at(-1);
    if (last === undefined || last.length + one.length >= LONGEST_ADDRESS) all.push(one);
    else all[all.length - 1] = `${last},${one}`;
  }
  return all;
}

/** Areas of the same columns that follow each other row by row, as one. */
export function downward(areas: readonly Area[]): readonly Area[] {
  const found = new Map<string, Area>();
  const done: Area[] = [];
  for (const area of [...areas].sort((one, other) => one.row - other.row)) {
    const key = `${area.column} ${area.columns}`;
    const above = found.get(key);
    if (above !== undefined && above.row + above.rows === area.row)
      found.set(key, { ...above, rows: above.rows + area.rows });
    else {
      if (above !== undefined) done.push(above);
      found.set(key, area);
    }
  }
  return [...done, ...found.values()];
}

/** Rows of one height. */
export function rowsAlike(
  sheet: string,
  heights: Readonly<Record<number, number>>,
): readonly { readonly points: number; readonly areas: readonly Area[] }[] {
  const byHeight = new Map<number, Area[]>();
  for (const [row, points] of Object.entries(heights)) {
    const areas = byHeight.get(points) ?? [];
    areas.push({ sheet, row: Number(row), column: 0, rows: 1, columns: 1 });
    byHeight.set(points, areas);
  }
  return [...byHeight].map(([points, areas]) => ({ points, areas: downward(areas) }));
}

export interface DressAlike {
  readonly role: Dress['role'];
  readonly align: Dress['align'];
  readonly areas: readonly Area[];
}

/** Of cells that do not overlap: those of one look, lined alike within. */
export function dressAlike(dress: readonly Dress[]): readonly DressAlike[] {
  const groups = new Map<string, { role: Dress['role']; align: Dress['align']; areas: Area[] }>();
  for (const { area, role, align } of dress) {
    const key = [role, align, area.rows > 1, area.columns > 1].join();
    const group = groups.get(key) ?? { role, align, areas: [] };
    group.areas.push(area);
    groups.set(key, group);
  }
  return [...groups.values()];
}
