/** Calls of our own functions, straight to the catalogue. */
import type { CellFunction } from '../../../functions/declare';
import { CATALOGUE, NAMESPACE } from '../../../functions/index';
import type { CellIn, CellOut } from '../../core/cell/fields';
import { Area, Areas, Fault, faultOf, Grid, Refused, type Scalar, type Value } from './values';
import type { World } from './world';

const OURS = new Map<string, CellFunction>(CATALOGUE.map((one) => [`${NAMESPACE}.${one.name}`, one]));

/** The catalogue's function of this name in capitals, HEM.RODWIDTH. */
export const ours = (name: string): CellFunction | undefined => OURS.get(name);

export interface OurCall {
  readonly called: CellFunction;
  /** Undefined where an input was left out. */
  readonly runs: readonly (((world: World) => Value) | undefined)[];
}

const given = (value: Scalar): CellIn =>
  value instanceof Fault ? { type: 'Error', basicValue: value.code } : value;

/** As Excel hands it over: null where blank, an error as an object, one cell plain, a range as rows. */
function handed(value: Value, world: World): CellIn {
  if (value instanceof Areas)
    throw new Refused(
      'it hands a range over several sheets, or several ranges at once, to a HEM function, which takes one range of one sheet',
    );
  const grid = value instanceof Area ? cells(value, world) : value;
  if (!(grid instanceof Grid)) return given(grid as Scalar);
  if (grid.rows === 1 && grid.columns === 1) return given(grid.at(0, 0));
  const rows: CellIn[][] = [];
  for (let row = 0; row < grid.rows; row++) {
    const line: CellIn[] = [];
    for (let column = 0; column < grid.columns; column++) line.push(given(grid.at(row, column)));
    rows.push(line);
  }
  return rows;
}

/** Whole columns and rows are cut to what is filled. */
const cells = (area: Area, world: World): Scalar | Grid =>
  area.rows === 1 && area.columns === 1
    ? world.cell(area.sheet, area.row, area.column)
    : world.grid(area, area.rows > 100_000 || area.columns > 1_000);

export function callOurs({ called, runs }: OurCall, world: World): Value {
  const outcome = called.call(runs.map((run) => (run === undefined ? null : handed(run(world), world))));
  world.heard?.(called, outcome);
  if ('error' in outcome) return faultOf(outcome.error);
  const { cells: found } = outcome;
  if (!Array.isArray(found)) return found as CellOut;
  const rows = found as readonly (readonly CellOut[])[];
  return new Grid(rows.length, rows[0]?.length ?? 0, rows.flat());
}
