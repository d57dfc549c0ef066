/** Parameters that several functions share, in the same words everywhere. */
import { choiceKind, optional, required } from '../src/core/cell/fields';
import { FULLNESS as FULLNESS_KIND, WIDTH_COUNT, WINDOWS } from '../src/core/cell/figure-kinds';
import { ALLOWANCE, REPEAT, SIZE } from '../src/core/cell/length-kinds';
import { DRAWS, HEADINGS, LININGS, MATCHES } from '../src/core/cell/treatment';

const HEADING_KIND = choiceKind('a heading', HEADINGS);

export const ROD_WIDTH = required(SIZE, 'the rod: inside width and both side extensions, returns not in it');
export const HEADING = required(HEADING_KIND, 'the heading');
export const HEADING_IF_KNOWN = optional(
  HEADING_KIND,
  'a grommet heading needs more clearance below the ceiling',
);
export const DRAW = optional(
  choiceKind('a draw', DRAWS),
  'how it draws: pair (default), one-way left, one-way right, stationary (two side panels), stationary cover or one stationary panel',
);
export const FABRIC_WIDTH = required(
  SIZE,
  'the bolt’s width, selvage to selvage or usable, as the house has it',
);
export const FULLNESS = optional(
  FULLNESS_KIND,
  'flat to finished, as a ratio; blank takes the house’s for the heading',
);
export const FINISHED_DROP = required(SIZE, 'the finished drop, top edge to bottom edge');
export const VERTICAL_REPEAT = optional(REPEAT, 'the pattern’s height; blank or 0 is no repeat');
export const HORIZONTAL_REPEAT = optional(REPEAT, 'the pattern’s width; blank or 0 is no repeat');
export const QUANTITY = optional(WINDOWS, 'windows alike, 1 or more; blank is 1');
export const MATCH = optional(
  choiceKind('a match', MATCHES),
  'how the pattern meets: straight (default) or half-drop',
);
export const LINING = optional(
  choiceKind('a lining', LININGS),
  'unlined (default), lined, interlined or blackout',
);
export const WIDTHS_IN_ALL = required(WIDTH_COUNT, 'widths of cloth in the whole treatment');
export const RETURN = optional(
  ALLOWANCE,
  'rod to wall, each outer side; blank takes the house’s, 0 in a recess',
);
export const OVERLAP = optional(
  ALLOWANCE,
  'what each leading edge of a pair is carried past the centre; blank takes the house’s, none where no carriers cross',
);
