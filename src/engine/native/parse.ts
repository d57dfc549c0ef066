/** A formula's text taken apart. References are counted from the cell the formula stands in. */

/** A row or column: fixed, or so far from the formula's cell. */
export interface Step {
  readonly fixed: boolean;
  readonly by: number;
}

export type Node =
  | { readonly kind: 'value'; readonly value: number | string | boolean | null }
  | { readonly kind: 'fault'; readonly code: string }
  | { readonly kind: 'missing' }
  | { readonly kind: 'array'; readonly rows: readonly (readonly Node[])[] }
  | {
      readonly kind: 'cells';
      readonly sheet: string | undefined;
      readonly lastSheet: string | undefined;
      /** The sheet by its place, where no name tells it. */
      readonly onSheet?: number;
      readonly top: Step;
      readonly left: Step;
      readonly bottom: Step;
      readonly right: Step;
    }
  | { readonly kind: 'name'; readonly name: string; readonly sheet: string | undefined }
  | { readonly kind: 'table'; readonly table: string | undefined; readonly inside: string }
  | { readonly kind: 'spill'; readonly from: Node }
  | { readonly kind: 'call'; readonly name: string; readonly given: readonly Node[] }
  | { readonly kind: 'apply'; readonly lambda: Node; readonly given: readonly Node[] }
  | { readonly kind: 'chain'; readonly first: Node; readonly rest: readonly (readonly [string, Node])[] }
  | { readonly kind: 'sign'; readonly sign: '-' | '+' | '@'; readonly operand: Node }
  | { readonly kind: 'percent'; readonly operand: Node }
  | { readonly kind: 'union'; readonly list: readonly Node[] };

/** Why a text is no formula. */
export class Unreadable extends Error {}

/** Excel's own limits: signs of a formula, and how deep calls may stand in one another. */
export const MOST_SIGNS = 8_192;
const DEEPEST = 64;
/** Brackets around brackets are no calls, and cost no level. */
const DEEPEST_BRACKETS = 400;
const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;

const SHEET = String.raw`(?:'((?:[^']|'')+)'|([\p{L}_\\][\p{L}\p{N}_.\\]*(?::[\p{L}_\\][\p{L}\p{N}_.\\]*)?))!`;
const SPACE = /[ \t\r\n\u00a0]+/uy;
const NUMBER = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const TEXT = /"((?:[^"]|"")*)"/y;
const FAULT =
  /#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|SPILL!|CALC!|GETTING_DATA|FIELD!|BLOCKED!|CONNECT!|BUSY!|UNKNOWN!)/iy;
const OWNER = new RegExp(SHEET, 'uy');
const CELLS =
  /(\$?)([A-Za-z]{1,3})(\$?)([1-9]\d{0,6})(?:\s*:\s*(\$?)([A-Za-z]{1,3})(\$?)([1-9]\d{0,6}))?(?![\p{L}\p{N}_.(!])/uy;
const COLUMNS = /(\$?)([A-Za-z]{1,3}):(\$?)([A-Za-z]{1,3})(?![\p{L}\p{N}_.(!])/uy;
const ROWS = /(\$?)([1-9]\d{0,6}):(\$?)([1-9]\d{0,6})(?![\p{L}\p{N}_.])/uy;
const WORD = /[\p{L}_\\][\p{L}\p{N}_.\\?]*/uy;
const BRACKETS = /\[(?:'.|[^[\]']|\[(?:'.|[^[\]'])*\])*\]/uy;
const OPERATOR = /<=|>=|<>|[-+*/^&=<>]/y;

/** What binds least first. */
const BINDS: Readonly<Record<string, number>> = {
  '=': 1,
  '<': 1,
  '>': 1,
  '<=': 1,
  '>=': 1,
  '<>': 1,
  '&': 2,
  '+': 3,
  '-': 3,
  '*': 4,
  '/': 4,
  '^': 5,
};

const columnOf = (text: string): number => {
  let number = 0;
  for (const letter of text.toUpperCase()) number = number * 26 + letter.charCodeAt(0) - 64;
  return number - 1;
};

/** `text` without “=”, from the cell at `row` and `column`. */
export function parse(text: string, row: number, column: number): Node {
  return new Reading(text, row, column).whole();
}

class Reading {
  #at = 0;
  #calls = 0;
  #brackets = 0;

  constructor(
    readonly text: string,
    readonly row: number,
    readonly column: number,
  ) {}

