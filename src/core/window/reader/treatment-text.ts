/** Headings, draws, linings and the rest as people write them, alone or together: “PP pr”, “Wave 1 way R”. */
import { oneSlip, shortens } from './vocabulary';
import type { Draw, FloorFinish, Heading, Lining, Match, MeasuredTo } from '../../cell/treatment';

type Phrases<W extends string> = readonly (readonly [W, string])[];

const HEADING_PHRASES: Phrases<Heading> = [
  [
    'pinch',
    'pinch,pp,fp,p p,p pleat,p pleats,p pl,pinch pleat,pinch pl,pinch pleated,triple pinch,double pinch,trip,trip pleat,trip pl,trip p,trpl pleat,trpl p,dbl p,dbl pl,french,french pleat,french pinch,3 finger,2 finger,3 f,2 f,three finger,two finger,2 fold,3 fold,single fold,double fold,triple fold,two fold,three fold,euro,euro pleat,tpp,dpp,dutch pleat,pleated,plis pinces,plis,fr plts,fr plt,french plts,plooi,pnch,pinched,triple pleat,double pleat,tp,top tack,top tacked,tailored pleat,parisian,parisian pleat,fan pleat,butterfly pleat,knife pleat,fr pl,pin pl',
  ],
  ['goblet', 'goblet,gob,goblets,goblet pleat,gblt'],
  ['cartridge', 'cartridge,cart,cartridge pleat,cart pl,cartr,crtg'],
  ['box', 'box,boxed,box plt,box plts,box pleat,box pl,bx,box pleated,bp'],
  ['inverted', 'inverted,inv,inverted pleat,inverted box,inv box,inverted box pleat,inv pl,invert,inv bp'],
  [
    'pencil',
    'pencil,tape,taped,3 tape,deep tape,fronce,penc,pc,bleistift,pencil pleat,pencil pl,pcl,gathered tape,pencil tape,gathered,standard tape,std tape',
  ],
  [
    'rod pocket',
    'rod pocket,rp,po,poche,fourreau,r pkt,r pocket,shirred,shirr,shir,shirred on rod,rod pkt,rod pckt,rod pock,pocket,pkt,pole pocket,slot,slot head,slot headed,slot top,casing,pole top,rod pockets',
  ],
  ['tab top', 'tab top,tab,tabs,tab tops,tabbed,tt'],
  [
    'grommet',
    'grommet,grommets,grom,gromm,grm,grommet top,oe,oeillets,oeillet,ringe,eyelet,eyelets,eyelet top,eyl,gr',
  ],
  [
    'wave',
    'wave,wv,s fold,sfold,sf,s wave,swave,ripple,ripple fold,ripplefold,rf,snap tape,wave fold,waves,wave tape',
  ],
  ['flat', 'flat,flat panel,flat on rings,flat w rings,on rings,clip rings,flat top,on clips'],
];

