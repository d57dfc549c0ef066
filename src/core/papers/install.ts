/** The install sheet: a page for each room, what hangs where, and what is looked at on site. */
import { rodFromAbove } from '../drawing/bay';
import { elevation, heightsOf } from '../drawing/elevation';
import { isDrawn, panelsOf } from '../cell/treatment';
import { digits } from '../exact/unit';
import { unitOf } from '../house/rules';
import type { DrawnBy } from '../window/facts';
import { ACCESS, CORDS, EXITS, FLAME, HEATERS, LOAD, MOTORS } from './cautions';
import { clientWords, drivenBy, hungOn, orNone } from './client-words';
import { letterheadOf } from './house-lines';
import { extrasOf } from './extras';
import { byRoom, datedOf, referenceOf, type JobExtra, type JobWindow, type PapersJob } from './job';
import { figure } from './made';
import {
  count,
  entryText,
  pair,
  PORTRAIT,
  upperFirst,
  words,
  type Block,
  type Column,
  type Pair,
  type Paper,
  type TableRow,
} from './paper';
import { footOf } from './foot';

const blank = (label: string): Pair => ({ label, entry: undefined });

const OPERATED: Readonly<Record<DrawnBy, string>> = {
  cord: 'cord or loop',
  wand: 'wand',
  hand: 'none: by hand',
  motor: 'motor',
};

function operation(one: JobWindow): string {
  const { draw = 'pair' } = one.work.window;
  if (!isDrawn(draw)) return 'none: it is not drawn';
  const by = drivenBy(one.work, one.facts.drawnBy);
  const side = draw === 'pair' ? 'from the centre' : `to the ${draw === 'one-way left' ? 'left' : 'right'}`;
  const control = by === 'hand' ? '' : '; control side ______';
  return `${by === undefined ? 'by ______' : OPERATED[by]}, drawn ${side}${control}`;
}

/** The rod with its pieces, and its brackets from its left end. */
function hardwarePairs({ work }: JobWindow): readonly Pair[] {
  const { window, rules } = work;
  const unit = unitOf(rules);
  const show = (length: number): string => figure(length, unit);
  const on = hungOn(work);
  if (window.hangOn === 'none') return [...pair(on, `there already, ${show(work.rod)}`), blank('Brackets')];
  const pieces = work.rodPieces().value;
  const { brackets, splices, added, bends } = work.mounting();
  const { rings, finials, endStops, wands } = work.fittings();
  const counted = [
    [rings, on === 'track' ? 'carriers' : 'rings'],
    // Nothing measured says how near the side walls are; a finial wants its own length there.
    [finials, 'finials, side walls left ____, right ____ off'],
    [endStops, 'end stops'],
    [wands, 'wands'],
  ] as const;
  const places = brackets.map((at, turn) =>
    turn === 0 ? 'left end' : turn === brackets.length - 1 ? 'right end' : show(at),
  );
  return [
    ...pair(
      on === 'track' ? 'Track' : 'Rod',
      `${show(work.rod)} of ${pieces.pieces.map(({ count, stockLength }) => `${digits(count)} × ${show(stockLength)}`).join(' + ')}${splices.length === 0 ? '' : `, spliced at ${splices.map(show).join(', ')}`}`,
    ),
    ...pair(
      'Bends',
      bends.length === 0 ? undefined : `${bends.length}, ${bends.map(show).join(', ')} from the left end`,
    ),
    ...pair(
      'With',
      counted.flatMap(([many, what]) => (many > 0 ? [`${digits(many)} ${what}`] : [])).join(', ') ||
        undefined,
    ),
    ...pair(
      'Brackets',
      `${brackets.length}${added > 0 ? `, ${added} of them for a splice` : ''}: ${places.join(' · ')}`,
    ),
  ];
}

/** Cloth as cut; what rod and trim add is written in, and nothing is divided by the brackets. */
function weightPairs({ work }: JobWindow): readonly Pair[] {
  const hangs = orNone(() => work.hangs());
  const missing = work.layersUnweighed;
  const { weight } = unitOf(work.rules);
  // Nothing weighed is no weight of nothing.
  const known = hangs !== undefined && hangs > 0;
  const cloth = known ? `${(Math.ceil(hangs * 10) / 10).toFixed(1)} ${weight}` : '______';
  const without = known && missing.length > 0 ? ` without ${missing.join(' and ')}` : '';
  return pair('Total weight', `cloth as cut ${cloth}${without}, rod and trim ______, in all ______`);
}

function heightPairs({ work }: JobWindow): readonly Pair[] {
  const { window, rules } = work;
  const unit = unitOf(rules);
  const show = (length: number): string => figure(length, unit);
  const heights = orNone(() => heightsOf(work));
  const stack = orNone(() => work.stack().value);
  const projection = window.projection ?? rules.rodProjection;
  const sides = panelsOf(window.draw ?? 'pair') === 2 ? 'each side' : 'at the stack';
  const track = hungOn(work) === 'track';
  return [
    ...(heights === undefined
      ? [blank('Above the floor')]
      : pair(
          'Above the floor',
          `${track ? 'underside of the track' : 'middle of the rod'} ${show(heights.rod)}; ${ACCESS}`,
        )),
    ...pair(
      'Drop',
      orNone(() => show(window.finishedDrop ?? work.finishedDrop().value)),
    ),
    ...(heights === undefined
      ? []
      : pair('Clear of the floor', heights.hem > 0 ? show(heights.hem) : 'none')),
    ...pair(
      'Projection',
      `${projection === undefined ? '______' : show(projection)}, return ${show(work.returnDepth)}`,
    ),
    ...(stack === undefined ? [] : pair('Stack', `${show(stack)} ${sides}`)),
  ];
}

