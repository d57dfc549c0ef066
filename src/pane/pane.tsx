/** The task pane: its sections on whatever workbook it is given. */
import { Themed, makeStyles, Tab, TabList, Text, tokens } from './kit';
import { StrictMode, useState } from 'react';
import { createRoot } from 'react-dom/client';
import type { Book } from '../book/book';
import { AuditSection } from './audit/audit';
import { ExplainSection } from './explain';
import { FloorSection } from './floor/floor';
import { FunctionsSection } from './functions';
import { JobSection } from './job';
import { RulesSection } from './house-rules';
import type { ThemeName } from './theme';
import { HalfDone } from './half-done';
import { WorkbookSection } from './workbook';

const SECTIONS = {
  job: { tab: 'New job', Of: JobSection },
  workbook: { tab: 'Workbook', Of: WorkbookSection },
  floor: { tab: 'Floor', Of: FloorSection },
  audit: { tab: 'Audit', Of: AuditSection },
  rules: { tab: 'Rules', Of: RulesSection },
  explain: { tab: 'Explain', Of: ExplainSection },
  functions: { tab: 'Functions', Of: FunctionsSection },
} as const;
export type SectionName = keyof typeof SECTIONS;

export interface PaneOptions {
  readonly theme?: ThemeName;
  readonly section?: SectionName;
  /** What this host is too old or too plain for: shown once, at the top. */
  readonly notices?: readonly string[];
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
  notices: { marginBottom: tokens.spacingVerticalM, display: 'grid', color: tokens.colorNeutralForeground2 },
});

function PaneView({ book, options }: { readonly book: Book; readonly options: PaneOptions }) {
  const styles = useStyles();
  const [section, setSection] = useState<SectionName>(options.section ?? 'job');
  const { Of } = SECTIONS[section];
  const notices = [...(options.notices ?? []), ...book.lacks.values()];
  return (
    <div className={styles.pane}>
      <TabList
        className={styles.tabs}
        selectedValue={section}
        onTabSelect={(_, { value }) => {
          setSection(value as SectionName);
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
        {section === 'job' && notices.length > 0 && (
          <div className={styles.notices}>
            {notices.map((one) => (
              <Text key={one} size={200}>
                {one}
              </Text>
            ))}
          </div>
        )}
        <HalfDone book={book} />
        <Of book={book} />
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
