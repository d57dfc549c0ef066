/** Rolls and the cutting plan. */
import { table } from './entry';
import { parameter } from './parameters';

export const ROLL_FINDINGS = table({
  cutTooLong: {
    weight: 'stop',
    says: (cut: string, longest: string) =>
      `${parameter('cutLengths')} holds a cut of ${cut}, and the longest whole piece in ${parameter('rollLengths')} is ${longest}. Order longer rolls, or check the cut and its unit.`,
  },
  noCuts: {
    weight: 'stop',
    says: () => `${parameter('counts')} adds up to 0 cuts. Enter how many cuts of each length are wanted.`,
  },
  tooManyCuts: {
    weight: 'stop',
    says: (cuts: number, most: number) =>
      `${parameter('counts')} adds up to ${cuts} cuts, more than the most planned at once, ${most}. Check the counts, or plan each fabric or floor by itself.`,
  },
  tooManyRolls: {
    weight: 'stop',
    says: (rolls: number, most: number) =>
      `${parameter('rollLengths')} holds ${rolls} rolls, more than the most planned at once, ${most}. Point at the rolls meant for this plan.`,
  },
  columnsDiffer: {
    weight: 'stop',
    says: (name: string, cells: number, beside: string, wanted: number) =>
      `${name} has ${cells === 1 ? '1 cell' : `${cells} cells`} and ${beside} has ${wanted}. Point both at the same rows.`,
  },
  blankBeside: {
    weight: 'stop',
    says: (blank: string, row: number, beside: string, read: string) =>
      `${blank} is blank in row ${row}, where ${beside} reads ${read}. Fill it in, or clear the whole row.`,
  },
  startWithoutRepeat: {
    weight: 'stop',
    says: (start: string) =>
      `${parameter('starts')} says ${start}, but ${parameter('verticalRepeats')} has no repeat beside it. Enter the pattern’s height, or clear the start.`,
  },
  countMissing: {
    weight: 'check',
    says: (lengths: string) =>
      `${parameter('counts')} is 0 or blank beside ${lengths}: nothing is cut of it. Enter the count if some are wanted.`,
  },
  lotMissing: {
    weight: 'stop',
    says: (without: number, rolls: number) =>
      `${parameter('lots')} is blank for ${without} of ${rolls} rolls, so a room could be cut from two dye lots. Enter every roll’s lot, or leave lots out.`,
  },
  lotsForOneLength: {
    weight: 'stop',
    says: (lots: number) =>
      `${parameter('lots')} names ${lots} dye lots, but ${parameter('rollLengths')} holds one length, which means as many rolls as it takes. Enter one length for each roll in hand.`,
  },
  flawOffRoll: {
    weight: 'stop',
    says: (roll: number, from: string, length: string) =>
      `The flaw at ${from} does not lie on roll ${roll}, which is ${length} long. Measure flaws from the roll’s outer end.`,
  },
  rollsShort: {
    weight: 'check',
    says: (cuts: string, cloth: string, surely: boolean) =>
      `The rolls in hand fall short by ${cuts}: ${cloth} in all. ${
        surely
          ? 'No plan can give them all: order more cloth.'
          : 'Order more cloth, or let the full search look for a plan that gives them all.'
      }`,
  },
  planNotProven: {
    weight: 'note',
    says: (rolls: number, bound: number) =>
      `The plan opens ${rolls} rolls, and none can do with fewer than ${bound}; the full search may find one in between.`,
  },
  halvesPaired: {
    elsewhere: true,
    weight: 'note',
    says: (cuts: number) =>
      `Half widths of two rows of one room make one cut: ${cuts === 1 ? '1 cut' : `${cuts} cuts`} fewer than the rows need each by itself.`,
  },
  noStretchLeft: {
    weight: 'stop',
    says: (cut: string, longest: string, toStart: string) =>
      `${parameter('cutLengths')} holds a cut of ${cut}. Once ${toStart} is given up to the pattern’s start, the longest whole piece of a roll is ${longest}. Order longer rolls, or see the house rule “pattern start”.`,
  },
  roomsWithoutLots: {
    weight: 'note',
    says: () =>
      `${parameter('rooms')} are given without lots: all the rolls are taken as one dye lot. Enter the lots if they differ.`,
  },
});
