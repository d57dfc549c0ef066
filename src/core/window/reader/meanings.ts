/**
 * What a column may mean, said in ideas. A phrase is the ideas of a heading that says it outright;
 * a share behind a colon is how far such a heading alone is believed.
 */
import type { Quantity } from '../../cell/fields';
import { MEANINGS as DECLARED, usualHeading, type OrderKey } from '../meanings';
import type { HeadingRead } from './heading';
import { readHeading, saysPhrase } from './heading';

/** Columns a table of windows often has and that are none of ours: known, so that they are not mistaken. */
export type OtherKey =
  | 'fraction'
  | 'lineNumber'
  | 'mark'
  | 'item'
  | 'layer'
  | 'remarks'
  | 'panels'
  | 'rate'
  | 'yardsEach'
  | 'amountEach'
  | 'control'
  | 'measuredBy'
  | 'otherDate'
  | 'supplier'
  | 'code'
  | 'contact'
  | 'hem'
  | 'trim'
  | 'status'
  | 'storey'
  | 'percent'
  | 'payroll'
  | 'color'
  | 'space'
  | 'roomType'
  | 'deduction'
  | 'rightSide'
  | 'place'
  | 'basis'
  | 'liningWidths'
  | 'liningCut'
  | 'widthsOfOne'
  | 'widthsOfAll'
  | 'interlining'
  | 'interliningWidths'
  | 'interliningCut'
  | 'interliningAmount'
  | 'hookDrop'
  | 'extras';
export type MeaningKey = OrderKey | OtherKey;

/** What stands in the cells. */
export type Holds =
  'length' | 'yardage' | 'money' | 'count' | 'ratio' | 'choice' | 'text' | 'date' | 'weight' | 'any';

interface Said {
  readonly holds: Holds;
  readonly phrases: string;
}

const said = (holds: Holds, phrases: string): Said => ({ holds, phrases });

