/** The catalogue's words as they stand in the help page and the README. */
import { NAMESPACE } from '../../functions';
import type { CellFunction, Chapter } from '../../functions/declare';

/** HEM.EXTENSION(opening_width, [end], [rules]) */
export function signature(cellFunction: CellFunction): string {
  const parameters = cellFunction.parameters.map(({ name, optional, repeats }) => {
    const shown = repeats ? `${name} …` : name;
    return optional ? `[${shown}]` : shown;
  });
  return `${NAMESPACE}.${cellFunction.name}(${parameters.join(', ')})`;
}

/** The functions chapter by chapter, in the catalogue's order. */
export function byChapter(catalogue: readonly CellFunction[]): ReadonlyMap<Chapter, readonly CellFunction[]> {
  const chapters = new Map<Chapter, CellFunction[]>();
  for (const cellFunction of catalogue)
    chapters.set(cellFunction.chapter, [...(chapters.get(cellFunction.chapter) ?? []), cellFunction]);
  return chapters;
}
