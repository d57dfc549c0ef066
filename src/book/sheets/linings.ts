/** The cloths behind the face, under the fabrics: what they cost and weigh, and how much of each is to be ordered. */
import { BEHIND, standsIn } from '../../core/cloth/behind';
import { forTheOrder, wholeRoll } from './cloth-columns';
import {
  atLeast,
  clothPrice,
  MONEY_FORMAT,
  priceCell,
  tableDraft,
  type ColumnDraft,
  type Draft,
  type Job,
} from './draft';

/** Where a cloth's own weight stands in its row. */
export const OWN_WEIGHT = 3;

/** The figure of a cloth's own, or of the one whose figure it takes where its own is left blank. */
const counted =
  (job: Job, own: string, key: string): NonNullable<ColumnDraft['formula']> =>
  (cell) =>
    `=IF(${cell(key)}<>"",${priceCell(cell(key))},IF(${cell('takes')}="",0,N(INDEX(${job.name(own)},MATCH(${cell('takes')},${job.name('Lining_cloths')},0)))))`;

export function liningsTable(job: Job, sheet: string, row: number): Draft {
  const { large, areal } = job.unit;
  const name = (base: string): string => job.name(base);
  return tableDraft(job, {
    sheet,
    name: 'Linings',
    row,
    rows: BEHIND.length,
    columns: [
      { key: 'cloth', heading: 'cloth', role: 'note', cells: BEHIND, name: 'Lining_cloths' },
      {
        key: 'takes',
        heading: 'if blank, as the',
        role: 'note',
        cells: BEHIND.map((cloth) => standsIn(cloth) ?? ''),
        note: 'whose price and weight it takes where its own are left blank',
      },
      {
        key: 'price',
        heading: `price a ${large}`,
        role: 'input',
        format: MONEY_FORMAT,
        name: 'Lining_own_prices',
        choice: clothPrice(job),
      },
      {
        key: 'weight',
        heading: `cloth weight (${areal})`,
        role: 'input',
        name: 'Lining_own_weights',
        note: 'for freight by weight or by the carton',
        choice: atLeast(0, 'A weight, 0 or more.'),
      },
      {
        key: 'needed',
        heading: `to order (${large})`,
        role: 'output',
        format: '0.00#',
        name: 'Lining_needed',
        formula: (cell) =>
          `=IF(${cell('cloth')}="interlining",SUM(${name('Window_interlining_yardage')}),SUMIFS(${name('Window_lining_yardage')},${name('Cost_lining_cloths')},${cell('cloth')}))`,
      },
      {
        key: 'priceCounted',
        heading: 'price counted',
        role: 'working',
        format: MONEY_FORMAT,
        name: 'Lining_prices',
        formula: counted(job, 'Lining_own_prices', 'price'),
      },
      {
        key: 'weightCounted',
        heading: 'weight counted',
        role: 'working',
        format: '0.0#',
        name: 'Lining_weights',
        formula: counted(job, 'Lining_own_weights', 'weight'),
      },
      {
        key: 'cost',
        heading: 'cost',
        role: 'output',
        format: MONEY_FORMAT,
        formula: (cell) => `=${cell('needed')}*${cell('priceCounted')}`,
      },
      // For the order alone, so behind what is counted.
      { key: 'supplier', heading: 'supplier', role: 'input', wide: 18 },
      wholeRoll(job),
      ...forTheOrder(),
    ],
  });
}
