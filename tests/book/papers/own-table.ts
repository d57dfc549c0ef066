/** A user's own table with prices and a total: an inn that is nowhere. */
import type { CellValue } from '../../../src/book/book';

const HEADINGS = ['Room', 'Width', 'Ext L', 'Ext R', 'Height', 'Style', 'Lining', 'Fabric', 'Fabric width', 'Qty', 'Price'] as const; // prettier-ignore

export const PAPERS_TABLE: readonly (readonly CellValue[])[] = [
  ['Wharf Lane Inn', ...Array<null>(10).fill(null)],
  HEADINGS,
  ['Library', 84, 10, 10, 98, 'pinch', 'lined', 'Heron linen', 54, 1, 1240.5],
  ['Landing', 40, 10, 10, 80, 'grommet', 'lined', 'Heron linen', 54, 2, 810],
  [...Array<null>(9).fill(null), 'Total', 2050.5],
];

/** 27 November 2026. */
export const TODAY = 46_353;
