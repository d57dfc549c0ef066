/** The windows: one row for a window, or for a group of identical windows with a quantity. */
import { functionNamed } from '../../../functions/index';
import { WINDOW_COLUMNS, type ColumnKey } from '../../core/window/columns';
import { DRAWS, FLOOR_FINISHES, HEADINGS, LININGS, MEASURED_TO } from '../../core/cell/treatment';
import { areaAt, cellText } from '../address';
import { inOneRow, orBlank, unlessNoWindow } from '../row-formula';
import {
  atLeast,
  fromName,
  laidOut,
  MONEY_FORMAT,
  NO_ZERO,
  oneOf,
  tableDraft,
  titled,
  together,
  type Choice,
  type ColumnDraft,
  type Draft,
  type Job,
  type CellOfRow,
} from './draft';

const HEADER = 3;

const CHOICES: Partial<Record<ColumnKey, Choice>> = {
  quantity: atLeast(1, 'How many windows are exactly alike: a whole number; blank is 1.', { whole: true }),
  heading: wordsOf(HEADINGS.list, 'the heading'),
  draw: wordsOf(DRAWS.list, 'how it draws; blank is a pair'),
  measuredTo: wordsOf(
    MEASURED_TO.list,
    'the point measured to; blank is the middle of a rod still to be hung',
  ),
  floorFinish: wordsOf(FLOOR_FINISHES.list, 'how it meets the floor; blank hangs clear'),
  lining: wordsOf(LININGS.list, 'the lining; blank is unlined'),
  fullness: {
    number: { least: 1, most: 6 },
    says: 'A fullness like 2.5; blank takes the house rule.',
    otherwise: 'stop',
  },
};

function wordsOf(list: readonly { word: string }[], what: string): Choice {
  return oneOf(
    list.map((one) => one.word),
    `Choose ${what}.`,
  );
}

/** In characters; figures take less than words. */
const WIDE: Partial<Record<ColumnKey, number>> = {
  room: 16,
  fabric: 16,
  measuredTo: 11,
  heading: 14,
  draw: 12,
  lining: 11,
  quantity: 9,
  return: 9,
  overlap: 9,
  fullness: 9,
};

const GIVEN: readonly ColumnKey[] = [
  'room',
  'quantity',
  'openingWidth',
  'leftExtension',
  'rightExtension',
  'measured',
  'measuredTo',
  'floorFinish',
  'heading',
  'draw',
  'return',
  'overlap',
  'fullness',
  'fabric',
  'lining',
];
/** Looked up in the fabrics by the fabric's name. */
const LOOKED_UP: Partial<Record<ColumnKey, string>> = {
  fabricWidth: 'Fabric_widths',
  verticalRepeat: 'Fabric_repeats',
  horizontalRepeat: 'Fabric_horizontal_repeats',
  match: 'Fabric_matches',
  arealWeight: 'Fabric_weights',
};
const NAMED: Partial<Record<string, string>> = {
  room: 'Window_rooms',
  quantity: 'Window_quantities',
  openingWidth: 'Window_openings',
  heading: 'Window_headings',
  fabric: 'Window_fabrics',
  lining: 'Window_linings',
};

const inUnit = ({ unit }: Job, key: ColumnKey): string => {
  const { heading, field } = WINDOW_COLUMNS[key];
  return field.kind.quantity === 'length' ? `${heading} (${unit.small})` : heading;
};

const givenColumns = (job: Job): readonly ColumnDraft[] =>
  GIVEN.map((key): ColumnDraft => {
    const choice =
      key === 'fabric'
        ? fromName(job.name('Fabric_names'), 'Choose a fabric of the sheet of fabrics.')
        : CHOICES[key];
    const named = NAMED[key];
    return {
      key,
      heading: inUnit(job, key),
      role: 'input',
      wide: WIDE[key] ?? 10.5,
      note: WINDOW_COLUMNS[key].field.says,
      ...(choice !== undefined && { choice }),
      ...(named !== undefined && { name: named }),
    };
  });

const lookedUpColumns = (job: Job): readonly ColumnDraft[] =>
  Object.entries(LOOKED_UP).map(([key, range]): ColumnDraft => ({
    key,
    heading: inUnit(job, key as ColumnKey),
    role: 'working',
    format: NO_ZERO,
    note: 'from the sheet of fabrics',
    formula: (cell) =>
      `=IF(${cell('fabric')}="","",INDEX(${job.name(range)},MATCH(${cell('fabric')},${job.name('Fabric_names')},0)))`,
  }));

/** A formula that is blank in a row without a window. */
const guarded = (cell: CellOfRow, formula: string): string => `=IF(${cell('openingWidth')}="","",${formula})`;
const ofAll = (cell: CellOfRow, figure: string): string => unlessNoWindow(cell('quantity'), figure);

/** Part of a formula that asks for a figure by its name. */
type Ask = (cell: CellOfRow, figure: string) => string;
interface RowAsked {
  readonly ofOneWindow: Ask;
  readonly ofAllWindows: Ask;
  readonly check: (cell: CellOfRow) => string;
}

