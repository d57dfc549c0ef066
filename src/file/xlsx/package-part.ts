/** What every part of an .xlsx that is written anew has in common. */
import type { Parts } from './archive';

export const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
export const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
export const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';

export const TYPES = '[Content_Types].xml';

export const relationships = (list: string): string =>
  `${HEAD}<Relationships xmlns="${PACKAGE}">${list}</Relationships>`;

/** Where a part of this kind may stand that is not there yet: xl/tables/table7.xml. */
export function freshPart(parts: Parts, stem: string): string {
  let number = 1;
  while (parts.has(`${stem}${number}.xml`)) number++;
  return `${stem}${number}.xml`;
}
