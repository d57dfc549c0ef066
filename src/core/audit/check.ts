/**
 * One check of an order row. The checks are a list; each says which ordered figures what it finds
 * explains, so that no figure is compared whose mistake is named already.
 */
import { Refusal, renamed, type Finding } from '../cell/answer';
import type { CellIn } from '../cell/fields';
import { TooLarge } from '../exact/length';
import type { Unit } from '../exact/unit';
import type { Rules } from '../house/rules';
import type { FigureKey } from '../window/figures';
import type { OrderKey } from '../window/meanings';
import type { Order } from '../window/order';
import type { Naming } from '../window/sheet-words';
import { told, type OrderFinding } from './finding';
import type { OwnWay } from './own-sums';
import type { Practices } from './practice';
import type { PriceList } from './price-list';

/** A row to check: what was read of it, and what is known beside it. */
export interface RowGiven {
  readonly at: number;
  readonly order: Order;
  readonly rules: Rules;
  /** Rules that most orders seem to go by instead. */
  readonly instead: Rules | undefined;
  readonly unit: Unit;
  /** What its house does with its figures beside the rules. */
  readonly practices: Practices | undefined;
  /** The whole row as it stands, and the header row above it. */
  readonly cells: readonly CellIn[];
  readonly headings: readonly string[];
  /** Columns of money, by their place, of which nobody knows what it is for. */
  readonly untold: readonly number[];
  /** The ordered figures that the sheet has. */
  readonly ordered: readonly FigureKey[];
  readonly prices: PriceList | undefined;
  /** How the table's own figures hang together. */
  readonly ways: readonly OwnWay[];
  /** Whether a column's own way is known and holds in this row. */
  readonly holdsAt: (at: number) => boolean;
  /** What is said once of the table, and not in this row (`repeatKey`). */
  readonly once: ReadonlySet<string> | undefined;
  /** Its table's totals are up to the next of it, or to the nearest; 0 leaves them exact. */
  readonly totalStep: number;
  /** What is doubtful about the rules of its day. */
  readonly doubts: readonly Finding[];
  /** A column as the sheet heads it. */
  readonly name: (key: OrderKey) => string;
  readonly has: (key: OrderKey) => boolean;
  /** The same for the inputs of a function. */
  readonly naming: Naming;
}

export interface Check {
  /** Whether it judges the sizes that figures follow from, so that a finding names the row's mistake. */
  readonly ofSizes?: true;
  /** Whether a row may be meant so: then its own note softens what is found. */
  readonly mayBeMeant?: true;
  /** The ordered figures that are not compared where this check finds something. */
  explains?(row: RowGiven): readonly FigureKey[];
  find(row: RowChecked): readonly OrderFinding[];
}

/** A row under its checks: each is run once, when its findings are first asked for. */
export class RowChecked {
  private readonly known = new Map<Check, readonly OrderFinding[]>();
  /** The yardage the row should have had, once its figures are compared. */
  expectedYardage: number | undefined;
  /** The ordered figures that agree, once they are compared. */
  agreeing: readonly FigureKey[] = [];
  /** Whether some of its figures are as the other rules give them. */
  byOtherRules = false;

  constructor(
    readonly given: RowGiven,
    readonly checks: readonly Check[],
  ) {}

  readonly foundBy = (check: Check): readonly OrderFinding[] => {
    let found = this.known.get(check);
    if (found === undefined) this.known.set(check, (found = safely(this.given, () => check.find(this))));
    return found;
  };

  /** The figures whose mistake another check has named. */
  explained(): ReadonlySet<FigureKey> {
    return new Set(
      this.checks.flatMap((check) =>
        check.explains !== undefined && this.foundBy(check).length > 0 ? check.explains(this.given) : [],
      ),
    );
  }
}

/** Undefined where it cannot be reckoned. */
export function reckoned<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal || thrown instanceof TooLarge) return undefined;
    throw thrown;
  }
}

/** A row's own bad input is said; anything it could not be reckoned with is passed over. */
export function safely(
  { at, naming }: RowGiven,
  work: () => readonly OrderFinding[],
): readonly OrderFinding[] {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof TooLarge) return [];
    if (thrown instanceof Refusal)
      return thrown.error === '#N/A' ? [] : [told(at, renamed(thrown.finding, naming))];
    throw thrown;
  }
}
