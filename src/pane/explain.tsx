/** Explain: what the selected cell was given, how it was worked out, and the window to scale. */
import {
  Badge,
  Body1Strong,
  Link,
  makeStyles,
  MessageBar,
  MessageBarBody,
  Subtitle2,
  Text,
  tokens,
} from '@fluentui/react-components';
import { useEffect, useState } from 'react';
import { NAMESPACE } from '../../functions/index';
import { placeText, type Area } from '../book/address';
import type { Book } from '../book/book';
import type { Weight } from '../core/answer';
import { elevation, type Elevation } from '../core/elevation';
import { isBlank, readBack } from '../core/fields';
import { writeStep } from '../core/steps';
import { digits, showLength, showYardage } from '../core/unit';
import { Refusal } from '../core/answer';
import { cellAsked, type Asked, type AskedInput, type CellAsked } from './asked';
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
  readonly drawing?: Elevation;
}

async function explain(book: Book, area: Area): Promise<Explained> {
  const asked = await cellAsked(book, area);
  const first = asked.calls[0];
  if (first === undefined) return { asked };
  const seen = await windowSeen(book, asked.cell, first);
  try {
    return { asked, seen, drawing: elevation(seen.work) };
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
    // Arrow keys pass over many cells: only where she stops is looked at.
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
            <MessageBar intent={explained.intent} layout="multiline">
              <MessageBarBody>{explained.text}</MessageBarBody>
            </MessageBar>
          ) : (
            <OneCell of={explained} book={book} />
          ))}
      </div>
    </Section>
  );
}

function OneCell({ of: { asked, seen, drawing }, book }: { readonly of: Explained; readonly book: Book }) {
  const styles = useStyles();
  const [first, ...others] = asked.calls;
  const shown = asked.shown === null ? 'blank' : readBack(asked.shown);
  return (
    <>
      <div className={styles.value}>
        <Badge appearance="outline" shape="rounded">
          {placeText(asked.cell)}
        </Badge>
        <Body1Strong>{shown}</Body1Strong>
      </div>
      {asked.unfollowed !== undefined && (
        <MessageBar intent="info" layout="multiline">
          <MessageBarBody>
            The pane cannot follow {asked.unfollowed} in this formula. Put that part into a cell of its own,
            and point the function at it.
          </MessageBarBody>
        </MessageBar>
      )}
      {first === undefined && asked.unfollowed === undefined && (
        <Text className={styles.quiet}>
          {asked.formula === null ? 'No formula stands here.' : 'None of our functions is in this formula.'}
        </Text>
      )}
      {first !== undefined && <OneCall of={first} />}
      {drawing !== undefined && seen !== undefined && (
        <>
          <Subtitle2 as="h3">The window</Subtitle2>
          <Drawing of={drawing} unit={seen.house.unit} />
          {drawing.notes.map((note) => (
            <Text key={note} size={200} className={styles.quiet}>
              {note}
            </Text>
          ))}
          <Facts of={seen} />
        </>
      )}
      {first !== undefined && <Inputs of={first} book={book} />}
      {others.map((one) => (
        <OneCall key={one.written} of={one} />
      ))}
    </>
  );
}

function Facts({ of }: { readonly of: WindowSeen }) {
  const styles = useStyles();
  const fullness = deliveredFullness(of);
  const saved = savedBy(of);
  const { unit } = of.house;
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

function OneCall({ of }: { readonly of: Asked }) {
  const styles = useStyles();
  const { outcome } = of;
  const findings = 'error' in outcome ? [outcome.finding] : outcome.findings;
  return (
    <div className={styles.part}>
      <Subtitle2 as="h3">{of.of.name}</Subtitle2>
      <Text size={200} className={styles.quiet}>
        {of.of.says}
      </Text>
      {findings.map((one) => (
        <MessageBar key={one.sentence} intent={INTENT[one.weight]} layout="multiline">
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

function Inputs({ of, book }: { readonly of: Asked; readonly book: Book }) {
  const styles = useStyles();
  return (
    <>
      <Subtitle2 as="h3">Inputs</Subtitle2>
      <table className={styles.inputs} aria-label={`Inputs of ${of.of.name}`}>
        <tbody>
          {of.inputs.map((input) => (
            <InputRow key={input.name} of={input} book={book} />
          ))}
        </tbody>
      </table>
    </>
  );
}

function InputRow({ of, book }: { readonly of: AskedInput; readonly book: Book }) {
  const styles = useStyles();
  const { from } = of;
  const value = Array.isArray(of.value)
    ? `${of.value.length} rows`
    : isBlank(of.value)
      ? 'blank'
      : readBack(of.value);
  return (
    <tr>
      <th scope="row" className={styles.cell}>
        {of.name.replace(/_/g, ' ')}
      </th>
      <td className={styles.cell}>{value}</td>
      <td className={styles.cell}>
        {from !== undefined && (
          <Link
            as="button"
            className={styles.link}
            onClick={() => {
              book.goTo(from).catch(reportError);
            }}
          >
            {placeText(from)}
          </Link>
        )}
      </td>
    </tr>
  );
}
