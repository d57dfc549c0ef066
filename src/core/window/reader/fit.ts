/** How well the cells of a column fit a meaning: above nothing they speak for it, below against it. */
import { dayOf } from './dates';
import { saidFor, type Evidence } from './evidence';
import { fullnessOf, isDay, moneyOf, type Cell } from './cells';
import type { MeaningKey } from './meanings';
import { holdsOf } from './meanings';
import {
  drawOfText,
  floorOfText,
  goodsOf,
  headingOfText,
  isTwo,
  liningOfText,
  matchOfText,
  measuredOfText,
  treatmentOf,
  writesTwoForPair,
} from './treatment-text';
import { countsPairs } from './pairs';
import { isTurned, leadingCount, LENGTH_UNIT, mountOf } from './values';
import { directionOf, yesOrNo } from '../../cell/treatment';

/** Cells of this kind are not this meaning's at all. */
const NEVER = -9;
/** Nor any of them. */
const NOT_ONE = -99;

/** Where figures of a meaning usually lie, in inches. */
const USUAL_INCHES: Partial<Record<MeaningKey, readonly [number, number]>> = {
  openingWidth: [8, 400],
  leftExtension: [0, 45],
  rightExtension: [0, 45],
  rodWidth: [10, 460],
  measured: [18, 280],
  measuredCentre: [18, 280],
  measuredRight: [18, 280],
  finishedDrop: [10, 280],
  return: [0, 16],
  overlap: [0, 10],
  fabricWidth: [26, 132],
  liningWidth: [26, 132],
  verticalRepeat: [0, 90],
  horizontalRepeat: [0, 90],
  finishedWidth: [8, 420],
  cutLength: [14, 330],
  stack: [1, 80],
  hem: [0, 26],
  projection: [0, 24],
  deduction: [0, 12],
};
const BOLTS = [
  36, 45, 48, 50, 54, 55, 56, 58, 60, 72, 96, 110, 118, 120, 126, 47.24, 53.94, 55.12, 51.18, 59.06, 54.33,
  57.09, 110.24, 118.11, 122.05, 125.98,
];
const isBolt = (inches: number): boolean => BOLTS.some((bolt) => Math.abs(bolt - inches) < 0.3);

interface Figures {
  readonly values: readonly number[];
  readonly distinct: number;
}
function figuresIn(cells: Float64Array): Figures {
  const values = [...cells].filter((figure) => !Number.isNaN(figure));
  return { values, distinct: new Set(values.map((figure) => Math.round(figure * 64))).size };
}
const share = (values: readonly number[], test: (value: number) => boolean): number =>
  values.length === 0 ? 0 : values.filter(test).length / values.length;

/** So many times the most that is usual is another thing. */
const FAR_BEYOND = 4;
/** A repeat is never longer than the longest that is usual. */
const LONG = 60;

function fitLength(key: MeaningKey, { inches, filled }: Evidence): number {
  const { values, distinct } = figuresIn(inches);
  if (filled === 0) return -0.05;
  const readable = values.length / filled;
  if (readable < 0.5) return NEVER;
  const [least, most] = USUAL_INCHES[key] ?? [0, 500];
  const optional = least === 0 || key === 'verticalRepeat';
  const counted = optional ? values : values.filter((value) => value > 0);
  const within = share(counted, (value) => value >= least && value <= most);
  // However few they are.
  if (
    counted.length > 0 &&
    counted.every((value) => value > most * (optional && most > LONG ? 1 : FAR_BEYOND))
  )
    return NEVER;
  if (counted.length > 0 && within < 0.5) return key === 'widths' ? NEVER : -0.75;
  let fit = -(1 - readable) * 0.25 - (1 - within) * 0.4;
  fit += asBolts(key, counted, distinct);
  if ((key === 'leftExtension' || key === 'rightExtension') && share(values, (value) => value > 30) > 0.3)
    fit -= 0.4;
  return fit;
}

