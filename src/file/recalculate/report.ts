/** What came of computing a workbook file, by cell: for the fill command and whoever else asks. */
import type { Finding } from '../../core/cell/answer';
import { errorOf } from '../../core/cell/fields';
import { cellName, type Result } from './recalculate';
import { findingsOf, whyError } from './sentences';
import type { WorkbookFile } from '../xlsx/workbook';

export interface Report {
  /** Formulas in the workbook, and how many of them were computed. */
  readonly formulas: number;
  readonly computed: number;
  /** Of them, how many call HEM functions. */
  readonly ours: number;
  /** Not computed, the old value stays; or #SPILL!: each named with why. */
  readonly left: readonly { readonly cell: string; readonly sentence: string }[];
  /** HEM formulas that answer with an error, and why. */
  readonly errors: readonly { readonly cell: string; readonly error: string; readonly message: string }[];
  readonly findings: readonly ({ readonly cell: string } & Finding)[];
}

export function reportOf(file: WorkbookFile, results: readonly Result[]): Report {
  const left: { cell: string; sentence: string }[] = [];
  const errors: { cell: string; error: string; message: string }[] = [];
  const findings: ({ cell: string } & Finding)[] = [];
  let [computed, ours] = [0, 0];
  for (const { formula, given, sentence } of results) {
    const cell = cellName(file, formula);
    if (sentence !== undefined) left.push({ cell, sentence });
    if (given === undefined) continue;
    computed += 1;
    if (!formula.ours) continue;
    ours += 1;
    const error = given.spill === undefined ? errorOf(given.value) : undefined;
    const message = error === undefined ? undefined : whyError(given);
    if (error !== undefined && message !== undefined && sentence === undefined)
      errors.push({ cell, error, message });
    for (const finding of findingsOf(given))
      if (finding.sentence !== message) findings.push({ cell, ...finding });
  }
  return { formulas: results.length, computed, ours, left, errors, findings };
}
