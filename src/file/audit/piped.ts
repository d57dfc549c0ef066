/** Past orders from standard input: they come only once, so their columns are told from the first of them. */
import type { OrdersLook } from '../../core/window/reader/orders';
import type { Io } from '../command';
import { asUtf8, blocksOf, partingOf, type Block, type Csv } from '../csv/csv';
import { encodingOfFirst } from '../csv/encoding';
import { Problem, USAGE } from '../problem';
import { FIRST_ROWS } from './evidence';
import { aboutHeader, ordersIn, rowsBelow, type OrdersFile } from './orders';

/** So many rows are held while it is told what the columns mean. */
const HELD_ROWS = 2_000;
const NAME = 'standard input';
/** So much is looked at for what parts the cells. */
const LOOKED_AT = 65_536;

const SAYS = `Standard input is read as it comes: what its columns mean is told from its first ${HELD_ROWS.toLocaleString('en-US')} rows.`;

const asBytes = (chunk: unknown): Buffer =>
  typeof chunk === 'string' ? Buffer.from(chunk) : Buffer.from(chunk as Uint8Array);

/** The first bytes, and all of them again from the first on. */
async function begun(
  stream: AsyncIterable<unknown>,
): Promise<{ readonly start: Buffer; readonly all: AsyncIterable<Buffer> }> {
  const chunks = stream[Symbol.asyncIterator]();
  let start = Buffer.alloc(0);
  for (let next = await chunks.next(); next.done !== true; next = await chunks.next()) {
    start = Buffer.concat([start, asBytes(next.value)]);
    if (start.length >= LOOKED_AT) break;
  }
  async function* all(): AsyncGenerator<Buffer> {
    yield start;
    for (let next = await chunks.next(); next.done !== true; next = await chunks.next())
      yield asBytes(next.value);
  }
  return { start, all: all() };
}

async function opened(stream: AsyncIterable<unknown>): Promise<{ csv: Csv; blocks: AsyncGenerator<Block> }> {
  const { start, all } = await begun(stream);
  if (start.length === 0)
    throw new Problem('Nothing came through standard input. Pipe a CSV of orders to it.');
  const encoding = encodingOfFirst(start, NAME);
  const text = new TextDecoder(encoding.name).decode(start.subarray(0, LOOKED_AT));
  const csv = { path: NAME, encoding, parting: partingOf(text) };
  return { csv, blocks: blocksOf(csv, asUtf8(all, encoding)) };
}

export async function pipedOrders(io: Io, look: OrdersLook): Promise<OrdersFile> {
  const stream = io.stream?.();
  if (stream === undefined)
    throw new Problem('“-” is standard input, and nothing is piped to it. Name a file of orders.', USAGE);
  const { csv, blocks } = await opened(stream);
  const held: string[][] = [];
  for (let next = await blocks.next(); next.done !== true; next = await blocks.next()) {
    held.push(...next.value.rows());
    if (held.length >= HELD_ROWS) break;
  }
  const found = ordersIn({ csv, evidence: held.slice(0, HELD_ROWS) }, look);
  const firstRows = rowsBelow(held, found.below);
  async function* batches(): OrdersFile['batches'] extends AsyncIterable<infer B>
    ? AsyncGenerator<B>
    : never {
    let from = held.length;
    yield firstRows;
    for (let next = await blocks.next(); next.done !== true; next = await blocks.next()) {
      const before = from;
      yield next.value.rows().map((row, at) => [before + at + 1, row] as const);
      from += next.value.count;
    }
  }
  const { says } = csv.encoding;
  return {
    columns: found.table,
    headerRow: found.below,
    notes: [SAYS, ...(says === undefined ? [] : [says]), ...aboutHeader(found)],
    batches: batches(),
    firstRows: firstRows.slice(0, FIRST_ROWS),
  };
}