/** Bolts come in few widths: such figures speak for one, and against any other size. */
function asBolts(key: MeaningKey, counted: readonly number[], distinct: number): number {
  const bolts = share(counted, isBolt);
  if (key === 'fabricWidth' || key === 'liningWidth') {
    if (bolts >= 0.7) return 0.22;
    return distinct > 5 && distinct > counted.length * 0.5 ? -0.35 : -0.1;
  }
  return key !== 'verticalRepeat' && bolts >= 0.9 && counted.length >= 3 && distinct <= 3 ? -0.12 : 0;
}

const isOne = (value: number): boolean => value === 1;
const fitCount = (values: readonly number[], whole: number): number =>
  whole < 0.9 || share(values, (value) => value <= 500) < 0.9 ? NEVER : 0;

/** “1 pr”, “two pr”, “24 rms”. */
export const countedInWords = ({ cells, filled }: Evidence): boolean =>
  filled > 1 && cells.filter((cell) => leadingCount(cell) !== undefined).length > filled * 0.7;

/** Words among counts of widths, that the cloth is turned. */
const turnedIn = (key: MeaningKey, evidence: Evidence): number =>
  key === 'widths' ? filledCells(evidence).filter((cell) => isTurned(String(cell))).length : 0;
/** Most windows are one of a kind, most panels come in twos. */
const oneOfAKind = (values: readonly number[]): number =>
  values.length >= 3 && share(values, isOne) > 0.5 ? 0.12 : 0;

const isHalf = (value: number): boolean => Math.abs(value * 2 - Math.round(value * 2)) < 1e-6;
const isWhole = (value: number): boolean => Math.abs(value - Math.round(value)) < 1e-6;
/** Whether all but a few figures pass. */
const most = (values: readonly number[], least: number, test: (value: number) => boolean): number =>
  share(values, test) < least ? NEVER : 0;
const anyCloth = (values: readonly number[]): number =>
  most(values, 0.9, (value) => value >= 0 && value < 3_000);

/** How figures of a meaning look; a figure of any other is at least not below 0. */
const FIGURES_OF: Partial<Record<MeaningKey, (values: readonly number[], evidence: Evidence) => number>> = {
  widths: (values) =>
    most(values, 0.8, isHalf) +
    // Cloth that is turned has none.
    most(
      values.filter((value) => value !== 0),
      0.7,
      (value) => value >= 0.5 && value <= 60,
    ),
  quantity: (values, evidence) =>
    fitCount(values, share(values, countsPairs(evidence) ? isHalf : isWhole)) + oneOfAKind(values),
  panels: (values) => fitCount(values, share(values, isWhole)),
  lineNumber: (values, { filled, cells }) => (running(values) && filled > cells.length * 0.9 ? 0.36 : NEVER),
  yardage: anyCloth,
  liningYardage: anyCloth,
  interliningYardage: anyCloth,
  yardsEach: anyCloth,
  brackets: (values) => most(values, 0.8, (value) => value >= 1 && value <= 16) + most(values, 0.9, isWhole),
};
const notBelowNone = (values: readonly number[]): number => most(values, 0.7, (value) => value >= 0);

function fitFigure(key: MeaningKey, evidence: Evidence): number {
  const { values } = figuresIn(evidence.figures);
  if (evidence.filled === 0) return -0.05;
  if (key === 'quantity' && countedInWords(evidence)) return 0.1;
  const readable = (values.length + turnedIn(key, evidence)) / evidence.filled;
  if (readable < 0.5) return NEVER;
  const fit = (FIGURES_OF[key] ?? notBelowNone)(values, evidence);
  return fit <= NEVER ? NEVER : fit - (1 - readable) * 0.25;
}

/** “W88”, “TS/114”, “30142”: what papers are numbered by. */
const PAPER = /^(?:[A-Z]{0,4}[-/. ]?\d{2,}(?:[-/]\w{1,4})?|\d{1,3}[-/]\d{2,4})$/i;
const numbered = ({ cells }: Evidence): number => {
  const filled = cells.filter((cell) => cell !== null);
  const papers = filled.filter((cell) =>
    PAPER.test(typeof cell === 'number' ? String(cell) : typeof cell === 'string' ? cell : ''),
  );
  return filled.length === 0 ? 0 : papers.length / filled.length;
};

