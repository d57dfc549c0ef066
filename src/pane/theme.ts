/** The pane's colours: Fluent's themes on the shade of wine that the manifest's icon has. */
import {
  createDarkTheme,
  createLightTheme,
  teamsHighContrastTheme,
  type BrandVariants,
  type Theme,
} from '@fluentui/react-components';

export type ThemeName = 'light' | 'dark' | 'contrast';

const WINE: BrandVariants = {
  10: '#0D0405',
  20: '#25090E',
  30: '#3B0E17',
  40: '#4C131F',
  50: '#5B1A27',
  60: '#69222F',
  70: '#762B38',
  80: '#833541',
  90: '#93434E',
  100: '#A3535D',
  110: '#B4656E',
  120: '#C47881',
  130: '#D38D95',
  140: '#E1A4AA',
  150: '#EDBDC2',
  160: '#F7D9DC',
};

const dark = createDarkTheme(WINE);

export const THEMES: Readonly<Record<ThemeName, Theme>> = {
  light: createLightTheme(WINE),
  // On a dark ground the brand's own shades are too deep to be read.
  dark: {
    ...dark,
    colorBrandForeground1: WINE[140],
    colorBrandForeground2: WINE[150],
    colorBrandForegroundLink: WINE[150],
    colorBrandForegroundLinkHover: WINE[160],
    colorCompoundBrandForeground1: WINE[140],
    colorCompoundBrandStroke: WINE[130],
  },
  contrast: teamsHighContrastTheme,
};