const DRAW_PHRASES: Phrases<Draw> = [
  [
    'pair',
    'pair,pr,prs,cd,cntr,cntrs,cent,centr,paire,paar,middel,parted,pairs,tabs,split,middle,from middle,in middle,meets,meeting,parts,part,parting,opens middle,ctr open,center part,centre part,c o,co,centre,center,ctr,centre open,center open,centre opening,center opening,centre draw,center draw,ctr draw,centre split,center split,two way,2 way,2way,2w,two w,two ways,bi part,bi parting,biparting,both,both ways,l r,lr,l and r,left and right,split draw,2 teilig,zweiteilig,pair draw,split pair,2 panels,two panels,meet,meets in centre,centre meet,paired,r l,p',
  ],
  [
    'one-way left',
    'one way left,gauche,a gauche,to lft,one part left,1 part left,1 teilig links,links,linker,one left,left one,single to left,all left,all to left,to l,one l,1 way left,one way l,1 way l,1way l,1w l,1wl,owl,ow l,o w l,left,l,lh,lft,lhs,left stack,stack left,stacks left,stack l,single left,single l,sgl l,left draw,draw left,draws left,l draw,to left,left only,1 left,pull left,l hand,left hand,lt,left side,1 l,1l,owdl,stacks l',
  ],
  [
    'one-way right',
    'one way right,droite,a droite,to rite,rite,to rgt,one part right,1 part right,1 teilig rechts,rechts,rechter,one right,right one,single to right,all right,all to right,to r,one r,1 way right,one way r,1 way r,1way r,1w r,1wr,owr,ow r,o w r,right,r,rh,rgt,rhs,right stack,stack right,stacks right,stack r,single right,single r,sgl r,right draw,draw right,draws right,r draw,to right,right only,1 right,pull right,r hand,right hand,rt,right side,1 r,1r,owdr,stacks r',
  ],
  [
    'stationary',
    'stat,sta,stationary,stay put,stays put,do not draw,dont draw,no draw,fixed,fix,fxd,fxd pair,dress,st,st pr,stat pr,stat pair,stationary pair,stationary panel,stationary panels,fixed pair,fixed panel,fixed panels,stat panel,stat panels,side panels,dress,dress curtain,dress curtains,dress panel,dress panels,dummy,static,non operable,non operating,non draw,not drawn,decorative,inoperable,stnry,stny,stats,fixed pr,does not draw,tied back,stationery',
  ],
];
const ONE_WAY =
  'one way,1 way,1way,1w,ow,single,sgl,one sided,o w,single panel,one panel,1 panel,single curtain';

const LINING_PHRASES: Phrases<Lining> = [
  [
    'unlined',
    'unlined,non,sans,geen,ohne,bare,u,ul,un,unl,none,no,n,nil,n l,no lining,not lined,without,n a,na,0,no lin,unlnd,self lined none',
  ],
  [
    'lined',
    'lined,ltd,plain,l,sl,oui,ja,gevoer,lnd,ln,lining,yes,y,std,standard,sateen,sat,cot,cotton,cotton sateen,poly cotton,polycotton,standard lining,std lining,sateen lining,thermal,thermal lining,x,ivory,white,lin,fr lining,lined only,plain lining,reg,regular',
  ],
  [
    'interlined',
    'interlined,i lined,intrl,intln,i,il,i l,intl,int,interlining,bump,domette,bump and lining,lined interlined,lined and interlined,l i,lining and interlining,l int,inter,interlnd,flannel,english bump,table felt,inter lined,lined inter',
  ],
  [
    'blackout',
    'blackout,opaque,occultant,verdunkelung,blok,bo,b o,black out,blk out,blkout,blockout,block out,dimout,dim out,room darkening,blackout lining,bo lining,blackout lined,3 pass,2 pass,three pass,bl,blk,thermal blackout,bo lined,b out,bout,bk out,fr blackout,lined blackout,blackout interlined',
  ],
];

const MEASURED_PHRASES: Phrases<MeasuredTo> = [
  [
    'new rod',
    'new rod,rod to be hung,rod not up,rods not up,future rod,planned rod,new pole,pole to be hung,rod line,rod to come,pole not up,rod mark,proposed rod,new rods',
  ],
  [
    'hung ring',
    'ring,rings,hung ring,bottom of ring,ring bottom,bottom of rings,hung rings,to ring,eye of ring,underside of ring,ring eye,ring up,existing ring,b o ring,ring hung',
  ],
  [
    'hung rod',
    'rod,hung rod,rod up,existing rod,rod hung,pole,hung pole,existing pole,rod in place,centre of rod,center of rod,top of rod,pole up,old rod,rods up,pole hung,rod existing',
  ],
  [
    'track',
    'track,underside of track,u s track,existing track,track up,trk,rail,new track,bottom of track,under track',
  ],
  ['ceiling', 'ceiling,clg,ceil,to ceiling,ceilg,soffit'],
];