/** 1, 2, 3 … down the rows. */
function running(values: readonly number[]): boolean {
  if (values.length < 2) return false;
  let up = 0;
  for (let at = 1; at < values.length; at++) if ((values[at] ?? 0) - (values[at - 1] ?? 0) === 1) up++;
  return up >= (values.length - 1) * 0.8;
}

/** No paper is numbered by parts of a figure. */
const hasParts = ({ figures, numbers, filled }: Evidence): boolean =>
  numbers * 2 > filled && [...figures].some((figure) => !Number.isNaN(figure) && !Number.isInteger(figure));

/** 1, 2, 3 … from the first line on. */
const numbersLines = ({ figures }: Evidence): boolean => {
  const { values } = figuresIn(figures);
  return values[0] === 1 && running(values);
};

/** Small figures again and again: so many to each, not which. */
const countsFew = ({ figures, filled }: Evidence): boolean => {
  const { values, distinct } = figuresIn(figures);
  return (
    filled >= 4 && values.length === filled && distinct * 2 <= filled && values.every((value) => value < 10)
  );
};

/** 1, 2, 1, 1, 2, 3: the windows of each room in turn. */
const numbersAnew = ({ figures }: Evidence): boolean =>
  figuresIn(figures).values.every((value, at, all) => value === 1 || value === (all[at - 1] ?? 0) + 1);

const saysRooms = ({ heading }: Evidence): boolean =>
  heading.words.some(({ stands }) => stands.some(({ idea }) => idea === 'rooms'));

const filledCells = ({ cells }: Evidence): readonly Cell[] => cells.filter((cell) => cell !== null);

/** The share of filled cells that a reader of words understands. */
function understood(evidence: Evidence, reads: (text: string) => unknown): number {
  const cells = filledCells(evidence);
  const read = cells.filter((cell) => typeof cell === 'string' && reads(cell) !== undefined).length;
  return cells.length === 0 ? 0 : read / cells.length;
}

const DRAWN_BY =
  /^(?:cord|corded|cord loop|loop|chain|wand|baton|hand|hand drawn|by hand|motor|motori[sz]ed|electric|cordless|none)$/i;
const choiceReader = (key: MeaningKey): ((text: string) => unknown) => {
  switch (key) {
    case 'heading':
      return headingOfText;
    case 'draw':
      return (text) => drawOfText(text) ?? (treatmentOf(text).oneWay ? 'one way' : undefined);
    case 'lining':
      return liningOfText;
    case 'measuredTo':
      return measuredOfText;
    case 'floorFinish':
      return floorOfText;
    case 'match':
      return matchOfText;
    case 'mount':
      return mountOf;
    case 'railroaded':
      return (text) => yesOrNo(text) ?? directionOf(text);
    case 'drawnBy':
      return (text) => (DRAWN_BY.test(text) ? text : undefined);
    default:
      return yesOrNo;
  }
};

const SAID_OUTRIGHT = 0.9;
const MADE: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['heading', 'lining']);
const UNKNOWN_WORDS = -0.3;

function fitChoice(key: MeaningKey, evidence: Evidence): number {
  if (evidence.filled === 0) return -0.05;
  const two = key === 'draw' && writesTwoForPair(evidence.cells);
  const known = two
    ? filledCells(evidence).filter((cell) => isTwo(cell) || drawOfText(String(cell)) !== undefined).length /
      evidence.filled
    : understood(evidence, choiceReader(key));
  if (
    key === 'draw' &&
    known >= 0.2 &&
    evidence.texts === evidence.filled &&
    understood(evidence, headingOfText) > 0.5
  )
    return -0.3;
  if (known >= 0.45) return 0.08 - (1 - known) * 0.3;
  if (known === 0 && evidence.numbers > 0 && figuresIn(evidence.figures).values.length === evidence.filled)
    return NOT_ONE;
  // A heading that says it outright is believed where its words are not known here.
  const outright =
    MADE.has(key) && saidFor(evidence, key) >= SAID_OUTRIGHT && evidence.texts >= evidence.filled * 0.8;
  return outright ? UNKNOWN_WORDS : NEVER;
}

