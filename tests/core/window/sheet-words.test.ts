import { describe, expect, it } from 'vitest';
import { finding, Refusal, type Finding } from '../../../src/core/cell/answer';
import type { ColumnKey } from '../../../src/core/window/columns';
import { readWindow } from '../../../src/core/window/columns';
import { FINDINGS } from '../../../src/core/findings/table';
import { readHouse } from '../../../src/core/house/house';
import { WindowWork } from '../../../src/core/window/job';
import { inSheetWords, namedBy } from '../../../src/core/window/sheet-words';
import { CATALOGUE } from '../../../functions/index';

const HERS: Partial<Record<ColumnKey, string>> = {
  openingWidth: 'W',
  leftExtension: 'L ext',
  rightExtension: 'R ext',
  measured: 'Ht',
  heading: 'Style',
  fabricWidth: 'Goods W',
  quantity: 'Qty',
  fullness: 'Full.',
};
const naming = (gives: readonly string[] = Object.keys(HERS)) =>
  namedBy((key) => HERS[key as ColumnKey], { heading: 'pinch', gives: (key) => gives.includes(key) });
const say = (of: Finding, gives?: readonly string[]): string => inSheetWords(of, naming(gives)).sentence;

describe('a finding in the sheet’s own words', () => {
  it.each([
    [
      finding(
        'extensionOutsideBand',
        'right_extension',
        'right_extension',
        '0 in',
        '60 in',
        '11 in',
        '15 in',
      ),
      /^R ext is 0 in;/,
    ],
    [finding('fabricTooNarrow', 'fabric_width', '1 in', '2 in'), /^Goods W reads 1 in,/],
    [finding('doesNotCover', 'widths', '2', '3 in'), /Check widths and Goods W\.$/],
    [finding('dropTooShort', 'measured', '1 in'), /^Ht reads 1 in,/],
    [finding('noWindowGiven', 'quantity', 'quantity'), /^Qty reads 0, which/],
    // Without a column of hers, the plain heading.
    [finding('matchWithoutRepeat', 'match'), /^match says half-drop, but no vertical repeat is given/],
    [finding('repeatWiderThanCloth', 'horizontal_repeat', '60 in', '54 in'), /^horizontal repeat is 60 in,/],
  ])('%#', (of, wanted) => {
    expect(say(of)).toMatch(wanted);
  });

  it('names the house rule that stands for what she does not give', () => {
    expect(say(finding('waveRatio', 'fullness', '2.6', '1.6', '2.2'))).toContain('; Full. reads 2.6.');
    expect(say(finding('waveRatio', 'fullness', '2.6', '1.6', '2.2'), [])).toContain(
      '; house rule “fullness pinch” reads 2.6.',
    );
    expect(say(finding('liningTooNarrow', 'lining_width', '1 in'), [])).toMatch(
      /^house rule “usual lining width” reads 1 in/,
    );
  });

  it('leaves alone what was read, and words that are no names', () => {
    expect(say(finding('unreadable', 'W', 'W', '“fabric_width”', 'a length', '84 1/2'))).toContain(
      '“fabric_width”',
    );
    const pleats = finding('pleatsOutsideUsual', 'widths', '2 3/4 in', '9 in', '3 to 5 in', '4 to 8 in');
    expect(say(pleats)).toBe(pleats.sentence);
  });

  it('leaves no name of a parameter in any sentence of the table', () => {
    const names = new Set(CATALOGUE.flatMap((of) => of.parameters.map((one) => one.name)));
    const plain = naming([]);
    for (const [code, { weight, says }] of Object.entries(FINDINGS)) {
      // Every word is a name of ours: so each place where one may stand is tried.
      for (const name of names) {
        const words = Array.from({ length: says.length }, () => name);
        const sentence = (says as (...words: unknown[]) => string)(...words);
        const said = inSheetWords(
          { code: code as keyof typeof FINDINGS, weight, about: name, sentence },
          plain,
        );
        const unquoted = said.sentence.replace(/“[^”]*”/g, '');
        expect([code, unquoted]).toEqual([code, expect.not.stringMatching(/[a-z]_[a-z]/)]);
      }
    }
  });
});

describe('a window’s own findings and refusals', () => {
  const found = Object.entries(HERS).map(([key, heading], at) => ({ key: key as ColumnKey, at, heading }));
  const row = (...cells: (string | number | null)[]) => {
    const house = readHouse(null);
    return new WindowWork(readWindow(cells, found, house.unit), house.rules, HERS);
  };
  it('say her headings', () => {
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
