/** What making, hardware, freight and the rest cost the house: its own figures, none of ours. */
import { BEHIND, WEIGHT_RULE } from '../../core/cloth/behind';
import { RULE_LINES, type RuleLine } from '../../core/house/rules';
import { INCHES } from '../../core/exact/unit';
import { cellText, sheetText } from '../address';
import {
  atLeast,
  laidOut,
  pairs,
  SHARE_FORMAT,
  tableDraft,
  titled,
  together,
  type Draft,
  type Job,
} from './draft';
import { liningWeightCell } from './fabrics';
import { termsOf, unlessBlank } from './price-terms';

/** The making charges: rules without a default, kept on this sheet and pointed at by the house rules. */
export const LABOR_LINES: readonly RuleLine[] = RULE_LINES.filter(
  (line) => line.key.startsWith('labor') && line.standard(INCHES) === undefined,
);
const BREAK_ROWS = 4;
const TERMS = 3;
/** Beside the making charges. */
const BREAKS_AT = 4;

const headerRow = (job: Job): number => TERMS + termsOf(job).length + 2;

function cellOf(job: Job, row: number, column: number): string {
  return `${sheetText(job.sheet('Prices'))}!${cellText(row, column, { row: true, column: true })}`;
}

/** The formula of a house rule whose figure stands on this sheet. */
export function ruleFormula(job: Job, line: RuleLine): string | undefined {
  const charge = LABOR_LINES.indexOf(line);
  if (charge >= 0) return unlessBlank(cellOf(job, headerRow(job) + 1 + charge, 1));
  const list = termsOf(job);
  const key = line.key === 'taxInstallation' ? 'taxLabor' : line.key;
  const at = list.findIndex(({ rule }) => rule === key);
  if (at >= 0) return (list[at]?.asRule ?? unlessBlank)(cellOf(job, TERMS + at, 1));
  const weighed = BEHIND.find((cloth) => WEIGHT_RULE[cloth] === line.key);
  if (weighed !== undefined) return unlessBlank(liningWeightCell(job, weighed));
  if (line.key !== 'makingBreaks') return undefined;
  const parts = Array.from({ length: BREAK_ROWS }, (_, row) => {
    const [from, less] = [0, 1].map((column) => cellOf(job, headerRow(job) + 1 + row, BREAKS_AT + column));
    return `IF(OR(${from ?? ''}="",${less ?? ''}=""),"",${from ?? ''}&" "&ROUND(100*${less ?? ''},6)&" %; ")`;
  });
  return `=${parts.join('&')}`;
}

export function pricesSheet(job: Job): Draft {
  const sheet = job.sheet('Prices');
  const row = headerRow(job);
  const all = `SUM(${job.name('Cost_widths')})`;
  return together(
    titled(
      sheet,
      'Prices',
      'What things cost the house. A price left blank counts as nothing, except a making charge: that one is asked for, or none.',
    ),
    pairs(job, sheet, TERMS, termsOf(job)),
    tableDraft(job, {
      sheet,
      name: 'Making_charges',
      row,
      rows: LABOR_LINES.length,
      columns: [
        {
          key: 'charge',
          heading: 'making charge',
          role: 'note',
          cells: LABOR_LINES.map((line) => line.name),
        },
        {
          key: 'price',
          heading: 'your figure',
          role: 'input',
          choice: atLeast(
            0,
            'An amount, for the height surcharge a share of the charge; none where nothing is charged.',
            { otherwise: 'warn' },
          ),
        },
        { key: 'says', heading: 'what it is', role: 'note', cells: LABOR_LINES.map((line) => line.says) },
      ],
    }),
    tableDraft(job, {
      sheet,
      name: 'Making_breaks',
      row,
      column: BREAKS_AT,
      rows: BREAK_ROWS,
      columns: [
        {
          key: 'from',
          heading: 'making less from (widths)',
          role: 'input',
          name: 'Making_break_from',
          choice: atLeast(0, 'From how many widths of the whole job.'),
        },
        {
          key: 'less',
          heading: 'less by',
          role: 'input',
          name: 'Making_break_less',
          format: SHARE_FORMAT,
          choice: atLeast(0, 'A share like 5%.', { most: 1 }),
        },
        {
          key: 'widths',
          heading: 'widths past it',
          role: 'working',
          name: 'Making_break_widths',
          note: 'up to the next break; counted where the breaks are on further widths',
          formula: (cell) =>
            `=IF(${cell('from')}="",0,MAX(0,IF(COUNTIF(${job.name('Making_break_from')},">"&${cell('from')})=0,${all},MIN(${all},MINIFS(${job.name('Making_break_from')},${job.name('Making_break_from')},">"&${cell('from')})))-${cell('from')}))`,
        },
      ],
    }),
    laidOut(job, sheet, { header: TERMS - 1, widths: [28, 20, 64, 3, 16, 10, 12] }),
  );
}
