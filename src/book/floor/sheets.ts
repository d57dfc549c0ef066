/** The cutter's list roll by roll, and what the floor comes to, as two new sheets. */
import { cutLengthOf } from '../../core/rolls/cutting';
import type { CutPlan, PlannedRoll } from '../../core/rolls/plan';
import type { Cloth } from '../../core/floor/floor-cuts';
import { exact, NO_LENGTH, times, toUnit, type Length } from '../../core/exact/length';
import type { Area } from '../address';
import { applySheets, type Watch } from '../apply';
import type { Book, CellPut, CellValue } from '../book';
import { clothsBehind, GROUPS, piecesOf, rodTotals, totalsBy, type Floor, type GroupName } from './floor';
import { underFreeNames, type Taken } from '../free-names';
import {
  laidOut,
  pairs,
  tableDraft,
  titled,
  together,
  type ColumnDraft,
  type Draft,
  type Job,
} from '../sheets/draft';

export interface ClothPlan {
  readonly cloth: Cloth;
  readonly plan: CutPlan;
}

const HEADER = 3;
const LENGTH_FORMAT = '0.####';

const column = (
  key: string,
  heading: string,
  cells: readonly CellPut[],
  more: Partial<ColumnDraft> = {},
): ColumnDraft => ({ key, heading, role: 'output', cells, ...more });

/** One line of the cutter's list: a cut length out of one roll, or what is given up before it. */
interface CutterLine {
  readonly cloth: string;
  readonly roll: PlannedRoll;
  readonly room: string;
  /** Of a half-drop, A or B; else nothing. */
  readonly start: string;
  readonly length: Length;
  /** Nothing where the cloth is given up. */
  readonly count: number | null;
  /** Where on the roll the first of these cuts begins. */
  readonly from: Length;
  /** Left of the stretch after it. */
  readonly left: Length;
}

export const TO_START = 'to the pattern’s start';

function linesOf({ cloth: { name: cloth }, plan }: ClothPlan): readonly CutterLine[] {
  return plan.rolls.flatMap((roll) =>
    roll.stretches.flatMap(({ from: start, length: whole, cuts, toStart = NO_LENGTH }) => {
      let from = start;
      const lines = cuts.map((cut): CutterLine => {
        const begins = from;
        from = exact(from + times(cut.length, cut.count));
        const room = cut.room ?? cut.label ?? '';
        const left = exact(start + whole - from);
        return {
          cloth,
          roll,
          room,
          start: cut.start ?? '',
          length: cut.length,
          count: cut.count,
          from: begins,
          left,
        };
      });
      if (toStart === 0 || cuts.length === 0) return lines;
      const given = {
        room: TO_START,
        start: '',
        length: toStart,
        count: null,
        from: exact(start - toStart),
        left: whole,
      };
      return [{ cloth, roll, ...given }, ...lines];
    }),
  );
}

/** Where the pattern of each cut begins, where any cloth is a half-drop. */
const startColumn = (lines: readonly CutterLine[]): readonly ColumnDraft[] =>
  lines.every(({ start }) => start === '')
    ? []
    : [
        column(
          'start',
          'half-drop',
          lines.map(({ start }) => start),
          { note: 'A begins at the motif, B half a repeat down' },
        ),
      ];

function listSheet(job: Job, plans: readonly ClothPlan[]): Draft {
  const sheet = job.sheet('Cutting list');
  const { small, large } = job.unit;
  const lines = plans.flatMap(linesOf);
  const cells = <T extends CellValue>(value: (line: CutterLine) => T): T[] => lines.map(value);
  const length = { format: LENGTH_FORMAT };
  return together(
    titled(
      sheet,
      'Cutting list',
      'Cut each roll in this order, from its start. No cut crosses the end of a roll or a flaw, and a room stays in one dye lot where lots are told apart.',
    ),
    tableDraft(job, {
      sheet,
      name: 'Cutting_list',
      row: HEADER,
      rows: Math.max(1, lines.length),
      columns: [
        column(
          'cloth',
          'cloth',
          cells((one) => one.cloth),
          { wide: 20 },
        ),
        column(
          'roll',
          'roll',
          cells((one) => one.roll.number),
        ),
        column(
          'lot',
          'dye lot',
          cells((one) => one.roll.lot ?? ''),
        ),
        column(
          'rollLength',
          `roll length (${large})`,
          cells((one) => toUnit(one.roll.length, large)),
          length,
        ),
        column(
          'from',
          `begins at (${small})`,
          cells((one) => toUnit(one.from, small)),
          length,
        ),
        column(
          'room',
          'room',
          // A room's number stands as a number, apart from the figures beside it.
          cells((one) => (/^[1-9]\d*$/.test(one.room) ? Number(one.room) : one.room)),
        ),
        ...startColumn(lines),
        column(
          'length',
          `cut length (${small})`,
          cells((one) => toUnit(one.length, small)),
          length,
        ),
        column(
          'cuts',
          'cuts',
          cells((one) => one.count),
          { name: 'Cutting_cuts' },
        ),
        column(
          'left',
          `left after it (${small})`,
          cells((one) => toUnit(one.left, small)),
          length,
        ),
        column('done', 'cut by', [], { role: 'input', note: 'the cutter’s initials' }),
      ],
    }),
    laidOut(job, sheet, {
      header: HEADER,
      frozenColumns: 2,
      widths: [22, 7, 11, 11, 11, 18, ...startColumn(lines).map(() => 9), 11, 7, 11, 10],
    }),
  );
}