const FLOOR_PHRASES: Phrases<FloorFinish> = [
  [
    'clear',
    'clear,floating,float,floats,hover,hovers,off,off floor,just off,above,clears,1 2 off,clear of floor,just clear',
  ],
  ['kiss', 'kiss,kissing,touch,touching,touches,kisses,just touching,to floor,skim'],
  ['break', 'break,breaking,breaks,slight break,trouser,brk,1 break'],
  ['puddle', 'puddle,puddling,puddled,pool,pooled,pools,puddles,pooling'],
  ['sill', 'sill,to sill,window sill,sill length,above sill'],
  ['apron', 'apron,below sill,below the sill,apron length'],
  ['radiator', 'radiator,rad,to radiator,above radiator,above rad'],
  ['counter', 'counter,counter top,worktop,to counter'],
];

const MATCH_PHRASES: Phrases<Match> = [
  ['straight', 'straight,s,str,straight match,set,set match,st,straight across,level'],
  ['half-drop', 'half drop,1 2 drop,hd,half drop match,drop,drop match,half,½ drop,half dr'],
];

/** One way to write what is written in several. */
const ALIKE = new Map([
  ['pleats', 'pleat'],
  ['pnl', 'panel'],
  ['pnls', 'panels'],
  ['plt', 'pleat'],
  ['plts', 'pleats'],
  ['pleated', 'pleat'],
  ['tripple', 'triple'],
  ['curt', 'curtain'],
  ['curts', 'curtains'],
  ['centre', 'center'],
  ['eylet', 'eyelet'],
  ['eylets', 'eyelets'],
]);

const splitWords = (text: string): readonly string[] =>
  text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/½/g, ' 1 2 ')
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '')
    .map((word) => ALIKE.get(word) ?? word);

class Lexicon<W extends string> {
  private readonly phrases = new Map<string, W>();
  private longest = 1;
  private readonly shorts = new Map<string, W | null>();

  constructor(all: Phrases<W>) {
    for (const [meant, list] of all)
      for (const written of list.split(',')) {
        const phrase = splitWords(written).join(' ');
        this.phrases.set(phrase, meant);
        this.longest = Math.max(this.longest, phrase.split(' ').length);
      }
  }

  /** The longest phrase that begins at a word; undefined where none does. */
  at(words: readonly string[], from: number): { readonly meant: W; readonly words: number } | undefined {
    for (let count = Math.min(this.longest, words.length - from); count > 0; count--) {
      const meant = this.phrases.get(words.slice(from, from + count).join(' '));
      if (meant !== undefined) return { meant, words: count };
    }
    return undefined;
  }

  /** What a word cut short stands for, where that is one thing only. */
  short(word: string): W | undefined {
    if (word.length < 3) return undefined;
    const kept = this.shorts.get(word);
    if (kept !== undefined) return kept ?? undefined;
    const meant = new Set(
      [...this.phrases]
        .filter(
          ([phrase]) =>
            !phrase.includes(' ') &&
            phrase.length > 4 &&
            (shortens(word, phrase) || (word.length > 4 && oneSlip(word, phrase))),
        )
        .map(([, one]) => one),
    );
    const [only] = meant;
    const found = meant.size === 1 ? (only ?? null) : null;
    if (this.shorts.size < 5_000) this.shorts.set(word, found);
    return found ?? undefined;
  }

  whole(text: string): W | undefined {
    const words = splitWords(text);
    const together = words.join('');
    const apart = together.replace(/^(\d)([a-z]+)$/, '$1 $2');
    return (
      this.phrases.get(words.join(' ')) ??
      this.phrases.get(together) ??
      // “3F”, “1L”.
      this.phrases.get(apart) ??
      // “E/let”.
      (words.length === 2 && words[0]?.length === 1 && together.length > 3 ? this.short(together) : undefined)
    );
  }
}

const HEADINGS = new Lexicon(HEADING_PHRASES);
const DRAWS = new Lexicon(DRAW_PHRASES);
const LININGS = new Lexicon(LINING_PHRASES);
const MEASURED = new Lexicon(MEASURED_PHRASES);
const FLOORS = new Lexicon(FLOOR_PHRASES);
const MATCHES = new Lexicon(MATCH_PHRASES);
const ONE_WAYS = new Lexicon<'one way'>([['one way', ONE_WAY]]);

