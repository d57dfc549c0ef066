/** Words in the pane's few sizes, and marks beside them. */
import type { AriaRole, ReactNode } from 'react';
import { mergeClasses } from './styles';

interface Words {
  readonly as?: 'span' | 'h1' | 'h2' | 'h3' | 'h4' | 'p';
  readonly id?: string;
  readonly role?: AriaRole;
  readonly className?: string | undefined;
  readonly children?: ReactNode;
}
const words = (look: string, { as: Of = 'span', className, ...rest }: Words) => (
  <Of className={mergeClasses(look, className)} {...rest} />
);

interface TextProps extends Words {
  /** 200 is small print. */
  readonly size?: 200 | 300;
  readonly weight?: 'regular' | 'semibold';
}
export const Text = ({ size, weight, ...rest }: TextProps) =>
  words(mergeClasses('text', size === 200 && 'small', weight === 'semibold' && 'strong'), rest);
export const Caption1 = (props: Words) => words('text small', props);
export const Body1Strong = (props: Words) => words('text strong', props);
export const Subtitle2 = (props: Words) => words('text title', props);

interface BadgeProps {
  readonly appearance?: 'tint' | 'outline' | 'filled';
  readonly color?: 'brand' | 'warning' | 'danger' | 'success' | 'informative' | 'important' | 'subtle';
  readonly size?: 'small' | 'medium';
  readonly className?: string;
  readonly children?: ReactNode;
}
export const Badge = ({ appearance = 'filled', color = 'brand', size, className, children }: BadgeProps) => (
  <span
    className={mergeClasses('badge', size === 'small' && 'small', className)}
    data-look={appearance}
    data-tone={color}
  >
    {children}
  </span>
);
