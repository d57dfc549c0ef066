/** The pane's themes; kit.css has their colours. */
export type ThemeName = 'light' | 'dark' | 'contrast';