/** Words beside a treatment that change nothing of it. */
const BESIDE = new Set(
  'triple double pleat pleats pleated pl panel panels top tops lined heading style hand sewn in of with on w and the drapery drapes drape curtain curtains door to a 2 3 4 5 in per set rings ring high deep extra soft tape hook hooks buckram face sheer sheers voile track traverse draw draws stack stacks way side wide full length blackout bo tailored fan new'.split(
    ' ',
  ),
);

export interface TreatmentRead {
  readonly heading: Heading | undefined;
  readonly draw: Draw | undefined;
  /** One panel, to a side that is not said. */
  readonly oneWay: boolean;
  /** Words that say nothing of these. */
  readonly unknown: readonly string[];
}

const treatments = new Map<string, TreatmentRead>();

/** Heading and draw of one text. */
export function treatmentOf(text: string): TreatmentRead {
  const kept = treatments.get(text);
  if (kept !== undefined) return kept;
  const read = readTreatment(text);
  if (treatments.size > 5_000) treatments.clear();
  treatments.set(text, read);
  return read;
}

interface Treatment {
  heading: Heading | undefined;
  draw: Draw | undefined;
  oneWay: boolean;
  readonly unknown: string[];
}

function readTreatment(text: string): TreatmentRead {
  const words = splitWords(text);
  const read: Treatment = { heading: undefined, draw: undefined, oneWay: false, unknown: [] };
  for (let at = 0; at < words.length;) at += takePhrase(words, at, read);
  return read;
}

/** Takes the longest phrase that begins at a word; gives how many words it has. */
function takePhrase(words: readonly string[], at: number, read: Treatment): number {
  const headed = HEADINGS.at(words, at);
  const drawn = DRAWS.at(words, at);
  const single = ONE_WAYS.at(words, at);
  const most = Math.max(...[headed, drawn, single].map((phrase) => phrase?.words ?? 0));
  if (most === 0) {
    takeWord(words[at] ?? '', read);
    return 1;
  }
  if (headed?.words === most && read.heading === undefined) read.heading = headed.meant;
  else if (drawn?.words === most) {
    // Of “pr st” the side panels are meant, not the drawn pair.
    if (read.draw === undefined || drawn.meant === 'stationary') read.draw = drawn.meant;
  } else if (single !== undefined) read.oneWay = true;
  return most;
}

/** A word that begins no phrase: a heading shortened, or unknown. */
function takeWord(word: string, read: Treatment): void {
  if (BESIDE.has(word)) return;
  const short = read.heading === undefined ? HEADINGS.short(word) : undefined;
  if (short !== undefined) read.heading = short;
  else if (!/^\d+$/.test(word)) read.unknown.push(word);
}

/** A number of pleats by itself is a pinch pleat’s. */
const ALONE = /^(?:triple|tripple|trpl|double|dbl|single)s?\.?$/i;
const MOST_KEPT = 5_000;
/** Columns say the same few texts again and again. */
function known<W>(read: (text: string) => W): (text: string) => W {
  const kept = new Map<string, W>();
  return (text) => {
    if (kept.has(text)) return kept.get(text) as W;
    const found = read(text);
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(text, found);
    return found;
  };
}

