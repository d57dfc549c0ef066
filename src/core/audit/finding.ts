/** What the audit says of an order: a finding at its row and column, with figures and money. */
import type { Finding, Weight } from '../cell/answer';
import type { CellOut } from '../cell/fields';
import type { FindingCode } from '../findings/table';

/** How sure it is that this is the mistake. */
export type Sure = 'sure' | 'likely' | 'possible';

export interface OrderFinding {
  /** As the caller counts its rows; 0 is the header. */
  readonly row: number;
  readonly code: FindingCode;
  readonly weight: Weight;
  readonly sure: Sure;
  /** The column, in the sheet's word. */
  readonly column: string;
  readonly found: CellOut;
  readonly expected: CellOut;
  readonly difference: CellOut;
  /** What the difference costs, where the row has a price. */
  readonly money: CellOut;
  readonly sentence: string;
}

export interface Told {
  readonly found?: CellOut;
  readonly expected?: CellOut;
  readonly money?: number | undefined;
  readonly sure?: Sure;
}

export function told(row: number, finding: Finding, more: Told = {}): OrderFinding {
  const { found = '', expected = '', money } = more;
  return {
    row,
    code: finding.code,
    weight: finding.weight,
    sure: more.sure ?? 'sure',
    column: finding.about,
    found,
    expected,
    difference:
      typeof found === 'number' && typeof expected === 'number'
        ? Number((found - expected).toPrecision(12))
        : '',
    money: money === undefined ? '' : Number(money.toFixed(2)),
    sentence: finding.sentence,
  };
}

/** As a guess begins in a sentence. */
export const SURE_WORDS: Readonly<Record<Sure, string>> = {
  sure: 'Very likely',
  likely: 'Likely',
  possible: 'Possibly',
};

/** “returnLeftOut” is “return left out”. */
export const kindOf = ({ code }: OrderFinding): string =>
  code.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
