/** What a column's heading says: its words, short forms written out, and the unit it names. */

export type UnitWord = 'in' | 'ft' | 'yd' | 'mm' | 'cm' | 'm';

const UNIT_WORDS: Readonly<Record<string, UnitWord>> = {
  in: 'in',
  ins: 'in',
  inch: 'in',
  inche: 'in',
  inches: 'in',
  '"': 'in',
  '″': 'in',
  '”': 'in',
  ft: 'ft',
  feet: 'ft',
  yd: 'yd',
  yds: 'yd',
  yard: 'yd',
  yards: 'yd',
  mm: 'mm',
  cm: 'cm',
  cms: 'cm',
  centimeters: 'cm',
  centimetres: 'cm',
  m: 'm',
  mtr: 'm',
  mtrs: 'm',
  meters: 'm',
  metres: 'm',
};

/** Short forms as people head their columns, with all they may stand for. */
const SHORT: Readonly<Record<string, readonly string[]>> = {
  w: ['width'],
  wd: ['width'],
  wid: ['width'],
  wdth: ['width'],
  wide: ['width'],
  h: ['height', 'horizontal', 'heading'],
  ht: ['height'],
  hgt: ['height'],
  hght: ['height'],
  high: ['height'],
  l: ['length', 'left', 'lining'],
  loc: ['location'],
  lh: ['left'],
  lt: ['left'],
  lft: ['left'],
  lhs: ['left'],
  r: ['right', 'return', 'room', 'repeat'],
  rh: ['right'],
  rt: ['right'],
  rhs: ['right'],
  v: ['vertical'],
  vert: ['vertical'],
  vrt: ['vertical'],
  hor: ['horizontal'],
  horiz: ['horizontal'],
  horz: ['horizontal'],
  q: ['quantity'],
  qty: ['quantity'],
  qnty: ['quantity'],
  quant: ['quantity'],
  nr: ['number'],
  no: ['number'],
  nos: ['number'],
  num: ['number'],
  ord: ['order'],
  pcs: ['piece'],
  pc: ['piece'],
  fab: ['fabric'],
  fabr: ['fabric'],
  fb: ['fabric'],
  cloth: ['fabric', 'cloth'],
  material: ['fabric', 'material'],
  goods: ['fabric', 'goods'],
  rep: ['repeat'],
  rpt: ['repeat'],
  rept: ['repeat'],
  repeat: ['repeat'],
  vr: ['vertical repeat'],
  hr: ['horizontal repeat'],
  ext: ['extension'],
  extn: ['extension'],
  ret: ['return'],
  rtn: ['return'],
  rets: ['return'],
  ol: ['overlap'],
  olap: ['overlap'],
  ovl: ['overlap'],
  full: ['fullness'],
  fulness: ['fullness'],
  fln: ['fullness'],
  drp: ['drop'],
  dr: ['drop', 'draw'],
  fin: ['finished', 'finish'],
  finish: ['finished', 'finish'],
  fl: ['floor', 'finished'],
  flr: ['floor'],
  hdg: ['heading'],
  hd: ['heading'],
  head: ['heading'],
  opng: ['opening'],
  open: ['opening'],
  op: ['opening'],
  ins: ['inside'],
  insd: ['inside'],
  lng: ['lining', 'length'],
  lin: ['lining'],
  lngth: ['length'],
  lgth: ['length'],
  len: ['length'],
  lg: ['length'],
  rm: ['room'],
  win: ['window'],
  wdw: ['window'],
  wndw: ['window'],
  wt: ['weight'],
  clg: ['ceiling'],
  ceil: ['ceiling'],
  meas: ['measured'],
  measure: ['measured'],
  measurement: ['measured'],
  brkt: ['bracket'],
  pl: ['pleat'],
  yds: ['yardage', 'yard'],
  yd: ['yardage', 'yard'],
  ydg: ['yardage'],
  tot: ['total'],
  ttl: ['total'],
  amt: ['amount'],
  pr: ['pair', 'price'],
  int: ['interlining'],
  trk: ['track'],
  grom: ['grommet'],
  centre: ['center'],
};
/** Words that tell one column from another little or not at all. */
const FILLERS = new Set(
  (
    'the of to a an per for each ea and or is are by how from which what in with this these like type ' +
    'drapery drape curtain treatment'
  ).split(' '),
);

export interface HeadingRead {
  /** Lower case, no plural, no signs. */
  readonly words: readonly string[];
  readonly unit: UnitWord | undefined;
}

/** Widths, cuts and drops are counted, a width, a cut and a drop are measured: those plurals stay. */
const COUNTED = new Set(['widths', 'cuts', 'drops']);
const singular = (word: string): string =>
  !COUNTED.has(word) && word.length > 3 && word.endsWith('s') && !/(ss|us|nes)$/.test(word)
    ? word.slice(0, -1)
    : word;

