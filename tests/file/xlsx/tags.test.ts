/** Tag by tag as a general XML parser reads it, also where the text is damaged or comes in pieces. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { TagReader } from '../../../src/file/xlsx/tags';
import { localName, type Visitor } from '../../../src/file/xlsx/xml';
import { openArchive } from '../../../src/file/xlsx/archive';
import { chances } from '../../../src/make/long/fuzz';

type Heard = readonly unknown[][] | 'refused';

/** What is heard of a part, text that stands together as one. */
function heard(read: (visitor: Required<Visitor>) => void): Heard {
  const all: unknown[][] = [];
  let [text, depth] = ['', 0];
  const flush = (): void => {
    if (text !== '' && depth > 0) all.push([text]);
    text = '';
  };
  try {
    read({
      open({ prefix, name, attributes, ...rest }) {
        flush();
        depth += 1;
        all.push([prefix + name, Object.entries(attributes), rest]);
      },
      text: (more) => (text += more),
      close(name, from, to) {
        flush();
        depth -= 1;
        all.push([name, from, to]);
      },
    });
  } catch {
    return 'refused';
  }
  return all;
}

const here = (pieces: Iterable<string>): Heard =>
  heard((visitor) => {
    new TagReader(pieces, visitor, (why) => {
      throw new Error(why);
    }).read();
  });

/** The same from a parser that others made. */
const there = (xml: string): Heard =>
  heard((visitor) => {
    const parser = new SaxesParser({ position: true, xmlns: false });
    const opening = (): number => xml.lastIndexOf('<', parser.position - 1);
    let from = 0;
    parser.on('error', (error) => {
      throw error;
    });
    parser.on('opentagstart', () => {
      from = opening();
    });
    parser.on('opentag', ({ name, attributes, isSelfClosing: selfClosing }) => {
      const local = localName(name);
      const prefix = name.slice(0, name.length - local.length);
      visitor.open({ name: local, prefix, attributes, from, to: parser.position, selfClosing });
    });
    parser.on('closetag', ({ name, isSelfClosing }) => {
      visitor.close(localName(name), isSelfClosing ? from : opening(), parser.position);
    });
    parser.on('text', visitor.text);
    parser.on('cdata', visitor.text);
    parser.write(xml);
    parser.close();
  });

const pieces = (text: string, size: number): string[] => text.match(new RegExp(`[^]{1,${size}}`, 'g')) ?? [];

describe('what it reads', () => {
  it.each([
    '<a b="1&amp;2 &#65;&#x42;" c=\'"\'>x &lt;&gt;&quot;&apos;&amp;amp; y</a>',
    '\uFEFF<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n<!-- <b> --><x:a xmlns:x="u">\r\n<x:b/>\r</x:a>\n<!-- -->',
    '<a><![CDATA[<b>&amp;]]></a>',
    '<a b="1\t2\r\n3" c = "d>e" ><?p q?></a >',
    '<a __proto__="1" constructor="2" é="3"/>',
    '<!DOCTYPE a><a/>',
  ])('%s', (xml) => {
    const found = here([xml]);
    expect(found).not.toBe('refused');
    expect(found).toEqual(there(xml));
    expect(here([...xml])).toEqual(found);
  });
});

describe('what it refuses', () => {
  it.each([
    '',
    'hello',
    '<a>',
    '<a></b>',
    '<a/><b/>',
    '<a/>text',
    '<a b="1" b="2"/>',
    '<a b=1/>',
    '<a b="<"/>',
    '<a>&nbsp;</a>',
    '<a>& </a>',
    '<a>&#0;</a>',
    '<a>&#xD800;</a>',
    '<a>\u0001</a>',
    '<a>]]></a>',
    '<a><!-- ',
    '< a/>',
    '<1a/>',
    '<a / >',
    '<?xml version="x"?><a/>',
    ' <?xml version="1.0"?><a/>',
    '<a><?xml version="1.0"?></a>',
  ])('%j', (xml) => {
    expect(there(xml)).toBe('refused');
    expect(here([xml])).toBe('refused');
    expect(here([...xml])).toBe('refused');
  });

  it('a document type of its own, whatever it defines', () => {
    expect(() =>
      new TagReader(['<!DOCTYPE a [<!ENTITY x "y">]><a>&x;</a>'], {}, (why) => {
        throw new Error(why);
      }).read(),
    ).toThrow('it defines a document type of its own');
  });
});

const SPOILS = [
  '<',
  '>',
  '&',
  '"',
  "'",
  '/',
  '&amp;',
  '&#65;',
  '\r',
  '\t',
  ']]>',
  '<!--a-->',
  '<x/>',
  '</',
  '=',
];

it('the parts of a workbook, as they are and damaged by chance, just as the other reads them', async () => {
  const path = fileURLToPath(new URL('../../books/floor.xlsx', import.meta.url));
  expect(readFileSync(path).length).toBeGreaterThan(0);
  const seed = Date.now() % 1_000_000;
  const next = chances(seed);
  const chosen = (most: number): number => Math.floor(next() * most);
  for (const [name, bytes] of await openArchive(path)) {
    if (!/\.(?:xml|rels)$/.test(name) || bytes.length > 100_000) continue;
    const whole = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
    expect(here(pieces(whole, 1 + chosen(60))), `${name}, seed ${seed}`).toEqual(there(whole));
    for (let turn = 0; turn < 10; turn++) {
      const at = chosen(whole.length);
      const added = next() < 0.6 ? (SPOILS[chosen(SPOILS.length)] ?? '') : '';
      const xml = whole.slice(0, at) + added + whole.slice(at + (added === '' ? 1 + chosen(6) : 0));
      expect(here(pieces(xml, 1 + chosen(60))), `${name}, seed ${seed}, ${at} ${added}`).toEqual(there(xml));
    }
  }
});
