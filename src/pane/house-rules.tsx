/** House rules: every rule with its value, default and source; what differs is marked, nonsense refused. */
import {
  Badge,
  Button,
  Caption1,
  Field,
  Input,
  makeStyles,
  SearchBox,
  Select,
  Switch,
  Text,
  tokens,
} from './kit';
import { useCallback, useEffect, useRef, useState, type ReactNode } from 'react';
import type { Book, CellValue } from '../book/book';
import { readRules, ruleFault, rulesNames, setRule, type RuleSeen, type RulesSeen } from '../book/rule-lines';
import { digits } from '../core/exact/unit';
import { Section } from './section';
import { TaskLine, useTask } from './task';

const useStyles = makeStyles({
  tools: { display: 'grid', gridTemplateColumns: '1fr auto', alignItems: 'center' },
  search: { maxWidth: 'none', minWidth: 0 },
  only: { whiteSpace: 'nowrap' },
  topic: { display: 'grid', gap: tokens.spacingVerticalM },
  part: {
    cursor: 'pointer',
    fontWeight: tokens.fontWeightSemibold,
    paddingBlock: tokens.spacingVerticalXS,
  },
  rule: { display: 'grid', gap: tokens.spacingVerticalXXS },
  label: { display: 'inline-flex', gap: tokens.spacingHorizontalS, alignItems: 'center' },
  quiet: { color: tokens.colorNeutralForeground2 },
  save: {
    position: 'sticky',
    bottom: `calc(-1 * ${tokens.spacingVerticalXXL})`,
    display: 'grid',
    gap: tokens.spacingVerticalS,
    paddingBlock: tokens.spacingVerticalS,
    backgroundColor: tokens.colorNeutralBackground1,
    borderTop: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
  },
  act: { justifySelf: 'start' },
});

/** What is typed and not yet written, by the rule's name. */
type Drafts = Readonly<Record<string, string>>;
type Faults = ReadonlyMap<string, string | undefined>;

interface Sought {
  readonly search: string;
  /** Whether only rules that differ from the default are shown. */
  readonly only: boolean;
}

const shown = (value: CellValue): string =>
  value === null ? '' : typeof value === 'number' ? digits(value) : String(value);

const matches = ({ line, differs }: RuleSeen, { search, only }: Sought): boolean =>
  (differs || !only) &&
  search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => `${line.name} ${line.says} ${line.source} ${line.part}`.toLowerCase().includes(word));

const isSought = ({ search, only }: Sought): boolean => only || search.trim() !== '';

/** “12 rules, 2 differ”. */
function countOf(lines: readonly RuleSeen[], part: string): string {
  const own = lines.filter(({ line }) => line.part === part);
  const differ = own.filter((one) => one.differs).length;
  return `${own.length} ${own.length === 1 ? 'rule' : 'rules'}${differ === 0 ? '' : `, ${differ} ${differ === 1 ? 'differs' : 'differ'}`}`;
}

/** The rules of one sheet as they are in force, and what is typed and not yet written. */
function useRules(book: Book, inSight: boolean) {
  const task = useTask();
  const [names, setNames] = useState<readonly string[]>();
  const [seen, setSeen] = useState<RulesSeen>();
  const [drafts, setDrafts] = useState<Drafts>({});
  const { run } = task;

  const open = useCallback(
    (name?: string) =>
      run('Reading the house rules', async () => {
        const found = await rulesNames(book);
        setNames(found);
        const first = name ?? found[0];
        setSeen(first === undefined ? undefined : await readRules(book, first));
        setDrafts({});
        return undefined;
      }),
    [book, run],
  );
  // What is typed and not yet saved is kept; else the rules are read anew, for the sheet may have changed.
  const unsaved = useRef(false);
  unsaved.current = Object.keys(drafts).length > 0;
  useEffect(() => {
    if (inSight && !unsaved.current) void open();
  }, [open, inSight]);

  const changed = seen?.lines.filter(({ line }) => drafts[line.name] !== undefined) ?? [];
  const save = (): void => {
    if (seen === undefined) return;
    void run('Writing the house rules', async () => {
      const left: Record<string, string> = {};
      const said: string[] = [];
      for (const { line } of changed) {
        const typed = drafts[line.name] ?? '';
        const fault = await setRule(book, seen, line, typed === '' ? null : typed);
        if (fault === undefined) continue;
        left[line.name] = typed;
        said.push(fault);
      }
      await book.recalculate();
      setSeen(await readRules(book, seen.refersTo));
      setDrafts(left);
      const [first] = said;
      if (first !== undefined) return { intent: 'error', text: first };
      const count = changed.length === 1 ? 'One rule is' : `${changed.length} rules are`;
      return { intent: 'success', text: `${count} changed, and the sheets worked out anew.` };
    });
  };
  const type = ({ line, inForce }: RuleSeen, text: string): void => {
    const { [line.name]: before, ...rest } = drafts;
    const same = text === shown(inForce) && before !== undefined;
    setDrafts(same ? rest : { ...drafts, [line.name]: text });
  };
  return { task, names, seen, drafts, changed, open, type, save };
}

/** What is wrong with each rule that is typed and not yet written; undefined where nothing is. */
const faultsIn = (changed: readonly RuleSeen[], drafts: Drafts, unit: RulesSeen['unit']): Faults =>
  new Map(changed.map(({ line }) => [line.name, ruleFault(line, drafts[line.name] ?? null, unit)]));

