/** Prices, and pricing in bulk. */
import { table } from './entry';
import { parameter } from './parameters';

export const PRICE_FINDINGS = table({
  // Price
  belowFirstBreak: {
    weight: 'note',
    says: (quantity: string, least: string) =>
      `${parameter('quantity')} reads ${quantity}, below the first price break, ${least}. Add a break from 0, or raise the quantity to the minimum.`,
  },
  breaksUnreadable: {
    weight: 'stop',
    says: (row: number, read: string) =>
      `${parameter('priceBreaks')} row ${row} reads ${read}. Each row needs two figures: from quantity, price.`,
  },
  breakRepeated: {
    weight: 'stop',
    says: (quantity: string) => `${parameter('priceBreaks')} holds two prices from ${quantity}. Keep one.`,
  },
  noMargin: {
    weight: 'stop',
    says: (rate: string, meant: string) =>
      `${parameter('rate')} reads ${rate} as a margin on the selling price. It must be below 100 %: write ${meant} if that is meant, or name a markup.`,
  },

  noClothPrice: {
    elsewhere: true,
    weight: 'check',
    says: (name: string) =>
      `No price is set for ${name}; it stands in the quote at nothing. Add it to the price list.`,
  },
  pricedAsAnother: {
    elsewhere: true,
    weight: 'note',
    says: (name: string, other: string) =>
      `No price is set for ${name}; it is priced as ${other}. Add its own price where it differs.`,
  },
  noMakingPrice: {
    elsewhere: true,
    weight: 'check',
    says: () =>
      'The making charge of a heading is not set; making stands in the quote at nothing. Add the house rules “labor pinch” and so on.',
  },
  belowMinimumCut: {
    elsewhere: true,
    weight: 'note',
    says: (name: string, yardage: string, least: string) =>
      `${name} needs ${yardage}, below the least that is cut, ${least}; the least is priced.`,
  },
  depositBelowCloth: {
    elsewhere: true,
    weight: 'check',
    says: (deposit: string, cloth: string) =>
      `The deposit, ${deposit}, does not cover the cloth cut to order, ${cloth}. Ask for more before you order.`,
  },
  rateLooksHigh: {
    weight: 'check',
    says: (rate: string) =>
      `${parameter('rate')} reads ${rate}. Check that it is meant: write 7.25 % or 0.0725.`,
  },

  // Pricing in bulk
  breakUnreadable: {
    elsewhere: true,
    weight: 'stop',
    says: (name: string, read: string) =>
      `${name} reads ${read}. Write one price like 28.50, or from which quantity and at what price: 0 28.50; 50 26.`,
  },
  makingBreakUnreadable: {
    weight: 'stop',
    says: (name: string, read: string) =>
      `${name} reads ${read}. Write from how many widths and how much less: 100 5 %; 400 8 %.`,
  },
  nextBreakSaves: {
    elsewhere: true,
    weight: 'note',
    says: (name: string, bought: string, from: string, saved: string) =>
      `${name}: ordering ${from} instead of ${bought} reaches the next price break and costs ${saved} less.`,
  },
  noWholeRollFits: {
    elsewhere: true,
    weight: 'check',
    says: (name: string, roll: string) =>
      `${name} cannot be bought in whole rolls of ${roll}: a cut is longer than the roll. The cut price is taken.`,
  },
  rollsUnlikePlan: {
    elsewhere: true,
    weight: 'note',
    says: (name: string, priced: number, planned: number) =>
      `${name}: ${priced} whole ${priced === 1 ? 'roll is' : 'rolls are'} priced, attic stock in them; the cutting plan of the windows and their spares opens ${planned} of that length.`,
  },
  clothWeightUnknown: {
    elsewhere: true,
    weight: 'check',
    says: (name: string, where: string) =>
      `The weight of ${name} is not known, so the freight leaves it out. Enter ${where}.`,
  },
  weighedAsAnother: {
    elsewhere: true,
    weight: 'note',
    says: (name: string, other: string, where: string) =>
      `The weight of ${name} is not set, so the freight weighs it as ${other}. Enter ${where} where it differs.`,
  },
  cartonNotWhole: {
    elsewhere: true,
    weight: 'check',
    says: (missing: string) =>
      `Freight by the carton wants both what a carton holds and its price: set the house rule “${missing}”.`,
  },
  mockUpIsAll: {
    elsewhere: true,
    weight: 'note',
    says: (windows: number) =>
      `The mock-up takes ${windows === 1 ? 'the only window' : `all ${windows} windows`}, so there is nothing left to price apart.`,
  },
});
