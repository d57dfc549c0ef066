/** npm run hem -- audit: past orders worked out again, from a workbook or a CSV of any size. */
import type { Weight } from '../core/cell/answer';
import { Auditor } from '../core/audit/audit';
import { kindOf, whoseText, type OrderFinding } from '../core/audit/finding';
import { byRulesSeen } from '../core/audit/other-rules';
import { addMoney, moneyText } from '../core/audit/over-under';
import type { CellOut } from '../core/cell/fields';
import type { OrdersLook } from '../core/window/reader/orders';
import { checkWritable, replaceFile } from './xlsx/archive';
import { readWords, type Command, type Io } from './command';
import { csvLine } from './csv/csv';
import { FINDING_HEADINGS, findingCells, findingsBook, type SummaryLine } from './audit/findings-book';
import { auditBy } from './audit/audit-by';
import { HeldLines } from './audit/held-lines';
import { Workers } from './audit/workers';
import { learnFrom } from './learn';
import { openOrders, type OrdersFile } from './audit/orders';
import { pipedOrders } from './audit/piped';
import { settledIn } from './audit/settled';
import { counted, FINE, NOT_COMPUTED, Problem, USAGE } from './problem';

const HELP = `npm run hem -- audit ORDERS.xlsx|ORDERS.csv [options]

Works past orders out again from what was measured and says what differs, row by row: swapped
measures, a wrong unit, a slipped decimal point, a return or a repeat left out, sums, duplicates,
prices, cautions. Columns are found by their headings; a CSV may be of any size. A file named - is
CSV from standard input: what its columns mean is told from its first 2,000 rows.

  npm run hem -- audit orders.csv --rules house.xlsx
  cat orders.csv | npm run --silent hem -- audit - --csv
  npm run hem -- audit orders.csv --rules old.xlsx --rules 2025-01-01=new.xlsx -o findings.xlsx

  --rules [DAY=]FILE  house rules (.xlsx or .csv); with a day, from that day on. May be repeated.
                      One file may hold several sets, each with its day in the rule “in force from”
  --prices FILE       price list: fabric, price and, where it changed, the day it began
  -o FILE             write the findings and a summary to a workbook (.xlsx); what you wrote in its
                      column “settled” stays beside the same findings when it is written anew
  --columns WORDS     your word for columns: "K=vertical repeat; M=" (M is none of ours)
  --words BOOK        the words of your house: its sheet “Words of this house”
  --json              the findings and a summary as one JSON object
  --csv               the findings as CSV
  --jobs N            audit a CSV on so many threads; the answer is the same, and is told at the end;
                      a workbook and a CSV in UTF-16 are audited on one thread, whatever N says
  --learn             propose house rules from these orders instead; nothing is changed
  --help              this

Exit code: 0 all is well (notes aside) · 1 there are findings · 2 not used so · 3 a file problem`;

const OPTIONS = {
  rules: { type: 'string', multiple: true },
  columns: { type: 'string' },
  words: { type: 'string' },
  prices: { type: 'string' },
  out: { type: 'string', short: 'o' },
  json: { type: 'boolean' },
  csv: { type: 'boolean' },
  jobs: { type: 'string' },
  learn: { type: 'boolean' },
} as const;

/** A sheet takes no more rows than this, and nobody reads them. */
const MOST_LISTED = 200_000;
const WEIGHTS: readonly Weight[] = ['stop', 'check', 'note'];

/** Counts by kind, for any number of findings. */
class Tally {
  private readonly kinds = new Map<string, SummaryLine>();
  readonly weights: Record<Weight, number> = { stop: 0, check: 0, note: 0 };

  add(one: OrderFinding): void {
    this.weights[one.weight]++;
    const id = `${one.code} ${one.weight}`;
    const line = this.kinds.get(id) ?? {
      weight: one.weight,
      kind: kindOf(one),
      findings: 0,
      over: 0,
      under: 0,
    };
    this.kinds.set(id, { ...line, findings: line.findings + 1, ...addMoney(line, one.money) });
  }

