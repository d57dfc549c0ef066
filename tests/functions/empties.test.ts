import { describe, expect, it } from 'vitest';
import { functionNamed } from '../../functions';
import { MOST_ROWS } from '../../src/core/cell/fields';
import type { CellIn } from '../../src/core/cell/fields';
import { INCHES } from '../../src/core/exact/unit';
import { RULE_LINES } from '../../src/core/house/rules';

const call = (name: string, ...inputs: readonly CellIn[]) => functionNamed(name)!.call(inputs);
const cells = (outcome: ReturnType<typeof call>): unknown =>
  'error' in outcome ? outcome.finding.sentence : outcome.cells;

const HEADERS = ['rod width', 'drop', 'heading', 'fabric width', 'return'];
const ROW = [94, 96, 'pinch', 54, 3.5];
/** 6 cuts of 112 in are 18⅔ yd, up to 18¾. */
const YARDS = [15.625];

describe('a row of nothing but blanks and zeros', () => {
  it.each([
    ['null', null],
    ['0', 0],
    ['an empty text', ''],
  ])('is a blank row, as cells that arrive as %s make it', (_, empty) => {
    const none = HEADERS.map(() => empty);
    expect(cells(call('SCHEDULE', [HEADERS], [ROW, none, ROW, none], 'yardage'))).toEqual([
      YARDS,
      [''],
      YARDS,
    ]);
    expect(cells(call('CHECK', [HEADERS], [none, none]))).toMatch(/^row is (0 or )?blank/);
    expect(cells(call('AUDIT', [HEADERS], [ROW, none, ROW]))).toEqual(
      cells(call('AUDIT', [HEADERS], [ROW, ROW])),
    );
    expect(
      cells(
        call('BREAKPRICE', 5, [
          [0, 48.5],
          [60, 44],
          [empty, empty],
        ]),
      ),
    ).toBe(48.5);
  });
});

describe('a whole column', () => {
  const LONG = 1_048_576;
  const whole = (
    rows: readonly (readonly CellIn[])[],
    ...empties: readonly CellIn[]
  ): (readonly CellIn[])[] => {
    const below = empties.map((empty) => Array.from(rows[0] ?? [], () => empty));
    return Array.from({ length: LONG }, (_, at) => rows[at] ?? below[at % below.length] ?? []);
  };
  it.each([
    ['null', [null]],
    ['0', [0]],
    ['an empty text', ['']],
    ['blanks, empty texts and zeros by turns', [null, '', 0]],
  ])('is answered for its filled rows where the rest arrives as %s', (_, empties) => {
    const rows = whole([ROW, ROW], ...empties);
    expect(cells(call('SCHEDULE', [HEADERS], rows, 'yardage'))).toEqual([YARDS, YARDS]);
    expect(cells(call('AUDIT', [HEADERS], rows))).toHaveLength(1);
    expect(cells(call('CHECK', [HEADERS], whole([ROW], ...empties)))).toBe('');
    const rules = whole([['side hem', 2]], ...empties);
    expect(cells(call('HOUSERULE', 'side hem', rules))).toBe(2);
    const column = (...filled: readonly CellIn[]): CellIn =>
      whole(filled.map((cell) => [cell]), ...empties); // prettier-ignore
    const plan = cells(call('CUTPLAN', column(108, 90), column(24, 12), 60));
    expect(plan).toEqual(cells(call('CUTPLAN', [[108], [90]], [[24], [12]], 60)));
    expect(cells(call('SALESTAX', column(40, 60), 0.07))).toBe(7);
    expect(cells(call('DROP', column(98, 98.5, 99), 'pinch'))).toBe(96);
    expect(cells(call('ROLLCUTS', column(58, 61.5), 117))).toBe(17 + 18);
    const breaks = whole([[0, 48.5], [60, 44]], ...empties); // prettier-ignore
    expect(cells(call('BREAKPRICE', 61, breaks))).toBe(44);
  });

  it('of amounts that are 0 throughout adds up to 0, and of lengths is refused as blank', () => {
    expect(cells(call('SALESTAX', whole([[0]], 0), 0.07))).toBe(0);
    expect(cells(call('DROP', whole([[0]], 0), 'pinch'))).toMatch(/^measured is (0 or )?blank/);
  });

  it('keeps the rows beside one another: a count below the last length, a lot below the last roll is told', () => {
    expect(cells(call('CUTPLAN', whole([[108]], null), whole([[24], [12]], null), 60))).toBe(
      'cut_lengths is blank in row 2, where counts reads 12. Fill it in, or clear the whole row.',
    );
    expect(
      cells(
        call('CUTPLAN', [[108]], [[24]], whole([[60], [55]], null), null, whole([['A'], ['A'], ['B']], 0)),
      ),
    ).toBe('roll_lengths is blank in row 3, where lots reads “B”. Fill it in, or clear the whole row.');
    expect(cells(call('CUTPLAN', whole([[108]], null), [[24]], 60))).toBe(
      'counts has 1 cell and cut_lengths has 1048576. Point both at the same rows.',
    );
  });

  it('of more filled rows than are taken is refused in a sentence', () => {
    const rows = Array.from({ length: MOST_ROWS + 1 }, () => ROW);
    for (const name of ['SCHEDULE', 'AUDIT'])
      expect(cells(call(name, [HEADERS], rows))).toBe(
        'rows is filled down to row 100001, more than the most taken here, 100000 rows. Point at fewer rows, in several formulas.',
      );
    expect(cells(call('HOUSERULE', 'side hem', rows))).toMatch(/^rules is filled down to row 100001/);
    const column = rows.map(() => [90]);
    expect(cells(call('CUTPLAN', column, column, 60))).toMatch(/^cut_lengths is filled down to row 100001/);
    expect(cells(call('SALESTAX', column, 0.07))).toMatch(/^amounts is filled down to row 100001/);
  });
});

