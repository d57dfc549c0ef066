/**
 * Reads an XML part tag by tag while its text comes in pieces. A sheet has a tag for everything in every cell,
 * and a general XML parser took longer over them than everything else did.
 */
import type { Tag, Visitor } from './xml';

const [TAB, LINE, RETURN, BLANK] = [9, 10, 13, 32];
const [BANG, QUOTE, SLASH, EQUALS, GREATER, QUESTION] = [33, 34, 47, 61, 62, 63];
const APOSTROPHE = 39;
const ASCII = 128;

/** Which signs stand in a name; beyond ASCII any. */
const IN_NAME = Uint8Array.from({ length: ASCII }, (_, code) =>
  /[\w:.-]/.test(String.fromCharCode(code)) ? 1 : 0,
);
const NO_START = /^[\d.-]/;
const ENTITY = /&(?:#x([0-9a-fA-F]+)|#(\d+)|(\w+));|&/g;
const NAMED: Readonly<Record<string, string | undefined>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
};
/** All but the one that could make others. */
const FREQUENT = [
  ['&quot;', '"'],
  ['&lt;', '<'],
  ['&gt;', '>'],
] as const;
/* eslint-disable no-control-regex -- these are exactly what XML forbids */
const FORBIDDEN = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/;
/** What makes a text more than the signs it stands as. */
const ODD = /[&\r\]\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/;
const ODD_ATTRIBUTE = /[<&\t\n\r\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]/;
/* eslint-enable no-control-regex */

const DECLARATION =
  /^<\?xml\s+version\s*=\s*(["'])1\.\d+\1(?:\s+encoding\s*=\s*(["'])[A-Za-z][\w.-]*\2)?(?:\s+standalone\s*=\s*(["'])(?:yes|no)\3)?\s*\?>$/;
const INSTRUCTION = /^<\?(?!xml\?)[\p{L}_:][\p{L}\p{N}_:.-]*(?:\s|\?>)/iu;

/** No tag is longer; without its end the whole rest would be taken for one. */
const LONGEST = 1 << 26;
/** Nothing that must stay together at the end of a piece of text is longer. */
const LONGEST_ENTITY = 32;

/** Holds any name, also one that every object has. */
const Attributes = function () {
  // Nothing to begin with.
} as unknown as new () => Record<string, string | undefined>;
Attributes.prototype = Object.create(null) as object;

const isBlank = (code: number): boolean => code === BLANK || code === LINE || code === RETURN || code === TAB;
function afterBlanks(text: string, from: number): number {
  let at = from;
  while (at < text.length && isBlank(text.charCodeAt(at))) at += 1;
  return at;
}
function nameEnd(text: string, from: number): number {
  let at = from;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code < ASCII && IN_NAME[code] === 0) break;
  }
  return at;
}

export class TagReader {
  readonly #pieces: Iterator<string>;
  readonly #visitor: Visitor;
  readonly #fail: (why: string) => never;
  #held = '';
  /** Where what is held begins in the whole text. */
  #base = 0;
  /** How far it was read. */
  #at = 0;
  readonly #open: string[] = [];
  readonly #openLocal: string[] = [];
  #rooted = false;
  /** Where it begins: behind a mark of its encoding. */
  #start = 0;

  constructor(pieces: Iterable<string>, visitor: Visitor, fail: (why: string) => never) {
    this.#pieces = pieces[Symbol.iterator]();
    this.#visitor = visitor;
    this.#fail = fail;
  }

