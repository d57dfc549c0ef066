/** House rules: from the opening to the finished drop. */
import { choiceKind } from '../cell/fields';
import { ALLOWANCE, SHIFT, SIZE } from '../cell/length-kinds';
import { inches } from '../exact/length';
import { rule, own, COMMON, HOUSE } from '../cell/rule';
import { HANGS_ON, type HangsOn } from '../cell/ways';

export const MEASURE_RULES = {
  // The rod over the opening
  extensionSmallUpTo: rule(SIZE, inches(44), 'an opening up to this is small', COMMON),
  extensionSmallLow: rule(ALLOWANCE, inches(6), 'side extension over a small opening, at least', COMMON),
  extensionSmallHigh: rule(ALLOWANCE, inches(10), 'side extension over a small opening, at most', COMMON),
  extensionMediumUpTo: rule(SIZE, inches(96), 'an opening up to this is medium', COMMON),
  extensionMediumLow: rule(ALLOWANCE, inches(11), 'side extension over a medium opening, at least', COMMON),
  extensionMediumHigh: rule(ALLOWANCE, inches(15), 'side extension over a medium opening, at most', COMMON),
  extensionLargeLow: rule(ALLOWANCE, inches(16), 'side extension over a large opening, at least', COMMON),
  extensionLargeHigh: rule(ALLOWANCE, inches(20), 'side extension over a large opening, at most', COMMON),
  rodAboveOpening: rule(
    ALLOWANCE,
    inches(10),
    'middle of the rod above the top of the opening',
    `${COMMON}: 10 to 12 in`,
  ),
  ceilingClearanceGrommet: rule(
    ALLOWANCE,
    inches(2.5),
    'middle of a grommet rod below the ceiling, at least',
    COMMON,
  ),
  ceilingClearance: rule(ALLOWANCE, inches(1), 'middle of any other rod below the ceiling, at least', HOUSE),

  // The drop
  dropNewRodRings: rule(
    SHIFT,
    inches(-2),
    'drop on rings, from the middle of a rod still to be hung',
    COMMON,
  ),
  dropHungRing: rule(SHIFT, inches(-0.5), 'drop on rings, from the bottom of a hung ring', COMMON),
  dropNewRodGrommet: rule(
    SHIFT,
    inches(2),
    'drop of a grommet heading, from the middle of a rod still to be hung',
    COMMON,
  ),
  dropHungRodGrommet: rule(
    SHIFT,
    inches(1.5),
    'drop of a grommet heading, from the middle of a hung rod',
    COMMON,
  ),
  floorClearance: rule(ALLOWANCE, inches(0.5), 'clearance at the floor for every other heading', COMMON),
  rodDiameter: rule(ALLOWANCE, inches(1), 'the rod, across', `${COMMON}: 1 to 1⅛ in`),
  pocketHeader: rule(ALLOWANCE, inches(0), 'ruffle that stands above a rod pocket', HOUSE),
  tabDrop: rule(ALLOWANCE, inches(2), 'middle of the rod down to the cloth of a tab top', HOUSE),
  trackToTop: rule(ALLOWANCE, inches(0.5), "track's underside down to the top edge", COMMON),
  trackHeight: rule(ALLOWANCE, inches(1), "ceiling down to a ceiling track's underside", HOUSE),
  hangOn: rule(
    choiceKind('rings or track', HANGS_ON),
    'rings' as HangsOn,
    'what pinch, goblet, cartridge and flat headings hang on',
    COMMON,
  ),
  floorClear: rule(SHIFT, inches(0), 'added to the drop where the cloth hangs clear', COMMON),
  floorKiss: rule(SHIFT, inches(0.5), 'added where the cloth just touches the floor', HOUSE),
  floorBreak: rule(SHIFT, inches(1.5), 'added where the cloth breaks on the floor', HOUSE),
  floorPuddle: rule(SHIFT, inches(6), 'added where the cloth lies on the floor', HOUSE),
  sillClearance: rule(ALLOWANCE, inches(0.5), 'the cloth ends so much above a sill', COMMON),
  apronBelowSill: rule(
    ALLOWANCE,
    inches(4),
    'the cloth ends so much below the sill where it covers the apron',
    `${COMMON}: 4 to 6 in`,
  ),
  counterClearance: rule(ALLOWANCE, inches(0.5), 'the cloth ends so much above a counter', HOUSE),
  radiatorClearance: own(
    SIZE,
    'the cloth ends so much above a radiator, by its maker’s figure',
    'no default: the heater maker’s clearance',
  ),
  readingSpread: rule(
    ALLOWANCE,
    inches(0.5),
    'floor readings that differ by more are worth a second look',
    HOUSE,
  ),
};
