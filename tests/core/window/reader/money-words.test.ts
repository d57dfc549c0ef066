import { describe, expect, it } from 'vitest';
import { saysClientPays, sumSaid } from '../../../../src/core/window/reader/money-words';

describe('saysClientPays', () => {
  it.each([
    'Client price',
    'Price to the client',
    'Client | Price',
    'Selling price',
    'Your price',
    'Line total',
    'Total $',
    'Amount',
    'Price (incl. VAT)',
  ])('“%s” is what the client pays', (heading) => {
    expect(saysClientPays(heading)).toBe(true);
  });

  it.each([
    'Price per yard',
    'Price a yard',
    'Price each',
    'Unit price',
    'Fabric price',
    'Labour total',
    'Hardware amount',
    'Hat price',
    'Room',
    '',
  ])('“%s” is not', (heading) => {
    expect(saysClientPays(heading)).toBe(false);
  });
});

describe('sumSaid', () => {
  it.each([
    ['Subtotal', 'subtotal'],
    ['Sub-total', 'subtotal'],
    ['Total ex VAT', 'subtotal'],
    ['Sales tax', 'tax'],
    ['VAT 20%', 'tax'],
    ['Total', 'total'],
    ['Grand total', 'total'],
    ['In all', 'total'],
    ['Total incl. VAT', 'total'],
    ['Deposit 50%', 'deposit'],
    ['Balance due', 'balance'],
    ['Installation', undefined],
    ['Freight', undefined],
    ['Travel', undefined],
  ] as const)('“%s” is the %s', (label, sum) => {
    expect(sumSaid(label)).toBe(sum);
  });
});
