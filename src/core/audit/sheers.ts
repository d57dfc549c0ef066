/** The check of a sheer's lining: a layer of its own has none. */
import { finding } from '../cell/answer';
import type { Check, RowGiven } from './check';
import { told, type OrderFinding } from './finding';
import { figureCells, showOf } from './show';

function findLiningOfASheer({ at, order, unit, name }: RowGiven): OrderFinding[] {
  const { window, ordered } = order;
  const { windowLayer = 'drapery', lining = 'unlined' } = window;
  if (windowLayer === 'drapery') return [];
  const yardage = ordered.liningYardage ?? 0;
  const column = name('liningYardage');
  if (yardage > 0)
    return [
      told(at, finding('liningOfASheer', column, column, showOf('liningYardage', yardage, unit)), {
        ...figureCells('liningYardage', yardage, 0, unit),
      }),
    ];
  return lining === 'unlined' ? [] : [told(at, finding('sheerIsNotLined', name('lining'), lining))];
}

export const liningOfASheer: Check = {
  explains: () => ['liningYardage'],
  find: ({ given }) => findLiningOfASheer(given),
};
