/** Which of the pane's themes suits Excel's own colours. Excel has no event for them: they are looked at again. */
import type { ThemeName } from '../pane/theme';

export interface Colours {
  /** What Excel says of itself; older ones say nothing. */
  readonly office?: Partial<Pick<Office.OfficeTheme, 'bodyBackgroundColor' | 'isDarkTheme'>> | undefined;
  /** What the machine wants: a media query and whether it holds. */
  readonly holds: (query: string) => boolean;
}

/** Source of the weights: WCAG 2.2, relative luminance; the curve matters little for dark or light. */
function isDark(colour: string): boolean {
  const digits = /^#?([0-9a-f]{6})/i.exec(colour)?.[1] ?? 'ffffff';
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => parseInt(digits.slice(at, at + 2), 16));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue < 128;
}

export function themeOf({ office, holds }: Colours): ThemeName {
  if (holds('(forced-colors: active)')) return 'contrast';
  const dark =
    office?.isDarkTheme ??
    (office?.bodyBackgroundColor === undefined
      ? holds('(prefers-color-scheme: dark)')
      : isDark(office.bodyBackgroundColor));
  return dark ? 'dark' : 'light';
}

/** Tells when the colours may have changed: the machine's at once, Excel's when the pane is turned to again. */
export function onColours(listener: () => void): void {
  for (const query of ['(forced-colors: active)', '(prefers-color-scheme: dark)'])
    matchMedia(query).addEventListener('change', listener);
  addEventListener('focus', listener);
}
