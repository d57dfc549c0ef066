/**
 * A drawing laid out on paper: every mark in points, y down from the top, with the words where they go.
 * A page and a sheet paint what stands here, each in its own way.
 */
import { UNITS, type Length } from '../exact/length';
import { showLength, tape, type Unit } from '../exact/unit';
import type { Box, Dimension, Drawing, Part } from './drawing';

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
export function drawnFigure(of: Length, unit: Unit): string {
  const exact = showLength(of, unit);
  if (exact.length <= 10 && !/\.\d{2}/.test(exact)) return exact;
  return unit.small === 'in'
    ? `≈ ${tape(of, 16)} in`
    : `≈ ${showLength((Math.round(of / UNITS.mm) * UNITS.mm) as Length, unit)}`;
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
const rowsOn = (of: Drawing, side: Dimension['side']): number =>
  Math.max(0, ...of.dimensions.filter((one) => one.side === side).map(({ row }) => row));
const labelRows = ({ labels }: Drawing, sign: number): number =>
  Math.max(0, ...labels.map(({ below }) => below * sign));

/** What dimensions and labels take of the paper beyond the drawing itself. */
function edgesOf(of: Drawing, letters: number): Edges {
  const beyond = (side: 'above' | 'below', sign: number): number =>
    letters *
    Math.max(
      rowsOn(of, side) * ROW + (rowsOn(of, side) > 0 ? 1 : 0),
      labelRows(of, sign) * 1.2 + (labelRows(of, sign) > 0 ? 0.4 : 0),
    );
  const least = of.flattened === true ? 0 : letters * 0.6;
  return {
    left: rowsOn(of, 'left') > 0 ? letters * BESIDE.turned : least,
    right: rowsOn(of, 'right') > 0 ? letters * BESIDE.level : least,
    top: Math.max(least, beyond('above', -1)),
    bottom: Math.max(least, beyond('below', 1)),
  };
}

/** A letter of the figures, as far as room is reckoned, to its size. */
const LETTER = 0.5;

class Layout {
  readonly lines: PaintedLine[] = [];
  readonly words: PaintedWords[] = [];
  private readonly edges: Edges;
  private readonly scale: number;
  private readonly scaleUp: number;
  readonly wide: number;
  readonly high: number;

  constructor(
    private readonly of: Drawing,
    private readonly paper: Paper,
    private readonly unit: Unit,
  ) {
    this.edges = edgesOf(of, paper.letters);
    const { left, right, top, bottom } = this.edges;
    const [roomAcross, roomUp] = [paper.wide - left - right, paper.high - top - bottom];
    const [long, tall] = [of.right - of.left, Math.max(1, of.top - of.bottom)];
    this.scale = of.flattened === true ? roomAcross / long : Math.min(roomAcross / long, roomUp / tall);
    this.scaleUp = of.flattened === true ? roomUp / tall : this.scale;
    this.wide = long * this.scale + left + right;
    this.high = tall * this.scaleUp + top + bottom;
  }

  readonly x = (nm: number): number => this.edges.left + (nm - this.of.left) * this.scale;
  readonly y = (nm: number): number => this.edges.top + (this.of.top - nm) * this.scaleUp;
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
    if (words === '' || words.length * letters * LETTER >= width * this.scale) return;
    this.words.push({
      words,
      x: this.x(x + width / 2),
      y: this.y(y + height / 2) + letters * 0.35,
      anchor: 'middle',
    });
  }

  /** Words, moved as far as keeps them on the paper. */
  private write(of: PaintedWords): void {
    const long = of.words.length * this.paper.letters * LETTER;
    const before = { start: 0, middle: long / 2, end: long }[of.anchor];
    const most = Math.max(this.wide, long) - long + before;
    this.words.push(of.turned === true ? of : { ...of, x: Math.min(most, Math.max(before, of.x)) });
  }

  label(words: string, x: number, y: number, below: number): void {
    const { letters } = this.paper;
    const down = below === 0 ? 0.35 : below > 0 ? below * 1.2 : below * 1.2 + 0.8;
    this.write({ words, x: this.x(x), y: this.y(y) + letters * down, anchor: 'middle' });
  }

  dimension(of: Dimension): void {
    if (of.runs === 'across') this.across(of);
    else this.up(of);
  }

  private stroke(...points: readonly (readonly [number, number])[]): void {
    points.slice(1).forEach((to, at) => {
      this.lines.push({ look: 'dimension', from: points[at] ?? to, to });
    });
  }

  /** The figure with what it is, where there is room for both. */
  private text(of: Dimension, room: number): string {
    const figure = drawnFigure(of.of, this.unit);
    const named = `${of.short ?? of.what} ${figure}`.trim();
    return named.length * this.paper.letters * LETTER <= room ? named : figure;
  }

  private across(of: Dimension): void {
    const { letters } = this.paper;
    const base = this.y(of.at);
    const down = of.side === 'below' ? 1 : -1;
    const line = base + down * letters * (0.4 + (of.row - 0.45) * ROW);
    const [from, to] = [this.x(of.from), this.x(of.to)];
    const tick = line + down * letters * 0.3;
    this.stroke([from, base], [from, tick]);
    this.stroke([to, base], [to, tick]);
    this.stroke([from, line], [to, line]);
    const gap = letters * 0.4;
    // Above the plan nothing stands beside; of a narrow one below, the figure stands outside.
    const words = this.text(of, of.side === 'above' ? Infinity : to - from - gap);
    const fits = words.length * letters * LETTER <= to - from - gap;
    const [x, anchor] =
      fits || of.narrow === 'middle'
        ? [(from + to) / 2, 'middle' as const]
        : of.narrow === 'before'
          ? [from + (of.side === 'above' ? to - from : -3), 'end' as const]
          : of.narrow === 'after' && of.side === 'below'
            ? [to + 3, 'start' as const]
            : [from + (of.side === 'above' ? 0 : 2), 'start' as const];
    this.write({ words, x, y: line + letters * (down > 0 ? 1.1 : -0.4), anchor, says: of.what });
  }

  private up(of: Dimension): void {
    const { letters } = this.paper;
    const base = this.x(of.at);
    const out = of.side === 'left' ? -1 : 1;
    const line = base + out * letters * (0.8 + (of.row - 0.5) * ROW);
    const [from, to] = [this.y(of.from), this.y(of.to)];
    this.stroke([base, from], [line + out * letters * 0.3, from]);
    this.stroke([base, to], [line + out * letters * 0.3, to]);
    this.stroke([line, from], [line, to]);
    const middle = (from + to) / 2;
    const figure = drawnFigure(of.of, this.unit);
    if (from - to < figure.length * letters * LETTER)
      this.write({
        words: this.text(of, out < 0 ? 0 : this.edges.right - letters * 1.2),
        x: line + out * letters * 0.5,
        y: middle + letters * 0.3,
        anchor: out < 0 ? 'end' : 'start',
        says: of.what,
      });
    else
      this.write({
        words: this.text(of, from - to),
        x: line + letters * (out < 0 ? -0.4 : 1.1),
        y: middle,
        anchor: 'middle',
        turned: true,
        says: of.what,
      });
  }
}

