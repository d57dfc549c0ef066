/** How a sheet of labels is cut, from the house's own lines; a figure without a unit is in that of the paper. */
import { toUnit, type Length } from '../exact/length';
import { CENTIMETRES, INCHES } from '../exact/unit';
import { SIZE } from '../cell/length-kinds';
import { Refusal } from '../cell/answer';
import { HOUSE_LINES, standardOf, type HouseKey, type HouseWords } from './house-lines';
import type { PaperSize } from './paper';

/** In points, but for the two counts. */
export interface LabelSheet {
  readonly across: number;
  readonly down: number;
  readonly wide: number;
  readonly high: number;
  readonly left: number;
  readonly top: number;
  readonly gapAcross: number;
  readonly gapDown: number;
}

const POINTS = 72;
const MOST = 30;

type Read = (value: string | number) => number | undefined;

/** “2 5/8 in” and “70 mm” alike; nothing where it cannot be read. */
function lengthRead(value: string | number, size: PaperSize): number | undefined {
  if (/^\s*0+(?:[.,]0+)?\s*(?:in|mm|cm)?\s*$/.test(String(value))) return 0;
  try {
    const read: Length | undefined = SIZE.read(value, {
      name: 'label',
      unit: size === 'a4' ? CENTIMETRES : INCHES,
    });
    return read === undefined ? undefined : toUnit(read, 'in') * POINTS;
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

const countRead = (value: string | number): number | undefined => {
  const figure = Number(value);
  return Number.isInteger(figure) && figure > 0 && figure <= MOST ? figure : undefined;
};

/** The house's line where it can be read, else the standard one. */
export function readCut(house: HouseWords, size: PaperSize): LabelSheet {
  const from = (key: HouseKey, read: Read): number => {
    const line = HOUSE_LINES.find((one) => one.key === key);
    const standard = line === undefined ? 0 : (read(standardOf(line, size)) ?? 0);
    const own = house[key]?.value;
    return own === undefined ? standard : (read(own) ?? standard);
  };
  const length = (key: HouseKey): number => from(key, (value) => lengthRead(value, size));
  const count = (key: HouseKey): number => from(key, countRead);
  return {
    across: count('labelsAcross'),
    down: count('labelsDown'),
    wide: length('labelWidth'),
    high: length('labelHeight'),
    left: length('labelLeft'),
    top: length('labelTop'),
    gapAcross: length('labelGapAcross'),
    gapDown: length('labelGapDown'),
  };
}
