/** How many planted mistakes the audit finds, how many true orders it doubts, and how fast it is. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { mkdtemp, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Auditor } from '../core/audit/audit';
import type { OrderFinding } from '../core/audit/finding';
import { readPrices } from '../core/audit/price-list';
import { ordersUnder } from '../core/window/reader/orders';
import type { House } from '../core/house/house';
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
  /** Rows with more than one finding, where one mistake is planted. */
  twice: number;
  /** Findings of this kind at true orders, out of so many true orders. */
  falseAlarms: number;
  trueOrders: number;
}

/** What a plain order sheet leaves out: fewer figures to tell a slip by. */
const LEFT_OUT: ReadonlySet<string> = new Set([
  'finished width',
  'lining yardage',
  'heading marks',
  'rings',
  'brackets',
]);
const PLAIN_HEADINGS = HEADINGS_OF_ORDERS.filter((heading) => !LEFT_OUT.has(heading));

export function auditRows(
  rows: readonly OrderRow[],
  house: House,
  headings: readonly string[] = HEADINGS_OF_ORDERS,
): OrderFinding[] {
  const cells = rows.map((row) => rowCells(row, headings));
  const columns = ordersUnder([headings], cells, house.unit);
  const auditor = new Auditor(columns, {
    periods: [{ from: undefined, house }],
    prices: readPrices(PRICE_LIST),
  });
  const found = auditor.header();
  for (const [at, row] of cells.entries()) found.push(...auditor.row(at + 1, row));
  return [...found, ...auditor.end()];
}

