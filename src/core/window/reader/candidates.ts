/** What each column may mean, and how much its heading, its cells and its neighbours speak for each. */
import { beside } from './beside';
import { ByFigures } from './by-figures';
import { saidFor, type Evidence } from './evidence';
import { countedInWords, shownByCells, fitOf, NEVER, NOT_ONE } from './fit';
import { clothAndWidth } from './values';
import { shareOf } from './means-of';
import type { Per } from './heading';
import { holdsOf, isOurs, type MeaningKey } from './meanings';

export interface Candidate {
  /** Undefined: none that is known here. */
  readonly key: MeaningKey | undefined;
  readonly score: number;
  /** How far the heading's words alone say it. */
  readonly said: number;
}

/** A meaning must speak louder than this not to be left as none. */
const NONE = 0.42;
const NONE_UNNAMED = 0.5;
const MOST_CANDIDATES = 7;

/** Cells that do not fit weigh so much against a heading in our own words. */
const OWN_WORDS = -0.4;
const ENOUGH_CELLS = 3;
/** The second of two columns headed alike. */
const SECOND = 0.07;

/** “Ht R” is no price in rand. */
const SIGN = /[$€£¥]/;

const forWindow = (per: Per | undefined): boolean => per === 'window' || per === 'pair';
/** What a figure for one of several loses where its heading does not say for which. */
const EACH: Partial<Record<MeaningKey, (per: Per | undefined) => number>> = {
  yardsEach: (per) => (per === 'window' ? 0.02 : per === 'pair' ? 0.1 : 0.6),
  widthsOfOne: (per) => (per === 'panel' || per === 'window' ? 0.04 : 0.6),
  amountEach: (per) => (forWindow(per) ? 0 : 0.6),
};

/** What speaks against a meaning where the heading says money, or a unit that money has not. */
function againstMoney(key: MeaningKey, { heading: { unit }, text }: Evidence): number {
  const holds = holdsOf(key);
  if (holds === 'money') return unit !== undefined && unit !== 'm' ? 0.6 : 0;
  // What is headed with a sign of money is no size.
  return holds === 'length' && SIGN.test(text) ? 0.6 : 0;
}

const isMadeBy = (per: Per | undefined): boolean => per === 'width' || per === 'panel' || per === 'pair';

/** What the words “per …” add to a meaning, or take from it. */
function forPer(key: MeaningKey, per: Per): number {
  if (key === 'yardage' && forWindow(per)) return -0.06;
  if (key === 'labor' && isMadeBy(per)) return -0.4;
  return per === 'yard' && (key === 'amount' || key === 'total') ? -0.5 : 0;
}

/** How surely money by a yard, a width or a panel is a price or a rate. */
function asPrice(key: MeaningKey, { heading: { money, per } }: Evidence): number {
  if (!money) return 0;
  if (key === 'unitPrice') return per === 'yard' ? 0.97 : 0.88;
  return key === 'rate' && isMadeBy(per) ? 0.9 : 0;
}

/** The score once what a figure is for, and whether it is money, have been minded. */
function withPer(key: MeaningKey, before: number, fit: number, said: number, own: Evidence): number {
  const { per } = own.heading;
  let score = before - againstMoney(key, own);
  if (key === 'widths' && (per === 'panel' || per === 'window') && said >= 0.3) score += 0.3;
  const each = EACH[key]?.(per);
  if (each !== undefined) return score - each;
  if (per === undefined) return score;
  const price = asPrice(key, own);
  score += forPer(key, per);
  return price === 0 ? score : Math.max(score, price + fit);
}

/** How high an opening is says little of a drop beside a column of finished drops. */
const isOpeningsHeight = (key: MeaningKey, said: number, all: readonly Evidence[]): boolean =>
  key === 'measured' && said < WEAKLY && all.some((one) => saidFor(one, 'finishedDrop') >= 0.9);
const WEAKLY = 0.6;
const UNLIKELY = 0.25;

