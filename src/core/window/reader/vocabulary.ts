/**
 * The words of headings: every idea a heading may hold, with the ways people write it. A short form
 * may stand for several ideas; what stands beside it, below it and the figures of the rows decide.
 */

/** An idea a heading is made of. */
export type Idea = string;

const IDEAS: Readonly<Record<Idea, string>> = {
  width: 'width w wd wdth wid wide wth breadth across largeur ancho breedte breite br wdht span',
  widths:
    'widths wds wdths wths drops cuts lengths lths strips strip breadths lengs banen webs fabwidths laizes',
  height: 'height h ht hgt hght high hts tall hauteur alto altura hoogte hite hoog hoch haut hohe hoehe',
  length: 'length l len lg lgth lnth lgt lgh lth ln lng long longueur largo lengh lengths lange',
  drop: 'drop d dp deep depth drp chute caida val hang fall overall',
  rod: 'rod pole track trk rail traverse tringle barra reling spoor rd batten bar rodding railing rods schienen stange tracking headrail curtainrail fascia',
  rods: 'rods poles tracks rails',
  opening:
    'opening opng opg opn openg open op recess reveal rebate aperture frame glass abertura ouverture pane gap hole space brickwork glazing architrave ope recesses niche sash daylight casement jamb casing',
  inside: 'inside ins insd inner internal interior in ib id',
  outside: 'outside outer overall outs ob',
  window: 'window win wdw wndw wind fenetre ventana fenster raam bay',
  windows: 'windows wins wdws',
  left: 'left l lft lh lhs lt gauche izq links izquierda',
  right: 'right r rt rgt rh rhs droite der regs derecha',
  center: 'center centre c ctr cntr mid middle',
  extension:
    'extension ext extn exten extends extend past beyond overhang extra side sidepast overrun wing overshoot',
  return: 'return ret rtn r retour wrap',
  overlap: 'overlap olap ol ovl ovlp lap crossover',
  fullness:
    'fullness full fln gather ratio fll x ampleur ampleness gathering gathered times factor ful fness multiplier mult multiple',
  finished: 'finished fin fnsh f fini finshd fnd made ready finie klaar fertig completed',
  cut: 'cut ct cutting coupe corte zuschnitt',
  fabric:
    'fabric fab fabr fb cloth material matl goods gds cl textile face tissu tela stof mat stoff mtrl mtl matrl clth lap outer facing main',
  bolt: 'bolt roll usable selvage reel laize loom selvedge',
  pattern: 'pattern patt patn design motif pat print pattn',
  color: 'color colour clr col colorway shade',
  name: 'name nom nombre naam',
  repeat: 'repeat rpt rep rept r raccord repete repetition raport rpte rp motif',
  vertical: 'vertical v vert vrt',
  horizontal: 'horizontal h hor horiz horz hz',
  match: 'match matching matches mtch',
  lining:
    'lining liner lnr lng lin lined l ln backing doublure forro futter voering lnd ling lngs lg doubl sateen thermal',
  blackout: 'blackout bo dimout blk blkout',
  interlining:
    'interlining interlined bump il intl int intlng intlin ilng ilin ilining domette flannel inter interline',
  yards:
    'yards yardage yd yds ydg ydge yard metres metre meter m mtr mts metrage metros mtg yrd verge lm linear vg verge verges',
  quantity:
    'quantity qty qnty quant q count ct cnt cantidad qte hoeveelheid menge aantal kol cant quan qtty nombre',
  many: 'many off sets set alike units how',
  number: 'number no nos nr num nbr # anz anzahl pos',
  piece: 'piece pieces pcs pc pce item',
  panel:
    'panel panels pnl pnls pan leaf leaves curtain curtains curt cutains side sides drape drapes hung sgl single',
  pair: 'pair pr prs pairs paire',
  heading: 'heading hdg hd head hdng header tete cabeza kop tape headg hdr pleating',
  style: 'style stl treatment tmt trtmt treat trt tx make makes look',
  pleat: 'pleat pl plt pleating pleated plooi plooien falten pli',
  kind: 'type kind typ art desc',
  draw: 'draw dr hang opens drw operation oper operates direction dir split traverses opn hand op config configuration drawn drawing pull pulls opening action closing closes parting part stacking stacks stackside handing hung works runs travel goes sens ouvre trek oop zug ouvert ouverture function functions tw',
  control: 'control ctrl cord wand pull operated corded operating cording cordside',
  measured: 'measured meas measure msd measd field',
  taken: 'taken point to ref from at',
  floor: 'floor flr fl f ground aff fflr',
  story: 'level story etage verdieping',
  ceiling: 'ceiling clg ceil',
  ring: 'ring rings carrier glider hooks',
  bracket: 'bracket brkt brk',
  stack: 'stack stackback stacks stk stacking',
  price:
    'price prices precio prix prys preis rate cst unit pr rates dollar sell selling prijs retail rrp list',
  money: 'money dollars pounds usd gbp cad aud nzd zar eur',
  amount:
    'amount amt ext extd extended extension value montant importe betrag xtd extn exten extend exted cash comes',
  cost: 'cost charge fee chg chrg chgs',
  total: 'total tot ttl sum all summe gesamt grand totl altogether bill both comes',
  line: 'line row',
  net: 'net nett subtotal exvat exgst extax ex excl pretax',
  gross: 'gross bruto inc incl incgst incvat inclusive',
  labor:
    'labor labour lab mk wkrm making make makeup sewing fabrication workroom sew mano mkg lbr machinist workmanship naherei nahen mfg manufacture manufacturing stitching mkup tailoring machining cmt',
  hardware: 'hardware hdwe hdw hdwr hwd hw hrdwr rods poles tracks fixings fittings ironmongery',
  install: 'install inst installation fitting fit installing fixing fix hang hanging instl hung fitter',
  freight: 'freight shipping ship delivery del carriage cartage frt handling',
  discount: 'discount disc less reduction dis allowed trade rebate',
  tax: 'tax vat gst hst pst qst btw sales taxes iva ust mwst',
  deposit: 'deposit dep paid down retainer prepaid depos',
  date: 'date dt day ordered ordd datum fecha dates dated when entered taken raised placed booked logged dtd written in wk week',
  order:
    'order ord po so orders purchase invoice ref inv ticket docket wo contract quote est estimate proforma sale jobno pono sheet reference tkt jobsheet worksheet ws folio slip',
  customer:
    'customer cust acct account sold guest klient kunde cliente buyer whose who party family owner school theatre household occupant resident tenant designer decorator lady firm company pour naam retailer dealer studio homeowner purchaser surname clt',
  job: 'job project site property proj',
  room: 'room rm location loc area space where kamer cuarto piece habitacion raum zimmer whereabouts lctn spot hall bedroom chamber cabin venue placement',
  rooms: 'rooms suites rms',
  place:
    'place suite ste ward apt apartment unit units zone plot flat villa cottage lodge house dwelling block building site',
  mark: 'mark tag position',
  weight: 'weight wt gsm areal',
  flame: 'flame fr fire flammability nfpa',
  certificate: 'certificate cert certif',
  children: 'children child kid',
  safe: 'safe safety secured cleat',
  public: 'public contract commercial',
  clear: 'clear off',
  turned: 'turned railroaded rr railroad turn rrd run running continuous cont sideways rotated widthways',
  remarks:
    'remarks notes note comment special instructions memo nb observations rmks detail message fyi misc remarques opmerkings anmerkung',
  by: 'by measurer fitter who checked sewer maker init initial seen machinist',
  item: 'item description desc article product what goods which treatment',
  layer: 'layer',
  mount: 'mount mounting mnt im om',
  needed:
    'fitted due deld needed wanted delivered installed shipped fit deliver completed done reqd req target eta promise deadline need requires',
  projection: 'projection proj depth standoff',
  vendor: 'vendor supplier mill source maker manufacturer mfr brand suppl supp distributor',
  top: 'top',
  breaks: 'break puddle',
  forWhat: 'forwhat',
  code: 'code sku stock ref book',
  phone: 'phone tel email address contact',
  hem: 'hem hm',
  trim: 'trim fringe braid banding edging tieback valance pelmet cornice swag tiebk border gimp trimming piping flange banded',
  hours: 'hours hrs hour wage salary gross employee pay overtime payroll',
  fraction: 'frac fraction fr eighths 8th 16ths sixteenths',
  status: 'status ok chk check approved invoiced ordered received recd stage done rec cxl invd inv',
  each: 'each ea apiece',
  allowance: 'clearance deduct deduction less',
  snaps: 'snaps grommets hooks eyelets grom',
  space: 'space spacing spaces takeup',
  delivered: 'delivered actual',
  motor: 'motor motorized',
  surface: 'sqft sqm area m2 sq',
  extras: 'extras sundries additional addl addnl misc',
  percent: 'percent pct markup margin mu',
  at: 'atsign',
  basis: 'basis uom',
  loneF: 'f',
  sidemark: 'sidemark sidemk',
  edge: 'edge end finial board',
  used: 'usage used',
};

