import { describe, expect, it } from 'vitest';
import { Auditor } from '../../../src/core/audit/audit';
import type { OrderFinding } from '../../../src/core/audit/finding';
import { byRulesSeen } from '../../../src/core/audit/other-rules';
import { DEFAULT_HOUSE, readHouse } from '../../../src/core/house/house';
import { tableUnder } from '../window/ordered';

const HEADINGS = ['drop', 'heading', 'fabric width', 'rod width', 'cut length', 'yardage'];
const house = readHouse([['bottom allowance', 12]]);

/** Orders cut with 8 in of hem; every twentieth has 9 yards too many. */
const rows = Array.from({ length: 120 }, (_, at) => {
  const drop = 84 + (at % 30) / 2;
  const yards = Math.ceil(((5 * (drop + 16)) / 36) * 8) / 8;
  return [drop, 'pinch', 54, 94, drop + 16, at % 20 === 3 ? yards + 9 : yards];
});

function audited(
  given: readonly (readonly (string | number)[])[],
  by = { periods: [{ from: undefined, house }] },
): OrderFinding[] {
  const table = tableUnder(HEADINGS, given, house.unit);
  const numbered = given.map((row, at) => [at + 2, row] as const);
  const auditor = new Auditor(table, byRulesSeen(table, by, numbered));
  const found = [...auditor.header(), ...numbered.flatMap(([at, row]) => auditor.row(at, row))];
  return [...found, ...auditor.end()];
}

describe('orders that go by other rules', () => {
  it('are told once, with the rules that they fit, and what is wrong beside is still found', () => {
    const found = audited(rows);
    expect(found[0]).toMatchObject({
      row: 0,
      code: 'otherRules',
      column: 'cut length',
      sentence:
        '120 of the first 120 orders differ in cut length from the rules they are checked against; 120 of these agree with “bottom allowance” 8 in the place of 12. Are these the rules of their day? What differs by that alone is said here once, and not row by row.',
    });
    const wrong = found.filter(({ row }) => row > 0);
    expect(wrong.map(({ row, column }) => [row, column])).toEqual(
      [5, 25, 45, 65, 85, 105].map((row) => [row, 'yardage']),
    );
    expect(found.at(-1)).toMatchObject({
      row: 0,
      weight: 'note',
      sentence: '114 orders differ by the other rules alone and are not listed.',
    });
  });

  it('are told though no rule is known that they fit', () => {
    const odd = rows.map(([drop, ...more], at) => {
      const row = [drop as number, ...more];
      row[4] = (drop as number) + 31 + (at % 11) * 1.5;
      return row;
    });
    expect(audited(odd)[0]).toMatchObject({ code: 'otherRulesUnknown', column: 'cut length' });
  });

  it('are none where the rules are right, or where few orders tell', () => {
    const right = { periods: [{ from: undefined, house: DEFAULT_HOUSE }] };
    expect(audited(rows, right).map(({ code }) => code)).not.toContain('otherRules');
    expect(audited(rows.slice(0, 20)).map(({ row }) => row)).not.toContain(0);
  });
});
