/** The task pane: its sections on whatever workbook it is given. One that was opened keeps what it holds. */
import { Themed, makeStyles, Tab, TabList, tokens } from './kit';
import { StrictMode, useState } from 'react';
import { createRoot } from 'react-dom/client';
import type { Book } from '../book/book';
import { ExplainSection } from './explain';
import { FunctionsSection } from './functions';
import { JobSection } from './job';
import { later } from './later';
import { RulesSection } from './house-rules';
import type { ThemeName } from './theme';
import { HalfDone } from './half-done';

interface SectionProps {
  readonly book: Book;
  readonly shown: boolean;
}
const WorkbookSection = later<SectionProps>(async () => (await import('./workbook')).WorkbookSection);
const FloorSection = later<SectionProps>(async () => (await import('./floor/floor')).FloorSection);
const PapersSection = later<SectionProps>(async () => (await import('./papers/papers')).PapersSection);
const AuditSection = later<SectionProps>(async () => (await import('./audit/audit')).AuditSection);

/** `follows`: what it shows is of the selected cell, read anew whenever it is turned to. */
const SECTIONS = {
  job: { tab: 'New job', Of: JobSection, follows: false },
  workbook: { tab: 'Workbook', Of: WorkbookSection, follows: false },
  floor: { tab: 'Floor', Of: FloorSection, follows: false },
  papers: { tab: 'Papers', Of: PapersSection, follows: false },
  audit: { tab: 'Audit', Of: AuditSection, follows: false },
  rules: { tab: 'Rules', Of: RulesSection, follows: false },
  explain: { tab: 'Explain', Of: ExplainSection, follows: true },
  functions: { tab: 'Functions', Of: FunctionsSection, follows: false },
} as const;
export type SectionName = keyof typeof SECTIONS;

export interface PaneOptions {
  readonly theme?: ThemeName;
  readonly section?: SectionName;
}
export interface Pane {
  setTheme(theme: ThemeName): void;
  close(): void;
}

const useStyles = makeStyles({
  pane: {
    height: '100%',
    display: 'grid',
    gridTemplateRows: 'auto 1fr',
    backgroundColor: tokens.colorNeutralBackground1,
  },
  tabs: {
    borderBottom: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground2,
    flexWrap: 'wrap',
  },
  tab: { paddingInline: tokens.spacingHorizontalS },
  content: {
    overflowY: 'auto',
    padding: `${tokens.spacingVerticalM} ${tokens.spacingHorizontalM} ${tokens.spacingVerticalXXL}`,
  },
});

function PaneView({ book, options }: { readonly book: Book; readonly options: PaneOptions }) {
  const styles = useStyles();
  const [section, setSection] = useState<SectionName>(options.section ?? 'job');
  const [opened, setOpened] = useState<ReadonlySet<SectionName>>(new Set([section]));
  return (
    <div className={styles.pane}>
      <TabList
        className={styles.tabs}
        selectedValue={section}
        onTabSelect={(_, { value }) => {
          setSection(value as SectionName);
          setOpened(new Set([...opened, value as SectionName]));
        }}
      >
        {Object.entries(SECTIONS).map(([name, { tab }]) => (
          <Tab key={name} id={`tab-${name}`} value={name} className={styles.tab} aria-controls="section">
            {tab}
          </Tab>
        ))}
      </TabList>
      <div
        id="section"
        role="tabpanel"
        aria-labelledby={`tab-${section}`}
        tabIndex={0}
        className={styles.content}
      >
        <HalfDone book={book} />
        {Object.entries(SECTIONS).map(([name, { Of, follows }]) =>
          name === section || (opened.has(name as SectionName) && !follows) ? (
            <div key={name} hidden={name !== section}>
              <Of book={book} shown={name === section} />
            </div>
          ) : null,
        )}
      </div>
    </div>
  );
}

/** Puts the pane into an element; the same in Excel, in the trial workbook and in tests. */
export function renderPane(element: HTMLElement, book: Book, options: PaneOptions = {}): Pane {
  const root = createRoot(element);
  const render = (theme: ThemeName): void => {
    root.render(
      <StrictMode>
        <Themed theme={theme}>
          <PaneView book={book} options={options} />
        </Themed>
      </StrictMode>,
    );
  };
  render(options.theme ?? 'light');
  return {
    setTheme: render,
    close: () => {
      root.unmount();
    },
  };
}
