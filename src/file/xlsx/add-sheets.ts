/** New sheets of a draft joined to a workbook file; every sheet, name and style that was there stays as it was. */
import { areaText, sheetText } from '../../book/address';
import type { Taken } from '../../book/free-names';
import type { Draft } from '../../book/sheets/draft';
import type { Parts } from './archive';
import { addShapes } from './chart';
import { shapesOn } from './shapes';
import { Looks } from './role-styles';
import { sheetXml, tablesOf, tableXml } from './new-sheet';
import { freshPart, OFFICE, relationships, TYPES } from './package-part';
import { Problem } from '../problem';
import { bytesOfText } from './text';
import { partText, relationshipsOf, relationshipsPart, type WorkbookFile } from './workbook';
import { escaped } from '../../book/markup';
import { beforeEnd, edited, tagsNamed, walk, type Edit } from './xml';

const KIND = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** Every name that is taken, for a draft to keep clear of. */
export const namesTaken = (file: WorkbookFile): Taken => ({
  sheets: file.sheets,
  tables: file.tables,
  names: file.names,
});

interface Joined {
  readonly name: string;
  readonly part: string;
}

class Joining {
  readonly parts: Parts;
  private readonly folder: string;
  private types = '';

  constructor(
    private readonly file: WorkbookFile,
    private readonly draft: Draft,
  ) {
    this.parts = new Map(file.parts);
    this.folder = file.part.slice(0, file.part.lastIndexOf('/') + 1);
  }

  private put(part: string, xml: string, kind: string): void {
    this.parts.set(part, bytesOfText(xml));
    this.types += `<Override PartName="/${part}" ContentType="${KIND}.${kind}+xml"/>`;
  }

  private textIn(part: string): string {
    return partText(this.parts, part) ?? '';
  }

  run(): Parts {
    const { file, draft, folder } = this;
    const workbook = this.textIn(file.part);
    const [lock] = tagsNamed(workbook, file.part, 'workbookProtection');
    if (/^(1|true)$/.test(lock?.attributes['lockStructure'] ?? ''))
      throw new Problem(
        'The workbook’s structure is protected, so no sheet may be added. Take that off (Review, Protect Workbook), save it and try again.',
      );
    const known = relationshipsOf(this.parts, file.part).find((one) => one.type === 'styles')?.target;
    const styles = known ?? `${folder}styles.xml`;
    const looks = new Looks(partText(this.parts, styles), styles);
    const joined = (draft.newSheets ?? []).map(({ name }) => this.sheet(name, looks));
    if (known === undefined) this.put(styles, looks.written(), 'styles');
    else this.parts.set(styles, bytesOfText(looks.written()));
    this.link(workbook, joined, known === undefined ? styles : undefined);
    this.parts.set(TYPES, bytesOfText(beforeEnd(this.textIn(TYPES), TYPES, this.types)));
    for (const { name, part } of joined) addShapes(this.parts, part, shapesOn(name, draft.newDrawings ?? []));
    return this.parts;
  }

  private sheet(name: string, looks: Looks): Joined {
    const { draft, folder, parts } = this;
    const part = freshPart(parts, `${folder}worksheets/sheet`);
    this.put(part, sheetXml(draft, name, looks), 'worksheet');
    const links = tablesOf(draft, name).map((table, at) => {
      const target = freshPart(parts, `${folder}tables/table`);
      this.put(target, tableXml(draft, table, this.nextTable()), 'table');
      return `<Relationship Id="rId${at + 1}" Type="${OFFICE}/table" Target="../tables/${target.slice(target.lastIndexOf('/') + 1)}"/>`;
    });
    if (links.length > 0) parts.set(relationshipsPart(part), bytesOfText(relationships(links.join(''))));
    return { name, part };
  }

  private tablesSoFar: number | undefined;
  /** Tables are numbered through the whole workbook. */
  private nextTable(): number {
    this.tablesSoFar ??= Math.max(
      0,
      ...this.file.tables.map(({ part }) =>
        Number(tagsNamed(this.textIn(part), part, 'table')[0]?.attributes['id'] ?? 0),
      ),
    );
    return ++this.tablesSoFar;
  }