/** Reads “Fabric\nwidth (in)”, “FabW_cm”, “V. Rep.”: words and unit. */
export function readHeading(text: string): HeadingRead {
  let unit: UnitWord | undefined;
  const unitOf = (word: string): UnitWord | undefined => UNIT_WORDS[word.toLowerCase().replace(/[.,]$/, '')];
  const plain = text
    .replace(/[([{]\s*([^)\]}]*?)\s*[)\]}]/g, (_all, inside: string) => {
      const found = unitOf(inside);
      if (found === undefined) return ` ${inside} `;
      unit = found;
      return ' ';
    })
    .replace(/["″”]\s*$/, () => {
      unit ??= 'in';
      return ' ';
    })
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/\bo\s*\/\s*l\b/gi, 'overlap')
    .replace(/#/g, ' number ')
    .replace(/[$€£¥]/g, ' price ')
    .replace(/['’]s\b/g, '')
    .toLowerCase();
  const words = plain.split(/[^a-z0-9½¼⅛]+/).filter((word) => word !== '');
  const last = words.at(-1);
  const trailing = last === undefined ? undefined : unitOf(last);
  // “drop cm” names a unit; “fabric yds” is yardage, and “m” alone is a heading.
  if (
    trailing !== undefined &&
    unit === undefined &&
    (/^(in|ins|inch|inches|cm|cms|mm|ft|feet)$/.test(last ?? '') || (last === 'm' && words.length > 1))
  ) {
    unit = trailing;
    words.pop();
  }
  return { words: words.map((word) => (word in SHORT ? word : singular(word))), unit };
}

/** How alike two words are, 0 to 1: the same, a short form, or a slip of the pen. */
function alike(one: string, other: string): number {
  if (one === other) return 1;
  const shortOne = SHORT[one];
  const meant = shortOne?.indexOf(other) ?? -1;
  if (meant >= 0) return meant === 0 ? 0.95 : 0.85;
  // “Floor” written out is not the short form of another word; two short forms may be of one.
  if (shortOne?.some((word) => SHORT[other]?.includes(word)) === true) return 0.9;
  if (one.length < 5 || other.length < 5 || COUNTED.has(one) || COUNTED.has(other)) return 0;
  return oneSlip(one, other) ? 0.85 : 0;
}

/** One letter wrong, missing, doubled, or two changed about. */
function oneSlip(one: string, other: string): boolean {
  const [long, short] = one.length >= other.length ? [one, other] : [other, one];
  if (long.length - short.length > 1) return false;
  let at = 0;
  while (at < short.length && long[at] === short[at]) at++;
  if (long.length > short.length) return long.slice(at + 1) === short.slice(at);
  return (
    long.slice(at + 1) === short.slice(at + 1) ||
    (long[at] === short[at + 1] && long[at + 1] === short[at] && long.slice(at + 2) === short.slice(at + 2))
  );
}

const OF_ANYTHING = new Set(['total', 'tot', 'sum', 'amount', 'amt', 'price', 'cost']);

const weighed = (word: string): number => (FILLERS.has(word) ? 0.15 : 1);

const isNumber = (word: string | undefined): boolean =>
  word === 'number' || (word !== undefined && SHORT[word]?.[0] === 'number');
/** “Order #” is an order: a number behind a word only names it. “# windows” counts them. */
const weightAt = (words: readonly string[], at: number): number =>
  at > 0 && at === words.length - 1 && isNumber(words[at]) ? 0.15 : weighed(words[at] ?? '');

/** How well a heading's words say a phrase, 0 to 1: what both share against what either holds. */
export function sameMeaning(heading: readonly string[], phrase: readonly string[]): number {
  if (heading.length === 0 || phrase.length === 0) return 0;
  if (heading.join('') === phrase.join('')) return 1;
  // “No.” alone numbers the rows, whatever else has a number.
  if (heading.every(isNumber)) return 0;
  // “Total” or “price” alone may be of anything.
  if (heading.every((word) => OF_ANYTHING.has(word))) return 0;
  const spelled = heading.flatMap((word) =>
    word === 'vr' || word === 'hr' ? (SHORT[word]?.[0] ?? '').split(' ') : [word],
  );
  const left = phrase.map((word, at) => ({ word, weight: weightAt(phrase, at) }));
  let whole = left.reduce((sum, { weight }) => sum + weight, 0);
  let shared = 0;
  for (const [place, word] of spelled.entries()) {
    const weight = weightAt(spelled, place);
    whole += weight;
    let best = 0;
    let at = -1;
    for (const [index, other] of left.entries()) {
      const score = alike(word, other.word);
      if (score > best) [best, at] = [score, index];
    }
    if (at >= 0) shared += best * Math.min(weight, left.splice(at, 1)[0]?.weight ?? 0);
  }
  return (2 * shared) / whole;
}
