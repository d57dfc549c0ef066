/** Amounts as order sheets write them: $1,234.50, 12,50 €, (25.00) for a credit. */
import { MONEY, oneCell, type Kind } from './fields';
import type { Money } from './money';

export const AMOUNT: Kind<Money> = {
  ...MONEY,
  read(raw, place) {
    const cell = oneCell(raw, place);
    if (typeof cell !== 'string') return MONEY.read(cell, place);
    let text = cell.replace(/[$€£¥\s\u00a0]|\b(USD|EUR|GBP|CAD|AUD)\b/gi, '');
    const credit = /^\((.*)\)$/.exec(text);
    if (credit !== null) text = `-${credit[1] ?? ''}`;
    // A comma before exactly three digits parts thousands: no money has three decimals.
    if (/^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(text)) text = text.replace(/,/g, '');
    return MONEY.read(text === '' ? cell : text, place);
  },
};