/** A tick names nobody and nothing. */
const NAMES: ReadonlySet<MeaningKey> = new Set<MeaningKey>(['order', 'job', 'customer', 'fabric', 'room']);

/** “Unit” over “yd” and “pr” says what a price is by, over figures it is one. */
const saysWhatBy = (evidence: Evidence): boolean =>
  saidFor(evidence, 'unitPrice') >= 0.6 &&
  (evidence.texts * 2 < evidence.filled || understood(evidence, basisOf) >= 0.5);

/** How well cells fit the name of a place, a room or an interlining; nothing where they tell nothing. */
function fitNamed(key: MeaningKey, evidence: Evidence): number {
  switch (key) {
    case 'place':
      return understood(evidence, yesOrNo) > 0.5 || saysWhatBy(evidence) ? NEVER : 0;
    case 'interlining':
      return evidence.texts < evidence.filled * 0.5 ? NEVER : 0;
    case 'mark':
      return countsFew(evidence) && !numbersAnew(evidence) ? -0.6 : 0;
    case 'room':
      // “Rms” over figures alone counts them.
      if (countsFew(evidence) || countedInWords(evidence)) return -0.6;
      return evidence.numbers === evidence.filled && saysRooms(evidence) ? -0.4 : 0;
    default:
      return 0;
  }
}

/** What only words name. */
const IN_WORDS: ReadonlySet<MeaningKey> = new Set<MeaningKey>([
  'fabric',
  'customer',
  'job',
  'remarks',
  'color',
]);

function fitWords(key: MeaningKey, evidence: Evidence): number {
  if (evidence.texts < evidence.filled * 0.5) return NEVER;
  if ((key === 'job' || key === 'customer') && numbered(evidence) >= 0.8) return -0.3;
  const lined = key === 'fabric' ? understood(evidence, headingOfText) : 0;
  return lined > 0.6 ? -0.4 : 0;
}

function fitOrder(evidence: Evidence): number {
  if (hasParts(evidence)) return NEVER;
  if (numbersLines(evidence)) return -0.4;
  const { filled, texts, numbers } = evidence;
  return (texts + numbers === filled ? 0 : -0.1) + (numbered(evidence) >= 0.8 ? 0.1 : 0);
}

function fitItem(evidence: Evidence): number {
  if (evidence.texts < evidence.filled * 0.6) return NEVER;
  return understood(evidence, goodsOf) >= 0.5 ? 0.35 : -0.1;
}

const saysPair = (evidence: Evidence): boolean =>
  filledCells(evidence).some((cell) => typeof cell === 'string' && drawOfText(cell) === 'pair');

function fitText(key: MeaningKey, evidence: Evidence): number {
  const { filled, days } = evidence;
  if (filled === 0) return -0.05;
  if (days > filled * 0.5) return NEVER;
  if (NAMES.has(key) && understood(evidence, yesOrNo) > 0.5) return NEVER;
  if (IN_WORDS.has(key)) return fitWords(key, evidence);
  if (key === 'order') return fitOrder(evidence);
  if (key === 'item') return fitItem(evidence);
  if (key === 'control' && saysPair(evidence)) return -0.5;
  return fitNamed(key, evidence);
}

/** “wk 11”, “w/c 4 Mar”, “Mon am”: a day of work, not of an order. */
const WEEK =
  /^(?:w(?:ee)?k\.? ?(?:no\.? ?)?\d|w\/[bce]\b|(?:mon|tues?|wed|thurs?|fri|sat|sun)[a-z]*\b|asap\b)/i;

