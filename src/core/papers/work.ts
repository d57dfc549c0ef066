/** The work order: for each row a page with what is cut, in which order, and how it is made up. */
import { layerOf } from '../cloth/behind';
import { orderInWords } from '../cloth/repeat';
import { furtherOn, type FurtherOn } from '../floor/motif';
import { headingsDrawn } from '../drawing/heading-marks';
import { isPleated } from '../heading/pleats';
import { isDrawn, panelsOf } from '../cell/treatment';
import { INCHES, digits } from '../exact/unit';
import { unitOf } from '../house/rules';
import type { SetOut } from '../window/job';
import type { PanelMade } from '../window/panels';
import { clientWords, orNone } from './client-words';
import { letterheadOf } from './house-lines';
import { datedOf, referenceOf, type JobWindow, type PapersJob } from './job';
import {
  cutsAlike,
  numbersInWords,
  figure,
  halves,
  madeUp,
  panelName,
  widthName,
  widthsOf,
  type RowMade,
} from './made';
import {
  count,
  pair,
  PORTRAIT,
  upperFirst,
  words,
  type Block,
  type Pair,
  type Paper,
  type TableRow,
} from './paper';
import { cutSheet } from './cut-sheet';
import { extrasOf, madeWith } from './extras';
import { footOf } from './foot';

/** Of finished width and length, UFGS 12 22 00: a quarter of an inch. */
const TOLERANCE = { in: '± 1/4 in', cm: '± 6 mm' };

const flatOf = ({ widths }: PanelMade): number => widths.reduce((sum, { flat }) => sum + flat, 0);

/** “2 1/2 widths: 1A + 2B + 5A (right half), flat 127 in”, from the leading edge. */
const panelWords = (panel: PanelMade, show: (length: number) => string): string =>
  `${widthsOf(panel)} widths: ${panel.widths.map(widthName).join(' + ')}, flat ${show(flatOf(panel))}`;

/** The finished piece: its size, its flat edges, its hems. */
function sizes(one: JobWindow, { panels }: RowMade): readonly Pair[] {
  const { work } = one;
  const { window, rules } = work;
  const unit = unitOf(rules);
  const show = (length: number): string => figure(length, unit);
  const drop = orNone(() => window.finishedDrop ?? work.finishedDrop().value);
  const finished = work.finishedWidth().value;
  const tolerance = unit === INCHES ? TOLERANCE.in : TOLERANCE.cm;
  const own = panels.filter((panel) => panel.window === 1);
  const each = own.length === 2 ? 'each panel ' : '';
  return [
    ...pair(
      'Finished size',
      drop === undefined
        ? undefined
        : `${each}${show(finished)} wide, ${show(drop)} long, ${tolerance} (UFGS 12 22 00)`,
    ),
    ...(panels.length === own.length
      ? own.flatMap((panel) => pair(upperFirst(panelName(one, panel)), panelWords(panel, show)))
      : pair('Panels', own.map((panel) => `${panelName(one, panel)} of ${widthsOf(panel)}`).join(', '))),
    ...pair(
      'Return, flat',
      work.returnDepth > 0 ? `${show(work.returnDepth)} at ${returnSides(one)}` : 'none',
    ),
    ...pair(
      'Overlap, flat',
      work.overlapEach > 0 ? `${show(work.overlapEach)} at each leading edge` : 'none',
    ),
    ...pair(
      'Cloth in hems',
      `top ${show(rules.topAllowance[window.heading ?? 'pinch'])}, bottom ${show(rules.bottomAllowance)}, each side ${show(rules.sideHem)}`,
    ),
    ...pair('Cloth in seams', `${show(rules.seam)} each`),
  ];
}

function returnSides({ work: { window, rules } }: JobWindow): string {
  const { draw = 'pair' } = window;
  if (panelsOf(draw) === 2) return 'the outer edge of each';
  if (draw === 'one stationary panel') return 'the outer edge';
  return isDrawn(draw) && rules.oneWayReturns === 'one end' ? 'the stack’s end' : 'both edges';
}

const WEIGHED = 'one at each seam, one at each lower corner';

