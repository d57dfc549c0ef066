/** Walks through an XML part and says where each tag stands in its text, so that a patch can hit it exactly. */
import { Problem } from '../problem';
import { TagReader } from './tags';

export interface Tag {
  /** Without its prefix. */
  readonly name: string;
  /** With its colon: “x:”, or nothing. */
  readonly prefix: string;
  readonly attributes: Readonly<Record<string, string | undefined>>;
  /** Where its “<” stands. */
  readonly from: number;
  /** Just after its “>”. */
  readonly to: number;
  readonly selfClosing: boolean;
}

export interface Visitor {
  open?(tag: Tag): void;
  /** Text as it reads, entities resolved. */
  text?(text: string): void;
  /** `from` is where “</” stands, or the tag's own “<” where it closes itself; `to` just after “>”. */
  close?(name: string, from: number, to: number): void;
}

/** A part that cannot be read as what it should be. */
export const damaged = (part: string, why: string): Problem =>
  new Problem(
    `Its part ${part} is damaged (${why}). Open it in a spreadsheet program, save it again and try again.`,
  );

export const localName = (name: string): string => name.slice(name.indexOf(':') + 1);

/** `xml` whole, or in pieces one after the other; places are counted from the start of the first. */
export function walk(xml: string | Iterable<string>, part: string, visitor: Visitor): void {
  new TagReader(typeof xml === 'string' ? [xml] : xml, visitor, (why) => {
    throw damaged(part, why);
  }).read();
}

/** Collects the tags of one name, wherever they stand. */
export function tagsNamed(xml: string, part: string, ...names: readonly string[]): Tag[] {
  const found: Tag[] = [];
  walk(xml, part, {
    open(tag) {
      if (names.includes(tag.name)) found.push(tag);
    },
  });
  return found;
}

/** An attribute by its local name, whatever its prefix: r:id. */
export function attribute(tag: Tag, name: string): string | undefined {
  if (tag.attributes[name] !== undefined) return tag.attributes[name];
  const key = Object.keys(tag.attributes).find((one) => localName(one) === name);
  return key === undefined ? undefined : tag.attributes[key];
}

/** Spreadsheet files write what XML cannot hold as _x000D_. */
export const unescapedControls = (text: string): string =>
  text.includes('_x')
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)))
    : text;
export const escapedControls = (text: string): string =>
  text
    .replace(/_x(?=[0-9A-Fa-f]{4}_)/g, '_x005F_x')
    // eslint-disable-next-line no-control-regex -- these are exactly what XML forbids
    .replace(/[\u0000-\u0008\u000B\u000C\u000D\u000E-\u001F\uFFFE\uFFFF]/g, (sign) => {
      return `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`;
    });

/** One replacement in a part's text. */
export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

export function edited(xml: string, edits: readonly Edit[]): string {
  const parts: string[] = [];
  let at = 0;
  for (const { from, to, text } of [...edits].sort(
    (one, other) => one.from - other.from || one.to - other.to,
  )) {
    if (from < at) throw new Error(`two edits overlap at ${from}`);
    parts.push(xml.slice(at, from), text);
    at = to;
  }
  parts.push(xml.slice(at));
  return parts.join('');
}

/** Puts text just before the root's closing tag. */
export function beforeEnd(xml: string, part: string, text: string): string {
  let [end, open] = [-1, ''];
  walk(xml, part, {
    close(_, from, to) {
      end = from;
      open = xml.slice(from, to);
    },
  });
  const [root] = tagsNamed(xml, part, 'Relationships', 'Types');
  if (root?.selfClosing === true) {
    const name = /^[\w:]+/.exec(open.slice(1))?.[0] ?? root.name;
    return edited(xml, [
      { from: root.from, to: root.to, text: `${open.replace(/\s*\/>$/, '>')}${text}</${name}>` },
    ]);
  }
  return edited(xml, [{ from: end, to: end, text }]);
}
