/** The prices a floor is priced by: the workbook's own, or typed in the pane. */
import { money } from '../core/money';
import type { ClothPrice, PriceList } from '../core/quote';
import type { Book } from './book';
import { filled } from './header';

/** Prices by fabric as the workbook's own sheet of fabrics has them: a table with a fabric and a price. */
export async function fabricPrices(book: Book): Promise<ReadonlyMap<string, string>> {
  const { tables } = await book.contents();
  const prices = new Map<string, string>();
  for (const table of tables) {
    const fabric = table.columns.findIndex((one) => /^fabric$/i.test(one.trim()));
    const price = table.columns.findIndex((one) => /^price( (a|per) \w+)?$/i.test(one.trim()));
    if (fabric < 0 || price < 0) continue;
    const [block] = await book.read([table.area], 'contents');
    for (const row of block?.values.slice(1) ?? []) {
      const name = row[fabric];
      const each = row[price];
      if (filled(name) && typeof each === 'number') prices.set(String(name).trim(), String(each));
    }
  }
  return prices;
}

/** What the lining is called among the prices. */
export const LINING = 'lining';

/** A price list of one price a fabric, the lining's among them. */
export function priceList(prices: ReadonlyMap<string, number>): PriceList {
  const cloth = (each: number): ClothPrice => ({ breaks: [{ from: 0, price: money(each) }] });
  const lining = prices.get(LINING);
  return {
    face: new Map([...prices].map(([fabric, each]) => [fabric, cloth(each)])),
    lining: lining === undefined ? undefined : cloth(lining),
  };
}
