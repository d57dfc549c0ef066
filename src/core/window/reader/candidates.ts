/** What each column may mean, and how much its heading, its cells and its neighbours speak for each. */
import type { Evidence } from './evidence';
import { shownByCells, fitOf, NEVER } from './fit';
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

const bestSaid = (evidence: Evidence | undefined): MeaningKey | undefined => {
  let best: MeaningKey | undefined;
  let most = 0.5;
  for (const [key, said] of evidence?.said ?? []) if (said > most) [best, most] = [key, said];
  return best;
};

const onlySays = (evidence: Evidence, ...ideas: readonly string[]): boolean =>
  evidence.heading.words.length > 0 &&
  evidence.heading.words.every(
    (word) => word.weight < 0.3 || word.stands.some(({ idea }) => ideas.includes(idea)),
  );

/** Cells that do not fit weigh so much against a heading in our own words. */
const OWN_WORDS = -0.4;
const ENOUGH_CELLS = 3;
/** The second of two columns headed alike. */
const SECOND = 0.12;

const WIDTHS_OF_WINDOWS: readonly MeaningKey[] = ['openingWidth', 'rodWidth', 'finishedWidth'];
/** A bare width with no cloth beside it. */
const OF_NO_CLOTH = -0.25;

/** The only width of a table is its windows’, whatever bolts are as wide. */
const onlyWidth = (anywhere: (wanted: MeaningKey, least?: number) => boolean): number =>
  WIDTHS_OF_WINDOWS.some((one) => anywhere(one, 0.6)) ? 0 : OF_NO_CLOTH;

const besideLining = (before: Evidence | undefined): number =>
  bestSaid(before) === 'lining' ? 0.3 : OF_NO_CLOTH;

/** What stands beside a column speaks for some of its meanings. */
function beside(key: MeaningKey, at: number, all: readonly Evidence[]): number {
  const own = all[at] as Evidence;
  const [before, after] = [all[at - 1], all[at + 1]];
  const anywhere = (wanted: MeaningKey, least = 0.8): boolean =>
    all.some((one) => one !== own && (one.said.get(wanted) ?? 0) >= least && fitOf(wanted, one) > -0.5);
  if (onlySays(own, 'width', 'widths')) {
    if (key === 'fabricWidth') {
      if (bestSaid(before) === 'fabric' && (before?.texts ?? 0) > 0) return 0.3;
      if (bestSaid(after) === 'verticalRepeat') return 0.25;
    }
    if (key === 'liningWidth') return besideLining(before);
    if (key === 'fabricWidth') return onlyWidth(anywhere);
    if (key === 'openingWidth') {
      if (anywhere('measured') || anywhere('leftExtension')) return 0.14;
      if (anywhere('rodWidth')) return 0.1;
    }
    if (key === 'rodWidth' && anywhere('openingWidth', 0.85)) return 0.12;
    if (key === 'finishedWidth' && anywhere('rodWidth', 0.85) && anywhere('openingWidth', 0.85)) return 0.12;
  }
  const side = (other: Evidence | undefined, wanted: MeaningKey): number => other?.said.get(wanted) ?? 0;
  if (key === 'leftExtension' && side(after, 'rightExtension') > 0.5) return 0.1;
  if (key === 'rightExtension' && side(before, 'leftExtension') > 0.5) return 0.1;
  if (key === 'measuredRight' || key === 'measuredCentre')
    return side(before, 'measured') + side(before, 'measuredCentre') > 0.5 ? 0.04 : -0.04;
  // Nearly every table says where its windows are.
  if (key === 'room' && !anywhere('room', 0.62)) return 0.16;
  // A number said once for several lines is an order’s.
  if (key === 'order' && onlySays(own, 'number') && own.filled < own.cells.length * 0.75) return 0.3;
  if (key === 'storey' && own.numbers + own.texts > 0) return 0;
  return 0;
}

/** “Ht R” is no price in rand. */
const SIGN = /[$€£¥]/;

