/** The rolls in hand as the workbook's own table of rolls has them, else its sheet of rolls. */
import { receivedIn, type Received } from '../../core/rolls/received';
import type { Unit } from '../../core/exact/unit';
import { sameSheet, type Area } from '../address';
import type { BookRead } from '../book';

export interface ReceivedSeen {
  /** The table's name, or the sheet's. */
  readonly source: string;
  readonly rolls: Received;
}

/** Undefined where the workbook has no such table, or none with a roll in it. */
export async function receivedRolls(book: BookRead, unit: Unit): Promise<ReceivedSeen | undefined> {
  const { tables, sheets } = await book.contents();
  const places: { source: string; area: Area }[] = tables
    .filter(({ columns }) => receivedIn([columns], unit) !== undefined)
    .map(({ name, area }) => ({ source: name, area }));
  for (const { name, used } of sheets) {
    const inTable = tables.some(({ area }) => sameSheet(area.sheet, name));
    if (used !== undefined && !inTable && /\brolls?\b/i.test(name)) places.push({ source: name, area: used });
  }
  const blocks = await book.read(
    places.map(({ area }) => area),
    'contents',
  );
  for (const [at, { source }] of places.entries()) {
    const rolls = receivedIn(blocks[at]?.values ?? [], unit);
    if (rolls !== undefined && rolls.size > 0) return { source, rolls };
  }
  return undefined;
}
