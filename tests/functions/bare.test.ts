import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions/index';
import { addCheck, addFigure, bareOf, duckdb, type Bare } from '../../src/make/duckdb';
import { chanceFrom, HEADINGS_OF_ORDERS, houseOf, rowCells, trueOrders } from '../../src/make/orders';
import { packed } from '../make/pack';
import { readFormula } from '../../src/make/example';

let bare: Bare;
let text = '';
let catalogue: { name: string; takes: { name: string }[] }[] = [];
beforeAll(async () => {
  const { folder } = await packed('bare');
  text = await readFile(join(folder, 'hemledger.js'), 'utf8');
  catalogue = JSON.parse(await readFile(join(folder, 'catalogue.json'), 'utf8')) as typeof catalogue;
  bare = bareOf(text);
});

describe('the bundle for any JavaScript engine', () => {
  it('asks for nothing but the language', () => {
    expect(/\b(?:require|import)\s*\(/.test(text)).toBe(false);
  });

  it('knows every function, and says what each takes', () => {
    expect(bare.names).toEqual(CATALOGUE.map(({ name }) => name));
    expect(catalogue.map(({ name }) => name)).toEqual(bare.names);
    expect(catalogue.map(({ takes }) => takes.map(({ name }) => name))).toEqual(
      CATALOGUE.map(({ parameters }) => parameters.map(({ name }) => name)),
    );
  });

  it.each(CATALOGUE.flatMap(({ name, examples }) => examples.map(({ formula }) => [formula, name] as const)))(
    '%s',
    (formula, name) => {
      const { inputs } = readFormula(formula);
      const outcome = CATALOGUE.find((one) => one.name === name)?.call(inputs);
      const expected =
        outcome !== undefined && 'cells' in outcome
          ? { value: outcome.cells }
          : { error: outcome?.error, sentence: outcome?.finding.sentence };
      expect(JSON.parse(JSON.stringify(bare.call(name, inputs)))).toEqual(
        JSON.parse(JSON.stringify(expected)),
      );
    },
  );

  it('says a name it does not know', () => {
    expect(bare.call('YARDS', [])).toEqual({ error: '#NAME?', sentence: 'There is no function “YARDS”.' });
  });
});

const duck = await duckdb();
if (duck === undefined) console.log('DuckDB is not installed: its test is left out.');

describe.skipIf(duck === undefined)('in DuckDB', () => {
  const rows = trueOrders(300, houseOf([['unit', 'inches']]), chanceFrom(8)).map(({ row }, at) =>
    rowCells(at % 10 === 4 ? { ...row, yardage: Number(row['yardage']) + 3 } : row, HEADINGS_OF_ORDERS),
  );
  const orNull = (cell: unknown): unknown => (cell === '' ? null : cell);
  const given = rows.map((row) => row.map(orNull));
  /** What each function takes, by the columns of the orders. */
  const TAKES: Readonly<Record<string, readonly string[]>> = {
    YARDAGE: ['rod width', 'finished drop', 'heading', 'fabric width', 'vertical repeat', 'quantity', 'draw'],
    WIDTHS: ['rod width', 'heading', 'fabric width', 'draw'],
    CUTLENGTH: ['finished drop', 'heading', 'vertical repeat'],
    LINING: ['rod width', 'finished drop', 'heading', 'lining width', 'quantity', 'draw'],
    SELLPRICE: ['unit price'],
  };
  /** And what is the same of every order. */
  const ALIKE: Readonly<Record<string, readonly (number | string)[]>> = {
    SELLPRICE: [0.4, 'markup on cost'],
  };

  it('gives the sums and the texts of the core, row by row', async () => {
    if (duck === undefined) return;
    const connection = await (await duck.DuckDBInstance.create(':memory:')).connect();
    const text = HEADINGS_OF_ORDERS.map((heading, at) => {
      const isText = given.some((row) => typeof row[at] === 'string');
      return `"${heading}" ${isText ? 'VARCHAR' : 'DOUBLE'}`;
    });
    await connection.run(`CREATE TABLE orders (${text.join(', ')})`);
    const literal = (cell: unknown): string =>
      cell === null
        ? 'NULL'
        : typeof cell === 'number'
          ? String(cell)
          : `'${String(cell).replaceAll("'", "''")}'`;
    await connection.run(
      `INSERT INTO orders VALUES ${given.map((row) => `(${row.map(literal).join(',')})`).join(',')}`,
    );
    for (const [name, columns] of Object.entries(TAKES)) {
      addFigure(connection, duck, bare, name);
      const alike = ALIKE[name] ?? [];
      const inputs = [...columns.map((column) => `"${column}"`), ...alike.map(literal)].join(', ');
      const answer = await connection.runAndReadAll(
        `SELECT sum(hem_${name.toLowerCase()}(${inputs})) FROM orders`,
      );
      const figures = given.map((row) => {
        const cells = columns.map((column) => row[(HEADINGS_OF_ORDERS as readonly string[]).indexOf(column)]);
        const outcome = CATALOGUE.find((one) => one.name === name)?.call([...cells, ...alike]);
        return outcome !== undefined && 'cells' in outcome ? Number(outcome.cells) : 0;
      });
      expect(
        figures.some((figure) => figure > 0),
        name,
      ).toBe(true);
      expect(answer.getRows()[0]?.[0]).toBeCloseTo(
        figures.reduce((sum, one) => sum + one, 0),
        6,
      );
    }
    const some = given.slice(0, 100);
    addCheck(connection, duck, bare, { headings: HEADINGS_OF_ORDERS, some });
    const columns = HEADINGS_OF_ORDERS.map((heading) => `"${heading}"`).join(', ');
    const told = await connection.runAndReadAll(
      `SELECT count(*), md5(string_agg(t, '|' ORDER BY t)) FROM (SELECT hem_check(${columns}) t FROM orders) WHERE t <> ''`,
    );
    const check = bare.checker(HEADINGS_OF_ORDERS, some);
    const texts = given.map((row) => check(row)).filter((one) => one !== '');
    expect(texts.length).toBeGreaterThanOrEqual(30);
    const hash = createHash('md5').update(texts.sort().join('|')).digest('hex');
    expect(told.getRows()[0]).toEqual([BigInt(texts.length), hash]);
  });
});