  read(): void {
    while (this.#held === '' && this.#more());
    if (this.#held.startsWith('\uFEFF')) this.#start = this.#at = 1;
    for (;;) {
      const next = this.#held.indexOf('<', this.#at);
      if (next < 0) {
        if (this.#early()) continue;
        break;
      }
      if (next > this.#at) this.#text(this.#held.slice(this.#at, next));
      this.#at = next;
      while (!this.#markup())
        if (this.#held.length - this.#at > LONGEST || !this.#more()) this.#fail('a tag has no end');
    }
    const open = this.#open.at(-1);
    if (open !== undefined) this.#fail(`the tag ${open} is not closed`);
    if (!this.#rooted) this.#fail('it holds no tag');
  }

  #more(): boolean {
    const { done, value } = this.#pieces.next();
    if (done === true) return false;
    this.#held = this.#held.slice(this.#at) + value;
    this.#base += this.#at;
    this.#at = 0;
    return true;
  }

  /** Text whose end has not come yet is passed on as far as it surely goes. False at the end. */
  #early(): boolean {
    const text = this.#held.slice(this.#at);
    const entity = text.lastIndexOf('&');
    const sure = /\]?\]?\r?$/.exec(text)?.index ?? text.length;
    const to = entity >= 0 && entity > text.length - LONGEST_ENTITY ? Math.min(entity, sure) : sure;
    if (to > 0) this.#text(text.slice(0, to));
    this.#at += to;
    if (this.#more()) return true;
    if (to < text.length) this.#text(text.slice(to));
    return false;
  }

  #text(text: string): void {
    if (this.#open.length === 0) {
      if (afterBlanks(text, 0) < text.length) this.#fail('text stands outside its tags');
      return;
    }
    const plain = ODD.test(text) ? this.#resolved(text) : text;
    this.#visitor.text?.(plain);
  }

  #resolved(text: string): string {
    if (text.includes(']]>')) this.#fail('“]]>” stands in a text');
    if (FORBIDDEN.test(text)) this.#fail('a sign stands in it that XML forbids');
    const lines = text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
    return lines.includes('&') ? this.#withoutEntities(lines) : lines;
  }

  #withoutEntities(text: string): string {
    let plain = text;
    for (const [entity, sign] of FREQUENT) plain = plain.replaceAll(entity, sign);
    if (!plain.includes('&')) return plain;
    if (!plain.replaceAll('&amp;', '').includes('&')) return plain.replaceAll('&amp;', '&');
    return text.replace(
      ENTITY,
      (whole, hex: string | undefined, decimal: string | undefined, name: string) => {
        if (hex !== undefined || decimal !== undefined) {
          const code = hex === undefined ? Number(decimal) : parseInt(hex, 16);
          const isSign = code <= 0x10ffff && (code < 0xd800 || code > 0xdfff);
          const sign = isSign ? String.fromCodePoint(code) : '\uFFFF';
          return FORBIDDEN.test(sign) ? this.#fail(`“${whole}” is no sign`) : sign;
        }
        return NAMED[name] ?? this.#fail(`“${whole}” stands for nothing`);
      },
    );
  }

  /** False where its end has not come yet. */
  #markup(): boolean {
    switch (this.#held.charCodeAt(this.#at + 1)) {
      case SLASH:
        return this.#closing();
      case QUESTION:
        return this.#instructed();
      case BANG:
        return this.#declared();
      default:
        return this.#opening();
    }
  }

