/**
 * A finding in the sheet's own words. A function says fabric_width; whoever knows the columns says
 * what she heads hers, and which house rule stands where she gives nothing.
 */
import type { Finding } from '../cell/answer';
import { COLUMN_KEYS, WINDOW_COLUMNS, type ColumnKey, type Window } from './columns';

/** How a figure is called, by its key (fabricWidth). */
export type Naming = (key: string) => string;

const isColumn = (key: string): key is ColumnKey => key in WINDOW_COLUMNS;
const camel = (name: string): string =>
  name.replace(/_([a-z])/g, (_all, letter: string) => letter.toUpperCase());

/** As our own sheets head it, where hers are not known. */
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

/** Her headings by key; where a row gives nothing, the house rule that stands for it. */
export function namedBy(
  headings: (key: string) => string | undefined,
  row: { readonly heading?: Window['heading']; readonly gives: (key: string) => boolean },
): Naming {
  return (key) => {
    const rule = row.gives(key) ? undefined : ruleFor(key, row.heading);
    return rule === undefined ? (headings(key) ?? plain(key)) : `house rule “${rule}”`;
  };
}

// Keys of one word are plain words too: they are names only where a sentence begins with them.
const SINGLE = [...COLUMN_KEYS, 'widths', 'weight'].filter((key) => /^[a-z]+$/.test(key)).join('|');
const NAMES = new RegExp(
  [
    // What was read stays as it was written.
    '“[^”]*”',
    '\\b[a-z]+(?:_[a-z]+)+\\b',
    `(?<=^|[.;:] |\\bCheck )(?:${SINGLE})(?= (?:reads|is|says|points|takes|holds|and)\\b)`,
  ].join('|'),
  'g',
);

export function inSheetWords(of: Finding, name: Naming): Finding {
  const sentence = of.sentence.replace(NAMES, (found) =>
    found.startsWith('“') ? found : name(camel(found)),
  );
  const known = isColumn(camel(of.about));
  if (sentence === of.sentence && !known) return of;
  return { ...of, about: known ? name(camel(of.about)) : of.about, sentence };
}
