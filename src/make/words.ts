/** The catalogue's words as they stand in the help page and the README. */
import { NAMESPACE } from '../../functions';
import type { CellFunction, Chapter } from '../../functions/declare';

/** HEM.EXTENSION(opening_width, [end], [rules]) */
export function signature(of: CellFunction): string {
  const parameters = of.parameters.map(({ name, optional, repeats }) => {
    const shown = repeats ? `${name} …` : name;
    return optional ? `[${shown}]` : shown;
  });
  return `${NAMESPACE}.${of.name}(${parameters.join(', ')})`;
}

/** The functions chapter by chapter, in the catalogue's order. */
export function byChapter(catalogue: readonly CellFunction[]): ReadonlyMap<Chapter, readonly CellFunction[]> {
  const chapters = new Map<Chapter, CellFunction[]>();
  for (const of of catalogue) chapters.set(of.chapter, [...(chapters.get(of.chapter) ?? []), of]);
  return chapters;
}
