/** What an audit found: by weight, money, kind or row; shown at the cell, marked there, written as a sheet. */
import { Badge, Button, Caption1, ChoiceField, makeStyles, Text, tokens } from '../kit';
import { useState } from 'react';
import { areaAt, placeText } from '../../book/address';
import { show } from '../../book/apply';
import {
  markFindings,
  ORDERS_OF_FINDINGS,
  unmarkFindings,
  type Audited,
  type Placed,
} from '../../book/audit/audit';
import { writeAudit } from '../../book/audit/sheets';
import type { Book } from '../../book/book';
import type { Weight } from '../../core/cell/answer';
import { kindOf, whoseText } from '../../core/audit/finding';
import { addMoney, moneyText } from '../../core/audit/over-under';
import type { Unit } from '../../core/exact/unit';
import { messageOf, TaskLine, useTask } from '../task';

const useStyles = makeStyles({
  acts: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
  pair: { display: 'grid', gridTemplateColumns: '1fr 1fr', gap: tokens.spacingHorizontalS },
  list: { display: 'grid', margin: 0, padding: 0, listStyleType: 'none' },
  finding: {
    display: 'grid',
    gridTemplateColumns: 'minmax(0, 1fr)',
    gap: tokens.spacingVerticalXXS,
    justifyItems: 'start',
    width: '100%',
    textAlign: 'start',
    fontWeight: tokens.fontWeightRegular,
    paddingInline: tokens.spacingHorizontalXS,
    whiteSpace: 'normal',
    borderRadius: 0,
    borderTop: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
  },
  head: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalXS, alignItems: 'center' },
  more: { justifySelf: 'start' },
});

const COLOURS = { stop: 'danger', check: 'warning', note: 'informative' } as const;
const AT_A_TIME = 40;
const REMARKED = 'Every finding stands as a remark at its cell, coloured by weight.';
type Sorting = keyof typeof ORDERS_OF_FINDINGS;

interface Props {
  readonly book: Book;
  readonly audited: Audited;
  readonly unit: Unit;
}

export function AuditFindings({ book, audited, unit }: Props) {
  const styles = useStyles();
  const [by, setBy] = useState<Sorting>('weight');
  const [kind, setKind] = useState('');
  const [shown, setShown] = useState(AT_A_TIME);
  const [lost, setLost] = useState<string>();
  const { findings } = audited;
  const list = findings
    .filter(({ finding }) => kind === '' || kindOf(finding) === kind)
    .sort(ORDERS_OF_FINDINGS[by]);

  const go = ({ area }: Placed): void => {
    setLost(undefined);
    book.goTo(area).catch((thrown: unknown) => {
      setLost(messageOf(thrown).text);
    });
  };

  return (
    <>
      <Text weight="semibold">{summaryOf(audited)}</Text>
      <Acts book={book} audited={audited} unit={unit} />
      {lost !== undefined && <Text role="alert">{lost}</Text>}
      {findings.length > 0 && (
        <div className={styles.pair}>
          <ChoiceField
            label="Sorted by"
            value={by}
            change={(value) => {
              setBy(value as Sorting);
            }}
          >
            {(['weight', 'money', 'kind', 'row'] satisfies Sorting[]).map((one) => (
              <option key={one}>{one}</option>
            ))}
          </ChoiceField>
          <ChoiceField label="Of the kind" value={kind} change={setKind}>
            <option value="">all kinds</option>
            {[...kindsOf(findings)].map(([one, count]) => (
              <option key={one} value={one}>
                {one} ({count})
              </option>
            ))}
          </ChoiceField>
        </div>
      )}
      <ul className={styles.list} aria-label="Findings">
        {list.slice(0, shown).map((one, at) => (
          <Found key={at} placed={one} go={go} />
        ))}
      </ul>
      {list.length > shown && (
        <Button
          size="small"
          className={styles.more}
          onClick={() => {
            setShown(shown + AT_A_TIME);
          }}
        >
          Show {Math.min(AT_A_TIME, list.length - shown)} more of {list.length - shown}
        </Button>
      )}
    </>
  );
}

/** What is written of the findings: marks at their cells, or a summary. */
function Acts({ book, audited, unit }: Props) {
  const styles = useStyles();
  const task = useTask();
  const none = audited.findings.length === 0;
  const busy = task.running !== undefined;
  const mark = (): void => {
    void task.run('Marking the cells', async () => {
      await markFindings(book, audited);
      return { intent: 'success', text: book.lacks.get('comments') ?? REMARKED };
    });
  };
  const unmark = (): void => {
    void task.run('Taking the marks away', async () => {
      await unmarkFindings(book, audited.sheet);
      return { intent: 'success', text: 'The marks are gone, and the cells have their own colours again.' };
    });
  };
  const write = (): void => {
    void task.run('Writing the summary', async (watch) => {
      const name = await writeAudit(book, audited, unit, watch);
      await show(book, areaAt(name, 0, 0));
      const chartless = none ? '' : (book.lacks.get('charts') ?? '');
      return { intent: 'success', text: `The summary stands on the sheet “${name}”. ${chartless}`.trim() };
    });
  };
  return (
    <>
      <div className={styles.acts}>
        <Button size="small" disabled={none || busy} onClick={mark}>
          Mark in the sheet
        </Button>
        <Button size="small" disabled={busy} onClick={unmark}>
          Take the marks away
        </Button>
        <Button size="small" disabled={busy} onClick={write}>
          Write a summary
        </Button>
      </div>
      <TaskLine task={task} />
    </>
  );
}

/** One finding; pressing it goes to its cell. */
function Found({ placed, go }: { readonly placed: Placed; readonly go: (placed: Placed) => void }) {
  const styles = useStyles();
  const { finding } = placed;
  return (
    <li>
      <Button
        appearance="subtle"
        className={styles.finding}
        onClick={() => {
          go(placed);
        }}
      >
        <span className={styles.head}>
          <Badge size="small" appearance="tint" color={COLOURS[finding.weight]}>
            {finding.weight}
          </Badge>
          <Caption1>{whereOf(placed)}</Caption1>
          {typeof finding.money === 'number' && (
            <Badge size="small" appearance="outline">
              {finding.money.toFixed(2)}
            </Badge>
          )}
        </span>
        <Text size={200}>{finding.sentence}</Text>
      </Button>
    </li>
  );
}

/** How many findings there are of each kind. */
function kindsOf(findings: readonly Placed[]): ReadonlyMap<string, number> {
  const kinds = new Map<string, number>();
  for (const { finding } of findings) kinds.set(kindOf(finding), (kinds.get(kindOf(finding)) ?? 0) + 1);
  return kinds;
}

/** Whose order it is, then the cell. */
const whereOf = ({ finding, area }: Placed): string =>
  [whoseText(finding), placeText(area)].filter((text) => text !== '').join(' · ');

function summaryOf({ orders, findings }: Audited): string {
  if (orders === 0) return 'No order stands below the headings, so nothing was audited.';
  const counted = `${orders} ${orders === 1 ? 'order' : 'orders'} audited`;
  if (findings.length === 0) return `${counted}: all is well.`;
  const by = (weight: Weight): number => findings.filter(({ finding }) => finding.weight === weight).length;
  const money = moneyText(
    findings.reduce((sum, { finding }) => addMoney(sum, finding.money), { over: 0, under: 0 }),
  );
  const worth = money === '' ? '' : `; ${money}`;
  return `${counted}: ${by('stop')} to stop at, ${by('check')} to check, ${by('note')} to note${worth}.`;
}
