/** House rules learned from these orders: proposed with how many fit, set only where the user says so. */
import { Button, Caption1, makeStyles, Text, Ticks, tokens } from '../kit';
import { useState } from 'react';
import type { Basis } from '../../book/audit/basis';
import type { Book } from '../../book/book';
import type { ColumnsRead } from '../../book/columns';
import { readRules, setRule } from '../../book/rule-lines';
import type { CellOut } from '../../core/cell/fields';
import { learnRules, notToldApart, type Learned, type Proposal } from '../../core/audit/learn';
import type { Order } from '../../core/window/order';
import { OrderRows, orderTable } from '../../core/window/reader/order-rows';
import { readHouse } from '../../core/house/house';
import { ruleLine } from '../../core/house/rules';
import { digits } from '../../core/exact/unit';
import { TaskLine, useTask } from '../task';

const useStyles = makeStyles({
  list: { display: 'grid', gap: tokens.spacingVerticalXS },
  act: { justifySelf: 'start' },
});

const shown = (value: CellOut): string => (typeof value === 'number' ? digits(value) : String(value));
const says = ({ rule, value, standing, fit, outOf, fitStanding, asGood, orElse }: Proposal): string => {
  const others = asGood.length === 0 ? '' : ` ${asGood.map(shown).join(' or ')} would fit as well.`;
  return `${rule} ${shown(value)}: ${fit} of ${outOf} orders fit; with ${shown(standing)}, as it is now, ${fitStanding}.${others}${notToldApart({ rule, value, orElse })}`;
};

/** The orders of the table, as the audit reads them; those of the days of older rules teach nothing of ours. */
function ordersOf({ read, basis }: Pick<Props, 'read' | 'basis'>): readonly Order[] {
  const now = basis.periods.at(-1)?.from ?? 0;
  const reader = new OrderRows(orderTable(read.table.understanding, basis.unit));
  const lines = read.lines.flatMap(({ row }) =>
    reader.push(row, read.block.values[row - read.block.area.row] ?? []),
  );
  return [...lines, ...reader.end()]
    .flatMap(({ order }) => order ?? [])
    .filter(({ facts }) => (facts.date?.late ?? now) >= now);
}

interface Props {
  readonly book: Book;
  readonly read: ColumnsRead;
  readonly basis: Basis;
}

/** Sets rules one after the other; the sentences about those that could not be set. */
async function setRules(book: Book, place: string, list: readonly Proposal[]): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const { rule, value } of list) {
    const line = ruleLine(rule);
    if (line === undefined) continue;
    const now = await readRules(book, place);
    const fault = await setRule(book, now, line, typeof value === 'boolean' ? String(value) : value);
    if (fault !== undefined) faults.push(fault);
  }
  return faults;
}

export function AuditLearned({ book, read, basis }: Props) {
  const styles = useStyles();
  const task = useTask();
  const [learned, setLearned] = useState<Learned>();
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const { rules } = basis;

  const learn = (): void => {
    void task.run('Looking for the rules that explain these orders', async () => {
      setLearned(undefined);
      setChosen(new Set());
      // A turn, so that the line above is seen: the search itself takes a moment.
      await new Promise((go) => setTimeout(go, 30));
      const seen = rules === undefined ? undefined : await readRules(book, rules.refersTo);
      setLearned(learnRules(ordersOf({ read, basis }), readHouse(seen?.rows ?? null).rules));
      return undefined;
    });
  };
  const set = (): void => {
    if (rules === undefined || learned === undefined) return;
    void task.run('Setting the rules', async () => {
      const left = await setRules(
        book,
        rules.refersTo,
        learned.proposals.filter(({ rule }) => chosen.has(rule)),
      );
      await book.recalculate();
      setLearned({
        ...learned,
        proposals: learned.proposals.filter(({ rule }) => !chosen.has(rule) || left.length > 0),
      });
      setChosen(new Set());
      const [first] = left;
      return first === undefined
        ? { intent: 'success', text: 'The rules you chose are set. Read the orders again to audit by them.' }
        : { intent: 'error', text: first };
    });
  };

  const busy = task.running !== undefined;
  return (
    <>
      <Text size={200}>
        What allowances, rounding and repeat rule explain these orders best? Nothing is changed without your
        consent.
      </Text>
      <Button size="small" className={styles.act} disabled={busy} onClick={learn}>
        Learn from these orders
      </Button>
      <TaskLine task={task} />
      {learned !== undefined && (
        <>
          <Fit learned={learned} />
          <Proposed {...{ learned, chosen, setChosen, set, busy }} settable={rules !== undefined} />
          <BorneOut list={learned.borneOut} />
        </>
      )}
    </>
  );
}

/** How many orders the rules explain, as they are and as proposed. */
const Fit = ({ learned: { fitStanding, fitProposed, outOf, proposals } }: { readonly learned: Learned }) => (
  <>
    <Text size={200} weight="semibold">
      {fitStanding} of {outOf} orders fit the rules as they are
      {proposals.length > 0 && `, ${fitProposed} with everything proposed`}.
    </Text>
    {proposals.length === 0 && <Text size={200}>No other rule would explain more of them.</Text>}
  </>
);

interface ProposedProps {
  readonly learned: Learned;
  readonly chosen: ReadonlySet<string>;
  /** Whether the workbook has a sheet of rules to set them in. */
  readonly settable: boolean;
  readonly busy: boolean;
  setChosen(chosen: ReadonlySet<string>): void;
  set(): void;
}

function Proposed({ learned: { proposals }, chosen, settable, busy, setChosen, set }: ProposedProps) {
  const styles = useStyles();
  return (
    <>
      <div className={styles.list} role="group" aria-label="Rules proposed">
        <Ticks
          choices={proposals.map((one) => ({ key: one.rule, label: says(one) }))}
          chosen={chosen}
          disabled={!settable}
          change={setChosen}
        />
      </div>
      {proposals.length > 0 && !settable && (
        <Caption1>This workbook has no sheet of house rules yet: add a new job, then set them here.</Caption1>
      )}
      {proposals.length > 0 && settable && (
        <Button
          size="small"
          appearance="primary"
          className={styles.act}
          disabled={chosen.size === 0 || busy}
          onClick={set}
        >
          Set the chosen rules
        </Button>
      )}
    </>
  );
}

const BorneOut = ({ list }: { readonly list: Learned['borneOut'] }) =>
  list.length === 0 ? null : (
    <Caption1>
      Borne out as they are:{' '}
      {list.map(({ rule, value, fit, outOf }) => `${rule} ${shown(value)} (${fit} of ${outOf})`).join('; ')}.
    </Caption1>
  );
