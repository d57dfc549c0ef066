/** A number as a number format shows it, in the formats that read alike in every country. */
import { MONTHS } from '../../core/cell/day';
import { dayOf } from './dates';
import { Fault, numberText, unproven, VALUE } from './values';

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const DAY_PART = /[ymdhs]/i;
/** Text in quotes, one sign after a backslash, a filler, then what a format is made of. */
const PIECES = /"[^"]*"|\\.|_.|\*.|\[[^\]]*\]|AM\/PM|A\/P|y+|m+|d+|h+|s+(?:\.0+)?|[\s\S]/gi;

export function formatted(value: number | string, format: string): string | Fault {
  if (/^general$/i.test(format)) return typeof value === 'string' ? value : numberText(value);
  if (format === '') return '';
  const sections = split(format);
  if (sections.length > 4) return VALUE;
  if (
    sections.some((one) =>
      /\[(?!h+\]|m+\]|s+\]|(?:black|blue|cyan|green|magenta|red|white|yellow)\])/i.test(one),
    )
  )
    return unproven('writes a number in a format with a condition or a country');
  if (typeof value === 'string') {
    const own =
      sections[3] ?? (sections.length < 4 && sections[0]?.includes('@') === true ? sections[0] : undefined);
    if (own === undefined) return value;
    return pieces(own)
      .map((one) => (one === '@' ? value : literal(one)))
      .join('');
  }
  const at = sections.length > 2 && value === 0 ? 2 : value < 0 && sections.length > 1 ? 1 : 0;
  const section = sections[at] ?? '';
  const bare = pieces(section)
    .filter((one) => !/^(?:"|\\|_|\*)/.test(one))
    .join('');
  if (/general/i.test(bare)) return unproven('writes a number in a mixed format');
  if (bare.includes('@')) return numberText(value);
  if (DAY_PART.test(bare.replace(/\[(?:black|blue|cyan|green|magenta|red|white|yellow)\]/gi, '')))
    return value < 0 ? VALUE : dayText(value, section);
  const size = at === 1 ? Math.abs(value) : value;
  // A comma that parts no thousands is the point of another country.
  if (/[0#?],[0#?]/.test(section) && !/#,##[0#]|0,000|#,#0/.test(section))
    return unproven('writes a number with a comma that parts no thousands');
  return numeric(size, section);
}

const pieces = (section: string): string[] => section.match(PIECES) ?? [];

function split(format: string): string[] {
  const sections = [''];
  for (const piece of pieces(format)) {
    if (piece === ';') sections.push('');
    else sections[sections.length - 1] += piece;
  }
  return sections;
}

function literal(piece: string): string {
  if (piece.startsWith('"')) return piece.slice(1, -1);
  if (piece.startsWith('\\')) return piece.slice(1);
  if (piece.startsWith('_')) return ' ';
  if (piece.startsWith('*') || /^\[(?:black|blue|cyan|green|magenta|red|white|yellow)\]$/i.test(piece))
    return '';
  return piece;
}

const DIGIT = /^[0#?]$/;

function numeric(value: number, section: string): string {
  const parts = pieces(section).flatMap((one) =>
    DIGIT.test(one) || one.length === 1 || !/^[ymdhs]/i.test(one) ? [one] : [...one],
  );
  const places = parts.map((one, at) => ({ one, at })).filter(({ one }) => DIGIT.test(one));
  if (places.length === 0) return (value < 0 ? '-' : '') + parts.map(literal).join('');
  if (parts.some((one) => /^[eE/]$/.test(one))) return unproven('writes a fraction or a power of ten');
  const [first, last] = [places[0]?.at ?? 0, places.at(-1)?.at ?? 0];
  const point = parts.findIndex((one) => one === '.');
  const whole = places.filter(({ at }) => point === -1 || at < point);
  const after = point === -1 ? [] : places.filter(({ at }) => at > point);
  const grouped = parts.some((one, at) => one === ',' && at > first && at < (whole.at(-1)?.at ?? -1));
  let thousands = 0;
  const lastWhole = whole.at(-1)?.at ?? first - 1;
  for (let at = lastWhole + 1; parts[at] === ','; at++) thousands += 1;
  if (point !== -1 && parts[last + 1] === ',' && after.length > 0)
    return unproven('writes thousands behind a point');
  const percents = parts.filter((one) => one === '%').length;
  const text = decimal(Math.abs(value), 2 * percents - 3 * thousands, after.length);
  const [integer = '', fraction = ''] = text.split('.');
  const nothing = /^[0.]*$/.test(text);
  let out = value < 0 && !nothing ? '-' : '';
  const digits = digitsFor(
    integer === '0' ? '' : integer,
    whole.map(({ one }) => one),
    grouped,
  );
  let [wholeAt, afterAt] = [0, 0];
  const kept = keptAfter(
    fraction,
    after.map(({ one }) => one),
  );
  for (const [at, one] of parts.entries()) {
    if (DIGIT.test(one)) {
      if (point === -1 || at < point) out += digits[wholeAt++] ?? '';
      else out += kept[afterAt++] ?? '';
    } else if (one === ',' && at > first && at <= lastWhole + thousands) continue;
    else out += literal(one);
  }
  return out;
}

/** So many digits after the point, rounded as Excel rounds: on the fifteen digits it sees. */
function decimal(size: number, shift: number, places: number): string {
  const [digits = '0', power = '0'] = size.toExponential(14).split('e');
  const bare = digits.replace('.', '');
  // The digits' point stands `left` places in.
  const left = 1 + Number(power) + shift;
  const keep = left + places;
  if (size === 0 || keep < 0) return places > 0 ? `0.${'0'.repeat(places)}` : '0';
  const padded = bare.padEnd(Math.max(keep, 0) + 1, '0');
  let number = BigInt(padded.slice(0, keep) || '0');
  if ((padded[keep] ?? '0') >= '5') number += 1n;
  const text = number.toString().padStart(places + 1, '0');
  return places > 0 ? `${text.slice(0, -places)}.${text.slice(-places)}` : text;
}

/** What each place before the point shows; the first of them takes all digits that are left. */
function digitsFor(integer: string, signs: readonly string[], grouped: boolean): string[] {
  const out: string[] = [];
  const at = (fromRight: number): string => integer[integer.length - 1 - fromRight] ?? '';
  const comma = (fromRight: number, shown: string): string =>
    grouped && fromRight > 0 && fromRight % 3 === 0 && shown !== '' ? `${shown},` : shown;
  for (const [index, sign] of signs.entries()) {
    const fromRight = signs.length - 1 - index;
    const own = at(fromRight) || (sign === '0' ? '0' : sign === '?' ? ' ' : '');
    let shown = comma(fromRight, own);
    if (index === 0)
      for (let more = fromRight + 1; more < integer.length; more++) shown = comma(more, at(more)) + shown;
    out.push(shown);
  }
  return out;
}

function keptAfter(fraction: string, signs: readonly string[]): string[] {
  const shown = signs.map((sign, at) => ({ sign, digit: fraction[at] ?? '0' }));
  for (let at = shown.length - 1; at >= 0; at--) {
    const one = shown[at];
    if (one === undefined || one.digit !== '0' || one.sign === '0') break;
    shown[at] = { sign: one.sign, digit: one.sign === '?' ? ' ' : '' };
  }
  return shown.map(({ digit }) => digit);
}

function dayText(value: number, section: string): string {
  const parts = pieces(section);
  const half = parts.some((one) => /^(?:AM\/PM|A\/P)$/i.test(one));
  if (parts.some((one) => /^\[[hms]+\]$/i.test(one))) return unproven('writes hours beyond a day');
  if (parts.some((one) => /^(?:y+|d+)$/i.test(one) && /^(?:y|d{5,}|y{5,})$/i.test(one)))
    return unproven('writes a day so');
  if (value >= 2_958_466) return unproven('writes a day beyond the year 9999');
  if (parts.some((one) => /^s+\.0+$/i.test(one))) return unproven('writes parts of a second');
  let seconds = Math.round((value - Math.floor(value)) * 86_400);
  const whole = Math.floor(value) + (seconds === 86_400 ? 1 : 0);
  seconds %= 86_400;
  const { year, month, day } = dayOf(whole);
  const [hour, minute, second] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (number: number): string => String(number).padStart(2, '0');
  const isMinute = (at: number): boolean => {
    const real = (one: string | undefined): boolean => one !== undefined && /^[ymdhs]+$/i.test(one);
    const before = parts.slice(0, at).reverse().find(real);
    const behind = parts.slice(at + 1).find(real);
    return /^h/i.test(before ?? '') || /^s/i.test(behind ?? '');
  };
  return parts
    .map((one, at) => {
      const clock = half ? hour % 12 || 12 : hour;
      switch (one.toLowerCase()) {
        case 'yy':
          return two(year % 100);
        case 'yyy':
        case 'yyyy':
          return String(year);
        case 'm':
          return isMinute(at) ? String(minute) : String(month);
        case 'mm':
          return isMinute(at) ? two(minute) : two(month);
        case 'mmm':
          return (MONTHS[month - 1] ?? '').slice(0, 3);
        case 'mmmm':
          return MONTHS[month - 1] ?? '';
        case 'mmmmm':
          return (MONTHS[month - 1] ?? '').slice(0, 1);
        case 'd':
          return String(day);
        case 'dd':
          return two(day);
        case 'ddd':
          return (DAYS[(whole + 6) % 7] ?? '').slice(0, 3);
        case 'dddd':
          return DAYS[(whole + 6) % 7] ?? '';
        case 'h':
          return String(clock);
        case 'hh':
          return two(clock);
        case 's':
          return String(second);
        case 'ss':
          return two(second);
        case 'am/pm':
          return hour < 12 ? 'AM' : 'PM';
        case 'a/p':
          return hour < 12 ? 'A' : 'P';
        default:
          return literal(one);
      }
    })
    .join('');
}