  lines(): SummaryLine[] {
    const heavy = ({ weight }: SummaryLine): number => WEIGHTS.indexOf(weight as Weight);
    return [...this.kinds.values()].sort((a, b) => heavy(a) - heavy(b) || b.findings - a.findings);
  }
}

/** How findings leave the command: as lines, JSON or CSV, while the rows still come. */
interface Teller {
  begin(): void;
  tell(one: OrderFinding): void;
  end(tally: Tally, orders: number, notes: readonly string[]): void;
}

/** Whose order it is leads; then where it stands. */
const where = (one: OrderFinding): string =>
  [whoseText(one), one.row === 0 ? 'headings' : `row ${one.row}`, one.column]
    .filter((text) => text !== '')
    .join(', ');

function plainly(io: Io): Teller {
  return {
    begin: () => undefined,
    tell: (one) => {
      io.out(
        `${where(one)}: ${one.sentence}${one.money === '' ? '' : ` (${one.money.toString()} in money)`}`,
      );
    },
    end(tally, orders, notes) {
      for (const note of notes) io.out(note);
      for (const { weight, kind, findings, ...money } of tally.lines())
        io.out(
          [`${String(findings).padStart(8)}  ${weight.padEnd(6)} ${kind}`, moneyText(money)]
            .filter((text) => text !== '')
            .join(', '),
        );
      const { stop, check, note } = tally.weights;
      io.out(
        orders === 0
          ? 'No order stands below the headings, so nothing was audited.'
          : stop + check + note === 0
            ? `${counted(orders, 'order')} audited: all is well.`
            : `${counted(orders, 'order')} audited: ${stop} to stop at, ${check} to check, ${counted(note, 'note')}.`,
      );
    },
  };
}

function asJson(io: Io): Teller {
  let between = '';
  return {
    begin: () => {
      io.out('{"findings": [');
    },
    tell: (one) => {
      io.out(between + JSON.stringify({ ...one, kind: kindOf(one) }));
      between = ',';
    },
    end(tally, orders, notes) {
      io.out(`], "summary": ${JSON.stringify({ orders, ...tally.weights, kinds: tally.lines(), notes })}}`);
    },
  };
}

function asCsv(io: Io): Teller {
  return {
    begin: () => {
      io.out(csvLine(FINDING_HEADINGS));
    },
    tell: (one) => {
      io.out(csvLine(findingCells(one)));
    },
    end(_tally, _orders, notes) {
      for (const note of notes) io.err(note);
    },
  };
}

function tellerOf(values: { json?: boolean | undefined; csv?: boolean | undefined }, io: Io): Teller {
  if (values.json === true && values.csv === true)
    throw new Problem('Choose --json or --csv, not both.', USAGE);
  return values.json === true ? asJson(io) : values.csv === true ? asCsv(io) : plainly(io);
}

const EVERY = 1_000;
const MOST_JOBS = 64;

function jobsOf(text: string | undefined): number {
  const jobs = Number(text ?? '1');
  if (!Number.isInteger(jobs) || jobs < 1 || jobs > MOST_JOBS)
    throw new Problem(
      `--jobs reads “${text ?? ''}”. Give a whole number of threads from 1 to ${MOST_JOBS}.`,
      USAGE,
    );
  return jobs;
}

/** What every row shows, in its turn: rows audited here, or by worker threads. */
async function* findingsOf(
  file: OrdersFile,
  auditor: Auditor,
  workers: Workers | undefined,
): AsyncGenerator<readonly OrderFinding[]> {
  yield auditor.header();
  if (workers === undefined)
    for await (const batch of file.batches) yield batch.flatMap(([at, cells]) => auditor.row(at, cells));
  else
    for await (const { audited, marks } of workers.all()) {
      yield audited.flatMap((one) => auditor.take(one));
      auditor.takeMarks(marks);
    }
  yield auditor.end();
}

