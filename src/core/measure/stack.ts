/** The stack that a drawn-back drapery makes, and the side extension that keeps it off the glass. */
import { parameter } from '../findings/parameters';
import {
  answer,
  finding,
  lengthFigure,
  noAnswer,
  ratioFigure,
  step,
  type Answer,
  type Step,
} from '../cell/answer';
import { isDrawn, panelsOf, type Draw, type Heading, type Lining } from '../cell/treatment';
import { exact, type Length } from '../exact/length';
import { money, upToWhole } from '../exact/money';
import { byRatio, ONE, upToNanometre, type Ratio } from '../exact/ratio';
import type { Rules } from '../house/rules';

export interface Stacking {
  readonly heading: Heading;
  readonly draw: Draw | undefined;
  readonly lining: Lining | undefined;
}

export interface Stacked extends Stacking {
  readonly rodWidth: Length;
}

/** A lined stack to an unlined one; undefined where nothing lies behind the face. */
function moreWhereLined(lining: Lining | undefined, rules: Rules): Ratio | undefined {
  if (lining === undefined || lining === 'unlined') return undefined;
  return lining === 'interlined' ? rules.stackInterlined : rules.stackLined;
}

/** Width the drawn-back drapery covers on a side: rod share × the heading’s share, more where lined. */
export function stack(stacked: Stacked, rules: Rules): Answer<Length> {
  const { rodWidth, heading, lining, draw = 'pair' } = stacked;
  if (!isDrawn(draw)) return noAnswer('notDrawn', parameter('draw'));
  const side = exact(Math.ceil(rodWidth / panelsOf(draw)));
  const share = rules.stackShare[heading];
  const bare = upToNanometre(byRatio(side, share));
  const more = moreWhereLined(lining, rules);
  const value = more === undefined ? bare : upToNanometre(byRatio(bare, more));
  const stiff = heading === 'rod pocket' || heading === 'tab top';
  return answer(
    value,
    () => [
      step(
        'stack, unlined',
        '{} rod share × {}',
        [lengthFigure(side), ratioFigure(share)],
        lengthFigure(bare),
      ),
      ...(more === undefined
        ? []
        : [
            step(`stack, ${lining}`, '{} × {}', [lengthFigure(bare), ratioFigure(more)], lengthFigure(value)),
          ]),
    ],
    stiff ? [finding('pocketIsNotDrawn', parameter('heading'), heading)] : [],
  );
}

/** As the explanation names it: “a pinch pair, unlined”. */
export const stackingInWords = ({ heading, draw = 'pair', lining = 'unlined' }: Stacking): string =>
  `${heading}, ${draw}, ${lining}`;

/**
 * The least extension e that is no less than the stack of its rod, e = share × (opening + 2e), to the
 * nanometre above; refused where the stack outgrows every extension.
 */
export function clearExtension(openingWidth: Length, stacking: Stacking, rules: Rules): Answer<Length> {
  const { heading, lining, draw = 'pair' } = stacking;
  if (!isDrawn(draw)) return noAnswer('notDrawn', parameter('draw'));
  const more = moreWhereLined(lining, rules) ?? ONE;
  // Of the whole rod; the three factors are short decimals, and so is their product.
  const share = money(rules.stackShare[heading]).div(ONE).times(more).div(ONE).div(panelsOf(draw));
  const rest = money(1).minus(share.times(2));
  if (rest.lte(0)) return noAnswer('stackNeverClears', parameter('heading'), stackingInWords(stacking));
  const value = exact(upToWhole(share.times(openingWidth).div(rest)));
  return answer(value, [
    step(
      `least extension that clears the stack (${stackingInWords(stacking)})`,
      `{} × ${share.toString()} of the rod ÷ (1 − 2 × ${share.toString()})`,
      [lengthFigure(openingWidth)],
      lengthFigure(value),
    ),
  ]);
}

/** How far the stack of this rod reaches over the glass beside an extension; no line where it does not. */
export function stackOverGlass(stacked: Stacked, extension: Length, rules: Rules): readonly Step[] {
  if (!isDrawn(stacked.draw)) return [];
  const { value } = stack(stacked, rules);
  if (value <= extension) return [];
  return [
    step(
      `over the glass when drawn back (${stackingInWords(stacked)})`,
      '{} stack − {} extension',
      [lengthFigure(value), lengthFigure(extension)],
      lengthFigure(exact(value - extension)),
    ),
  ];
}
