/** What making, hardware, freight and the rest cost the house: her own figures, none of ours. */
import { RULE_LINES, RULES, type RuleKey, type RuleLine } from '../../core/rules';
import { MAKING_BREAKS_ON, SELL_BASES, TAX_BASES } from '../../core/ways';
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
  type Pair,
} from './draft';

/** The making charges: rules without a default, kept on this sheet and pointed at by the house rules. */
export const LABOR_LINES: readonly RuleLine[] = RULE_LINES.filter(
  (line) => line.key.startsWith('labor') && line.standard(INCHES) === undefined,
);
const BREAK_ROWS = 4;
const TERMS = 3;
/** Beside the making charges. */
const BREAKS_AT = 4;

/** A figure of this sheet, and the house rule that it is. */
interface Term extends Pair {
  readonly rule?: RuleKey;
  /** The rule’s formula, where the two are not counted alike; `cell` is the figure’s. */
  readonly asRule?: (cell: string) => string;
}

const unlessBlank = (cell: string, then = cell): string => `=IF(${cell}="","",${then})`;

function terms(job: Job): readonly Term[] {
  const { small, large, areal, weight } = job.unit;
  const name = (base: string): string => job.name(base);
  const usual = RULES.usualFabricWidth;
  const lining = usual.kind.write?.(usual.standard as never, job.unit);
  const money = (label: string, base: string, says: string, more: Partial<Term> = {}): Term => ({
    ...{ label, name: base, says, role: 'input', format: MONEY_FORMAT },
    choice: atLeast(0, 'An amount, 0 or more.'),
    ...more,
  });
  const share = (label: string, base: string, says: string, more: Partial<Term> = {}, most = 1): Term => ({
    ...{ label, name: base, says, role: 'input', format: SHARE_FORMAT },
    choice: atLeast(0, 'A share like 7.25%.', { most }),
    ...more,
  });
  const choice = (
    label: string,
    base: string,
    value: string,
    list: readonly { word: string }[],
    more: Pick<Term, 'says' | 'rule'>,
  ): Term => ({
    ...{ label, name: base, role: 'input', value },
    choice: oneOf(
      list.map((one) => one.word),
      `Choose: ${more.says ?? label}.`,
    ),
    ...more,
  });
  // The goods’ rate is the tax rate; work bears it or does not.
  const worksTax = (cell: string): string =>
    `=IF(AND(${name('Tax_goods')}="",${cell}=""),"",IF(N(${cell})=0,"no","yes"))`;
  return [
    {
      ...{ label: `lining width (${small})`, name: 'Lining_width', role: 'input', value: lining as number },
      says: 'the lining’s bolt width; ours is a start, not a rule',
    },
    {
      ...{ label: `lining weight (${areal})`, name: 'Lining_weight', role: 'input', rule: 'liningWeight' },
      choice: atLeast(0, 'A weight, 0 or more.'),
      says: 'for freight by weight or by the carton',
    },
    money(`lining a ${large}`, 'Price_lining', 'any lining or blackout'),
    money(`rod a ${large}`, 'Price_rod', 'rod or track', {
      rule: 'pricePerRodFoot',
      asRule: (cell) => unlessBlank(cell, large === 'yd' ? `${cell}/3` : cell),
    }),
    money('ring or carrier', 'Price_ring', 'each', { rule: 'pricePerRing' }),
    money('bracket', 'Price_bracket', 'each', { rule: 'pricePerBracket' }),
    money('finials', 'Price_finials', 'a pair, for each rod', {
      rule: 'pricePerFinial',
      asRule: (cell) => unlessBlank(cell, `${cell}/2`),
    }),
    money('installation', 'Price_installation', 'for each window; not marked up', {
      rule: 'installationPerWindow',
    }),
    money('freight', 'Price_freight', 'for the whole job; neither marked up nor taxed', { rule: 'freight' }),
    money(
      `freight a ${weight}`,
      'Price_freight_weight',
      'by the weight of the cloth, beside the freight above',
      {
        rule: 'freightPerWeight',
      },
    ),
    {
      ...{ label: `a carton holds (${weight})`, name: 'Carton_holds', role: 'input', rule: 'cartonHolds' },
      choice: atLeast(0, `A weight in ${weight}; blank where freight does not go by the carton.`),
      says: 'cloth, where freight goes by the carton',
    },
    money('freight a carton', 'Price_freight_carton', 'each', { rule: 'freightPerCarton' }),
    {
      ...{ label: 'attic stock', name: 'Attic_stock', role: 'input', rule: 'atticStock' },
      choice: atLeast(0, 'A share of the windows’ cuts like 0.05, or whole cuts like 2.'),
      says: 'cloth of each fabric kept for repairs: below 1 a share of its cuts, else so many cuts, the longest',
    },
    choice(
      'making breaks on',
      'Making_breaks_on',
      RULES.makingBreaksOn.standard as string,
      MAKING_BREAKS_ON.list,
      {
        says: 'whole: all of the making charge; further widths: only the widths past each break',
        rule: 'makingBreaksOn',
      },
    ),
    choice('rate is a', 'Sell_basis', 'markup on cost', SELL_BASES.list, {
      says: 'markup on cost: cost × (1 + rate); margin on selling price: cost ÷ (1 − rate)',
      rule: 'sellBasis',
    }),
    share('markup or margin', 'Sell_rate', 'blank sells at cost', { rule: 'sellRate' }, 20),
    share('discount', 'Sell_discount', 'off every line', { rule: 'discount' }),
    share('tax on goods', 'Tax_goods', 'fabric, lining, hardware', { rule: 'taxRate' }),
    share('tax on work', 'Tax_work', 'making and installation; 0% where exempt', {
      rule: 'taxLabor',
      asRule: worksTax,
    }),
    choice('tax is rounded by', 'Tax_basis', 'line', TAX_BASES.list, {
      says: 'line: each line rounded, then added; invoice: the sum rounded once',
      rule: 'taxBasis',
    }),
    share('deposit', 'Deposit_share', 'of the total, due with the order', {
      rule: 'deposit',
      value: RULES.deposit.kind.write?.(RULES.deposit.standard as never, job.unit) as number,
    }),
    {
      ...{ label: `cloth in all (${weight})`, name: 'Job_weight', role: 'working', format: MONEY_FORMAT },
      formula: `=SUM(${name('Cost_weights')})+SUM(${name('Fabric_attic_weights')})`,
      says: 'of the windows and the attic stock, as far as weights are known',
    },
    {
      ...{ label: 'freight of the job', name: 'Freight_charge', role: 'working', format: MONEY_FORMAT },
      formula: `=N(${name('Price_freight')})+ROUND(ROUNDUP(ROUND(${name('Job_weight')},8),2)*N(${name('Price_freight_weight')}),2)+IF(OR(N(${name('Carton_holds')})=0,N(${name('Price_freight_carton')})=0),0,ROUNDUP(ROUND(${name('Job_weight')}/${name('Carton_holds')},9),0)*${name('Price_freight_carton')})`,
      says: 'all of it: the fixed sum, by weight, by the carton',
    },
    {
      ...{ label: 'making less', name: 'Making_less', role: 'working', format: SHARE_FORMAT },
      formula: makingLess(name),
      says: 'the share that the making breaks below take off for all the widths of the job',
    },
    {
      ...{ label: `yardage goes up by (${large})`, name: 'Yardage_step', role: 'working' },
      formula: `=HEM.HOUSERULE("yardage step",${name('House_rules')})`,
      says: 'the house rule “yardage step”',
    },
  ];
}

