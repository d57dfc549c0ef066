/** Explain: what the selected cell was given, how it was worked out, and the window to scale. */
import {
  Badge,
  Body1Strong,
  makeStyles,
  mergeClasses,
  MessageBar,
  MessageBarBody,
  Subtitle2,
  Text,
  tokens,
} from './kit';
import { Fragment, useEffect, useState, type ReactNode } from 'react';
import { NAMESPACE } from '../../functions/index';
import { areaText, placeText, sameSheet, type Area } from '../book/address';
import type { Book } from '../book/book';
import { Refusal, renamed, type Weight } from '../core/cell/answer';
import type { Drawing as Described } from '../core/drawing/drawing';
import { rodFromAbove } from '../core/drawing/bay';
import { elevation } from '../core/drawing/elevation';
import { isBlank, readBack, type CellIn } from '../core/cell/fields';
import { namedBy, type Naming } from '../core/window/sheet-words';
import { writeStep } from '../core/cell/steps';
import { digits, showLength, showYardage } from '../core/exact/unit';
import { cellAsked, type Asked, type AskedInput, type CellAsked } from '../book/asked/asked';
import type { AskedPart } from '../book/asked/parts';
import { Drawing } from './drawing';
import { Section } from './section';
import { useSelection } from './selection';
import { messageOf, type Message } from './task';
import { deliveredFullness, savedBy, windowSeen, type WindowSeen } from './window';

const useStyles = makeStyles({
  part: { display: 'grid', gap: tokens.spacingVerticalS, gridTemplateColumns: 'minmax(0, 1fr)' },
  formula: {
    fontFamily: tokens.fontFamilyMonospace,
    fontSize: tokens.fontSizeBase200,
    overflowWrap: 'anywhere',
    color: tokens.colorNeutralForeground2,
  },
  value: { display: 'flex', alignItems: 'baseline', gap: tokens.spacingHorizontalS },
  inputs: { width: '100%', borderCollapse: 'collapse', fontSize: tokens.fontSizeBase200 },
  link: { fontSize: tokens.fontSizeBase200 },
  cell: {
    textAlign: 'start',
    verticalAlign: 'top',
    padding: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalXS}`,
    borderBottom: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
    fontWeight: tokens.fontWeightRegular,
    overflowWrap: 'anywhere',
  },
  place: { flexShrink: 0 },
  short: { whiteSpace: 'nowrap' },
  steps: {
    margin: 0,
    paddingLeft: tokens.spacingHorizontalXL,
    display: 'grid',
    gap: tokens.spacingVerticalXS,
    fontSize: tokens.fontSizeBase200,
  },
  quiet: { color: tokens.colorNeutralForeground2 },
  facts: {
    display: 'grid',
    gridTemplateColumns: 'auto 1fr',
    gap: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalM}`,
    margin: 0,
  },
  fact: { margin: 0 },
});

const INTENT: Readonly<Record<Weight, 'error' | 'warning' | 'info'>> = {
  stop: 'error',
  check: 'warning',
  note: 'info',
};

interface Explained {
  readonly asked: CellAsked;
  readonly seen?: WindowSeen;
  readonly drawings?: readonly Described[];
}

async function explain(book: Book, area: Area): Promise<Explained> {
  const asked = await cellAsked(book, area);
  const first = asked.calls[0];
  if (first === undefined) return { asked };
  const seen = await windowSeen(book, asked.cell, first);
  try {
    const fromAbove = rodFromAbove(seen.work);
    return { asked, seen, drawings: [elevation(seen.work), ...(fromAbove === undefined ? [] : [fromAbove])] };
  } catch (thrown) {
    // Not every function is about a whole window.
    if (thrown instanceof Refusal) return { asked, seen };
    throw thrown;
  }
}

const WAIT = 150;

function useExplained(book: Book, area: Area | undefined): Explained | Message | undefined {
  const [explained, setExplained] = useState<Explained | Message>();
  useEffect(() => {
    if (area === undefined) return;
    let over = false;
    // Arrow keys pass over many cells: only where they stop is looked at.
    const waiting = setTimeout(() => {
      explain(book, area)
        .catch(messageOf)
        .then((found) => {
          if (!over) setExplained(found);
        })
        .catch(reportError);
    }, WAIT);
    return () => {
      over = true;
      clearTimeout(waiting);
    };
  }, [book, area]);
  return explained;
}

export function ExplainSection({ book }: { readonly book: Book }) {
  const styles = useStyles();
  const area = useSelection(book);
  const explained = useExplained(book, area);
  return (
    <Section
      title="Explain"
      says={`Select a cell with a ${NAMESPACE} function: its inputs, its working and the window stand here.`}
    >
      <div aria-live="polite" className={styles.part}>
        {explained !== undefined &&
          ('intent' in explained ? (
            <MessageBar intent={explained.intent}>
              <MessageBarBody>{explained.text}</MessageBarBody>
            </MessageBar>
          ) : (
            <OneCell explained={explained} book={book} />
          ))}
      </div>
    </Section>
  );
}

