/** Sheets taken out of a workbook file, with the parts that were only theirs. */
import type { Parts } from './archive';
import { TYPES } from './package-part';
import { bytesOfText } from './text';
import { partText, relationshipsOf, relationshipsPart, type WorkbookFile } from './workbook';
import { attribute, edited, tagsNamed, walk, type Edit, type Tag } from './xml';

/** Parts that belong to one sheet alone. */
const OWNED = new Set(['drawing', 'table', 'comments', 'vmlDrawing', 'image', 'chart', 'printerSettings']);

/** A part and all that only it speaks of. */
function withOwned(parts: Parts, part: string): string[] {
  const owned = relationshipsOf(parts, part).filter(({ type }) => OWNED.has(type));
  return [part, ...owned.flatMap(({ target }) => withOwned(parts, target))];
}

/** Every element of a name from its opening to its end. */
function elements(xml: string, part: string, named: string): { tag: Tag; from: number; to: number }[] {
  const found: { tag: Tag; from: number; to: number }[] = [];
  let open: Tag | undefined;
  walk(xml, part, {
    open(tag) {
      if (tag.name !== named) return;
      if (tag.selfClosing) found.push({ tag, from: tag.from, to: tag.to });
      else open = tag;
    },
    close(name, _from, to) {
      if (name !== named || open === undefined) return;
      found.push({ tag: open, from: open.from, to });
      open = undefined;
    },
  });
  return found;
}

const cut = ({ from, to }: { from: number; to: number }): Edit => ({ from, to, text: '' });

/** The names of single sheets are numbered by the sheets' places, which move up. */
function nameEdits(xml: string, part: string, removed: readonly number[]): Edit[] {
  return elements(xml, part, 'definedName').flatMap(({ tag, from, to }): Edit[] => {
    const own = tag.attributes['localSheetId'];
    if (own === undefined) return [];
    const place = Number(own);
    if (removed.includes(place)) return [{ from, to, text: '' }];
    const before = removed.filter((one) => one < place).length;
    if (before === 0) return [];
    const text = xml
      .slice(tag.from, tag.to)
      .replace(/localSheetId=(["'])\d+\1/, `localSheetId="${place - before}"`);
    return [{ from: tag.from, to: tag.to, text }];
  });
}

/** A view that showed a sheet by its place shows the first. */
const viewEdits = (xml: string, part: string): Edit[] =>
  tagsNamed(xml, part, 'workbookView').map(({ from, to }) => ({
    from,
    to,
    text: xml.slice(from, to).replace(/\s(?:activeTab|firstSheet)=(["'])\d+\1/g, ''),
  }));

/** `names` that the file does not hold are passed over. */
export function removeSheets(file: WorkbookFile, names: readonly string[]): Parts {
  const wanted = new Set(names.map((name) => name.toLowerCase()));
  const removed = file.sheets.flatMap(({ name }, at) => (wanted.has(name.toLowerCase()) ? [at] : []));
  if (removed.length === 0) return file.parts;
  const parts: Parts = new Map(file.parts);
  const workbook = partText(parts, file.part) ?? '';
  const at = relationshipsPart(file.part);
  const links = partText(parts, at) ?? '';
  const sheets = tagsNamed(workbook, file.part, 'sheet');
  const ids = new Set(removed.map((place) => attribute(sheets[place] as Tag, 'id')));
  // The order of calculation speaks of sheets by number; a program makes it anew.
  const chain = relationshipsOf(parts, file.part).find(({ type }) => type === 'calcChain');
  if (chain !== undefined) ids.add(chain.id);
  const gone = new Set([
    ...removed.flatMap((place) => {
      const part = file.sheets[place]?.part;
      return part === undefined ? [] : withOwned(parts, part);
    }),
    ...(chain === undefined ? [] : [chain.target]),
  ]);
  for (const part of gone) {
    parts.delete(part);
    parts.delete(relationshipsPart(part));
  }
  const edits = [
    ...removed.map((place) => cut(sheets[place] as Tag)),
    ...nameEdits(workbook, file.part, removed),
    ...viewEdits(workbook, file.part),
  ];
  parts.set(file.part, bytesOfText(edited(workbook, edits)));
  const linked = tagsNamed(links, at, 'Relationship').filter(({ attributes }) => ids.has(attributes['Id']));
  parts.set(at, bytesOfText(edited(links, linked.map(cut))));
  const types = partText(parts, TYPES) ?? '';
  const overrides = tagsNamed(types, TYPES, 'Override').filter(({ attributes }) =>
    gone.has((attributes['PartName'] ?? '').replace(/^\//, '')),
  );
  parts.set(TYPES, bytesOfText(edited(types, overrides.map(cut))));
  return parts;
}
