/** Cuts from rolls. */
import { parameter, type ParameterKey } from '../src/core/findings/parameters';
import { answer, finding, refuse, type Finding } from '../src/core/cell/answer';
import type { Rules } from '../src/core/house/rules';
import { cutLines, type CutLine, type CuttingJob, type Roll } from '../src/core/rolls/cutting';
import type { CutPlan, PlannedRoll } from '../src/core/rolls/plan';
import {
  choiceKind,
  filledRows,
  listKind,
  optional,
  required,
  rowsOf,
  TEXT,
  type CellOut,
  type Kind,
} from '../src/core/cell/fields';
import { COUNT } from '../src/core/cell/figure-kinds';
import { REPEAT, SIZE, YARDS } from '../src/core/cell/length-kinds';
import type { Start } from '../src/core/cloth/half-drop';
import { cuttingOf, patternStart } from '../src/core/cloth/repeat';
import { exact, NO_LENGTH, toUnit, type Length } from '../src/core/exact/length';
import { ONE } from '../src/core/exact/ratio';
import { cutPlan, rollCuts } from '../src/core/rolls/rolls';
import { showLength, type Unit } from '../src/core/exact/unit';
import { choices } from '../src/core/cell/treatment';
import { cellFunction } from './declare';
import { COUNT as A_COUNT, spill } from './gives';
import { MATCH } from './inputs';

/** A column read cell by cell, blanks kept, so that it can stand beside another. */
interface Column<T> {
  /** As many as the range has, those below the last filled one included. */
  readonly rows: number;
  readonly cells: readonly (T | undefined)[];
}
const NO_COLUMN = { rows: 0, cells: [] };

function columnKind<T>(kind: Kind<T>, noun: string): Kind<Column<T>> {
  return {
    quantity: kind.quantity,
    noun,
    shape: 'range',
    read(raw, place) {
      const range = rowsOf(raw);
      const rows = range.reduce((count, row) => count + row.length, 0);
      const cells = filledRows(range, place)
        .flat()
        .map((cell, at) =>
          kind.read(cell, rows === 1 ? place : { ...place, name: `${place.name} row ${at + 1}` }),
        );
      return cells.every((one) => one === undefined) ? undefined : { rows, cells };
    },
  };
}

/** A room or a lot as written; an empty cell is 0 on some platforms. */
const NAME: Kind<string> = {
  ...TEXT,
  noun: 'a name or number',
  read(raw, place) {
    if (raw === 0) return undefined;
    return typeof raw === 'number' && !Number.isFinite(raw)
      ? refuse('unreadable', place.name, place.name, String(raw), 'a name or number', '401 or A 12')
      : TEXT.read(raw, place);
  },
};

const STARTS = choices<Start>(
  { word: 'A', says: 'the pattern begins at the width’s top' },
  { word: 'B', says: 'it begins half a repeat down' },
);

/** The cells of a column down to where the one beside it ends. */
const inFull = <T>({ cells }: Column<T>, beside: number): readonly (T | undefined)[] =>
  Array.from({ length: Math.max(cells.length, beside) }, (_, at) => cells[at]);

const sameRows = (
  key: ParameterKey,
  column: Column<unknown>,
  beside: ParameterKey,
  other: Column<unknown>,
): void => {
  const name = parameter(key);
  if (column.rows !== other.rows)
    refuse('columnsDiffer', name, name, column.rows, parameter(beside), other.rows);
};

interface Given {
  /** Before their repeats. */
  readonly cutLengths: Column<Length>;
  readonly counts: Column<number>;
  readonly rollLengths: Column<Length>;
  readonly rooms: Column<string> | undefined;
  readonly lots: Column<string> | undefined;
  readonly verticalRepeats: Column<Length> | undefined;
  readonly starts: Column<Start> | undefined;
}

/** A row's cuts: up to the repeat where a cut follows, and of a half-drop by what follows. */
function cutsOfRow(
  cut: Length,
  count: number,
  repeat: Length | undefined,
  start: Start | undefined,
  rules: Rules,
): readonly CutLine[] {
  if (start !== undefined && repeat === undefined) refuse('startWithoutRepeat', parameter('starts'), start);
  const cutting = cuttingOf(cut, repeat, start === undefined ? 'straight' : 'half-drop', rules);
  const [a, b] = start === 'B' ? [0, count] : [count, 0];
  return count === 0 ? [{ length: cut, count }] : cutLines(cutting, { a, b, shared: 0 });
}