/** Sentences name the columns as the sheet heads them, and the house rule that stands for a blank. */
function namingOf(call: Asked, seen: WindowSeen | undefined): Naming {
  const input = (key: string): AskedInput | undefined =>
    call.inputs.find((one) => one.name.replace(/_/g, '') === key.toLowerCase());
  return namedBy(
    (key) => {
      const from = input(key)?.from;
      return from === undefined ? undefined : seen?.headingAt(from);
    },
    { heading: seen?.work.window.heading, gives: (key) => !isBlank(firstOf(input(key)?.value ?? null)) },
  );
}

/** The first cell of a range; a plain value as it is. */
const firstOf = (value: CellIn): CellIn =>
  Array.isArray(value) ? firstOf((value as CellIn[])[0] ?? null) : value;

function OneCell({
  explained: { asked, seen, drawings },
  book,
}: {
  readonly explained: Explained;
  readonly book: Book;
}) {
  const styles = useStyles();
  const [first, ...others] = asked.calls;
  const { shown: value, parts = [] } = asked;
  const shown = value === null ? 'blank' : typeof value === 'string' ? value : readBack(value);
  return (
    <>
      <div className={styles.value}>
        <Badge appearance="outline" className={styles.place}>
          {placeText(asked.cell)}
        </Badge>
        <Body1Strong>{shown}</Body1Strong>
      </div>
      {asked.spilledFrom !== undefined && (
        <Text size={200} className={styles.quiet}>
          Part of what the formula in{' '}
          <CellLink at={asked.spilledFrom} book={book}>
            {placeText(asked.spilledFrom)}
          </CellLink>{' '}
          spills.
        </Text>
      )}
      {asked.unfollowed !== undefined && (
        <MessageBar intent="info">
          <MessageBarBody>
            The pane cannot follow {asked.unfollowed} in this formula. Put that part into a cell of its own,
            and point the function at it.
          </MessageBarBody>
        </MessageBar>
      )}
      {first === undefined && asked.unfollowed === undefined && (
        <Text className={styles.quiet}>
          {asked.formula === null
            ? 'No formula stands here.'
            : parts.length === 0
              ? 'None of our functions is in this formula.'
              : 'It is worked out from these cells:'}
        </Text>
      )}
      {parts.length > 0 && <Parts parts={parts} cell={asked.cell} book={book} />}
      {first !== undefined && <OneCall call={first} naming={namingOf(first, seen)} />}
      {drawings !== undefined && seen !== undefined && (
        <>
          <Subtitle2 as="h3">The window</Subtitle2>
          {drawings.map((drawing) => (
            <Fragment key={drawing.title}>
              <Drawing drawing={drawing} unit={seen.house.unit} />
              {drawing.notes.map((note) => (
                <Text key={note} size={200} className={styles.quiet}>
                  {note}
                </Text>
              ))}
            </Fragment>
          ))}
          <Facts seen={seen} />
        </>
      )}
      {first !== undefined && <Inputs call={first} seen={seen} cell={asked.cell} book={book} />}
      {others.map((one) => (
        <OneCall key={one.written} call={one} naming={namingOf(one, seen)} />
      ))}
    </>
  );
}

/** A figure as a sum of money shows it, beside what else a cell may hold. */
const partShown = ({ value, figures }: AskedPart): string => {
  const shown = value === null ? 'blank' : typeof value === 'string' ? value : readBack(value);
  return figures === undefined ? shown : `${shown} (${figures} figures)`;
};

interface PartsProps {
  readonly parts: readonly AskedPart[];
  readonly cell: Area;
  readonly book: Book;
}

