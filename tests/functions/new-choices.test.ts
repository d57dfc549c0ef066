import { describe, expect, it } from 'vitest';
import { functionNamed } from '../../functions';
import { RULE_LINES } from '../../src/core/house/rules';
import { WINDOW_COLUMNS } from '../../src/core/window/columns';
import type { CellIn } from '../../src/core/cell/fields';

/** Why there is no answer, or what is worth knowing about it. */
function said(name: string, ...inputs: readonly CellIn[]): readonly string[] {
  const outcome = functionNamed(name)?.call(inputs);
  if (outcome === undefined) throw new Error(`no function ${name}`);
  return 'error' in outcome
    ? [`${outcome.error} ${outcome.finding.sentence}`]
    : outcome.findings.map(({ sentence }) => sentence);
}
const cells = (name: string, ...inputs: readonly CellIn[]): unknown => {
  const outcome = functionNamed(name)?.call(inputs);
  return outcome !== undefined && 'cells' in outcome ? outcome.cells : outcome;
};

describe('a word that is no choice', () => {
  it.each<[string, readonly CellIn[], string]>([
    ['EXTENSION', [96, 'widest'], 'end reads “widest”. Use one of: low, high, clear.'],
    [
      'DROP',
      [60, 'pinch', null, 'sil'],
      'floor_finish reads “sil”. Use one of: clear, kiss, break, puddle, sill, apron, radiator, counter.',
    ],
    [
      'CUTLENGTH',
      [96, 'pinch', null, 'net'],
      'layer reads “net”. Use one of: face, sheer, lining, interlining.',
    ],
    [
      'RAILROADED',
      [104, 96, 'pinch', 118, null, null, null, null, null, [['bottom edge', 'raw']]],
      'house rule “bottom edge” reads “raw”. Use one of: hemmed, finished.',
    ],
    [
      'DROP',
      [60, 'pinch', null, 'radiator', [['radiator clearance', 'hot']]],
      'house rule “radiator clearance” reads “hot”, which is not a length. Write it like 84 1/2, 7\' 6" or 214 cm.',
    ],
    [
      'YARDAGE',
      [104, 96, 'pinch', 54, null, null, null, null, null, null, [['bolt widths', '54; wide']]],
      'house rule “bolt widths” reads “wide”, which is not a length. Write it like 84 1/2, 7\' 6" or 214 cm.',
    ],
    [
      'SELLPRICE',
      [100, 'none', 'markup'],
      'rate reads “none”, which is not a rate. Write it like 0.45 or 45 %.',
    ],
  ])('is told with those that are: %s %j', (name, inputs, sentence) => {
    expect(said(name, ...inputs)).toEqual([`#VALUE! ${sentence}`]);
  });
});

describe('a word that no house rule with choices has', () => {
  const lines = RULE_LINES.filter(({ kind }) => kind.choices !== undefined);
  it.each(lines.map((line) => [line.name, line] as const))('%s', (name, { kind }) => {
    const words = (kind.choices ?? []).map(({ word }) => word);
    expect(said('WIDTHS', 104, 'pinch', 54, null, null, null, [[name, 'perhaps']])).toEqual([
      `#VALUE! house rule “${name}” reads “perhaps”. Use one of: ${words.join(', ')}.`,
    ]);
  });
  it('are all the rules of this work', () => {
    expect(lines.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        'pattern from',
        'pattern start',
        'half drop starts',
        'half width charged',
        'pleats by',
        'interlining cut',
        'bottom edge',
        'wands',
      ]),
    );
  });
});

describe('a word that no choice of a row has', () => {
  const columns = Object.values(WINDOW_COLUMNS).filter(({ field }) => field.kind.choices !== undefined);
  it.each(columns.map((one) => [one.heading, one.field.kind.choices ?? []] as const))(
    '%s',
    (heading, list) => {
      const headers = ['rod width', 'finished drop', 'heading', 'fabric width'];
      const row = [104, 96, 'pinch', 54];
      const at = headers.indexOf(heading);
      const own = at < 0 ? [...headers, heading] : headers;
      const given = at < 0 ? [...row, 'perhaps'] : row.map((one, place) => (place === at ? 'perhaps' : one));
      const [line] = cells('SCHEDULE', [own], [given], 'yardage') as readonly (readonly string[])[];
      expect(line?.[0]).toBe(
        `${heading} reads “perhaps”. Use one of: ${list.map(({ word }) => word).join(', ')}.`,
      );
    },
  );
});

