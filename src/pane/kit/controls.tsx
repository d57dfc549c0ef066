/** The page's own controls in the pane's look: what a screen reader and a keyboard know of them stays theirs. */
import {
  cloneElement,
  createContext,
  isValidElement,
  useContext,
  type AriaAttributes,
  type ChangeEvent,
  type ComponentPropsWithoutRef,
  type FormEvent,
  type KeyboardEvent,
  type ReactElement,
  type ReactNode,
  useState,
} from 'react';
import { mergeClasses } from './styles';

type Size = 'small' | 'medium';
/** How a control tells what was typed or chosen. */
type Told<Data, Of extends Element = HTMLInputElement> = (event: ChangeEvent<Of>, data: Data) => void;

interface ButtonProps extends ComponentPropsWithoutRef<'button'> {
  readonly appearance?: 'primary' | 'secondary' | 'outline' | 'subtle' | 'transparent';
  readonly size?: Size;
  /** Cannot be pressed and keeps the focus all the same. */
  readonly disabledFocusable?: boolean;
  readonly icon?: ReactNode;
  readonly iconPosition?: 'before' | 'after';
}
export function Button({
  appearance = 'secondary',
  size,
  disabledFocusable = false,
  icon,
  iconPosition = 'before',
  className,
  onClick,
  children,
  ...rest
}: ButtonProps) {
  return (
    <button
      type="button"
      className={mergeClasses('button', size === 'small' && 'small', className)}
      data-look={appearance}
      {...(disabledFocusable && { 'aria-disabled': true })}
      {...(!disabledFocusable && onClick !== undefined && { onClick })}
      {...rest}
    >
      {iconPosition === 'before' && icon}
      {children}
      {iconPosition === 'after' && icon}
    </button>
  );
}

interface FieldProps {
  readonly label?: ReactNode;
  readonly hint?: ReactNode;
  readonly validationMessage?: ReactNode;
  readonly validationState?: 'error' | 'warning' | 'success' | 'none';
  readonly orientation?: 'vertical' | 'horizontal';
  readonly size?: Size;
  readonly children?: ReactNode;
}
/** Sections are drawn apart from each other, so a number of the page's own names each field once. */
let fields = 0;

/** A control with its label, what is said of it, and what is wrong with it. */
export function Field({
  label,
  hint,
  validationMessage,
  validationState = 'error',
  orientation,
  size,
  children,
}: FieldProps) {
  const [id] = useState(() => `field${fields++}`);
  const said = [validationMessage !== undefined && `${id}fault`, hint !== undefined && `${id}hint`].filter(
    (one) => one !== false,
  );
  const control = isValidElement(children)
    ? cloneElement(children as ReactElement<AriaAttributes & { id?: string }>, {
        id,
        // A label names the page's own controls; a group of them is named by hand.
        ...(children.type === RadioGroup && { 'aria-labelledby': `${id}label` }),
        ...(said.length > 0 && { 'aria-describedby': said.join(' ') }),
        ...(validationMessage !== undefined && validationState === 'error' && { 'aria-invalid': true }),
      })
    : children;
  return (
    <div className={mergeClasses('field', orientation === 'horizontal' && 'across', size)}>
      <label id={`${id}label`} htmlFor={id}>
        {label}
      </label>
      {control}
      {validationMessage !== undefined && (
        <span
          id={`${id}fault`}
          className="text small fault"
          data-state={validationState}
          // A doubt is read out with its field; only what is wrong is called out.
          {...(validationState === 'error' && { role: 'alert' })}
        >
          {validationMessage}
        </span>
      )}
      {hint !== undefined && (
        <span id={`${id}hint`} className="text small hint">
          {hint}
        </span>
      )}
    </div>
  );
}

