/** A role's look put on cells of Excel. */
import type { Role } from '../book/book';
import { EDGE, LOOKS } from '../book/roles';

const EDGES = ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight'] as const;

const WEIGHTS = { hair: 'Hairline', thin: 'Thin', medium: 'Medium' } as const;

/** Puts a role's look on; `rows` and `columns` say which inner lines there are. */
export function dressUp(range: Pick<Excel.Range, 'format'>, role: Role, rows: number, columns: number): void {
  const look = LOOKS[role];
  const { format } = range;
  if (look.bold !== undefined) format.font.bold = look.bold;
  if (look.italic !== undefined) format.font.italic = look.italic;
  if (look.size !== undefined) format.font.size = look.size;
  if (look.ink !== undefined) format.font.color = `#${look.ink}`;
  if (look.fill !== undefined) format.fill.color = `#${look.fill}`;
  if (look.wrapped === true) {
    format.wrapText = true;
    format.verticalAlignment = 'Top';
  }
  if (look.unlocked === true) format.protection.locked = false;
  for (const [side, weight] of [
    ['EdgeTop', look.over],
    ['EdgeBottom', look.under],
  ] as const) {
    if (weight === undefined) continue;
    const border = format.borders.getItem(side);
    border.style = 'Continuous';
    border.weight = WEIGHTS[weight];
    border.color = '#000000';
  }
  if (look.boxed !== true) return;
  const inner = [
    ...(rows > 1 ? (['InsideHorizontal'] as const) : []),
    ...(columns > 1 ? (['InsideVertical'] as const) : []),
  ];
  for (const side of [...EDGES, ...inner]) {
    const border = format.borders.getItem(side);
    border.style = 'Continuous';
    border.color = `#${EDGE}`;
  }
}