/** Plants every kind by itself at a known rate and counts; `sets` houses in each unit. */
export function measureAudit(
  given: { readonly rows: number; readonly sets: number; readonly seed: number },
  saw: (finding: OrderFinding, row: OrderRow, kind: string) => void = () => undefined,
): Score[] {
  const scores = MISTAKES.map(({ kind }): Score => ({
    kind,
    planted: 0,
    found: 0,
    named: 0,
    twice: 0,
    falseAlarms: 0,
    trueOrders: 0,
  }));
  for (let set = 0; set < given.sets * 2; set++) {
    const chance = chanceFrom(given.seed + set * 7919);
    const house = houseOf(someRules(chance, set % 2 === 0 ? 'inches' : 'centimetres'));
    const made = trueOrders(given.rows, house, chance);
    const headings = set % 4 < 2 ? HEADINGS_OF_ORDERS : PLAIN_HEADINGS;
    const seen = (row: OrderRow): string => rowCells(row, headings).join('|');
    for (const [at, mistake] of MISTAKES.entries()) {
      const score = scores[at] as Score;
      const plantedAt = new Set<number>();
      const jobs = new Set<unknown>();
      const rows = made.map((one, place) => {
        const row = { ...one.row };
        const due = chance() < 0.1 && !jobs.has(row['job']);
        // A mistake in a column that the sheet does not have is none of the sheet's.
        if (due && mistake.plant(row, one, house, chance, made) && seen(row) !== seen(one.row)) {
          plantedAt.add(place + 1);
          if (mistake.oncePerJob === true) jobs.add(row['job']);
          return row;
        }
        return { ...one.row };
      });
      const findings = auditRows(rows, house, headings);
      const by = new Map<number, OrderFinding[]>();
      for (const one of findings) by.set(one.row, [...(by.get(one.row) ?? []), one]);
      for (const place of plantedAt) {
        const there = by.get(place) ?? [];
        score.planted++;
        if (there.length > 0) score.found++;
        if (there.length > 1) score.twice++;
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
  const met = scores.every(
    (one) => one.found >= one.planted * 0.95 && one.falseAlarms < one.trueOrders * 0.01,
  );
  return [
    ...lines,
    `Aim: 95 % found and fewer than 1 % false alarms at every kind: ${met ? 'met' : 'not met'}.`,
  ];
}

const BASE = 20_000;
export const PLAIN_ORDERS = [
  'customer',
  'job',
  'room',
  'order no',
  'date',
  'inside width',
  'left extension',
  'right extension',
  'rod width',
  'measured height',
  'heading',
  'finished drop',
  'draw',
  'fullness',
  'fabric',
  'fabric width',
  'vertical repeat',
  'horizontal repeat',
  'quantity',
  'widths',
  'cut length',
  'yardage',
  'railroaded',
  'unit price',
  'amount',
];

/** A CSV of so many true orders with the yardage of every hundredth typed wrongly. */
export async function writeOrders(path: string, count: number): Promise<number> {
  const made = trueOrders(Math.min(BASE, count), houseOf([['unit', 'inches']]), chanceFrom(5));
  const file = createWriteStream(path);
  let wrong = 0;
  const lines = function* (): Generator<string> {
    yield `${PLAIN_ORDERS.join(',')}\n`;
    for (let at = 0; at < count; at++) {
      const row = { ...(made[at % made.length] as (typeof made)[0]).row };
      row['job'] = `${String(row['job'])} ${Math.floor(at / made.length)}`;
      if (at % 100 === 50) {
        row['yardage'] = Number(row['yardage']) + 3;
        wrong++;
      }
      yield `${rowCells(row, PLAIN_ORDERS).join(',')}\n`;
    }
  };
  for (const line of lines()) if (!file.write(line)) await once(file, 'drain');
  file.end();
  await once(file, 'close');
  return wrong;
}

interface Audited {
  readonly seconds: number;
  readonly megabytes: number;
  readonly found: number;
  /** Of all that it told. */
  readonly hash: string;
}

async function auditedBy(path: string, jobs: number): Promise<Audited> {
  const began = performance.now();
  const words = ['src/make/hem.mjs', 'audit', path, '--csv', '--jobs', String(jobs)];
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'ignore'] });
  let found = -1;
  let most = 0;
  const hash = createHash('sha256');
  child.stdout.on('data', (chunk: Buffer) => {
    hash.update(chunk);
    for (const byte of chunk) if (byte === 10) found++;
  });
  // Only Linux tells a process's peak while it runs.
  const watch = setInterval(() => {
    readFile(`/proc/${String(child.pid)}/status`, 'utf8').then(
      (status) => (most = Math.max(most, Number(/VmHWM:\s*(\d+)/.exec(status)?.[1] ?? 0))),
      () => undefined,
    );
  }, 500);
  await once(child, 'close');
  clearInterval(watch);
  return {
    seconds: (performance.now() - began) / 1000,
    megabytes: most / 1024,
    found,
    hash: hash.digest('hex'),
  };
}

const JOBS = 2;

/** The command over a CSV of a million rows, on one thread and on two: its time, its memory, and what it found. */
export async function benchAuditFile(count = 1_000_000): Promise<string[]> {
  const folder = await mkdtemp(join(tmpdir(), 'hem-bench-'));
  try {
    const path = join(folder, 'orders.csv');
    const wrong = await writeOrders(path, count);
    const { size } = await stat(path);
    const one = await auditedBy(path, 1);
    const two = await auditedBy(path, JOBS);
    const told = ({ seconds, megabytes }: Audited): string =>
      `${seconds.toFixed(0)} s${megabytes > 0 ? `, ${megabytes.toFixed(0)} MB at most` : ''}`;
    return [
      `${count.toLocaleString('en-US')} CSV rows (${(size / 1e6).toFixed(0)} MB): ${told(one)}; aim 30 s, 300 MB.`,
      `--jobs ${JOBS}: ${told(two)}, ${((100 * two.seconds) / one.seconds).toFixed(0)} % of that time; aim 65 %, 400 MB. ${two.hash === one.hash ? 'It told the same.' : 'It did NOT tell the same.'}`,
      `${one.found.toLocaleString('en-US')} findings where ${wrong.toLocaleString('en-US')} yardages were typed wrongly.`,
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
