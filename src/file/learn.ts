/** audit --learn: proposes house rules from past orders. It only prints. */
import type { Period } from '../core/audit/audit';
import { finding } from '../core/cell/answer';
import { learnRules, notToldApart, type Proposal } from '../core/audit/learn';
import type { Order } from '../core/window/order';
import { OrderRows } from '../core/window/reader/order-rows';
import type { Io } from './command';
import type { OrdersFile } from './audit/orders';
import { FINE, NOT_COMPUTED } from './problem';

const MOST_READ = 600;

const line = ({ rule, value, standing, fit, outOf, fitStanding, asGood, orElse }: Proposal): string => {
  const { sentence } = finding(
    'learned',
    rule,
    `“${rule}”`,
    String(value),
    fit,
    outOf,
    String(standing),
    fitStanding,
  );
  const good = asGood.length === 0 ? '' : ` So would ${asGood.map(String).join(', ')}.`;
  return `${sentence}${good}${notToldApart({ rule, value, orElse })}`;
};

export async function learnFrom(
  file: OrdersFile,
  periods: readonly Period[],
  io: Io,
  json: boolean,
): Promise<number> {
  const reader = new OrderRows(file.columns);
  const orders: Order[] = [];
  for await (const batch of file.batches) {
    for (const [at, cells] of batch)
      for (const { order } of reader.push(at, cells)) if (order !== undefined) orders.push(order);
    if (orders.length >= MOST_READ) break;
  }
  const standing = (periods[periods.length - 1] as Period).house.rules;
  const learned = learnRules(orders, standing);
  if (json) {
    io.out(JSON.stringify(learned, null, 2));
    return FINE;
  }
  const { proposals, borneOut, outOf, fitStanding, fitProposed } = learned;
  if (proposals.length + borneOut.length === 0) {
    io.out(finding('nothingLearned', 'orders').sentence);
    return NOT_COMPUTED;
  }
  for (const one of proposals) io.out(line(one));
  for (const { rule, value, fit, outOf: able } of borneOut)
    io.out(`${fit} of ${able} past orders bear out “${rule}” ${String(value)}, as it is in force.`);
  io.out(
    `${fitStanding} of ${outOf} orders fit throughout with the rules in force${proposals.length === 0 ? '.' : `, ${fitProposed} with these proposals.`}`,
  );
  if (proposals.length > 0) {
    io.out('Nothing is changed. To take them up, write into the house rules:');
    for (const { rule, value } of proposals) io.out(`  ${rule}\t${String(value)}`);
  }
  return FINE;
}
