/** Every row of a window table in one call. */
import { parameter } from '../src/core/findings/parameters';
import { answer, Refusal, refuse, type Finding } from '../src/core/cell/answer';
import { headingWords } from '../src/core/window/columns';
import {
  isBlank,
  isBlankRow,
  oneCell,
  optional,
  readBack,
  required,
  rowsOf,
  TABLE,
  widestOf,
  type CellIn,
  type CellOut,
  type Kind,
} from '../src/core/cell/fields';
import { workedOut, type WindowFigure } from '../src/core/window/figure';
import { FIGURES } from '../src/core/window/figures';
import { WindowWork } from '../src/core/window/job';
import { headingsByKey, windowOfRow } from '../src/core/window/reader/as-window';
import { cellOf } from '../src/core/window/reader/cells';
import { aboutGiven, asksFor, understandGiven } from '../src/core/window/reader/given';
import { RowReader } from '../src/core/window/reader/rows';
import type { RowRead } from '../src/core/window/reader/slots';
import type { Understanding } from '../src/core/window/reader/understand';
import type { Unit } from '../src/core/exact/unit';
import { cellFigure } from '../src/core/cell/steps';
import { cellFunction, type Gives } from './declare';

/** The rows that head a table: mostly one; of one column where the table lies on its side. */
export const HEADERS: Kind<readonly (readonly CellIn[])[]> = {
  quantity: 'table',
  noun: 'the row that heads the table',
  shape: 'range',
  read(raw, place) {
    const rows = rowsOf(raw);
    const cells = rows.flat();
    // A row that could not be had at all comes as one error.
    if (cells.length === 1) oneCell(cells[0], place);
    if (cells.every(isBlank)) return undefined;
    const named = (widestOf(rows) === 1 ? [cells] : rows).map((row) =>
      row.map((cell) => oneCell(cell, place)),
    );
    return named;
  },
};

const BY_WORDS = new Map(
  FIGURES.flatMap((one) =>
    [one.key, one.heading, ...one.also].map((words): [string, WindowFigure] => [headingWords(words), one]),
  ),
);

/** Outputs by name: a range of names, or one text with commas. */
const ASKED: Kind<readonly WindowFigure[]> = {
  quantity: 'table',
  noun: 'output names',
  shape: 'range',
  read(raw, place) {
    const names = rowsOf(raw)
      .flat()
      .filter((cell) => !isBlank(cell))
      .flatMap((cell) => String(oneCell(cell, place)).split(/[,;]/));
    const list = (): string => FIGURES.map((one) => one.heading).join(', ');
    const asked = names.map(
      (name) =>
        BY_WORDS.get(headingWords(name)) ?? refuse('unknownOutput', place.name, readBack(name), list()),
    );
    return asked.length === 0 ? undefined : asked;
  },
};

const USUAL_FIGURES = FIGURES.filter((figure) => figure.usual === true);
const ROWS: Gives<readonly (readonly CellOut[])[]> = {
  noun: 'the asked outputs, a row for each row',
  shape: 'spill',
  write: (rows) => rows,
};

/** "Row 4", "Rows 1, 2, 5", "46 rows". */
const rowsInWords = (rows: readonly number[]): string =>
  rows.length === 1 ? `Row ${rows[0]}` : rows.length <= 6 ? `Rows ${rows.join(', ')}` : `${rows.length} rows`;

type Cells = readonly (readonly CellIn[])[];

/** The columns of a table, read with the rows shown; refused where none is known, or the rows are not of it. */
export function understood(headers: Cells, rows: Cells, unit: Unit): Understanding {
  const found = understandGiven(headers, rows, unit);
  if ('none' in found || found.columns.every(({ means, sure }) => means.length === 0 && sure !== 'asked'))
    return refuse('noColumns', parameter('headers'), readBack(headers.flat().join(', ')));
  const [across, columns] = [widestOf(headers), widestOf(rows)];
  if (columns !== across) return refuse('rowsAndHeaders', parameter('rows'), across, columns);
  return found;
}

