/** The sums of a quote that are printed. */
import type { PapersJob, Sum } from './job';

/** Nothing of zero but the total itself. */
export function printed({ sums, extras }: Pick<PapersJob, 'sums' | 'extras'>): readonly Sum[] {
  const noDeposit = sums.some(({ is, entry }) => is === 'deposit' && entry.value === 0);
  return sums
    .filter(({ is, entry }) => is === 'total' || (entry.value !== 0 && !(is === 'balance' && noDeposit)))
    .map((sum) =>
      // Where more than draperies is listed, this is of them alone.
      sum.is === 'subtotal' && extras.length > 0 ? { ...sum, label: 'Draperies' } : sum,
    );
}
