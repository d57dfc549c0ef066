/** A job of our own template as a file, filled as a person types it: an inn that is nowhere. */
import { writeFileSync } from 'node:fs';
import { workbookOf } from '../../../src/file/papers/values-only';
import { zipped } from '../../../src/file/xlsx/archive';
import { typedJob, type JobTyped, type Row } from '../../../src/make/typed-job';

export type { JobTyped, Row };

export const WINDOW: Row = {
  room: 'Library',
  quantity: 1,
  'inside width': 84,
  'left extension': 10,
  'right extension': 10,
  'measured height': 98,
  heading: 'pinch',
  draw: 'pair',
  fabric: 'Heron linen',
  lining: 'lined',
};
export const FABRIC: Row = {
  fabric: 'Heron linen',
  supplier: 'Quill & Sedge',
  'fabric width': 54,
  'vertical repeat': 25.25,
  'price a': 38.17,
};
/** Costs that no client may see: none of them is a price of the quote. */
export const CELLS: Row = { Price_rod: 18.53, Price_bracket: 11.37, Price_installation: 65, Sell_rate: 0.5 };
export const CHARGES: Row = { 'labor pinch': 42.19, 'labor lined': 9 };

/** Writes the job's file. */
export function writeJob(path: string, job: JobTyped): void {
  const draft = typedJob({
    fabrics: [FABRIC],
    cells: CELLS,
    charges: CHARGES,
    ...job,
    house: { 'house name': 'Alder & Finch Workroom', address: '4 Sluice Row', ...job.house },
    facts: { client: 'Wharf Lane Inn', reference: 'WL-7', ...job.facts },
  });
  writeFileSync(path, zipped(workbookOf(draft)));
}
