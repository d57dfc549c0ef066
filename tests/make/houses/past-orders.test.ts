import { describe, expect, it } from 'vitest';
import { chanceFrom } from '../../../src/make/houses/chance';
import { differences } from '../../../src/make/houses/differ';
import { drawOrders } from '../../../src/make/houses/draw';
import { pastOrders } from '../../../src/make/houses/past-orders';
import { STYLES } from '../../../src/make/houses/workrooms';

describe.each(STYLES)('$name', (style) => {
  const made = pastOrders(style, 41, 300);
  const windows = made.truth.rows.filter(({ is }) => is === 'window');

  it('shows only figures that its own measures give, where nothing is planted', () => {
    const lines = drawOrders(style, 200, chanceFrom(17)).flatMap((order) => order.lines);
    expect(lines).toHaveLength(200);
    for (const line of lines) if (line.note === undefined) expect(differences(line, style)).toEqual([]);
  });

  it('shows a difference where the client wished a width more', () => {
    const wished = drawOrders(style, 400, chanceFrom(23))
      .flatMap((order) => order.lines)
      .filter(({ note }) => note !== undefined);
    expect(wished.length > 0).toBe(style.reasons !== undefined);
    for (const line of wished) expect(differences(line, style)).toContain('widths');
  });

  it('has so many windows and so large a share of mistaken ones, each changing a figure', () => {
    const wrong = windows.filter(({ mistake }) => mistake !== undefined);
    expect(windows).toHaveLength(300);
    expect(wrong).toHaveLength(45);
    for (const { mistake } of wrong) {
      expect(mistake?.changes).toBe(true);
      expect(mistake?.touches).toContain(mistake?.column);
    }
    expect(new Set(wrong.map(({ mistake }) => mistake?.kind)).size).toBeGreaterThan(14);
  });

  it('says of every row below the headings what it is', () => {
    const last = made.header.at(-1) ?? 0;
    expect(made.truth.rows.map(({ row }) => row)).toEqual(
      Array.from({ length: made.rows.length - last }, (_, at) => last + 1 + at),
    );
    for (const row of made.rows) expect(row).toHaveLength(Object.keys(made.truth.columns).length);
    for (const { row, is } of made.truth.rows)
      expect(made.rows[row - 1]?.every((cell) => cell === null)).toBe(is === 'blank');
  });

  it('is the same for the same seed and another for another', () => {
    expect(pastOrders(style, 41, 300)).toEqual(made);
    expect(pastOrders(style, 42, 300).rows).not.toEqual(made.rows);
  });

  it('leaves no mistake where none is asked for', () => {
    expect(pastOrders(style, 9, 50, 0).truth.rows.some(({ mistake }) => mistake !== undefined)).toBe(false);
  });
});

it('writes the rules as pairs that no name repeats', () => {
  for (const style of STYLES) {
    const names = pastOrders(style, 1, 5, 0).rules.map(([name]) => name);
    expect(new Set(names).size).toBe(names.length);
  }
});
