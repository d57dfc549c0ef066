/** What the floor costs: every line, the totals, what is worth a second look, and the sheet written of it. */
import { Button, Caption1, makeStyles, MessageBar, MessageBarBody, Text } from '../kit';
import { useMemo } from 'react';
import type { Book } from '../../book/book';
import type { Floor } from '../../book/floor/floor';
import { ordersOf, writeFloorPrice } from '../../book/floor/price-sheet';
import { priceFloor } from '../../book/floor/prices';
import type { ClothPrice } from '../../core/floor/cloth-price';
import type { Money } from '../../core/exact/money';
import type { Quote, QuoteLine } from '../../core/quote/quote';
import { digits } from '../../core/exact/unit';
import { FigureTable, type FigureRow } from './table';
import { TaskLine, useTask } from '../task';

const useStyles = makeStyles({
  act: { justifySelf: 'start' },
  message: { whiteSpace: 'normal' },
});
/** Findings shown before the rest is only counted. */
const SHOWN = 8;

const amount = (amount: Money): string => amount.toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',');

interface Props {
  readonly book: Book;
  readonly floor: Floor;
  readonly prices: ReadonlyMap<string, ClothPrice>;
}

export function FloorPrice({ book, floor, prices }: Props) {
  const styles = useStyles();
  const task = useTask();
  const priced = useMemo(() => priceFloor(floor, prices), [floor, prices]);
  const { mockUp, findings } = priced;
  const orders = ordersOf(priced);
  const write = (): void => {
    void task.run('Writing the price', async (watch) => {
      const { sheet } = await writeFloorPrice(book, floor, priced, watch);
      return { intent: 'success', text: `The price stands on the sheet “${sheet}”.` };
    });
  };
  return (
    <>
      {orders.map(([order, quote]) => (
        <div key={order}>
          {orders.length > 1 && (
            <Text weight="semibold" size={200}>
              {order === 'mock-up' && mockUp !== undefined ? `Mock-up: ${mockUp.says}` : 'The rest'}
            </Text>
          )}
          <FigureTable
            says={orders.length > 1 ? `Price of ${order}` : 'Price of the floor'}
            headings={['line', 'quantity', 'cost', 'price']}
            rows={[...quote.lines.map(rowOf), ...totalsOf(quote)]}
          />
        </div>
      ))}
      {mockUp !== undefined && (
        <Text size={200}>
          Both orders come to {amount(mockUp.total)}: the mock-up adds {amount(mockUp.adds)}.
        </Text>
      )}
      {findings.slice(0, SHOWN).map(({ sentence, weight }) => (
        <MessageBar key={sentence} intent={weight === 'note' ? 'info' : 'warning'}>
          <MessageBarBody className={styles.message}>{sentence}</MessageBarBody>
        </MessageBar>
      ))}
      {findings.length > SHOWN && <Caption1>and {findings.length - SHOWN} more on the sheet.</Caption1>}
      <TaskLine task={task} />
      <Button className={styles.act} disabled={task.running !== undefined} onClick={write}>
        Write the price
      </Button>
    </>
  );
}

function rowOf({ what, quantity, unit, cost, price, says }: QuoteLine): FigureRow {
  return {
    name: what,
    figures: [
      `${digits(Number(quantity.toFixed(3)))} ${unit}`,
      cost === undefined ? 'not set' : amount(cost),
      cost === undefined ? '' : amount(price),
    ],
    ...(says !== undefined && { under: says }),
  };
}

function totalsOf({ sum, discount, tax, total, deposit }: Quote): readonly FigureRow[] {
  const row = (name: string, sum: Money, chosen = false): FigureRow => ({
    name,
    chosen,
    figures: ['', '', amount(sum)],
  });
  return [
    row('sum', sum),
    ...(discount.eq(0) ? [] : [row('discount', discount.neg())]),
    ...(tax.eq(0) ? [] : [row('tax', tax)]),
    row('total', total, true),
    row('deposit', deposit),
  ];
}