function totalsSheet(job: Job, floor: Floor, plans: readonly ClothPlan[]): Draft {
  const sheet = job.sheet('Floor totals');
  const { unit } = job;
  const { large } = unit;
  const groups = (Object.keys(GROUPS) as GroupName[]).flatMap((by) =>
    totalsBy(floor.windows, GROUPS[by]).map((total) => ({ by, ...total })),
  );
  const rods = rodTotals(floor.windows);
  const yards = { format: '0.00#' };
  const rodRow = HEADER + Math.max(1, groups.length) + 3;
  const clothRow = rodRow + Math.max(1, rods.length) + 3;
  const checkRow = clothRow + plans.length + 3;
  const wanted = plans.reduce(
    (sum, { plan }) => sum + plan.rolls.reduce((all, roll) => all + cutsOf(roll), 0) + countOf(plan.short),
    0,
  );
  return together(
    titled(sheet, 'Floor totals', `Worked out from the windows of “${floor.sheet}” as they stood.`),
    tableDraft(job, {
      sheet,
      name: 'Floor_totals',
      row: HEADER,
      rows: Math.max(1, groups.length),
      columns: [
        column(
          'by',
          'by',
          groups.map(({ by }) => by),
        ),
        column(
          'name',
          'of',
          groups.map(({ name }) => name),
        ),
        column(
          'windows',
          'windows',
          groups.map(({ windows }) => windows),
        ),
        column(
          'widths',
          'widths',
          groups.map(({ widths }) => widths),
        ),
        column(
          'cuts',
          'face cuts',
          groups.map(({ cuts }) => cuts),
        ),
        column(
          'yardage',
          `face (${large})`,
          groups.map((one) => toUnit(one.yardage, large)),
          yards,
        ),
        ...clothsBehind(floor.windows).map((cloth) =>
          column(
            cloth,
            `${cloth} (${large})`,
            groups.map(({ behind }) => toUnit(behind[cloth] ?? NO_LENGTH, large)),
            yards,
          ),
        ),
      ],
    }),
    tableDraft(job, {
      sheet,
      name: 'Floor_rods',
      row: rodRow,
      rows: Math.max(1, rods.length),
      columns: [
        column(
          'rod',
          `rod (${unit.small})`,
          rods.map(({ rod }) => toUnit(rod, unit.small)),
          {
            format: LENGTH_FORMAT,
          },
        ),
        column(
          'rods',
          'rods',
          rods.map((one) => one.rods),
        ),
        ...piecesOf(rods).map(([key, what]) =>
          column(
            key,
            // Apart from the brackets of a table of windows.
            key === 'brackets' ? 'rod brackets' : what,
            rods.map(({ hardware }) => hardware[key]),
          ),
        ),
      ],
    }),
    clothsTable(job, sheet, clothRow, plans),
    pairs(job, sheet, checkRow, [
      { label: 'cuts wanted', role: 'output', value: wanted, says: 'spares in them' },
      {
        label: 'cuts in the list',
        role: 'check',
        formula: `=SUM(${job.name('Cutting_cuts')})`,
        says: 'less than wanted where the rolls fall short',
      },
    ]),
    laidOut(job, sheet, { header: HEADER, widths: [16, 20, 18, 12, 11, 12, 12, 12, 12] }),
  );
}

/** What each cloth's plan comes to. */
function clothsTable(job: Job, sheet: string, row: number, plans: readonly ClothPlan[]): Draft {
  const { large } = job.unit;
  const cells = <T extends CellValue>(value: (one: ClothPlan) => T): T[] => plans.map(value);
  return tableDraft(job, {
    sheet,
    name: 'Floor_cloths',
    row,
    rows: plans.length,
    columns: [
      column(
        'cloth',
        'cloth',
        cells(({ cloth }) => cloth.name),
      ),
      column(
        'rolls',
        'rolls opened',
        cells(({ plan }) => plan.rolls.length),
      ),
      column(
        'bound',
        'rolls at least',
        cells(({ plan }) => plan.lowerBound),
        { note: 'no plan that gives every cut opens fewer' },
      ),
      column(
        'opened',
        `opened (${large})`,
        cells(({ plan }) => toUnit(plan.opened, large)),
        { format: '0.00#' },
      ),
      column(
        'cut',
        `cut (${large})`,
        cells(({ plan }) => toUnit(plan.cut, large)),
        { format: '0.00#' },
      ),
      column(
        'short',
        'cuts short',
        cells(({ plan }) => countOf(plan.short)),
        { note: 'what the rolls in hand do not give' },
      ),
      column(
        'shortCloth',
        `short (${large})`,
        cells(({ plan }) => toUnit(cutLengthOf(plan.short), large)),
        { format: '0.00#' },
      ),
    ],
  });
}

const countOf = (cuts: readonly { count: number }[]): number =>
  cuts.reduce((sum, { count }) => sum + count, NO_LENGTH as number);
const cutsOf = (roll: PlannedRoll): number =>
  roll.stretches.reduce((sum, { cuts }) => sum + countOf(cuts), 0);

/** The sheets as they would be written, under names the workbook has not taken. */
export const floorDraft = (contents: Taken, floor: Floor, plans: readonly ClothPlan[]): Draft =>
  underFreeNames(contents, { unit: floor.house.unit, windows: floor.windows.length }, (job) =>
    together(listSheet(job, plans), totalsSheet(job, floor, plans)),
  ).draft;

/** Writes the list and the totals in one undo step and shows the list; gives its first cell. */
export async function writeFloor(
  book: Book,
  floor: Floor,
  plans: readonly ClothPlan[],
  watch: Watch = {},
): Promise<Area> {
  return applySheets(book, 'Write the cutting list', floorDraft(await book.contents(), floor, plans), watch);
}
