/** What an audit goes by, as the command's words name it: read alike by every thread. */
import type { AuditBy } from '../../core/audit/one-by-one';
import type { OrdersLook } from '../../core/window/reader/orders';
import { readCorrections } from '../corrections';
import { readWordsBook } from '../house-words';
import { readPeriods, readPriceFile } from '../rules-file';

export interface AuditWanted {
  readonly rules: readonly string[];
  readonly prices: string | undefined;
  readonly columns: string | undefined;
  readonly words: string | undefined;
}

export interface WantedBy {
  readonly by: AuditBy;
  readonly look: OrdersLook;
  readonly notes: readonly string[];
}

export async function auditBy({ rules, prices, columns, words: book }: AuditWanted): Promise<WantedBy> {
  const { periods, notes } = await readPeriods(rules);
  const { unit } = (periods[0] as (typeof periods)[0]).house;
  const said = readCorrections(columns);
  const words = await readWordsBook(book);
  return {
    by: { periods, prices: await readPriceFile(prices) },
    look: { unit, ...(said !== undefined && { said }), ...(words !== undefined && { words }) },
    notes,
  };
}
