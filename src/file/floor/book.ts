/** The workbook of a floor written back with the cutter's list and the totals on sheets of their own. */
import type { Floor } from '../../book/floor/floor';
import { floorPriceDraft } from '../../book/floor/price-sheet';
import { floorDraft } from '../../book/floor/sheets';
import { together } from '../../book/sheets/draft';
import type { JobPrice } from '../../core/quote/mock-up';
import { addSheets, namesTaken } from '../xlsx/add-sheets';
import { replaceFile, zipped } from '../xlsx/archive';
import type { PlannedCloth } from './plan';
import { refill } from '../recalculate/refill';
import type { WindowsRead } from './windows';
import { readWorkbook, type WorkbookFile } from '../xlsx/workbook';

export async function writeFloorSheets(
  path: string,
  file: WorkbookFile,
  { sheet, house, placed, unread }: WindowsRead,
  plans: readonly PlannedCloth[],
  priced: JobPrice | undefined,
): Promise<void> {
  const floor: Floor = {
    sheet,
    house,
    windows: placed,
    unread: unread.map(({ row, sentence }) => ({ row: row - 1, sentence })),
  };
  const taken = namesTaken(file);
  const lists = floorDraft(
    taken,
    floor,
    plans.map(({ cloth, best: { plan } }) => ({ cloth, plan })),
  );
  const draft = priced === undefined ? lists : together(lists, floorPriceDraft(taken, floor, priced));
  // The sums of the new sheets are computed like every other formula.
  const { parts } = refill(readWorkbook(addSheets(file, draft)));
  await replaceFile(path, zipped(parts));
}
