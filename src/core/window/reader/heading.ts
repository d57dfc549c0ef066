/** What a heading says: its words with the ideas they stand for, a unit, what one figure is for, money. */
import {
  ideasOf,
  isFiller,
  isSpelled,
  letterBefore,
  partsOfWord,
  runTogether,
  type Stands,
} from './vocabulary';

export type UnitWord = 'in' | 'ft' | 'yd' | 'mm' | 'cm' | 'm';
/** What one figure of a column is for. */
export type Per = 'panel' | 'window' | 'width' | 'pair' | 'yard';

const UNIT_WORDS = new Map<string, UnitWord>(
  (
    [
      ['in', "in ins inch inches \" ″ ” '' pulgadas"],
      ['ft', "ft feet foot '"],
      ['yd', 'yd yds yard yards'],
      ['mm', 'mm mms millimetre millimetres millimeter millimeters'],
      ['cm', 'cm cms centimetre centimetres centimeter centimeters'],
      ['m', 'm mtr mtrs metre metres meter meters'],
    ] as const
  ).flatMap(([unit, words]) => words.split(' ').map((word): [string, UnitWord] => [word, unit])),
);
export const unitWord = (text: string): UnitWord | undefined =>
  UNIT_WORDS.get(
    text
      .trim()
      .toLowerCase()
      .replace(/^["″”]$/, '"')
      .replace(/[.,]$/, ''),
  );

const PER_WORDS = new Map<string, Per>(
  (
    [
      ['panel', 'panel pnl pan panels curtain curtains curt curts leaf side pnls hand'],
      ['window', 'window windows win wdw each ea opening opg opngs unit one rm room rooms rms bay suite'],
      ['width', 'width widths w wd wds wdth wdths drop drops cut cuts strip length'],
      ['pair', 'pair pairs pr set sets prs'],
      ['yard', 'yd yard yds yards m mtr metre meter metres meters y lm lin'],
    ] as const
  ).flatMap(([per, words]) => words.split(' ').map((word): [string, Per] => [word, per])),
);

export const perWord = (text: string): Per | undefined => PER_WORDS.get(text.toLowerCase());

export interface Word {
  readonly text: string;
  readonly stands: readonly Stands[];
  /** How much it counts where nothing of a meaning answers to it. */
  readonly weight: number;
}

export interface HeadingRead {
  readonly words: readonly Word[];
  readonly unit: UnitWord | undefined;
  readonly per: Per | undefined;
  readonly money: boolean;
}

/** Invisible signs and odd spaces out, white space to one blank. */
export const tidy = (text: string): string =>
  text
    .replace(/[\u200B-\u200F\u202A-\u202E\u2060-\u2069\uFEFF\u00AD]/g, '')
    .replace(/[\s\u00A0_]+/g, ' ')
    .trim();

const PER =
  /(?:^\/(?=[a-z])|(?<=[$€£¥]\s?|\b(?:price|cost|rate|labou?r|making|charge|fee|yds|widths|w)\s)\s*\/\s*|(?<=\S)\/(?=\S)|\bper\b|\bp(?=\/)|(?<=[$€£¥] ?)\ba\b|\bby the\b)\s*(?:each\s+)?([a-z]+)\b\.?/g;

function wordOf(text: string, share: number, alone: boolean): readonly Word[] {
  const apart = runTogether(text);
  const own = ideasOf(text);
  // “FL” alone is a finished length; “fl to rod” begins at the floor.
  if (apart !== undefined && (own.length === 0 || alone)) {
    return (apart[0] ?? '').split(' ').map((part) => ({
      text: part,
      stands: apart.flatMap((reading) =>
        ideasOf(reading.split(' ')[(apart[0] ?? '').split(' ').indexOf(part)] ?? part),
      ),
      weight: share,
    }));
  }
  const parts = isSpelled(text) ? undefined : partsOfWord(text);
  if (parts !== undefined) return parts.flatMap((part) => wordOf(part, share, false));
  const lettered = isSpelled(text) ? undefined : letterBefore(text);
  if (lettered !== undefined) {
    const [stands, noun] = lettered;
    return [{ text: text[0] ?? '', stands, weight: share }, ...wordOf(noun, share, false)];
  }
  const filler = isFiller(text);
  return [{ text, stands: own, weight: (filler ? 0.12 : own.length === 0 ? 0.55 : 1) * share }];
}

/** “V.R.”, “O/L” and “O/lap” are letters run together where they then say something. */
const joined = (text: string): string =>
  text
    .replace(/\b([a-z])\/([a-z]{2,})\b/g, (all, one: string, word: string) =>
      isSpelled(one + word) ? ` ${one}${word} ` : all,
    )
    .replace(/\b([a-z])(?:\.|\/)([a-z])\b(?:\.|\/)?(?![a-z])/g, (all, one: string, two: string) =>
      runTogether(one + two) !== undefined || ideasOf(one + two).length > 0 ? ` ${one}${two} ` : all,
    );

/** A heading whose figures are money, whether it says so or the signs in its cells do. */
export const withMoney = (heading: HeadingRead, share = 1): HeadingRead =>
  heading.money
    ? heading
    : {
        ...heading,
        words: [...heading.words, { text: '$', stands: [{ idea: 'money', weight: 1 }], weight: 0.6 * share }],
        money: true,
      };

const MOST_KEPT = 2_000;
const kept = new Map<string, HeadingRead>();
/** Reads one heading. `share` is how much its words count: a group's name over several columns counts less. */
export function readHeading(raw: string, share = 1): HeadingRead {
  const known = kept.get(`${share} ${raw}`);
  if (known !== undefined) return known;
  if (kept.size > MOST_KEPT) kept.clear();
  const heading = headingIn(raw, share);
  kept.set(`${share} ${raw}`, heading);
  return heading;
}

/** “O/W” alone is no opening by the width. */
const bothLetters = (all: string, one: string, two: string): string =>
  runTogether(one + two) === undefined ? all : one + two;

/** Written forms that stand for words, spelled out. */
const spelledOut = (raw: string): string =>
  tidy(raw)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z])([A-Z])|(?<=[A-Z])(?=[A-Z][a-z]{2})/g, '$1 $2')
    .toLowerCase()
    .replace(/(?<=[a-z])['’‘](?=[a-z])/g, '')
    .replace(/['’]s\b/g, '')
    .replace(/\bmade[- ]?up\b/g, 'finished')
    .replace(/\bmak(?:e|ing)[- ]up\b/g, 'making')
    .replace(/\bo\.?\/?a\b\.?/g, 'overall')
    .replace(/\bf\/f\b|\bface to face\b/g, 'edge edge')
    .replace(/\bl\/m\b/g, 'metres')
    .replace(/\b(?:bill|billed|sold|invoice) to\b/g, 'customer')
    .replace(/\bdown to\b/g, 'to')
    .replace(/\ball[- ]in\b|^to (?:the )?(?:client|customer)$/g, 'total')
    .replace(/\b(?:1|one)[- ]off\b/g, 'each')
    .replace(/^(?:rod|pole|track)s?,? (?:etc|& c)\b\.?/, 'hardware')
    .replace(/^net (?:per )?(?:(yd|yard)|m|mtr|metre)\.?$/, (_all, yard) =>
      yard === undefined ? '$/m' : '$/yd',
    )
    .replace(/\bp\.? ?m\b\.?$/, '/m')
    .replace(/\b(?:1|2|one|two)[- ]?way\b/g, 'direction')
    .replace(/\bi\/s\b/g, 'inside')
    .replace(/\bo\/s\b/g, 'outside')
    .replace(/^([a-z])[./]([a-z])\.?$/, bothLetters)
    .replace(/^(?:@|for(?: whom)?\??)$/, (all) =>
      all === '@' ? 'atsign' : all.startsWith('for ') ? 'customer' : 'forwhat',
    )
    .replace(/\bb[-/]b\b/, 'bracket bracket')
    .replace(/(?<=[a-z]\.? )cl\.?$/, 'cut length')
    .replace(/^p[./] ?r\.?(?= \(|$)|\bour ref\b/, (all) =>
      all === 'our ref' ? 'order number' : 'pattern repeat',
    );

/** With or without tax: beside other words it says nothing of what a figure is. */
const TAXED =
  /\(?\b(?:ex|excl?|excluding|inc|incl|including|plus|net of)\.? ?(?:vat|gst|tax|hst|btw|tva|mwst)\b\)?/i;
/** “Price ex VAT” is a price; “Total ex VAT” tells one total from another. */
const withoutTax = (text: string): string =>
  /\b(?:price|cost|charge|rate|making|fabric|cloth|amount)\b|\bea(?:ch)?\b/.test(text)
    ? text.replace(TAXED, ' ')
    : text;

/** What one figure is for where “each” or brackets say it: “£ each pr”, “yds ea pnl”, “W (pr)”. */
function pieceIn(heading: string, raw: string): Part<Per> {
  let [per, text]: [Per | undefined, string] = [undefined, heading];
  const several =
    /\b(?:ea|each|an?|in(?=\s+p))\b\.?\s+(pr|pair|pnl|panel|curt|curtain|width|wd|window|win|rm|room)\b/.exec(
      text,
    );
  if (several !== null) {
    per ??= PER_WORDS.get(several[1] ?? '');
    text = text.replace(several[0], ' ');
  }
  const one = /\b(ea|each)\b\.?/.exec(text);
  if (one !== null) {
    per ??= 'window';
    text = text.replace(/\b(ea|each)\b\.?/g, ' ');
  }
  const paren = /\b(pair|panel|pr|pnl)\b/.exec(raw.toLowerCase().match(/\(([^)]*)\)/)?.[1] ?? '');
  if (paren !== null) {
    per ??= PER_WORDS.get(paren[1] ?? '');
    text = text.replace(/\b(per |a |of )?(pair|panel|pr|pnl)\b/, ' ');
  }
  return { found: per, text };
}

interface Part<T> {
  readonly found: T | undefined;
  /** What is left to read. */
  readonly text: string;
}

/** A unit in brackets, or a sign of inches at the end. */
function unitIn(heading: string): Part<UnitWord> {
  let found: UnitWord | undefined;
  const text = heading
    .replace(/[([{]\s*([^)\]}]*?)\s*[)\]}]/g, (_all, inside: string) => {
      const unit = unitWord(inside);
      found = unit ?? found;
      return unit === undefined ? ` ${inside} ` : ' ';
    })
    .replace(/(?<=[a-z. ])["″”]\s*$/, () => {
      found ??= 'in';
      return ' ';
    });
  return { found, text };
}

const MONEY =
  /[$€£¥]|\(r\)|\b(usd|gbp|cad|aud|nzd|zar|eur)\b|^r\/|\b(?:price|cost|amount|total|value|rate|charge|making) r$/;
const SIDE = /\b(?:an?|ea|each|one|per|to(?: a)?|both)\.? sides?\b/;
const PRICED_PIECE = /[$€£¥]\s*(pnls?|panels?|pr|pairs?|wdw|win|windows?|sets?|drops?|widths?)\b/;

/** What one figure is for: by “per” or a slash, by a side, by a piece behind a sign of money, by “each”. */
function perIn(heading: string, raw: string, money: boolean): Part<Per> {
  let per: Per | undefined;
  let text = heading.replace(/^r\/(?=m|mtr|metre)/, '$/').replace(PER, (all, what: string) => {
    const found = PER_WORDS.get(what);
    if (found === undefined) return all;
    per = found;
    return ' ';
  });
  const sided = SIDE.exec(text);
  if (sided !== null) {
    per ??= 'panel';
    text = text.replace(sided[0], ' ');
  }
  const piece = money ? (PRICED_PIECE.exec(text)?.[1] ?? '') : '';
  const priced = PER_WORDS.get(piece);
  if (priced !== undefined) {
    per ??= priced;
    text = text.replace(piece, ' ');
  }
  const each = pieceIn(text, raw);
  return { found: per ?? each.found, text: each.text };
}

/** A unit as the last word. Cloth is bought by the yard or metre: there the unit is the noun and stays a word. */
function unitBehind(parts: readonly string[]): { unit: UnitWord | undefined; parts: readonly string[] } {
  const last = parts.at(-1) ?? '';
  const unit = unitWord(last);
  if (unit === undefined || /^(?:yd|yard)/.test(last)) return { unit: undefined, parts };
  // A row of units below the headings has nothing else.
  if (parts.length === 1)
    return /^(?:m$|mt|met)/.test(last) ? { unit: undefined, parts } : { unit, parts: [] };
  return { unit, parts: unit === 'm' ? parts : parts.slice(0, -1) };
}

function headingIn(raw: string, share: number): HeadingRead {
  const only = unitWord(tidy(raw).replace(/[()[\]]/g, ''));
  if (only !== undefined && only !== 'm' && only !== 'yd')
    return { words: [], unit: only, per: undefined, money: false };
  const bracketed = unitIn(withoutTax(spelledOut(raw)));
  const money = MONEY.test(bracketed.text);
  const { found: per, text } = perIn(bracketed.text, raw, money);
  const all = joined(text)
    .replace(/#s?/g, ' number ')
    .replace(/@\s*[\d.,]+/g, ' ')
    .split(/[^a-z0-9½¼⅛]+/)
    .filter((word) => word !== '' && !/^\d+$/.test(word));
  const { unit, parts } =
    bracketed.found === undefined ? unitBehind(all) : { unit: bracketed.found, parts: all };
  const words = parts.flatMap((word) => wordOf(word, share, parts.length === 1));
  // “Cloth (m)” is cloth by the metre, where its figures fit.
  if (unit === 'm' || unit === 'yd')
    words.push({ text: unit, stands: [{ idea: 'yards', weight: 0.95 }], weight: 0.05 * share });
  const plain = { words, unit, per, money: false };
  return money ? withMoney(plain, share) : plain;
}

const onlyTaxed = (row: string): boolean => row.replace(TAXED, '').trim() === '';

const isMetres = (row: string): boolean => unitWord(row.replace(/[()[\]]/g, '')) === 'm';
/** A row that says metres below another: of cloth they are its yardage. */
const METRES: HeadingRead = {
  words: [{ text: 'm', stands: [{ idea: 'yards', weight: 0.95 }], weight: 0.05 }],
  unit: 'm',
  per: undefined,
  money: false,
};

/** “$ per” over “Drop” is one sentence. */
const runOn = (rows: readonly string[]): readonly string[] =>
  rows.reduce<string[]>((joined, row) => {
    const above = joined.at(-1);
    if (above !== undefined && /(?:\b(?:per|for|by)|\/)\s*$/i.test(above))
      joined[joined.length - 1] = `${above} ${row}`;
    else joined.push(row);
    return joined;
  }, []);

/** The lowest row that says more than a unit. */
function lowest(rows: readonly string[]): number {
  let at = rows.length - 1;
  while (at > 0 && unitWord((rows[at] ?? '').replace(/[()[\]]/g, '')) !== undefined) at--;
  return at;
}

/** A heading of several rows, the lowest last: what stands above counts for less. */
export function joinHeadings(rows: readonly string[]): HeadingRead {
  const told = rows.filter((row) => row !== '');
  // Alone the face that a window shows is its rod's; above other headings it is the cloth's.
  if (rows.length === 1 && /^face\.?$/i.test(rows[0] ?? '')) return readHeading('rod face');
  const reads = runOn(told.some((row) => !onlyTaxed(row)) ? told.filter((row) => !onlyTaxed(row)) : told).map(
    (row, at, all) =>
      all.length > 1 && isMetres(row) ? METRES : readHeading(row, at === lowest(all) ? 1 : 0.6),
  );
  const low = reads.at(-1);
  const pick = <T>(wanted: (read: HeadingRead) => T | undefined): T | undefined =>
    reads.reduceRight<T | undefined>((found, read) => found ?? wanted(read), undefined);
  return {
    words: reads.flatMap((read) => read.words),
    unit: pick((read) => read.unit),
    per: pick((read) => read.per),
    money: low?.money === true || reads.some((read) => read.money),
  };
}

/** How well a heading's words say a phrase of ideas, 0 to 1. */
export function saysPhrase(words: readonly Word[], phrase: readonly string[]): number {
  const left = [...words];
  let shared = 0;
  let missing = 0;
  for (const idea of phrase) {
    let best = 0;
    let at = -1;
    for (const [index, word] of left.entries()) {
      const weight = word.stands.find((one) => one.idea === idea)?.weight ?? 0;
      if (weight > best) [best, at] = [weight, index];
    }
    if (at < 0) missing++;
    else {
      shared += best;
      left.splice(at, 1);
    }
  }
  if (shared === 0) return 0;
  // “Breedte (Width)” says one thing twice.
  const again = (word: Word): boolean => word.stands.some(({ idea }) => phrase.includes(idea));
  const over = left.reduce((sum, word) => sum + word.weight * (again(word) ? 0.12 : 1), 0);
  const matched = phrase.length - missing;
  return (shared / matched) * (matched / (matched + missing * 1.5 + over * 0.55));
}
