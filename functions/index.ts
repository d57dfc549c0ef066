/** The catalogue, in the order people meet the functions. */
import { AUDIT, CHECK } from './check';
import { CUTLENGTH } from './cuts';
import type { CellFunction } from './declare';
import { BRACKETS, RODPIECES, STACK } from './hardware';
import { GROMMETS, PLEATS, POCKET, RINGS } from './heading';
import { DROP, EXTENSION, RODHEIGHT, RODWIDTH } from './measure';
import { BREAKPRICE, LABOR, SALESTAX, SELLPRICE } from './price';
import { HOUSERULE, MEASURED, TAPE, working } from './reading';
import { CUTPLAN, ROLLCUTS } from './rolls';
import { SCHEDULE } from './schedule';
import { FINISHEDWIDTH, FULLNESS, PANELS, SAVEWIDTH, WIDTHS } from './widths';
import { CLOTHWEIGHT, LINING, RAILROADED, YARDAGE } from './yardage';

export const NAMESPACE = 'HEM';

/** Finds a function by name, with or without the namespace. */
export function functionNamed(name: string): CellFunction | undefined {
  const bare = name
    .trim()
    .toUpperCase()
    .replace(/^=?\s*(HEM\.|_XLDUDF_HEM_)/, '');
  return CATALOGUE.find((one) => one.name === bare);
}

const WORKING = working(functionNamed, () =>
  CATALOGUE.filter((one) => one !== WORKING)
    .map((one) => one.name)
    .join(', '),
);

export const CATALOGUE: readonly CellFunction[] = [
  EXTENSION,
  RODWIDTH,
  RODHEIGHT,
  DROP,
  FINISHEDWIDTH,
  STACK,
  WIDTHS,
  PANELS,
  FULLNESS,
  CUTLENGTH,
  YARDAGE,
  LINING,
  RAILROADED,
  SAVEWIDTH,
  CLOTHWEIGHT,
  PLEATS,
  GROMMETS,
  RINGS,
  POCKET,
  BRACKETS,
  RODPIECES,
  BREAKPRICE,
  LABOR,
  SELLPRICE,
  SALESTAX,
  ROLLCUTS,
  CUTPLAN,
  SCHEDULE,
  CHECK,
  AUDIT,
  MEASURED,
  TAPE,
  WORKING,
  HOUSERULE,
];
