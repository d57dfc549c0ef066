/** What holds other parts: tabs, folds, messages, the theme. */
import {
  createContext,
  useContext,
  useId,
  useState,
  type AriaRole,
  type KeyboardEvent,
  type ReactNode,
} from 'react';
import type { ThemeName } from '../theme';
import './kit.css';
import { mergeClasses } from './styles';

interface Held {
  readonly className?: string | undefined;
  readonly children?: ReactNode;
}

/** Everything of the pane stands in one of these. */
export const Themed = ({ theme, children }: { readonly theme: ThemeName; readonly children: ReactNode }) => (
  <div className="themed" data-theme={theme}>
    {children}
  </div>
);

interface TabsProps extends Held {
  readonly selectedValue: string;
  readonly onTabSelect: (event: unknown, data: { readonly value: string }) => void;
}
const Tabs = createContext<TabsProps>({ selectedValue: '', onTabSelect: () => undefined });

/** Arrow keys go from tab to tab, as WAI-ARIA's pattern for tabs has it. */
export function TabList({ className, children, ...choice }: TabsProps) {
  const move = (event: KeyboardEvent<HTMLDivElement>): void => {
    const tabs = [...event.currentTarget.querySelectorAll<HTMLElement>('[role=tab]')];
    const at = tabs.indexOf(document.activeElement as HTMLElement);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    tabs[(to + tabs.length) % tabs.length]?.focus();
  };
  return (
    <Tabs.Provider value={choice}>
      <div role="tablist" className={mergeClasses('tabs', className)} onKeyDown={move}>
        {children}
      </div>
    </Tabs.Provider>
  );
}
interface TabProps extends Held {
  readonly id: string;
  readonly value: string;
  readonly 'aria-controls': string;
}
export function Tab({ value, className, ...rest }: TabProps) {
  const { selectedValue, onTabSelect } = useContext(Tabs);
  const selected = value === selectedValue;
  return (
    <button
      type="button"
      role="tab"
      aria-selected={selected}
      tabIndex={selected ? 0 : -1}
      className={mergeClasses('tab', className)}
      onClick={(event) => {
        onTabSelect(event, { value });
      }}
      {...rest}
    />
  );
}

const Fold = createContext({ id: '', open: false, turn: (): void => undefined });

/** A heading that folds its panel away. */
export function AccordionItem({ children }: Held) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const turn = (): void => {
    setOpen(!open);
  };
  return <Fold.Provider value={{ id, open, turn }}>{children}</Fold.Provider>;
}
export function AccordionHeader({ as: Of = 'h4', children }: Held & { readonly as?: 'h3' | 'h4' }) {
  const { id, open, turn } = useContext(Fold);
  return (
    <Of className="fold">
      <button type="button" aria-expanded={open} {...(open && { 'aria-controls': id })} onClick={turn}>
        {children}
      </button>
    </Of>
  );
}
export function AccordionPanel({ children }: Held) {
  const { id, open } = useContext(Fold);
  return open ? (
    <div id={id} className="folded">
      {children}
    </div>
  ) : null;
}

interface MessageProps extends Held {
  readonly intent: 'success' | 'info' | 'warning' | 'error';
  readonly role?: AriaRole;
}
export const MessageBar = ({ intent, className, children, role = 'group' }: MessageProps) => (
  <div role={role} className={mergeClasses('message', className)} data-intent={intent}>
    {children}
  </div>
);
export const MessageBarBody = ({ className, children }: Held) => (
  <div className={mergeClasses('text', className)}>{children}</div>
);
export const MessageBarTitle = ({ children }: Held) => <b>{children} </b>;
export const MessageBarActions = ({ children }: Held) => <div className="actions">{children}</div>;

interface ProgressProps {
  readonly value?: number;
  readonly max?: number;
  readonly className?: string;
  readonly 'aria-label': string;
}
export const ProgressBar = ({ className, ...rest }: ProgressProps) => (
  <progress className={mergeClasses('progress', className)} {...rest} />
);

export const Spinner = () => <span className="spinner" />;
