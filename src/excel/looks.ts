/** How a role looks in Excel, and what marks a finding. */
import type { Mark, Role } from '../book/book';

interface Look {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly size?: number;
  readonly ink?: string;
  readonly fill?: string;
  readonly boxed?: boolean;
  readonly wrapped?: boolean;
  /** Stays open for typing when she protects the sheet. */
  readonly unlocked?: boolean;
}

const LINE = '#D8D2C4';

const LOOKS: Readonly<Record<Role, Look>> = {
  title: { bold: true, size: 16, ink: '#5B2A33' },
  heading: { bold: true, ink: '#FFFFFF', fill: '#5B2A33', boxed: true, wrapped: true },
  input: { ink: '#1F3A93', fill: '#FFF8DC', boxed: true, unlocked: true },
  working: { ink: '#5A5A5A', boxed: true },
  output: { bold: true, boxed: true },
  check: { italic: true, ink: '#8A4B08', boxed: true },
  note: { italic: true, ink: '#5A5A5A' },
};

export const MARK_FILL: Readonly<Record<Mark['weight'], string>> = {
  stop: '#F6C6C6',
  check: '#FCE3B4',
  note: '#D6E6F5',
};

const EDGES = ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight'] as const;

/** Puts a role's look on; `rows` and `columns` say which inner lines there are. */
export function dressUp(range: Excel.Range, role: Role, rows: number, columns: number): void {
  const look = LOOKS[role];
  const { format } = range;
  if (look.bold !== undefined) format.font.bold = look.bold;
  if (look.italic !== undefined) format.font.italic = look.italic;
  if (look.size !== undefined) format.font.size = look.size;
  if (look.ink !== undefined) format.font.color = look.ink;
  if (look.fill !== undefined) format.fill.color = look.fill;
  if (look.wrapped === true) format.wrapText = true;
  if (look.unlocked === true) format.protection.locked = false;
  if (look.boxed !== true) return;
  const inner = [
    ...(rows > 1 ? (['InsideHorizontal'] as const) : []),
    ...(columns > 1 ? (['InsideVertical'] as const) : []),
  ];
  for (const side of [...EDGES, ...inner]) {
    const border = format.borders.getItem(side);
    border.style = 'Continuous';
    border.color = LINE;
  }
}

/** Column width in points from characters of the usual font: seven pixels each and five beside, 96 to the inch. */
export const pointsOf = (characters: number): number => (characters * 7 + 5) * 0.75;