function makingLess(name: (base: string) => string): string {
  const [from, less, widths] = ['Making_break_from', 'Making_break_less', 'Making_break_widths'].map(name);
  const all = `SUM(${name('Cost_widths')})`;
  const reached = `COUNTIF(${from},"<="&${all})`;
  return `=IF(OR(${all}=0,${reached}=0),0,IF(${name('Making_breaks_on')}="further widths",SUMPRODUCT(${widths}*${less})/${all},SUMIFS(${less},${from},MAXIFS(${from},${from},"<="&${all}))))`;
}

const headerRow = (job: Job): number => TERMS + terms(job).length + 2;

function cellOf(job: Job, row: number, column: number): string {
  return `${sheetText(job.sheet('Prices'))}!${cellText(row, column, { row: true, column: true })}`;
}

/** The formula of a house rule whose figure stands on this sheet. */
export function ruleFormula(job: Job, line: RuleLine): string | undefined {
  const charge = LABOR_LINES.indexOf(line);
  if (charge >= 0) return unlessBlank(cellOf(job, headerRow(job) + 1 + charge, 1));
  const list = terms(job);
  const key = line.key === 'taxInstallation' ? 'taxLabor' : line.key;
  const at = list.findIndex(({ rule }) => rule === key);
  if (at >= 0) return (list[at]?.asRule ?? unlessBlank)(cellOf(job, TERMS + at, 1));
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
      'What things cost the house. A price left blank counts as nothing, except a making charge: that one is asked for.',
    ),
    pairs(job, sheet, TERMS, terms(job)),
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
          choice: atLeast(0, 'An amount, or for the height surcharge a share of the charge; 0 or more.'),
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
          ...{ key: 'from', heading: 'making less from (widths)', role: 'input', name: 'Making_break_from' },
          choice: atLeast(0, 'From how many widths of the whole job.'),
        },
        {
          ...{ key: 'less', heading: 'less by', role: 'input', name: 'Making_break_less' },
          format: SHARE_FORMAT,
          choice: atLeast(0, 'A share like 5%.', { most: 1 }),
        },
        {
          ...{ key: 'widths', heading: 'widths past it', role: 'working', name: 'Making_break_widths' },
          note: 'up to the next break; counted where the breaks are on further widths',
          formula: (of) =>
            `=IF(${of('from')}="",0,MAX(0,IF(COUNTIF(${job.name('Making_break_from')},">"&${of('from')})=0,${all},MIN(${all},MINIFS(${job.name('Making_break_from')},${job.name('Making_break_from')},">"&${of('from')})))-${of('from')}))`,
        },
      ],
    }),
    laidOut(job, sheet, { header: TERMS - 1, widths: [28, 16, 64, 3, 16, 10, 12] }),
  );
}
