/**
 * How a file marks a formula that may spill: cm="n" on its cell, the n-th entry of the cell metadata,
 * which points at a dynamic-array property. Without it a spreadsheet program puts an @ before the call.
 */
import type { Parts } from './archive';
import { textOf, bytesOfText } from './text';
import { edited, tagsNamed, walk, type Edit, type Tag } from './xml';

export interface Dynamic {
  /** The metadata part; undefined where the file has none yet. */
  readonly part: string | undefined;
  /** The values of cm that mean: may spill. */
  readonly marks: ReadonlySet<string>;
}

const NAMES =
  ' xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"';
const NAME = ' name="XLDAPR"';
/** Inside a part that may use other prefixes, each piece declares its own. */
const type = (names: string): string =>
  `<metadataType${names}${NAME} minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/>`;
const property = (names: string): string =>
  `<bk${names}><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk>`;
const properties = (names: string): string =>
  `<futureMetadata${names}${NAME} count="1">${property('')}</futureMetadata>`;
const record = (names: string, type: number, value: number): string =>
  `<bk${names}><rc t="${type}" v="${value}"/></bk>`;
const cells = (names: string, type: number, value: number): string =>
  `<cellMetadata${names} count="1">${record('', type, value)}</cellMetadata>`;
const FRESH = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<metadata${NAMES}><metadataTypes count="1">${type('')}</metadataTypes>${properties('')}${cells('', 1, 0)}</metadata>`;

interface Read {
  readonly types: readonly string[];
  /** For each dynamic-array property, whether it says: may spill. */
  readonly properties: readonly boolean[];
  /** For each cell metadata entry, its records: [type, value]. */
  readonly entries: readonly (readonly (readonly [number, number])[])[];
}

function read(xml: string, part: string): Read {
  const types: string[] = [];
  const properties: boolean[] = [];
  const entries: [number, number][][] = [];
  let [inOurs, inCells] = [false, false];
  walk(xml, part, {
    open({ name, attributes }) {
      if (name === 'metadataType') types.push(attributes['name'] ?? '');
      else if (name === 'futureMetadata') inOurs = attributes['name'] === 'XLDAPR';
      else if (name === 'cellMetadata') inCells = true;
      else if (name === 'bk' && inCells) entries.push([]);
      else if (name === 'bk' && inOurs) properties.push(false);
      else if (name === 'rc' && inCells)
        entries.at(-1)?.push([Number(attributes['t']), Number(attributes['v'])]);
      else if (name === 'dynamicArrayProperties' && inOurs)
        properties[properties.length - 1] =
          attributes['fDynamic'] === '1' || attributes['fDynamic'] === 'true';
    },
    close(name) {
      if (name === 'futureMetadata') inOurs = false;
      else if (name === 'cellMetadata') inCells = false;
    },
  });
  return { types, properties, entries };
}

function marksOf({ types, properties, entries }: Read): Set<string> {
  const ours = types.indexOf('XLDAPR') + 1;
  return new Set(
    entries.flatMap((records, at) =>
      records.some(([type, value]) => type === ours && properties[value] === true) ? [String(at + 1)] : [],
    ),
  );
}

export function readDynamic(parts: Parts, part: string | undefined): Dynamic {
  const bytes = part === undefined ? undefined : parts.get(part);
  if (part === undefined || bytes === undefined) return { part: undefined, marks: new Set() };
  return { part, marks: marksOf(read(textOf(bytes, part), part)) };
}

/** The metadata part with one more mark, and the value of cm that means it. */
export function withMark(parts: Parts, part: string | undefined): { mark: string; bytes: Uint8Array } {
  const bytes = part === undefined ? undefined : parts.get(part);
  if (part === undefined || bytes === undefined) return { mark: '1', bytes: bytesOfText(FRESH) };
  let xml = textOf(bytes, part);
  const here = read(xml, part);
  let typeAt = here.types.indexOf('XLDAPR') + 1;
  if (typeAt === 0) {
    typeAt = here.types.length + 1;
    xml = appended(xml, part, byName('metadataTypes'), type(NAMES), typeAt);
  }
  let value = here.properties.indexOf(true);
  if (value === -1) {
    value = here.properties.length;
    xml =
      value > 0
        ? appended(xml, part, isOurs, property(NAMES), value + 1)
        : behind(xml, part, ['metadataTypes', 'metadataStrings', 'mdxMetadata'], properties(NAMES));
  }
  const count = here.entries.length + 1;
  xml =
    tagsNamed(xml, part, 'cellMetadata').length > 0
      ? appended(xml, part, byName('cellMetadata'), record(NAMES, typeAt, value), count)
      : behind(xml, part, ['futureMetadata'], cells(NAMES, typeAt, value));
  return { mark: String(count), bytes: bytesOfText(xml) };
}

const byName =
  (name: string) =>
  (tag: Tag): boolean =>
    tag.name === name;
const isOurs = (tag: Tag): boolean => tag.name === 'futureMetadata' && tag.attributes['name'] === 'XLDAPR';

/** Puts text at the end of the one element chosen, and counts it there. */
function appended(
  xml: string,
  part: string,
  chosen: (tag: Tag) => boolean,
  inside: string,
  count: number,
): string {
  const open: Tag[] = [];
  const edits: Edit[] = [];
  walk(xml, part, {
    open(tag) {
      open.push(tag);
    },
    close(_, from, to) {
      const tag = open.pop();
      if (tag === undefined || !chosen(tag)) return;
      const opening = xml.slice(tag.from, tag.to).replace(/\scount="\d*"/, '');
      const [name = ''] = /^[\w:]+/.exec(xml.slice(tag.from + 1)) ?? [];
      const start = opening.replace(/\s*\/?>$/, ` count="${count}">`);
      if (tag.selfClosing) edits.push({ from, to, text: `${start}${inside}</${name}>` });
      else edits.push({ from: tag.from, to: tag.to, text: start }, { from, to: from, text: inside });
    },
  });
  return edited(xml, edits);
}

/** Puts text behind the last element of these names. */
function behind(xml: string, part: string, names: readonly string[], text: string): string {
  let after = -1;
  walk(xml, part, {
    close(name, _, to) {
      if (names.includes(name)) after = to;
    },
  });
  return after === -1 ? xml : edited(xml, [{ from: after, to: after, text }]);
}
