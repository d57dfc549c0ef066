/** The fabrics and linings of the job; on a sheet of their own the rolls in hand and the price breaks. */
import { BEHIND, type Behind } from '../../core/cloth/behind';
import { MATCHES } from '../../core/cell/treatment';
import { cellText, sheetText } from '../address';
import { FABRIC_HEADINGS, forTheOrder, wholeRoll } from './cloth-columns';
import {
  atLeast,
  clothPrice,
  fromName,
  laidOut,
  MONEY_FORMAT,
  NO_ZERO,
  oneOf,
  priceCell,
  tableDraft,
  titled,
  together,
  YES_OR_NO,
  type ColumnDraft,
  type Draft,
  type Job,
  type CellOfRow,
} from './draft';
import { liningsTable, OWN_WEIGHT } from './linings';

const FABRIC_ROWS = 12;
const BREAK_ROWS = 20;
const ROLL_ROWS = 20;
const HEADER = 3;
const LININGS_ROW = HEADER + FABRIC_ROWS + 3;

/** The cell of a lining's own weight, for the house rule that it is. */
export function liningWeightCell(job: Job, cloth: Behind): string {
  const row = LININGS_ROW + 1 + BEHIND.indexOf(cloth);
  return `${sheetText(job.sheet('Fabrics'))}!${cellText(row, OWN_WEIGHT, { row: true, column: true })}`;
}

/** The cloth itself, as its supplier states it. */
function clothColumns({ unit: { small, areal } }: Job): readonly ColumnDraft[] {
  return [
    { key: 'fabric', heading: 'fabric', role: 'input', wide: 22, name: 'Fabric_names' },
    { key: 'supplier', heading: 'supplier', role: 'input', wide: 18 },
    { key: 'width', heading: `fabric width (${small})`, role: 'input', name: 'Fabric_widths' },
    { key: 'repeat', heading: `vertical repeat (${small})`, role: 'input', name: 'Fabric_repeats' },
    {
      key: 'across',
      heading: `horizontal repeat (${small})`,
      role: 'input',
      name: 'Fabric_horizontal_repeats',
    },
    {
      key: 'match',
      heading: 'match',
      role: 'input',
      name: 'Fabric_matches',
      choice: oneOf(
        MATCHES.list.map((one) => one.word),
        'Choose how the pattern meets; blank is straight.',
      ),
    },
    {
      key: 'direction',
      heading: FABRIC_HEADINGS.mayBeTurned,
      role: 'input',
      choice: oneOf(YES_OR_NO, 'Choose yes or no. Pile and one-way patterns may not be turned.'),
      note: 'whether the cloth may be railroaded: pile and one-way patterns may not',
    },
    {
      key: 'weight',
      heading: `cloth weight (${areal})`,
      role: 'input',
      name: 'Fabric_weights',
      choice: atLeast(0, 'A weight, 0 or more.'),
    },
  ];
}

/** How it is sold, and what its order must say. */
function supplyColumns(job: Job): readonly ColumnDraft[] {
  const { large } = job.unit;
  const price = clothPrice(job);
  return [
    { key: 'price', heading: `price a ${large}`, role: 'input', format: MONEY_FORMAT, choice: price },
    {
      key: 'minimum',
      heading: `minimum order (${large})`,
      role: 'input',
      choice: atLeast(0, `The least the supplier cuts, in ${large}; blank is none.`),
    },
    wholeRoll(job),
    {
      key: 'rollPrice',
      heading: `price a ${large} in rolls`,
      role: 'input',
      format: MONEY_FORMAT,
      name: 'Fabric_roll_prices',
      note: 'the task pane’s Price takes whole rolls where they are cheaper; the sheets count the cut price',
      choice: price,
    },
    ...forTheOrder('Fabric_certificates'),
  ];
}

