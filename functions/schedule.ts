/** Every row of a window table in one call. */
import { parameter } from '../src/core/findings/parameters';
import { answer, Refusal, refuse, type Finding } from '../src/core/cell/answer';
import { findColumns, headingWords, readWindow } from '../src/core/window/columns';
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
import { repeatsHeadings } from '../src/core/window/order';
import { WindowWork } from '../src/core/window/job';
import { cellFigure } from '../src/core/cell/steps';
import { cellFunction, type Gives } from './declare';

/** A header row: a range of one row, or of one column where the table lies on its side. */
export const HEADERS: Kind<readonly CellIn[]> = {
  quantity: 'table',
  noun: 'the row that heads the table',
  shape: 'range',
  read(raw, place) {
    const cells = rowsOf(raw).flat();
    // A row that could not be had at all comes as one error.
    if (cells.length === 1) oneCell(cells[0], place);
    return cells.every(isBlank) ? undefined : cells;
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
        'HEM.SCHEDULE({"W","Style","Drop","Fabric W"},{60,"pinch",96,54;60,"pnch",96,54},"widths, yardage")',
      gives: [
        [5, 15.625],
        [
          'Style reads “pnch”. Use one of: pinch, goblet, cartridge, box, inverted, pencil, rod pocket, tab top, grommet, wave, flat.',
          '',
        ],
      ],
      because: 'A row that cannot be read says so; the others are still worked out.',
    },
  ],
  answer({ headers, rows, outputs }, rules, house) {
    const found = findColumns(headers);
    if (found.length === 0) return refuse('noColumns', parameter('headers'), readBack(headers.join(', ')));
    const columns = widestOf(rows);
    if (columns !== headers.length)
      return refuse('rowsAndHeaders', parameter('rows'), headers.length, columns);
    const asked = outputs ?? USUAL_FIGURES;
    const words = headers.map((cell) => String(cell ?? ''));
    const names = Object.fromEntries(found.map(({ key, heading }) => [key, heading]));
    const heard = new Map<string, { finding: Finding; rows: number[] }>();
    const hear = (found: Finding, row: number): void => {
      const known = heard.get(found.sentence);
      if (known === undefined) heard.set(found.sentence, { finding: found, rows: [row] });
      else known.rows.push(row);
    };
    const works: WindowWork[] = [];
    const cells = rows.map((row, at): readonly CellOut[] => {
      if (isBlankRow(row) || repeatsHeadings(row, words)) return asked.map(() => '');
      try {
        const work = new WindowWork(readWindow(row, found, house.unit), rules, names);
        if (rows.length === 1) works.push(work);
        const line = asked.map((one) => {
          const worked = workedOut(one, work);
          return worked === undefined ? '' : cellFigure(worked, house.unit);
        });
        for (const one of work.findings()) hear(one, at + 1);
        return line;
      } catch (thrown) {
        if (!(thrown instanceof Refusal)) throw thrown;
        hear(thrown.finding, at + 1);
        return asked.map((_, first) => (first === 0 ? thrown.finding.sentence : ''));
      }
    });
    const findings = [...heard.values()].map(({ finding: one, rows: where }): Finding => ({
      ...one,
      sentence: rows.length === 1 ? one.sentence : `${rowsInWords(where)}: ${one.sentence}`,
    }));
    // One row is small enough to be followed with a pencil.
    return answer(cells, () => works.flatMap((one) => one.steps()), findings);
  },
});
