/** How a role looks in the sheet. In the dark theme the grid turns the colours by itself. */
import { BorderStyleTypes, BooleanNumber, WrapStrategy, type IStyleData } from '@univerjs/core';
import type { Role } from '../book/book';

const line = { s: BorderStyleTypes.THIN, cl: { rgb: '#D8D2C4' } };
const box = { t: line, r: line, b: line, l: line };
const bold = BooleanNumber.TRUE;

export const LOOKS: Readonly<Record<Role, IStyleData>> = {
  title: { bl: bold, fs: 16, cl: { rgb: '#5B2A33' } },
  heading: {
    bl: bold,
    cl: { rgb: '#FFFFFF' },
    bg: { rgb: '#5B2A33' },
    tb: WrapStrategy.WRAP,
    bd: box,
  },
  input: { cl: { rgb: '#1F3A93' }, bg: { rgb: '#FFF8DC' }, bd: box },
  working: { cl: { rgb: '#5A5A5A' }, bd: box },
  output: { bl: bold, bd: box },
  check: { it: BooleanNumber.TRUE, cl: { rgb: '#8A4B08' }, bd: box },
  note: { it: BooleanNumber.TRUE, cl: { rgb: '#5A5A5A' } },
};

/** A finding's cell. */
export const MARKED = { stop: '#F6C6C6', check: '#FCE3B4', note: '#D6E6F5' } as const;