function orderColumns(job: Job): readonly ColumnDraft[] {
  const { small, large } = job.unit;
  const name = (base: string): string => job.name(base);
  const upToStep = (yards: string): string =>
    `IF(${name('Yardage_step')}=0,${yards},ROUNDUP(ROUND(${yards}/${name('Yardage_step')},6),0)*${name('Yardage_step')})`;
  /** Below 1 a share of the windows’ cuts, a part counting as a whole one; else so many cuts. */
  const keptCuts = (cell: CellOfRow): string =>
    `IF(${name('Attic_stock')}<1,ROUNDUP(ROUND(${name('Attic_stock')}*SUMIFS(${name('Cost_cuts')},${name('Window_fabrics')},${cell('fabric')}),6),0),${name('Attic_stock')})`;
  return [
    {
      key: 'needed',
      heading: `needed (${large})`,
      role: 'working',
      format: '0.00#',
      name: 'Fabric_needed',
      formula: (cell) =>
        `=IF(${cell('fabric')}="","",SUMIFS(${name('Window_yardage')},${name('Window_fabrics')},${cell('fabric')}))`,
    },
    {
      key: 'attic',
      heading: `attic stock (${large})`,
      role: 'working',
      format: '0.00#;-0.00#;',
      note: 'kept for later repairs: so many of the longest cut; set it on the sheet of prices',
      formula: (cell) =>
        `=IF(${cell('fabric')}="","",IF(OR(${cell('needed')}=0,N(${name('Attic_stock')})=0),0,${upToStep(`CONVERT(${keptCuts(cell)}*${cell('cut')},"${small}","${large}")`)}))`,
    },
    {
      key: 'order',
      heading: `${FABRIC_HEADINGS.toOrder} (${large})`,
      role: 'output',
      format: '0.00#',
      formula: (cell) =>
        `=IF(${cell('fabric')}="","",IF(${cell('needed')}=0,0,MAX(${cell('needed')}+${cell('attic')},${cell('minimum')})))`,
    },
  ];
}

function costColumns(job: Job): readonly ColumnDraft[] {
  const { large } = job.unit;
  const name = (base: string): string => job.name(base);
  return [
    {
      key: 'paid',
      heading: `price at that quantity`,
      role: 'working',
      format: MONEY_FORMAT,
      note: 'the last break reached, else the price of the table',
      // The breaks of all fabrics stand in one list, which BREAKPRICE would need one of for each.
      formula: (cell) =>
        `=IF(${cell('fabric')}="","",IF(COUNTIFS(${name('Break_fabrics')},${cell('fabric')},${name('Break_from')},"<="&${cell('order')})=0,${priceCell(cell('price'))},SUMIFS(${name('Break_prices')},${name('Break_fabrics')},${cell('fabric')},${name('Break_from')},MAXIFS(${name('Break_from')},${name('Break_fabrics')},${cell('fabric')},${name('Break_from')},"<="&${cell('order')}))))`,
    },
    {
      key: 'cost',
      heading: 'cost',
      role: 'output',
      format: MONEY_FORMAT,
      name: 'Fabric_costs',
      formula: (cell) => `=IF(${cell('fabric')}="","",${cell('order')}*${cell('paid')})`,
    },
    {
      key: 'atticCost',
      heading: 'cost of attic stock',
      role: 'working',
      format: '#,##0.00;-#,##0.00;',
      name: 'Fabric_attic_costs',
      formula: (cell) => `=IF(${cell('fabric')}="","",${cell('attic')}*${cell('paid')})`,
    },
    {
      key: 'each',
      heading: `cost a ${large} of the windows`,
      role: 'working',
      format: MONEY_FORMAT,
      name: 'Fabric_prices',
      note: 'what is ordered, attic stock apart, shared by what the windows need',
      formula: (cell) =>
        `=IF(${cell('fabric')}="","",IF(${cell('needed')}=0,0,(${cell('cost')}-${cell('atticCost')})/${cell('needed')}))`,
    },
  ];
}

/** What the freight and the rolls are worked out from. */
function weightAndCutColumns(job: Job): readonly ColumnDraft[] {
  const { small, large, weight } = job.unit;
  const name = (base: string): string => job.name(base);
  return [
    {
      key: 'atticWeight',
      heading: `weight of attic stock (${weight})`,
      role: 'working',
      format: '0.00;-0.00;',
      name: 'Fabric_attic_weights',
      formula: (cell) =>
        `=IF(${cell('fabric')}="","",${cell('attic')}*CONVERT(${cell('width')},"${small}","${large}")*${cell('weight')}/${weight === 'lb' ? 16 : 1000})`,
    },
    {
      key: 'cut',
      heading: `longest cut (${small})`,
      role: 'working',
      format: NO_ZERO,
      name: 'Fabric_longest_cuts',
      formula: (cell) =>
        `=IF(${cell('fabric')}="","",MAXIFS(${name('Window_cuts')},${name('Window_fabrics')},${cell('fabric')}))`,
    },
  ];
}

