/** Past orders of one house, worked out by its own hand: 54 in cloth, every rod 60 to 100, its making as asked. */
import type { CellIn } from '../../../src/core/cell/fields';

export const RULES: readonly (readonly CellIn[])[] = [
  ['labor pinch', 26],
  ['widths rounding', 'whole per pair'],
  ['usual fabric width', 54],
];
export const HEADINGS = ['order no', 'room', 'rod width', 'finished drop', 'heading', 'fabric width', 'widths', 'cut length', 'labor']; // prettier-ignore

/** Widths of a rod from 60 to 100 by the rules above, counted by hand: 2½ full, 3½ in returns, 3 in hems, 1 in seams. */
const widthsOf = (rod: number): number => {
  for (let widths = 1; ; widths++)
    if (widths * 54 - (widths - 1) - 12 >= (rod + 7) * 2.5 || widths > 20) return widths;
};

export function orders(
  making: (widths: number, at: number) => number,
  drop = (_at: number) => 84,
): CellIn[][] {
  return Array.from({ length: 40 }, (_, at) => {
    const rod = 30 + ((at * 7) % 41);
    const widths = widthsOf(rod);
    return [`K${at}`, `Den ${at}`, rod, drop(at), 'pinch', 54, widths, drop(at) + 16, making(widths, at)];
  });
}
