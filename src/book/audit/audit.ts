/**
 * Past orders in the workbook: which columns they have, the audit with progress and a way to stop it,
 * and its findings as marks at their cells.
 */
import { Auditor, type AuditBy } from '../../core/audit/audit';
import { byRulesSeen } from '../../core/audit/other-rules';
import type { OrderFinding } from '../../core/audit/finding';
import { optional, type Field } from '../../core/cell/fields';
import { MEANINGS } from '../../core/window/meanings';
import { orderTable } from '../../core/window/reader/order-rows';
import type { Unit } from '../../core/exact/unit';
import { areaAt, type Area } from '../address';
import type { Book, Mark } from '../book';
import type { ColumnsRead, Corrections, WantedColumn } from '../columns';
import { survey, type Survey } from '../survey';
import { Trouble, trouble } from '../trouble';

/** What a column of past orders may be. None is needed: whatever stands there is audited. */
export const ORDER_COLUMNS: readonly WantedColumn[] = MEANINGS.map(({ key, heading, also, kind }) => ({
  key,
  heading,
  also,
  field: optional(kind, heading) as Field<unknown>,
  says: heading,
  needed: false,
}));

/** Reads the orders around the selection; what the user said of a column before goes first. */
export const surveyOrders = (
  book: Book,
  unit: Unit,
  selected: Area,
  said: Corrections = {},
): Promise<Survey> => survey(book, ORDER_COLUMNS, unit, selected, said);

/** A finding and the cell it stands at. */
export interface Placed {
  readonly finding: OrderFinding;
  readonly area: Area;
}

export interface Audited {
  readonly sheet: string;
  readonly orders: number;
  readonly findings: readonly Placed[];
}

export interface Running {
  readonly signal?: AbortSignal;
  /** Rows looked at, and in all. */
  readonly progress?: (done: number, total: number) => void;
}

/** Rows between two looks at the clock of whoever watches. */
const AT_A_TIME = 250;
const aTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** Audits every row below the header. Nothing is written. */
export async function auditOrders(read: ColumnsRead, by: AuditBy, running: Running = {}): Promise<Audited> {
  const { block, header } = read;
  const unit = by.periods[0]?.house.unit;
  if (unit === undefined) throw new Error('an audit needs house rules');
  const order = orderTable(read.table.understanding, unit);
  const rows = read.lines.map(({ row }) => [row + 1, block.values[row - block.area.row] ?? []] as const);
  const auditor = new Auditor(order, byRulesSeen(order, by, rows));
  const at = new Map(order.found.map((one) => [one.heading, block.area.column + one.at]));
  const headerRow = block.area.row + header.row + header.rows - 1;
  const second = (heading: string): number | undefined => {
    const last = order.headings.lastIndexOf(heading);
    return last < 0 ? undefined : block.area.column + last;
  };
  const place = (finding: OrderFinding): Placed => ({
    finding,
    area: areaAt(
      block.area.sheet,
      finding.row === 0 ? headerRow : finding.row - 1,
      (finding.code === 'secondColumn' ? second(finding.column) : at.get(finding.column)) ??
        block.area.column,
    ),
  });
  const found = auditor.header();
  for (const [done, [at, cells]] of rows.entries()) {
    if (done % AT_A_TIME === 0) {
      if (running.signal?.aborted === true) throw trouble('cancelled');
      running.progress?.(done, read.lines.length);
      await aTurn();
    }
    found.push(...auditor.row(at, cells));
  }
  if (running.signal?.aborted === true) throw trouble('cancelled');
  found.push(...auditor.end());
  running.progress?.(read.lines.length, read.lines.length);
  return {
    sheet: block.area.sheet,
    orders: auditor.orders,
    findings: found.sort((one, other) => one.row - other.row).map(place),
  };
}

const WEIGHTS = ['stop', 'check', 'note'] as const;
const heaviness = ({ finding }: Placed): number => WEIGHTS.indexOf(finding.weight);
const worth = ({ finding }: Placed): number =>
  typeof finding.money === 'number' ? Math.abs(finding.money) : 0;

/** The ways a list of findings is looked through. */
export const ORDERS_OF_FINDINGS = {
  row: (one: Placed, other: Placed) => one.finding.row - other.finding.row,
  weight: (one: Placed, other: Placed) => heaviness(one) - heaviness(other) || worth(other) - worth(one),
  money: (one: Placed, other: Placed) => worth(other) - worth(one) || heaviness(one) - heaviness(other),
  kind: (one: Placed, other: Placed) =>
    one.finding.code.localeCompare(other.finding.code) || one.finding.row - other.finding.row,
} as const;

/** One mark a cell: the heaviest weight, and every sentence. */
export function marksOf(findings: readonly Placed[]): readonly Mark[] {
  const marks = new Map<string, Mark>();
  for (const { finding, area } of [...findings].sort(ORDERS_OF_FINDINGS.weight)) {
    const cell = `${area.row} ${area.column}`;
    const there = marks.get(cell);
    const sentence = there === undefined ? finding.sentence : `${there.sentence}\n${finding.sentence}`;
    marks.set(cell, { area, weight: there?.weight ?? finding.weight, sentence });
  }
  return [...marks.values()];
}

/** Shows the findings at their cells; marks of an earlier audit of the sheet are taken away first. */
export const markFindings = (book: Book, audited: Audited): Promise<void> =>
  orHowMany(book, audited.sheet, async () => {
    await book.unmark(audited.sheet);
    await book.mark(marksOf(audited.findings));
  });

/** Takes the marks away and gives the cells their own colour back. */
export const unmarkFindings = (book: Book, sheet: string): Promise<void> =>
  orHowMany(book, sheet, () => book.unmark(sheet));

/** Marks are no change that is put back: where the work fails, it is counted how many stand. */
async function orHowMany(book: Book, sheet: string, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (failure) {
    if (!(failure instanceof Trouble)) throw failure;
    const count = await book.marked(sheet).catch(() => undefined);
    if (count === 0) throw trouble('unmarked', failure.why);
    const cells =
      count === 1 ? 'One cell is' : `${count ?? 'Some'} cells${count === undefined ? ' may be' : ' are'}`;
    throw trouble('partlyMarked', failure.why, cells);
  }
}

export { kindOf } from '../../core/audit/finding';