function windowBlocks(one: JobWindow, extras: readonly JobExtra[]): readonly Block[] {
  const { work, quantity } = one;
  const many = Number(quantity.value);
  const drawing = orNone(() => elevation(work));
  return [
    {
      is: 'notes',
      title: `Line ${one.line}${many > 1 ? `, ${digits(many)} windows alike` : ''}`,
      lines: [words(upperFirst(clientWords(work, false)))],
    },
    {
      is: 'pairs',
      across: 2,
      pairs: [
        ...hardwarePairs(one),
        ...heightPairs(one),
        ...pair('Operation', operation(one)),
        ...weightPairs(one),
        blank('Substrate'),
        blank('Anchor'),
        ...pair('With it', extras.length === 0 ? undefined : extras.map(extraInWords).join('; ')),
        ...pair('Notes', one.remarks === undefined ? undefined : String(one.remarks.value)),
      ],
    },
    ...(drawing === undefined ? [] : [{ is: 'drawing', drawing, high: 150 } as const]),
    ...bayBlocks(one),
  ];
}

/** “tiebacks: 2 pair”. */
const extraInWords = ({ what, quantity }: JobExtra): string => `${what.value}: ${entryText(quantity)}`;

/** The plan of a bay. */
function bayBlocks({ work }: JobWindow): readonly Block[] {
  const drawing = orNone(() => rodFromAbove(work));
  if (drawing === undefined) return [];
  const notes = ['The rod from above, its straight parts to scale.', ...drawing.notes];
  return [
    { is: 'drawing', drawing, high: 110 },
    { is: 'notes', small: true, lines: [words(notes.join(' '))] },
  ];
}

const ON_SITE: readonly Column[] = [
  { heading: 'Looked at on site', span: 8 },
  { heading: 'Yes, no or none', span: 2, align: 'center' },
  { heading: 'Initials', span: 2, align: 'center' },
];

/** A row to tick and to put initials to. */
const looked = (what: string, more?: string): readonly TableRow[] => [
  { is: 'line', cells: [words(what)] },
  ...(more === undefined ? [] : [{ is: 'detail', cells: [words(more)] } as const]),
];

function siteRows(job: PapersJob, windows: readonly JobWindow[]): readonly TableRow[] {
  const drawn = windows.filter(({ work }) => isDrawn(work.window.draw));
  const by = new Set(drawn.map(({ work, facts }) => drivenBy(work, facts.drawnBy)));
  const cords = by.has('cord') || by.has(undefined);
  const certificates = windows.flatMap(({ facts }) => facts.certificate ?? []);
  const asked = job.publicBuilding || certificates.length > 0;
  return [
    ...(cords
      ? [
          ...looked('Cords and loops: tension device fixed'),
          ...looked('Cords and loops: warning tag left on'),
          ...looked('Cords and loops: the user was told and shown how', CORDS),
        ]
      : []),
    ...(by.has('motor') ? looked('Motor connected by ____________', MOTORS) : []),
    ...looked(HEATERS),
    ...looked('No exit door or way out is covered or hidden', EXITS),
    ...(asked
      ? looked(
          `Flame certificate no. ${[...new Set(certificates)].join(', ') || '____________'} seen by ____________`,
          FLAME,
        )
      : []),
    ...looked('Brackets, substrate and anchors looked at', LOAD),
  ];
}

function roomBlocks(
  job: PapersJob,
  inRoom: { readonly room: JobWindow['room']; readonly windows: readonly JobWindow[] },
): readonly Block[] {
  const { room, windows: rows } = inRoom;
  const [first] = rows;
  const all = rows.reduce((sum, { quantity }) => sum + Number(quantity.value), 0);
  const many = rows.length === 1 && first !== undefined ? first.quantity : count(all);
  return [
    { is: 'page' },
    {
      is: 'letterhead',
      house: letterheadOf(job.house).slice(0, 1),
      title: 'Install sheet',
      facts: [...referenceOf(job), datedOf(job)],
    },
    {
      is: 'table',
      columns: [
        { heading: 'Room', span: 5 },
        { heading: job.place === undefined ? '' : 'At', span: 5 },
        { heading: 'Windows', span: 2, align: 'right' },
      ],
      rows: [{ is: 'line', cells: [room, job.place, many] }],
    },
    ...rows.flatMap((one) => windowBlocks(one, extrasOf(job.extras, one))),
    // Nobody signs a page with nothing on it.
    { is: 'table', columns: ON_SITE, rows: siteRows(job, rows), keep: true, whole: true },
    {
      is: 'signatures',
      lines: ['Hung by, name and date', 'Received by, name and date'],
    },
  ];
}

export function installPaper(job: PapersJob): Paper {
  return {
    kind: 'install',
    sheet: 'Install sheet',
    title: 'Install sheet',
    page: PORTRAIT(job.size),
    unit: job.unit,
    foot: footOf(job, 'Install sheet'),
    blocks: byRoom(job.windows).flatMap((room) => roomBlocks(job, room)),
  };
}
