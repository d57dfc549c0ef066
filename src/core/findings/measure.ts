/** From the opening to the drop. */
import { table } from './entry';
import { parameter } from './parameters';

export const MEASURE_FINDINGS = table({
  extensionOutsideBand: {
    weight: 'note',
    says: (name: string, read: string, opening: string, low: string, high: string) =>
      `${name} is ${read}; for an opening of ${opening} the usual side extension is ${low} to ${high}. Check that it is meant.`,
  },
  bayOfParts: {
    weight: 'note',
    says: (parts: number, bends: string) =>
      `${parameter('openingWidth')} is a bay or a corner of ${parts} straight parts with ${bends}. Measure each part where the rod will run, and take each bend’s angle on site.`,
  },
  bayOfOnePart: {
    weight: 'note',
    says: () =>
      `${parameter('openingWidth')} holds one part: it is taken as a plain opening, without a bend.`,
  },
  ceilingBelowOpening: {
    weight: 'stop',
    says: (ceiling: string, top: string) =>
      `${parameter('ceiling')} reads ${ceiling}, which is not above the top of the opening, ${top}. Measure both from the floor.`,
  },
  rodLowered: {
    weight: 'note',
    says: (height: string, by: string) =>
      `The rod is set at ${height}, ${by} lower than usual, to keep its clearance below the ceiling.`,
  },
  rodBelowOpening: {
    weight: 'check',
    says: (height: string, top: string) =>
      `With its clearance below the ceiling the rod stands at ${height}, below the top of the opening, ${top}. Use a ceiling track or another heading.`,
  },
  pointMakesNoSense: {
    weight: 'stop',
    says: (heading: string, point: string, why: string) =>
      `A ${heading} heading cannot be measured to ${point}: ${why}.`,
  },
  dropTooShort: {
    weight: 'stop',
    says: (read: string) =>
      `${parameter('measured')} reads ${read}, which leaves no drop under this heading. Check the measurement.`,
  },
  floorUneven: {
    weight: 'check',
    says: (spread: string, shortest: string) =>
      `The floor readings differ by ${spread}; the shortest, ${shortest}, rules. Check them, or have the hem set to the floor on site.`,
  },
  radiatorClearanceNotSet: {
    weight: 'stop',
    says: () =>
      'No clearance over a radiator is set, and none is ours to give: add the house rule “radiator clearance” with its maker’s figure.',
  },
  measuredFromEdge: {
    weight: 'note',
    says: (edge: string, look: string) =>
      `${parameter('measured')} is taken from the ${edge}, not from the floor. ${look}`,
  },
  nearHeat: {
    weight: 'check',
    says: () =>
      'Cloth over a radiator keeps the maker’s clearance ____ from it on every side; local codes and licensed practice decide.',
  },
  touchesFloor: {
    weight: 'note',
    says: (finish: string) =>
      `Cloth that touches the floor (${finish}) soils and frays where the drapery is drawn daily. Let the client choose knowingly.`,
  },
});
