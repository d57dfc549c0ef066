/** Rows below headings of ours, or of headings the user has said the meaning of. */
import type { CellIn } from '../cell/fields';
import { OrderReader, rowKind, type OrderColumns } from './order';
import type { OrderLine } from './reader/order-rows';

export class HeadedRows {
  private readonly reader: OrderReader;

  constructor(private readonly columns: OrderColumns) {
    this.reader = new OrderReader(columns);
  }

  get written(): OrderReader['written'] {
    return this.reader.written;
  }

  push(at: number, cells: readonly CellIn[]): OrderLine[] {
    const kind = rowKind(cells, this.columns);
    if (kind === 'order') return [{ at, is: 'window', cells, order: this.reader.read(cells) }];
    const is = kind === 'heading' ? 'repeat header' : kind;
    return [{ at, is, cells, order: undefined }];
  }

  end(): OrderLine[] {
    return [];
  }
}
