/** How each role looks, whatever the host: every room that dresses cells takes it from here. Colours are rrggbb. */
import type { Mark, Role } from './book';

export interface Look {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly size?: number;
  readonly ink?: string;
  readonly fill?: string;
  /** Lined all round, in the colour of EDGE. */
  readonly boxed?: boolean;
  readonly wrapped?: boolean;
  /** A line above or below, in black. */
  readonly over?: 'hair' | 'thin' | 'medium';
  readonly under?: 'hair' | 'thin' | 'medium';
  /** Stays open for typing when the user protects the sheet. */
  readonly unlocked?: boolean;
}

export const EDGE = 'D8D2C4';

/** Every office suite has it, or a font of the very same widths. */
export const FONT = 'Arial';
/** In points, of a role that names none. */
export const USUAL_SIZE = 10;
/** The same in a page’s foot, as the code that sets its letters. */
export const FOOT_LETTERS = `&"${FONT},Regular"&8`;

export const LOOKS: Readonly<Record<Role, Look>> = {
  title: { bold: true, size: 16, ink: '5B2A33' },
  heading: { bold: true, ink: 'FFFFFF', fill: '5B2A33', boxed: true, wrapped: true },
  input: { ink: '1F3A93', fill: 'FFF8DC', boxed: true, unlocked: true },
  working: { ink: '5A5A5A', boxed: true },
  output: { bold: true, boxed: true },
  check: { italic: true, ink: '8A4B08', boxed: true },
  note: { italic: true, ink: '5A5A5A' },
  letterhead: { bold: true, size: 15, wrapped: true },
  'paper title': { bold: true, size: 15, wrapped: true },
  section: { bold: true, size: 11, under: 'thin' },
  room: { bold: true, size: 10, wrapped: true },
  label: { size: 9, ink: '404040', wrapped: true },
  words: { size: 10, wrapped: true },
  small: { size: 9, wrapped: true },
  column: { bold: true, size: 9, over: 'thin', under: 'medium', wrapped: true },
  line: { size: 10, over: 'hair', wrapped: true },
  sum: { size: 10, wrapped: true },
  total: { bold: true, size: 11, over: 'thin', under: 'medium' },
  blank: { size: 10, under: 'thin' },
  signature: { size: 9, over: 'thin' },
};

/** The ground of a cell with a finding. */
export const MARKED: Readonly<Record<Mark['weight'], string>> = {
  stop: 'F6C6C6',
  check: 'FCE3B4',
  note: 'D6E6F5',
};
