import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions/index';
import { hem } from '../../src/file/hem';
import { golden, listening, scratch, stale } from './book';

const LONG = 60_000;
async function calc(
  words: readonly string[],
  input?: string,
): Promise<{ exit: number; said: string[]; complained: string[] }> {
  const io = listening(input);
  return { exit: await hem(['calc', ...words], io), said: io.said, complained: io.complained };
}

/** By ordinary arithmetic, or the worksheet rule named beside it. */
const FORMULAS: readonly (readonly [string, unknown])[] = [
  ['=1+1', { value: 2 }],
  ['ROUND(HEM.RODWIDTH(72)*1.1,2)', { value: 103.4 }],
  ['=HEM.RODWIDTH("84 1/2",12,10)', { value: 106.5 }],
  ['hem.rodwidth("84 1/2",12,10)', { value: 106.5 }],
  ['_xldudf_HEM_RODWIDTH(60,0,0)', { value: 60 }],
  ['HEM.EXTENSION(IF(TRUE,"44 1/2"))', { value: 11 }],
  ['LET(rod,HEM.RODWIDTH(72),rod+SUM(SEQUENCE(2)))', { value: 97 }],
  ['MAP({60,72},LAMBDA(x,HEM.RODWIDTH(x)))', { spill: [[82, 94]] }],
  ['SUM(HEM.GROMMETS(100))', { value: 18 + 100 / 18 + 50 / 18 }],
  [
    'SEQUENCE(2,2)',
    {
      spill: [
        [1, 2],
        [3, 4],
      ],
    },
  ],
  ['"a ""b"""', { value: 'a "b"' }],
  ['1=1', { value: true }],
  ['LEN("1/2")', { value: 3 }],
  ['{"a,b";"c;d"}', { spill: [['a,b'], ['c;d']] }],
];

describe('a formula gives', () => {
  it.each(FORMULAS)(
    '%s → %j',
    async (formula, wanted) => {
      const { said, exit } = await calc(['--json', formula]);
      const got = JSON.parse(said[0] ?? '') as { value?: unknown };
      const { value } = wanted as { value?: unknown };
      if (typeof value === 'number') expect(got.value).toBeCloseTo(value, 10);
      else expect(got).toEqual(wanted);
      expect(exit).toBe(0);
    },
    LONG,
  );

  it.each(CATALOGUE.flatMap((one) => one.examples.map(({ formula, gives }) => [formula, gives] as const)))(
    '=%s, as its example says',
    async (formula, gives) => {
      const { said } = await calc(['--json', formula]);
      const got = JSON.parse(said[0] ?? '') as { value?: unknown; spill?: unknown };
      const single = Array.isArray(gives) && gives.length === 1 && (gives[0] as unknown[]).length === 1;
      expect(got.spill ?? got.value).toEqual(single ? (gives as unknown[][])[0]?.[0] : gives);
    },
    LONG,
  );
});