/** Marks along the top in words: what the drawing shows. */
function headingPairs(one: JobWindow, set: SetOut, own: readonly PanelMade[]): readonly Pair[] {
  const { work } = one;
  const { window, rules } = work;
  const unit = unitOf(rules);
  const show = (length: number): string => figure(length, unit);
  const heading = window.heading ?? 'pinch';
  const { count: marks, space, takeUp, first, byWidth = [] } = set;
  const hooks = orNone(() => work.rings().value / panelsOf(window.draw ?? 'pair'));
  const seams = Math.max(...own.map(({ widths }) => widths.length)) - 1;
  return [
    ...(isPleated(heading) && space !== undefined && takeUp !== undefined
      ? [
          ...pair('Pleats a panel', `${digits(marks)}, each takes up ${show(takeUp)}`),
          ...pair('Spaces', `${digits(marks - 1)} of ${show(space)}`),
          ...pair(
            'By width, leading edge first',
            byWidth.length < 2
              ? undefined
              : byWidth.map((width) => `${width.pleats} of ${show(width.takeUp)}`).join(' · '),
          ),
        ]
      : []),
    ...(heading === 'grommet' && space !== undefined && first !== undefined
      ? pair(
          'Grommets a panel',
          `${digits(marks)}, centres ${show(space)} apart, the first ${show(first)} from the edge`,
        )
      : []),
    ...(heading === 'wave'
      ? pair('Snaps a panel', `${digits(marks)}, ${show(rules.snapSpacing)} apart along the cloth`)
      : []),
    ...(hooks === undefined || hooks === 0
      ? []
      : pair('Hooks a panel', `${digits(hooks)}, set ______ below the top edge`)),
    ...pair('Weights', `${WEIGHED}: ${seams + 2} a panel`),
  ];
}

/** Where the full motif lands, at the top edge or at the hem. */
function motifPair({ work }: JobWindow, begins: FurtherOn | undefined): readonly Pair[] {
  const { window, rules } = work;
  const unit = unitOf(rules);
  const other = work.cloth().cutting.halfDrop ? '; of B half a repeat further on' : '';
  const further =
    begins === undefined
      ? ''
      : `; here ${figure(begins.by, unit)} further on, to meet the windows of ${figure(begins.than.orderedDrop, unit)} in this room`;
  return rules.patternFrom === 'top'
    ? pair(
        'Motif at the top',
        `whole at the finished top edge, ${figure(rules.topAllowance[window.heading ?? 'pinch'], unit)} below the cut’s top${other}${further}`,
      )
    : pair(
        'Motif at the hem',
        `whole at the finished bottom edge, ${figure(rules.bottomAllowance, unit)} above the end of its bare length${other}${further}`,
      );
}

/** The pattern: its repeat, and where the full motif lands. */
function patternPairs(one: JobWindow, begins: FurtherOn | undefined): readonly Pair[] {
  const { work } = one;
  const { window, rules } = work;
  const { verticalRepeat, horizontalRepeat, fabricWidth } = window;
  const unit = unitOf(rules);
  const show = (length: number): string => figure(length, unit);
  return [
    ...pair('Cloth', [window.fabric, fabricWidth && `${show(fabricWidth)} wide`].filter(Boolean).join(', ')),
    ...(verticalRepeat === undefined || verticalRepeat === 0
      ? []
      : [
          ...pair(
            'Repeat',
            `${show(verticalRepeat)} high${horizontalRepeat === undefined ? '' : `, ${show(horizontalRepeat)} wide`}${work.cloth().cutting.halfDrop ? ', half-drop' : ''}`,
          ),
          ...motifPair(one, begins),
        ]),
  ];
}

const CUTS = [
  { heading: 'Layer', span: 3 },
  { heading: 'Cuts', span: 2 },
  { heading: 'Begins', span: 1, align: 'center' },
  { heading: 'Count', span: 1, align: 'center' },
  { heading: 'Cut length', span: 2, align: 'center' },
  { heading: 'At its top', span: 2 },
  { heading: 'Done', span: 1 },
] as const;

function cutRows(one: JobWindow, { cuts, turned }: RowMade): readonly TableRow[] {
  const { work } = one;
  const unit = unitOf(work.rules);
  const faces = cutsAlike(cuts).map((run): TableRow => ({
    is: 'line',
    cells: [
      words(turned ? 'face, turned' : 'face, up the roll'),
      words(numbersInWords(run.numbers)),
      run.start === undefined ? undefined : words(run.start),
      count(run.numbers.length),
      words(figure(run.length, unit)),
      words(run.start === undefined ? 'number ↑' : `number ${run.start} ↑`),
    ],
  }));
  const behind = work.clothsBehind.flatMap((cloth): TableRow[] => {
    const layer = work.behind(cloth);
    if (layer === undefined) return [];
    return [
      {
        is: 'line',
        cells: [
          words(`${cloth}, ${figure(work.boltWidth(layerOf(cloth)), unit)} wide`),
          words(`${halves(layer.widths / panelsOf(work.window.draw ?? 'pair'))} a panel`),
          undefined,
          count(layer.cuts),
          words(figure(layer.cut, unit)),
          words('↑'),
        ],
      },
    ];
  });
  return [...faces, ...behind];
}

