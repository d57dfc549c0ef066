/** A drawing as a picture, painted on the page: black on white, fine enough for print. */
import { FONT } from '../book/roles';
import { alikeFill, BLACK, INKS, isPattern, type Ink, type Pattern } from '../core/drawing/ink';
import type { LaidOut, PaintedWords } from '../core/drawing/laid-out';

/** Of the picture to a point: 216 to the inch. */
const SCALE = 3;
const TILE = 8;
const DASHES = { dashed: [4, 3], dotted: [1, 1.5], 'dash and dot': [4, 2, 1, 2] } as const;
const GREY = '#707070';

function stroked(brush: CanvasRenderingContext2D, ...points: readonly (readonly [number, number])[]): void {
  brush.beginPath();
  points.forEach(([x, y], at) => {
    if (at === 0) brush.moveTo(x, y);
    else brush.lineTo(x, y);
  });
  brush.stroke();
}

const TILES: Readonly<Record<Pattern, (brush: CanvasRenderingContext2D) => void>> = {
  rising: (brush) => {
    stroked(brush, [0, TILE], [TILE, 0]);
  },
  falling: (brush) => {
    stroked(brush, [0, 0], [TILE, TILE]);
  },
  dots: (brush) => {
    brush.fillStyle = GREY;
    brush.fillRect(1, 1, 1.2, 1.2);
    brush.fillRect(5, 5, 1.2, 1.2);
  },
};

function tile(pattern: Pattern, brush: CanvasRenderingContext2D): CanvasPattern | string {
  const one = document.createElement('canvas');
  one.width = one.height = TILE;
  const inside = one.getContext('2d');
  if (inside === null) return GREY;
  inside.strokeStyle = GREY;
  inside.lineWidth = 0.6;
  TILES[pattern](inside);
  return brush.createPattern(one, 'repeat') ?? GREY;
}

/** Fills and outlines what `path` traces. */
function paint(brush: CanvasRenderingContext2D, ink: Ink, path: () => void): void {
  const { fill, line, dash } = ink;
  brush.beginPath();
  path();
  if (fill !== undefined) {
    brush.fillStyle = isPattern(fill) ? tile(fill, brush) : `#${fill}`;
    brush.fill();
  }
  if (line === undefined) return;
  brush.strokeStyle = `#${ink.ink ?? BLACK}`;
  brush.lineWidth = line;
  brush.setLineDash(dash === undefined ? [] : [...DASHES[dash]]);
  brush.stroke();
}

function letter(brush: CanvasRenderingContext2D, { words, x, y, anchor, turned }: PaintedWords): void {
  brush.save();
  brush.translate(x, y);
  if (turned === true) brush.rotate(-Math.PI / 2);
  brush.textAlign = ({ start: 'left', middle: 'center', end: 'right' } as const)[anchor];
  brush.fillText(words, 0, 0);
  brush.restore();
}

/** As PNG in Base64; undefined where the page can paint none. */
export function pictureOf(
  { wide, high, boxes, lines, rounds, words }: LaidOut,
  letters: number,
): string | undefined {
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(wide * SCALE);
  canvas.height = Math.ceil(high * SCALE);
  const brush = canvas.getContext('2d');
  if (brush === null) return undefined;
  brush.scale(SCALE, SCALE);
  brush.fillStyle = '#FFFFFF';
  brush.fillRect(0, 0, wide, high);
  for (const { look, x, y, width, height, alike } of boxes) {
    const ink = alike === undefined ? INKS[look] : { ...INKS[look], fill: alikeFill(alike) };
    paint(brush, ink, () => {
      brush.rect(x, y, width, height);
    });
  }
  for (const { look, from, to } of lines) {
    const { fill: _open, ...ink } = INKS[look];
    paint(brush, { ...ink, line: ink.line ?? 0.75 }, () => {
      brush.moveTo(...from);
      brush.lineTo(...to);
    });
  }
  for (const { look, x, y, radius } of rounds)
    paint(brush, INKS[look], () => {
      brush.arc(x, y, radius, 0, 2 * Math.PI);
    });
  brush.setLineDash([]);
  brush.fillStyle = `#${BLACK}`;
  brush.font = `${letters}px ${FONT}, 'Liberation Sans', sans-serif`;
  for (const one of words) letter(brush, one);
  return canvas.toDataURL('image/png').replace(/^[^,]*,/, '');
}