/** The columns as a job, row by row; a row blank throughout is passed over. */
function readJob(given: Given, unit: Unit, rules: Rules): { job: CuttingJob; findings: readonly Finding[] } {
  sameRows('counts', given.counts, 'cutLengths', given.cutLengths);
  for (const key of ['rooms', 'verticalRepeats', 'starts'] as const) {
    const column = given[key];
    if (column !== undefined) sameRows(key, column, 'cutLengths', given.cutLengths);
  }
  const lots = sameNames(given.lots ?? NO_COLUMN);
  const told = new Set(lots.filter((lot) => lot !== undefined)).size;
  if (told > 1 && given.rollLengths.cells.filter((length) => length !== undefined).length === 1)
    refuse('lotsForOneLength', parameter('lots'), told);
  if (given.lots !== undefined) sameRows('lots', given.lots, 'rollLengths', given.rollLengths);

  const rooms = sameNames(given.rooms ?? NO_COLUMN);
  const none: string[] = [];
  const cuts = inFull(given.cutLengths, given.counts.cells.length).flatMap((length, at): CutLine[] => {
    const count = given.counts.cells[at] ?? 0;
    if (length === undefined) {
      return count === 0
        ? []
        : refuse(
            'blankBeside',
            parameter('cutLengths'),
            parameter('cutLengths'),
            at + 1,
            parameter('counts'),
            String(count),
          );
    }
    if (count === 0) none.push(showLength(length, unit));
    return cutsOfRow(length, count, given.verticalRepeats?.cells[at], given.starts?.cells[at], rules).map(
      (line) => ({
        ...line,
        room: rooms[at],
      }),
    );
  });
  const toStart = (given.verticalRepeats ?? NO_COLUMN).cells.reduce<Length>(
    (most, repeat) => exact(Math.max(most, patternStart(repeat, rules))),
    NO_LENGTH,
  );
  const rolls = inFull(given.rollLengths, lots.length).flatMap((length, at): Roll[] => {
    const lot = lots[at];
    if (length === undefined) {
      return lot === undefined
        ? []
        : refuse(
            'blankBeside',
            parameter('rollLengths'),
            parameter('rollLengths'),
            at + 1,
            parameter('lots'),
            `“${lot}”`,
          );
    }
    return [{ length, lot, ...(toStart > 0 && { toStart }) }];
  });
  return {
    job: { cuts, rolls, supply: rolls.length === 1 ? 'as many as it takes' : 'in hand' },
    findings:
      none.length === 0 ? [] : [finding('countMissing', parameter('counts'), none.slice(0, 4).join(', '))],
  };
}

/** Names as each is first written: lot “a 12” further down is the lot “A 12”. */
function sameNames(column: Column<string>): readonly (string | undefined)[] {
  const first = new Map<string, string>();
  return column.cells.map((name) => {
    if (name === undefined) return undefined;
    const key = name.replace(/\s+/g, ' ').toLowerCase();
    const written = first.get(key) ?? name;
    first.set(key, written);
    return written;
  });
}

const NOTHING = '';

/**
 * A row for each cut length of a roll, a half-drop's in the order they are cut, with their start; the remnant
 * stands once, on the roll's last row.
 */
function rollRows(roll: PlannedRoll, unit: Unit, inOrder: boolean): CellOut[][] {
  const rows: { length: Length; count: number; start: Start | undefined }[] = [];
  for (const { length, count, start } of roll.stretches.flatMap((stretch) => stretch.cuts)) {
    const same = inOrder ? rows.at(-1) : rows.find((row) => row.length === length);
    if (same?.length === length && same.start === start) same.count += count;
    else rows.push({ length, count, start });
  }
  return rows.map(({ length, count, start }, at): CellOut[] => [
    roll.number,
    roll.lot ?? NOTHING,
    toUnit(length, unit.small),
    count,
    at === rows.length - 1 ? toUnit(roll.remnant, unit.large) : NOTHING,
    ...(inOrder ? [start ?? NOTHING] : []),
  ]);
}

function planRows(plan: CutPlan, unit: Unit): CellOut[][] {
  const short = plan.short.map(({ length, count, room }): CellOut[] => [
    'short',
    room === undefined ? NOTHING : `room ${room}`,
    toUnit(length, unit.small),
    count,
    NOTHING,
  ]);
  const proven = plan.proven
    ? 'yes'
    : plan.short.length > 0
      ? plan.surelyShort
        ? 'no plan gives every cut'
        : 'not yet: cuts are short'
      : `not yet: at most ${plan.rolls.length - plan.lowerBound} fewer`;
  const summary = (
    [
      ['rolls used', plan.rolls.length],
      ['lower bound', plan.lowerBound],
      ['proven best', proven],
      ['utilisation', plan.utilisation / ONE],
    ] as const
  ).map(([label, figure]): CellOut[] => [label, figure, NOTHING, NOTHING, NOTHING]);
  const inOrder = plan.rolls.some(({ stretches }) =>
    stretches.some(({ cuts }) => cuts.some(({ start }) => start !== undefined)),
  );
  const told = inOrder ? [...short, ...summary].map((row) => [...row, NOTHING]) : [...short, ...summary];
  return [...plan.rolls.flatMap((roll) => rollRows(roll, unit, inOrder)), ...told];
}