/** The score once what a figure is for, and whether it is money, have been minded. */
function withPer(key: MeaningKey, before: number, fit: number, said: number, own: Evidence): number {
  const { per, money, unit } = own.heading;
  let score = before;
  const holds = holdsOf(key);
  if (unit !== undefined && unit !== 'm' && holds === 'money') score -= 0.6;
  // What is headed with a sign of money is no size.
  if (holds === 'length' && SIGN.test(own.text)) score -= 0.6;
  if (key === 'widths' && (per === 'panel' || per === 'window') && said >= 0.4) score += 0.3;
  if (key === 'yardsEach') return score - (per === 'window' ? 0.02 : 0.6);
  if (key === 'amountEach') return per === 'window' || per === 'pair' ? score : score - 0.6;
  if (per === undefined) return score;
  const made = per === 'width' || per === 'panel';
  if (per === 'window' && key === 'yardage') score -= 0.06;
  if (per === 'yard' && (key === 'amount' || key === 'total')) score -= 0.5;
  if (made && key === 'labor') score -= 0.4;
  if (money && key === 'unitPrice') return Math.max(score, (per === 'yard' ? 0.97 : 0.88) + fit);
  return money && made && key === 'rate' ? Math.max(score, 0.9 + fit) : score;
}

function valued(key: MeaningKey, said: number, at: number, all: readonly Evidence[]): number {
  const own = all[at] as Evidence;
  const fits = fitOf(key, own);
  // A heading of our own words is believed before its cells, which are then said to be unreadable.
  if (fits <= NEVER && (said < 0.99 || !isOurs(key))) return NEVER;
  // A cell or two that are unusual say little against a heading.
  const few = fits < 0 ? Math.min(1, own.filled / ENOUGH_CELLS) : 1;
  const fit = fits <= NEVER ? OWN_WORDS : fits * few;
  let score = said + fit + beside(key, at, all);
  if (said >= 0.9 && all.slice(0, at).some(({ text }) => text.toLowerCase() === own.text.toLowerCase()))
    score -= SECOND;
  return withPer(key, score, fit, said, own);
}

/** The candidates of every column, the likeliest first; the last resort is none. */
export function candidatesOf(all: readonly Evidence[]): Candidate[][] {
  return all.map((own, at) => {
    if (own.addsTo !== undefined) return [{ key: 'fraction', score: 1, said: 1 }];
    const list: Candidate[] = [];
    const keys = new Map(own.said);
    const { per, money } = own.heading;
    if (per === 'yard') keys.set('unitPrice', Math.max(keys.get('unitPrice') ?? 0, 0.6));
    if (money && (per === 'width' || per === 'panel')) keys.set('rate', keys.get('rate') ?? 0.5);
    if ((per === 'width' || per === 'panel') && (keys.get('labor') ?? 0) >= 0.6) keys.set('rate', 0.9);
    for (const [key, said] of keys) {
      const score = valued(key, said, at, all);
      if (score > 0.2) list.push({ key, score, said });
    }
    for (const [key, score] of shownByCells(own)) {
      const known = list.find((one) => one.key === key);
      if (known !== undefined) list.splice(list.indexOf(known), 1);
      list.push({ key, score: Math.max(score, (known?.score ?? 0) + 0.1), said: known?.said ?? 0 });
    }
    // An item column whose texts are treatments is read for them.
    const item = list.find(({ key }) => key === 'item');
    const headed = list.findIndex(({ key }) => key === 'heading');
    const drawn = list.find(({ key }) => key === 'draw');
    const rival = Math.max(item?.score ?? 0, (drawn?.said ?? 0) > 0.6 ? (drawn?.score ?? 0) : 0);
    if (rival > 0 && headed >= 0 && shownByCells(own).has('heading'))
      list[headed] = {
        ...(list[headed] as Candidate),
        score: Math.max(list[headed]?.score ?? 0, rival + 0.12),
      };
    list.sort((a, b) => b.score - a.score);
    const none = own.text === '' ? NONE_UNNAMED : NONE;
    return [...list.slice(0, MOST_CANDIDATES), { key: undefined, score: none, said: 0 }];
  });
}