function valued(key: MeaningKey, said: number, at: number, all: readonly Evidence[]): number {
  const own = all[at] as Evidence;
  const fits = fitOf(key, own);
  // A heading of our own words is believed before its cells, which are then said to be unreadable.
  if (fits <= NOT_ONE || (fits <= NEVER && (said < 0.99 || !isOurs(key)))) return NEVER;
  // A cell or two that are unusual say little against a heading.
  const few = fits < 0 ? Math.min(1, own.filled / ENOUGH_CELLS) : 1;
  const fit = fits <= NEVER ? OWN_WORDS : fits * few;
  let score = said + fit + beside(key, at, all) - (isOpeningsHeight(key, said, all) ? UNLIKELY : 0);
  if (said >= 0.9 && all.slice(0, at).some(({ text }) => text.toLowerCase() === own.text.toLowerCase()))
    score -= SECOND;
  return withPer(key, score, fit, said, own);
}

/** “per”, “Unit”, “by”: what the price beside it is by. */
const BASIS = /(?:^|\| )(?:\$ ?)?(?:\/|per|by|unit|uom|basis|u\/m|price by|per what)\.?$/i;
const BY_NAME = 0.6;
const BY_FIGURES = 0.7;
/** Cells that show a meaning outweigh a heading that says another by so much. */
const OVER = 0.12;
/**
 * Whether the texts of a column are names of cloths: each always with the same bolt width and repeat,
 * some of them again and again.
 */
function namesCloths(own: Evidence, all: readonly Evidence[]): boolean {
  if (own.texts < own.filled * 0.8 || own.filled < 4) return false;
  const facts = all.filter(
    (one) => saidFor(one, 'fabricWidth') >= 0.9 || saidFor(one, 'verticalRepeat') >= 0.9,
  );
  const named = all.some((one) => one !== own && one.texts * 2 > one.filled && saidFor(one, 'fabric') >= 0.7);
  if (facts.length === 0 || named) return false;
  const known = new Map<string, string>();
  let again = 0;
  for (const [row, cell] of own.cells.entries()) {
    if (typeof cell !== 'string') continue;
    const figures = facts.map(({ figures: list }) => String(list[row])).join(' ');
    const before = known.get(cell);
    if (before !== undefined && before !== figures) return false;
    if (before !== undefined) again++;
    known.set(cell, figures);
  }
  return again >= 2 && known.size >= 2 && new Set(known.values()).size >= 2;
}

/** “Karee Weave (140)” again and again. */
const namesWidths = ({ cells, unit }: Evidence): boolean =>
  shareOf(cells, (text) => clothAndWidth(text, unit) !== undefined) >= BY_NAME + BY_NAME / 3;

/** What the heading may say, with what its “per” makes likely. */
function keysSaid(own: Evidence): ReadonlyMap<MeaningKey, number> {
  const keys = new Map(own.said);
  const { per, money } = own.heading;
  const said = (key: MeaningKey): number => keys.get(key) ?? 0;
  const made = isMadeBy(per);
  if (per === 'yard') keys.set('unitPrice', Math.max(said('unitPrice'), 0.6));
  if (money && (per === 'width' || per === 'panel')) keys.set('rate', keys.get('rate') ?? 0.5);
  if ((made || per === 'window') && said('labor') >= 0.6) keys.set('rate', 0.9);
  // By the width or panel a price is as often the making's as the cloth's.
  const price = said('unitPrice');
  if (made && price >= 0.5) keys.set('rate', Math.max(said('rate'), price - 0.02));
  return keys;
}

const ofCloth = ({ heading }: Evidence): boolean =>
  heading.words.some(({ stands }) => stands.some(({ idea }) => idea === 'fabric'));

/** “No.” over twos and fours says neither that it counts windows nor curtains. */
function countsWhat({ heading, figures, filled }: Evidence): boolean {
  const even = [...figures].filter((figure) => figure > 0 && figure % 2 === 0).length;
  return (
    heading.words.length > 0 &&
    heading.words.every(({ stands }) => stands.some(({ idea }) => idea === 'number' || idea === 'piece')) &&
    even * 2 >= filled
  );
}

