/** How answers become cells. */
import type { CellOut } from '../src/core/cell/fields';
import { toUnit, type Length } from '../src/core/exact/length';
import type { Money } from '../src/core/exact/money';
import type { Unit } from '../src/core/exact/unit';
import type { Gives } from './declare';

const cell = <V>(noun: string, write: (value: V, unit: Unit) => CellOut): Gives<V> => ({
  noun,
  shape: 'cell',
  write,
});

export const LENGTH = cell<Length>('a length in the house’s unit', (length, unit) =>
  toUnit(length, unit.small),
);
export const YARDAGE = cell<Length>('yards, or metres in a centimetre house', (length, unit) =>
  toUnit(length, unit.large),
);
export const COUNT = cell<number>('a count', (count) => count);
export const NUMBER = cell<number>('a number', (figure) => figure);
export const AMOUNT = cell<Money>('an amount of money', (amount) => amount.toNumber());
export const TEXT = cell<string>('text', (text) => text);

/** Rows that spill; `row` writes one of them. */
export const spill = <V>(
  noun: string,
  columns: readonly string[],
  rows: (value: V, unit: Unit) => readonly (readonly CellOut[])[],
): Gives<V> => ({ noun, shape: 'spill', columns, write: rows });
