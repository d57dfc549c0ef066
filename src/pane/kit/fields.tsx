/** Fields of one line, of one choice and of several, as most of the pane's are. */
import type { ReactNode } from 'react';
import { Checkbox, Field, Input, Select } from './controls';

interface FieldProps {
  readonly label: string;
  readonly hint?: string;
  readonly fault?: string | undefined;
  readonly value: string;
  readonly change: (value: string) => void;
}

const around = ({ label, hint, fault }: FieldProps) => ({
  label,
  ...(hint !== undefined && { hint }),
  ...(fault !== undefined && { validationMessage: fault }),
});

export const TextField = (props: FieldProps & { readonly placeholder?: string }) => (
  <Field {...around(props)}>
    <Input
      size="small"
      value={props.value}
      placeholder={props.placeholder}
      onChange={(_, { value }) => {
        props.change(value);
      }}
    />
  </Field>
);

/** Its children are the options. */
export const ChoiceField = (props: FieldProps & { readonly children: ReactNode }) => (
  <Field {...around(props)}>
    <Select
      size="small"
      value={props.value}
      onChange={(_, { value }) => {
        props.change(value);
      }}
    >
      {props.children}
    </Select>
  </Field>
);

interface TicksProps<K> {
  readonly choices: readonly { readonly key: K; readonly label: string; readonly title?: string }[];
  readonly chosen: ReadonlySet<K>;
  readonly disabled?: boolean;
  readonly change: (chosen: ReadonlySet<K>) => void;
}
/** One box for each choice; whatever stands around them names them. */
export function Ticks<K extends string>({ choices, chosen, disabled, change }: TicksProps<K>) {
  return (
    <>
      {choices.map(({ key, label, title }) => (
        <Checkbox
          key={key}
          label={label}
          title={title}
          disabled={disabled}
          checked={chosen.has(key)}
          onChange={(_, { checked }) => {
            const next = new Set(chosen);
            if (checked) next.add(key);
            else next.delete(key);
            change(next);
          }}
        />
      ))}
    </>
  );
}
