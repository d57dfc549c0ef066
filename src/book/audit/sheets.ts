/** What an audit found, as a new sheet: counts and money by kind with a chart, then every finding. */
import { kindOf } from '../../core/audit/finding';
import { addMoney, type OverUnder } from '../../core/audit/over-under';
import type { Unit } from '../../core/exact/unit';
import { areaAt, placeText, sheetText } from '../address';
import { apply, type Watch } from '../apply';
import { ORDERS_OF_FINDINGS, type Audited, type Placed } from './audit';
import type { Book, CellPut, Changes } from '../book';
import { underFreeNames } from '../free-names';
import {
  laidOut,
  MONEY_FORMAT,
  pairs,
  tableDraft,
  titled,
  together,
  type ColumnDraft,
  type Draft,
  type Job,
} from '../sheets/draft';

interface Kind {
  readonly kind: string;
  readonly weight: string;
  readonly count: number;
  readonly money: OverUnder;
}

function kindsOf(findings: readonly Placed[]): readonly Kind[] {
  const kinds = new Map<string, Kind>();
  for (const { finding } of findings) {
    const kind = kindOf(finding);
    const there = kinds.get(kind) ?? { kind, weight: finding.weight, count: 0, money: { over: 0, under: 0 } };
    kinds.set(kind, { ...there, count: there.count + 1, money: addMoney(there.money, finding.money) });
  }
  return [...kinds.values()].sort((a, b) => b.count - a.count);
}

const column = (
  key: string,
  heading: string,
  cells: readonly CellPut[],
  more: Partial<ColumnDraft> = {},
): ColumnDraft => ({ key, heading, role: 'working', cells, ...more });

/** More findings than these are no list to go through by hand. */
const MOST_LISTED = 5_000;
const KINDS_AT = 8;
/** Rows the chart covers at least, beside the table of kinds. */
const CHART_ROWS = 12;

/** The findings as columns, whose order they are first. */
function findingColumns(listed: readonly Placed[]): ColumnDraft[] {
  const each = (cellOf: (one: Placed) => CellPut): CellPut[] => listed.map(cellOf);
  return [
    ...(['order', 'customer', 'room'] as const).map((key) =>
      column(
        key,
        key,
        each(({ finding }) => (finding[key] === '' ? null : finding[key])),
      ),
    ),
    column(
      'kind',
      'kind',
      each(({ finding }) => kindOf(finding)),
    ),
    column(
      'row',
      'row',
      each(({ finding }) => (finding.row === 0 ? null : finding.row)),
    ),
    column(
      'weight',
      'weight',
      each(({ finding }) => finding.weight),
    ),
    column(
      'money',
      'in money',
      each(({ finding }) => finding.money),
      { format: MONEY_FORMAT },
    ),
    column(
      'cell',
      'cell',
      each(({ area }) => `${sheetText(area.sheet)}!${placeText(area)}`),
    ),
    column(
      'found',
      'found',
      each(({ finding }) => finding.found),
    ),
    column(
      'expected',
      'expected',
      each(({ finding }) => finding.expected),
    ),
    column(
      'sentence',
      'sentence',
      each(({ finding }) => finding.sentence),
    ),
    column(
      'settled',
      'settled',
      each(() => null),
      { role: 'input' },
    ),
  ];
}

/** Counts and money by kind, a chart of them, and the findings themselves. */
function auditDraft(job: Job, audited: Audited): Draft & Pick<Changes, 'newCharts'> {
  const sheet = job.sheet('Audit');
  const kinds = kindsOf(audited.findings);
  const listed = [...audited.findings].sort(ORDERS_OF_FINDINGS.weight).slice(0, MOST_LISTED);
  const listAt = KINDS_AT + Math.max(kinds.length + 1, CHART_ROWS) + 2;
  const rest = audited.findings.length - listed.length;
  const draft = together(
    titled(
      sheet,
      `Audit of “${audited.sheet}”`,
      `Every order worked out again from what was measured, by the house rules.${rest > 0 ? ` The ${listed.length} weightiest findings are listed; ${rest} more are not.` : ''}`,
    ),
    pairs(job, sheet, 3, [
      { label: 'orders audited', role: 'output', value: audited.orders },
      { label: 'findings', role: 'output', value: audited.findings.length },
      {
        label: 'findings by kind, added up',
        role: 'check',
        formula: `=SUM(${job.name('Audit_counts')})`,
        says: 'the same as above, or the table below was changed',
      },
    ]),
    tableDraft(job, {
      sheet,
      name: 'Audit_kinds',
      row: KINDS_AT,
      rows: Math.max(1, kinds.length),
      columns: [
        column(
          'kind',
          'kind',
          kinds.map((one) => one.kind),
        ),
        column(
          'count',
          'findings',
          kinds.map((one) => one.count),
          { name: 'Audit_counts', role: 'output' },
        ),
        column(
          'weight',
          'weight',
          kinds.map((one) => one.weight),
        ),
        ...(['over', 'under'] as const).map((side) =>
          column(
            side,
            side,
            kinds.map(({ money }) => (money[side] === 0 ? null : money[side])),
            { format: MONEY_FORMAT, role: 'output' },
          ),
        ),
      ],
    }),
    tableDraft(job, {
      sheet,
      name: 'Audit_findings',
      row: listAt,
      rows: Math.max(1, listed.length),
      columns: findingColumns(listed),
    }),
    laidOut(job, sheet, {
      header: listAt,
      widths: [30, 18, 18, 26, 10, 12, 22, 18, 18, 18, 90, 20],
      landscape: true,
    }),
  );
  const chart = {
    name: job.name('Audit_chart'),
    title: 'Findings by kind',
    kind: 'bar' as const,
    block: areaAt(sheet, KINDS_AT, 0, kinds.length + 1, 2),
    at: areaAt(sheet, KINDS_AT, 5, Math.max(kinds.length + 1, CHART_ROWS), 3),
  };
  return kinds.length > 0 ? { ...draft, newCharts: [chart] } : draft;
}

/** Writes the summary as one undo step, and gives the new sheet's name. */
export async function writeAudit(
  book: Book,
  audited: Audited,
  unit: Unit,
  watch: Watch = {},
): Promise<string> {
  const { draft } = underFreeNames(await book.contents(), { unit }, (job) => auditDraft(job, audited));
  await apply(book, 'write the audit', draft, watch);
  return draft.newSheets?.[0]?.name ?? '';
}
