/** The what-if table of a floor: fullness by cloth width by direction by repeat rule. */
import type { ClothPrice } from '../../core/floor/cloth-price';
import { choiceKind } from '../../core/cell/fields';
import { FULLNESS } from '../../core/cell/figure-kinds';
import { SIZE, YARDS } from '../../core/cell/length-kinds';
import { whatIf, type Choice, type Costed } from '../../core/floor/floor';
import type { WindowWork } from '../../core/window/job';
import { toUnit } from '../../core/exact/length';
import { toFigure } from '../../core/exact/ratio';
import { digits, showLength, showYardage, type Unit } from '../../core/exact/unit';
import { REPEAT_RULES } from '../../core/cell/ways';
import { parts, readOption, type Values } from './options';
import { counted } from '../problem';

const REPEAT = choiceKind('a repeat rule', REPEAT_RULES);

/** Every fullness with every width and every rule, both ways of laying the cloth. */
function choicesOf(values: Values, unit: Unit): Choice[] {
  const listed = <T>(text: string | undefined, read: (one: string) => T): readonly (T | undefined)[] =>
    text === undefined ? [undefined] : parts(text).map(read);
  const fullness = listed(values.fullness, (one) => readOption(FULLNESS, one, '--fullness', unit));
  const fabricWidths = listed(values.widths, (one) => readOption(SIZE, one, '--widths', unit));
  const repeatRules = listed(values.repeats, (one) => readOption(REPEAT, one, '--repeats', unit));
  return fullness.flatMap((full) =>
    fabricWidths.flatMap((fabricWidth) =>
      (['up the roll', 'railroaded'] as const).flatMap((direction) =>
        repeatRules.map((repeatRule): Choice => ({ fullness: full, fabricWidth, direction, repeatRule })),
      ),
    ),
  );
}

/** The table; undefined where no choice is asked for. */
export function choicesTable(
  windows: readonly WindowWork[],
  values: Values,
  unit: Unit,
  price: ClothPrice | undefined,
): readonly Costed[] | undefined {
  if (values.fullness === undefined && values.widths === undefined && values.repeats === undefined)
    return undefined;
  const roll = values.roll === undefined ? undefined : readOption(YARDS, values.roll, '--roll', unit);
  return whatIf(
    windows.map((work) => work.window),
    choicesOf(values, unit),
    { price, rollLength: roll },
    (windows[0] as WindowWork).rules,
  );
}

const choiceInWords = ({ fullness, fabricWidth, direction, repeatRule }: Choice, unit: Unit): string =>
  [
    fullness === undefined ? '' : `fullness ${digits(toFigure(fullness))}`,
    fabricWidth === undefined ? '' : `${showLength(fabricWidth, unit)} cloth`,
    direction,
    repeatRule ?? '',
  ]
    .filter((one) => one !== '')
    .join(', ');

export function choiceLines(table: readonly Costed[], unit: Unit): string[] {
  const lines = table.map(({ choice, yardage, price, rolls, why, cheapest, leastCloth }) => {
    const figures =
      yardage === undefined
        ? (why ?? '')
        : [
            showYardage(yardage, unit),
            rolls === undefined ? '' : counted(rolls, 'roll'),
            price === undefined ? '' : price.toFixed(2),
          ]
            .filter((one) => one !== '')
            .join(', ');
    return `  ${cheapest || leastCloth ? '*' : ' '} ${choiceInWords(choice, unit)}: ${figures}`;
  });
  const byCloth = table.some(({ leastCloth }) => leastCloth);
  return [
    ...lines,
    byCloth ? '  * the least cloth; with --price also the cheapest is told' : '  * the cheapest',
  ];
}

export const choicesAsData = (table: readonly Costed[], { small, large }: Unit) =>
  table.map(({ choice, yardage, rolls, price, why, cheapest, leastCloth }) => ({
    fullness: choice.fullness === undefined ? undefined : toFigure(choice.fullness),
    fabricWidth: choice.fabricWidth === undefined ? undefined : toUnit(choice.fabricWidth, small),
    direction: choice.direction,
    repeatRule: choice.repeatRule,
    yardage: yardage === undefined ? undefined : toUnit(yardage, large),
    rolls,
    price: price?.toNumber(),
    why,
    cheapest,
    leastCloth,
  }));
