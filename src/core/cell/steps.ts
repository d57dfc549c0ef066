/** Steps as lines of text, in the house's unit, for whoever checks them with a pencil. */
import type { Figure, Step } from './answer';
import type { CellOut } from './fields';
import { toUnit } from '../exact/length';
import { toFigure } from '../exact/ratio';
import { digits, showLength, showYardage, type Unit } from '../exact/unit';

export function showFigure(figure: Figure, unit: Unit): string {
  switch (figure.as) {
    case 'length':
      return showLength(figure.value, unit);
    case 'yardage':
      return showYardage(figure.value, unit);
    case 'ratio':
      return digits(toFigure(figure.value));
    case 'number':
      return digits(figure.value);
    case 'money':
      return figure.value.toFixed(2);
    case 'text':
      return figure.value;
  }
}

/** "finished width: 60 in + 3 1/2 in + 3 in = 66 1/2 in" */
export function writeStep(step: Step, unit: Unit): string {
  let at = 0;
  const how = step.how.replace(/\{\}/g, () => {
    const figure = step.figures[at++];
    return figure === undefined ? '' : showFigure(figure, unit);
  });
  const result = showFigure(step.result, unit);
  return how === '' ? `${step.what}: ${result}` : `${step.what}: ${how} = ${result}`;
}

/** A figure as a plain cell value in the house's unit. */
export function cellFigure(figure: Figure, unit: Unit): CellOut {
  switch (figure.as) {
    case 'length':
      return toUnit(figure.value, unit.small);
    case 'yardage':
      return toUnit(figure.value, unit.large);
    case 'ratio':
      return toFigure(figure.value);
    case 'money':
      return figure.value.toNumber();
    case 'number':
    case 'text':
      return figure.value;
  }
}
