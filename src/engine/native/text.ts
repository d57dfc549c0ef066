/** Texts: parts of them, where a sign stands, joined and cut. */
import { define, defineIn } from './call';
import { wildcards } from './criteria';
import { formatted } from './format';
import { eachValue, firstOf, rowsIn, stop, stopping } from './ranges';
import { Fault, Grid, NA, numberIn, toText, unproven, VALUE, type Scalar, type Value } from './values';
import type { World } from './world';

type Many = (Value | undefined)[];
const LONGEST = 32_767;
const fit = (text: string): Value => (text.length > LONGEST ? VALUE : text);

define('LEN', 's', (text: string) => text.length);
define('LEFT', 's?n', (text: string, count = 1) => (count < 0 ? VALUE : text.slice(0, Math.trunc(count))));
define('RIGHT', 's?n', (text: string, count = 1) => {
  const whole = Math.trunc(count);
  return whole < 0 ? VALUE : whole === 0 ? '' : text.slice(-whole);
});
define('MID', 'snn', (text: string, from: number, count: number) => {
  const [start, length] = [Math.trunc(from), Math.trunc(count)];
  return start < 1 || length < 0 ? VALUE : text.slice(start - 1, start - 1 + length);
});
define('UPPER', 's', (text: string) => text.toUpperCase());
define('LOWER', 's', (text: string) => text.toLowerCase());
define('PROPER', 's', (text: string) =>
  text.toLowerCase().replace(/\p{L}+/gu, (word) => (word[0] ?? '').toUpperCase() + word.slice(1)),
);
define('TRIM', 's', (text: string) => text.replace(/ +/g, ' ').replace(/^ | $/g, ''));
// eslint-disable-next-line no-control-regex -- exactly these are what CLEAN takes away
define('CLEAN', 's', (text: string) => text.replace(/[\u0000-\u001f]/g, ''));
define('EXACT', 'ss', (one: string, other: string) => one === other);
define('REPT', 'sn', (text: string, times: number) =>
  times < 0 ? VALUE : text.length * Math.trunc(times) > LONGEST ? VALUE : text.repeat(Math.trunc(times)),
);
defineIn('T', 'r', (world: World, given: Value) => {
  const value = firstOf(world, given);
  return value instanceof Fault || typeof value === 'string' ? value : '';
});
define('CONCATENATE', 's*', (...texts: string[]) => fit(texts.join('')));
const allTexts = (world: World, given: Many): string[] => {
  const texts: string[] = [];
  eachValue(world, given, (value) => {
    const text = toText(value);
    texts.push(text instanceof Fault ? stop(text) : text);
  });
  return texts;
};
defineIn(
  'CONCAT',
  'r*',
  stopping((world: World, ...given: Many) =>
    fit(
      allTexts(
        world,
        given.map((one) => (one === null ? '' : one)),
      ).join(''),
    ),
  ),
);
defineIn(
  'TEXTJOIN',
  'rbr*',
  stopping((world: World, between: Value, skip: boolean, ...given: Many) => {
    const signs = rowsIn(world, between).cells.map((one) => {
      const text = toText(one);
      return text instanceof Fault ? stop(text) : text;
    });
    const texts: string[] = [];
    for (const one of given)
      for (const value of rowsIn(world, one, true).cells) {
        const text = toText(value);
        if (text instanceof Fault) return text;
        if (!skip || text !== '') texts.push(text);
      }
    return fit(
      texts.reduce(
        (joined, text, at) => (at === 0 ? text : joined + (signs[(at - 1) % signs.length] ?? '') + text),
        '',
      ),
    );
  }),
);