function fitDate(evidence: Evidence, week = false): number {
  if (evidence.filled === 0) return -0.05;
  const days = filledCells(evidence).filter(
    (cell) =>
      isDay(cell) ||
      dayOf(cell, 'day first') !== undefined ||
      dayOf(cell, 'month first') !== undefined ||
      (week && typeof cell === 'string' && WEEK.test(cell)),
  );
  const bare = days.filter((cell) => typeof cell === 'number' && cell < 20_000).length;
  const known = (days.length - bare) / evidence.filled;
  return known < 0.5 ? NEVER : 0.1;
}

function fitMoney(evidence: Evidence): number {
  const read = filledCells(evidence).filter((cell) => moneyOf(cell) !== undefined).length;
  if (evidence.filled === 0) return -0.05;
  if (read === 0 && evidence.filled > 1) return NOT_ONE;
  if (read < evidence.filled * 0.5) return NEVER;
  // Small whole figures that no sign calls money are rather counts.
  const { values } = figuresIn(evidence.figures);
  const small = share(values, (value) => value <= 60 && Number.isInteger(value));
  return !evidence.heading.money && values.length >= 4 && small > 0.95 ? -0.4 : 0;
}

function fitRatio(evidence: Evidence): number {
  const read = filledCells(evidence).filter((cell) => fullnessOf(cell) !== undefined).length;
  return evidence.filled > 0 && read < evidence.filled * 0.6 ? NEVER : 0.03;
}

function fitAny(key: MeaningKey, evidence: Evidence): number {
  // Days under “Rec’d” are no state, nor are words under “Space” a distance.
  if (key === 'status' && fitDate(evidence) > 0) return NEVER;
  if (key === 'space' && evidence.texts > evidence.numbers) return NEVER;
  return USUAL_INCHES[key] === undefined ? 0 : fitSmall(key, evidence);
}

/** How well a column's cells fit a meaning. */
export function fitOf(key: MeaningKey, evidence: Evidence): number {
  switch (holdsOf(key)) {
    case 'length':
      return fitLength(key, evidence);
    case 'yardage':
    case 'count':
      return fitFigure(key, evidence);
    case 'money':
      return fitMoney(evidence);
    case 'weight':
      return fitFigure(key, evidence);
    case 'ratio':
      return fitRatio(evidence);
    case 'choice':
      return fitChoice(key, evidence);
    case 'text':
      return fitText(key, evidence);
    case 'date':
      return fitDate(evidence, key === 'otherDate');
    case 'any':
      return fitAny(key, evidence);
  }
}

/** Hems and projections may be said in words; where they are figures they are small. */
function fitSmall(key: MeaningKey, { inches, filled }: Evidence): number {
  const { values } = figuresIn(inches);
  const [least, most] = USUAL_INCHES[key] ?? [0, 500];
  if (values.length < filled * 0.5) return 0;
  return share(values, (value) => value >= least && value <= most) < 0.7 ? NEVER : 0;
}

/** Pairs and single panels one under the other, and nothing else. */
const drawnIn = (evidence: Evidence): boolean => {
  const texts = filledCells(evidence).filter((cell) => typeof cell === 'string');
  const draws = texts.map(drawOfText);
  return texts.length === evidence.filled && !draws.includes(undefined) && new Set(draws).size > 1;
};

function shownDraw(evidence: Evidence): number {
  if (!saysPair(evidence) || understood(evidence, drawOfText) < 0.8) return 0;
  if (saidFor(evidence, 'draw') >= 0.3) return 0.8;
  return drawnIn(evidence) ? 0.68 : 0.58;
}

/** “pnl”, “yd”, “bay”: what a price is by. */
const basisOf = (text: string): string | undefined =>
  /^(?:per )?\/?(?:wd|width|w|pnl|panel|pr|pair|yd|yard|m|bay|ea|each|win|window|set|drop|cut|lot|ft)s?\.?$/i.test(
    text,
  )
    ? text
    : undefined;

/** “11.5yds”, “3,2 m”: cloth, whatever heads it. */
const clothOf = (text: string): string | undefined =>
  /^(?:y|m$|mt|me)/i.test(LENGTH_UNIT.exec(text)?.[1] ?? '') ? text : undefined;
const holdsCloth = (evidence: Evidence): boolean =>
  understood(evidence, clothOf) >= 0.8 && saidFor(evidence, 'liningYardage') < 0.6;

