/**
 * A drawing laid out on paper: every mark in points, y down from the top, with the words where they go.
 * A page and a sheet paint what stands here, each in its own way.
 */
import { UNITS, type Length } from '../exact/length';
import { showLength, tape, type Unit } from '../exact/unit';
import { wayOf, type Box, type Dimension, type Drawing, type Label, type Part, type Way } from './drawing';
import { widthOf } from './letters';

/** What a mark is of, a dimension's line among them. */
export type Look = Part | 'dimension';

export interface PaintedBox {
  readonly look: Look;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly alike?: number;
  readonly says?: string;
}
export interface PaintedLine {
  readonly look: Look;
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
}
export interface PaintedRound {
  readonly look: Look;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}
export interface PaintedWords {
  readonly words: string;
  /** Of its baseline: where it begins, its middle or its end. */
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Read from below upwards. */
  readonly turned?: true;
  /** What the figure is of. */
  readonly says?: string;
}
export interface LaidOut {
  readonly wide: number;
  readonly high: number;
  readonly boxes: readonly PaintedBox[];
  readonly lines: readonly PaintedLine[];
  readonly rounds: readonly PaintedRound[];
  readonly words: readonly PaintedWords[];
  /** The whole in words, for whoever cannot see it. */
  readonly says: string;
}

export interface Paper {
  readonly wide: number;
  readonly high: number;
  /** Of the letters, in points. */
  readonly letters: number;
}

/** As far as a drawing is read: a sixteenth of an inch, or a millimetre; marked where that is not the figure itself. */
export function drawnFigure(length: Length, unit: Unit): string {
  const exact = showLength(length, unit);
  if (exact.length <= 10 && !(unit.small === 'in' ? /\./ : /\.\d{2}/).test(exact)) return exact;
  return unit.small === 'in'
    ? `≈ ${tape(length, 16)} in`
    : `≈ ${showLength((Math.round(length / UNITS.mm) * UNITS.mm) as Length, unit)}`;
}

interface Edges {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Room for a row of dimensions and for an upright figure, to a letter's size. */
const ROW = 2;
const BESIDE = { turned: 4.6, level: 9.4 };
const rowsOn = (drawing: Drawing, side: Dimension['side']): number =>
  Math.max(0, ...drawing.dimensions.filter((one) => one.side === side).map(({ row }) => row));
const labelRows = ({ labels }: Drawing, sign: number): number =>
  Math.max(0, ...labels.map(({ below }) => below * sign));

/** What dimensions and labels take of the paper beyond the drawing itself. */
function edgesOf(drawing: Drawing, letters: number): Edges {
  const beyond = (side: 'above' | 'below', sign: number): number =>
    letters *
    Math.max(
      rowsOn(drawing, side) * ROW + (rowsOn(drawing, side) > 0 ? 1 : 0),
      labelRows(drawing, sign) * 1.2 + (labelRows(drawing, sign) > 0 ? 0.4 : 0),
    );
  const least = drawing.flattened === true ? 0 : letters * 0.6;
  const clear = drawing.labels.filter((one) => one.clear !== undefined);
  const level = letters * Math.max(0, ...clear.map(({ words }) => widthOf(words) + CLEAR));
  const high = clear.length === 0 ? 0 : letters * 1.8;
  return {
    left: rowsOn(drawing, 'left') > 0 ? letters * BESIDE.turned : Math.max(least, level),
    right: rowsOn(drawing, 'right') > 0 ? letters * BESIDE.level : Math.max(least, level),
    top: Math.max(least, high, beyond('above', -1)),
    bottom: Math.max(least, high, beyond('below', 1)),
  };
}

/** What stays free between words and what they stand beside, to a letter's size. */
const CLEAR = 0.4;
/** Of a figure. */
const HALF_HIGH = 0.36;
/** Between lines that nearly meet, words go no further than this asks. */
const NARROWEST = 0.2;

class Layout {
  readonly lines: PaintedLine[] = [];
  readonly words: PaintedWords[] = [];
  private readonly edges: Edges;
  private readonly scale: number;
  private readonly scaleUp: number;
  readonly wide: number;
  readonly high: number;

