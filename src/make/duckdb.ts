/** The bare bundle in DuckDB: each function of a cell becomes a scalar function of SQL. */
import type { DuckDBConnection, DuckDBDataChunk, DuckDBValue, DuckDBVector } from '@duckdb/node-api';
import { createContext, runInContext } from 'node:vm';
import type { call, checker, names } from '../../functions/bare';

export interface Bare {
  readonly names: typeof names;
  readonly call: typeof call;
  readonly checker: typeof checker;
}

/** Runs the bundle where there is nothing but the language: no page, no Node, no module. */
export function bareOf(bundle: string): Bare {
  const context = createContext({});
  runInContext(bundle, context, { filename: 'hemledger.js' });
  return runInContext('hemledger', context) as Bare;
}

type Duck = typeof import('@duckdb/node-api');

/** Undefined where the package is not installed. */
export const duckdb = (): Promise<Duck | undefined> => import('@duckdb/node-api').catch(() => undefined);

/** A value of SQL as a cell has it: whole numbers and decimals are figures. */
export function cellOf(value: unknown): unknown {
  if (typeof value === 'bigint') return Number(value);
  if (typeof value !== 'object' || value === null) return value;
  return 'toDouble' in value ? (value as { toDouble(): number }).toDouble() : String(value);
}

type Answer = (inputs: readonly unknown[]) => unknown;

/** `answer` row by row as a scalar function of any inputs; null where there is no answer. */
function scalar(
  { DuckDBScalarFunction, ANY, DOUBLE, VARCHAR }: Duck,
  name: string,
  returns: 'number' | 'text',
  answer: Answer,
) {
  return DuckDBScalarFunction.create({
    name,
    returnType: returns === 'number' ? DOUBLE : VARCHAR,
    varArgsType: ANY,
    specialHandling: true,
    mainFunction: (_info, chunk: DuckDBDataChunk, output: DuckDBVector) => {
      const columns = Array.from({ length: chunk.columnCount }, (_, at) => chunk.getColumnVector(at));
      for (let row = 0; row < chunk.rowCount; row++)
        output.setItem(row, answer(columns.map((column) => cellOf(column.getItem(row)))) as DuckDBValue);
      output.flush();
    },
  });
}

/** A row's figure by a function of the catalogue: `hem_yardage(rod_width, …)`. */
export function addFigure(connection: DuckDBConnection, duck: Duck, bare: Bare, name: string): void {
  const figure = scalar(duck, `hem_${name.toLowerCase()}`, 'number', (inputs) => {
    const called = bare.call(name, inputs);
    return 'value' in called && typeof called.value === 'number' ? called.value : null;
  });
  connection.registerScalarFunction(figure);
}

/** What is wrong with a row, its columns given in the order of these headings: `hem_check(customer, …)`. */
export function addCheck(
  connection: DuckDBConnection,
  duck: Duck,
  bare: Bare,
  {
    headings,
    some,
  }: { readonly headings: readonly string[]; readonly some: readonly (readonly unknown[])[] },
): void {
  const check = bare.checker(headings, some);
  connection.registerScalarFunction(scalar(duck, 'hem_check', 'text', check));
}