define('FIND', 'ss?n', (wanted: string, text: string, from = 1) => {
  const start = Math.trunc(from);
  if (start < 1 || start > text.length + (wanted === '' ? 1 : 0)) return VALUE;
  const at = text.indexOf(wanted, start - 1);
  return at === -1 ? VALUE : at + 1;
});
define('SEARCH', 'ss?n', (wanted: string, text: string, from = 1) => {
  const start = Math.trunc(from);
  if (start < 1 || start > text.length + (wanted === '' ? 1 : 0)) return VALUE;
  const pattern = wildcards(wanted);
  if (pattern === undefined) {
    const at = text.toLowerCase().indexOf(wanted.toLowerCase(), start - 1);
    return at === -1 ? VALUE : at + 1;
  }
  const source = pattern.source.replace(/^\^|\$$/g, '');
  const found = new RegExp(source, 'iu').exec(text.slice(start - 1));
  return found === null ? VALUE : found.index + start;
});
define('REPLACE', 'snns', (text: string, from: number, count: number, by: string) => {
  const [start, length] = [Math.trunc(from), Math.trunc(count)];
  return start < 1 || length < 0
    ? VALUE
    : fit(text.slice(0, start - 1) + by + text.slice(start - 1 + length));
});
define('SUBSTITUTE', 'sss?n', (text: string, old: string, by: string, which?: number) => {
  if (which !== undefined && which < 1) return VALUE;
  if (old === '') return text;
  if (which === undefined) return fit(text.split(old).join(by));
  const parts = text.split(old);
  const at = Math.trunc(which);
  if (at >= parts.length) return text;
  return fit(parts.slice(0, at).join(old) + by + parts.slice(at).join(old));
});
define('CHAR', 'n', (number: number) => {
  const code = Math.trunc(number);
  if (code < 1 || code > 255) return VALUE;
  return code < 128 || code >= 160
    ? String.fromCharCode(code)
    : unproven('takes a sign of the old code page');
});
define('CODE', 's', (text: string) => {
  const code = text.codePointAt(0);
  if (code === undefined) return VALUE;
  return code < 128 || (code >= 160 && code < 256) ? code : unproven('takes a sign of the old code page');
});
define('UNICHAR', 'n', (number: number) => {
  const code = Math.trunc(number);
  return code < 1 || code > 0x10ffff || (code >= 0xd800 && code < 0xe000)
    ? VALUE
    : String.fromCodePoint(code);
});
define('UNICODE', 's', (text: string) => text.codePointAt(0) ?? VALUE);
define('VALUE', 'v', (value: Scalar) => {
  if (value instanceof Fault) return value;
  if (typeof value === 'boolean') return VALUE;
  return typeof value === 'string' ? (numberIn(value) ?? VALUE) : (value ?? 0);
});
define('NUMBERVALUE', 's?ss', (text: string, decimal = '.', group = ',') => {
  const bare = text.replace(/\s/g, '');
  if (bare === '') return 0;
  if (decimal === '' || group === '') return VALUE;
  const [whole = '', ...rest] = bare.split(decimal[0] ?? '.');
  if (rest.length > 1 || (rest[0] ?? '').includes(group[0] ?? ',')) return VALUE;
  const plain = whole.split(group[0] ?? ',').join('') + (rest.length === 1 ? `.${rest[0] ?? ''}` : '');
  const percent = /%*$/.exec(plain)?.[0].length ?? 0;
  const number = numberIn(plain.slice(0, plain.length - percent));
  return number === undefined ? VALUE : number / 100 ** percent;
});
function onlyHere(world: World, format: string): void {
  if (world.sheets.elsewhere === true && /[.,a-z]/i.test(format))
    unproven('writes a number into a text, in a workbook that was saved in another language');
}
defineIn('TEXT', 'vs', (world: World, value: Scalar, format: string) => {
  if (value instanceof Fault) return value;
  if (world.sheets.from1904 && /[dmyh]/i.test(format))
    return unproven('writes a day in a workbook whose days begin in 1904');
  const number = typeof value === 'string' ? numberIn(value) : value;
  if (number === undefined) return formatted(value as string, format);
  onlyHere(world, format);
  if (typeof number === 'boolean') return number ? 'TRUE' : 'FALSE';
  return formatted(number ?? 0, format);
});
defineIn('FIXED', 'n?nb', (world: World, number: number, places = 2, plain = false) => {
  onlyHere(world, '.');
  const digits = Math.trunc(places);
  if (digits > 127) return VALUE;
  if (digits < 0) return unproven('rounds to tens in FIXED');
  return formatted(number, `${plain ? '' : '#,##'}0${digits > 0 ? `.${'0'.repeat(digits)}` : ''}`);
});
defineIn('DOLLAR', 'n?n', (world: World, number: number, places = 2) => {
  onlyHere(world, '.');
  const digits = Math.trunc(places);
  if (digits > 127) return VALUE;
  if (digits < 0) return unproven('rounds to tens in DOLLAR');
  const format = `$#,##0${digits > 0 ? `.${'0'.repeat(digits)}` : ''}`;
  return formatted(number, `${format};(${format})`);
});

