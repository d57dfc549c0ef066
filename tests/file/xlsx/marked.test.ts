import { describe, expect, it } from 'vitest';
import { unzipSync } from 'fflate';
import type { Parts } from '../../../src/file/xlsx/archive';
import { chainArrays, spillMark, storeHeldFormulas } from '../../../src/file/xlsx/marked';
import { partText, readWorkbook, relationshipsOf } from '../../../src/file/xlsx/workbook';
import { smallBook } from '../book';

const CHAIN = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const parts = (given: Parameters<typeof smallBook>[1] = {}): Parts =>
  new Map(Object.entries(unzipSync(smallBook('', given))));

describe('a workbook without marks', () => {
  it('is given the part, its content type and its relationship', () => {
    const before = parts();
    const file = readWorkbook(before);
    const after: Parts = new Map(before);
    expect(spillMark(file, after)).toBe('1');
    expect(partText(after, '[Content_Types].xml')).toContain('<Override PartName="/xl/metadata.xml"');
    expect(relationshipsOf(after, 'xl/workbook.xml')).toContainEqual({
      id: 'rId2',
      type: 'sheetMetadata',
      target: 'xl/metadata.xml',
    });
    expect([...readWorkbook(after).dynamic.marks]).toEqual(['1']);
  });

  it('never takes a relationship’s number twice', () => {
    const before = parts({
      parts: {
        'xl/_rels/workbook.xml.rels': `<Relationships xmlns="u"><Relationship Id="rId1" Type="${CHAIN}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId3" Type="${CHAIN}/theme" Target="theme.xml"/></Relationships>`,
      },
    });
    const after: Parts = new Map(before);
    spillMark(readWorkbook(before), after);
    expect(relationshipsOf(after, 'xl/workbook.xml').map(({ id }) => id)).toEqual(['rId1', 'rId3', 'rId4']);
  });
});

it('the calculation chain marks the cells made arrays, a sheet said once standing for those after it', () => {
  const before = parts({
    parts: {
      'xl/calcChain.xml':
        '<calcChain><c r="A1" i="1"/><c r="A2"/><c r="A1" i="2"/><c r="A3" i="1" a="1"/></calcChain>',
      'xl/_rels/workbook.xml.rels': `<Relationships xmlns="u"><Relationship Id="rId1" Type="${CHAIN}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${CHAIN}/calcChain" Target="calcChain.xml"/></Relationships>`,
    },
  });
  const after: Parts = new Map(before);
  chainArrays(
    readWorkbook(before),
    after,
    ['A1', 'A2', 'A3'].map((cell) => ({ sheet: 0, cell })),
  );
  expect(partText(after, 'xl/calcChain.xml')).toBe(
    '<calcChain><c r="A1" i="1" a="1"/><c r="A2" a="1"/><c r="A1" i="2"/><c r="A3" i="1" a="1"/></calcChain>',
  );
});

it('calls of ours in a name are stored as in a cell; a name that calls none stays to the letter', () => {
  const names =
    '<definedNames><definedName name="Wide">HEM.RODWIDTH(One!$A$1,&quot;a&lt;b&quot;)</definedName><definedName name="Plain">One!$A$1&amp;&quot;x&quot;</definedName></definedNames>';
  const before = parts({ names });
  const after: Parts = new Map(before);
  storeHeldFormulas(readWorkbook(before), after);
  expect(partText(after, 'xl/workbook.xml')).toBe(
    partText(before, 'xl/workbook.xml')?.replace('HEM.RODWIDTH', '_xldudf_HEM_RODWIDTH'),
  );
  const again: Parts = new Map(after);
  storeHeldFormulas(readWorkbook(after), again);
  expect([...again]).toEqual([...after]);
});