/** Words that tell one column from another little or not at all. */
const FILLERS = new Set(
  (
    'the of to a an per for each and or is are how from which what in with this these like by at on type our out ' +
    'drapery draperies drape drapes treatment curtain curtains one your its long approx about size sizes dim dims ' +
    'measurement measurements du de la le le las el del des det'
  ).split(' '),
);

/** Letters run together, each standing for a word. */
const RUN_TOGETHER: Readonly<Record<string, readonly string[]>> = {
  iw: ['inside width'],
  ow: ['opening width'],
  ww: ['window width'],
  rw: ['rod width'],
  tw: ['rod width'],
  pw: ['panel width', 'rod width'],
  rl: ['rod length'],
  fl: ['finished length'],
  fd: ['finished drop'],
  fh: ['finished height'],
  fw: ['fabric width', 'finished width'],
  bw: ['bolt width'],
  lw: ['lining width'],
  cl: ['cut length'],
  cd: ['cut drop'],
  gw: ['fabric width'],
  mw: ['fabric width'],
  cw: ['fabric width', 'cut width'],
  dw: ['rod width', 'fabric width'],
  fbw: ['fabric width'],
  ld: ['lining drop'],
  fdl: ['finished drop'],
  vr: ['vertical repeat'],
  hr: ['horizontal repeat'],
  ih: ['inside height'],
  oh: ['opening height'],
  wh: ['window height'],
  le: ['left extension'],
  re: ['right extension'],
  lx: ['left extension'],
  rx: ['right extension'],
  extl: ['left extension'],
  extr: ['right extension'],
  ftc: ['floor ceiling'],
  ftr: ['floor rod'],
  hfc: ['height floor ceiling'],
  now: ['number widths'],
  up: ['unit price'],
  ppy: ['price yards'],
  ppm: ['price yards'],
};