describe('SCHEDULE', () => {
  it('gives a blank line for a heading row that stands again among the rows, so that line n stands beside row n', () => {
    const rows = [ROW, ['Rod width', 'Drop', 'Heading', 'Fabric width', 'Return'], ROW];
    expect(cells(call('SCHEDULE', [HEADERS], rows, 'yardage'))).toEqual([YARDS, [''], YARDS]);
  });

  it('says of a row whose quantity is 0 what to write, and works the others out', () => {
    const headers = [[...HEADERS, 'qty']];
    const lines = cells(
      call(
        'SCHEDULE',
        headers,
        [
          [...ROW, 0],
          [...ROW, ''],
          [...ROW, 2],
        ],
        'yardage',
      ),
    );
    // 2 × 6 cuts of 112 in are 37⅓ yd, up to 37⅜.
    expect(lines).toEqual([
      [expect.stringMatching(/^qty reads 0, so the row is no window\. Write how many windows are alike/)],
      YARDS,
      [31.125],
    ]);
    expect(cells(call('CHECK', headers, [[...ROW, 0]]))).toMatch(/^qty reads 0, so the row is no window/);
  });
});

describe('a price or a rate of the house rules', () => {
  const LABOR = [6, 'pinch', 96] as const;
  const at = (name: string, value: CellIn): unknown => cells(call('HOUSERULE', name, [[name, value]]));
  it('that reads 0 is not set, on every host; none says that nothing is charged', () => {
    expect(cells(call('LABOR', ...LABOR, null, [['labor pinch', 0]]))).toBe(
      'No price is set for this: add the house rule “labor pinch” with your figure, or none where nothing is charged.',
    );
    expect(cells(call('LABOR', ...LABOR, null, [['labor pinch', 'None']]))).toBe(0);
    expect(cells(call('LABOR', ...LABOR, null, [['labor pinch', 42]]))).toBe(252);
    expect([at('price per ring', 'none'), at('price per ring', 1.4)]).toEqual(['none', 1.4]);
    expect(at('price per ring', 0)).toMatch(/^No price is set/);
    // The default of the deposit is a half.
    expect([at('deposit', 0), at('deposit', 'none'), at('deposit', 0.3)]).toEqual([0.5, 'none', 0.3]);
  });
  it('whose default is 0 keeps it', () => {
    for (const name of ['sell rate', 'discount', 'tax rate', 'spare windows'])
      expect([name, at(name, 0), at(name, 'none')]).toEqual([name, 0, 0]);
  });
  it('elsewhere 0 is a figure', () => {
    for (const name of ['return', 'overlap', 'side hem', 'yardage step'])
      expect([name, at(name, 0)]).toEqual([name, 0]);
    expect(cells(call('RODWIDTH', 72, 0, 0))).toBe(72);
    expect(cells(call('SELLPRICE', 0, 0, 'markup on cost'))).toBe(0);
  });
});

it.each(RULE_LINES.map((line) => [line.name, line] as const))(
  'the rule “%s” reads 0 without a complaint, since a blank cell may arrive so',
  (name, line) => {
    expect(() => line.kind.read(0, { name, unit: INCHES })).not.toThrow();
  },
);

describe('a choice', () => {
  it('that reads 0 is blank, as a figure and as text', () => {
    for (const empty of [0, '0', ' 0 ', null])
      expect(cells(call('FINISHEDWIDTH', 104, 'pinch', empty))).toBe(
        cells(call('FINISHEDWIDTH', 104, 'pinch')),
      );
  });
});

it('a range of rules is known again by what it holds, and two sets side by side are both kept', () => {
  const one = (): CellIn => [['side hem', 2]];
  const other = (): CellIn => [['side hem', 3]];
  for (let time = 0; time < 3; time++)
    expect([
      cells(call('HOUSERULE', 'side hem', one())),
      cells(call('HOUSERULE', 'side hem', other())),
    ]).toEqual([2, 3]);
  const changed = [['side hem', 2]];
  expect(cells(call('HOUSERULE', 'side hem', changed))).toBe(2);
  changed[0]![1] = 4;
  expect(cells(call('HOUSERULE', 'side hem', changed))).toBe(4);
});

it.each(['#BUSY!', '#GETTING_DATA'])('a cell that shows %s is waited for, not found fault with', (shown) => {
  for (const cell of [shown, { type: 'Error', basicValue: shown }])
    expect(cells(call('RODWIDTH', cell))).toBe(
      `opening_width points at a cell that is still being worked out (${shown}). Wait: the answer follows by itself.`,
    );
});