export const ROLLCUTS = cellFunction({
  name: 'ROLLCUTS',
  chapter: 'Rolls',
  says: 'Whole cuts the rolls give; a cut never crosses from one roll to the next.',
  takes: {
    rollLengths: required(
      listKind(YARDS, 'a range of roll lengths'),
      'the rolls in hand, in yards or metres',
    ),
    cutLength: required(SIZE, 'the length of one cut; before its repeat where vertical_repeat is given'),
  },
  joined: {
    verticalRepeat: optional(
      REPEAT,
      'the pattern’s height; the last cut of a roll then needs only its own length',
    ),
    match: MATCH,
  },
  gives: A_COUNT,
  examples: [
    {
      formula: 'HEM.ROLLCUTS({58,61.5,47,52.25},"3 1/4 yd")',
      gives: 65,
      because: '17 + 18 + 14 + 16; the yards added up, 218¾, would say 67.',
    },
    {
      formula: 'HEM.ROLLCUTS(60,112)',
      gives: 19,
      because: '60 yd is 2,160 in; 19 cuts of 112 in take 2,128, and 32 in are left.',
    },
    {
      formula: 'HEM.ROLLCUTS(52.25,112,,27)',
      gives: 14,
      because:
        '112 goes up to 5 × 27 = 135: 13 cuts of it are 1,755 in, and the last needs 112 of the 126 left.',
    },
  ],
  answer: rollCuts,
});

export const CUTPLAN = cellFunction({
  name: 'CUTPLAN',
  chapter: 'Rolls',
  says: 'Which roll gives which cuts, with as few rolls as can be, the least any plan needs, and what is left.',
  takes: {
    cutLengths: required(columnKind(SIZE, 'a column of cut lengths'), 'the cut lengths, one a row'),
    counts: required(columnKind(COUNT, 'a column of counts'), 'how many cuts of each, beside cut_lengths'),
    rollLengths: required(
      columnKind(YARDS, 'a column of roll lengths'),
      'in yards or metres: one length means as many rolls of it as it takes, several are the rolls in hand',
    ),
    rooms: optional(
      columnKind(NAME, 'a column of rooms'),
      'the room of each row, beside cut_lengths: a room is cut whole from one dye lot',
    ),
    lots: optional(columnKind(NAME, 'a column of dye lots'), 'the dye lot of each roll, beside roll_lengths'),
  },
  joined: {
    verticalRepeats: optional(
      columnKind(REPEAT, 'a column of repeats'),
      'the repeat of each row, beside cut_lengths, which are then before it: the last cut of a roll needs only its own length',
    ),
    starts: optional(
      columnKind(choiceKind('a start of a half-drop', STARTS), 'a column of A and B'),
      'for a half-drop A or B in each row, beside cut_lengths: B begins half a repeat down',
    ),
  },
  gives: spill(
    'a plan: a row for each roll and cut length, then what is short and the summary; for a half-drop the rows stand in the order of cutting, with a sixth column for the start',
    ['roll', 'lot', 'cut length', 'cuts', 'remnant'],
    planRows,
  ),
  examples: [
    {
      formula: 'HEM.CUTPLAN({108;90},{24;12},60)',
      gives: [
        [1, '', 108, 20, 0],
        [2, '', 108, 4, ''],
        [2, '', 90, 12, 18],
        ['rolls used', 2, '', '', ''],
        ['lower bound', 2, '', '', ''],
        ['proven best', 'yes', '', '', ''],
        ['utilisation', 0.85, '', '', ''],
      ],
      because:
        '60 yd is 2,160 in: 20 cuts of 108 fill a roll; the rest, 4 × 108 + 12 × 90 = 1,512 in, leaves 18 yd.',
    },
    {
      formula: 'HEM.CUTPLAN({117;117},{17;16},{58;61.5;47},{401;402},{"A";"B";"A"})',
      gives: [
        [1, 'A', 117, 17, 2.75],
        [2, 'B', 117, 16, 9.5],
        ['rolls used', 2, '', '', ''],
        ['lower bound', 2, '', '', ''],
        ['proven best', 'yes', '', '', ''],
        ['utilisation', 0.8974, '', '', ''],
      ],
      because:
        'Room 401 comes from lot A, 17 × 3¼ = 55¼ yd; room 402 from lot B, 16 × 3¼ = 52 yd; roll 3 stays shut.',
    },
    {
      formula: 'HEM.CUTPLAN(112,14,52.25,,,,27)',
      gives: [
        [1, '', 135, 13, ''],
        [1, '', 112, 1, 0.3888888888888889],
        ['rolls used', 1, '', '', ''],
        ['lower bound', 1, '', '', ''],
        ['proven best', 'yes', '', '', ''],
        ['utilisation', 0.9925, '', '', ''],
      ],
      because: '13 cuts of 135 and the last of 112 are 1,867 in of 1,881; 14 in are left.',
    },
  ],
  answer(given, rules, { unit }) {
    const { job, findings } = readJob(given, unit, rules);
    const planned = cutPlan(job, rules);
    return answer(planned.value, planned.steps, [...findings, ...planned.findings]);
  },
});
