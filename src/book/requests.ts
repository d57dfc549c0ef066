/** A change cut into requests: few, none too large, and every formula after what it speaks of. */
import type { Changes, Put } from './book';
import { shifted } from './formula';

/** Cells in one request, each sent by itself: well under what a host takes. */
export const MOST_AT_ONCE = 20_000;
/** Characters of them: Excel on the web takes 5 MB, and the client wraps each. */
const MOST_CHARACTERS = 1_500_000;
const WRAPPING = 4;

const hasFormula = (put: Put): boolean =>
  put.formula !== undefined ||
  (put.cells ?? []).some((row) => row.some((cell) => typeof cell === 'object' && cell !== null));

const charactersOf = (row: NonNullable<Put['cells']>[number]): number =>
  row.reduce<number>(
    (sum, cell) =>
      sum + WRAPPING + String(typeof cell === 'object' ? (cell?.formula ?? '') : (cell ?? '')).length,
    0,
  );

/** How much of one request each row of a put takes; one formula for all of them weighs little. */
const weights = ({ area, cells, formula }: Put, fills: number): number[] =>
  Array.from({ length: area.rows }, (_, row) =>
    formula === undefined
      ? Math.max(area.columns / MOST_AT_ONCE, charactersOf(cells?.[row] ?? []) / MOST_CHARACTERS)
      : area.columns / fills,
  );

const FULL = 1 + 1e-9;

/** Some rows of a put. */
function rowsOf(put: Put, from: number, to: number): Put {
  const area = { ...put.area, row: put.area.row + from, rows: to - from };
  return put.formula === undefined
    ? { area, cells: (put.cells ?? []).slice(from, to) }
    : { area, formula: shifted(put.formula, from, 0) };
}

/** Puts gathered into requests, in order, and cut where one is full. */
function requests(puts: readonly Put[], fills: number): Put[][] {
  const list: Put[][] = [[]];
  let taken = 0;
  for (const put of puts) {
    let from = 0;
    for (const [row, more] of weights(put, fills).entries()) {
      if (taken > 0 && taken + more > FULL) {
        if (row > from) list.at(-1)?.push(rowsOf(put, from, row));
        list.push([]);
        [from, taken] = [row, 0];
      }
      taken += more;
    }
    list.at(-1)?.push(rowsOf(put, from, put.area.rows));
  }
  return list.filter((some) => some.length > 0);
}

const FIRST = ['remember', 'newSheets', 'resize', 'movedNames', 'clear'] as const;
const NAMING = ['newTables', 'newNames'] as const;
const LAST = [
  'dress',
  'validations',
  'layouts',
  'notes',
  'newCharts',
  'newDrawings',
  'remove',
  'forget',
] as const;

/** Those members that hold anything. */
const only = (changes: Changes, members: readonly (keyof Changes)[]): Changes =>
  Object.fromEntries(
    members.flatMap((one) => {
      const value = changes[one];
      return value === undefined || (Array.isArray(value) && value.length === 0) ? [] : [[one, value]];
    }),
  );

/**
 * Each part is one request; `fills` is how many cells one formula may fill in it. Looks go with the last
 * cells, or `apart` by themselves where they could not be taken back.
 */
export function inParts(changes: Changes, fills: number, apart = false): readonly Changes[] {
  const { puts = [] } = changes;
  const plain = puts.filter((put) => !hasFormula(put));
  const worked = puts.filter(hasFormula);
  const naming = only(changes, NAMING);
  const named = Object.keys(naming).length > 0;
  const first = requests(named ? plain : [...plain, ...worked], fills);
  const list: Changes[] = first.map((some) => ({ puts: some }));
  list[0] = { ...only(changes, FIRST), ...list[0] };
  // Tables and names stand before any formula that may speak of them.
  if (named) {
    list.push({ ...list.pop(), ...naming });
    list.push(...requests(worked, fills).map((some) => ({ puts: some })));
  }
  const looks = only(changes, LAST);
  if (apart) list.push(looks);
  else list.push({ ...list.pop(), ...looks });
  return list.filter((part) => Object.keys(part).length > 0);
}