const OURS: Readonly<Partial<Record<OrderKey, string>>> = {
  room: 'room, room kind:.75, rooms:.8, room number, place:.85, place number:.85, place name:.85, place place:.85, room place, mark:.75, mark number:.75, window:.8, window number:.8, room name, item:.5, number:.35, piece:.4, story:.5, where, kind:.5, forWhat:.7, space:.7, window room, room window:.7, zone, window name:.7',
  openingWidth:
    'inside width, opening width, opening, window width, inside, inside window width, opening inside width, window opening, window:.62, width:.7, window opening width, opening length:.8, window length:.5, window size:.4, width opening, opening measured, opening opening, trim trim, trim width:.7, measured width:.9',
  leftExtension:
    'left extension, extension left, left:.86, left side:.8, left window extension, left opening extension, rod left extension, left clear:.7, extension left rod, extension:.6, past left, return left:.3',
  rightExtension:
    'right extension, extension right, right:.86, right side:.8, right window extension, right opening extension, rod right extension, right clear:.7, extension right rod, past right',
  rodWidth:
    'install:.6, install width:.7, rod width, rod, rod length, rod face, rods:.6, width:.66, outside width:.7, total width:.7, rod extension width, rod finished width, rod cut:.7, bracket width:.8, rod size, rod number:.4, bracket bracket, bracket:.6, bracket taken bracket, between bracket:.8, edge edge:.8, edge fabric:.7, rod edge edge, rod edge:.8, hardware width:.9',
  measured:
    'height, measured height, measured, floor height, rod height, floor rod, height rod, floor ceiling, height ceiling, ceiling height, floor ring, ring floor, floor rod height, floor ceiling height, ring height, height left, measured left, floor left, window height:.5, opening height:.4, inside height:.4, length:.3, floor:.4, floor top:.6, height floor ring, height floor rod, height floor track, ceiling, rod floor, ring floor height, floor ring height, drop left, length left:.8, left drop height, opening floor, top opening floor, trim floor, top trim floor, bracket floor, install height:.9, draw height:.8, mount height, hardware height:.9',
  measuredCentre:
    'height center, measured center, center, floor center, floor ceiling center, drop center, length center:.8',
  measuredRight:
    'height right, measured right, floor right, floor ceiling right, drop right, length right:.8',
  measuredTo: 'measured, measured taken, taken, height taken, height measured, measured taken height',
  floorFinish:
    'floor finished, floor, floor hem, floor style, floor clear:.9, hem finished, breaks:.75, breaks style, floor breaks',
  finishedDrop:
    'finished:.62, finished drop, finished length, drop, finished height, length:.82, drop length, finished:.35, finished drop length, total drop, total length:.9, panel length:.9, panel height:.85, panel drop:.9, rod drop:.7, hem top, top hem, length hem, hem length:.7, drop top hem, length top hem, finished drop top hem, ring hem, top floor:.7, hem hem, heading hem:.9, snaps hem:.9',
  heading:
    'heading, style, heading style, pleat style, pleat, heading kind, pleat kind, style pleat, top:.75, top style, kind:.6, item:.3',
  draw: 'draw, draw style, draw kind, pair panel, pair, panel:.6, control:.6, stack:.6, stack draw, left right, pair left right, draw left right, draw pair, control draw, opening:.56, opening style:.6, item:.3, action, direction, stack panel:.85, draw panel, stack place:.8, heading draw:.3',
  return:
    'return, return length, return width, return drop:.9, return projection:.9, return left:.8, left right return',
  overlap: 'overlap, center overlap',
  fullness: 'fullness, fullness kind:.9, loneF:.62',
  fabric:
    'fabric, fabric name, fabric pattern, pattern:.8, fabric color:.85, name:.6, color:.5, fabric code:.92, pattern color:.75, pattern name, item:.3, fabric item',
  fabricWidth:
    'fabric width, bolt width, bolt, fabric:.5, fabric bolt width, width:.6, pattern width:.5, fabric bolt',
  verticalRepeat:
    'vertical repeat, fabric vertical, repeat, vertical, pattern repeat, fabric repeat, vertical pattern repeat, fabric vertical repeat, pattern:.66, repeat height:.8, repeat length:.8, pattern match:.75, match:.6, pattern drop:.75, pattern size',
  horizontalRepeat:
    'horizontal repeat, horizontal:.7, fabric horizontal, fabric horizontal repeat, repeat width',
  match: 'match, pattern match, match kind, repeat match, repeat kind:.8',
  lining:
    'lining, lining kind, lining style, lining fabric:.8, lining name:.8, blackout:.7, lining color:.6, lining item:.8',
  liningWidth: 'lining width, lining bolt width, lining fabric width, lining bolt',
  arealWeight: 'fabric weight, weight areal, weight:.5',
  quantity:
    'quantity, window:.55, rooms, number rooms, windows, number windows, total windows, total window, many windows, many, window quantity, number many, number needed, pair:.55, number pair:.75, needed:.4, piece:.62, number:.6, number piece:.62, number window:.7, many pair:.7, line quantity:.9, each:.5, pair number, number opening, number windows alike, many alike, number sets, window count:.6, number rooms:.5, rooms:.5, windows room:.5',
  finishedWidth:
    'finished width, finished panel width, finished width panel, panel width:.86, pair width:.8, width:.6, finished pair width, finished:.45, finished size:.6, panel:.62, finished panel, panel finished, panel length:.3, panel finished width, side panel:.4, pleat taken, pleat width:.9, pleat width taken',
  widths:
    'widths, number widths, fabric widths, total widths, cut:.45, number cut, width:.45, number width:.9, fabric cut number, many widths, number drop, fabric width:.45, loneF:.62',
  deliveredFullness: 'delivered fullness, finished fullness:.7',
  cutLength:
    'cut repeat:.75, cut length, cut, cut drop, cut height, cut size, length:.62, cut finished length:.8, fabric cut length, fabric cut, at:.62, fabric at:.7',
  yardage:
    'yards, fabric yards, total yards, fabric total yards, fabric quantity:.8, order yards, yards needed, needed:.5, fabric needed:.8, fabric used:.8, used:.5, yards order, fabric total:.4, yards quantity, quantity yards, line yards',
  liningYardage:
    'lining yards, total lining yards, lining fabric yards, lining needed:.8, lining total yards, lining quantity:.8',
  railroadedYardage: 'turned yards',
  interliningYardage: 'interlining yards, total interlining yards, interlining needed:.6',
  stack: 'stack, stack width, stack space, stack length',
  marks: 'pleat:.5, number pleat, snaps, number snaps, pleat panel:.8, snaps panel',
  rings: 'ring, number ring, ring quantity',
  brackets: 'bracket, number bracket, bracket quantity',
  weight: 'weight:.9, total weight',
  labor:
    'labor, labor money, labor amount, labor total, labor cost, labor charge, total labor, line labor, labor extension, draw money:.2, piece labor:.5',
  customer: 'customer, sidemark, forWhat:.8, customer name, name:.5, customer account',
  job: 'job, job name, job mark, sidemark:.8',
  order: 'order, order number, job number:.7, number:.3, code:.3, docket number, sheet number:.4, job:.72',
  date: 'date, order date, date order, date order date',
  publicJob: 'public, public job',
  certificate: 'flame certificate, certificate, flame, flame certificate number',
  drawnBy: 'control, control kind',
  children: 'children, children room',
  childSafe: 'safe, children safe',
  railroaded:
    'turned, turned vertical, turned drop:.8, fabric turned, fabric draw:.66, draw:.4, fabric draw turned, pattern draw:.6, fabric turned, fabric turned turned',
  clearGlass: 'clear opening, stack clear opening, stack clear',
  leftWidths: 'left widths, widths left',
  rightWidths: 'right widths, widths right',
  unitPrice:
    'price, fabric price, money fabric:.8, price yards, price money, fabric price money, money:.5, cost yards:.8, cost:.4, money yards:.8, fabric yards price, at:.82, fabric at:.82',
  amount:
    'amount, fabric amount, extension money, extension price, fabric money:.8, money:.8, fabric cost:.85, fabric total money, fabric total:.8, line amount, amount money, cost:.62, extension:.5, fabric charge:.8, fabric cost money, fabric:.46, fabric price total, fabric line, price fabric total, yards money:.6',
  liningAmount:
    'lining amount, lining money, lining cost, lining total money, lining total:.8, lining charge, lining price total, lining:.46',
  hardware:
    'hardware, hardware money, hardware cost, rods:.8, rods money, rod money:.9, hardware amount, rod cost, hardware total, rod price:.7, rod money total:.8, rod ring:.9, rods ring:.9',
  installation:
    'install, install money, install cost, install charge, install amount, install total, install labor:.9',
  freight: 'freight, freight money, freight cost',
  discount: 'discount, discount money, discount amount',
  tax: 'tax, tax money, tax amount, sales tax',
  net: 'net:.7, net tax:.95, net total:.7, net money:.7, net amount:.7, net line:.7, total net:.7, money net:.7',
  total:
    'total, extension money:.8, money:.6, gross tax, net:.9, net tax:.9, net total:.9, net money:.9, gross, gross total, gross money, gross amount, total gross, total money, total amount, line total, total price, order total, total cost, total all, cost:.6, line amount:.5, price:.45, amount:.5, line money:.75, line total money, line:.6, total line, job money:.7, money total, job total, pair money:.5, window money:.5, order money:.8, order price:.7, line price:.7',
  deposit: 'deposit, deposit money, deposit amount, amount deposit, deposit received',
  hangOn: 'hang, hung, hangs, hanging, rings track, rod track',
  widthsEach: 'widths each, widths each side, widths each side panel',
  mount: 'mount, mounting, install kind:.7, inside outside mount, inside outside, mount kind',
  projection: 'projection, rod projection, bracket projection',
};

