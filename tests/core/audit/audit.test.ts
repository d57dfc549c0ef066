import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Auditor } from '../../../src/core/audit/audit';
import { DATE } from '../../../src/core/cell/day';
import { tableUnder } from '../window/ordered';
import { readHouse } from '../../../src/core/house/house';
import { INCHES } from '../../../src/core/exact/unit';
import { auditRows, measureAudit } from '../../../src/make/bench-audit';
import { chanceFrom, houseOf, someRules, trueOrders } from '../../../src/make/orders';
import { auditAll as audited } from './audited';
import slips from './slips.json';

describe('the audit', () => {
  for (const { title, source, headers, rows, rules, prices, finds } of slips) {
    it(`${title} (${source})`, () => {
      const found = audited(headers, rows, rules, prices);
      expect(found.map((one) => `${one.row} ${one.code} ${one.column}`)).toEqual(
        finds.map((one) => `${one.row} ${one.code} ${one.column}`),
      );
      for (const [at, { row, ...wanted }] of finds.entries()) {
        expect(found[at]).toMatchObject({ row, ...wanted });
        expect(found[at]?.sentence).toMatch(/^\S.*[.)]$/);
      }
    });
  }

  it('every caution cites what stands, and never 16 CFR 1260', () => {
    const found = audited(
      ['rod width', 'heading', 'public job', 'drawn by', 'children'],
      [[94, 'pinch', 'yes', 'cord', 'yes']],
    );
    const said = found.map((one) => one.sentence).join(' ');
    expect(said).toContain('ANSI/WCMA A100.1-2022');
    expect(said).toContain('16 CFR 1120.3');
    expect(said).not.toContain('1260');
    expect(said.match(/local codes and licensed practice decide/g)).toHaveLength(2);
  });

  it('an order is worked out by the rules of its day', () => {
    const day = (text: string) => DATE.read(text, { name: 'from', unit: INCHES })?.early;
    const auditor = new Auditor(tableUnder(['date', 'finished drop', 'heading', 'cut length'], [], INCHES), {
      periods: [
        { from: day('2025-01-01'), house: readHouse([['bottom allowance', 10]]) },
        { from: undefined, house: readHouse([['bottom allowance', 8]]) },
      ],
    });
    expect(auditor.row(1, ['2024-06-01', 96, 'pinch', 112])).toEqual([]);
    expect(auditor.row(2, ['2025-06-01', 96, 'pinch', 114])).toEqual([]);
    expect(auditor.row(3, ['2025-06-01', 96, 'pinch', 112])).toMatchObject([{ expected: 114 }]);
    // 1 February or 2 January: other rules stood on neither.
    expect(auditor.row(4, ['01/02/2025', 96, 'pinch', 114])).toEqual([]);
    // 12 January 2025 or 1 December 2025 is one period, 12 November 2024 another.
    expect(auditor.row(5, ['11/12/2024', 96, 'pinch', 112])).toEqual([]);
  });

  it('a date that reads two ways across a change of rules is said', () => {
    const day = (text: string) => DATE.read(text, { name: 'from', unit: INCHES })?.early;
    const auditor = new Auditor(tableUnder(['date', 'finished drop', 'heading', 'cut length'], [], INCHES), {
      periods: [
        { from: undefined, house: readHouse([['bottom allowance', 8]]) },
        { from: day('2025-03-01'), house: readHouse([['bottom allowance', 10]]) },
      ],
    });
    expect(auditor.row(1, ['02/04/2025', 96, 'pinch', 112])).toMatchObject([
      { code: 'dateDoubtful', sentence: expect.stringContaining('2025-02-04 or 2025-04-02') },
    ]);
  });
});

describe('true orders', () => {
  it('stay clean in both units, whatever the house’s rules', () => {
    fc.assert(
      fc.property(fc.integer(), fc.constantFrom('inches' as const, 'centimetres' as const), (seed, unit) => {
        const chance = chanceFrom(seed);
        const house = houseOf(someRules(chance, unit));
        const rows = trueOrders(25, house, chance).map(({ row }) => row);
        expect(auditRows(rows, house)).toEqual([]);
      }),
      { numRuns: 40, seed: 7 },
    );
  }, 60_000);
});

describe('planted mistakes', () => {
  it('are found, 95 of 100 at least, and true orders beside them doubted in fewer than 1 of 100', () => {
    for (const score of measureAudit({ rows: 90, sets: 1, seed: 23 })) {
      expect(score.found, score.kind).toBeGreaterThanOrEqual(score.planted * 0.95);
      expect(score.twice, `${score.kind}: rows with two findings`).toBe(0);
      expect(score.falseAlarms, score.kind).toBeLessThan(Math.max(1, score.trueOrders * 0.01));
    }
  }, 60_000);
});
