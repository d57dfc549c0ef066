/** A workbook of papers alone, values without formulas: nothing of the job they came from is in it. */
import type { Draft } from '../../book/sheets/draft';
import { addSheets } from '../xlsx/add-sheets';
import type { Parts } from '../xlsx/archive';
import { HEAD, MAIN, OFFICE, relationships, TYPES } from '../xlsx/package-part';
import { bytesOfText } from '../xlsx/text';
import { readWorkbook } from '../xlsx/workbook';

const PACKAGE_TYPES = 'http://schemas.openxmlformats.org/package/2006/content-types';
const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml';

/** A workbook without a sheet, for sheets to be joined to. */
function empty(): Parts {
  const part = (text: string): Uint8Array => bytesOfText(text);
  return new Map([
    [
      TYPES,
      part(
        `${HEAD}<Types xmlns="${PACKAGE_TYPES}"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="png" ContentType="image/png"/><Override PartName="/xl/workbook.xml" ContentType="${WORKBOOK}"/></Types>`,
      ),
    ],
    [
      '_rels/.rels',
      part(
        relationships(`<Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/>`),
      ),
    ],
    [
      'xl/workbook.xml',
      part(`${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets></sheets></workbook>`),
    ],
    ['xl/_rels/workbook.xml.rels', part(relationships(''))],
  ]);
}

/** The draft's sheets and nothing else. */
export const workbookOf = (draft: Draft): Parts => addSheets(readWorkbook(empty()), draft);
