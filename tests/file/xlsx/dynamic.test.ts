import { describe, expect, it } from 'vitest';
import type { Parts } from '../../../src/file/xlsx/archive';
import { readDynamic, withMark } from '../../../src/file/xlsx/dynamic';
import { bytesOfText } from '../../../src/file/xlsx/text';

const PART = 'xl/metadata.xml';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const RICH =
  '<metadataTypes count="1"><metadataType name="XLRICHVALUE" minSupportedVersion="120000"/></metadataTypes><futureMetadata name="XLRICHVALUE" count="1"><bk><extLst/></bk></futureMetadata>';
const parts = (inside: string): Parts =>
  new Map([[PART, bytesOfText(`<metadata xmlns="${MAIN}">${inside}</metadata>`)]]);
const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** Marks, and reads the mark back: it must be among those that mean “may spill”. */
function marked(inside: string): { mark: string; xml: string } {
  const before = parts(inside);
  const { mark, bytes } = withMark(before, PART);
  expect(readDynamic(new Map([[PART, bytes]]), PART).marks).toContain(mark);
  return { mark, xml: text(bytes) };
}

describe('the mark that lets a formula spill', () => {
  it('is 1 in a file that had no marks', () => {
    const { mark, bytes } = withMark(new Map(), undefined);
    expect(mark).toBe('1');
    expect([...readDynamic(new Map([[PART, bytes]]), PART).marks]).toEqual(['1']);
  });

  it('comes after the marks of rich values, which stay as they were', () => {
    const values = '<valueMetadata count="1"><bk><rc t="1" v="0"/></bk></valueMetadata>';
    const { mark, xml } = marked(RICH + values);
    expect(mark).toBe('1');
    expect(xml).toContain('<futureMetadata name="XLRICHVALUE" count="1"><bk><extLst/></bk></futureMetadata>');
    expect(xml).toContain('<metadataTypes count="2">');
    expect(xml).toContain('<rc t="2" v="0"/>');
    // The schema's order: types, future, cells, values.
    expect(
      [...xml.matchAll(/<(metadataTypes|futureMetadata|cellMetadata|valueMetadata)\b/g)].map(
        ([, name]) => name,
      ),
    ).toEqual(['metadataTypes', 'futureMetadata', 'futureMetadata', 'cellMetadata', 'valueMetadata']);
  });

  it('comes after other cells’ marks', () => {
    const { mark, xml } = marked(`${RICH}<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata>`);
    expect(mark).toBe('2');
    expect(xml).toContain('<cellMetadata count="2"><bk><rc t="1" v="0"/></bk>');
  });

  it('is another where the one there is means: an array of old', () => {
    const old = text(withMark(new Map(), undefined).bytes).replace('fDynamic="1"', 'fDynamic="0"');
    const before: Parts = new Map([[PART, bytesOfText(old)]]);
    expect(readDynamic(before, PART).marks.size).toBe(0);
    const { mark, bytes } = withMark(before, PART);
    expect(mark).toBe('2');
    expect([...readDynamic(new Map([[PART, bytes]]), PART).marks]).toEqual(['2']);
  });
});