/** What a written word may stand for, and how well. */
export interface Stands {
  readonly idea: Idea;
  readonly weight: number;
}

const SPELLED = new Map<string, Stands[]>();
for (const [idea, spellings] of Object.entries(IDEAS)) {
  for (const [at, spelling] of [...new Set(spellings.split(' '))].entries()) {
    const known = SPELLED.get(spelling) ?? [];
    const short = spelling.length <= 2 ? 0.93 : 0.97;
    known.push({ idea, weight: at === 0 ? 1 : short });
    SPELLED.set(spelling, known);
  }
}
const LONG_SPELLINGS = [...SPELLED.keys()].filter((spelling) => spelling.length >= 5);
export const isSpelled = (word: string): boolean => SPELLED.has(word);

export const isFiller = (word: string): boolean => FILLERS.has(word);
const TOGETHER = new Map(Object.entries(RUN_TOGETHER));
export const runTogether = (word: string): readonly string[] | undefined => TOGETHER.get(word);

/** Whether two words differ by so many letters at most that are wrong, missing, doubled or changed about. */
function within(one: string, other: string, most: number): boolean {
  let at = 0;
  while (at < one.length && one[at] === other[at]) at++;
  const [left, right] = [one.slice(at), other.slice(at)];
  if (left === right) return true;
  if (most === 0 || Math.abs(left.length - right.length) > most) return false;
  return (
    within(left.slice(1), right.slice(1), most - 1) ||
    within(left.slice(1), right, most - 1) ||
    within(left, right.slice(1), most - 1) ||
    (left[0] === right[1] && left[1] === right[0] && within(left.slice(2), right.slice(2), most - 1))
  );
}
export const oneSlip = (one: string, other: string): boolean => within(one, other, 1);

const LONG_WORD = 8;
/** In a long word two slips are read through. */
const nearTo = (word: string, spelling: string): boolean =>
  oneSlip(word, spelling) ||
  (word.length >= LONG_WORD &&
    spelling.length >= LONG_WORD &&
    word[0] === spelling[0] &&
    within(word, spelling, 2));

/** A word as it sounds: its consonants, each once. “Repeet” is a repeat, “fabrick” a fabric. */
const soundOf = (word: string): string =>
  word[0] +
  word
    .slice(1)
    .replace(/[aeiouyhw]/g, '')
    .replace(/[cq]/g, 'k')
    .replace(/z/g, 's')
    .replace(/(.)\1+/g, '$1');