async function auditAll(
  findings: AsyncIterable<readonly OrderFinding[]>,
  auditor: Auditor,
  io: Io,
  tell: (one: OrderFinding) => void,
): Promise<void> {
  let told = performance.now();
  for await (const some of findings) {
    some.forEach(tell);
    const now = performance.now();
    if (now - told < EVERY) continue;
    told = now;
    io.progress(`… ${counted(auditor.orders, 'order')} audited`);
  }
}

const ordersAt = (path: string, io: Io, look: OrdersLook): Promise<OrdersFile> =>
  path === '-' ? pipedOrders(io, look) : openOrders(path, look);

async function run(words: readonly string[], io: Io): Promise<number> {
  const { values, positionals } = readWords(words, OPTIONS, 'audit');
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0)
    throw new Problem('audit takes one file of orders. See npm run hem -- audit --help.', USAGE);
  const { out } = values;
  if (out !== undefined && !out.toLowerCase().endsWith('.xlsx'))
    throw new Problem(`-o names “${out}”. Name a workbook, like findings.xlsx.`, USAGE);
  if (out !== undefined) await checkWritable(out);
  const jobs = jobsOf(values.jobs);
  const wanted = {
    rules: values.rules ?? [],
    prices: values.prices,
    columns: values.columns,
    words: values.words,
  };
  const { by, look, notes: aboutRules } = await auditBy(wanted);
  const file = await ordersAt(path, io, look);
  if (values.learn === true) return learnFrom(file, by.periods, io, values.json === true);
  const auditor = new Auditor(file.columns, byRulesSeen(file.columns, by, file.firstRows));
  const { first } = file;
  const workers =
    jobs > 1 && first !== undefined && first.pieces.length > 1 ? new Workers(first, wanted, jobs) : undefined;
  const held = workers === undefined ? undefined : new HeldLines();
  try {
    const exit = await report(
      { findings: findingsOf(file, auditor, workers), auditor, notes: [...aboutRules, ...file.notes] },
      values,
      held === undefined ? io : { ...io, out: (line) => held.hold(line) },
    );
    await held?.tell(io.out);
    return exit;
  } finally {
    held?.forget();
  }
}

interface Auditing {
  readonly findings: AsyncIterable<readonly OrderFinding[]>;
  readonly auditor: Auditor;
  readonly notes: readonly string[];
}

async function report(
  { findings, auditor, notes: first }: Auditing,
  values: { out?: string | undefined; json?: boolean | undefined; csv?: boolean | undefined },
  io: Io,
): Promise<number> {
  const { out } = values;
  const settled = out === undefined ? undefined : await settledIn(out);
  const teller = tellerOf(values, io);
  const tally = new Tally();
  const kept: OrderFinding[] = [];
  const quiet = out !== undefined && values.json !== true && values.csv !== true;
  teller.begin();
  await auditAll(findings, auditor, io, (one) => {
    tally.add(one);
    if (out !== undefined && kept.length < MOST_LISTED) kept.push(one);
    if (!quiet) teller.tell(one);
  });
  const notes = [...first];
  if (out !== undefined) {
    kept.sort((a, b) => a.row - b.row);
    const all = tally.weights.stop + tally.weights.check + tally.weights.note;
    if (all > kept.length)
      notes.push(
        `${out} lists the first ${counted(kept.length, 'finding')} of ${all.toLocaleString('en-US')}.`,
      );
    const about: CellOut[][] = [['orders audited', auditor.orders], ...notes.map((note) => [note])];
    await replaceFile(out, findingsBook(kept, tally.lines(), about, { unit: auditor.unit, settled }));
  }
  teller.end(tally, auditor.orders, notes);
  return tally.weights.stop + tally.weights.check > 0 ? NOT_COMPUTED : FINE;
}

export const command: Command = { help: HELP, run };
