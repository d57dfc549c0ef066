/** A role's look as the grid keeps it. In the dark theme the grid turns the colours by itself. */
import { BorderStyleTypes, BooleanNumber, WrapStrategy, type IStyleData } from '@univerjs/core';
import { EDGE, LOOKS } from '../book/roles';
import type { Role } from '../book/book';

const line = { s: BorderStyleTypes.THIN, cl: { rgb: `#${EDGE}` } };
/** Lines all round. */
const BOX = { t: line, r: line, b: line, l: line };

const WEIGHTS = {
  hair: BorderStyleTypes.HAIR,
  thin: BorderStyleTypes.THIN,
  medium: BorderStyleTypes.MEDIUM,
} as const;
const black = (weight: keyof typeof WEIGHTS) => ({ s: WEIGHTS[weight], cl: { rgb: '#000000' } });

export function styleOf(role: Role): IStyleData {
  const { bold, italic, size, ink, fill, boxed, wrapped, over, under } = LOOKS[role];
  return {
    ...(bold === true && { bl: BooleanNumber.TRUE }),
    ...(italic === true && { it: BooleanNumber.TRUE }),
    ...(size !== undefined && { fs: size }),
    ...(ink !== undefined && { cl: { rgb: `#${ink}` } }),
    ...(fill !== undefined && { bg: { rgb: `#${fill}` } }),
    ...(wrapped === true && { tb: WrapStrategy.WRAP }),
    ...(boxed === true && { bd: BOX }),
    ...((over ?? under) !== undefined && {
      bd: {
        ...(over !== undefined && { t: black(over) }),
        ...(under !== undefined && { b: black(under) }),
      },
    }),
  };
}
