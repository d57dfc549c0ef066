/** The figures of the sheet of prices, one under the other: a word, a value, and the house rule that it is. */
import { RULES, type RuleKey } from '../../core/house/rules';
import type { Unit } from '../../core/exact/unit';
import { MAKING_BREAKS_ON, SELL_BASES, TAX_BASES } from '../../core/cell/ways';
import { atLeast, MONEY_FORMAT, oneOf, SHARE_FORMAT, type Job, type Pair } from './draft';

/** A figure of this sheet, and the house rule that it is. */
export interface Term extends Pair {
  readonly rule?: RuleKey;
  /** The rule’s formula, where the two are not counted alike; `cell` is the figure’s. */
  readonly asRule?: (cell: string) => string;
}

export const unlessBlank = (cell: string, then = cell): string => `=IF(${cell}="","",${then})`;

/** A figure in so many parts; the word none stays. */
const parted = (cell: string, parts: number): string => `IF(ISNUMBER(${cell}),${cell}/${parts},${cell})`;

type More = Partial<Term>;

const money = (label: string, name: string, says: string, more: More = {}): Term => ({
  label,
  name,
  says,
  role: 'input',
  format: MONEY_FORMAT,
  choice: atLeast(0, 'An amount, or none where nothing is charged.', { otherwise: 'warn' }),
  ...more,
});

const share = (label: string, name: string, says: string, more: More = {}, most = 1): Term => ({
  label,
  name,
  says,
  role: 'input',
  format: SHARE_FORMAT,
  choice: atLeast(0, 'A share like 7.25%, or none.', { most, otherwise: 'warn' }),
  ...more,
});

/** Shares of a whole that the sheets reckon with: nothing can be more than all of it. */
export const PARTS = ['Sell_discount', 'Tax_goods', 'Tax_work', 'Deposit_share'] as const;
type PartName = (typeof PARTS)[number] | 'Deposit_in_force';

/** A share as a formula counts it: one above the whole gives no figure, and the checks say which to write. */
export const partOf = (job: Job, part: PartName): string =>
  `IF(N(${job.name(part)})>1,NA(),N(${job.name(part)}))`;

const choice = (
  label: string,
  name: string,
  value: string,
  list: readonly { word: string }[],
  more: Pick<Term, 'says' | 'rule'>,
): Term => ({
  label,
  name,
  role: 'input',
  value,
  choice: oneOf(
    list.map((one) => one.word),
    `Choose: ${more.says ?? label}.`,
  ),
  ...more,
});

/** A default of the house rules as a cell holds it. */
const standard = (rule: 'usualLiningWidth' | 'deposit', unit: Unit): number => {
  const found = RULES[rule];
  return found.kind.write?.(found.standard as never, unit) as number;
};

function goodsTerms({ unit }: Job): readonly Term[] {
  const { small, large } = unit;
  return [
    {
      label: `lining width (${small})`,
      name: 'Lining_width',
      role: 'input',
      rule: 'usualLiningWidth',
      value: standard('usualLiningWidth', unit),
      choice: atLeast(0, `A bolt width in ${small}.`),
      says: 'the bolt width of lining, blackout and interlining; their prices stand under the fabrics',
    },
    {
      label: `interlining width (${small})`,
      name: 'Interlining_width',
      role: 'input',
      rule: 'interliningWidth',
      choice: atLeast(0, `A bolt width in ${small}.`),
      says: 'where it is another than the lining’s',
    },
    money(`rod a ${large}`, 'Price_rod', 'rod or track', {
      rule: 'pricePerRodFoot',
      asRule: (cell) => unlessBlank(cell, large === 'yd' ? parted(cell, 3) : cell),
    }),
    money(
      'rod a piece',
      'Price_rod_piece',
      'a stock rod, where rods are sold so; taken before the price above',
      {
        rule: 'pricePerRodPiece',
      },
    ),
    money('ring or carrier', 'Price_ring', 'each', { rule: 'pricePerRing' }),
    money('grommet', 'Price_grommet', 'each, for grommet headings', { rule: 'pricePerGrommet' }),
    money('bracket', 'Price_bracket', 'each', { rule: 'pricePerBracket' }),
    money('end stop', 'Price_end_stop', 'each, two a track', { rule: 'pricePerEndStop' }),
    money('wand', 'Price_wand', 'each, where the house draws by wand', { rule: 'pricePerWand' }),
    money('finials', 'Price_finials', 'a pair, for each rod that shows its ends', {
      rule: 'pricePerFinial',
      asRule: (cell) => unlessBlank(cell, parted(cell, 2)),
    }),
    money('installation', 'Price_installation', 'for each window; not marked up', {
      rule: 'installationPerWindow',
    }),
  ];
}