interface InputProps extends Omit<ComponentPropsWithoutRef<'input'>, 'size' | 'onChange'> {
  readonly size?: Size;
  readonly contentAfter?: ReactNode;
  readonly onChange?: Told<{ readonly value: string }>;
}
export const Input = ({ size, contentAfter, onChange, className, ...rest }: InputProps) => (
  <span className={mergeClasses('input', size === 'small' && 'small', className)}>
    <input
      {...rest}
      onChange={(event) => {
        onChange?.(event, { value: event.target.value });
      }}
    />
    {contentAfter}
  </span>
);
export const SearchBox = (props: InputProps) => <Input type="search" {...props} />;

interface SelectProps extends Omit<ComponentPropsWithoutRef<'select'>, 'size' | 'onChange'> {
  readonly size?: Size;
  readonly onChange?: Told<{ readonly value: string }, HTMLSelectElement>;
}
export const Select = ({ size, onChange, className, ...rest }: SelectProps) => (
  <select
    className={mergeClasses('select', size === 'small' && 'small', className)}
    {...rest}
    onChange={(event) => {
      onChange?.(event, { value: event.target.value });
    }}
  />
);

interface TickProps extends Omit<ComponentPropsWithoutRef<'input'>, 'onChange' | 'size'> {
  readonly label?: ReactNode;
  readonly onChange?: Told<{ readonly checked: boolean }>;
}
const ticked = (look: string, { label, title, className, onChange, ...rest }: TickProps) => (
  <label className={mergeClasses('tick', look, className)} title={title}>
    <input
      type="checkbox"
      {...rest}
      onChange={(event) => {
        onChange?.(event, { checked: event.target.checked });
      }}
    />
    <span>{label}</span>
  </label>
);
export const Checkbox = (props: TickProps) => ticked('check', props);
export const Switch = (props: TickProps) => ticked('switch', { role: 'switch', ...props });

interface RadioGroupProps extends Omit<ComponentPropsWithoutRef<'div'>, 'onChange'> {
  readonly value: string;
  readonly layout?: 'vertical' | 'horizontal';
  readonly onChange: Told<{ readonly value: string }>;
}
const Group = createContext<Pick<RadioGroupProps, 'value' | 'onChange'> & { readonly name: string }>({
  name: '',
  value: '',
  onChange: () => undefined,
});
export function RadioGroup({ value, layout, onChange, className, ...rest }: RadioGroupProps) {
  const [name] = useState(() => `group${fields++}`);
  return (
    <Group.Provider value={{ name, value, onChange }}>
      <div
        role="radiogroup"
        className={mergeClasses('radios', layout === 'horizontal' && 'across', className)}
        {...rest}
      />
    </Group.Provider>
  );
}
export function Radio({ value, label }: { readonly value: string; readonly label: ReactNode }) {
  const group = useContext(Group);
  return (
    <label className="tick">
      <input
        type="radio"
        name={group.name}
        value={value}
        checked={group.value === value}
        onChange={(event) => {
          group.onChange(event, { value });
        }}
      />
      <span>{label}</span>
    </label>
  );
}

interface SpinProps extends Omit<InputProps, 'value' | 'min' | 'max' | 'onChange' | 'onInput'> {
  /** The count that was read, null where none can be; `displayValue` is what was typed. */
  readonly value: number | null;
  readonly displayValue: string;
  readonly min: number;
  readonly max: number;
  readonly onChange: (event: unknown, data: { readonly value: number }) => void;
  readonly onInput: (event: FormEvent<HTMLInputElement>) => void;
}
/** A count to be typed, or stepped with the arrow keys; whatever is typed stays, so that it can be told what is wrong. */
export function SpinButton({ value, displayValue, min, max, onChange, onInput, ...rest }: SpinProps) {
  const step = (event: KeyboardEvent): void => {
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    onChange(event, { value: Math.min(max, Math.max(min, (value ?? min) + by)) });
  };
  return (
    <Input
      role="spinbutton"
      inputMode="numeric"
      aria-valuemin={min}
      aria-valuemax={max}
      {...(value !== null && { 'aria-valuenow': value })}
      value={displayValue}
      onKeyDown={step}
      onInput={onInput}
      {...rest}
    />
  );
}
