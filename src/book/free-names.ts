/** New sheets beside whatever the workbook holds: under the first number none of whose names is taken. */
import type { Unit } from '../core/exact/unit';
import type { Contents } from './book';
import type { Draft, Job } from './sheets/draft';

/** What new names must keep clear of. */
export type Taken = Readonly<Record<keyof Contents, readonly { readonly name: string }[]>>;

const NAMED = ['newSheets', 'newTables', 'newNames', 'newCharts'] as const;
type Named = Partial<Record<(typeof NAMED)[number], readonly { readonly name: string }[]>>;

/** “Audit” and “Audit_counts”, or “Audit 2” and “Audit_counts_2” where one of the draft's names is taken. */
export function underFreeNames<T extends Named = Draft>(
  contents: Taken,
  given: { readonly unit: Unit; readonly paper?: Job['paper']; readonly windows?: number },
  draft: (job: Job) => T,
): { readonly draft: T; readonly number: number } {
  const { unit, windows = 0, paper = unit.name === 'inches' ? 'letter' : 'a4' } = given;
  const taken = new Set(
    [...contents.sheets, ...contents.tables, ...contents.names].map((one) => one.name.toLowerCase()),
  );
  for (let number = 1; ; number++) {
    const named = (parted: string) => (base: string) => (number === 1 ? base : `${base}${parted}${number}`);
    const one = draft({ unit, paper, windows, sheet: named(' '), name: named('_') });
    const ours = NAMED.flatMap((kind) => one[kind] ?? []);
    if (!ours.some(({ name }) => taken.has(name.toLowerCase()))) return { draft: one, number };
  }
}
