/** README's table of functions, between its two markers. */
import type { CellFunction } from '../../functions/declare';
import { byChapter, signature } from './words';

const OPENS = '<!-- the table of functions is written by npm run make -->';
const CLOSES = '<!-- end of the table of functions -->';

const cell = (text: string): string => text.replace(/\|/g, '\\|');

export function functionTable(catalogue: readonly CellFunction[]): string {
  return [...byChapter(catalogue)]
    .map(([chapter, functions]) =>
      [
        `### ${chapter}`,
        '',
        '| in a cell | gives |',
        '| --- | --- |',
        ...functions.map(
          (cellFunction) => `| \`${cell(signature(cellFunction))}\` | ${cell(cellFunction.says)} |`,
        ),
      ].join('\n'),
    )
    .join('\n\n');
}

/** The README with a fresh table; whatever stands outside the markers stays as it is. */
export function withTable(readme: string, catalogue: readonly CellFunction[]): string {
  const from = readme.indexOf(OPENS);
  const to = readme.indexOf(CLOSES);
  if (from < 0 || to < from) throw new Error(`README.md has lost its markers: ${OPENS} … ${CLOSES}`);
  return `${readme.slice(0, from + OPENS.length)}\n\n${functionTable(catalogue)}\n\n${readme.slice(to)}`;
}
