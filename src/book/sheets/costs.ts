/** What each row of the windows costs and sells for: the house's own working, not the client's. */
import { LININGS } from '../../core/cell/treatment';
import { areaAt, cellText } from '../address';
import {
  laidOut,
  MONEY_FORMAT,
  tableDraft,
  titled,
  together,
  type CellOfRow,
  type ColumnDraft,
  type Draft,
  type Job,
} from './draft';
import { partOf } from './price-terms';

const HEADER = 3;
/** Stands for a price until everything in it is known. */
export const NOT_YET = 'cannot be added yet';
export const ifKnown = (known: string, then: string): string => `IF(ISNUMBER(${known}),${then},"${NOT_YET}")`;
/** Every word that is read as a blackout lining, as a formula lists them. */
const BLACKOUT = LININGS.list
  .filter(({ word }) => word === 'blackout')
  .flatMap(({ word, also }) => [word, ...(also ?? [])])
  .map((word) => `"${word}"`)
  .join(',');

/** A house rule’s value in force, as its cell holds it. */
export const ruleCell = (job: Job, rule: string): string =>
  `VLOOKUP("${rule}",${job.name('House_rules')},2,FALSE)`;

/** Markup on the cost or margin on the selling price, as the sheet of prices says; no price has a margin of all of it. */
export const soldAt = (job: Job, cost: string): string =>
  `IF(${job.name('Sell_basis')}="margin on selling price",IF(N(${job.name('Sell_rate')})<1,(${cost})/(1-N(${job.name('Sell_rate')})),NA()),(${cost})*(1+N(${job.name('Sell_rate')})))`;

/** What these sheets leave out, and the task pane’s Price counts: said, where it is in force. */
function notCounted(job: Job): string {
  const name = (base: string): string => job.name(base);
  const set = (rule: string): string => `AND(${ruleCell(job, rule)}&""<>"",${ruleCell(job, rule)}&""<>"0")`;
  const weighed = `N(${name('Price_freight_weight')})+N(${name('Price_freight_carton')})>0`;
  const parts: readonly (readonly [string, string])[] = [
    [`SUM(${name('Fabric_roll_prices')})>0`, 'whole rolls'],
    [set('spare windows'), 'spares'],
    [set('mock up windows'), 'the mock-up apart'],
    [`${ruleCell(job, 'cent rounding')}<>"half up"`, 'the house rule cent rounding'],
  ];
  const listed = parts.map(([when, what]) => `IF(${when},"; ${what}","")`).join('&');
  const unpriced = `SUMPRODUCT((${name('Lining_needed')}>0)*(${name('Lining_own_prices')}="")*(${name('Lining_prices')}=0))`;
  const linings = `IF(${unpriced}>0,"A lining without a price counts as nothing. ","")`;
  const unweighed = `SUMPRODUCT((${name('Lining_needed')}>0)*(${name('Lining_weights')}=0))`;
  const unknown = `SUMPRODUCT((${name('Fabric_names')}<>"")*(${name('Fabric_needed')}<>0)*(${name('Fabric_needed')}<>"")*(${name('Fabric_weights')}=""))+${unweighed}`;
  const taxed = `IF(AND(N(${name('Tax_work')})<>0,N(${name('Tax_work')})<>N(${name('Tax_goods')})),"The task pane taxes work at the rate of goods or not at all. ","")`;
  const freight = `IF(AND(${weighed},${unknown}>0),"The freight leaves out cloth of unknown weight.","")`;
  return `=IF(LEN(${listed})=0,"","The task pane’s Price counts these, the sheets do not: "&MID(${listed},3,200)&". ")&${taxed}&${linings}&${freight}`;
}

/** What the formulas of a row look up, by the row's own number. */
function formulas(job: Job) {
  const name = (base: string): string => job.name(base);
  const line = (cell: CellOfRow, range: string): string => `INDEX(${name(range)},${cell('line')})`;
  const worked = (cell: CellOfRow, formula: string): string => `=IF(${cell('room')}="","",${formula})`;
  const count = (cell: CellOfRow): string => cell('quantity');
  const found = (cell: CellOfRow, range: string): string =>
    `INDEX(${name(range)},MATCH(${line(cell, 'Window_fabrics')},${name('Fabric_names')},0))`;
  const ofCloth = (cloth: string, range: string): string =>
    `INDEX(${name(range)},MATCH(${cloth},${name('Lining_cloths')},0))`;
  const behind = (cell: CellOfRow, range: string): string =>
    `IF(${cell('behind')}="",0,${line(cell, 'Window_lining_yardage')}*${ofCloth(cell('behind'), range)})`;
  const interlining = (cell: CellOfRow, range: string): string =>
    `${line(cell, 'Window_interlining_yardage')}*${ofCloth('"interlining"', range)}`;
  const rule = (key: string): string => ruleCell(job, key);
  return { line, worked, count, found, behind, interlining, rule };
}

