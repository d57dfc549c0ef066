/** A table as a cell function is given it: its heading rows, and the rows of it that are pointed at. */
import { finding, type Finding } from '../../cell/answer';
import type { CellIn } from '../../cell/fields';
import { letters } from '../../cell/letters';
import type { Unit } from '../../exact/unit';
import { WINDOW_COLUMNS } from '../columns';
import { cellOf, type Cell } from './cells';
import { FIGURE_KEYS, type OrderKey } from '../meanings';
import { readHeading } from './heading';
import { headingOf, nameOf, usualKey, type MeaningKey } from './meanings';
import { understand, type Corrections, type Trouble, type Understanding } from './understand';

type Cells = readonly (readonly CellIn[])[];

/** Of so few rows the reading is kept: a column of CHECK asks for it once a row. */
const FEW_ROWS = 3;
const MOST_KEPT = 2_000;
const kept = new Map<string, Understanding | Trouble>();

/** Figures under one heading, like inside width x measured height. */
const BOTH = / x /;
/**
 * Where every heading is one of our own, a few rows have nothing to add: so a formula that hands a
 * reading over under our headings is read as it was meant. Undefined where one heading is not ours.
 */
function usualMeanings(headers: Cells): Corrections | undefined {
  if (headers.length !== 1) return undefined;
  const said = new Map<number, readonly OrderKey[]>();
  for (const [at, raw] of (headers[0] ?? []).entries()) {
    if (typeof raw !== 'string' || raw.trim() === '') return undefined;
    if (raw === 'fraction') continue;
    // The user’s own heading may stand behind in brackets.
    const [ours, without] = [raw, raw.replace(/ \([^()]*\)$/, '')].map((text) =>
      text.split(BOTH).map((words) => usualKey(readHeading(words))),
    );
    const keys = ours?.includes(undefined) === true ? (without ?? []) : (ours ?? []);
    if (keys.includes(undefined)) return undefined;
    said.set(at, keys as OrderKey[]);
  }
  return said;
}

const oneFigure = (said: Corrections): ReadonlySet<number> =>
  new Set([...said].flatMap(([at, keys]) => (keys.length === 1 ? [at] : [])));

/** An empty cell comes as 0 on some hosts, and speaks for no meaning there either. */
const shown = (raw: CellIn): Cell => (raw === 0 ? null : cellOf(raw));

/** What the columns mean, by their headings and the rows shown. The same table is known again by its contents. */
export function understandGiven(headers: Cells, rows: Cells, unit: Unit): Understanding | Trouble {
  const read = (): Understanding | Trouble => {
    const ours = rows.length > FEW_ROWS ? undefined : usualMeanings(headers);
    return understand(
      { rows: [...headers.map((row) => row.map(shown)), ...rows.map((row) => row.map(shown))], merged: [] },
      {
        unit,
        header: headers.map((_, at) => at),
        ...(ours !== undefined && { said: ours, single: oneFigure(ours) }),
      },
    );
  };
  if (rows.length > FEW_ROWS) return read();
  const contents = JSON.stringify([unit.name, headers, rows]);
  const known = kept.get(contents);
  if (known !== undefined) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  const found = read();
  kept.set(contents, found);
  return found;
}

/** They say which window it is, not how it is made. */
export const NAMES_ONLY: ReadonlySet<string> = new Set<MeaningKey>(['room', 'fabric']);
const ofWindow = (key: MeaningKey): boolean => key in WINDOW_COLUMNS && !NAMES_ONLY.has(key);
/** What an order is checked by. */
export const ofOrder = (key: MeaningKey): boolean =>
  ofWindow(key) || FIGURE_KEYS.some((figure) => figure === key);

/**
 * The sentence that asks which of its meanings a column has that bears on the figures; undefined
 * where every such column is told.
 */
export function asksFor(
  { columns }: Understanding,
  rows: number,
  matters: (key: MeaningKey) => boolean = ofWindow,
): Finding | undefined {
  const asked = columns.find(
    ({ sure, means, couldBe }) => sure === 'asked' && means.length === 0 && couldBe.some(matters),
  );
  if (asked === undefined) return undefined;
  const { at, heading, couldBe } = asked;
  return finding('columnNotTold', heading, letters(at), heading, couldBe.map(nameOf).join(' or '), rows);
}

/** What was taken for something, and what is not read at all. */
export const aboutGiven = ({ columns }: Understanding): Finding[] =>
  columns.flatMap(({ at, heading, means, sure, other }): Finding[] =>
    sure === 'likely' && means.length > 0
      ? [finding('columnTaken', heading, letters(at), heading, means.map(headingOf).join(' and '))]
      : means.length === 0 && other === undefined && heading !== ''
        ? [finding('columnNotRead', heading, letters(at), heading)]
        : [],
  );
