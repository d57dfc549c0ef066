/** The columns a window table may have and the outputs it may be given, out of the core's own lists. */
import { functionNamed } from '../../functions/index';
import { COLUMN_KEYS, WINDOW_COLUMNS, type ColumnKey } from '../core/window/columns';
import { optional, TEXT, type Field, type Kind } from '../core/cell/fields';
import type { WindowFigure } from '../core/window/figure';
import { FIGURES } from '../core/window/figures';
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

const KEYS = new Set<string>([...COLUMN_KEYS, ...FIGURES.map((figure) => figure.key)]);
/** Each parameter fed by the column of the same key. */
function outputColumn(figure: WindowFigure): OutputColumn {
  const { key, group, heading, says, from, onlyFrom, none } = figure;
  const asked = functionNamed(from);
  const cell = asked?.gives.shape === 'cell' && onlyFrom === undefined;
  const fed = (asked?.parameters ?? [])
    .map(({ name }) => [name, camel(name)] as const)
    // Of the whole row the house rule stands for a lining width that is not there.
    .filter(([, column]) => cell || column !== 'liningWidth');
  return {
    key,
    group,
    heading,
    says,
    takes: Object.fromEntries(fed.filter(([, column]) => KEYS.has(column))),
    calls: from,
    cell,
    whole: onlyFrom ?? 'SCHEDULE',
    format: figure.format ?? 'General',
    ...(figure.timesQuantity === true && { times: 'quantity' }),
    ...(figure.addsUp === true && { ofAllWindows: true as const }),
    ...(none !== undefined && { none: { column: none.column, words: wordsFor(none) } }),
  };
}

/** A choice's word and the other words it is read by. */
function wordsFor({ column, word }: NonNullable<WindowFigure['none']>): readonly string[] {
  const { choices } = WINDOW_COLUMNS[column].field.kind as Kind<unknown>;
  return [word, ...(choices?.find((choice) => choice.word === word)?.also ?? [])];
}

/** Everything one cell of a row can hold. */
export const ROW_OUTPUTS: readonly OutputColumn[] = FIGURES.map(outputColumn);

/** Every column a chosen output cannot do without, where no other figure gives it. */
export function neededBy(key: string): readonly string[] {
  const output = ROW_OUTPUTS.find((one) => one.key === key);
  if (output?.whole !== 'SCHEDULE') return [];
  return (functionNamed(output.calls)?.parameters ?? []).flatMap(({ name, optional: may }) => {
    const to = output.takes[name];
    return may || to === undefined ? [] : KEYS.has(to) && !(to in WINDOW_COLUMNS) ? neededBy(to) : [to];
  });
}

/** What a column of the user's table may be: what was measured and chosen, or a figure already there. */
export const WANTED: readonly WantedColumn[] = [
  ...COLUMN_KEYS.map((key): WantedColumn => ({
    key,
    heading: WINDOW_COLUMNS[key].heading,
    also: WINDOW_COLUMNS[key].also,
    field: WINDOW_COLUMNS[key].field as Field<unknown>,
    says: WINDOW_COLUMNS[key].field.says,
    needed: NEEDED.some((any) => any.includes(key)),
  })),
  // The user's own remarks are no figure of ours, whatever they are headed.
  ...FIGURES.filter(({ key, group }) => !(key in WINDOW_COLUMNS) && group !== 'Checking').map(
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
