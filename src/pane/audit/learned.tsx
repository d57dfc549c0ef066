/** House rules learned from these orders: proposed with how many fit, set only where she says so. */
import { Button, Caption1, Checkbox, makeStyles, Text, tokens } from '../kit';
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
      const left: string[] = [];
      for (const { rule, value } of learned.proposals) {
        const line = ruleLine(rule);
        if (!chosen.has(rule) || line === undefined) continue;
        const now = await readRules(book, rules.refersTo);
        const fault = await setRule(book, now, line, typeof value === 'boolean' ? String(value) : value);
        if (fault !== undefined) left.push(fault);
      }
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

  return (
    <>
      <Text size={200}>
        What allowances, rounding and repeat rule explain these orders best? Nothing is changed without your
        consent.
      </Text>
      <Button size="small" className={styles.act} disabled={task.running !== undefined} onClick={learn}>
        Learn from these orders
      </Button>
      <TaskLine task={task} />
      {learned !== undefined && (
        <>
          <Text size={200} weight="semibold">
            {learned.fitStanding} of {learned.outOf} orders fit the rules as they are
            {learned.proposals.length > 0 && `, ${learned.fitProposed} with everything proposed`}.
          </Text>
          {learned.proposals.length === 0 && (
            <Text size={200}>No other rule would explain more of them.</Text>
          )}
          <div className={styles.list} role="group" aria-label="Rules proposed">
            {learned.proposals.map((one) => (
              <Checkbox
                key={one.rule}
                label={says(one)}
                disabled={rules === undefined}
                checked={chosen.has(one.rule)}
                onChange={(_, { checked }) => {
                  const next = new Set(chosen);
                  if (checked === true) next.add(one.rule);
                  else next.delete(one.rule);
                  setChosen(next);
                }}
              />
            ))}
          </div>
          {learned.proposals.length > 0 &&
            (rules === undefined ? (
              <Caption1>
                This workbook has no sheet of house rules yet: add a new job, then set them here.
              </Caption1>
            ) : (
              <Button
                size="small"
                appearance="primary"
                className={styles.act}
                disabled={chosen.size === 0 || task.running !== undefined}
                onClick={set}
              >
                Set the chosen rules
              </Button>
            ))}
          {learned.borneOut.length > 0 && (
            <Caption1>
              Borne out as they are:{' '}
              {learned.borneOut
                .map(({ rule, value, fit, outOf }) => `${rule} ${shown(value)} (${fit} of ${outOf})`)
                .join('; ')}
              .
            </Caption1>
          )}
        </>
      )}
    </>
  );
}