/** The windows of a row, as the sheet of windows has them. */
function rowColumns(job: Job): readonly ColumnDraft[] {
  const name = (base: string): string => job.name(base);
  const { line, worked, count, rule } = formulas(job);
  return [
    {
      key: 'line',
      heading: 'line',
      role: 'note',
      formula: () => {
        const at = `ROW()-ROW(${cellText(HEADER, 0, { row: true, column: true })})`;
        return `=IF(INDEX(${name('Window_openings')},${at})="","",${at})`;
      },
    },
    {
      key: 'room',
      heading: 'room',
      role: 'working',
      name: 'Cost_rooms',
      formula: (cell) =>
        `=IF(${cell('line')}="","",IF(${line(cell, 'Window_rooms')}="","window "&${cell('line')},${line(cell, 'Window_rooms')}&""))`,
    },
    {
      key: 'what',
      heading: 'what',
      role: 'working',
      name: 'Cost_words',
      formula: (cell) =>
        worked(cell, `${line(cell, 'Window_headings')}&", "&${line(cell, 'Window_fabrics')}`),
    },
    {
      key: 'quantity',
      heading: 'quantity',
      role: 'working',
      name: 'Cost_quantities',
      formula: (cell) =>
        worked(cell, `IF(${line(cell, 'Window_quantities')}="",1,${line(cell, 'Window_quantities')})`),
    },
    {
      key: 'widths',
      heading: 'widths',
      role: 'working',
      name: 'Cost_widths',
      note: 'of all the windows of the row',
      formula: (cell) => worked(cell, `${line(cell, 'Window_widths')}*${count(cell)}`),
    },
    {
      key: 'cuts',
      heading: 'cuts',
      role: 'working',
      name: 'Cost_cuts',
      note: 'half widths are cut whole unless the house lets windows share them',
      formula: (cell) =>
        worked(
          cell,
          `IF(AND(${rule('share half widths')}="yes",${rule('yardage rounded by')}<>"window"),ROUNDUP(${cell('widths')},0),ROUNDUP(${line(cell, 'Window_widths')},0)*${count(cell)})`,
        ),
    },
    {
      key: 'behind',
      heading: 'lining cloth',
      role: 'working',
      name: 'Cost_lining_cloths',
      formula: (cell) =>
        worked(
          cell,
          `IF(${line(cell, 'Window_lining_yardage')}=0,"",IF(ISNUMBER(MATCH(${line(cell, 'Window_linings')},{${BLACKOUT}},0)),"blackout lining","lining"))`,
        ),
    },
  ];
}

