/** Finished width, widths, cuts and yardage. */
import { table } from './entry';
import { parameter } from './parameters';

export const CLOTH_FINDINGS = table({
  // Finished width and widths
  overlapUnused: {
    weight: 'note',
    says: (draw: string) => `An overlap is only for a pair; for ${draw} it is left out.`,
  },
  overlapOnTheRod: {
    weight: 'note',
    says: (heading: string) =>
      `An overlap is for leading carriers that cross. The rod runs through a ${heading} heading; the overlap given is kept.`,
  },
  widthsEachUnused: {
    weight: 'note',
    says: (draw: string) =>
      `${parameter('widthsEach')} is for side panels that do not meet; for ${draw} the widths are counted from the rod.`,
  },
  sidePanelsMeet: {
    weight: 'check',
    says: (covered: string, rod: string) =>
      `${parameter('draw')} says side panels, and together they cover ${covered} of a rod of ${rod}: they would meet. Order fewer widths each, or say pair or stationary cover.`,
  },
  widthsAreOrdered: {
    weight: 'note',
    says: () => 'Side panels are ordered by their widths: no narrower rod saves one.',
  },
  halfLeftOver: {
    weight: 'note',
    says: (widths: string) =>
      `${widths} widths a window are cut from whole ones: half a width is left over at each window. The house rule “share half widths” lets two windows make one together.`,
  },
  fabricTooNarrow: {
    weight: 'stop',
    says: (read: string, lost: string) =>
      `${parameter('fabricWidth')} reads ${read}, and ${lost} of it would go into selvages, seams or hems. Check the width and its unit.`,
  },
  liningTooNarrow: {
    weight: 'stop',
    says: (read: string) =>
      `${parameter('liningWidth')} reads ${read}, which selvages and seams would use up. Check the width and its unit.`,
  },
  liningWiderThanCut: {
    weight: 'note',
    says: (wide: string, cut: string) =>
      `${parameter('liningWidth')} reads ${wide}, more than its own cut of ${cut}: this cloth could be turned, its width up the drop. Check the figure; the yardage is up the roll.`,
  },
  repeatWiderThanCloth: {
    weight: 'check',
    says: (repeat: string, usable: string) =>
      `${parameter('horizontalRepeat')} is ${repeat}, wider than the usable cloth, ${usable}: the widths cannot be matched by whole repeats. Check the match at each seam.`,
  },
  lessFullness: {
    weight: 'note',
    says: (asked: string, delivered: string) =>
      `These widths deliver a fullness of ${delivered} where ${asked} was asked. One width more would reach it.`,
  },
  waveRatio: {
    weight: 'check',
    says: (read: string, low: string, high: string) =>
      `A wave heading is made at ${low} to ${high} times the track; ${parameter('fullness')} reads ${read}.`,
  },
  widthsTooFew: {
    weight: 'stop',
    says: (widths: string, taken: string) =>
      `${parameter('widths')} reads ${widths}, which ${taken} use up. Enter the widths of the whole treatment.`,
  },
  doesNotCover: {
    weight: 'check',
    says: (widths: string, short: string) =>
      `${widths} widths lie ${short} short of the finished width even when flat. Check ${parameter('widths')} and ${parameter('fabricWidth')}.`,
  },
  fewestWidths: {
    weight: 'note',
    says: (widths: string) =>
      `${widths} is the fewest widths this treatment can be made of: no narrower rod saves one.`,
  },

  noReturn: {
    weight: 'note',
    says: () =>
      `${parameter('return')} reads 0: the cloth ends at the rod. An empty cell arrives as 0 in some programs; leave it out where the house’s return is meant.`,
  },

  sheerIsNotLined: {
    weight: 'check',
    says: (lining: string) =>
      `The row is a sheer, which is never lined; ${lining} is left out. Give the drapery a row of its own.`,
  },

  // Cuts and yardage
  dropTooShortToCut: {
    weight: 'stop',
    says: (drop: string, layer: string) =>
      `${parameter('finishedDrop')} reads ${drop}, which leaves no ${layer} to cut under the house rules. Check the drop and the ${layer} rules.`,
  },
  liningHasNoRepeat: {
    weight: 'note',
    says: (layer: string) => `${parameter('verticalRepeat')} is left out: ${layer} has no pattern to match.`,
  },
  matchWithoutRepeat: {
    weight: 'check',
    says: () =>
      `${parameter('match')} says half-drop, but no ${parameter('verticalRepeat')} is given; the cuts are taken as plain. Enter the repeat, or leave match out.`,
  },
  repeatTallerThanCut: {
    weight: 'check',
    says: (repeat: string, cut: string) =>
      `${parameter('verticalRepeat')} reads ${repeat}, taller than the cut, ${cut}: no width shows a whole pattern. Check the repeat and its unit.`,
  },
  motifStandsElsewhere: {
    elsewhere: true,
    weight: 'check',
    says: (room: string, fabric: string, drop: string, other: string, further: string) =>
      `${room}: ${fabric} matches at one height above the floor, so the windows of ${drop} begin ${further} further on in its repeat than those of ${other}, which may take up to ${further} more cloth. Order it with the cloth, and chalk it on the cuts.`,
  },
  tooNarrowToTurn: {
    weight: 'note',
    says: (cut: string, usable: string, short: string) =>
      `The cloth is too narrow to railroad: the cut is ${cut} and the usable width ${usable}, ${short} short. Cut it up the roll.`,
  },
  turnedByRow: {
    weight: 'note',
    says: () =>
      'The row says that its cloth is railroaded: yardage is of turned cloth; widths, cut length, lining and marks are as if it were cut up the roll.',
  },
  mayNotTurn: {
    weight: 'check',
    says: () => 'Pile and one-way patterns may not be railroaded; look at the cloth before you turn it.',
  },
  turningSaves: {
    weight: 'note',
    says: (turned: string, upright: string) =>
      `Railroaded it would take ${turned} instead of ${upright}, if pattern and pile allow it.`,
  },
  uprightSaves: {
    weight: 'note',
    says: (turned: string, upright: string) => `Up the roll it would take ${upright} instead of ${turned}.`,
  },
  narrowerSaves: {
    weight: 'note',
    says: (narrower: string, widths: string, fewer: string, saved: string) =>
      `${narrower} would need ${widths} widths, ${fewer} fewer, and save ${saved}.`,
  },
  shorterCutSaves: {
    weight: 'note',
    says: (cut: string, saved: string) => `${cut} and saves ${saved}.`,
  },
});