/** Its figures and labels after its title. */
function inWords(of: Drawing, unit: Unit): string {
  const figures = [
    ...of.dimensions.map((one) => `${one.what} ${showLength(one.of, unit)}`),
    ...of.labels.map(({ words }) => words),
  ];
  return figures.length === 0 ? `${of.title}.` : `${of.title}: ${figures.join(', ')}.`;
}

export function laidOut(of: Drawing, paper: Paper, unit: Unit): LaidOut {
  const layout = new Layout(of, paper, unit);
  const { x, y, size } = layout;
  const boxes = of.boxes.map((box) => layout.box(box));
  for (const box of of.boxes) layout.wordsIn(box);
  for (const { words, at, below } of of.labels) layout.label(words, at[0], at[1], below);
  for (const one of of.dimensions) layout.dimension(one);
  const drawn = of.lines.map(({ part, from, to }): PaintedLine => ({
    look: part,
    from: [x(from[0]), y(from[1])],
    to: [x(to[0]), y(to[1])],
  }));
  return {
    wide: layout.wide,
    high: layout.high,
    boxes,
    lines: [...drawn, ...layout.lines],
    rounds: of.rounds.map(({ part, at, radius }) => ({
      look: part,
      x: x(at[0]),
      y: y(at[1]),
      radius: size(radius),
    })),
    words: layout.words,
    says: inWords(of, unit),
  };
}
