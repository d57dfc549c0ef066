/**
 * The one table of findings: how heavy each is and how it is said.
 * A sentence names the input in the sheet's word, shows what was read, and says what to do.
 */
interface Entry {
  readonly weight: 'stop' | 'check' | 'note';
  readonly says: (...words: never[]) => string;
}

const table = <T extends Record<string, Entry>>(of: T): T => of;

export const FINDINGS = table({
  // How a value crosses the cell's border
  missing: {
    weight: 'stop',
    says: (name: string, noun: string) =>
      `${name} is blank. Enter ${noun}, or point at the cell that holds it.`,
  },
  zeroMissing: {
    weight: 'stop',
    says: (name: string, noun: string) => `${name} is 0 or blank. Enter ${noun} above 0.`,
  },
  errorCell: {
    weight: 'stop',
    says: (name: string, read: string) =>
      `${name} points at a cell that shows ${read}. Mend that cell first.`,
  },
  oneCellWanted: {
    weight: 'stop',
    says: (name: string, rows: number, columns: number) =>
      `${name} takes one cell, and a range of ${rows} rows × ${columns} columns was given. Point at a single cell.`,
  },
  unreadable: {
    weight: 'stop',
    says: (name: string, read: string, noun: string, example: string) =>
      `${name} reads ${read}, which is not ${noun}. Write it like ${example}.`,
  },
  doubtful: {
    weight: 'stop',
    says: (name: string, read: string, one: string, other: string) =>
      `${name} reads ${read}, which could be ${one} or ${other}. Write the one you mean.`,
  },
  tooSmall: {
    weight: 'stop',
    says: (name: string, read: string, least: string) => `${name} reads ${read}. It must be ${least}.`,
  },
  tooGreat: {
    weight: 'stop',
    says: (name: string, read: string, most: string) =>
      `${name} reads ${read}, more than the most taken here, ${most}. Check the figure and its unit.`,
  },
  notWhole: {
    weight: 'stop',
    says: (name: string, read: string, steps: string) => `${name} reads ${read}. It must be ${steps}.`,
  },
  unknownChoice: {
    weight: 'stop',
    says: (name: string, read: string, list: string) => `${name} reads ${read}. Use one of: ${list}.`,
  },
  tooLarge: {
    weight: 'stop',
    says: (name: string) =>
      `The figures given to ${name} multiply to more than can be computed exactly. Check the quantity and the units.`,
  },
  tooManyInputs: {
    weight: 'stop',
    says: (name: string, most: number, given: number) =>
      `${name} takes ${most} inputs at most, and ${given} were given. Take the last ones away.`,
  },
  rangeTooNarrow: {
    weight: 'stop',
    says: (name: string, wanted: string, columns: number) =>
      `${name} takes ${wanted}, and the range given has ${columns === 1 ? '1 column' : `${columns} columns`}. Widen the range.`,
  },

  // From the opening to the drop
  extensionOutsideBand: {
    weight: 'note',
    says: (name: string, read: string, opening: string, low: string, high: string) =>
      `${name} is ${read}; for an opening of ${opening} the usual side extension is ${low} to ${high}. Check that it is meant.`,
  },
  ceilingBelowOpening: {
    weight: 'stop',
    says: (ceiling: string, top: string) =>
      `ceiling reads ${ceiling}, which is not above the top of the opening, ${top}. Measure both from the floor.`,
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
      `measured reads ${read}, which leaves no drop under this heading. Check the measurement.`,
  },
  floorUneven: {
    weight: 'check',
    says: (spread: string, shortest: string) =>
      `The floor readings differ by ${spread}; the shortest, ${shortest}, rules. Check them, or have the hem set to the floor on site.`,
  },
  touchesFloor: {
    weight: 'note',
    says: (finish: string) =>
      `Cloth that touches the floor (${finish}) soils and frays where the drapery is drawn daily. Let the client choose knowingly.`,
  },

  // House rules
  unknownRule: {
    weight: 'check',
    says: (read: string, near: string) =>
      `The house rules hold ${read}, which is no rule's name and is not used. The nearest is “${near}”.`,
  },
  repeatedRule: {
    weight: 'check',
    says: (name: string) =>
      `The house rule “${name}” stands twice with different values; the lower one is used.`,
  },
  priceNotSet: {
    weight: 'stop',
    says: (rule: string) => `No price is set for this: add the house rule “${rule}” with your figure.`,
  },
});

export type FindingCode = keyof typeof FINDINGS;
