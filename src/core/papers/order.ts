/** The order for cloth, one for each supplier: what, how much, in which pieces, and on what terms. */
import { showLength, showRemnant, showYardage } from '../exact/unit';
import { exact, fromUnit, type Length } from '../exact/length';
import { clothJob, clothsOf, type Cloth } from '../floor/floor-cuts';
import { fabricOf, tally, type Tally } from '../floor/tally';
import { cutLengthOf } from '../rolls/cutting';
import { quickLayout, toPlan, type CutPlan } from '../rolls/plan';
import { footOf } from './foot';
import { letterheadOf } from './house-lines';
import {
  datedOf,
  isClients,
  namedAs,
  type JobCloth,
  type JobExtra,
  type PapersJob,
  type Supplier,
} from './job';
import { PORTRAIT, words, type Block, type Entry, type Pair, type Paper, type TableRow } from './paper';

/** A cloth of the order with what the job says of it. */
interface Ordered {
  readonly cloth: Cloth;
  readonly facts: JobCloth | undefined;
  readonly quantity: Entry;
  readonly plan: CutPlan | undefined;
}

/** Of the house's own fabrics table where it says so, else what the windows need. */
function quantityOf(job: PapersJob, cloth: Cloth, facts: JobCloth | undefined, total: Tally): Entry {
  if (facts?.toOrder !== undefined) return facts.toOrder;
  const needed =
    cloth.layer === 'face'
      ? total.face.find(({ name }) => name === cloth.pricedAs)
      : total.behind.find(({ name }) => name === cloth.pricedAs);
  const attic = needed !== undefined && 'attic' in needed ? needed.attic : 0;
  return words(showYardage(exact((needed?.yardage ?? cutLengthOf(cloth.cuts)) + attic), job.unit));
}

/** Whole rolls of the length the supplier puts them up in; undefined where the job does not say it. */
export function planOf(
  { unit }: Pick<PapersJob, 'unit'>,
  cloth: Cloth,
  facts: JobCloth | undefined,
): CutPlan | undefined {
  const roll = facts?.wholeRoll?.value;
  if (typeof roll !== 'number' || cloth.cuts.length === 0) return undefined;
  const ordered = fromUnit(roll, unit.large);
  const longest = Math.max(...cloth.cuts.map(({ length }) => length));
  if (longest + cloth.toStart > ordered) return undefined;
  const job = clothJob(cloth, { ordered }, unit);
  return toPlan(job, quickLayout(job));
}

const longestOf = ({ cuts, toStart }: Cloth): Length =>
  exact(Math.max(0, ...cuts.map(({ length }) => length)) + toStart);

/** What each roll must give: its cuts and what is given up to the pattern's start. */
function pieces({ unit }: PapersJob, plan: CutPlan): readonly TableRow[] {
  const byNeed = new Map<Length, { rolls: number; cuts: number }>();
  for (const { stretches } of plan.rolls) {
    const cuts = stretches.flatMap((one) => one.cuts);
    const start = stretches.reduce((sum, one) => sum + (one.cuts.length > 0 ? (one.toStart ?? 0) : 0), 0);
    const need = exact(cutLengthOf(cuts) + start);
    const had = byNeed.get(need) ?? { rolls: 0, cuts: cuts.reduce((sum, { count }) => sum + count, 0) };
    byNeed.set(need, { ...had, rolls: had.rolls + 1 });
  }
  return [...byNeed].map(([need, { rolls, cuts }]) => ({
    is: 'line',
    cells: [
      words(`${rolls} ${rolls === 1 ? 'roll' : 'rolls'}`),
      words(`no shorter than ${showRemnant(need, unit)}`),
      words(`${cuts} ${cuts === 1 ? 'cut' : 'cuts'} in each`),
    ],
  }));
}

function piecesBlock(job: PapersJob, { cloth, plan, facts }: Ordered): Block {
  const { unit } = job;
  if (plan !== undefined && plan.rolls.length > 1)
    return {
      is: 'table',
      columns: [
        { heading: 'Pieces', span: 3 },
        { heading: 'Length of each, pattern start included', span: 5 },
        { heading: 'We cut', span: 4 },
      ],
      rows: pieces(job, plan),
    };
  const lines =
    plan !== undefined
      ? [`One continuous piece: the put-up of ${facts?.wholeRoll?.value ?? ''} ${unit.large} is long enough.`]
      : [
          `In as few pieces as the put-up allows, none shorter than ${showLength(longestOf(cloth), unit)}; our cuts never cross a join. Tell us the length of every piece before you cut.`,
        ];
  return { is: 'notes', title: 'Pieces', lines: lines.map((one) => words(one)) };
}