  #passed(end: string, from: number): boolean {
    const at = this.#held.indexOf(end, this.#at + from);
    if (at < 0) return false;
    this.#at = at + end.length;
    return true;
  }

  #instructed(): boolean {
    const from = this.#at;
    if (!this.#passed('?>', 2)) return false;
    const text = this.#held.slice(from, this.#at);
    const isFirst = this.#base + from === this.#start;
    if (/^<\?xml\s/.test(text) ? !isFirst || !DECLARATION.test(text) : !INSTRUCTION.test(text))
      this.#fail(`“${text.slice(0, 40)}” cannot be read`);
    return true;
  }

  #declared(): boolean {
    const start = this.#held.slice(this.#at, this.#at + 9);
    if (start.startsWith('<!--')) return this.#passed('-->', 4);
    if (start === '<![CDATA[') return this.#verbatim();
    if (start.length < 9) return false;
    if (!/^<!DOCTYPE/i.test(start) || this.#rooted) return this.#fail('“<!” begins nothing known');
    const from = this.#at;
    if (!this.#passed('>', 0)) return false;
    // What a document type may define is nothing that a workbook's part holds, and no one knows its end so.
    if (this.#held.slice(from, this.#at).includes('[')) this.#fail('it defines a document type of its own');
    return true;
  }

  #verbatim(): boolean {
    const from = this.#at + 9;
    const to = this.#held.indexOf(']]>', from);
    if (to < 0) return false;
    if (this.#open.length === 0) this.#fail('text stands outside its tags');
    const text = this.#held.slice(from, to);
    if (FORBIDDEN.test(text)) this.#fail('a sign stands in it that XML forbids');
    this.#visitor.text?.(text.replace(/\r\n?/g, '\n'));
    this.#at = to + 3;
    return true;
  }

  #closing(): boolean {
    const [held, from] = [this.#held, this.#at];
    const end = held.indexOf('>', from);
    if (end < 0) return false;
    const name = this.#open.pop();
    const local = this.#openLocal.pop();
    const isIts =
      name !== undefined &&
      held.startsWith(name, from + 2) &&
      afterBlanks(held, from + 2 + name.length) === end;
    if (!isIts)
      return this.#fail(
        `the tag ${name ?? 'of nothing'} is closed as “${held.slice(from, Math.min(end + 1, from + 40))}”`,
      );
    this.#visitor.close?.(local ?? name, this.#base + from, this.#base + end + 1);
    this.#at = end + 1;
    return true;
  }

  #opening(): boolean {
    const [held, from] = [this.#held, this.#at + 1];
    let at = nameEnd(held, from);
    if (at >= held.length) return false;
    const name = held.slice(from, at);
    if (name === '' || NO_START.test(name)) this.#fail('a tag has no name');
    const attributes = new Attributes();
    for (;;) {
      const before = at;
      at = afterBlanks(held, at);
      if (at + 1 >= held.length && held.charCodeAt(at) !== GREATER) return false;
      const code = held.charCodeAt(at);
      if (code === GREATER) return this.#opened(name, attributes, at + 1, false);
      if (code === SLASH) {
        if (held.charCodeAt(at + 1) !== GREATER) this.#fail(`the tag ${name} ends in the midst of it`);
        return this.#opened(name, attributes, at + 2, true);
      }
      if (at === before) this.#fail(`the tag ${name} cannot be read`);
      at = this.#attribute(at, name, attributes);
      if (at < 0) return false;
    }
  }

  /** Where it ends, or −1 where its end has not come yet. */
  #attribute(from: number, tag: string, attributes: Record<string, string | undefined>): number {
    const held = this.#held;
    const end = nameEnd(held, from);
    const equals = afterBlanks(held, end);
    const open = afterBlanks(held, equals + 1);
    if (open >= held.length) return -1;
    const name = held.slice(from, end);
    const quote = held.charCodeAt(open);
    if (
      name === '' ||
      NO_START.test(name) ||
      held.charCodeAt(equals) !== EQUALS ||
      (quote !== QUOTE && quote !== APOSTROPHE)
    )
      this.#fail(`the tag ${tag} cannot be read`);
    const close = held.indexOf(quote === QUOTE ? '"' : "'", open + 1);
    if (close < 0) {
      if (held.includes('<', open)) this.#fail(`a “<” stands in ${name} of the tag ${tag}`);
      return -1;
    }
    if (attributes[name] !== undefined) this.#fail(`the tag ${tag} has ${name} twice`);
    const value = held.slice(open + 1, close);
    attributes[name] = ODD_ATTRIBUTE.test(value) ? this.#resolvedIn(value, name, tag) : value;
    return close + 1;
  }

  #resolvedIn(value: string, name: string, tag: string): string {
    if (value.includes('<')) this.#fail(`a “<” stands in ${name} of the tag ${tag}`);
    if (FORBIDDEN.test(value)) this.#fail('a sign stands in it that XML forbids');
    return this.#withoutEntities(value.replace(/\r\n|[\t\n\r]/g, ' '));
  }

  #opened(name: string, attributes: Tag['attributes'], end: number, selfClosing: boolean): true {
    if (this.#open.length === 0) {
      if (this.#rooted) this.#fail(`the tag ${name} stands behind its end`);
      this.#rooted = true;
    }
    const colon = name.indexOf(':') + 1;
    const local = colon === 0 ? name : name.slice(colon);
    const prefix = colon === 0 ? '' : name.slice(0, colon);
    const [from, to] = [this.#base + this.#at, this.#base + end];
    this.#at = end;
    this.#visitor.open?.({ name: local, prefix, attributes, from, to, selfClosing });
    if (selfClosing) this.#visitor.close?.(local, from, to);
    else {
      this.#open.push(name);
      this.#openLocal.push(local);
    }
    return true;
  }
}