function freightTerms({ unit: { weight } }: Job): readonly Term[] {
  return [
    money('freight', 'Price_freight', 'for the whole job; neither marked up nor taxed', { rule: 'freight' }),
    money(
      `freight a ${weight}`,
      'Price_freight_weight',
      'by the weight of the cloth, beside the freight above',
      { rule: 'freightPerWeight' },
    ),
    {
      label: `a carton holds (${weight})`,
      name: 'Carton_holds',
      role: 'input',
      rule: 'cartonHolds',
      choice: atLeast(0, `A weight in ${weight}; blank where freight does not go by the carton.`),
      says: 'cloth, where freight goes by the carton',
    },
    money('freight a carton', 'Price_freight_carton', 'each', { rule: 'freightPerCarton' }),
  ];
}

function sellTerms(job: Job): readonly Term[] {
  const name = (base: string): string => job.name(base);
  // The goods’ rate is the tax rate; work bears it or does not.
  const worksTax = (cell: string): string =>
    `=IF(AND(${name('Tax_goods')}="",${cell}=""),"",IF(N(${cell})=0,"no","yes"))`;
  return [
    {
      label: 'attic stock',
      name: 'Attic_stock',
      role: 'input',
      rule: 'atticStock',
      choice: atLeast(0, 'A share of the windows’ cuts like 0.05, or whole cuts like 2.'),
      says: 'cloth of each fabric kept for repairs: below 1 a share of its cuts, else so many cuts, the longest',
    },
    money('making minimum', 'Making_minimum', 'making of the whole job, at least', {
      rule: 'makingMinimum',
    }),
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
      value: standard('deposit', job.unit),
    }),
  ];
}

/** What follows from the figures above and the rest of the job. */
function workedTerms(job: Job): readonly Term[] {
  const { small, large, weight } = job.unit;
  const name = (base: string): string => job.name(base);
  const ruled = (label: string, base: string, rule: string, format = 'General'): Term => ({
    format,
    label,
    name: base,
    role: 'working',
    formula: `=HEM.HOUSERULE("${rule}",${name('House_rules')})`,
    says: `the house rule “${rule}”`,
  });
  return [
    {
      label: `cloth in all (${weight})`,
      name: 'Job_weight',
      role: 'working',
      format: MONEY_FORMAT,
      formula: `=SUM(${name('Cost_weights')})+SUM(${name('Fabric_attic_weights')})`,
      says: 'of the windows and the attic stock, as far as weights are known',
    },
    {
      label: 'freight of the job',
      name: 'Freight_charge',
      role: 'working',
      format: MONEY_FORMAT,
      formula: `=N(${name('Price_freight')})+ROUND(ROUNDUP(ROUND(${name('Job_weight')},8),2)*N(${name('Price_freight_weight')}),2)+IF(OR(N(${name('Carton_holds')})=0,N(${name('Price_freight_carton')})=0),0,ROUNDUP(ROUND(${name('Job_weight')}/${name('Carton_holds')},9),0)*${name('Price_freight_carton')})`,
      says: 'all of it: the fixed sum, by weight, by the carton',
    },
    {
      label: 'making less',
      name: 'Making_less',
      role: 'working',
      format: SHARE_FORMAT,
      formula: makingLess(name),
      says: 'the share that the making breaks below take off for all the widths of the job; below 0 where the making minimum asks for more',
    },
    ruled('deposit in force', 'Deposit_in_force', 'deposit', SHARE_FORMAT),
    ruled(`yardage goes up by (${large})`, 'Yardage_step', 'yardage step'),
    ruled(`lining width counted (${small})`, 'Lining_bolt', 'usual lining width'),
  ];
}

export const termsOf = (job: Job): readonly Term[] => [
  ...goodsTerms(job),
  ...freightTerms(job),
  ...sellTerms(job),
  ...workedTerms(job),
];

function makingLess(name: (base: string) => string): string {
  const [from, less, widths] = ['Making_break_from', 'Making_break_less', 'Making_break_widths'].map(name);
  const all = `SUM(${name('Cost_widths')})`;
  const reached = `COUNTIF(${from},"<="&${all})`;
  const making = `SUM(${name('Window_labor')})`;
  const least = `1-N(${name('Making_minimum')})/MAX(${making},0.01)`;
  return `=MIN(IF(OR(${making}=0,N(${name('Making_minimum')})=0),1,${least}),IF(OR(${all}=0,${reached}=0),0,IF(${name('Making_breaks_on')}="further widths",SUMPRODUCT(${widths}*${less})/${all},SUMIFS(${less},${from},MAXIFS(${from},${from},"<="&${all})))))`;
}