  /** The workbook part names its sheets and names; its relationships say where they lie. */
  private link(workbook: string, joined: readonly Joined[], styles: string | undefined): void {
    const { file, draft } = this;
    const at = relationshipsPart(file.part);
    const linked = this.textIn(at);
    const taken = new Set(tagsNamed(linked, at, 'Relationship').map(({ attributes }) => attributes['Id']));
    let number = 0;
    const freshId = (): string => {
      do number++;
      while (taken.has(`rId${number}`));
      return `rId${number}`;
    };
    const target = (id: string, kind: string, part: string): string =>
      `<Relationship Id="${id}" Type="${OFFICE}/${kind}" Target="${part.slice(this.folder.length)}"/>`;
    const ids = joined.map(freshId);
    const links = joined.map(({ part }, turn) => target(ids[turn] ?? '', 'worksheet', part));
    if (styles !== undefined) links.push(target(freshId(), 'styles', styles));
    this.parts.set(at, bytesOfText(beforeEnd(linked, at, links.join(''))));

    const prefix = /<(\w+:)?workbook[\s>]/.exec(workbook)?.[1] ?? '';
    const sheetIds = tagsNamed(workbook, file.part, 'sheet').map(({ attributes }) =>
      Number(attributes['sheetId']),
    );
    const first = Math.max(0, ...sheetIds) + 1;
    const sheets = joined.map(
      ({ name }, turn) =>
        `<${prefix}sheet xmlns:r="${OFFICE}" name="${escaped(name)}" sheetId="${first + turn}" r:id="${ids[turn] ?? ''}"/>`,
    );
    const names = (draft.newNames ?? []).map(
      ({ name, area }) =>
        `<${prefix}definedName name="${name}">${escaped(areaText(area, true))}</${prefix}definedName>`,
    );
    const titles = joined.flatMap(({ name }, turn) => {
      const print = draft.layouts?.find(({ sheet }) => sheet === name)?.print;
      const own = (what: string, place: string): string =>
        `<${prefix}definedName name="_xlnm.${what}" localSheetId="${file.sheets.length + turn}">${escaped(place)}</${prefix}definedName>`;
      const rows = print?.repeatRows;
      return [
        ...(print?.area === undefined ? [] : [own('Print_Area', areaText(print.area, true))]),
        ...(rows === undefined
          ? []
          : [own('Print_Titles', `${sheetText(name)}!$${rows[0] + 1}:$${rows[1] + 1}`)]),
      ];
    });
    const edits = insertions(workbook, file.part, prefix, sheets.join(''), [...names, ...titles].join(''));
    this.parts.set(file.part, bytesOfText(edited(workbook, edits)));
  }
}

/** Where the workbook part takes its sheets and its names; the names stand after what may lie between. */
function insertions(xml: string, part: string, prefix: string, sheets: string, names: string): Edit[] {
  const ends = new Map<string, { from: number; to: number }>();
  walk(xml, part, {
    close(name, from, to) {
      ends.set(name, { from, to });
    },
  });
  const edits: Edit[] = [];
  const inside = ends.get('sheets');
  if (inside !== undefined) edits.push({ from: inside.from, to: inside.from, text: sheets });
  if (names === '') return edits;
  const known = ends.get('definedNames');
  const [tag] = tagsNamed(xml, part, 'definedNames');
  const whole = `<${prefix}definedNames>${names}</${prefix}definedNames>`;
  if (known !== undefined && tag?.selfClosing !== true)
    edits.push({ from: known.from, to: known.from, text: names });
  else if (tag !== undefined) edits.push({ from: tag.from, to: tag.to, text: whole });
  else {
    const after = Math.max(
      ...['sheets', 'functionGroups', 'externalReferences'].map((name) => ends.get(name)?.to ?? 0),
    );
    edits.push({ from: after, to: after, text: whole });
  }
  return edits;
}

export const addSheets = (file: WorkbookFile, draft: Draft): Parts => new Joining(file, draft).run();
