import { describe, expect, it } from 'vitest';
import { themeOf } from '../../src/excel/theme';

/* The background colours are Excel's for Microsoft 365 as remembered, not looked up. */
describe('the pane’s theme', () => {
  it.each([
    ['Excel says it is dark', { isDarkTheme: true, bodyBackgroundColor: '#262626' }, [], 'dark'],
    ['Excel says it is not, on a dark machine', { isDarkTheme: false }, ['dark'], 'light'],
    ['an older Excel gives a black ground', { bodyBackgroundColor: '#0A0A0A' }, [], 'dark'],
    ['an older Excel gives a white ground', { bodyBackgroundColor: '#FFFFFF' }, ['dark'], 'light'],
    ['a colour that cannot be read is taken for white', { bodyBackgroundColor: 'window' }, [], 'light'],
    ['Excel on the web says nothing: the machine decides', undefined, ['dark'], 'dark'],
    ['nobody says anything', undefined, [], 'light'],
    ['high contrast comes before all', { isDarkTheme: false }, ['dark', 'active'], 'contrast'],
  ] as const)('%s', (_, office, machine, theme) => {
    const holds = (query: string): boolean => machine.some((word) => query.includes(word));
    expect(themeOf({ office, holds })).toBe(theme);
  });
});
