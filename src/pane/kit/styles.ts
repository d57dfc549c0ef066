/** Styles beside the part that wears them, as classes of one style sheet; colours and sizes by their names in kit.css. */
import type { CSSProperties } from 'react';

/** A rule of its own; under a selector such as `& > h2` a rule for what stands inside. */
export type Style = CSSProperties & Readonly<Record<`& ${string}`, CSSProperties>>;

type Name =
  | `color${'Neutral' | 'Brand' | 'Status' | 'Palette'}${string}`
  | `spacing${'Horizontal' | 'Vertical'}${'XXS' | 'XS' | 'S' | 'M' | 'L' | 'XL' | 'XXL'}`
  | 'borderRadiusMedium'
  | 'fontFamilyMonospace'
  | 'fontSizeBase200'
  | 'fontWeightRegular'
  | 'fontWeightSemibold'
  | 'strokeWidthThin'
  | 'strokeWidthThicker';

/** `tokens.colorNeutralStroke2` is what kit.css says of --colorNeutralStroke2 under the theme. */
export const tokens = new Proxy({} as Readonly<Record<Name, string>>, {
  get: (_, name) => `var(--${String(name)})`,
});

const PLAIN_NUMBERS = /^(flex|fontWeight|gridColumn|gridRow|lineHeight|opacity|order|zIndex)/;

const declared = (style: Style): string =>
  Object.entries(style)
    .filter(([name]) => !name.startsWith('&'))
    .map(([name, value]) => {
      const figure = typeof value === 'number' && value !== 0 && !PLAIN_NUMBERS.test(name);
      return `${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}:${String(value)}${figure ? 'px' : ''}`;
    })
    .join(';');

let sheet: CSSStyleSheet | undefined;
let classes = 0;

function classOf(style: Style): string {
  const name = `k${classes++}`;
  // Written out as plain HTML, without a page, there is nothing to put styles into.
  if (typeof document === 'undefined') return name;
  sheet ??= document.head.appendChild(document.createElement('style')).sheet ?? undefined;
  const add = (selector: string, body: string): void => {
    sheet?.insertRule(`${selector}{${body}}`, sheet.cssRules.length);
  };
  add(`.${name}`, declared(style));
  for (const [inside, rule] of Object.entries(style))
    if (inside.startsWith('&')) add(inside.replaceAll('&', `.${name}`), declared(rule as Style));
  return name;
}

/** A hook that gives the classes of these styles; they are put into the page when first asked for. */
export function makeStyles<Slot extends string>(
  styles: Readonly<Record<Slot, Style>>,
): () => Readonly<Record<Slot, string>> {
  let made: Readonly<Record<Slot, string>> | undefined;
  return () =>
    (made ??= Object.fromEntries(
      Object.entries<Style>(styles).map(([slot, style]) => [slot, classOf(style)]),
    ) as Record<Slot, string>);
}

export const mergeClasses = (...names: readonly (string | false | undefined)[]): string =>
  names.filter((name) => name !== undefined && name !== false && name !== '').join(' ');
