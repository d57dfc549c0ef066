/** Checks of how a row was read: cells too many, cells that cannot be read, a date of doubtful rules. */
import { finding } from '../cell/answer';
import { isBlank, readBack } from '../cell/fields';
import type { Check } from './check';
import { figuresRestingOn } from './compare-figures';
import { told } from './finding';

/** A comma too many moves every figure behind it. */
export const rowTooLong: Check = {
  ofSizes: true,
  find({ given: { at, order, cells, headings } }) {
    if (order.unread.length === 0) return [];
    const headed = headings.reduce((last, heading, place) => (heading === '' ? last : place + 1), 0);
    const extra = cells.slice(headed).find((cell) => !isBlank(cell));
    if (extra === undefined) return [];
    const last = headings[headed - 1] ?? '';
    return [told(at, finding('rowTooLong', last, cells.length, headed, readBack(extra)))];
  },
};

export const unreadCells: Check = {
  ofSizes: true,
  explains: (row) =>
    figuresRestingOn(
      row,
      row.order.unread.map(({ column }) => column.key),
    ),
  find: ({ given: { at, order } }) => order.unread.map(({ refusal }) => told(at, refusal)),
};

export const doubtfulDate: Check = {
  ofSizes: true,
  find: ({ given: { at, doubts } }) => doubts.map((one) => told(at, one)),
};