  constructor(
    private readonly drawing: Drawing,
    private readonly paper: Paper,
    private readonly unit: Unit,
  ) {
    this.edges = edgesOf(drawing, paper.letters);
    const { left, right, top, bottom } = this.edges;
    const [roomAcross, roomUp] = [paper.wide - left - right, paper.high - top - bottom];
    const [long, tall] = [drawing.right - drawing.left, Math.max(1, drawing.top - drawing.bottom)];
    this.scale = drawing.flattened === true ? roomAcross / long : Math.min(roomAcross / long, roomUp / tall);
    this.scaleUp = drawing.flattened === true ? roomUp / tall : this.scale;
    this.wide = long * this.scale + left + right;
    this.high = tall * this.scaleUp + top + bottom;
  }

  readonly x = (nm: number): number => this.edges.left + (nm - this.drawing.left) * this.scale;
  readonly y = (nm: number): number => this.edges.top + (this.drawing.top - nm) * this.scaleUp;
  readonly size = (nm: number): number => nm * this.scale;

  box({ part, x, y, width, height, alike, says }: Box): PaintedBox {
    return {
      look: part,
      x: this.x(x),
      y: this.y(y + height),
      width: Math.max(part === 'flaw' ? 1.5 : 0, width * this.scale),
      height: Math.max(1, height * this.scaleUp),
      ...(alike !== undefined && { alike }),
      ...(says !== undefined && { says }),
    };
  }

  /** Written in a box where there is room. */
  wordsIn({ words = '', x, y, width, height }: Box): void {
    const { letters } = this.paper;
    if (words === '' || (widthOf(words) + CLEAR) * letters > width * this.scale) return;
    this.words.push({
      words,
      x: this.x(x + width / 2),
      y: this.y(y + height / 2) + letters * 0.35,
      anchor: 'middle',
    });
  }

  /** Words, moved as far as keeps them on the paper. */
  private write(painted: PaintedWords): void {
    const long = widthOf(painted.words) * this.paper.letters;
    const before = { start: 0, middle: long / 2, end: long }[painted.anchor];
    const most = Math.max(this.wide, long) - long + before;
    this.words.push(
      painted.turned === true ? painted : { ...painted, x: Math.min(most, Math.max(before, painted.x)) },
    );
  }

  /** How far words go from where lines end, so that no corner of theirs touches one. */
  private toClear(words: string, ways: readonly Way[]): Way {
    const { letters } = this.paper;
    const [right, up] = wayOf(...ways);
    const needs = ways.map(([x, y]) => {
      const beside = (Math.abs(x) * widthOf(words)) / 2 + Math.abs(y) * HALF_HIGH + CLEAR;
      return beside / Math.max(NARROWEST, x * right + y * up);
    });
    const far = Math.max(...needs) * letters;
    return [right * far, up * far];
  }

  label({ words, at, below, clear }: Label): void {
    const { letters } = this.paper;
    const [x, y] = [this.x(at[0]), this.y(at[1])];
    if (clear !== undefined) {
      const [right, up] = this.toClear(words, clear);
      this.write({ words, x: x + right, y: y - up + HALF_HIGH * letters, anchor: 'middle' });
      return;
    }
    const down = below === 0 ? 0.35 : below > 0 ? below * 1.2 : below * 1.2 + 0.8;
    this.write({ words, x, y: y + letters * down, anchor: 'middle' });
  }

  dimension(dimension: Dimension): void {
    if (dimension.runs === 'across') this.across(dimension);
    else this.up(dimension);
  }

  private stroke(...points: readonly (readonly [number, number])[]): void {
    points.slice(1).forEach((to, at) => {
      this.lines.push({ look: 'dimension', from: points[at] ?? to, to });
    });
  }

  /** The figure with what it is, where there is room for both. */
  private text(dimension: Dimension, room: number): string {
    const figure = drawnFigure(dimension.length, this.unit);
    const named = `${dimension.short ?? dimension.what} ${figure}`.trim();
    return widthOf(named) * this.paper.letters <= room ? named : figure;
  }

