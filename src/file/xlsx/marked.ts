/** What the parts around the sheets must know once a formula may spill: its mark, and the calculation chain. */
import type { Parts } from './archive';
import { withMark } from './dynamic';
import { storedForm } from '../recalculate/formula';
import { TYPES } from './package-part';
import { bytesOfText } from './text';
import { partText, relationshipsOf, relationshipsPart, type WorkbookFile } from './workbook';
import { escaped } from '../../book/markup';
import { beforeEnd, edited, tagsNamed, walk, type Edit } from './xml';

const CONTENT = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml';
const RELATIONSHIP = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata';

/** The mark that lets a formula spill, with the parts that make it mean so added where the file lacks them. */
export function spillMark(file: WorkbookFile, parts: Parts): string {
  const [known] = file.dynamic.marks;
  if (known !== undefined) return known;
  const { mark, bytes } = withMark(parts, file.dynamic.part);
  if (file.dynamic.part !== undefined) {
    parts.set(file.dynamic.part, bytes);
    return mark;
  }
  const folder = file.part.slice(0, file.part.lastIndexOf('/') + 1);
  const part = `${folder}metadata.xml`;
  parts.set(part, bytes);
  const types = partText(parts, TYPES) ?? '';
  const override = `<Override PartName="/${part}" ContentType="${CONTENT}"/>`;
  parts.set(TYPES, bytesOfText(beforeEnd(types, TYPES, override)));
  const at = relationshipsPart(file.part);
  const relationships = partText(parts, at) ?? '';
  const taken = new Set(tagsNamed(relationships, at, 'Relationship').map((tag) => tag.attributes['Id']));
  let number = taken.size + 1;
  while (taken.has(`rId${number}`)) number += 1;
  const link = `<Relationship Id="rId${number}" Type="${RELATIONSHIP}" Target="metadata.xml"/>`;
  parts.set(at, bytesOfText(beforeEnd(relationships, at, link)));
  return mark;
}

const HELD_FORMULAS = new Set(['calculatedColumnFormula', 'totalsRowFormula', 'definedName']);

/** Calls of ours that a table keeps for its new rows, or a name stands for, are stored as in a cell. */
export function storeHeldFormulas(file: WorkbookFile, parts: Parts): void {
  for (const part of [file.part, ...file.tables.map((table) => table.part)]) {
    const xml = partText(file.parts, part);
    if (xml === undefined) continue;
    const edits: Edit[] = [];
    let [from, text] = [-1, ''];
    walk(xml, part, {
      open(tag) {
        [from, text] = [HELD_FORMULAS.has(tag.name) && !tag.selfClosing ? tag.to : -1, ''];
      },
      text(more) {
        text += more;
      },
      close(_, to) {
        const stored = storedForm(text);
        if (from !== -1 && stored !== text) edits.push({ from, to, text: escaped(stored) });
        from = -1;
      },
    });
    if (edits.length > 0) parts.set(part, bytesOfText(edited(xml, edits)));
  }
}

/** The chain says which of its cells are arrays; cells made so are marked there too. */
export function chainArrays(
  file: WorkbookFile,
  parts: Parts,
  made: readonly { readonly sheet: number; readonly cell: string }[],
): void {
  const part = relationshipsOf(parts, file.part).find((one) => one.type === 'calcChain')?.target;
  const xml = part === undefined ? undefined : partText(parts, part);
  if (part === undefined || xml === undefined || made.length === 0) return;
  const ids = tagsNamed(partText(parts, file.part) ?? '', file.part, 'sheet').map(
    (tag) => tag.attributes['sheetId'] ?? '',
  );
  const arrays = new Set(made.map(({ sheet, cell }) => `${ids[sheet] ?? ''}!${cell}`));
  const edits: Edit[] = [];
  let sheet = '';
  for (const { attributes, from, to } of tagsNamed(xml, part, 'c')) {
    // The sheet is said where it changes.
    sheet = attributes['i'] ?? sheet;
    if (attributes['a'] !== undefined || !arrays.has(`${sheet}!${attributes['r'] ?? ''}`)) continue;
    edits.push({ from, to, text: xml.slice(from, to).replace(/\s*(\/?>)$/, ' a="1"$1') });
  }
  if (edits.length > 0) parts.set(part, bytesOfText(edited(xml, edits)));
}
