/** What is said for one of several (a panel, a window, a width), multiplied out for its row. */
import type { OrderKey } from '../meanings';
import type { Per } from './heading';
import type { Values } from './slots';

/** “2½ ea side”: for one of the panels. */
export const EACH_SIDE = /\d.*\b(?:sides?|ea|each)\b|½\s*(?:ea|each|\/|a|per)/i;

/** Panels of one window: a column may count those of all its windows. */
function panelsIn(values: Values, panels: number | undefined): number | undefined {
  const drawn =
    values.draw === undefined ? undefined : values.draw === 'pair' || values.draw === 'stationary' ? 2 : 1;
  const many = Number(values.quantity ?? 1);
  if (panels === undefined) return drawn;
  if (drawn !== undefined && panels === drawn * many) return drawn;
  const apiece = panels / many;
  return many > 2 && Number.isInteger(apiece) && apiece >= 1 && apiece <= 2 ? apiece : panels;
}

const OF_THE_ROW: ReadonlySet<OrderKey> = new Set<OrderKey>([
  'yardage',
  'liningYardage',
  'railroadedYardage',
]);

/** Widths are a window's and yardage the row's: what is for one of several is multiplied out. */
export function multiply(
  values: Values,
  pers: readonly (readonly [OrderKey, Per])[],
  panels: number | undefined,
): void {
  for (const [key, per] of pers) {
    const value = values[key];
    if (typeof value !== 'number') continue;
    values[key] = timesOf(key, per, values, panels)?.reduce((product, times) => product * times, value);
  }
}

/** What a figure is multiplied by; undefined where nobody says how many there are. */
function timesOf(
  key: OrderKey,
  per: Per,
  values: Values,
  panels: number | undefined,
): readonly number[] | undefined {
  const pieces = panelsIn(values, panels);
  const many = Number(values.quantity ?? 1);
  if (key === 'widths' && per === 'panel') return pieces === undefined ? undefined : [pieces];
  if (!OF_THE_ROW.has(key)) return [];
  switch (per) {
    case 'panel':
      return pieces === undefined ? undefined : [pieces, many];
    case 'width':
      return typeof values.widths === 'number' ? [values.widths, many] : undefined;
    case 'window':
    case 'pair':
      return [many];
    case 'yard':
      return [];
  }
}