/** Figures that hang on several others are asked of the whole row, so that no chain is deeper than two. */
function rowAsked(job: Job, inputs: readonly ColumnDraft[]): RowAsked {
  const rules = job.name('House_rules');
  const handed = inputs.filter(({ key }) => key !== 'room' && key !== 'fabric');
  const single = handed.filter(({ key }) => key !== 'quantity');
  const row = (cell: CellOfRow, columns: readonly ColumnDraft[]): string => {
    const headings = columns.map(({ heading }) => `"${heading}"`).join(',');
    return `{${headings}},${inOneRow(columns.map(({ key }) => orBlank(cell(key))))}`;
  };
  return {
    ofOneWindow: (cell, figure) => `HEM.SCHEDULE(${row(cell, single)},"${figure}",${rules})`,
    ofAllWindows: (cell, figure) => ofAll(cell, `HEM.SCHEDULE(${row(cell, handed)},"${figure}",${rules})`),
    check: (cell) => `HEM.CHECK(${row(cell, handed)},${rules})`,
  };
}

/** Beside the room and as frozen, so that it is in sight wherever the row is typed. */
const findingsColumn = ({ check }: RowAsked): readonly ColumnDraft[] =>
  functionNamed('CHECK') === undefined
    ? []
    : [
        {
          key: 'findings',
          heading: 'findings',
          role: 'check',
          wide: 16,
          note: 'what is wrong with the row, worked out again from what was measured; blank where all is well',
          formula: (cell) => guarded(cell, check(cell)),
        },
      ];

function sizeColumns(job: Job): readonly ColumnDraft[] {
  const { unit } = job;
  const rules = job.name('House_rules');
  return [
    {
      key: 'rodWidth',
      heading: `rod width (${unit.small})`,
      role: 'output',
      name: 'Window_rods',
      formula: (cell) =>
        guarded(
          cell,
          `HEM.RODWIDTH(${cell('openingWidth')},${orBlank(cell('leftExtension'))},${orBlank(cell('rightExtension'))},${rules})`,
        ),
    },
    {
      key: 'finishedDrop',
      heading: `finished drop (${unit.small})`,
      role: 'output',
      formula: (cell) =>
        guarded(
          cell,
          `HEM.DROP(${cell('measured')},${cell('heading')},${orBlank(cell('measuredTo'))},${orBlank(cell('floorFinish'))},${rules})`,
        ),
    },
  ];
}

function faceColumns(job: Job, row: RowAsked): readonly ColumnDraft[] {
  const { unit } = job;
  const rules = job.name('House_rules');
  return [
    {
      key: 'widths',
      heading: 'widths (one window)',
      role: 'output',
      name: 'Window_widths',
      formula: (cell) =>
        guarded(
          cell,
          `HEM.WIDTHS(${cell('rodWidth')},${cell('heading')},${cell('fabricWidth')},${orBlank(cell('draw'))},${orBlank(cell('fullness'))},${orBlank(cell('horizontalRepeat'))},${rules})`,
        ),
    },
    {
      key: 'deliveredFullness',
      heading: 'delivered fullness',
      role: 'output',
      format: '0.00',
      formula: (cell) => guarded(cell, row.ofOneWindow(cell, 'delivered fullness')),
    },
    {
      key: 'cutLength',
      heading: `cut length (${unit.small})`,
      role: 'output',
      name: 'Window_cuts',
      formula: (cell) => guarded(cell, row.ofOneWindow(cell, 'cut length')),
    },
    {
      key: 'yardage',
      heading: `yardage (${unit.large}, the row)`,
      role: 'output',
      format: '0.00#',
      name: 'Window_yardage',
      formula: (cell) =>
        guarded(
          cell,
          ofAll(
            cell,
            `HEM.YARDAGE(${cell('rodWidth')},${cell('finishedDrop')},${cell('heading')},${cell('fabricWidth')},${orBlank(cell('verticalRepeat'))},${orBlank(cell('quantity'))},${orBlank(cell('draw'))},${orBlank(cell('fullness'))},${orBlank(cell('match'))},${orBlank(cell('horizontalRepeat'))},${rules})`,
          ),
        ),
    },
  ];
}

/** Asked of the whole row, so that the house rules alone say how wide the bolt is. */
const behind = (row: RowAsked, cell: CellOfRow, figure: string): string =>
  guarded(cell, `IF(${cell('lining')}="",0,${row.ofAllWindows(cell, figure)})`);

function liningColumns({ unit }: Job, row: RowAsked): readonly ColumnDraft[] {
  return [
    {
      key: 'liningYardage',
      heading: `lining yardage (${unit.large}, the row)`,
      role: 'output',
      format: '0.00#;-0.00#;',
      name: 'Window_lining_yardage',
      formula: (cell) => behind(row, cell, 'lining yardage'),
    },
    {
      key: 'interliningYardage',
      heading: `interlining yardage (${unit.large}, the row)`,
      role: 'output',
      format: '0.00#;-0.00#;',
      name: 'Window_interlining_yardage',
      formula: (cell) => behind(row, cell, 'interlining yardage'),
    },
  ];
}

