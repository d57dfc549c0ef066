/** The house rules: every rule with the value in force, its unit, words, source and default. */
import { RULE_LINES, type RuleLine } from '../../core/house/rules';
import { INCHES, type Unit } from '../../core/exact/unit';
import { areaAt } from '../address';
import type { CellPut } from '../book';
import { laidOut, oneOf, tableDraft, titled, together, type Draft, type Job } from './draft';
import { ruleFormula } from './prices';

export const RULES_HEADER = 3;

/** The unit a rule's value is in, as it stands beside it. */
export function ruleUnit(line: RuleLine, unit: Unit): string {
  switch (line.kind.quantity) {
    case 'length':
      return unit.small;
    case 'yardage':
      return unit.large;
    case 'weight':
      return unit.weight;
    case 'areal weight':
      return unit.areal;
    case 'fullness':
      return 'times';
    case 'money':
      return line.key.startsWith('labor') ? 'each' : '';
    default:
      return '';
  }
}

/** The default as a cell holds it; null where only the house can say. */
export function ruleDefault(line: RuleLine, unit: Unit): CellPut {
  if (line.key === 'unit') return INCHES.name;
  const standard = line.standard(unit);
  return standard === undefined ? null : (line.kind.write?.(standard, unit) ?? null);
}

const inForce = (own: string, standard: string): string =>
  `=IF(${own}="",IF(${standard}="","",${standard}),${own})`;
/** The cell of the house's own figure, where a formula says what is in force. */
export const ownFigure = (formula: string | null): string | undefined => {
  const [, own, standard] = /^=IF\(([^=(),]+)="",IF\(([^=(),]+)="","",\2\),\1\)$/.exec(formula ?? '') ?? [];
  return standard === undefined ? undefined : own;
};

export function houseRulesSheet(job: Job): Draft {
  const sheet = job.sheet('House rules');
  const { unit } = job;
  const values = RULE_LINES.map((line): CellPut => {
    if (line.key === 'unit') return unit.name;
    const formula = ruleFormula(job, line);
    return formula === undefined ? null : { formula };
  });
  const first = RULES_HEADER + 1;
  return together(
    titled(
      sheet,
      'House rules',
      'Write your own figure where the house does otherwise; left blank, the default is in force. Every formula of the job reads what is in force. Leave a name as it is.',
    ),
    tableDraft(job, {
      sheet,
      name: 'Rules',
      row: RULES_HEADER,
      rows: RULE_LINES.length,
      columns: [
        { key: 'rule', heading: 'rule', role: 'note', cells: RULE_LINES.map((line) => line.name) },
        {
          key: 'inForce',
          heading: 'in force',
          role: 'working',
          // Never an empty cell, which some hosts hand over as 0: a return of 0 is a figure.
          formula: (cell) => inForce(cell('value'), cell('standard')),
        },
        { key: 'value', heading: 'your figure', role: 'input', cells: values },
        { key: 'unit', heading: 'unit', role: 'note', cells: RULE_LINES.map((line) => ruleUnit(line, unit)) },
        { key: 'words', heading: 'what it says', role: 'note', cells: RULE_LINES.map((line) => line.says) },
        { key: 'source', heading: 'source', role: 'note', cells: RULE_LINES.map((line) => line.source) },
        {
          key: 'standard',
          heading: 'default',
          role: 'note',
          cells: RULE_LINES.map((line) => ruleDefault(line, unit)),
        },
        {
          key: 'differs',
          heading: 'differs',
          role: 'check',
          formula: (cell) =>
            `=IF(OR(${cell('value')}="",${cell('value')}&""=${cell('standard')}&""),"","yes")`,
        },
      ],
    }),
    {
      newNames: [{ name: job.name('House_rules'), area: areaAt(sheet, first, 0, RULE_LINES.length, 2) }],
      validations: RULE_LINES.flatMap((line, at) => {
        const words = line.kind.choices?.map((one) => one.word);
        return words === undefined
          ? []
          : [
              {
                area: areaAt(sheet, first + at, 2),
                ...oneOf(words, `Choose ${line.kind.noun}: ${line.says}.`),
              },
            ];
      }),
    },
    laidOut(job, sheet, { header: RULES_HEADER, landscape: true, widths: [28, 18, 18, 8, 66, 44, 16, 8] }),
  );
}