export const headingOfText: (text: string) => Heading | undefined = known(
  (text) =>
    treatmentOf(text).heading ?? HEADINGS.whole(text) ?? (ALONE.test(text.trim()) ? 'pinch' : undefined),
);
/** Letters that say a draw where nothing stands beside them: centre, and in French left, right, fixed. */
const LETTERS: Readonly<Record<string, Draw>> = {
  c: 'pair',
  g: 'one-way left',
  d: 'one-way right',
  f: 'stationary',
  sd: 'pair',
  ol: 'one-way left',
  or: 'one-way right',
  lw: 'one-way left',
  rw: 'one-way right',
  sl: 'one-way left',
  sr: 'one-way right',
};
/** “Panels”, where the others are pairs, stand at the sides. */
const SIDES = /^(?:side )?(?:panels|pnls)$/i;
/** Arrows point where a curtain stacks. */
const ARROWS: readonly (readonly [Draw, RegExp])[] = [
  ['pair', /^(?:[↔⟷⇔]|<-*>|>-*<)$/],
  ['one-way left', /^(?:[←⇐⟵«]|<+-*)$/],
  ['one-way right', /^(?:[→⇒⟶»]|-*>+)$/],
];
const arrow = (text: string): Draw | undefined => ARROWS.find(([, shape]) => shape.test(text))?.[0];
export const drawOfText: (text: string) => Draw | undefined = known(
  (text) =>
    (SIDES.test(text.trim()) ? 'stationary' : arrow(text.trim())) ??
    LETTERS[text.trim().toLowerCase()] ??
    DRAWS.whole(text) ??
    treatmentOf(text).draw,
);

const TWO = /^(?:2|two)$/i;
/** Whether a column that says “1 L” and “1 R” writes 2 for a pair. */
export const writesTwoForPair = (cells: readonly unknown[]): boolean =>
  cells.some((cell) => TWO.test(String(cell))) &&
  cells.some(
    (cell) => typeof cell === 'string' && /^1\s*[a-z]/i.test(cell) && drawOfText(cell) !== undefined,
  );
export const isTwo = (cell: unknown): boolean => TWO.test(String(cell));

/** A phrase anywhere in the text, the longest first. */
function anywhere<W extends string>(lexicon: Lexicon<W>, text: string): W | undefined {
  const whole = lexicon.whole(text);
  if (whole !== undefined) return whole;
  const words = splitWords(text);
  let best: { meant: W; words: number } | undefined;
  for (const at of words.keys()) {
    const found = lexicon.at(words, at);
    if (found !== undefined && found.words > (best?.words ?? 0)) best = found;
  }
  return best?.meant;
}

/** A letter by itself says no lining; “B/O” does. */
const spelledOut = (
  found: { readonly meant: Lining; readonly words: number } | undefined,
  word: string,
): readonly Lining[] => (found !== undefined && (word.length > 1 || found.words > 1) ? [found.meant] : []);

export const liningOfText: (text: string) => Lining | undefined = known(readLining);
function readLining(text: string): Lining | undefined {
  if (/^[-–—.]+$/.test(text.trim())) return 'unlined';
  const whole = LININGS.whole(text);
  if (whole !== undefined) return whole;
  const words = splitWords(text);
  const [only = ''] = words;
  const short = words.length === 1 ? LININGS.short(only) : undefined;
  if (short !== undefined) return short;
  // Single letters say a lining only where nothing else stands in the cell.
  const found = words.flatMap((word, at): readonly Lining[] => {
    const said = LININGS.at(words, at);
    if (said !== undefined || word.length < 4 || HEADINGS.at(words, at) !== undefined || BESIDE.has(word))
      return spelledOut(said, word);
    const near = LININGS.short(word);
    return near === undefined ? [] : [near];
  });
  return (['blackout', 'interlined', 'unlined', 'lined'] as const).find((one) => found.includes(one));
}
export const measuredOfText = (text: string): MeasuredTo | undefined => anywhere(MEASURED, text);
export const floorOfText = (text: string): FloorFinish | undefined => anywhere(FLOORS, text);
export const matchOfText = (text: string): Match | undefined =>
  MATCHES.whole(text) ?? anywhere(MATCHES, text);

const PAIRS = /^\s*(?:pairs|prs|(?:drawn |made )?in pairs|pairs throughout)\s*$/i;
/** The draw and the lining that a line above the table says for all: “ALL PAIRS, all B/O lined”. */
export function statedInNote(text: string): { readonly draw?: Draw; readonly lining?: Lining } {
  let [draw, lining]: [Draw | undefined, Lining | undefined] = [undefined, undefined];
  for (const clause of text.split(/[,.;]/)) {
    const said = (/\ball\b(.*)/i.exec(clause)?.[1] ?? PAIRS.exec(clause)?.[0])?.trim();
    if (said === undefined || said.split(/\s+/).length > 4) continue;
    draw ??= DRAWS.whole(said.replace(/\s*\b(?:unless|except|but)\b.*$/i, ''));
    if (/lin|black|b\/?o\b/i.test(said)) lining ??= liningOfText(said);
  }
  return { ...(draw && { draw }), ...(lining && { lining }) };
}