const OTHERS: Readonly<Record<OtherKey, Said>> = {
  fraction: said('any', 'fraction'),
  lineNumber: said(
    'count',
    'number:.62, item:.55, line, line number, item number, window number:.6, line item, code:.6, order:.5',
  ),
  mark: said(
    'text',
    'window:.62, window code, window order, mark, window mark, window letter, number:.4, window number:.7, kind:.4',
  ),
  item: said('text', 'item, kind:.62, style:.3'),
  layer: said('text', 'layer, layer kind'),
  remarks: said('text', 'remarks, special remarks, line remarks, remarks instructions'),
  panels: said(
    'count',
    'panel, number panel, panel quantity, piece:.62, number piece:.62, many panel, pair:.4',
  ),
  rate: said(
    'money',
    'labor rate, labor price, labor cost width, rate, money width:.9, money panel:.9, lining price, lining rate, lining price money, lining price yards, install rate, hardware rate, labor at, lining price:.8',
  ),
  yardsEach: said('yardage', 'yards each, yards, fabric yards'),
  amountEach: said('money', 'amount each, price each, price window, cost each'),
  control: said(
    'text',
    'control, control draw, control left right, control side, control length, control location, motor',
  ),
  measuredBy: said('text', 'by, measured by'),
  otherDate: said(
    'date',
    'needed, date needed, needed date, install, install date, date install, labor date, measured date, freight, freight date, deposit date',
  ),
  supplier: said('text', 'vendor, fabric vendor'),
  code: said('any', 'code, fabric code:.6, item code, color code, color number, pattern number:.8'),
  contact: said('any', 'contact'),
  hem: said('any', 'hem:.9, bottom hem, side hem, hem allowance, top hem, hem length'),
  trim: said('any', 'trim'),
  status: said('any', 'status'),
  storey: said('any', 'story, floor:.75, floor number'),
  percent: said('any', 'percent'),
  payroll: said('any', 'hours, payroll'),
  color: said('text', 'color:.9, lining color, color name'),
  roomType: said('text', 'room kind, window kind, kind room, kind:.55'),
  space: said('any', 'space, pleat space, snaps space'),
  rightSide: said('any', 'return right, stack right, right return, right stack'),
  deduction: said('any', 'allowance, floor allowance, rod drop:.5'),
  place: said('text', 'place:.8, place number:.8, place name:.8'),
  basis: said('text', 'basis, price basis, labor basis'),
  extras: said('money', 'extras, extras money, extras total'),
  hookDrop: said('length', 'snaps drop, ring drop, snaps length, ring length'),
  widthsOfOne: said('count', 'widths, number widths, width:.6, number drop'),
  widthsOfAll: said(
    'count',
    'total widths:.97, widths extension:.9, widths amount:.9, widths order:.8, number widths total:.9, line widths:.9',
  ),
  liningWidths: said('count', 'lining widths, number lining widths, total lining widths'),
  liningCut: said('length', 'lining cut, lining length, lining cut length, lining drop, lining at'),
  interlining: said('text', 'interlining'),
  interliningWidths: said('count', 'interlining widths, number interlining widths'),
  interliningCut: said(
    'length',
    'interlining cut, interlining length, interlining cut length, interlining drop, interlining at',
  ),
  interliningAmount: said(
    'money',
    'interlining amount, interlining money, interlining cost, interlining price',
  ),
};

