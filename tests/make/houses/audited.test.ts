import { expect, it } from 'vitest';
import { Auditor } from '../../../src/core/audit/audit';
import { readHouse } from '../../../src/core/house/house';
import { findOrders } from '../../../src/core/window/reader/orders';
import { pastOrders } from '../../../src/make/houses/past-orders';
import { score } from '../../../src/make/houses/score';
import { STYLES } from '../../../src/make/houses/workrooms';

const dayOf = (date: string): number => Math.round(Date.parse(`${date}T00:00:00Z`) / 86_400_000) + 25_569;

it('the invented workrooms’ orders as they are kept: mistakes found once each, and honest rows left alone', () => {
  const all = { planted: 0, found: 0, flagged: 0, explained: 0, elsewhere: 0, twice: 0 };
  for (const style of STYLES) {
    const { rows: kept, rules, truth } = pastOrders(style, 71, 120, 0.2);
    const house = readHouse(rules.map(([rule, value]) => [rule, value]));
    const rows = kept.map((row) =>
      row.map((cell) =>
        typeof cell === 'object' && cell !== null && 'date' in cell ? { day: dayOf(cell.date) } : cell,
      ),
    );
    const read = findOrders(rows, { unit: house.unit });
    if ('none' in read) throw new Error(`${style.name}: ${read.none}`);
    const auditor = new Auditor(read.table, { periods: [{ from: undefined, house }] });
    const below = rows.slice(read.below).flatMap((cells, at) => auditor.row(read.below + at + 1, cells));
    const found = [...below, ...auditor.end()].filter(({ row, weight }) => row > 0 && weight !== 'note');
    const scored = score(
      found.map(({ row }) => ({ row, column: null })),
      truth,
    );
    all.planted += scored.planted;
    all.found += scored.found;
    all.flagged += scored.flagged;
    all.explained += scored.explainedFlagged;
    all.elsewhere += scored.elsewhere;
    all.twice += found.length - new Set(found.map(({ row }) => row)).size;
  }
  console.info(all);
  expect(all.found).toBeGreaterThanOrEqual(all.planted * 0.92);
  expect(all).toMatchObject({ flagged: 0, explained: 0, elsewhere: 0 });
  expect(all.twice).toBeLessThanOrEqual(all.planted * 0.03);
});