export function RulesSection({ book, shown: inSight }: { readonly book: Book; readonly shown: boolean }) {
  const styles = useStyles();
  const { task, names, seen, drafts, changed, open, type, save } = useRules(book, inSight);
  const [sought, setSought] = useState<Sought>({ search: '', only: false });
  const faults: Faults = seen === undefined ? new Map() : faultsIn(changed, drafts, seen.unit);
  const refused = [...faults.values()].some((fault) => fault !== undefined);
  return (
    <Section
      title="House rules"
      says="How your house measures, cuts and charges. Every formula of the job reads them from their sheet."
    >
      {names?.length === 0 && (
        <Text>
          There are no house rules in this workbook yet: our defaults apply. A new job brings a sheet of them.
        </Text>
      )}
      {names !== undefined && names.length > 1 && (
        <Field label="Rules of">
          <Select
            value={seen?.refersTo ?? ''}
            onChange={(_, { value }) => {
              void open(value);
            }}
          >
            {names.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </Select>
        </Field>
      )}
      {seen !== undefined && (
        <RulesList seen={seen} drafts={drafts} faults={faults} sought={sought} type={type} seek={setSought} />
      )}
      <div className={seen === undefined ? undefined : styles.save}>
        <TaskLine task={task} />
        {seen !== undefined && (
          <Button
            appearance="primary"
            className={styles.act}
            disabled={changed.length === 0 || refused}
            disabledFocusable={task.running !== undefined}
            onClick={save}
          >
            {changed.length === 0
              ? 'Save changes'
              : `Save ${changed.length} ${changed.length === 1 ? 'change' : 'changes'}`}
          </Button>
        )}
      </div>
    </Section>
  );
}

interface ListProps {
  readonly seen: RulesSeen;
  readonly drafts: Drafts;
  readonly faults: Faults;
  readonly sought: Sought;
  seek(sought: Sought): void;
  type(rule: RuleSeen, text: string): void;
}

/** The rules that are sought, by topic. */
function RulesList({ seen, drafts, faults, sought, seek, type }: ListProps) {
  const styles = useStyles();
  const lines = seen.lines.filter((one) => matches(one, sought));
  const parts = [...new Set(lines.map(({ line }) => line.part))];
  const open = isSought(sought);
  return (
    <>
      <div className={styles.tools}>
        <SearchBox
          className={styles.search}
          aria-label="Find a rule"
          placeholder="Find a rule: overlap, hem …"
          value={sought.search}
          onChange={(_, { value }) => {
            seek({ ...sought, search: value });
          }}
        />
        <Switch
          className={styles.only}
          label="Only changed"
          checked={sought.only}
          onChange={(_, { checked }) => {
            seek({ ...sought, only: checked });
          }}
        />
      </div>
      <Caption1 role="status">
        {lines.length} of {seen.lines.length} rules, {seen.lines.filter((one) => one.differs).length} differ
        from the default
      </Caption1>
      {seen.findings.map((one) => (
        <Text key={one} size={200}>
          {one}
        </Text>
      ))}
      {parts.map((part) => (
        <Topic key={`${part} ${String(open)}`} part={part} lines={lines} open={open}>
          {lines
            .filter(({ line }) => line.part === part)
            .map((one) => (
              <OneRule
                key={one.line.name}
                rule={one}
                draft={drafts[one.line.name]}
                fault={faults.get(one.line.name) ?? one.fault}
                change={(text) => {
                  type(one, text);
                }}
              />
            ))}
        </Topic>
      ))}
    </>
  );
}

interface TopicProps {
  readonly part: string;
  readonly lines: readonly RuleSeen[];
  readonly open: boolean;
  readonly children: ReactNode;
}

/** What is searched for is in sight at once; else a topic is opened by whoever wants it. */
function Topic({ part, lines, open, children }: TopicProps) {
  const styles = useStyles();
  return (
    <details open={open}>
      <summary className={styles.part}>
        {part}
        <Caption1 className={styles.quiet}> {countOf(lines, part)}</Caption1>
      </summary>
      <div className={styles.topic}>{children}</div>
    </details>
  );
}

interface OneProps {
  readonly rule: RuleSeen;
  readonly draft: string | undefined;
  readonly fault: string | undefined;
  change(text: string): void;
}

function OneRule({ rule, draft, fault, change }: OneProps) {
  const styles = useStyles();
  const { line, inForce, standard, unit, differs } = rule;
  const value = draft ?? shown(inForce);
  const { choices } = line.kind;
  const usual = standard === null ? 'none' : `${shown(standard)}${unit === '' ? '' : ` ${unit}`}`;
  return (
    <div className={styles.rule}>
      <Field
        label={
          <span className={styles.label}>
            {line.name}
            {(differs || draft !== undefined) && (
              <Badge size="small" appearance="tint" color={draft === undefined ? 'brand' : 'warning'}>
                {draft === undefined ? 'differs' : 'not saved'}
              </Badge>
            )}
          </span>
        }
        {...(fault !== undefined && { validationMessage: fault })}
      >
        {choices === undefined ? (
          <Input
            size="small"
            value={value}
            contentAfter={
              unit === '' ? null : (
                <Text size={200} className={styles.quiet}>
                  {unit}
                </Text>
              )
            }
            onChange={(_, { value: text }) => {
              change(text);
            }}
          />
        ) : (
          <Select
            size="small"
            value={value}
            onChange={(_, { value: text }) => {
              change(text);
            }}
          >
            {choices.map(({ word }) => (
              <option key={word}>{word}</option>
            ))}
          </Select>
        )}
      </Field>
      <Text size={200} className={styles.quiet}>
        {line.says}. Default: {usual} ({line.source}).
      </Text>
    </div>
  );
}
