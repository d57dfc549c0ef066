/** Heading marks and hardware. */
import { table } from './entry';
import { parameter } from './parameters';

export const HEADING_FINDINGS = table({
  notPleated: {
    weight: 'stop',
    says: (heading: string) =>
      `A ${heading} heading has no pleats to set out. PLEATS serves pinch, goblet, cartridge, box, inverted and wave.`,
  },
  nothingToPleat: {
    weight: 'stop',
    says: (flat: string, finished: string) =>
      `The flat cloth of a panel is ${flat} and its finished width ${finished}: nothing is left to pleat. Check ${parameter('widths')} and ${parameter('fabricWidth')}.`,
  },
  pleatsOutsideUsual: {
    weight: 'note',
    says: (space: string, takeUp: string, spaces: string, takeUps: string) =>
      `The pleats stand ${space} apart and take up ${takeUp} each: no count of pleats keeps both the usual space (${spaces}) and the usual take-up (${takeUps}).`,
  },
  noPleatsSuit: {
    weight: 'check',
    says: (delivers: string, space: string, takeUp: string, beside: string) =>
      `${delivers}, and no count of pleats suits that: they would stand ${space} apart and take up ${takeUp} each.${beside === '' ? '' : ` Of other widths, ${beside}.`} Change the widths or the fullness.`,
  },
  underfoldOutside: {
    weight: 'note',
    says: (read: string, wanted: string) =>
      `The cloth gives underfolds ${read} deep where the house rule says ${wanted}.`,
  },
  rodTooNarrowForPanels: {
    weight: 'stop',
    says: (name: string, read: string) =>
      `${name} reads ${read}, too narrow to set out a heading. Check the figure and its unit.`,
  },
  notDrawn: {
    weight: 'note',
    says: () => 'A stationary panel is not drawn back: it has no stack.',
  },
  stackNeverClears: {
    weight: 'note',
    says: (stacking: string) =>
      `The stack (${stacking}) takes half the rod or more: no side extension clears it. Choose another heading or draw, or an extension of your own.`,
  },
  pocketIsNotDrawn: {
    weight: 'note',
    says: (heading: string) => `A ${heading} heading is hard to draw; its stack is only a guide.`,
  },
  noStockRods: {
    weight: 'stop',
    says: () => `${parameter('stockLengths')} is blank. Enter the rod lengths you can buy.`,
  },
  tooManyStockRods: {
    weight: 'stop',
    says: (most: number) =>
      `${parameter('stockLengths')} holds more than ${most} different lengths. Keep the ones you order.`,
  },
  rodPricedTwice: {
    weight: 'check',
    says: () =>
      'The rod has more than one price: by the piece is taken before the metre, and the metre before the foot. Keep the one you pay.',
  },
  loadCaution: {
    weight: 'note',
    says: () =>
      'Anchors, load and ladders are the installer’s judgement; local codes and licensed practice decide.',
  },
});