/** What a total is made of, each part with the way to its cell. */
function Parts({ parts, cell, book }: PartsProps) {
  const styles = useStyles();
  return (
    <table className={styles.inputs} aria-label="Parts">
      <tbody>
        {parts.map((part) => (
          <tr key={areaText(part.from)}>
            <th scope="row" className={styles.cell}>
              {part.label}
            </th>
            <td className={styles.cell}>{partShown(part)}</td>
            <td className={`${styles.cell} ${styles.short}`}>
              <CellLink at={part.from} book={book}>
                {sameSheet(part.from.sheet, cell.sheet) ? placeText(part.from) : areaText(part.from)}
              </CellLink>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Facts({ seen }: { readonly seen: WindowSeen }) {
  const styles = useStyles();
  const fullness = deliveredFullness(seen);
  const saved = savedBy(seen);
  const { unit } = seen.house;
  if (fullness === undefined) return null;
  return (
    <dl className={styles.facts}>
      <dt>Delivered fullness</dt>
      <dd className={styles.fact}>
        <Body1Strong>{digits(Math.round(fullness * 100) / 100)}</Body1Strong>
      </dd>
      <dt>To fewer widths</dt>
      <dd className={styles.fact}>
        {saved === undefined ? (
          'no narrower rod needs fewer widths'
        ) : (
          <>
            a rod <Body1Strong>{showLength(saved.narrower, unit)}</Body1Strong> narrower saves{' '}
            {digits(saved.widths)} {saved.widths === 1 ? 'width' : 'widths'},{' '}
            {showYardage(saved.yardage, unit)} of cloth
          </>
        )}
      </dd>
    </dl>
  );
}

/** The one figure that a row is asked for: it is what the cell is about, not the function that asks. */
function figureAsked({ cellFunction, inputs }: Asked): string | undefined {
  if (cellFunction.name !== 'SCHEDULE') return undefined;
  const outputs = firstOf(inputs.find(({ name }) => name === 'outputs')?.value ?? null);
  return typeof outputs === 'string' && outputs.trim() !== '' && !/[,;]/.test(outputs) ? outputs : undefined;
}

function OneCall({ call, naming }: { readonly call: Asked; readonly naming: Naming }) {
  const styles = useStyles();
  const { outcome } = call;
  const figure = figureAsked(call);
  const findings = ('error' in outcome ? [outcome.finding] : outcome.findings).map((one) =>
    renamed(one, naming),
  );
  return (
    <div className={styles.part}>
      <Subtitle2 as="h3">{figure ?? call.cellFunction.name}</Subtitle2>
      <Text size={200} className={styles.quiet}>
        {figure === undefined ? call.cellFunction.says : `Asked of the whole row, by ${NAMESPACE}.SCHEDULE.`}
      </Text>
      {findings.map((one) => (
        <MessageBar key={one.sentence} intent={INTENT[one.weight]}>
          <MessageBarBody>{one.sentence}</MessageBarBody>
        </MessageBar>
      ))}
      {!('error' in outcome) && outcome.steps.length > 0 && (
        <ol className={styles.steps} aria-label="Working">
          {outcome.steps.map((one) => (
            <li key={one.what + one.how}>
              <Text size={200}>{writeStep(one, outcome.unit)}</Text>
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}

interface InputsProps {
  readonly call: Asked;
  readonly seen: WindowSeen | undefined;
  readonly cell: Area;
  readonly book: Book;
}

function Inputs({ call, seen, cell, book }: InputsProps) {
  const styles = useStyles();
  return (
    <>
      <Subtitle2 as="h3">Inputs</Subtitle2>
      <table className={styles.inputs} aria-label={`Inputs of ${call.cellFunction.name}`}>
        <tbody>
          {call.inputs.map((input, at) => (
            <tr key={at}>
              <th scope="row" className={`${styles.cell} ${styles.short}`}>
                {input.name.replace(/_/g, ' ')}
              </th>
              <td className={styles.cell}>{valueShown(input.value)}</td>
              <td className={`${styles.cell} ${styles.short}`}>
                {input.from !== undefined && (
                  <CellLink at={input.from} book={book}>
                    {[
                      sameSheet(input.from.sheet, cell.sheet) ? placeText(input.from) : areaText(input.from),
                      seen?.headingAt(input.from),
                    ]
                      .filter((one) => one !== undefined)
                      .join(' ')}
                  </CellLink>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const MOST_SHOWN = 60;

/** A value as it was read; of a list its figures, of a range how much it holds. */
function valueShown(value: CellIn): string {
  if (!Array.isArray(value)) return isBlank(value) ? 'blank' : readBack(value);
  const rows = (value as CellIn[]).map((row) => (Array.isArray(row) ? (row as CellIn[]) : [row]));
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const listed = rows.flat().map((one) => (isBlank(one) ? '–' : String(one)));
  const text = listed.join(', ');
  return (rows.length === 1 || columns === 1) && text.length <= MOST_SHOWN
    ? text
    : `${rows.length} ${rows.length === 1 ? 'row' : 'rows'} × ${columns} ${columns === 1 ? 'column' : 'columns'}`;
}

interface LinkProps {
  readonly at: Area;
  readonly book: Book;
  readonly children: ReactNode;
}

function CellLink({ at, book, children }: LinkProps) {
  const styles = useStyles();
  return (
    <button
      type="button"
      className={mergeClasses('link', styles.link)}
      onClick={() => {
        book.goTo(at).catch(reportError);
      }}
    >
      {children}
    </button>
  );
}