export interface Meaning {
  readonly key: MeaningKey;
  readonly ours: boolean;
  readonly holds: Holds;
  readonly phrases: readonly { readonly ideas: readonly string[]; readonly share: number }[];
}

/** A blackout is a lining: what is said of the one is said of the other. */
const ALSO_BLACKOUT = 0.95;
const ofLining = (key: MeaningKey): boolean => /^lining./.test(key);

function parsed(key: MeaningKey, ours: boolean, { holds, phrases }: Said): Meaning {
  const own = phrases.split(',').map((phrase) => {
    const [ideas = '', share = '1'] = phrase.trim().split(':');
    return { ideas: ideas.split(' '), share: Number(share) };
  });
  const also = own.map(({ ideas, share }) => ({
    ideas: ideas.map((idea) => (idea === 'lining' ? 'blackout' : idea)),
    share: share * ALSO_BLACKOUT,
  }));
  return { key, ours, holds, phrases: ofLining(key) ? [...own, ...also] : own };
}

/** By the quantity a column’s kind declares. */
const HOLDS: Readonly<Partial<Record<Quantity, Holds>>> = {
  length: 'length',
  yardage: 'yardage',
  fullness: 'ratio',
  count: 'count',
  weight: 'weight',
  'areal weight': 'weight',
  money: 'money',
  date: 'date',
  choice: 'choice',
  text: 'text',
};

export const MEANINGS: ReadonlyMap<MeaningKey, Meaning> = new Map([
  ...DECLARED.map(({ key, kind }): [MeaningKey, Meaning] => {
    return [key, parsed(key, true, { holds: HOLDS[kind.quantity] ?? 'any', phrases: OURS[key] ?? '' })];
  }),
  ...(Object.keys(OTHERS) as OtherKey[]).map((key): [MeaningKey, Meaning] => [
    key,
    parsed(key, false, OTHERS[key]),
  ]),
]);

const IDEAS_USED = new Map<string, MeaningKey[]>();
for (const { key, phrases } of MEANINGS.values())
  for (const { ideas } of phrases)
    for (const idea of ideas) {
      const keys = IDEAS_USED.get(idea) ?? [];
      if (!keys.includes(key)) keys.push(key);
      IDEAS_USED.set(idea, keys);
    }