describe('what cannot be computed', () => {
  it.each([
    ['1/0', '#DIV/0!', /divides by zero/],
    ['HEM.RODWIDTH(-3)', '#VALUE!', /^opening_width reads -3\. It must be above 0\.$/],
    ['HEM.RODWIDTH(#REF!)', '#VALUE!', /^opening_width points at a cell that shows #REF!/],
    ['HEM.YARDGE(1)', '#NAME?', /Did you mean HEM\.YARDAGE\?$/],
    ['NOSUCH(1)', '#NAME?', /It calls NOSUCH, which is not known here\.$/],
    ['Nix+1', '#NAME?', /It names Nix, which is defined nowhere here\.$/],
    ['SUM(', '#NAME?', /cannot be read as a formula/],
    ['[Other.xlsx]Sheet1!A1', '#NAME?', /points into another workbook \(\[Other\.xlsx\]\)/],
    ['HEM.RAILROADED(100,150,"pinch",54)', '#N/A', /./],
  ])(
    '%s shows %s and says why',
    async (formula, error, why) => {
      const { said, complained, exit } = await calc([formula]);
      expect([said, exit]).toEqual([[error], 1]);
      expect(complained.join('\n')).toMatch(why);
      const json = await calc(['--json', formula]);
      expect(JSON.parse(json.said[0] ?? '')).toEqual({ error, message: complained[0] });
      expect(json.complained).toEqual([]);
    },
    LONG,
  );

  it(
    'does not keep the others from being computed',
    async () => {
      const { said, exit } = await calc(['1/0', '2+2']);
      expect([said, exit]).toEqual([['#DIV/0!', '4'], 1]);
    },
    LONG,
  );
});

describe('how it is asked and answers', () => {
  it(
    'one formula a line of standard input, blank lines passed over',
    async () => {
      const { said } = await calc(['--json'], '=1+1\n\n  HEM.DROP(98,"pinch")\r\n');
      expect(said).toEqual(['{"value":2}', '{"value":96}']);
    },
    LONG,
  );

  it(
    '--steps adds the steps of every call and its findings',
    async () => {
      const { said } = await calc(['--steps', '--json', 'HEM.DROP({98,99.5},"pinch",,"kiss")']);
      const got = JSON.parse(said[0] ?? '') as { steps: string[]; findings: { sentence: string }[] };
      expect(got.steps).toHaveLength(2);
      expect(got.findings.map((one) => one.sentence).join()).toMatch(/touches the floor/);
    },
    LONG,
  );

  it(
    'a spill prints as a table, numbers to the right',
    async () => {
      expect((await calc(['VSTACK({"yards",8},{"rolls",12.5})'])).said).toEqual([
        'yards     8',
        'rolls  12.5',
      ]);
    },
    LONG,
  );

  it(
    'wants a formula, and knows its options',
    async () => {
      expect(await calc([])).toEqual({
        exit: 2,
        said: [],
        complained: ['calc wants a formula. See npm run hem -- calc --help.'],
      });
      const { exit, complained } = await calc(['--bok', 'x']);
      expect([exit, complained[0]]).toEqual([2, expect.stringMatching(/^calc has no option --bok\./)]);
    },
    LONG,
  );
});

describe('beside a workbook', () => {
  it(
    'resolves its sheets, names, tables, spills and lambdas, computed anew',
    async () => {
      const formulas: readonly (readonly [string, unknown])[] = [
        ['SUM(Rolls[Yards])', { value: 218.75 }],
        ['Rolls!C3', { value: 116 }],
        ['ROWS(Cuts)', { value: 4 }],
        ['Spills!B1', { value: 9 }],
        ['A1', { value: 1 }],
        ['SUM(A1#)', { value: 10 }],
        ['Twice(21)', { value: 42 }],
        ['Rolls[[#Totals],[Yards]]', { value: 218.75 }],
        ['HEM.ROLLCUTS(Rolls[Yards],117)', { value: 65 }],
        ['Rolls[Nope]', { error: '#NAME?', message: 'The table Rolls has no column “Nope”.' }],
      ];
      const path = join(scratch(), 'stale.xlsx');
      writeFileSync(path, stale(golden('spills.xlsx')));
      const { said, complained, exit } = await calc([
        '--json',
        '--book',
        path,
        ...formulas.map(([formula]) => formula),
      ]);
      expect(said.map((line) => JSON.parse(line) as unknown)).toEqual(formulas.map(([, wanted]) => wanted));
      expect(complained[0]).toMatch(
        /^7 formulas of “.*” could not be computed; what needs them is not either/,
      );
      expect(exit).toBe(1);
    },
    LONG,
  );

  it(
    'says what is wrong with the file, exit 3',
    async () => {
      const { exit, complained } = await calc(['--book', golden('none.xlsx'), '1+1']);
      expect([exit, complained[0]]).toEqual([3, expect.stringMatching(/is not there\. Check the name/)]);
    },
    LONG,
  );
});
