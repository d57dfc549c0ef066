/** What the audit says of an order: a finding at its row and column, with figures and money. */
import type { Finding, Weight } from '../cell/answer';
import type { CellOut, Quantity } from '../cell/fields';
import type { FindingCode } from '../findings/table';
import type { Order } from '../window/order';

/** How sure it is that this is the mistake. */
export type Sure = 'sure' | 'likely' | 'possible';

/** Which order it is, and whose: blank where the row does not say. */
export interface Whose {
  readonly order: string;
  readonly customer: string;
  readonly room: string;
}
const NOBODYS: Whose = { order: '', customer: '', room: '' };

export const whoseOf = ({ window, facts }: Order): Whose => ({
  order: facts.order ?? '',
  customer: facts.customer ?? facts.job ?? '',
  room: window.room ?? '',
});

/** “K1042, Ames, Den”: what of it is said. */
export const whoseText = ({ order, customer, room }: Whose): string =>
  [order, customer, room].filter((text) => text !== '').join(', ');

export interface OrderFinding extends Whose {
  /** As the caller counts its rows; 0 is the header. */
  readonly row: number;
  readonly code: FindingCode;
  readonly weight: Weight;
  readonly sure: Sure;
  /** The column, in the sheet's word. */
  readonly column: string;
  /** What found, expected and difference are figures of, in the house's unit; blank where nobody knows. */
  readonly measure: Quantity | '';
  readonly found: CellOut;
  readonly expected: CellOut;
  readonly difference: CellOut;
  /** What the difference costs, where the row has a price. */
  readonly money: CellOut;
  readonly sentence: string;
}

export interface Told {
  readonly measure?: Quantity;
  readonly found?: CellOut;
  readonly expected?: CellOut;
  readonly money?: number | undefined;
  readonly sure?: Sure;
  readonly whose?: Whose;
}

export function told(row: number, finding: Finding, more: Told = {}): OrderFinding {
  const { measure = '', found = '', expected = '', money, whose = NOBODYS } = more;
  return {
    row,
    ...whose,
    code: finding.code,
    weight: finding.weight,
    sure: more.sure ?? 'sure',
    column: finding.about,
    measure,
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
