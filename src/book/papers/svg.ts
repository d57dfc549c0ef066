/** A drawing as the text of an SVG picture: black on white, with its words and its text alternative. */
import { alikeFill, BLACK, INKS, isPattern, PATTERNS, type Ink } from '../../core/drawing/ink';
import type { LaidOut, PaintedWords } from '../../core/drawing/laid-out';
import { escaped } from '../markup';
import { FONT } from '../roles';

const DASHES = { dashed: '4 3', dotted: '1 1.5', 'dash and dot': '4 2 1 2' } as const;

/** Eight points square; drawn into the picture only where something is filled with it. */
const TILES = {
  rising: '<path d="M-1 1l2-2M0 8l8-8M7 9l2-2" stroke="#707070" stroke-width="0.6"/>',
  falling: '<path d="M-1 7l2 2M0 0l8 8M7-1l2 2" stroke="#707070" stroke-width="0.6"/>',
  dots: '<circle cx="2" cy="2" r="0.6" fill="#707070"/><circle cx="6" cy="6" r="0.6" fill="#707070"/>',
} as const;

const place = (figure: number): string => String(Math.round(figure * 100) / 100);

const filled = (fill: string | undefined): string =>
  fill === undefined ? 'none' : isPattern(fill) ? `url(#${fill})` : `#${fill}`;

const painted = ({ line, dash, ink = BLACK, fill }: Ink): string =>
  ` fill="${filled(fill)}"` +
  (line === undefined
    ? ''
    : ` stroke="#${ink}" stroke-width="${line}"${dash === undefined ? '' : ` stroke-dasharray="${DASHES[dash]}"`}`);

function lettering({ words, x, y, anchor, turned }: PaintedWords): string {
  const at =
    turned === true
      ? ` transform="translate(${place(x)} ${place(y)}) rotate(-90)"`
      : ` x="${place(x)}" y="${place(y)}"`;
  return `<text${at} text-anchor="${anchor}">${escaped(words)}</text>`;
}

export function svgOf({ wide, high, boxes, lines, rounds, words, says }: LaidOut, letters: number): string {
  const used = new Set(
    boxes.flatMap(({ look, alike }) => (alike === undefined ? (INKS[look].fill ?? []) : [])),
  );
  const tiles = PATTERNS.filter((one) => used.has(one)).map(
    (one) =>
      `<pattern id="${one}" width="8" height="8" patternUnits="userSpaceOnUse">${TILES[one]}</pattern>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${place(wide)}pt" height="${place(high)}pt" viewBox="0 0 ${place(wide)} ${place(high)}" role="img">`,
    `<title>${escaped(says)}</title>`,
    ...(tiles.length === 0 ? [] : [`<defs>${tiles.join('')}</defs>`]),
    ...boxes.map(
      ({ look, x, y, width, height, alike }) =>
        `<rect x="${place(x)}" y="${place(y)}" width="${place(width)}" height="${place(height)}"${painted(alike === undefined ? INKS[look] : { ...INKS[look], fill: alikeFill(alike) })}/>`,
    ),
    ...lines.map(
      ({ look, from, to }) =>
        `<line x1="${place(from[0])}" y1="${place(from[1])}" x2="${place(to[0])}" y2="${place(to[1])}"${painted({ ...INKS[look], line: INKS[look].line ?? 0.75 })}/>`,
    ),
    ...rounds.map(
      ({ look, x, y, radius }) =>
        `<circle cx="${place(x)}" cy="${place(y)}" r="${place(radius)}"${painted(INKS[look])}/>`,
    ),
    `<g font-family="${FONT}, 'Liberation Sans', sans-serif" font-size="${letters}" fill="#${BLACK}">${words.map(lettering).join('')}</g>`,
    '</svg>',
  ].join('');
}
