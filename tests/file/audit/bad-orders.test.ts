import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { areaAt } from '../../../src/book/address';
import { auditOrders, surveyOrders } from '../../../src/book/audit/audit';
import type { CellValue } from '../../../src/book/book';
import { MemoryBook } from '../../../src/book/memory';
import { DEFAULT_HOUSE } from '../../../src/core/house/house';
import { INCHES } from '../../../src/core/exact/unit';
import { hem } from '../../../src/file/hem';
import cases from './bad-orders.json';

interface Case {
  readonly name: string;
  readonly rows: readonly (readonly CellValue[])[];
  readonly orders: number;
  /** Each is said, by the command and in the pane. */
  readonly says: readonly string[];
  /** Text that begins like a formula, which a sheet would hold as one. */
  readonly planted?: boolean;
}

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bad-orders-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const quoted = (cell: CellValue): string => `"${String(cell ?? '').replaceAll('"', '""')}"`;

async function told(rows: Case['rows']): Promise<{ sentences: string[]; orders: number }> {
  const path = join(folder, 'orders.csv');
  await writeFile(path, rows.map((row) => row.map(quoted).join(',')).join('\n'));
  const out: string[] = [];
  const io = { out: (line: string) => void out.push(line), err: () => undefined, progress: () => undefined, input: () => undefined }; // prettier-ignore
  await hem(['audit', path, '--json'], io);
  const { findings, summary } = JSON.parse(out.join('\n')) as {
    findings: { sentence: string }[];
    summary: { orders: number };
  };
  return { sentences: findings.map(({ sentence }) => sentence), orders: summary.orders };
}

async function seen(rows: Case['rows']): Promise<{ sentences: string[]; orders: number }> {
  const book = new MemoryBook({ Orders: { rows } });
  const { read } = await surveyOrders(book, INCHES, areaAt('Orders', 0, 0));
  const { findings, orders } = await auditOrders(read, {
    periods: [{ from: undefined, house: DEFAULT_HOUSE }],
  });
  return { sentences: findings.map(({ finding }) => finding.sentence), orders };
}

describe('orders that are not as they should be', () => {
  for (const { name, rows, orders, says, planted } of cases as readonly Case[]) {
    it.each([
      ['by the command', told],
      ...(planted === true ? [] : [['in the pane', seen] as const]),
    ] as const)(`${name}: a sentence each, and the rest audited, %s`, async (_, audit) => {
      const found = await audit(rows);
      expect(found.orders).toBe(orders);
      for (const sentence of says)
        expect(found.sentences).toContainEqual(expect.stringContaining(sentence) as string);
      // Nothing else is made of it: what follows from one slip is not said again.
      expect(found.sentences.length).toBeLessThanOrEqual(says.length + 3);
    });
  }

  it('a row with more cells than headings is said where it stands', async () => {
    const rows = [['room', 'drop', 'heading', 'cut length'], ['Hall', 96, 'pinch', 112], ['Ames', ' Ltd', 96, 'pinch', 112]]; // prettier-ignore
    const { sentences } = await told(rows);
    expect(sentences[0]).toBe(
      'The row has 5 cells and there are 4 headings, so its figures may stand one column too far on; beyond the last stands “112”. In a CSV, a text with a comma stands in quotation marks.',
    );
  });
});
