/** The bare bundle in DuckDB over many orders, against the same bundle called row by row: sums, texts, processor time. */
import type { DuckDBConnection } from '@duckdb/node-api';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PLAIN_ORDERS, writeOrders } from './bench-audit';
import { addCheck, addFigure, bareOf, cellOf, duckdb, type Bare } from './duckdb';
import { placeOf } from './written';

/** What each function takes: columns of the orders, then what is alike for all. */
const FIGURES: readonly (readonly [string, readonly string[], ...(number | string)[]])[] = [
  [
    'YARDAGE',
    [
      'rod width',
      'finished drop',
      'heading',
      'fabric width',
      'vertical repeat',
      'quantity',
      'draw',
      'fullness',
    ],
  ],
  ['WIDTHS', ['rod width', 'heading', 'fabric width', 'draw', 'fullness']],
  ['CUTLENGTH', ['finished drop', 'heading', 'vertical repeat']],
  ['LINING', ['rod width', 'finished drop', 'heading', 'fabric width', 'quantity', 'draw', 'fullness']],
  ['SELLPRICE', ['amount'], 0.4, 'markup on cost'],
];
const MOST_TIMES = 1.5;

const seconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const quoted = (column: string): string => `"${column}"`;
const literal = (value: number | string): string =>
  typeof value === 'number' ? String(value) : `'${value}'`;

/** Every row of a query in turn, and the processor time that `work` took of it. */
async function rowByRow(
  connection: DuckDBConnection,
  query: string,
  work: (row: readonly unknown[]) => void,
): Promise<number> {
  let taken = 0;
  const result = await connection.stream(query);
  for await (const some of result.yieldRows()) {
    const rows = some.map((row) => row.map(cellOf));
    const began = seconds();
    rows.forEach(work);
    taken += seconds() - began;
  }
  return taken;
}

const line = (what: string, fast: number, slow: number, count: number, same: boolean): string =>
  `${what.padEnd(10)} in DuckDB ${((slow / count) * 1e6).toFixed(1).padStart(6)} µs a row, the bundle alone ${((fast / count) * 1e6).toFixed(1).padStart(6)}: ${(slow / fast).toFixed(2)} times (aim ${MOST_TIMES}); ${same ? 'the same' : 'NOT THE SAME'} answers.`;

async function figure(
  connection: DuckDBConnection,
  bare: Bare,
  from: string,
  [name, columns, ...alike]: (typeof FIGURES)[number],
): Promise<{ fast: number; slow: number; same: boolean }> {
  let sum = 0;
  const fast = await rowByRow(connection, `SELECT ${columns.map(quoted).join(', ')} FROM ${from}`, (row) => {
    const called = bare.call(name, [...row, ...alike]);
    if ('value' in called && typeof called.value === 'number') sum += called.value;
  });
  const inputs = [...columns.map(quoted), ...alike.map(literal)].join(', ');
  const began = seconds();
  const answer = await connection.runAndReadAll(
    `SELECT sum(hem_${name.toLowerCase()}(${inputs})) FROM ${from}`,
  );
  const slow = seconds() - began;
  const found = Number(answer.getRows()[0]?.[0]);
  return { fast, slow, same: Math.abs(found - sum) <= Math.abs(sum) * 1e-12 };
}

async function check(
  connection: DuckDBConnection,
  bare: Bare,
  from: string,
): Promise<{ fast: number; slow: number; same: boolean }> {
  const columns = PLAIN_ORDERS.map(quoted).join(', ');
  const first = await connection.runAndReadAll(`SELECT ${columns} FROM ${from} LIMIT 200`);
  const some = first.getRows().map((row) => row.map(cellOf));
  const checked = bare.checker(PLAIN_ORDERS, some);
  const texts: string[] = [];
  const fast = await rowByRow(connection, `SELECT ${columns} FROM ${from}`, (row) => {
    const text = checked(row);
    if (text !== '') texts.push(text);
  });
  const hash = createHash('md5').update(texts.sort().join('|')).digest('hex');
  const began = seconds();
  const answer = await connection.runAndReadAll(
    `SELECT count(*), md5(string_agg(t, '|' ORDER BY t)) FROM (SELECT hem_check(${columns}) t FROM ${from}) WHERE t <> ''`,
  );
  const slow = seconds() - began;
  const [count, found] = answer.getRows()[0] ?? [];
  return { fast, slow, same: Number(count) === texts.length && found === hash };
}

export async function benchDuckdb(count = 1_000_000): Promise<string[]> {
  const duck = await duckdb();
  if (duck === undefined) return ['DuckDB is not installed and was left out.'];
  const bundle = placeOf('dist/bare/hemledger.js');
  if (!existsSync(bundle)) return ['There is no dist/bare: npm run build first.'];
  const bare = bareOf(readFileSync(bundle, 'utf8'));
  const folder = await mkdtemp(join(tmpdir(), 'hem-bench-'));
  try {
    const csv = join(folder, 'orders.csv');
    const parquet = join(folder, 'orders.parquet');
    await writeOrders(csv, count);
    const connection = await (await duck.DuckDBInstance.create(':memory:')).connect();
    await connection.run(`COPY (SELECT * FROM read_csv('${csv}')) TO '${parquet}'`);
    for (const [name] of FIGURES) addFigure(connection, duck, bare, name);
    const first = await connection.runAndReadAll(`SELECT * FROM '${parquet}' LIMIT 200`);
    addCheck(connection, duck, bare, {
      headings: PLAIN_ORDERS,
      some: first.getRows().map((row) => row.map(cellOf)),
    });
    const lines = [
      `${count.toLocaleString('en-US')} orders in Parquet, ${(readFileSync(bundle).length / 1000).toFixed(0)} kB of bundle:`,
    ];
    for (const one of FIGURES) {
      const { fast, slow, same } = await figure(connection, bare, `'${parquet}'`, one);
      lines.push(line(one[0], fast, slow, count, same));
    }
    const [yardage] = FIGURES;
    if (yardage !== undefined) {
      const { fast, slow, same } = await figure(connection, bare, `read_csv('${csv}')`, yardage);
      lines.push(line('CSV', fast, slow, count, same));
    }
    const { fast, slow, same } = await check(connection, bare, `'${parquet}'`);
    return [...lines, line('CHECK', fast, slow, count, same)];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
