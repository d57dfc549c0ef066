/** What making, hardware and the rest cost the house: her own figures, none of ours. */
import { RULE_LINES, RULES, type RuleLine } from '../../core/rules';
import { SELL_BASES, TAX_BASES } from '../../core/ways';
import { INCHES } from '../../core/unit';
import { cellText, sheetText } from '../address';
import {
  atLeast,
  laidOut,
  MONEY_FORMAT,
  oneOf,
  pairs,
  SHARE_FORMAT,
  tableDraft,
  titled,
  together,
  type Draft,
  type Job,
} from './draft';

/** The making charges: rules without a default, kept on this sheet and pointed at by the house rules. */
export const LABOR_LINES: readonly RuleLine[] = RULE_LINES.filter(
  (line) => line.key.startsWith('labor') && line.standard(INCHES) === undefined,
);
const TERMS = 3;
const HEADER = 20;

/** Where a making charge stands, seen from another sheet. */
export function laborCell(job: Job, line: RuleLine): string | undefined {
  const at = LABOR_LINES.indexOf(line);
  return at < 0
    ? undefined
    : `${sheetText(job.sheet('Prices'))}!${cellText(HEADER + 1 + at, 1, { row: true, column: true })}`;
}

export function pricesSheet(job: Job): Draft {
  const sheet = job.sheet('Prices');
  const { small, large } = job.unit;
  const usual = RULES.usualFabricWidth;
  const lining = usual.kind.write?.(usual.standard as never, job.unit);
  const money = (label: string, name: string, says: string) => ({
    label,
    name,
    says,
    role: 'input' as const,
    format: MONEY_FORMAT,
    choice: atLeast(0, 'An amount, 0 or more.'),
  });
  const share = (label: string, name: string, says: string, most = 1) => ({
    label,
    name,
    says,
    role: 'input' as const,
    format: SHARE_FORMAT,
    choice: atLeast(0, 'A share like 7.25%.', { most }),
  });
  return together(
    titled(
      sheet,
      'Prices',
      'What things cost the house. A price left blank counts as nothing, except a making charge: that one is asked for.',
    ),
    pairs(job, sheet, TERMS, [
      {
        label: `lining width (${small})`,
        name: 'Lining_width',
        role: 'input',
        value: lining as number,
        says: 'the lining’s bolt width; ours is a start, not a rule',
      },
      money(`lining a ${large}`, 'Price_lining', 'any lining or blackout'),
      money(`rod a ${large}`, 'Price_rod', 'rod or track'),
      money('ring or carrier', 'Price_ring', 'each'),
      money('bracket', 'Price_bracket', 'each'),
      money('finials', 'Price_finials', 'a pair, for each rod'),
      money('installation', 'Price_installation', 'for each window'),
      money('freight', 'Price_freight', 'for the whole job; added to the quote as it is, untaxed'),
      {
        label: 'rate is a',
        name: 'Sell_basis',
        role: 'input',
        value: 'markup on cost',
        choice: oneOf(
          SELL_BASES.list.map((one) => one.word),
          'Choose what the rate is of.',
        ),
        says: 'markup on cost: cost × (1 + rate); margin on selling price: cost ÷ (1 − rate)',
      },
      share('markup or margin', 'Sell_rate', 'blank sells at cost', 20),
      share('discount', 'Sell_discount', 'off every line'),
      share('tax on goods', 'Tax_goods', 'fabric, lining, hardware'),
      share('tax on work', 'Tax_work', 'making and installation; 0% where exempt'),
      {
        label: 'tax is rounded by',
        name: 'Tax_basis',
        role: 'input',
        value: 'line',
        choice: oneOf(
          TAX_BASES.list.map((one) => one.word),
          'Choose line or invoice.',
        ),
        says: 'line: each line rounded, then added; invoice: the sum rounded once',
      },
      share('deposit', 'Deposit_share', 'of the total, due with the order'),
    ]),
    tableDraft(job, {
      sheet,
      name: 'Making_charges',
      row: HEADER,
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
          choice: atLeast(0, 'An amount, or for the height surcharge a share of the charge; 0 or more.'),
        },
        { key: 'says', heading: 'what it is', role: 'note', cells: LABOR_LINES.map((line) => line.says) },
      ],
    }),
    laidOut(job, sheet, { header: TERMS - 1, widths: [28, 16, 64] }),
  );
}
