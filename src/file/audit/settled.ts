/** What somebody wrote beside the findings of an earlier audit stays beside them when they are written anew. */
import { access } from 'node:fs/promises';
import type { CellOut } from '../../core/cell/fields';
import { openArchive } from '../xlsx/archive';
import { readWorkbook } from '../xlsx/workbook';
import { sheetsIn } from '../sheets';

export const SETTLED = 'settled';
/** By finding, what stands in its column “settled”. */
export type Settled = ReadonlyMap<string, CellOut>;

/** What makes a finding the same one: its order, its kind and what was found; its row only where no order is named. */
const SAME = ['order', 'customer', 'room', 'kind', 'column', 'found'];

/** Whether rows are the findings of an audit: they name orders too, and are none. */
export const isFindings = ([headings = []]: readonly (readonly unknown[])[]): boolean =>
  headings.includes(SETTLED) && SAME.every((heading) => headings.includes(heading));

/** Of the cells of a finding as they are written: order, customer, room, row, weight, kind, column, found. */
export function settledKey(cells: readonly unknown[]): string {
  const [order = '', customer = '', room = '', row = '', , kind = '', column = '', found = ''] = cells;
  const named = [order, customer, room].some((text) => text !== '' && text !== null);
  return JSON.stringify(
    [order, customer, room, named ? '' : row, kind, column, found].map((one) => one ?? ''),
  );
}

/** What was settled in the workbook that is to be written anew; nothing where there is none. */
export async function settledIn(path: string): Promise<Settled> {
  const settled = new Map<string, CellOut>();
  try {
    await access(path);
  } catch {
    return settled;
  }
  for (const { name, rows } of sheetsIn(readWorkbook(await openArchive(path)))) {
    const [headings = [], ...lines] = rows;
    const at = headings.indexOf(SETTLED);
    if (name !== 'Findings' || !isFindings(rows)) continue;
    for (const line of lines) {
      const said = line[at];
      if (typeof said === 'string' || typeof said === 'number' || typeof said === 'boolean')
        settled.set(settledKey(line), said);
    }
  }
  return settled;
}