const cutOf = (text: string, signs: string[], insensitive: boolean): { at: number; length: number }[] => {
  const [whole, parts] = insensitive
    ? [text.toLowerCase(), signs.map((one) => one.toLowerCase())]
    : [text, signs];
  const found: { at: number; length: number }[] = [];
  for (let at = 0; at < whole.length;) {
    const hit = parts
      .filter((one) => one !== '' && whole.startsWith(one, at))
      .sort((a, b) => b.length - a.length)[0];
    if (hit === undefined) at += 1;
    else {
      found.push({ at, length: hit.length });
      at += hit.length;
    }
  }
  return found;
};
const signsIn = (world: World, value: Value | undefined): string[] =>
  value === undefined || value === null
    ? []
    : rowsIn(world, value).cells.map((one) => {
        const text = toText(one);
        return text instanceof Fault ? stop(text) : text;
      });
const beside =
  (after: boolean) =>
  (
    world: World,
    text: string,
    between: Value,
    which?: number,
    mode = 0,
    end = 0,
    missing?: Scalar,
  ): Value => {
    const count = Math.trunc(which ?? 1);
    const signs = signsIn(world, between);
    if (count === 0) return VALUE;
    if (text.length > 0 && Math.abs(count) > text.length) return VALUE;
    // Excel looks whether the text is long enough only where it is told which cut is meant.
    if (which !== undefined && signs.some((one) => one.length > text.length)) return VALUE;
    if (signs.length !== 1 || signs[0] === '' || mode !== 0)
      return unproven('cuts at several texts, or at an empty one');
    const cuts = cutOf(text, signs, mode !== 0);
    if (end !== 0) return unproven('takes the end of a text as a cut');
    const cut = count > 0 ? cuts[count - 1] : cuts[cuts.length + count];
    if (cut === undefined) return missing === undefined ? NA : (missing ?? '');
    return after ? text.slice(cut.at + cut.length) : text.slice(0, cut.at);
  };
defineIn('TEXTBEFORE', 'sr?nnne', stopping(beside(false)));
defineIn('TEXTAFTER', 'sr?nnne', stopping(beside(true)));
function pieces(text: string, signs: string[], insensitive: boolean, skip: boolean): string[] {
  if (signs.length === 0) return [text];
  const list: string[] = [];
  let from = 0;
  for (const { at, length } of cutOf(text, signs, insensitive)) {
    list.push(text.slice(from, at));
    from = at + length;
  }
  list.push(text.slice(from));
  return skip ? list.filter((one) => one !== '') : list;
}
defineIn(
  'TEXTSPLIT',
  'sr?rbne',
  stopping(
    (world: World, text: string, across: Value, down?: Value, skip = false, mode = 0, pad: Scalar = NA) => {
      const [columns, rows] = [signsIn(world, across), signsIn(world, down)];
      if (columns.includes('') || rows.includes('') || columns.length + rows.length === 0) return VALUE;
      if (text === '') return unproven('cuts an empty text');
      const lines = pieces(text, rows, mode !== 0, skip).map((line) =>
        pieces(line, columns, mode !== 0, skip),
      );
      const wide = lines.reduce((most, line) => Math.max(most, line.length), 0);
      const fill = pad ?? NA;
      return new Grid(
        lines.length,
        wide,
        lines.flatMap((line) => [...line, ...new Array<Scalar>(wide - line.length).fill(fill)]),
      );
    },
  ),
);
defineIn(
  'ADDRESS',
  'nn?nbs',
  (_: World, row: number, column: number, fixed = 1, a1 = true, sheet?: string) => {
    const [r, c, kind] = [row, column, fixed].map(Math.trunc) as [number, number, number];
    if (r < 1 || c < 1 || r > 1_048_576 || c > 16_384 || kind < 1 || kind > 4) return VALUE;
    let letters = '';
    for (let left = c; left > 0; left = Math.floor((left - 1) / 26))
      letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
    const owner =
      sheet === undefined
        ? ''
        : `${(/^[A-Za-z_][A-Za-z0-9_.]*$/.test(sheet) && !/^[A-Za-z]{1,3}\d+$/.test(sheet)) || sheet === '' ? sheet : `'${sheet.replace(/'/g, "''")}'`}!`;
    if (a1) return `${owner}${kind === 1 || kind === 3 ? '$' : ''}${letters}${kind <= 2 ? '$' : ''}${r}`;
    return `${owner}R${kind <= 2 ? r : `[${r}]`}C${kind === 1 || kind === 3 ? c : `[${c}]`}`;
  },
);
define('HYPERLINK', 'v?e', (address: Scalar, shown?: Scalar) => (shown === undefined ? address : shown));