/** A rod that is yet to be hung is what heights were measured for. */
const NOT_UP = /\b(?:rods?|poles?) (?:(?:are|is) )?(?:not (?:yet )?up|yet to (?:be|go))\b/i;

/** The point measured to as a line beside the table says it: “rods are up”, “to center of rod, not up yet”. */
export function measuredOfNote(text: string): MeasuredTo | 'a rod' | undefined {
  if (/\b(?:rods?|poles?) (?:are )?not (?:yet )?(?:installed|hung|up|fixed)\b/i.test(text)) return 'new rod';
  if (
    !NOT_UP.test(text) &&
    !/\b(?:ht|hts|height|heights|high|size|sizes|measured|measurements?|taken|meas|floor to|drops?)\b/i.test(
      text,
    )
  )
    return undefined;
  if (/\brings?\b/i.test(text)) return 'hung ring';
  if (/\b(?:rods?|poles?)\b/i.test(text))
    return /\b(?:not|to be|yet|new|before|will be|to go up|no rods?)\b/i.test(text)
      ? 'new rod'
      : /\b(?:up|hung|existing|in place|fixed|already|installed)\b/i.test(text)
        ? 'hung rod'
        : 'a rod';
  if (/\b(?:track|rail)s?\b/i.test(text)) return 'track';
  return /\b(?:ceiling|clg)s?\b/i.test(text) ? 'ceiling' : undefined;
}

const GOODS =
  /\b(?:poles?|rods?(?! ?(?:pocket|pkt|pckt|pock))|tracks?|rails?|tie ?-?backs?|fringes?|cushions?|scatters?|pillows?|pelmets?|val[ae]?nces?|swags?|jabots?|cascades?|cornices?|lambrequins?|bed ?spreads?|coverlets?|duvets?|carriage|postage|courier|cush\w*|borders?|legs|coronas?|bed crown|bed ?skirts?|dust ruffles?|bolsters?|shams?|throws?|table ?cloths?|toppers?|napkins?|runners?|skirts?|upholster\w*|chairs?|ottomans?|bench(?:es)?|headboards?|blinds?|shades?|romans?|shutters?|rollers?|hardware|brackets?|finials?|hold ?-?backs?|trims?|braids?|tassels?|hooks?|wallpapers?|carpets?|rugs?|sofas?|slip ?covers?|venetians?|cubicles?|cub|couch(?:es)?|reuph\w*|seats?|settees?|stools?|awnings?|shower|quilts?|bed scarf|scarf|scarves|delivery|freight|installation|labou?r|fitting|steam\w*|motors?|remotes?|samples?|swatch\w*|screens?|seat pads?|wands?|eyelets only|rings only|batons?|gimp|piping|cord(?:s|ing)?|spreads?|mattress|towels?|place ?mats?)\b/i;
const WINDOW_NOUN =
  /\b(?:curtains?|drapes?|draper(?:y|ies)|sheers?|voiles?|panels?|nets?|eyelet curtains?|pairs?|pr)\b/i;
const HUNG_ON = /\b(?:curtain|drapery|drape)\s+(?:poles?|rods?|tracks?|rails?|wands?|tie)/i;

/** What a text names: something at a window, other goods, or neither. */
export function goodsOf(text: string): 'window' | 'other goods' | undefined {
  const goods = GOODS.exec(text);
  const hung = WINDOW_NOUN.exec(text);
  if (goods === null) return hung === null ? undefined : 'window';
  if (hung === null || HUNG_ON.test(text)) return 'other goods';
  return goods.index < hung.index ? 'other goods' : 'window';
}
