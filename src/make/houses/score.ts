/** How much of what was planted is found, and how many honest rows are doubted. */
import type { Truth } from './past-orders';

/** A doubt about a row of the sheet, counted from 1; the column's letters where it names one. */
export interface Finding {
  readonly row: number;
  readonly column: string | null;
}

export interface KindScore {
  readonly kind: string;
  planted: number;
  /** Rows with any finding. */
  found: number;
  /** Rows with a finding at the wrong column or one that disagrees because of it. */
  placed: number;
}

export interface Score {
  readonly kinds: readonly KindScore[];
  readonly planted: number;
  readonly found: number;
  readonly placed: number;
  /** Windows with nothing wrong and nothing to explain, and how many of them have a finding. */
  readonly honest: number;
  readonly flagged: number;
  /** Windows that depart from the rules for a reason written beside them. */
  readonly explained: number;
  readonly explainedFlagged: number;
  /** Findings at rows that are no windows. */
  readonly elsewhere: number;
  readonly recall: number;
  readonly flaggedShare: number;
}

const share = (part: number, whole: number): number => (whole === 0 ? 0 : part / whole);

/** A mistake that changes no figure beyond the tolerance is neither counted nor honest. */
export function score(findings: readonly Finding[], truth: Truth): Score {
  const at = new Map<number, (string | null)[]>();
  for (const { row, column } of findings) at.set(row, [...(at.get(row) ?? []), column]);
  const kinds = new Map<string, KindScore>();
  const tally = { honest: 0, flagged: 0, explained: 0, explainedFlagged: 0 };
  const windows = new Set<number>();
  for (const { row, is, mistake, explained } of truth.rows) {
    if (is !== 'window') continue;
    windows.add(row);
    const columns = at.get(row);
    if (mistake !== undefined) {
      if (!mistake.changes) continue;
      const kind = kinds.get(mistake.kind) ?? { kind: mistake.kind, planted: 0, found: 0, placed: 0 };
      kinds.set(mistake.kind, kind);
      kind.planted++;
      if (columns === undefined) continue;
      kind.found++;
      if (columns.some((column) => column !== null && mistake.touches.includes(column))) kind.placed++;
    } else if (explained !== undefined) {
      tally.explained++;
      if (columns !== undefined) tally.explainedFlagged++;
    } else {
      tally.honest++;
      if (columns !== undefined) tally.flagged++;
    }
  }
  const all = [...kinds.values()];
  const total = (word: 'planted' | 'found' | 'placed'): number =>
    all.reduce((sum, one) => sum + one[word], 0);
  return {
    kinds: all,
    planted: total('planted'),
    found: total('found'),
    placed: total('placed'),
    ...tally,
    elsewhere: findings.filter(({ row }) => !windows.has(row)).length,
    recall: share(total('found'), total('planted')),
    flaggedShare: share(tally.flagged, tally.honest),
  };
}
