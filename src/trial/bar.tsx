/** The strip over the trial workbook: open a file, save one, choose the theme. */
import { Button, Field, Themed, makeStyles, Select, Spinner, Subtitle2, Text, tokens } from '../pane/kit';
import { useRef } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import type { Empties } from '../engine/functions';
import type { ThemeName } from '../pane/theme';

export interface BarState {
  readonly title: string;
  readonly theme: ThemeName;
  /** What is going on, or went wrong. */
  readonly says?: string;
  readonly busy?: boolean;
}
export interface BarActs {
  open(file: File): void;
  save(): void;
  theme(theme: ThemeName): void;
  empties(empties: Empties): void;
}

const useStyles = makeStyles({
  bar: {
    display: 'flex',
    alignItems: 'center',
    gap: tokens.spacingHorizontalM,
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`,
    borderBottom: `${tokens.strokeWidthThin} solid ${tokens.colorNeutralStroke2}`,
  },
  title: { margin: 0, color: tokens.colorBrandForeground1 },
  says: { flexGrow: 1, display: 'flex', gap: tokens.spacingHorizontalS },
});

function Bar({ state, acts }: { readonly state: BarState; readonly acts: BarActs }) {
  const styles = useStyles();
  const picker = useRef<HTMLInputElement>(null);
  return (
    <div className={styles.bar}>
      <Subtitle2 as="h1" className={styles.title}>
        Hemledger
      </Subtitle2>
      <Button size="small" disabled={state.busy === true} onClick={() => picker.current?.click()}>
        Open .xlsx
      </Button>
      <input
        ref={picker}
        type="file"
        hidden
        aria-label="Workbook to open"
        accept=".xlsx"
        onChange={({ target }) => {
          const file = target.files?.[0];
          if (file !== undefined) acts.open(file);
          target.value = '';
        }}
      />
      <Button size="small" disabled={state.busy === true} onClick={acts.save}>
        Save .xlsx
      </Button>
      <div className={styles.says} role="status">
        {state.busy === true && <Spinner />}
        <Text size={200}>{state.says ?? state.title}</Text>
      </div>
      <Field label="Empty cells are" orientation="horizontal">
        <Select
          size="small"
          disabled={state.busy === true}
          onChange={(_, { value }) => {
            acts.empties(value as Empties);
          }}
        >
          <option value="null">nothing, as in Excel on the web</option>
          <option value="zero">0, as in Excel on Windows and Mac</option>
        </Select>
      </Field>
      <Field label="Theme" orientation="horizontal">
        <Select
          size="small"
          value={state.theme}
          onChange={(_, { value }) => {
            acts.theme(value as ThemeName);
          }}
        >
          <option value="light">light</option>
          <option value="dark">dark</option>
          <option value="contrast">high contrast</option>
        </Select>
      </Field>
    </div>
  );
}

export function renderBar(element: HTMLElement, acts: BarActs): (state: BarState) => void {
  const root: Root = createRoot(element);
  return (state) => {
    root.render(
      <Themed theme={state.theme}>
        <Bar state={state} acts={acts} />
      </Themed>,
    );
  };
}
