/** The rolls in hand as a workbook's own table of rolls has them, else its sheet of rolls. */
import { readAddress } from '../book/address';
import { receivedIn, type Received } from '../core/received';
import type { Unit } from '../core/unit';
import { rowsOf } from './windows';
import type { WorkbookFile } from './workbook';

export function receivedRolls(file: WorkbookFile, unit: Unit): Received | undefined {
  const inTables = file.tables.map(({ sheet, ref }) => ({ sheet, area: readAddress(ref) }));
  const alone = file.sheets.flatMap(({ name }, sheet) =>
    /\brolls?\b/i.test(name) && !inTables.some((one) => one.sheet === sheet)
      ? [{ sheet, area: undefined }]
      : [],
  );
  for (const { sheet, area } of [...inTables, ...alone]) {
    const of = file.sheets[sheet];
    if (of === undefined) continue;
    const rows = [...rowsOf(of)].flatMap(([row, cells]) => {
      if (area === undefined) return [cells];
      const within = row >= area.row && row < area.row + area.rows;
      return within ? [cells.slice(area.column, area.column + area.columns)] : [];
    });
    const rolls = receivedIn(rows, unit);
    if (rolls !== undefined && rolls.size > 0) return rolls;
  }
  return undefined;
}