/** What each of their parts weighs and costs. */
function costColumns(job: Job): readonly ColumnDraft[] {
  const { small, large, weight } = job.unit;
  const name = (base: string): string => job.name(base);
  const { line, worked, count, found, behind, interlining } = formulas(job);
  return [
    {
      key: 'weight',
      heading: `cloth weight (${weight})`,
      role: 'working',
      format: '0.00;-0.00;',
      name: 'Cost_weights',
      note: 'every layer, where its weight is known; for freight',
      formula: (cell) =>
        worked(
          cell,
          `(${line(cell, 'Window_yardage')}*CONVERT(${found(cell, 'Fabric_widths')},"${small}","${large}")*${found(cell, 'Fabric_weights')}+${behind(cell, 'Lining_weights')}*CONVERT(${name('Lining_bolt')},"${small}","${large}")+${interlining(cell, 'Lining_weights')}*CONVERT(IF(N(${name('Interlining_width')})=0,${name('Lining_bolt')},${name('Interlining_width')}),"${small}","${large}"))/${weight === 'lb' ? 16 : 1000}`,
        ),
    },
    {
      key: 'fabric',
      heading: 'fabric',
      role: 'working',
      format: MONEY_FORMAT,
      formula: (cell) =>
        worked(
          cell,
          ifKnown(
            line(cell, 'Window_yardage'),
            `${line(cell, 'Window_yardage')}*${found(cell, 'Fabric_prices')}`,
          ),
        ),
    },
    {
      key: 'lining',
      heading: 'lining',
      role: 'working',
      format: MONEY_FORMAT,
      formula: (cell) => worked(cell, behind(cell, 'Lining_prices')),
    },
    {
      key: 'interlining',
      heading: 'interlining',
      role: 'working',
      format: MONEY_FORMAT,
      formula: (cell) => worked(cell, interlining(cell, 'Lining_prices')),
    },
    {
      key: 'making',
      heading: 'making',
      role: 'working',
      format: MONEY_FORMAT,
      note: 'less the making break that all the widths reach',
      formula: (cell) =>
        worked(
          cell,
          ifKnown(line(cell, 'Window_labor'), `${line(cell, 'Window_labor')}*(1-${name('Making_less')})`),
        ),
    },
    {
      key: 'hardware',
      heading: 'hardware',
      role: 'working',
      format: MONEY_FORMAT,
      note: 'what belongs to the heading: a track has no finials, a grommet heading no rings',
      formula: (cell) => worked(cell, line(cell, 'Window_hardware')),
    },
    {
      key: 'installation',
      heading: 'installation',
      role: 'working',
      format: MONEY_FORMAT,
      name: 'Cost_installations',
      formula: (cell) => worked(cell, `${count(cell)}*N(${name('Price_installation')})`),
    },
  ];
}

/** What they sell for, and the tax. */
function soldColumns(job: Job): readonly ColumnDraft[] {
  const { worked } = formulas(job);
  const parts = ['fabric', 'lining', 'interlining', 'making', 'hardware'];
  const kept = `(1-${partOf(job, 'Sell_discount')})`;
  return [
    {
      key: 'cost',
      heading: 'cost',
      role: 'working',
      format: MONEY_FORMAT,
      note: 'without installation, which is not marked up and stands apart on the quote',
      formula: (cell) =>
        worked(
          cell,
          `IF(COUNT(${parts.map(cell).join(',')})=${parts.length},${parts.map(cell).join('+')},"${NOT_YET}")`,
        ),
    },
    {
      key: 'price',
      heading: 'price',
      role: 'output',
      format: MONEY_FORMAT,
      name: 'Cost_prices',
      note: 'after markup or margin, and discount',
      formula: (cell) => worked(cell, ifKnown(cell('cost'), `ROUND(${soldAt(job, cell('cost'))}*${kept},2)`)),
    },
    {
      key: 'exact',
      heading: 'tax, exact',
      role: 'working',
      format: '0.0000',
      name: 'Cost_exact_tax',
      formula: (cell) =>
        worked(
          cell,
          ifKnown(
            cell('cost'),
            `IF(${cell('cost')}=0,0,${cell('price')}*((${cell('fabric')}+${cell('lining')}+${cell('interlining')}+${cell('hardware')})*${partOf(job, 'Tax_goods')}+${cell('making')}*${partOf(job, 'Tax_work')})/${cell('cost')})`,
          ),
        ),
    },
    {
      key: 'tax',
      heading: 'tax',
      role: 'output',
      format: MONEY_FORMAT,
      name: 'Cost_line_tax',
      formula: (cell) => worked(cell, ifKnown(cell('exact'), `ROUND(${cell('exact')},2)`)),
    },
  ];
}

export function costsSheet(job: Job): Draft {
  const sheet = job.sheet('Costs');
  return together(
    titled(sheet, 'Costs', 'The house’s own working behind the quote: not for the client.'),
    {
      puts: [{ area: areaAt(sheet, HEADER - 1, 0), formula: notCounted(job) }],
      newNames: [{ name: job.name('Cost_note'), area: areaAt(sheet, HEADER - 1, 0) }],
      dress: [{ area: areaAt(sheet, HEADER - 1, 0), role: 'check' }],
    },
    tableDraft(job, {
      sheet,
      name: 'Costs',
      row: HEADER,
      rows: job.windows,
      columns: [...rowColumns(job), ...costColumns(job), ...soldColumns(job)],
    }),
    laidOut(job, sheet, {
      header: HEADER,
      landscape: true,
      widths: [6, 22, 30, 10, 10, 10, 15, 12, 12, 12, 12, 12, 12, 12, 12, 12, 12, 12],
    }),
  );
}