const OURS_KEYS: ReadonlySet<string> = new Set(DECLARED.map(({ key }) => key));
export const isOurs = (key: MeaningKey): key is OrderKey => OURS_KEYS.has(key);
export const holdsOf = (key: MeaningKey): Holds => MEANINGS.get(key)?.holds ?? 'any';
export const isLengthKey = (key: MeaningKey): boolean => holdsOf(key) === 'length';
export const isYardageKey = (key: MeaningKey): boolean => isOurs(key) && holdsOf(key) === 'yardage';
/** As our own sheets head it. */
export const headingOf = (key: OrderKey): string => usualHeading(key);

/** A heading by its letters alone: “R/W” is “rw”. */
export const lettersOf = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '');
/** A heading in exactly our own words says what was declared so. */
const DECLARED_AS = new Map<string, OrderKey>(DECLARED.map(({ key, heading }) => [lettersOf(heading), key]));

/** The meaning that a heading says in exactly our own words, whatever its unit. */
export const usualKey = ({ words }: HeadingRead): OrderKey | undefined =>
  DECLARED_AS.get(
    words
      .filter(({ weight }) => weight > UNIT_ONLY)
      .map(({ text }) => text)
      .join(''),
  );
/** A unit behind a heading is a word of it that hardly counts. */
const UNIT_ONLY = 0.05;

const MOST_KEPT = 2_000;
const kept = new Map<string, ReadonlyMap<MeaningKey, number>>();
/** Other words of ours that are more than one word say it nearly as well. */
const ALSO_AS = new Map<string, OrderKey>(
  DECLARED.flatMap(({ key, also }) =>
    also.filter((words) => words.includes(' ')).map((words): [string, OrderKey] => [lettersOf(words), key]),
  ),
);
const ALSO = 0.95;
const NOT_ALSO = 0.8;

/** A heading that says a meaning less than this may as well say another. */
export const MIN_SAID = 0.7;

/** How far a heading's words alone say each meaning, 0 to 1; those below a tenth are left out. */
export function saidBy(heading: HeadingRead): ReadonlyMap<MeaningKey, number> {
  const words = heading.words
    .map(
      ({ text, weight, stands }) =>
        `${text} ${weight} ${stands.map((one) => one.idea + one.weight).join(' ')}`,
    )
    .join(',');
  const known = kept.get(words);
  if (known !== undefined) return known;
  if (kept.size > MOST_KEPT) kept.clear();
  const said = weighed(heading);
  kept.set(words, said);
  return said;
}

/** What a heading by itself is taken to mean, in a table of few columns; undefined where it says nothing surely. */
export function meaningOf(heading: string): { readonly key: MeaningKey; readonly share: number } | undefined {
  const [best, next] = [...saidBy(readHeading(heading))].sort(([, one], [, other]) => other - one);
  return best === undefined || best[1] < MIN_SAID || best[1] === next?.[1]
    ? undefined
    : { key: best[0], share: best[1] };
}

function weighed(heading: HeadingRead): ReadonlyMap<MeaningKey, number> {
  const near = new Set(
    heading.words.flatMap((word) => word.stands.flatMap(({ idea }) => IDEAS_USED.get(idea) ?? [])),
  );
  const found = new Map<MeaningKey, number>();
  const own = usualKey(heading);
  const also =
    heading.words.length < 2 ? undefined : ALSO_AS.get(heading.words.map(({ text }) => text).join(''));
  if (own !== undefined) found.set(own, 1);
  for (const key of near) {
    let best = 0;
    for (const { ideas, share } of MEANINGS.get(key)?.phrases ?? [])
      best = Math.max(best, saysPhrase(heading.words, ideas) * share);
    best = key === also ? Math.max(best, ALSO) : also === undefined ? best : best * NOT_ALSO;
    if (best > 0.1 && key !== own) found.set(key, best);
  }
  if (also !== undefined && !found.has(also)) found.set(also, ALSO);
  return found;
}

/** The meaning that our own sheets head so; undefined where none is. */
export const keyNamed = (heading: string): OrderKey | undefined => {
  const plain = heading.trim().toLowerCase();
  return DECLARED.find(({ heading: own }) => own.toLowerCase() === plain)?.key;
};

/** A meaning in words, ours or not: “panels”, “line number”. */
export const nameOf = (key: MeaningKey): string =>
  isOurs(key) ? headingOf(key) : key.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