export function fabricsSheet(job: Job): Draft {
  const sheet = job.sheet('Fabrics');
  return together(
    titled(
      sheet,
      'Fabrics',
      `Prices and roll lengths by the ${job.unit.large}. The width is the usable one.`,
    ),
    tableDraft(job, {
      sheet,
      name: 'Fabrics',
      row: HEADER,
      rows: FABRIC_ROWS,
      columns: [
        ...clothColumns(job),
        ...supplyColumns(job),
        ...orderColumns(job),
        ...costColumns(job),
        ...weightAndCutColumns(job),
      ],
    }),
    liningsTable(job, sheet, LININGS_ROW),
    laidOut(job, sheet, {
      header: HEADER,
      frozenColumns: 1,
      landscape: true,
      widths: [
        22, 18, 10, 9, 10, 10, 9, 9, 9, 10, 9, 10, 18, 14, 18, 14, 12, 10, 9, 10, 10, 11, 10, 11, 10, 10,
      ],
    }),
  );
}

export function rollsSheet(job: Job): Draft {
  const sheet = job.sheet('Rolls');
  const { small, large } = job.unit;
  const name = (base: string): string => job.name(base);
  const price = clothPrice(job);
  const fabric = fromName(name('Fabric_names'), 'Choose a fabric of the sheet of fabrics.');
  return together(
    titled(
      sheet,
      'Rolls and price breaks',
      `Lengths by the ${large}. A break counts from the quantity it stands at.`,
    ),
    tableDraft(job, {
      sheet,
      name: 'Price_breaks',
      row: HEADER,
      column: 7,
      rows: BREAK_ROWS,
      columns: [
        { key: 'fabric', heading: 'price break of', role: 'input', choice: fabric, name: 'Break_fabrics' },
        {
          key: 'from',
          heading: `from (${large})`,
          role: 'input',
          name: 'Break_from',
          choice: atLeast(0, `From how many ${large}.`),
        },
        {
          key: 'price',
          heading: 'break price',
          role: 'input',
          format: MONEY_FORMAT,
          name: 'Break_prices',
          choice: price,
        },
      ],
    }),
    tableDraft(job, {
      sheet,
      name: 'Rolls',
      row: HEADER,
      rows: ROLL_ROWS,
      columns: [
        { key: 'fabric', heading: 'roll of', role: 'input', choice: fabric },
        { key: 'lot', heading: 'dye lot', role: 'input', note: 'one room never mixes lots' },
        {
          key: 'length',
          heading: `roll length (${large})`,
          role: 'input',
          choice: atLeast(0, `A roll’s length in ${large}.`),
        },
        {
          key: 'flaws',
          heading: `flaws at (${large})`,
          role: 'input',
          // As text: 12-13 is no day of December.
          format: '@',
          note: 'from the roll’s start, like 12 to 12 1/2; 30: the cutting plan of a floor cuts around them',
        },
        { key: 'certificate', heading: 'certificate of the lot', role: 'input', wide: 18 },
        {
          key: 'cuts',
          heading: 'whole cuts',
          role: 'output',
          note: 'of the longest cut of this fabric: cuts never cross a roll',
          formula: (cell) =>
            `=IF(OR(${cell('fabric')}="",${cell('length')}=""),"",IFERROR(INT(ROUND(CONVERT(${cell('length')},"${large}","${small}")/INDEX(${name('Fabric_longest_cuts')},MATCH(${cell('fabric')},${name('Fabric_names')},0)),6)),0))`,
        },
      ],
    }),
    laidOut(job, sheet, {
      header: HEADER,
      landscape: true,
      widths: [22, 12, 12, 16, 22, 10, 3, 22, 12, 12],
    }),
  );
}