/** Whether a word is another cut short (“descrip”) or without most of its vowels (“hghts”). */
export function shortens(word: string, whole: string): boolean {
  if (word.length < 3 || word.length >= whole.length || word[0] !== whole[0]) return false;
  if (whole.startsWith(word)) return word.length >= 4;
  if (word[word.length - 1] !== whole[whole.length - 1] || word.length * 5 < whole.length * 2) return false;
  let at = 0;
  for (const letter of whole) if (letter === word[at]) at++;
  if (at < word.length) return false;
  return !/[aeiou]/.test(word.slice(1)) || (word.length > 3 && word.length + 2 >= whole.length);
}

/** Words behind which another may stand without a space, and the letters that may end such a word. */
const LEAST_PART = 3;
const LAST_PART = new Set(['br', 'w', 'h', 'l', 'd', 'ht', 'wd']);
/** Two known words written as one: “rodwidth”, “stofbreedte”. */
export function partsOfWord(word: string): readonly [string, string] | undefined {
  for (let at = word.length - 1; at >= LEAST_PART; at--) {
    const [left, right] = [word.slice(0, at), word.slice(at)];
    if (!SPELLED.has(left) || !SPELLED.has(right)) continue;
    if (right.length >= LEAST_PART || LAST_PART.has(right)) return [left, right];
  }
  return undefined;
}

/** A letter before a noun: “fdrop”, “cutl” has its own, “vrep”, “lyds”. */
const LETTERS: Readonly<Record<string, string>> = {
  f: 'finished fabric',
  c: 'cut',
  v: 'vertical',
  h: 'horizontal',
  l: 'lining left',
  r: 'rod right',
  w: 'window',
  t: 'rod total',
  o: 'opening',
  i: 'inside',
  p: 'panel pattern',
};
const NOUNS: ReadonlySet<Idea> = new Set([
  'width',
  'widths',
  'height',
  'length',
  'drop',
  'repeat',
  'yards',
  'extension',
  'price',
]);
/** What a letter run together with a noun says: the letter’s ideas, and the noun. */
export function letterBefore(word: string): readonly [readonly Stands[], string] | undefined {
  const [letter = '', noun] = [word[0], word.slice(1)];
  const before = LETTERS[letter];
  if (before === undefined || noun.length < 2) return undefined;
  if (SPELLED.get(noun)?.some(({ idea }) => NOUNS.has(idea)) !== true) return undefined;
  return [before.split(' ').map((idea) => ({ idea, weight: 0.9 })), noun];
}

/** Plurals that count where the singular measures. */
const COUNTED = new Set([
  'widths',
  'cuts',
  'drops',
  'rods',
  'poles',
  'tracks',
  'windows',
  'rooms',
  'suites',
  'lengths',
  'snaps',
]);
const slips = new Map<string, readonly Stands[]>();
const MOST_KEPT = 2_000;

/** The ideas a word may stand for; a slip of the pen in a long word is read through. */
export function ideasOf(word: string): readonly Stands[] {
  const known = SPELLED.get(word);
  if (known !== undefined) return known;
  // “The” is no thermal cut short.
  if (isFiller(word)) return [];
  const kept = slips.get(word);
  if (kept !== undefined) return kept;
  const found = looked(word);
  if (slips.size > MOST_KEPT) slips.clear();
  slips.set(word, found);
  return found;
}

function looked(word: string): readonly Stands[] {
  if (word.length > 3 && word.endsWith('s')) {
    const single = SPELLED.get(word.slice(0, -1));
    if (single !== undefined) return single;
  }
  const plural = (spelling: string): boolean => !COUNTED.has(spelling) || word.endsWith('s');
  const as = (spellings: readonly string[], share: number): Stands[] =>
    spellings.flatMap((spelling) =>
      (SPELLED.get(spelling) ?? []).map(({ idea, weight }) => ({ idea, weight: weight * share })),
    );
  const among = (test: (spelling: string) => boolean): readonly string[] =>
    LONG_SPELLINGS.filter((spelling) => test(spelling) && plural(spelling));
  const near = word.length < 5 ? [] : among((spelling) => nearTo(word, spelling));
  if (near.length > 0) return as(near, 0.88);
  const short = among((spelling) => shortens(word, spelling));
  if (short.length > 0) return as(short, 0.8);
  const sound = soundOf(word);
  if (word.length >= 6 && sound.length >= 3)
    return as(
      among((spelling) => Math.abs(spelling.length - word.length) <= 2 && soundOf(spelling) === sound),
      0.8,
    );
  return word.length === 3
    ? as(
        among((spelling) => spelling.startsWith(word)),
        0.7,
      )
    : [];
}
