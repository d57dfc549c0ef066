/**
 * What the inputs of a finding are called in the user's own table: by its headings, and by the house
 * rule that stands where a row gives nothing.
 */
import { WINDOW_COLUMNS, type ColumnKey, type Window } from './columns';

/** How a figure is called, by its key (fabricWidth). */
export type Naming = (key: string) => string;

const isColumn = (key: string): key is ColumnKey => key in WINDOW_COLUMNS;

/** As our own sheets head it, where the table has no such column. */
const plain: Naming = (key) =>
  isColumn(key)
    ? WINDOW_COLUMNS[key].heading
    : key.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);

/** The house rule that stands for a figure that is not given. */
function ruleFor(key: string, heading: string | undefined): string | undefined {
  if (key === 'return' || key === 'overlap') return key;
  if (key === 'liningWidth') return 'usual lining width';
  return key === 'fullness' && heading !== undefined ? `fullness ${heading}` : undefined;
}

/** The table's headings by key; where a row gives nothing, the house rule that stands for it. */
export function namedBy(
  headings: (key: string) => string | undefined,
  row: { readonly heading?: Window['heading']; readonly gives: (key: string) => boolean },
): Naming {
  return (key) => {
    const rule = row.gives(key) ? undefined : ruleFor(key, row.heading);
    return rule === undefined ? (headings(key) ?? plain(key)) : `house rule “${rule}”`;
  };
}