describe('what cannot be, or is worth a look', () => {
  it.each<[string, readonly CellIn[], string]>([
    [
      'RODWIDTH',
      [Array(12).fill('20').join(' + ')],
      '#VALUE! opening_width holds 12 parts, more than the most taken here, 8. Write one bay, from its left end to its right.',
    ],
    [
      'RODWIDTH',
      ['30 + 0 + 30'],
      '#VALUE! opening_width holds a part of 0. Write the straight parts that are there, like 30 + 60 + 30; a formula hands blank cells over as IF(B7:D7="","",B7:D7).',
    ],
    [
      'RODWIDTH',
      [[[30, 0, 30]]],
      '#VALUE! opening_width holds a part of 0. Write the straight parts that are there, like 30 + 60 + 30; a formula hands blank cells over as IF(B7:D7="","",B7:D7).',
    ],
    [
      'RODWIDTH',
      [[[60, null]]],
      'opening_width holds one part: it is taken as a plain opening, without a bend.',
    ],
    [
      'YARDAGE',
      [104, 96, 'pinch', 54, null, 1, 'pair', null, 'half-drop'],
      'match says half-drop, but no vertical_repeat is given; the cuts are taken as plain. Enter the repeat, or leave match out.',
    ],
    [
      'YARDAGE',
      [104, 96, 'pinch', 54, 120],
      'vertical_repeat reads 120 in, taller than the cut, 112 in: no width shows a whole pattern. Check the repeat and its unit.',
    ],
    [
      // (60 + 7) × 2.5 + 6 = 173½: 3½ widths of 54 give 186, 3 give 160.
      'YARDAGE',
      [
        60,
        96,
        'pinch',
        54,
        null,
        1,
        'one-way left',
        null,
        null,
        null,
        [['widths rounding', 'half per panel']],
      ],
      '3.5 widths a window are cut from whole ones: half a width is left over at each window. The house rule “share half widths” lets two windows make one together.',
    ],
    [
      'LINING',
      [104, 96, 'pinch', 110],
      'lining_width reads 110 in, more than its own cut of 103 in: this cloth could be turned, its width up the drop. Check the figure; the yardage is up the roll.',
    ],
    [
      'EXTENSION',
      [96, 'clear', null, 'pinch', 'stationary'],
      '#N/A A stationary panel is not drawn back: it has no stack.',
    ],
    [
      'GROMMETS',
      [3, [['grommet edge', 1.5]]],
      '#VALUE! flat_width reads 3 in, too narrow to set out a heading. Check the figure and its unit.',
    ],
  ])('has a sentence: %s %j', (name, inputs, sentence) => {
    expect(said(name, ...inputs)).toContain(sentence);
  });

  it('of a rod that is narrower without saving cloth says nothing', () => {
    // 4 widths or 3½, both cut from 4.
    const half = [['widths rounding', 'half per panel']];
    expect(said('YARDAGE', 70, 96, 'pinch', 54, null, 1, 'one-way left', null, null, null, half)).toEqual([]);
  });
});

describe.each([
  ['nothing', null],
  ['0', 0],
])('an empty cell that arrives as %s', (_, empty) => {
  it('is not given, for every new input', () => {
    expect(cells('EXTENSION', 96, empty, empty, empty, empty, empty)).toBe(11);
    expect(cells('EXTENSION', 96, 'clear', empty, empty, empty, empty)).toBeCloseTo(23.6418, 4);
    expect(cells('DROP', 60, 'pinch', empty, empty)).toBe(58);
    expect(cells('CUTLENGTH', 96, 'pinch', empty, empty)).toBe(112);
    const headers = [['layer', 'rod width', 'finished drop', 'heading', 'fabric width']];
    expect(cells('SCHEDULE', headers, [[empty, 104, 96, 'pinch', 54]], 'yardage')).toEqual([[18.75]]);
  });

  it('is no clearance over a radiator, no bend’s price and no bolt', () => {
    expect(said('DROP', 60, 'pinch', empty, 'radiator', [['radiator clearance', empty]])).toEqual([
      expect.stringContaining('No clearance over a radiator is set'),
    ]);
    expect(said('HOUSERULE', 'price per bend', [['price per bend', empty]])).toEqual([
      '#N/A No price is set for this: add the house rule “price per bend” with your figure, or none where nothing is charged.',
    ]);
    expect(cells('HOUSERULE', 'bolt widths', [['bolt widths', empty]])).toBe('45; 48; 54; 60');
  });

  it('is no opening', () => {
    expect(said('RODWIDTH', empty)).toEqual([
      empty === null
        ? '#VALUE! opening_width is blank. Enter a length, or point at the cell that holds it.'
        : '#VALUE! opening_width is 0 or blank. Enter a length above 0.',
    ]);
  });
});
