/** Making charged less at quantities: “100 5 %; 400 8 %” is 5 % less from 100 widths, 8 % from 400. */
import { refuse } from './answer';
import { oneCell, readBack, type Kind } from './fields';
import { QUANTITY, RATE } from './figure-kinds';
import { money, NOTHING, type Money } from '../exact/money';
import { partsOf, readPart } from './written-parts';
import { digits } from '../exact/unit';
import type { MakingBreaksOn } from './ways';

export interface MakingBreak {
  /** Widths. */
  readonly from: number;
  /** A share of the making charge. */
  readonly less: Money;
}

const PART = /^(?:from\s+)?(\S+?)(?:\s*:\s*|\s+(?:widths?:?\s+)?)([\d.,]+\s?%?)$/i;

export const MAKING_BREAKS: Kind<readonly MakingBreak[]> = {
  quantity: 'table',
  noun: 'reductions by widths, like 100 5 %; 400 8 %',
  shape: 'cell',
  read(raw, place) {
    const cell = oneCell(raw, place);
    if (cell === undefined || cell === 0) return undefined;
    const breaks = partsOf(String(cell)).map((part): MakingBreak => {
      const found = PART.exec(part);
      if (found === null) return refuse('makingBreakUnreadable', place.name, place.name, readBack(part));
      const less = readPart(RATE, found[2], place);
      if (less.gt(1)) return refuse('makingBreakUnreadable', place.name, place.name, readBack(part));
      return { from: readPart(QUANTITY, found[1], place), less };
    });
    const sorted = breaks.sort((one, other) => one.from - other.from);
    const twice = sorted.find((one, at) => one.from === sorted[at + 1]?.from);
    if (twice !== undefined) return refuse('breakRepeated', place.name, digits(twice.from));
    return sorted.length === 0 ? undefined : sorted;
  },
  write: (breaks) =>
    breaks.map(({ from, less }) => `${digits(from)} ${less.times(100).toString()} %`).join('; '),
};

/** The house rules of these names. */
interface Breaks {
  readonly makingBreaks: readonly MakingBreak[] | undefined;
  readonly makingBreaksOn: MakingBreaksOn;
}

const reachedBy = (widths: number, { makingBreaks }: Breaks): readonly MakingBreak[] =>
  (makingBreaks ?? []).filter(({ from }) => from <= widths);

/** “5 % less from 100 widths”. */
export function lessInWords(less: Money, widths: number, rules: Breaks): string {
  const share = `${less.times(100).toDecimalPlaces(2).toString()} % less`;
  if (rules.makingBreaksOn === 'further widths') return `${share} in all for the widths past each break`;
  return `${share} from ${digits(reachedBy(widths, rules).at(-1)?.from ?? 0)} widths`;
}

/** The share taken off the whole making charge for so many widths. */
export function makingReduction(widths: number, rules: Breaks): Money {
  const reached = reachedBy(widths, rules);
  const last = reached.at(-1);
  if (last === undefined || widths === 0) return NOTHING;
  if (rules.makingBreaksOn === 'whole') return last.less;
  // Each width bears the reduction of the break it lies past; widths beyond 100 begin with the next one.
  return reached
    .reduce((sum, { from, less }, at) => {
      const upTo = reached[at + 1]?.from ?? widths;
      return sum.plus(less.times(upTo - from));
    }, NOTHING)
    .div(money(widths));
}