/** What trims along a row's edges come to; worked out only where an extra line follows them. */
function trimColumns(job: Job, row: RowAsked): readonly ColumnDraft[] {
  const line = `ROW()-ROW(${cellText(HEADER, 0, { row: true, column: true })})`;
  const wanted = `COUNTIF(${job.name('Extra_lines')},${line})`;
  return (['leading', 'bottom'] as const).map((which) => ({
    key: `${which}Trim`,
    heading: `trim of ${which} edges (${job.unit.large}, the row)`,
    role: 'working',
    format: '0.00#',
    name: `Window_${which}_trims`,
    note: 'where the sheet of extras has a line for the row; turned under at both ends',
    formula: (cell) =>
      `=IF(OR(${cell('openingWidth')}="",${wanted}=0),"",${row.ofAllWindows(cell, `trim of ${which} edges`)})`,
  }));
}

const saveColumn = (job: Job): ColumnDraft => ({
  key: 'toSaveAWidth',
  heading: `to save a width (${job.unit.small})`,
  role: 'working',
  note: 'how much narrower the rod must be to need one width less',
  formula: (cell) =>
    guarded(
      cell,
      `IFERROR(HEM.SAVEWIDTH(${cell('rodWidth')},${cell('heading')},${cell('fabricWidth')},${orBlank(cell('draw'))},${orBlank(cell('fullness'))},${job.name('House_rules')}),"")`,
    ),
});

function hangingColumns(job: Job, row: RowAsked): readonly ColumnDraft[] {
  const { unit } = job;
  const rules = job.name('House_rules');
  return [
    {
      key: 'stack',
      heading: `stack (${unit.small})`,
      role: 'output',
      format: '0.0',
      note: 'covered on each side when drawn back; blank where it is not drawn',
      formula: (cell) =>
        guarded(
          cell,
          `IFERROR(HEM.STACK(${cell('rodWidth')},${cell('heading')},${orBlank(cell('draw'))},${orBlank(cell('lining'))},${rules}),"")`,
        ),
    },
    {
      key: 'rings',
      heading: 'rings (one window)',
      role: 'output',
      name: 'Window_rings',
      note: 'rings or carriers of one window',
      formula: (cell) => guarded(cell, row.ofOneWindow(cell, 'rings')),
    },
    {
      key: 'brackets',
      heading: 'brackets (one window)',
      role: 'output',
      name: 'Window_brackets',
      note: 'of one window, ends included',
      formula: (cell) => guarded(cell, row.ofOneWindow(cell, 'brackets')),
    },
  ];
}

function chargeColumns(row: RowAsked): readonly ColumnDraft[] {
  return [
    {
      key: 'labor',
      heading: 'making charge (the row)',
      role: 'output',
      wide: 11,
      format: MONEY_FORMAT,
      name: 'Window_labor',
      note: 'of all the windows of the row; set the charges on the sheet of prices',
      formula: (cell) => guarded(cell, row.ofAllWindows(cell, 'labor')),
    },
    {
      key: 'hardwareCost',
      heading: 'hardware cost',
      role: 'output',
      wide: 11,
      format: MONEY_FORMAT,
      name: 'Window_hardware',
      note: 'of all the windows of the row; set the prices on the sheet of prices',
      formula: (cell) => guarded(cell, row.ofAllWindows(cell, 'hardware cost')),
    },
  ];
}

export function windowsSheet(job: Job): Draft {
  const sheet = job.sheet('Windows');
  const inputs = [...givenColumns(job), ...lookedUpColumns(job)];
  const row = rowAsked(job, inputs);
  const findings = findingsColumn(row);
  const [room, ...others] = inputs;
  const columns = [
    ...(room === undefined ? [] : [room]),
    ...findings,
    ...others,
    ...sizeColumns(job),
    ...faceColumns(job, row),
    ...liningColumns(job, row),
    ...trimColumns(job, row),
    saveColumn(job),
    ...hangingColumns(job, row),
    ...chargeColumns(row),
  ];
  return together(
    titled(
      sheet,
      'Windows',
      `One row for a window, or for several exactly alike with their quantity. Bare figures are ${job.unit.name}; 7' 6 1/2", 84 1/2 and 214 cm are read too.`,
    ),
    {
      puts: [{ area: areaAt(sheet, 2, 0), formula: `=${job.name('Checks_all')}` }],
      dress: [{ area: areaAt(sheet, 2, 0), role: 'check' }],
    },
    tableDraft(job, { sheet, name: 'Windows', row: HEADER, rows: job.windows, columns }),
    laidOut(job, sheet, {
      header: HEADER,
      frozenColumns: 1 + findings.length,
      repeatedColumns: 1,
      landscape: true,
      pagesWide: 2,
      widths: columns.map((column) => column.wide ?? 10.5),
    }),
  );
}
