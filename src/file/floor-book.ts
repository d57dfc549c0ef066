/** The workbook of a floor written back with the cutter's list and the totals on sheets of their own. */
import { floorDraft } from '../book/floor-sheets';
import { nodeLibrary } from '../engine/node';
import { addSheets, namesTaken } from './add-sheets';
import { replaceFile, zipped } from './archive';
import type { PlannedCloth } from './floor-plan';
import { refill } from './refill';
import type { WindowsRead } from './windows';
import { readWorkbook, type WorkbookFile } from './workbook';

export async function writeFloorSheets(
  path: string,
  file: WorkbookFile,
  { sheet, house, placed, unread }: WindowsRead,
  plans: readonly PlannedCloth[],
): Promise<void> {
  const draft = floorDraft(
    namesTaken(file),
    {
      sheet,
      house,
      windows: placed,
      unread: unread.map(({ row, sentence }) => ({ row: row - 1, sentence })),
    },
    plans.map(({ cloth, best: { plan } }) => ({ cloth, plan })),
  );
  // The sums of the new sheets are computed like every other formula.
  const { parts } = await refill(readWorkbook(addSheets(file, draft)), nodeLibrary());
  await replaceFile(path, zipped(parts));
}