/** A figure of the supplier's with its unit. */
const withUnit = (entry: Entry | undefined, unit: string): Entry | undefined =>
  typeof entry?.value === 'number' ? words(`${entry.value} ${unit}`) : entry;

/** The pattern as the supplier states it; nothing of it for what lies behind the face. */
function patternPairs({ unit, windows }: PapersJob, { cloth, facts }: Ordered): readonly Pair[] {
  if (cloth.layer !== 'face') return [];
  const turned = windows.some(({ work }) => work.window.fabric === cloth.name && work.isTurned);
  const repeat = repeatOf(windows, cloth);
  const high =
    withUnit(facts?.verticalRepeat, unit.small) ??
    (repeat === 0 ? undefined : words(showLength(exact(repeat), unit)));
  const wide = withUnit(facts?.horizontalRepeat, unit.small);
  const match = high === undefined ? undefined : (facts?.match ?? words('straight'));
  return [
    ...(high === undefined && wide === undefined
      ? [{ label: 'Repeat', entry: words('none') }]
      : // Of a patterned cloth, what nobody stated is asked, not denied.
        [
          { label: 'Vertical repeat', entry: high ?? words('none') },
          { label: 'Horizontal repeat', entry: wide },
        ]),
    ...(match === undefined ? [] : [{ label: 'Match', entry: match }]),
    { label: 'Laid', entry: words(turned ? 'railroaded' : 'up the roll, not railroaded') },
  ];
}

/** A figure with the yard or metre it counts in. */
const counted = (entry: Entry, unit: string): Entry =>
  typeof entry.value === 'number' ? { ...entry, as: 'yardage', unit } : entry;

/** The width that its windows are worked out with, where its own row says none. */
function widthAsked({ windows, unit }: PapersJob, { layer, askedBy }: Cloth): Entry | undefined {
  const wide = askedBy.map((at) => {
    const work = windows[at]?.work;
    if (layer === 'face' || layer === 'sheer') return work?.window.fabricWidth;
    return work?.boltWidth(layer);
  });
  const [first] = wide;
  return first === undefined || wide.some((one) => one !== first)
    ? undefined
    : words(showLength(first, unit));
}

function clothPairs(job: PapersJob, ordered: Ordered): readonly Pair[] {
  const { facts } = ordered;
  const { small, large } = job.unit;
  const pairs: readonly Pair[] = [
    { label: 'Quantity', entry: counted(ordered.quantity, large) },
    { label: 'Colour', entry: facts?.colour },
    { label: 'Width', entry: withUnit(facts?.width, small) ?? widthAsked(job, ordered.cloth) },
    ...patternPairs(job, ordered),
    { label: 'Content', entry: facts?.content },
    { label: `Price a ${large}`, entry: facts?.price },
    { label: 'Reserve number', entry: facts?.reserve },
    { label: 'Needed by', entry: facts?.neededBy },
    ...(job.publicBuilding ? [{ label: 'Certificate', entry: words('of this lot, by its number') }] : []),
  ];
  // What is still to be written in stands together, last.
  return [
    ...pairs.filter(({ entry }) => entry !== undefined),
    ...pairs.filter(({ entry }) => entry === undefined),
  ];
}

/** The tallest repeat of the windows that hang this cloth; 0 where it has none. */
const repeatOf = (windows: PapersJob['windows'], cloth: Cloth): number =>
  cloth.layer === 'face'
    ? Math.max(
        0,
        ...windows.map(({ work }) => (fabricOf(work) === cloth.name ? (work.window.verticalRepeat ?? 0) : 0)),
      )
    : 0;

/** What is in the lengths for the pattern's start, or that nothing is. */
function startLine({ unit, windows }: PapersJob, { cloth }: Ordered): readonly Entry[] {
  if (cloth.toStart > 0)
    return [
      words(
        `${showLength(cloth.toStart, unit)} of each piece is for the pattern’s start and is in the lengths above.`,
      ),
    ];
  const repeat = repeatOf(windows, cloth);
  return repeat === 0
    ? []
    : [
        words(
          `The lengths begin at the motif: cut there, or tell us before you cut, since up to ${showLength(exact(repeat), unit)} more is then needed.`,
        ),
      ];
}

