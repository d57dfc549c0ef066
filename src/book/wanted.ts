/** The columns a window table may have and the outputs it may be given, out of the core's own lists. */
import { functionNamed } from '../../functions/index';
import { COLUMN_KEYS, WINDOW_COLUMNS, type ColumnKey } from '../core/columns';
import { optional, TEXT, type Field } from '../core/fields';
import { OUTPUTS } from '../core/outputs';
import { LININGS } from '../core/treatment';
import type { ColumnsRead, WantedColumn } from './columns';
import type { OutputColumn } from './row-formula';

const camel = (name: string): string =>
  name.replace(/_([a-z])/g, (_all, letter: string) => letter.toUpperCase());

/** A window cannot be worked out without one of each of these. */
export const NEEDED: readonly (readonly ColumnKey[])[] = [
  ['openingWidth', 'rodWidth'],
  ['measured', 'finishedDrop'],
  ['heading'],
  ['fabricWidth'],
];

const KEYS = new Set<string>([...COLUMN_KEYS, ...OUTPUTS.map((one) => one.key)]);
const unlined = LININGS.list.find((one) => one.word === 'unlined');

/** Outputs that one cell of a row can hold, each parameter fed by the column of the same key. */
export const ROW_OUTPUTS: readonly OutputColumn[] = OUTPUTS.flatMap((one): OutputColumn[] => {
  const of = functionNamed(one.from.name);
  if (of === undefined || of.gives.shape === 'spill') return [];
  const fed = of.parameters.map((parameter) => [parameter, camel(parameter.name)] as const);
  if (fed.some(([parameter, key]) => !parameter.optional && !KEYS.has(key))) return [];
  return [
    {
      key: one.key,
      heading: one.heading,
      says: one.says,
      calls: of.name,
      takes: Object.fromEntries(fed.flatMap(([{ name }, key]) => (KEYS.has(key) ? [[name, key]] : []))),
      ...(one.key === 'labor' && { times: 'quantity' }),
      ...(one.key === 'liningYardage' && {
        none: { column: 'lining', words: [unlined?.word ?? '', ...(unlined?.also ?? [])] },
      }),
    },
  ];
});

/** What a column of hers may be: what was measured and chosen, or a figure already there. */
export const WANTED: readonly WantedColumn[] = [
  ...COLUMN_KEYS.map((key): WantedColumn => ({
    key,
    heading: WINDOW_COLUMNS[key].heading,
    also: WINDOW_COLUMNS[key].also,
    field: WINDOW_COLUMNS[key].field as Field<unknown>,
    says: WINDOW_COLUMNS[key].field.says,
    needed: NEEDED.some((any) => any.includes(key)),
  })),
  ...OUTPUTS.filter(
    (one) => !(one.key in WINDOW_COLUMNS) && ROW_OUTPUTS.some((output) => output.key === one.key),
  ).map(({ key, heading, also, says }): WantedColumn => ({
    key,
    heading,
    also,
    says,
    field: optional(TEXT, says) as Field<unknown>,
    needed: false,
  })),
];

/** What no column is taken for and every window needs: “inside width or rod width”. */
export function missing(read: ColumnsRead): readonly string[] {
  const found = new Set(read.columns.map((one) => one.key));
  return NEEDED.filter((any) => !any.some((key) => found.has(key))).map((any) =>
    any.map((key) => WINDOW_COLUMNS[key].heading).join(' or '),
  );
}
