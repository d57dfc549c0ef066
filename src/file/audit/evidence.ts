/** The rows of a long file that tell what its columns mean. */
import { FIRST_ORDERS } from '../../core/audit/other-rules';

/** So many rows at the top are looked through for the headings, and kept whole. */
const TOP = 400;
/** So many more, spread over the whole file, are the evidence of what its columns mean. */
const EVIDENCE = 1_600;

/** Whether an audit goes by the right rules is told from the orders among so many rows at the top. */
export const FIRST_ROWS = FIRST_ORDERS + TOP;

/** The first look at a long file: its top, and rows spread evenly over all of it. */
export class Evidence<R> {
  private readonly top: R[] = [];
  private spread: R[] = [];
  private step = 1;
  private seen = 0;

  /** Only the rows that are kept are read. */
  see(row: () => R): void {
    if (this.top.length < TOP) this.top.push(row());
    else if (this.seen++ % this.step === 0) {
      this.spread.push(row());
      if (this.spread.length < EVIDENCE) return;
      this.spread = this.spread.filter((_, at) => at % 2 === 0);
      this.step *= 2;
    }
  }

  get rows(): readonly R[] {
    return [...this.top, ...this.spread];
  }
}
