/** Audit: past orders worked out again, what is wrong with them at their cells, and what they teach. */
import { Button, Checkbox, makeStyles, Text, tokens } from '../kit';
import { useState } from 'react';
import { areaAt } from '../../book/address';
import { auditOrders, ORDER_COLUMNS, surveyOrders, type Audited } from '../../book/audit/audit';
import { readBasis, type Basis } from '../../book/audit/basis';
import type { PricesFound } from '../../book/audit/price-lists';
import type { Book } from '../../book/book';
import { readColumns, type ColumnsRead, type Corrections } from '../../book/columns';
import { saysRulesByDay } from '../../book/rules-found';
import { keepMapping } from '../../book/survey';
import { readPrices } from '../../core/audit/price-list';
import { AuditFindings } from './findings';
import { AuditLearned } from './learned';
import { ChangedSince } from '../changed';
import { Part } from '../floor/part';
import { Mapping } from '../mapping';
import { Section } from '../section';
import { TaskLine, useTask } from '../task';

const useStyles = makeStyles({
  acts: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

/** The orders as they were read, and what the user says of their columns. */
interface OrdersOpened {
  readonly place: string;
  readonly read: ColumnsRead;
  readonly said: Corrections;
  readonly outputs: readonly string[];
  readonly basis: Basis;
}

/** The orders as they stand now: the sheets may have been mended since they were read. */
async function readAgain(
  book: Book,
  { read, said }: OrdersOpened,
): Promise<Pick<OrdersOpened, 'read' | 'basis'>> {
  const { block, header } = read;
  const basis = await readBasis(book, block.area.sheet);
  const at = areaAt(block.area.sheet, block.area.row + header.row, block.area.column);
  const now = await surveyOrders(book, basis.unit, at, said);
  return { read: now.read, basis };
}

/** One column said anew; everything else stays as the user sees it. Undefined where nothing heads it any more. */
function corrected(opened: OrdersOpened, id: string, key: string | null): OrdersOpened | undefined {
  const { read, basis } = opened;
  const said = { ...asSeen(read, key), [id]: key };
  const row = read.block.area.row + read.header.row;
  const again = readColumns(read.block, ORDER_COLUMNS, basis.unit, said, row);
  return again === undefined ? undefined : { ...opened, said, read: again };
}

export function AuditSection({ book }: { readonly book: Book }) {
  const styles = useStyles();
  const task = useTask();
  const [opened, setOpened] = useState<OrdersOpened>();
  const [audited, setAudited] = useState<Audited>();
  const [withPrices, setWithPrices] = useState(false);

  const open = (): void => {
    void task.run('Reading the orders', async () => {
      setAudited(undefined);
      const selected = await book.selection();
      const basis = await readBasis(book, selected.sheet);
      const { read, mapping, place } = await surveyOrders(book, basis.unit, selected);
      setOpened({ place, read, said: mapping?.columns ?? {}, outputs: mapping?.outputs ?? [], basis });
      return undefined;
    });
  };

  const correct = (id: string, key: string | null): void => {
    const next = opened && corrected(opened, id, key);
    if (next === undefined) return;
    setAudited(undefined);
    setOpened(next);
    const { place, said, outputs } = next;
    void keepMapping(book, { of: place, columns: said, outputs }).catch(reportError);
  };

  const run = (): void => {
    if (opened === undefined) return;
    void task.run('Auditing', async ({ signal, progress }) => {
      setAudited(undefined);
      const now = await readAgain(book, opened);
      const { periods, prices } = now.basis;
      const by = { periods, prices: withPrices ? readPrices(prices?.rows) : undefined };
      const found = await auditOrders(now.read, by, {
        ...(signal !== undefined && { signal }),
        ...(progress !== undefined && { progress }),
      });
      setOpened({ ...opened, ...now });
      setAudited(found);
      return undefined;
    });
  };

  return (
    <Section
      title="Audit of past orders"
      says="Every order is worked out again from what was measured, by the house rules. Select any cell of the orders first; nothing is written until you say so."
    >
      <div className={styles.acts}>
        <Button
          appearance={opened === undefined ? 'primary' : 'secondary'}
          disabled={task.running !== undefined}
          onClick={open}
        >
          {opened === undefined ? 'Read the orders' : 'Read the selected orders'}
        </Button>
        {opened !== undefined && (
          <Button appearance="primary" disabled={task.running !== undefined} onClick={run}>
            Run the audit
          </Button>
        )}
      </div>
      <TaskLine task={task} counts="rows" />
      {opened !== undefined && (
        <>
          <WasRead book={book} opened={opened} />
          {opened.basis.prices !== undefined && (
            <Checkbox
              label={saysOfPrices(opened.basis.prices)}
              checked={withPrices}
              onChange={(_, { checked }) => {
                setWithPrices(checked);
              }}
            />
          )}
          <Parts book={book} opened={opened} audited={audited} correct={correct} />
        </>
      )}
    </Section>
  );
}

interface PartsProps {
  readonly book: Book;
  readonly opened: OrdersOpened;
  readonly audited: Audited | undefined;
  correct(id: string, key: string | null): void;
}

function Parts({ book, opened: { place, read, basis }, audited, correct }: PartsProps) {
  return (
    <div>
      <Part says="What each column is">
        <Mapping book={book} read={read} wanted={ORDER_COLUMNS} correct={correct} />
      </Part>
      {audited !== undefined && (
        <Part says="Findings" opened>
          <AuditFindings
            key={`${audited.sheet} ${audited.findings.length}`}
            book={book}
            audited={audited}
            unit={basis.unit}
          />
        </Part>
      )}
      <Part says="Rules these orders bear out">
        <AuditLearned key={place} book={book} read={read} basis={basis} />
      </Part>
    </div>
  );
}

function WasRead({ book, opened }: { readonly book: Book; readonly opened: OrdersOpened }) {
  return (
    <>
      <Text>{whatWasRead(opened)}</Text>
      <ChangedSince
        book={book}
        read={opened.read.block}
        todo="Run the audit again: it reads the table anew."
      />
      {saysOfRules(opened).map((one) => (
        <Text key={one} size={200}>
          {one}
        </Text>
      ))}
    </>
  );
}

/** Every column that is read, or that the user spoke of, as it stands; whatever had this meaning has none. */
const asSeen = ({ columns }: ColumnsRead, key: string | null): Corrections =>
  Object.fromEntries(
    columns.flatMap((one) =>
      one.key === undefined && !one.corrected
        ? []
        : [[one.id, one.key === key ? null : one.keys.join('+') || null] as const],
    ),
  );

function whatWasRead({ read, basis }: OrdersOpened): string {
  const { table, area } = read.block;
  const where = table === undefined ? `The sheet “${area.sheet}”` : `The table “${table.name}”`;
  const rows = read.lines.filter(({ kind }) => kind === 'window').length;
  const known = read.columns.filter(({ key }) => key !== undefined).length;
  const by =
    basis.rules === undefined && basis.periods.length === 1 && basis.periods[0]?.house.set.size === 0
      ? 'our default rules'
      : 'the house rules of this workbook';
  return `${where}: ${rows} ${rows === 1 ? 'order' : 'orders'}, ${known} of ${read.columns.length} columns known, by ${by}.`;
}

/** Rules of several days: which orders are audited by which, and what was left aside. */
function saysOfRules({ read, basis: { periods, notes } }: OrdersOpened): string[] {
  const newest = periods.at(-1)?.name ?? '';
  const dated = read.columns.some(({ key }) => key === 'date');
  const says = dated
    ? saysRulesByDay(periods)
    : periods.length > 1
      ? `No column of these orders is known as their date, so all are checked against “${newest}”. Say below which column holds the date, and older orders are checked by the rules of their day.`
      : undefined;
  return says === undefined ? [...notes] : [says, ...notes];
}

function saysOfPrices({ sheets, dated }: PricesFound): string {
  const names = sheets.map((name) => `“${name}”`).join(' and ');
  return `Compare prices with ${names}${dated ? ', each from its own day on' : ''}`;
}
