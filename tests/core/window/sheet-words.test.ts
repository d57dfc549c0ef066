import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { finding, Refusal, renamed, type Finding } from '../../../src/core/cell/answer';
import type { ColumnKey, Window } from '../../../src/core/window/columns';
import { WINDOW_COLUMNS } from '../../../src/core/window/columns';
import { fillNames, functionsWord, parameter } from '../../../src/core/findings/parameters';
import { FINDINGS } from '../../../src/core/findings/table';
import { readHouse } from '../../../src/core/house/house';
import { WindowWork } from '../../../src/core/window/job';
import { namedBy } from '../../../src/core/window/sheet-words';
import { CATALOGUE } from '../../../functions/index';

const OWN: Partial<Record<ColumnKey, string>> = {
  openingWidth: 'W',
  leftExtension: 'L ext',
  rightExtension: 'R ext',
  measured: 'Ht',
  heading: 'Style',
  fabricWidth: 'Goods W',
  quantity: 'Qty',
  fullness: 'Full.',
};
const naming = (gives: readonly string[] = Object.keys(OWN)) =>
  namedBy((key) => OWN[key as ColumnKey], { heading: 'pinch', gives: (key) => gives.includes(key) });
const say = (finding: Finding, gives?: readonly string[]): string => renamed(finding, naming(gives)).sentence;

describe('a finding in the sheet’s own words', () => {
  it.each([
    [
      finding(
        'extensionOutsideBand',
        parameter('rightExtension'),
        parameter('rightExtension'),
        '0 in',
        '60 in',
        '11 in',
        '15 in',
      ),
      /^R ext is 0 in;/,
    ],
    [finding('fabricTooNarrow', parameter('fabricWidth'), '1 in', '2 in'), /^Goods W reads 1 in,/],
    [finding('doesNotCover', parameter('widths'), '2', '3 in'), /Check widths and Goods W\.$/],
    [finding('dropTooShort', parameter('measured'), '1 in'), /^Ht reads 1 in,/],
    [finding('noWindowGiven', parameter('quantity'), parameter('quantity')), /^Qty reads 0, which/],
    // Without a column of the table, the plain heading.
    [
      finding('matchWithoutRepeat', parameter('match')),
      /^match says half-drop, but no vertical repeat is given/,
    ],
    [
      finding('repeatWiderThanCloth', parameter('horizontalRepeat'), '60 in', '54 in'),
      /^horizontal repeat is 60 in,/,
    ],
  ])('%#', (finding, wanted) => {
    expect(say(finding)).toMatch(wanted);
  });

  it('names the house rule that stands for what the table does not give', () => {
    expect(say(finding('waveRatio', parameter('fullness'), '2.6', '1.6', '2.2'))).toContain(
      '; Full. reads 2.6.',
    );
    expect(say(finding('waveRatio', parameter('fullness'), '2.6', '1.6', '2.2'), [])).toContain(
      '; house rule “fullness pinch” reads 2.6.',
    );
    expect(say(finding('liningTooNarrow', parameter('liningWidth'), '1 in'), [])).toMatch(
      /^house rule “usual lining width” reads 1 in/,
    );
  });

  it('leaves alone what was read, and words that are no names', () => {
    expect(say(finding('unreadable', 'W', 'W', '“fabric_width”', 'a length', '84 1/2'))).toContain(
      '“fabric_width”',
    );
    const pleats = finding(
      'pleatsOutsideUsual',
      parameter('widths'),
      '2 3/4 in',
      '9 in',
      '3 to 5 in',
      '4 to 8 in',
    );
    expect(say(pleats)).toBe(pleats.sentence);
  });

  it('leaves no name of a parameter in any sentence of the table', () => {
    const names = new Set(
      CATALOGUE.flatMap((cellFunction) => cellFunction.parameters.map((one) => one.name)),
    );
    for (const [code, { says }] of Object.entries(FINDINGS)) {
      const words = Array.from({ length: says.length }, () => 'x');
      const open = (says as (...words: unknown[]) => string)(...words);
      // Written out it stands nowhere; every place is a parameter of a function.
      const places: string[] = [];
      const left = fillNames(open, (key) => {
        places.push(functionsWord(key));
        return '';
      });
      expect([code, left]).toEqual([code, expect.not.stringMatching(/[a-z]_[a-z]/)]);
      for (const place of places) expect(names).toContain(place);
    }
  });

  it('finds every parameter that the core speaks of by its key', () => {
    const names = new Set(
      CATALOGUE.flatMap((cellFunction) => cellFunction.parameters.map((one) => one.name)),
    );
    const core = fileURLToPath(new URL('../../../src/core', import.meta.url));
    const files = readdirSync(core, { recursive: true, encoding: 'utf8' }).filter((file) =>
      /\.ts$/.test(file),
    );
    const texts = files.map((file) => [file, readFileSync(join(core, file), 'utf8')] as const);
    expect(texts.filter(([, text]) => /'[a-z]+(_[a-z]+)+'/.test(text)).map(([file]) => file)).toEqual([]);
    const spoken = texts.flatMap(([, text]) => [...text.matchAll(/\bparameter\('(\w+)'\)/g)]);
    expect(spoken.length).toBeGreaterThan(50);
    for (const [, key = ''] of spoken) expect(names).toContain(functionsWord(key));
  });
});

describe('a window’s own findings and refusals', () => {
  const row = (...cells: (string | number | null)[]) => {
    const house = readHouse(null);
    const window = Object.entries(OWN).map(([key, name], at) => [
      key,
      WINDOW_COLUMNS[key as ColumnKey].field.kind.read(cells[at], { name, unit: house.unit }),
    ]);
    return new WindowWork(Object.fromEntries(window) as Window, house.rules, OWN);
  };
  it('say the table’s headings', () => {
    const work = row(60, 0, 12, 98, 'pinch', 54, 1, 2.5);
    work.rodWidth();
    expect(
      work
        .findings()
        .map((one) => one.sentence)
        .join(),
    ).toMatch(/^L ext is 0 in;/);
    expect(() => row(60, 12, 12, 98, 'pinch', 1, 1, 2.5).widths()).toThrow(/^Goods W reads 1 in,/);
    expect(() => row(60, 12, 12, 98, 'pinch', 1, 1, 2.5).widths()).toThrow(Refusal);
  });
});