  private across(dimension: Dimension): void {
    const { letters } = this.paper;
    const base = this.y(dimension.at);
    const down = dimension.side === 'below' ? 1 : -1;
    const line = base + down * letters * (0.4 + (dimension.row - 0.45) * ROW);
    const [from, to] = [this.x(dimension.from), this.x(dimension.to)];
    const tick = line + down * letters * 0.3;
    this.stroke([from, base], [from, tick]);
    this.stroke([to, base], [to, tick]);
    this.stroke([from, line], [to, line]);
    const gap = letters * CLEAR;
    // Above the plan nothing stands beside; of a narrow one below, the figure stands outside.
    const words = this.text(dimension, dimension.side === 'above' ? Infinity : to - from - gap);
    const fits = widthOf(words) * letters <= to - from - gap;
    const [x, anchor] =
      fits || dimension.narrow === 'middle'
        ? [(from + to) / 2, 'middle' as const]
        : dimension.narrow === 'before'
          ? [from + (dimension.side === 'above' ? to - from : -3), 'end' as const]
          : dimension.narrow === 'after' && dimension.side === 'below'
            ? [to + 3, 'start' as const]
            : [from + (dimension.side === 'above' ? 0 : 2), 'start' as const];
    this.write({ words, x, y: line + letters * (down > 0 ? 1.1 : -0.4), anchor, says: dimension.what });
  }

  private up(dimension: Dimension): void {
    const { letters } = this.paper;
    const base = this.x(dimension.at);
    const out = dimension.side === 'left' ? -1 : 1;
    const line = base + out * letters * (0.8 + (dimension.row - 0.5) * ROW);
    const [from, to] = [this.y(dimension.from), this.y(dimension.to)];
    this.stroke([base, from], [line + out * letters * 0.3, from]);
    this.stroke([base, to], [line + out * letters * 0.3, to]);
    this.stroke([line, from], [line, to]);
    const middle = (from + to) / 2;
    const figure = drawnFigure(dimension.length, this.unit);
    if (from - to < widthOf(figure) * letters)
      this.write({
        words: this.text(dimension, out < 0 ? 0 : this.edges.right - letters * 1.2),
        x: line + out * letters * 0.5,
        y: middle + letters * 0.3,
        anchor: out < 0 ? 'end' : 'start',
        says: dimension.what,
      });
    else
      this.write({
        words: this.text(dimension, from - to),
        x: line + letters * (out < 0 ? -0.4 : 1.1),
        y: middle,
        anchor: 'middle',
        turned: true,
        says: dimension.what,
      });
  }
}

/** Its figures and labels after its title. */
function inWords(drawing: Drawing, unit: Unit): string {
  const figures = [
    ...drawing.dimensions.map((one) => `${one.what} ${showLength(one.length, unit)}`),
    ...drawing.labels.flatMap(({ words, silent }) => (silent === true ? [] : [words])),
  ];
  return figures.length === 0 ? `${drawing.title}.` : `${drawing.title}: ${figures.join(', ')}.`;
}

export function laidOut(drawing: Drawing, paper: Paper, unit: Unit): LaidOut {
  const layout = new Layout(drawing, paper, unit);
  const { x, y, size } = layout;
  const boxes = drawing.boxes.map((box) => layout.box(box));
  for (const box of drawing.boxes) layout.wordsIn(box);
  for (const one of drawing.labels) layout.label(one);
  for (const one of drawing.dimensions) layout.dimension(one);
  const drawn = drawing.lines.map(({ part, from, to }): PaintedLine => ({
    look: part,
    from: [x(from[0]), y(from[1])],
    to: [x(to[0]), y(to[1])],
  }));
  return {
    wide: layout.wide,
    high: layout.high,
    boxes,
    lines: [...drawn, ...layout.lines],
    rounds: drawing.rounds.map(({ part, at, radius }) => ({
      look: part,
      x: x(at[0]),
      y: y(at[1]),
      radius: size(radius),
    })),
    words: layout.words,
    says: inWords(drawing, unit),
  };
}