/** A row for each window: its panels side by side. */
function panelTable(one: JobWindow, { panels }: RowMade): Block {
  const { work } = one;
  const unit = unitOf(work.rules);
  const sides = [...new Set(panels.map(({ side }) => side))];
  const windows = [...new Set(panels.map(({ window }) => window))];
  return {
    is: 'table',
    whole: true,
    // Nobody signs a page with nothing on it.
    keep: true,
    columns: [
      { heading: 'Window', span: 2 },
      ...sides.map((side) => ({
        heading: `${upperFirst(panelName(one, { side }))}, leading edge first`,
        span: 8 / sides.length,
      })),
      { heading: 'Flat, each', span: 2, align: 'right' },
    ],
    rows: windows.map((window): TableRow => {
      const own = panels.filter((panel) => panel.window === window);
      return {
        is: 'line',
        cells: [
          words(`${window} of ${windows.length}`),
          ...own.map(({ widths }) => words(widths.map(widthName).join(' + '))),
          words([...new Set(own.map((panel) => figure(flatOf(panel), unit)))].join(', ')),
        ],
      };
    }),
  };
}

/** What the cutter and the sewer must keep in mind. */
function rulesOfCutting(one: JobWindow, made: RowMade): readonly string[] {
  const { work } = one;
  const { cutting, starts } = work.cloth();
  const order = made.turned ? undefined : orderInWords(cutting, starts(work.quantity));
  const split = made.panels.some(({ widths }) => widths.some(({ half }) => half !== undefined));
  return [
    ...(order === undefined ? [] : [`Order of cutting: ${order}.`]),
    'Pattern, pile and nap run to the top: chalk number, letter and arrow at the top of each cut, on the wrong side.',
    ...(split
      ? [
          panelsOf(work.window.draw ?? 'pair') === 2
            ? 'The half width stands at the return: the left half of a split width goes to the right panel, the right half to the left panel.'
            : 'The half width stands at the return, its selvage to the next width.',
        ]
      : []),
    ...(made.leftOver.length === 0
      ? []
      : [`Half of cut ${made.leftOver.map(({ number }) => number).join(', ')} is left over: keep it.`]),
    ...(made.turned ? ['The cloth is turned: its width runs up the drop, and each cut is one panel.'] : []),
    ...liningRules(one),
  ];
}

function liningRules({ work }: JobWindow): readonly string[] {
  const { rules, clothsBehind } = work;
  const unit = unitOf(rules);
  if (!clothsBehind.some((cloth) => layerOf(cloth) === 'lining')) return [];
  return rules.liningCut === 'own allowances'
    ? [`The lining ends ${figure(rules.liningShorter, unit)} above the bottom edge of the face.`]
    : [];
}

function rowBlocks(job: PapersJob, one: JobWindow, begins: FurtherOn | undefined): readonly Block[] {
  const { work, quantity, room } = one;
  const made = madeUp(one);
  const set = work.setOut().value;
  const own = made.panels.filter(({ window }) => window === 1);
  const several = Number(quantity.value) > 1;
  return [
    {
      is: 'letterhead',
      house: letterheadOf(job.house).slice(0, 1),
      title: 'Work order',
      facts: [
        { label: 'Line', entry: words(`${one.line} of ${job.windows.length}`) },
        ...referenceOf(job),
        datedOf(job),
      ],
    },
    {
      is: 'table',
      columns: [
        { heading: 'Room', span: 4 },
        { heading: 'To make', span: 6 },
        { heading: 'Windows', span: 2, align: 'right' },
      ],
      rows: [{ is: 'line', cells: [room, words(upperFirst(clientWords(work, false))), quantity] }],
    },
    {
      is: 'pairs',
      across: 2,
      title: 'Made up',
      pairs: [...sizes(one, made), ...patternPairs(one, made.turned ? undefined : begins)],
    },
    { is: 'table', columns: CUTS, rows: cutRows(one, made) },
    { is: 'notes', small: true, lines: rulesOfCutting(one, made).map((line) => words(line)) },
    {
      is: 'pairs',
      across: 2,
      title: `Along the top: ${work.window.heading ?? 'pinch'}${several ? ', every window alike' : ''}`,
      pairs: headingPairs(one, set, own),
    },
    ...(made.turned ? [] : headingsDrawn(work, own)).map((drawing): Block => ({
      is: 'drawing',
      drawing,
      high: 106,
    })),
    ...(several ? [panelTable(one, made)] : []),
    ...madeWith(extrasOf(job.extras, one), one),
    {
      is: 'pairs',
      across: 1,
      keep: true,
      pairs: [{ label: 'Special notes', entry: one.remarks }],
    },
    {
      is: 'pairs',
      across: 3,
      pairs: ['Cut by', 'Checked by', 'Due'].map((label) => ({ label, entry: undefined })),
    },
  ];
}

/** A page for every row of windows, and one for the rolls. */
export function workPaper(job: PapersJob): Paper {
  const begins = new Map(furtherOn(job.windows.map(({ work }) => work)).map((one) => [one.work, one]));
  return {
    kind: 'work',
    sheet: 'Work order',
    title: 'Work order',
    page: PORTRAIT(job.size),
    unit: job.unit,
    foot: footOf(job, 'Work order'),
    blocks: [
      ...job.windows.flatMap((one): readonly Block[] => [
        { is: 'page' },
        ...rowBlocks(job, one, begins.get(one.work)),
      ]),
      ...cutSheet(job),
    ],
  };
}