/** Words without a heading where no other column says where: they name the windows. */
const namesRooms = (own: Evidence, all: readonly Evidence[]): boolean =>
  own.texts >= own.cells.length * 0.8 &&
  new Set(own.cells).size * 2 > own.cells.length &&
  !all.some((one) => saidFor(one, 'room') >= 0.6);

/** A meaning that the cells show counts at least so much, whatever the heading says of it. */
function raise(list: Candidate[], key: MeaningKey, least: number): void {
  const known = list.findIndex((one) => one.key === key);
  const [before] = known < 0 ? [] : list.splice(known, 1);
  list.push({ key, score: Math.max(least, before?.score ?? 0), said: before?.said ?? 0 });
}

const scoreOf = (list: readonly Candidate[], key: MeaningKey): number =>
  list.find((one) => one.key === key)?.score ?? 0;
const best = (list: readonly Candidate[]): number =>
  list.reduce((most, { score }) => Math.max(most, score), 0);

/** What the heading says, each meaning as strongly as its cells and neighbours bear it out. */
function saidByHeading(at: number, all: readonly Evidence[]): Candidate[] {
  const list: Candidate[] = [];
  for (const [key, said] of keysSaid(all[at] as Evidence)) {
    const score = valued(key, said, at, all);
    if (score > 0.2) list.push({ key, score, said });
  }
  return list;
}

/** Raises what the column's cells show, whatever heads them. */
/** Cells that say two things: “2 pr” how many and how they draw, “Karee Weave (140)” a cloth and its width. */
function raiseTwofold(list: Candidate[], own: Evidence, shown: ReadonlyMap<MeaningKey, number>): void {
  if (shown.has('draw') && countedInWords(own)) raise(list, 'draw', best(list) + OVER);
  if (scoreOf(list, 'fabric') >= BY_NAME && namesWidths(own)) raise(list, 'fabric', best(list) + OVER);
}

function raiseShown(list: Candidate[], own: Evidence, all: readonly Evidence[]): void {
  const shown = shownByCells(own);
  // Beside no money “pr” and “pnl” are how a window draws.
  if (!BASIS.test(own.text)) shown.delete('basis');
  for (const [key, score] of shown) raise(list, key, Math.max(score, scoreOf(list, key) + 0.1));
  const mute = list.every(({ key, score }) => score < BY_NAME || key === 'item');
  if ((ofCloth(own) || mute) && namesCloths(own, all))
    raise(list, 'fabric', Math.max(BY_NAME, best(list) + OVER));
  // An item column whose texts are treatments is read for them.
  const drawn = list.find(({ key }) => key === 'draw');
  const rival = Math.max(scoreOf(list, 'item'), (drawn?.said ?? 0) > 0.6 ? (drawn?.score ?? 0) : 0);
  if (rival > 0 && shown.has('heading')) raise(list, 'heading', rival + OVER);
  raiseTwofold(list, own, shown);
  if (own.text === '' && namesRooms(own, all)) raise(list, 'room', BY_NAME);
}

/** The candidates of every column, the likeliest first; the last resort is none. */
export function candidatesOf(all: readonly Evidence[]): Candidate[][] {
  const byFigures = new ByFigures(all);
  const saysDraw = all.some((one) => saidFor(one, 'draw') >= 0.6 || shownByCells(one).has('draw'));
  return all.map((own, at) => {
    if (own.addsTo !== undefined) return [{ key: 'fraction', score: 1, said: 1 }];
    const list = saidByHeading(at, all);
    raiseShown(list, own, all);
    const told = byFigures.told(own);
    if (told !== undefined) raise(list, told, best(list) + OVER);
    // Where nothing says how windows draw, 2 and 4 may be curtains as well.
    if (countsWhat(own) && !saysDraw) raise(list, 'panels', scoreOf(list, 'quantity'));
    for (const key of byFigures.of(at)) raise(list, key, BY_FIGURES);
    list.sort((a, b) => b.score - a.score);
    const none = own.text === '' ? NONE_UNNAMED : NONE;
    return [...list.slice(0, MOST_CANDIDATES), { key: undefined, score: none, said: 0 }];
  });
}