  whole(): Node {
    if (this.text.length > MOST_SIGNS) throw new Unreadable('it is longer than 8,192 signs');
    const node = this.#expression(0);
    this.#space();
    if (this.#at < this.text.length) throw new Unreadable('it cannot be read as a formula');
    return node;
  }

  #space(): boolean {
    return this.#match(SPACE) !== undefined;
  }
  #match(pattern: RegExp): RegExpExecArray | undefined {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.text);
    if (found === null) return undefined;
    this.#at += found[0].length;
    return found;
  }
  #sign(sign: string): boolean {
    const before = this.#at;
    this.#space();
    if (this.text[this.#at] === sign) {
      this.#at += 1;
      return true;
    }
    // A space may be the sign for what two ranges share.
    this.#at = before;
    return false;
  }
  #want(sign: string): void {
    if (!this.#sign(sign)) throw new Unreadable('it cannot be read as a formula');
  }

  /** Operators of one strength stand in one chain, so that a long sum is no deep one. */
  #expression(least: number): Node {
    if (least > 5) return this.#signed();
    let left = this.#expression(least === 0 ? 2 : least + 1);
    if (least === 0) least = 1;
    const rest: (readonly [string, Node])[] = [];
    for (;;) {
      const before = this.#at;
      this.#space();
      const operator = this.#match(OPERATOR)?.[0];
      if (operator === undefined || BINDS[operator] !== least) {
        this.#at = before;
        break;
      }
      rest.push([operator, this.#expression(least + 1)]);
    }
    if (rest.length > 0) left = { kind: 'chain', first: left, rest };
    return left;
  }

  /** A sign before binds more than ^: −2^2 is 4. */
  #signed(): Node {
    const signs: ('-' | '+' | '@')[] = [];
    for (;;) {
      this.#space();
      const sign = this.text[this.#at];
      if (sign !== '-' && sign !== '+' && sign !== '@') break;
      signs.push(sign);
      this.#at += 1;
    }
    let node = this.#intersected();
    while (this.#sign('%')) node = { kind: 'percent', operand: node };
    // Two minus signs are a number again; more of them tell nothing new.
    const minus = signs.filter((sign) => sign === '-').length;
    for (let left = minus > 2 ? 2 - (minus % 2) : minus; left > 0; left--)
      node = { kind: 'sign', sign: '-', operand: node };
    if (minus === 0 && signs.includes('+')) node = { kind: 'sign', sign: '+', operand: node };
    return signs.includes('@') ? { kind: 'sign', sign: '@', operand: node } : node;
  }

  /** Two references with nothing but a space between them mean what they share. */
  #intersected(): Node {
    let left = this.#ranged();
    for (;;) {
      const before = this.#at;
      if (!this.#space() || !/[\p{L}_$'\\(\d]/u.test(this.text[this.#at] ?? '')) {
        this.#at = before;
        return left;
      }
      if (!isReference(left)) throw new Unreadable('it cannot be read as a formula');
      left = { kind: 'call', name: ' ', given: [left, this.#ranged()] };
    }
  }

  #ranged(): Node {
    let left = this.#behind(this.#operand());
    while (this.#sign(':')) left = { kind: 'call', name: ':', given: [left, this.#behind(this.#operand())] };
    return left;
  }

  /** A1# and LAMBDA(…)(…). */
  #behind(node: Node): Node {
    let now = node;
    for (;;) {
      if (this.text[this.#at] === '#' && (now.kind === 'cells' || now.kind === 'name')) {
        this.#at += 1;
        now = { kind: 'spill', from: now };
      } else if (
        this.text[this.#at] === '(' &&
        (now.kind === 'apply' || (now.kind === 'call' && now.name === 'LAMBDA'))
      )
        now = { kind: 'apply', lambda: now, given: this.#given() };
      else return now;
    }
  }

  #operand(): Node {
    this.#space();
    const sign = this.text[this.#at] ?? '';
    if (sign === '(') return this.#bracketed();
    if (sign === '{') return this.#array();
    if (sign === '"')
      return { kind: 'value', value: (this.#match(TEXT)?.[1] ?? this.#fail()).replace(/""/g, '"') };
    if (sign === '#') return { kind: 'fault', code: (this.#match(FAULT)?.[0] ?? this.#fail()).toUpperCase() };
    if (sign === '[') {
      const inside = this.#match(BRACKETS)?.[0] ?? this.#fail();
      return { kind: 'table', table: undefined, inside };
    }
    const owner = this.#match(OWNER);
    const [sheet, last] = this.#sheets(owner);
    const cells = this.#cells(sheet, last);
    if (cells !== undefined) return cells;
    if (owner !== undefined && this.text[this.#at] === '#')
      return { kind: 'fault', code: (this.#match(FAULT)?.[0] ?? this.#fail()).toUpperCase() };
    if (owner === undefined) {
      const number = this.#match(NUMBER)?.[0];
      if (number !== undefined) return { kind: 'value', value: Number(number) };
    }
    const word = this.#match(WORD)?.[0] ?? this.#fail();
    if (this.text[this.#at] === '[')
      return { kind: 'table', table: word, inside: this.#match(BRACKETS)?.[0] ?? this.#fail() };
    if (this.text[this.#at] === '(') return { kind: 'call', name: word.toUpperCase(), given: this.#given() };
    if (owner === undefined && /^(?:TRUE|FALSE)$/i.test(word))
      return { kind: 'value', value: word.toUpperCase() === 'TRUE' };
    if (last !== undefined) this.#fail();
    return { kind: 'name', name: word, sheet };
  }

  #fail(): never {
    throw new Unreadable('it cannot be read as a formula');
  }

  #sheets(owner: RegExpExecArray | undefined): readonly [string | undefined, string | undefined] {
    if (owner === undefined) return [undefined, undefined];
    const text = owner[1]?.replace(/''/g, "'") ?? owner[2] ?? '';
    const [first = '', last] = text.split(':');
    return [first, last];
  }

  #cells(sheet: string | undefined, lastSheet: string | undefined): Node | undefined {
    const row = (fixed: string | undefined, text: string): Step =>
      this.#step(fixed, Number(text) - 1, this.row, MOST_ROWS);
    const column = (fixed: string | undefined, text: string): Step =>
      this.#step(fixed, columnOf(text), this.column, MOST_COLUMNS);
    const from = this.#at;
    const found = this.#match(CELLS);
    if (found !== undefined) {
      const [, a = '', b = '', c = '', d = '', e, f, g, h] = found;
      if (
        columnOf(b) < MOST_COLUMNS &&
        Number(d) <= MOST_ROWS &&
        (f === undefined || columnOf(f) < MOST_COLUMNS)
      ) {
        const [left, top] = [column(a, b), row(c, d)];
        const [right, bottom] = f === undefined || h === undefined ? [left, top] : [column(e, f), row(g, h)];
        return { kind: 'cells', sheet, lastSheet, top, left, bottom, right };
      }
      this.#at = from;
      return undefined;
    }
    const wide = this.#match(COLUMNS);
    if (wide !== undefined) {
      const [, a, b = '', c, d = ''] = wide;
      if (columnOf(b) < MOST_COLUMNS && columnOf(d) < MOST_COLUMNS)
        return {
          kind: 'cells',
          sheet,
          lastSheet,
          top: { fixed: true, by: 0 },
          bottom: { fixed: true, by: MOST_ROWS - 1 },
          left: column(a, b),
          right: column(c, d),
        };
      this.#at = from;
      return undefined;
    }
    const tall = this.#match(ROWS);
    if (tall === undefined) return undefined;
    const [, a, b = '', c, d = ''] = tall;
    return {
      kind: 'cells',
      sheet,
      lastSheet,
      left: { fixed: true, by: 0 },
      right: { fixed: true, by: MOST_COLUMNS - 1 },
      top: row(a, b),
      bottom: row(c, d),
    };
  }

  #step(fixed: string | undefined, at: number, from: number, most: number): Step {
    if (at >= most) this.#fail();
    return fixed === '$' ? { fixed: true, by: at } : { fixed: false, by: at - from };
  }

  #bracketed(): Node {
    this.#at += 1;
    if ((this.#brackets += 1) > DEEPEST_BRACKETS)
      throw new Unreadable('its brackets stand too deep in one another');
    const list = [this.#expression(0)];
    while (this.#sign(',')) list.push(this.#expression(0));
    this.#want(')');
    this.#brackets -= 1;
    const [only] = list;
    if (list.length > 1 || only === undefined) return { kind: 'union', list };
    // A chain in brackets stays by itself; a lone operand needs none.
    return only.kind === 'chain' ? { kind: 'union', list: [only] } : only;
  }

  #given(): Node[] {
    this.#at += 1;
    if ((this.#calls += 1) > DEEPEST)
      throw new Unreadable('its calls stand more than 64 deep in one another');
    const given: Node[] = [];
    if (!this.#sign(')')) {
      do {
        this.#space();
        const sign = this.text[this.#at];
        given.push(sign === ',' || sign === ')' ? { kind: 'missing' } : this.#expression(0));
      } while (this.#sign(','));
      this.#want(')');
    }
    this.#calls -= 1;
    return given;
  }

  #array(): Node {
    this.#at += 1;
    const rows: Node[][] = [[]];
    for (;;) {
      rows.at(-1)?.push(this.#constant());
      if (this.#sign(',')) continue;
      if (this.#sign(';')) rows.push([]);
      else break;
    }
    this.#want('}');
    if (rows.some((row) => row.length !== rows[0]?.length)) this.#fail();
    return { kind: 'array', rows };
  }

  #constant(): Node {
    const minus = this.#sign('-');
    if (!minus) this.#sign('+');
    const node = this.#operand();
    if (node.kind === 'fault' && !minus) return node;
    if (node.kind !== 'value') this.#fail();
    return minus && typeof node.value === 'number' ? { kind: 'value', value: -node.value } : node;
  }
}

const isReference = (node: Node): boolean =>
  node.kind === 'cells' ||
  node.kind === 'name' ||
  node.kind === 'table' ||
  node.kind === 'call' ||
  node.kind === 'union' ||
  node.kind === 'spill';
