/** How many planted mistakes the audit finds, how many true orders it doubts, and how fast it is. */
import { Auditor } from '../core/audit';
import type { OrderFinding } from '../core/audit-finding';
import { readPrices } from '../core/audit-prices';
import { orderColumns } from '../core/order';
import type { House } from '../core/house';
import { MISTAKES } from './mistakes';
import {
  chanceFrom,
  HEADINGS_OF_ORDERS,
  houseOf,
  PRICE_LIST,
  rowCells,
  someRules,
  trueOrders,
  type OrderRow,
} from './orders';

export interface Score {
  readonly kind: string;
  planted: number;
  /** Rows where any finding says something is wrong. */
  found: number;
  /** Rows where the finding is of this very kind. */
  named: number;
  /** Findings of this kind at true orders, out of so many true orders. */
  falseAlarms: number;
  trueOrders: number;
}

export function auditRows(rows: readonly OrderRow[], house: House): OrderFinding[] {
  const columns = orderColumns(HEADINGS_OF_ORDERS, house.unit);
  const auditor = new Auditor(columns, {
    periods: [{ from: undefined, house }],
    prices: readPrices(PRICE_LIST),
  });
  const found = auditor.header();
  for (const [at, row] of rows.entries()) found.push(...auditor.row(at + 1, rowCells(row)));
  return [...found, ...auditor.end()];
}

/** Plants every kind by itself at a known rate and counts; `sets` houses in each unit. */
export function measureAudit(
  of: { readonly rows: number; readonly sets: number; readonly seed: number },
  saw: (finding: OrderFinding, row: OrderRow, kind: string) => void = () => undefined,
): Score[] {
  const scores = MISTAKES.map(({ kind }): Score => ({
    kind,
    planted: 0,
    found: 0,
    named: 0,
    falseAlarms: 0,
    trueOrders: 0,
  }));
  for (let set = 0; set < of.sets * 2; set++) {
    const chance = chanceFrom(of.seed + set * 7919);
    const house = houseOf(someRules(chance, set % 2 === 0 ? 'inches' : 'centimetres'));
    const made = trueOrders(of.rows, house, chance);
    for (const [at, mistake] of MISTAKES.entries()) {
      const score = scores[at] as Score;
      const plantedAt = new Set<number>();
      const jobs = new Set<unknown>();
      const rows = made.map((one, place) => {
        const row = { ...one.row };
        const due = chance() < 0.1 && !jobs.has(row['job']);
        if (due && mistake.plant(row, one, house, chance, made)) {
          plantedAt.add(place + 1);
          if (mistake.oncePerJob === true) jobs.add(row['job']);
          return row;
        }
        return { ...one.row };
      });
      const findings = auditRows(rows, house);
      const by = new Map<number, OrderFinding[]>();
      for (const one of findings) by.set(one.row, [...(by.get(one.row) ?? []), one]);
      for (const place of plantedAt) {
        const there = by.get(place) ?? [];
        score.planted++;
        if (there.length > 0) score.found++;
        if (there.some(({ code }) => mistake.codes.includes(code))) score.named++;
        else
          saw(
            there[0] ?? ({ code: 'missing', sentence: 'nothing found' } as OrderFinding),
            rows[place - 1] as OrderRow,
            mistake.kind,
          );
      }
      const alarms = new Set<number>();
      for (const one of findings) {
        if (one.row === 0 || plantedAt.has(one.row)) continue;
        saw(one, rows[one.row - 1] as OrderRow, `false alarm, ${mistake.kind}`);
        alarms.add(one.row);
      }
      score.trueOrders += rows.length - plantedAt.size;
      score.falseAlarms += alarms.size;
    }
  }
  return scores;
}

const percent = (part: number, whole: number): string =>
  whole === 0 ? '–' : `${((100 * part) / whole).toFixed(1)} %`;

/** The lines of the bench. */
export function benchAudit(rows = 400, sets = 4, seed = 11): string[] {
  const scores = measureAudit({ rows, sets, seed });
  const lines = scores.map(
    (one) =>
      `${one.kind.padEnd(40)} planted ${String(one.planted).padStart(5)}  found ${percent(one.found, one.planted).padStart(8)}` +
      `  named so ${percent(one.named, one.planted).padStart(8)}  false alarms ${percent(one.falseAlarms, one.trueOrders).padStart(8)}`,
  );
  const chance = chanceFrom(seed);
  const house = houseOf(someRules(chance, 'inches'));
  const made = trueOrders(2_000, house, chance).map(({ row }) => row);
  auditRows(made, house);
  const started = performance.now();
  auditRows(made, house);
  const each = (performance.now() - started) / made.length;
  return [...lines, `one row: ${(each * 1000).toFixed(0)} µs`];
}
