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
  tooGreatShare: {
    weight: 'stop',
    says: (name: string, read: string, most: string, example: string) =>
      `${name} reads ${read}, more than the most taken here, ${most}. Write it like ${example}.`,
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

  // Finished width and widths
  overlapUnused: {
    weight: 'note',
    says: (draw: string) => `An overlap is only for a pair; for ${draw} it is left out.`,
  },
  fabricTooNarrow: {
    weight: 'stop',
    says: (read: string, lost: string) =>
      `fabric_width reads ${read}, and ${lost} of it would go into selvages, seams or hems. Check the width and its unit.`,
  },
  liningTooNarrow: {
    weight: 'stop',
    says: (read: string) =>
      `lining_width reads ${read}, which seams would use up. Check the width and its unit.`,
  },
  repeatWiderThanCloth: {
    weight: 'check',
    says: (repeat: string, usable: string) =>
      `horizontal_repeat is ${repeat}, wider than the usable cloth, ${usable}: the widths cannot be matched by whole repeats. Check the match at each seam.`,
  },
  lessFullness: {
    weight: 'note',
    says: (asked: string, delivered: string) =>
      `These widths deliver a fullness of ${delivered} where ${asked} was asked. One width more would reach it.`,
  },
  waveRatio: {
    weight: 'check',
    says: (read: string, low: string, high: string) =>
      `A wave heading is made at ${low} to ${high} times the track; fullness reads ${read}.`,
  },
  widthsTooFew: {
    weight: 'stop',
    says: (widths: string) =>
      `widths reads ${widths}, which hems and seams use up. Enter the widths of the whole treatment.`,
  },
  doesNotCover: {
    weight: 'check',
    says: (widths: string, short: string) =>
      `${widths} widths lie ${short} short of the finished width even when flat. Check widths and fabric_width.`,
  },
  fewestWidths: {
    weight: 'note',
    says: (widths: string) =>
      `${widths} is the fewest widths this treatment can be made of: no narrower rod saves one.`,
  },

  noReturn: {
    weight: 'note',
    says: () =>
      'return reads 0: the cloth ends at the rod. An empty cell arrives as 0 in some programs; leave it out where the house’s return is meant.',
  },

  // Cuts and yardage
  noWindows: {
    weight: 'check',
    says: () =>
      'quantity reads 0: no window, so no cloth. An empty cell arrives as 0 in some programs; leave it out where one window is meant.',
  },
  dropTooShortToCut: {
    weight: 'stop',
    says: (drop: string, layer: string) =>
      `finished_drop reads ${drop}, which leaves no ${layer} to cut under the house rules. Check the drop and the ${layer} rules.`,
  },
  liningHasNoRepeat: {
    weight: 'note',
    says: (layer: string) => `vertical_repeat is left out: ${layer} has no pattern to match.`,
  },
  matchWithoutRepeat: {
    weight: 'note',
    says: () => 'match says half-drop, but no vertical_repeat is given; the cuts are taken as plain.',
  },
  tooNarrowToTurn: {
    weight: 'note',
    says: (cut: string, usable: string, short: string) =>
      `The cloth is too narrow to railroad: the cut is ${cut} and the usable width ${usable}, ${short} short. Cut it up the roll.`,
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
    says: (narrower: string, fewer: string) => `A rod ${narrower} narrower would need ${fewer} widths.`,
  },

  // Heading and hardware
  notPleated: {
    weight: 'stop',
    says: (heading: string) =>
      `A ${heading} heading has no pleats to set out. PLEATS serves pinch, goblet, cartridge, box, inverted and wave.`,
  },
  nothingToPleat: {
    weight: 'stop',
    says: (flat: string, finished: string) =>
      `The flat cloth of a panel is ${flat} and its finished width ${finished}: nothing is left to pleat. Check widths and fabric_width.`,
  },
  takeUpOutside: {
    weight: 'check',
    says: (read: string, low: string, high: string) =>
      `A pleat takes up ${read}; ${low} to ${high} is usual. Change the widths or the fullness.`,
  },
  spaceOutside: {
    weight: 'check',
    says: (read: string, low: string, high: string) =>
      `The space between pleats is ${read}; ${low} to ${high} is usual.`,
  },
  underfoldOutside: {
    weight: 'note',
    says: (read: string, wanted: string) =>
      `The cloth gives underfolds ${read} deep where the house rule says ${wanted}.`,
  },
  rodTooNarrowForPanels: {
    weight: 'stop',
    says: (rod: string) =>
      `rod_width reads ${rod}, too narrow to set out a heading. Check the figure and its unit.`,
  },
  notDrawn: {
    weight: 'note',
    says: () => 'A stationary panel is not drawn back: it has no stack.',
  },
  pocketIsNotDrawn: {
    weight: 'note',
    says: (heading: string) => `A ${heading} heading is hard to draw; its stack is only a guide.`,
  },
  noStockRods: {
    weight: 'stop',
    says: () => 'stock_lengths is blank. Enter the rod lengths you can buy.',
  },
  tooManyStockRods: {
    weight: 'stop',
    says: (most: number) =>
      `stock_lengths holds more than ${most} different lengths. Keep the ones you order.`,
  },
  loadCaution: {
    weight: 'note',
    says: () =>
      'Anchors, load and ladders are the installer’s judgement; local codes and licensed practice decide.',
  },

  // Price
  belowFirstBreak: {
    weight: 'note',
    says: (quantity: string, least: string) =>
      `quantity reads ${quantity}, below the first price break, ${least}. Add a break from 0, or raise the quantity to the minimum.`,
  },
  breaksUnreadable: {
    weight: 'stop',
    says: (row: number, read: string) =>
      `price_breaks row ${row} reads ${read}. Each row needs two figures: from quantity, price.`,
  },
  breakRepeated: {
    weight: 'stop',
    says: (quantity: string) => `price_breaks holds two prices from ${quantity}. Keep one.`,
  },
  noMargin: {
    weight: 'stop',
    says: (rate: string) => `rate reads ${rate} as a margin on the selling price. It must be below 100 %.`,
  },

  noClothPrice: {
    weight: 'check',
    says: (name: string) =>
      `No price is set for ${name}; it stands in the quote at nothing. Add it to the price list.`,
  },
  pricedAsAnother: {
    weight: 'note',
    says: (name: string, other: string) =>
      `No price is set for ${name}; it is priced as ${other}. Add its own price where it differs.`,
  },
  noMakingPrice: {
    weight: 'check',
    says: () =>
      'The making charge of a heading is not set; making stands in the quote at nothing. Add the house rules “labor pinch” and so on.',
  },
  belowMinimumCut: {
    weight: 'note',
    says: (name: string, yardage: string, least: string) =>
      `${name} needs ${yardage}, below the least that is cut, ${least}; the least is priced.`,
  },
  depositBelowCloth: {
    weight: 'check',
    says: (deposit: string, cloth: string) =>
      `The deposit, ${deposit}, does not cover the cloth cut to order, ${cloth}. Ask for more before you order.`,
  },
  rateLooksHigh: {
    weight: 'check',
    says: (rate: string) => `rate reads ${rate}. Check that it is meant: write 7.25 % or 0.0725.`,
  },
  rateAboveWhole: {
    weight: 'stop',
    says: (rate: string) => `rate reads ${rate}: more tax than price. Write it like 7.25 % or 0.0725.`,
  },

  // Pricing in bulk
  breakUnreadable: {
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
    weight: 'note',
    says: (name: string, bought: string, from: string, saved: string) =>
      `${name}: ordering ${from} instead of ${bought} reaches the next price break and costs ${saved} less.`,
  },
  noWholeRollFits: {
    weight: 'check',
    says: (name: string, roll: string) =>
      `${name} cannot be bought in whole rolls of ${roll}: a cut is longer than the roll. The cut price is taken.`,
  },
  clothWeightUnknown: {
    weight: 'check',
    says: (name: string, where: string) =>
      `The weight of ${name} is not known, so the freight leaves it out. Enter ${where}.`,
  },
  weighedAsAnother: {
    weight: 'note',
    says: (name: string, other: string, where: string) =>
      `The weight of ${name} is not set, so the freight weighs it as ${other}. Enter ${where} where it differs.`,
  },
  cartonNotWhole: {
    weight: 'check',
    says: (missing: string) =>
      `Freight by the carton wants both what a carton holds and its price: set the house rule “${missing}”.`,
  },
  mockUpIsAll: {
    weight: 'note',
    says: (windows: number) =>
      `The mock-up takes ${windows === 1 ? 'the only window' : `all ${windows} windows`}, so there is nothing left to price apart.`,
  },

  // Rolls and the cutting plan
  cutTooLong: {
    weight: 'stop',
    says: (cut: string, longest: string) =>
      `cut_lengths holds a cut of ${cut}, and the longest whole piece in roll_lengths is ${longest}. Order longer rolls, or check the cut and its unit.`,
  },
  noCuts: {
    weight: 'stop',
    says: () => 'counts adds up to 0 cuts. Enter how many cuts of each length are wanted.',
  },
  tooManyCuts: {
    weight: 'stop',
    says: (cuts: number, most: number) =>
      `counts adds up to ${cuts} cuts, more than the most planned at once, ${most}. Check the counts, or plan each fabric or floor by itself.`,
  },
  tooManyRolls: {
    weight: 'stop',
    says: (rolls: number, most: number) =>
      `roll_lengths holds ${rolls} rolls, more than the most planned at once, ${most}. Point at the rolls meant for this plan.`,
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
  countMissing: {
    weight: 'check',
    says: (lengths: string) =>
      `counts is 0 or blank beside ${lengths}: nothing is cut of it. Enter the count if some are wanted.`,
  },
  lotMissing: {
    weight: 'stop',
    says: (without: number, rolls: number) =>
      `lots is blank for ${without} of ${rolls} rolls, so a room could be cut from two dye lots. Enter every roll’s lot, or leave lots out.`,
  },
  lotsForOneLength: {
    weight: 'stop',
    says: (lots: number) =>
      `lots names ${lots} dye lots, but roll_lengths holds one length, which means as many rolls as it takes. Enter one length for each roll in hand.`,
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
    weight: 'note',
    says: (cuts: number) =>
      `Half widths of two rows of one room make one cut: ${cuts === 1 ? '1 cut' : `${cuts} cuts`} fewer than the rows need each by itself.`,
  },
  noStretchLeft: {
    weight: 'stop',
    says: (cut: string, longest: string, toStart: string) =>
      `cut_lengths holds a cut of ${cut}. Once ${toStart} is given up to the pattern’s start, the longest whole piece of a roll is ${longest}. Order longer rolls, or see the house rule “roll start”.`,
  },
  roomsWithoutLots: {
    weight: 'note',
    says: () =>
      'rooms are given without lots: all the rolls are taken as one dye lot. Enter the lots if they differ.',
  },

  // Whole rows
  sameColumnTwice: {
    weight: 'stop',
    says: (one: string, other: string, meaning: string) =>
      `headers holds two columns for the ${meaning}: “${one}” and “${other}”. Rename one, or leave it out of the range.`,
  },
  noColumns: {
    weight: 'stop',
    says: (read: string) =>
      `headers reads ${read}, and none of it is a column known here. Point at the row that heads the table, with columns like inside width, measured height, heading and fabric width.`,
  },
  rowsAndHeaders: {
    weight: 'stop',
    says: (headers: number, columns: number) =>
      `headers has ${headers} columns and rows has ${columns}. Point both at the same columns.`,
  },
  unknownOutput: {
    weight: 'stop',
    says: (read: string, list: string) => `outputs reads ${read}. Use one or more of: ${list}.`,
  },

  // Rooms by pattern
  roomsUnreadable: {
    weight: 'stop',
    says: (read: string) =>
      `rooms reads “${read}”. Write numbers and ranges like 401-448 even, or 401-448 not 404, 413.`,
  },
  roomsBackwards: {
    weight: 'stop',
    says: (read: string) => `rooms reads “${read}”, which runs backwards. Put the lower number first.`,
  },
  tooManyRooms: {
    weight: 'stop',
    says: (read: string, most: number) =>
      `rooms reads “${read}”, more than ${most} rooms. Check the numbers.`,
  },
  roomNotInPattern: {
    weight: 'stop',
    says: (room: string, pattern: string) =>
      `Room ${room} is to be left out, but “${pattern}” does not hold it. Check the number.`,
  },
  noRooms: {
    weight: 'stop',
    says: (pattern: string) => `“${pattern}” leaves no room. Check the numbers and what is left out.`,
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
  noSuchRule: {
    weight: 'stop',
    says: (read: string, near: string) =>
      `name reads ${read}, which is no house rule. The nearest is “${near}”.`,
  },
  noSuchFunction: {
    weight: 'stop',
    says: (read: string, list: string) => `function_name reads ${read}. Use one of: ${list}.`,
  },
  priceNotSet: {
    weight: 'stop',
    says: (rule: string) => `No price is set for this: add the house rule “${rule}” with your figure.`,
  },

  // Rules by date
  rulesInTwoUnits: {
    weight: 'stop',
    says: (one: string, other: string) =>
      `The house rules of different days are in different units, ${one} and ${other}. Audit orders in inches and in centimetres apart.`,
  },
  rulesOfOneDay: {
    weight: 'stop',
    says: (day: string) =>
      `Two sets of house rules stand ${day}. Write the first day of the newer one into its rule “in force from”.`,
  },

  // Auditing past orders: the sheet as a whole
  oneRowWanted: {
    weight: 'stop',
    says: (rows: number) =>
      `row takes one order row, and ${rows} rows were given. Point at one, or use AUDIT.`,
  },
  secondColumn: {
    weight: 'check',
    says: (heading: string, meaning: string, first: string) =>
      heading === first
        ? `Two columns are headed “${heading}”: the first is read as the ${meaning}, and the other is left out. Rename the one that means something else.`
        : `“${heading}” is a second column for the ${meaning}; “${first}” is read and this one is left out. Rename the one that means something else.`,
  },
  rowTooLong: {
    weight: 'check',
    says: (cells: number, headings: number, beyond: string) =>
      `The row has ${cells} cells and there are ${headings} headings, so its figures may stand one column too far on; beyond the last stands ${beyond}. In a CSV, a text with a comma stands in quotation marks.`,
  },
  columnInOtherUnit: {
    weight: 'note',
    says: (heading: string, unit: string, house: string) =>
      `“${heading}” is headed in ${unit} where the house rules say ${house}; its bare figures are read as ${unit}.`,
  },
  columnMissing: {
    weight: 'check',
    says: (missing: string, figures: string) =>
      `No column is headed ${missing}, so ${figures} cannot be worked out again and stays unchecked. Add the column, or name it so.`,
  },
  nothingToCompare: {
    weight: 'check',
    says: () =>
      'No ordered figure stands in the table (rod width, finished drop, widths, cut length, yardage …), so the rows are only looked over. Add the columns that were ordered.',
  },
  mixedUnits: {
    weight: 'check',
    says: (heading: string, one: string, other: string, unit: string) =>
      `${heading} mixes units: ${one} and ${other}. Bare figures are read as ${unit}; write one unit throughout.`,
  },
  currencySigns: {
    weight: 'note',
    says: (heading: string, sign: string) =>
      `${heading} is written with ${sign}; the sign is passed over and the figures are compared as they stand.`,
  },
  mixedCurrencies: {
    weight: 'check',
    says: (heading: string, signs: string) =>
      `${heading} holds amounts in several currencies (${signs}). They are compared as plain figures: keep one currency in a column.`,
  },
  datesAsText: {
    weight: 'note',
    says: (heading: string, example: string) =>
      `${heading} holds dates written as text, like ${example}. They are read by their figures; 2026-03-09 leaves no doubt.`,
  },
  dateDoubtful: {
    weight: 'check',
    says: (heading: string, one: string, other: string) =>
      `${heading} could be ${one} or ${other}, and other rules or prices stood on each; the earlier is taken. Write the date like ${one}.`,
  },
  totalRowDiffers: {
    weight: 'check',
    says: (heading: string, found: string, expected: string) =>
      `The totals row reads ${found} for ${heading}, and the rows above it add up to ${expected}. Add the column up again.`,
  },

  // Auditing past orders: a figure against its working
  figureDiffers: {
    weight: 'check',
    says: (heading: string, found: string, expected: string, difference: string) =>
      `${heading} reads ${found}; worked out from the row it is ${expected}, ${difference}. Correct the order, or the figure it comes from.`,
  },
  notWorkedOut: {
    weight: 'check',
    says: (figures: string, why: string) => `${figures} could not be checked: ${why}`,
  },
  rodOutsideBand: {
    weight: 'check',
    says: (heading: string, found: string, low: string, high: string) =>
      `${heading} reads ${found}; for this opening the usual side extensions make it ${low} to ${high}. Check the rod, or enter the extensions that were meant.`,
  },

  // Auditing past orders: slips
  swapped: {
    weight: 'stop',
    says: (sure: string, one: string, other: string, read: string, agrees: string, witness: string) =>
      `${sure}: ${one} and ${other} are swapped. They read ${read}; ${agrees} would agree with ${witness}. Swap them back.`,
  },
  unitSlip: {
    weight: 'stop',
    says: (sure: string, heading: string, read: string, unit: string, means: string, witness: string) =>
      `${sure}: ${heading} was typed in ${unit}. It reads ${read}; ${means} would agree with ${witness}. Enter ${means}.`,
  },
  unitOutOfRange: {
    weight: 'check',
    says: (heading: string, read: string, unit: string, means: string) =>
      `Possibly ${heading} was typed in ${unit}: ${read} is out of the usual range, ${means} within it. Check the measurement.`,
  },
  outOfRange: {
    weight: 'check',
    says: (heading: string, read: string, usual: string) =>
      `${heading} reads ${read}; usual is ${usual}. Check the figure and its decimal point.`,
  },
  decimalSlip: {
    weight: 'stop',
    says: (sure: string, heading: string, read: string, means: string, witness: string) =>
      `${sure}: the decimal point of ${heading} slipped. It reads ${read}; ${means} would agree with ${witness}. Enter ${means}.`,
  },
  returnLeftOut: {
    weight: 'stop',
    says: (sure: string, which: string, figure: string, found: string, expected: string) =>
      `${sure}: ${which} left out. ${figure} reads ${found}, as if without; with it, it is ${expected}. Add it before you cut.`,
  },
  overlapLeftOut: {
    weight: 'stop',
    says: (sure: string, figure: string, found: string, expected: string) =>
      `${sure}: the overlap is left out. ${figure} reads ${found}, as if without; with it, it is ${expected}. Add it before you cut.`,
  },
  repeatIgnored: {
    weight: 'stop',
    says: (sure: string, repeat: string, figure: string, found: string, expected: string) =>
      `${sure}: the repeat of ${repeat} is ignored. ${figure} reads ${found}, the plain cut; with the repeat it is ${expected}. Order the difference.`,
  },
  repeatTurned: {
    weight: 'stop',
    says: (
      sure: string,
      horizontal: string,
      vertical: string,
      figure: string,
      found: string,
      expected: string,
    ) =>
      `${sure}: the repeat is taken from the wrong direction. ${figure} reads ${found}, as from ${horizontal}; the vertical repeat is ${vertical}, which gives ${expected}.`,
  },
  quantityLeftOut: {
    weight: 'stop',
    says: (sure: string, figure: string, found: string, quantity: string, expected: string) =>
      `${sure}: the quantity is left out. ${figure} reads ${found}, enough for one window; the row orders ${quantity}, which takes ${expected}.`,
  },
  partsDoNotAdd: {
    weight: 'check',
    says: (heading: string, found: string, parts: string, expected: string) =>
      `${heading} reads ${found}, and its parts (${parts}) add up to ${expected}. Add them again.`,
  },
  amountDiffers: {
    weight: 'check',
    says: (heading: string, found: string, price: string, expected: string) =>
      `${heading} reads ${found}; at ${price} it is ${expected}. Multiply again.`,
  },
  depositAboveTotal: {
    weight: 'check',
    says: (heading: string, found: string, total: string) =>
      `${heading} reads ${found}, more than the total of ${total}. Check both.`,
  },
  oddGrommets: {
    weight: 'stop',
    says: (heading: string, found: string, expected: string) =>
      `${heading} reads ${found}, an odd count: one edge would turn into the room. Use ${expected}.`,
  },
  stackOverGlass: {
    weight: 'check',
    says: (stack: string, extension: string, over: string, rod: string) =>
      `Drawn back it stacks ${stack} a side and has ${extension} beside the opening: ${over} lies over the glass. A rod of ${rod} would clear it.`,
  },
  orderTooNarrowToTurn: {
    weight: 'stop',
    says: (why: string) => `It is ordered railroaded. ${why}`,
  },
  noCertificate: {
    weight: 'stop',
    says: (read: string) =>
      `A public job and ${read} flame certificate. Ask for the certificate of this lot (NFPA 701, EN 13773, BS 5867-2 or what the place asks for); local codes and licensed practice decide.`,
  },
  aboveMethodOne: {
    weight: 'check',
    says: (heading: string, read: string, most: string) =>
      `${heading} reads ${read}, and the certificate names Method 1, which NFPA 701 keeps for cloth up to ${most}. Ask for Method 2; local codes and licensed practice decide.`,
  },
  cordInReach: {
    weight: 'stop',
    says: (read: string) =>
      `It is drawn by ${read} where a child can reach it: a strangulation hazard (ANSI/WCMA A100.1-2022; 16 CFR 1120.3 for stock products). Change to a wand, hand or motor; local codes and licensed practice decide.`,
  },
  duplicateOrder: {
    weight: 'check',
    says: (row: number, what: string) =>
      `The same window stands in row ${row} (${what}). Strike one of them if it was entered twice.`,
  },
  unlikeItsJob: {
    weight: 'check',
    says: (heading: string, read: string, group: string, others: string, usual: string, guess: string) =>
      `${heading} reads ${read}; in ${group} ${others} stand at about ${usual}. ${guess}`,
  },
  priceOffList: {
    weight: 'check',
    says: (heading: string, read: string, fabric: string, listed: string, since: string) =>
      `${heading} reads ${read}; the list in force has ${fabric} at ${listed}${since}. Check the price.`,
  },

  // Learning the house's rules from past orders
  learned: {
    weight: 'note',
    says: (rule: string, value: string, fit: number, of: number, standing: string, fitStanding: number) =>
      `${fit} of ${of} past orders fit ${rule} ${value}; the rule in force, ${standing}, fits ${fitStanding}.`,
  },
  nothingLearned: {
    weight: 'note',
    says: () => 'Too few rows hold both what was measured and what was ordered to learn a rule from.',
  },
});

export type FindingCode = keyof typeof FINDINGS;
