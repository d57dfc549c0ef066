/** Columns that count pairs: so many windows, each with a pair. */
import type { Evidence } from './evidence';

/** “Pairs”, “No. of prs”: so many windows, each with a pair. */
export const countsPairs = ({ heading }: Pick<Evidence, 'heading'>): boolean =>
  heading.words.some(({ text }) => /^(?:pairs|prs)$/.test(text)) &&
  heading.words.every(
    ({ stands, weight }) =>
      weight < 0.3 || stands.some(({ idea }) => ['pair', 'number', 'quantity', 'many'].includes(idea)),
  );