function clothBlocks(job: PapersJob, ordered: Ordered): readonly Block[] {
  const start = startLine(job, ordered);
  return [
    { is: 'pairs', across: 2, title: ordered.cloth.name, pairs: clothPairs(job, ordered) },
    piecesBlock(job, ordered),
    ...(start.length === 0 ? [] : [{ is: 'notes' as const, small: true as const, lines: start }]),
  ];
}

const cutting = ({ unit }: PapersJob): string =>
  `Cutting for approval: hold the order; do not cut or ship until the cutting is approved in writing. Send the full width by ${unit.small === 'in' ? '36 in' : '90 cm'} with a whole repeat, its top and its face marked.`;

const TERMS = [
  'All of one cloth from one dye lot. If one lot cannot give it, tell us before anything is cut.',
  'Inspect before cutting; mark flaws at the selvage and allow for them.',
  'No substitution of cloth, colour or lot.',
  'Ship rolled, with the sidemark on every roll.',
];

/** What is ordered of one supplier. */
interface FromSupplier {
  readonly cloths: readonly Ordered[];
  readonly extras: readonly JobExtra[];
}

/** Trims, tiebacks and the like that the supplier is to send. */
function goodsBlock(extras: readonly JobExtra[]): readonly Block[] {
  if (extras.length === 0) return [];
  return [
    {
      is: 'table',
      columns: [
        { heading: 'Further goods', span: 7 },
        { heading: 'Quantity', span: 2, align: 'center' },
        { heading: 'Price of one', span: 3, align: 'right' },
      ],
      rows: extras.map(({ what, words: said, quantity, each }): TableRow => ({
        is: 'line',
        cells: [said === undefined ? what : words(`${what.value}: ${said.value}`), quantity, each],
      })),
    },
  ];
}

function orderPaper(job: PapersJob, supplier: string, { cloths: list, extras }: FromSupplier): Paper {
  const house: Supplier | undefined = namedAs(job.suppliers, supplier);
  const title = supplier === '' ? 'Fabric order' : `Fabric order, ${supplier}`;
  const sidemark = [job.client?.value, job.reference?.value].filter((one) => one !== undefined).join(' / ');
  return {
    kind: 'order',
    sheet: supplier === '' ? 'Fabric order' : `Order ${supplier}`,
    title,
    unit: job.unit,
    page: PORTRAIT(job.size),
    foot: footOf(job, title),
    blocks: [
      {
        is: 'letterhead',
        house: letterheadOf(job.house),
        title: 'Fabric order',
        facts: [datedOf(job), { label: 'Order number', entry: undefined }],
      },
      {
        is: 'pairs',
        across: 2,
        pairs: [
          { label: 'To', entry: supplier === '' ? undefined : words(supplier) },
          { label: 'Our account', entry: house?.account },
          ...(house?.address === undefined ? [] : [{ label: 'Address', entry: house.address }]),
          { label: 'Ship by', entry: house?.shipBy },
          { label: 'Ship to', entry: job.house.shipTo ?? words('the address above') },
          { label: 'Sidemark', entry: sidemark === '' ? undefined : words(sidemark) },
        ],
      },
      ...list.flatMap((one) => clothBlocks(job, one)),
      ...goodsBlock(extras),
      { is: 'notes', title: 'With every order', small: true, keep: true, lines: [words(cutting(job))] },
      { is: 'notes', small: true, across: 2, keep: true, lines: TERMS.map((one) => words(one)) },
      { is: 'signatures', lines: ['Ordered by, date', 'Confirmed by the supplier, date'] },
    ],
  };
}

/** One paper a supplier, in the order its cloths first appear; cloth the client sends is not ordered. */
export function orderPapers(job: PapersJob): readonly Paper[] {
  const works = job.windows.map(({ work }) => work);
  const total = tally(works, job.rules);
  const bySupplier = new Map<string, { cloths: Ordered[]; extras: JobExtra[] }>();
  const from = (supplier: string): { cloths: Ordered[]; extras: JobExtra[] } => {
    const known = bySupplier.get(supplier) ?? { cloths: [], extras: [] };
    bySupplier.set(supplier, known);
    return known;
  };
  for (const cloth of clothsOf(works)) {
    const facts = namedAs(job.cloths, cloth.name);
    if (isClients(facts)) continue;
    from(String(facts?.supplier?.value ?? '')).cloths.push({
      cloth,
      facts,
      quantity: quantityOf(job, cloth, facts, total),
      plan: planOf(job, cloth, facts),
    });
  }
  for (const extra of job.extras)
    if (extra.supplier !== undefined) from(String(extra.supplier.value)).extras.push(extra);
  return [...bySupplier].map(([supplier, list]) => orderPaper(job, supplier, list));
}
