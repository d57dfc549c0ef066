/** What came of filling a workbook file, by cell: for the fill command and whoever else asks. */
import type { Finding } from '../../core/cell/answer';
import { Grid } from '../../engine/native/values';
import type { Given } from '../../engine/workbook';
import { asCell, cellName, type Answer, type Recalculation } from './recalculate';
import { findingsOf, whyError } from './sentences';
import { errorOf } from '../../core/cell/fields';

export interface Report {
  /** Formulas in the workbook, how many of them were computed, and how many kept the file's value. */
  readonly formulas: number;
  readonly computed: number;
  readonly kept: number;
  /** Of those computed, how many call HEM functions. */
  readonly ours: number;
  /** Not computed, so that it holds no value now; in a circle; or #SPILL!: each named with why. */
  readonly left: readonly { readonly cell: string; readonly sentence: string }[];
  /** HEM formulas that answer with an error, and why. */
  readonly errors: readonly { readonly cell: string; readonly error: string; readonly message: string }[];
  readonly findings: readonly ({ readonly cell: string } & Finding)[];
  /** What was kept though the program that shows the workbook might compute it anew. */
  readonly keptNotes: readonly string[];
}

/** An answer as the sentences know what a formula gave. */
export function givenOf({ value, calls }: Answer): Given {
  if (!(value instanceof Grid)) return { value: asCell(value ?? null), calls };
  const spill = Array.from({ length: value.rows }, (_, row) =>
    Array.from({ length: value.columns }, (__, column) => asCell(value.at(row, column))),
  );
  return { value: spill[0]?.[0] ?? null, spill, calls };
}

export function reportOf({ file, formulas, answers, volatile }: Recalculation): Report {
  const left: { cell: string; sentence: string }[] = [];
  const errors: { cell: string; error: string; message: string }[] = [];
  const findings: ({ cell: string } & Finding)[] = [];
  let [computed, ours, kept] = [0, 0, 0];
  for (const [at, formula] of formulas.entries()) {
    const answer = answers[at];
    if (answer === undefined) {
      kept += 1;
      continue;
    }
    const { value, why } = answer;
    const cell = (): string => cellName(file, formula);
    if (value === undefined) {
      left.push({
        cell: cell(),
        sentence: `${cell()} could not be computed: ${why ?? ''}. ${outcome(answer)}`,
      });
      continue;
    }
    computed += 1;
    if (why !== undefined) left.push({ cell: cell(), sentence: why });
    if (!formula.shape.ours) continue;
    ours += 1;
    const given = givenOf(answer);
    const error = given.spill === undefined ? errorOf(given.value) : undefined;
    const message = error === undefined ? undefined : whyError(given);
    if (error !== undefined && message !== undefined && why === undefined)
      errors.push({ cell: cell(), error, message });
    for (const finding of findingsOf(given))
      if (finding.sentence !== message) findings.push({ cell: cell(), ...finding });
  }
  const keptNotes = notes(file.manual, volatile);
  return { formulas: formulas.length, computed, kept, ours, left, errors, findings, keptNotes };
}

const outcome = ({ circle }: Answer): string =>
  circle === true ? 'Its old value stays.' : 'It shows no value until a spreadsheet program computes it.';

function notes(manual: boolean, volatile: number): string[] {
  const list: string[] = [];
  if (manual)
    list.push(
      'The workbook is set to compute only when asked. Values that need not change are those of its last computing.',
    );
  if (volatile > 0)
    list.push(
      `${volatile.toLocaleString('en-US')} ${volatile === 1 ? 'value depends' : 'values depend'} on the day, on chance or on cells found while computing, and ${volatile === 1 ? 'is' : 'are'} kept as last saved.`,
    );
  return list;
}