/** What a rod is fixed to: a ceiling is neither wall nor recess. */
const fixedTo = (text: string): string | undefined =>
  mountOf(text) ??
  (/^(?:to )?(?:the )?(?:ceiling|clg|top|soffit)(?: fix\w*)?$/i.test(text) ? text : undefined);

const showsMount = (evidence: Evidence): boolean =>
  understood(evidence, mountOf) >= 0.5 && understood(evidence, fixedTo) >= 0.9;

/** Whether some cells say a thing outright, and nearly all may. */
function says(evidence: Evidence, outright: RegExp, reads: (text: string) => unknown, most = 0): boolean {
  const told = filledCells(evidence).filter((cell) => typeof cell === 'string' && outright.test(cell));
  return told.length > evidence.filled * most && understood(evidence, reads) >= 0.8;
}

/** Nothing but bolt widths under a heading that says nothing known. */
function showsBolts({ heading, inches }: Evidence): boolean {
  const { values, distinct } = figuresIn(inches);
  const mute = heading.words.every(({ stands }) => stands.length === 0);
  return mute && values.length >= 4 && distinct <= 4 && share(values, isBolt) >= 0.95;
}

/** Headings one under the other, but for goods of another kind among them. */
function showsHeadings(evidence: Evidence): boolean {
  const own = filledCells(evidence).filter(
    (cell) => typeof cell !== 'string' || goodsOf(cell) !== 'other goods',
  );
  const headed = own.filter((cell) => typeof cell === 'string' && headingOfText(cell) !== undefined);
  return headed.length >= 2 && headed.length >= own.length * 0.8;
}

const showsTurned = (evidence: Evidence): boolean =>
  filledCells(evidence).some((cell) => typeof cell === 'string' && isTurned(cell)) &&
  understood(evidence, directionOf) >= 0.8;

const DAY_OR_CLOTH: readonly (readonly [MeaningKey, number, (evidence: Evidence) => boolean])[] = [
  [
    'date',
    0.56,
    (evidence) => fitDate(evidence) > 0 && evidence.days + evidence.texts > evidence.filled * 0.6,
  ],
  ['fabricWidth', 0.52, showsBolts],
  ['yardage', 0.66, holdsCloth],
];
/** What words show, each as strongly as said. */
const WORDS: readonly (readonly [MeaningKey, number, (evidence: Evidence) => boolean])[] = [
  ['railroaded', 0.6, showsTurned],
  ['mount', 0.62, showsMount],
  ['basis', 0.86, (evidence) => understood(evidence, basisOf) === 1],
  ['item', 0.55, (evidence) => understood(evidence, goodsOf) >= 0.6],
  ['floorFinish', 0.62, (evidence) => says(evidence, /kiss|break|puddle|clear|float/i, floorOfText)],
  ['measuredTo', 0.62, (evidence) => says(evidence, /ring|ceiling|clg|rod|track/i, measuredOfText, 0.7)],
];

/** Meanings the cells alone show, whatever the heading says: “pinch, grommet, pinch”. */
export function shownByCells(evidence: Evidence): Map<MeaningKey, number> {
  const found = new Map<MeaningKey, number>();
  if (evidence.filled < 2) return found;
  for (const [key, score, shows] of DAY_OR_CLOTH) if (shows(evidence)) found.set(key, score);
  if (evidence.texts < evidence.filled * 0.8) return found;
  // A treatment says a draw and a lining too: these are only shown where it says no heading.
  if (showsHeadings(evidence)) found.set('heading', 0.62);
  else {
    const drawn = shownDraw(evidence);
    if (drawn > 0) found.set('draw', drawn);
    if (says(evidence, /lined|lining|black ?-?out|b\/?o\b/i, liningOfText)) found.set('lining', 0.56);
  }
  for (const [key, score, shows] of WORDS) if (shows(evidence)) found.set(key, score);
  if (found.has('measuredTo')) found.delete('item');
  return found;
}
export { NEVER, NOT_ONE };