/** The same, where what they do not tell is asked. */
function tableGiven(
  headers: Cells,
  rows: Cells,
  unit: Unit,
): Pick<Understanding, 'columns' | 'plan'> & { readonly notes: readonly Finding[] } {
  const found = understood(headers, rows, unit);
  const ask = asksFor(found, rows.length);
  if (ask !== undefined) throw new Refusal(ask);
  return { columns: found.columns, plan: found.plan, notes: aboutGiven(found) };
}

/** What each row is read as. */
function windowsIn(
  rows: readonly (readonly CellIn[])[],
  plan: Understanding['plan'],
): readonly (RowRead | undefined)[] {
  const reader = new RowReader(plan);
  const read: (RowRead | undefined)[] = rows.map(() => undefined);
  const keep = (list: readonly RowRead[]): void => {
    for (const one of list) read[one.row] = one;
  };
  for (const [at, row] of rows.entries()) keep(reader.push(at, isBlankRow(row) ? [] : row.map(cellOf)));
  keep(reader.end());
  return read;
}

export const SCHEDULE = cellFunction({
  name: 'SCHEDULE',
  chapter: 'Whole rows and checking',
  says: 'The asked outputs for every row in one call, columns found by their headings. A row that cannot be worked out says why.',
  takes: {
    headers: required(HEADERS, 'the row that heads the table'),
    rows: required(TABLE, 'the rows under it, the same columns'),
    outputs: optional(
      ASKED,
      'which figures, in order: a range of names or a text like "widths, yardage"; blank gives rod width, finished drop, widths, cut length, yardage',
    ),
  },
  gives: ROWS,
  examples: [
    {
      formula:
        'HEM.SCHEDULE({"inside width","measured height","heading","fabric width"},{72,98,"pinch",54;40,98,"grommet",54})',
      gives: [
        [94, 96, 5, 112, 15.625],
        [52, 100, 3, 116, 9.75],
      ],
      because: 'Rod 72 + 11 + 11; drop 98 − 2; and the second row with grommets, 98 + 2.',
    },
    {
      formula:
        'HEM.SCHEDULE({"Rod","Style","Drop","Fabric W"},{82,"pinch",96,54;82,"smocked",96,54},"widths, yardage")',
      gives: [
        [5, 15.625],
        [
          'Style reads “smocked”. Use one of: pinch, goblet, cartridge, box, inverted, pencil, rod pocket, tab top, grommet, wave, flat.',
          '',
        ],
      ],
      because: 'A row that cannot be read says so; the others are still worked out.',
    },
  ],
  answer({ headers, rows, outputs }, rules, house) {
    const { columns, plan, notes } = tableGiven(headers, rows, house.unit);
    const asked = outputs ?? USUAL_FIGURES;
    const names = headingsByKey(columns);
    const heard = new Map<string, { finding: Finding; rows: number[] }>();
    const hear = (found: Finding, row: number): void => {
      const known = heard.get(found.sentence);
      if (known === undefined) heard.set(found.sentence, { finding: found, rows: [row] });
      else known.rows.push(row);
    };
    const works: WindowWork[] = [];
    const cells = windowsIn(rows, plan).map((read): readonly CellOut[] => {
      if (read?.is !== 'window') return asked.map(() => '');
      const at = read.row + 1;
      try {
        const window = windowOfRow(read, (rows[read.row] ?? []).map(cellOf), columns, house.unit);
        const work = new WindowWork(window, rules, names);
        if (rows.length === 1) works.push(work);
        const line = asked.map((one) => {
          const worked = workedOut(one, work);
          return worked === undefined ? '' : cellFigure(worked, house.unit);
        });
        for (const one of work.findings()) hear(one, at);
        return line;
      } catch (thrown) {
        if (!(thrown instanceof Refusal)) throw thrown;
        hear(thrown.finding, at);
        return asked.map((_, first) => (first === 0 ? thrown.finding.sentence : ''));
      }
    });
    const findings = [...heard.values()].map(({ finding: one, rows: where }): Finding => ({
      ...one,
      sentence: rows.length === 1 ? one.sentence : `${rowsInWords(where)}: ${one.sentence}`,
    }));
    // One row is small enough to be followed with a pencil.
    return answer(cells, () => works.flatMap((one) => one.steps()), [...notes, ...findings]);
  },
});
