/** The columns a window table may have and the outputs it may be given, out of the core's own lists. */
import { functionNamed } from '../../functions/index';
import { COLUMN_KEYS, WINDOW_COLUMNS, type ColumnKey } from '../core/window/columns';
import { optional, TEXT, type Field } from '../core/cell/fields';
import { OUTPUTS } from '../core/window/outputs';
import { LININGS } from '../core/cell/treatment';
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
const FORMATS: Readonly<Record<string, string>> = {
  labor: '#,##0.00',
  deliveredFullness: '0.00',
  stack: '0.0',
  markSpace: '0.00',
  takeUp: '0.00',
  weight: '0.0',
};

/** No function of one cell tells these: only the whole row says whether there is any of it. */
const OF_THE_ROW = new Set(['findings', 'interliningYardage']);

/** Each parameter fed by the column of the same key. */
function outputColumn({ key, group, heading, says, from }: (typeof OUTPUTS)[number]): OutputColumn {
  const of = functionNamed(from);
  const cell = of?.gives.shape === 'cell' && !OF_THE_ROW.has(key);
  const fed = (of?.parameters ?? [])
    .map(({ name }) => [name, camel(name)] as const)
    // Of the whole row the house rule stands for a lining width that is not there.
    .filter(([, to]) => cell || to !== 'liningWidth');
  return {
    key,
    group,
    heading,
    says,
    takes: Object.fromEntries(fed.filter(([, to]) => KEYS.has(to))),
    calls: from,
    cell,
    whole: key === 'findings' ? 'CHECK' : 'SCHEDULE',
    format: FORMATS[key] ?? 'General',
    ...(key === 'labor' && { times: 'quantity' }),
    ...(key === 'liningYardage' && {
      none: { column: 'lining', words: [unlined?.word ?? '', ...(unlined?.also ?? [])] },
    }),
  };
}

/** Everything one cell of a row can hold. */
export const ROW_OUTPUTS: readonly OutputColumn[] = OUTPUTS.map(outputColumn);

/** Every column a chosen output cannot do without, where no other figure gives it. */
export function neededBy(key: string): readonly string[] {
  const output = ROW_OUTPUTS.find((one) => one.key === key);
  if (output?.whole !== 'SCHEDULE') return [];
  return (functionNamed(output.calls)?.parameters ?? []).flatMap(({ name, optional: may }) => {
    const to = output.takes[name];
    return may || to === undefined ? [] : KEYS.has(to) && !(to in WINDOW_COLUMNS) ? neededBy(to) : [to];
  });
}

/** Her own remarks are no figure of ours, whatever they are headed. */
const NEVER_HERS = new Set(['findings']);

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
  ...OUTPUTS.filter((one) => !(one.key in WINDOW_COLUMNS) && !NEVER_HERS.has(one.key)).map(
    ({ key, heading, also, says }): WantedColumn => ({
      key,
      heading,
      also,
      says,
      field: optional(TEXT, says) as Field<unknown>,
      needed: false,
      figure: true,
    }),
  ),
];

/** What no column is taken for and every window needs: “inside width or rod width”. */
export function missing(read: ColumnsRead): readonly string[] {
  const found = new Set(read.columns.map((one) => one.key));
  return NEEDED.filter((any) => !any.some((key) => found.has(key))).map((any) =>
    any.map((key) => WINDOW_COLUMNS[key].heading).join(' or '),
  );
}
