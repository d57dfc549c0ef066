/** A drawing as shapes of a sheet: DrawingML, black on white, one shape for all marks of one look. */
import { sameSheet } from '../../book/address';
import type { NewDrawing } from '../../book/book';
import { FONT } from '../../book/roles';
import { alikeFill, BLACK, INKS, isPattern, type Ink, type Pattern } from '../../core/drawing/ink';
import type { LaidOut, Look, PaintedWords } from '../../core/drawing/laid-out';
import { escaped } from '../../book/markup';
import { escapedControls } from './xml';

/** Where on its sheet, by row and column from 0 and points from their corner. */
export interface DrawnShapes {
  readonly row: number;
  readonly column: number;
  readonly right: number;
  readonly name: string;
  readonly drawing: LaidOut;
  readonly letters: number;
}

const EMU = 12_700;
const emu = (points: number): number => Math.round(points * EMU);
const text = (raw: string): string => escaped(escapedControls(raw));

const DASHES = { dashed: 'dash', dotted: 'sysDot', 'dash and dot': 'dashDot' } as const;
const PRESETS: Readonly<Record<Pattern, string>> = { rising: 'ltUpDiag', falling: 'ltDnDiag', dots: 'pct10' };

const solid = (ink: string): string => `<a:solidFill><a:srgbClr val="${ink}"/></a:solidFill>`;

function fillXml(fill: string | undefined): string {
  if (fill === undefined || fill === '') return '<a:noFill/>';
  if (!isPattern(fill)) return solid(fill);
  return `<a:pattFill prst="${PRESETS[fill]}"><a:fgClr><a:srgbClr val="707070"/></a:fgClr><a:bgClr><a:srgbClr val="FFFFFF"/></a:bgClr></a:pattFill>`;
}

const lineXml = ({ line, dash, ink = BLACK }: Ink): string =>
  line === undefined
    ? '<a:ln><a:noFill/></a:ln>'
    : `<a:ln w="${emu(line)}">${solid(ink)}${dash === undefined ? '' : `<a:prstDash val="${DASHES[dash]}"/>`}</a:ln>`;

const point = (x: number, y: number): string => `<a:pt x="${emu(x)}" y="${emu(y)}"/>`;
const move = (x: number, y: number): string => `<a:moveTo>${point(x, y)}</a:moveTo>`;
const to = (x: number, y: number): string => `<a:lnTo>${point(x, y)}</a:lnTo>`;

/** All marks of one look as one path over the whole drawing, in the order they are drawn. */
interface Traced {
  readonly style: Ink;
  path: string;
}

function traced({ boxes, lines, rounds }: LaidOut): readonly Traced[] {
  const found = new Map<string, Traced>();
  const tracedAs = (look: Look, kind: string, alike?: number): Traced => {
    const key = `${look} ${kind} ${alike ?? ''}`;
    const own = INKS[look];
    const fill = alike === undefined ? own.fill : alikeFill(alike);
    // An open line is never filled.
    const style =
      kind === 'line' ? { ...own, line: own.line ?? 0.75, fill: '' } : { ...own, fill: fill ?? '' };
    const trace = found.get(key) ?? { style, path: '' };
    found.set(key, trace);
    return trace;
  };
  for (const { look, x, y, width, height, alike } of boxes)
    tracedAs(look, 'box', alike).path +=
      `${move(x, y)}${to(x + width, y)}${to(x + width, y + height)}${to(x, y + height)}<a:close/>`;
  for (const { look, x, y, radius } of rounds)
    tracedAs(look, 'round').path +=
      `${move(x + radius, y)}<a:arcTo wR="${emu(radius)}" hR="${emu(radius)}" stAng="0" swAng="21600000"/><a:close/>`;
  for (const { look, from, to: end } of lines)
    tracedAs(look, 'line').path += `${move(from[0], from[1])}${to(end[0], end[1])}`;
  return [...found.values()];
}

const named = (id: number, name: string, says?: string): string =>
  `<xdr:cNvPr id="${id}" name="${text(name)}"${says === undefined ? '' : ` descr="${text(says)}"`}/>`;

const frame = (x: number, y: number, wide: number, high: number): string =>
  `<a:xfrm><a:off x="${emu(x)}" y="${emu(y)}"/><a:ext cx="${emu(wide)}" cy="${emu(high)}"/></a:xfrm>`;

const shape = (id: number, { style, path }: Traced, { wide, high }: LaidOut): string =>
  `<xdr:sp macro="" textlink=""><xdr:nvSpPr>${named(id, `marks ${id}`)}<xdr:cNvSpPr/></xdr:nvSpPr><xdr:spPr>${frame(0, 0, wide, high)}` +
  `<a:custGeom><a:avLst/><a:gdLst/><a:ahLst/><a:cxnLst/><a:rect l="0" t="0" r="r" b="b"/><a:pathLst><a:path w="${emu(wide)}" h="${emu(high)}">${path}</a:path></a:pathLst></a:custGeom>` +
  `${fillXml(style.fill)}${lineXml(style)}</xdr:spPr></xdr:sp>`;

const ALIGN = { start: 'l', middle: 'ctr', end: 'r' } as const;

/** A text box about its words: wide enough for any letters, its baseline where it was laid. */
function lettering(id: number, { words, x, y, anchor, turned }: PaintedWords, letters: number): string {
  const long = Math.max(1, [...words].length) * letters * 0.75 + 4;
  const tall = letters * 1.3;
  const back = { start: 0, middle: long / 2, end: long }[anchor];
  const up = letters * 1.02;
  const place =
    turned === true ? frame(x - up, y - long + back, tall, long) : frame(x - back, y - up, long, tall);
  return (
    `<xdr:sp macro="" textlink=""><xdr:nvSpPr>${named(id, `words ${id}`)}<xdr:cNvSpPr txBox="1"/></xdr:nvSpPr>` +
    `<xdr:spPr>${place}<a:prstGeom prst="rect"><a:avLst/></a:prstGeom><a:noFill/><a:ln><a:noFill/></a:ln></xdr:spPr>` +
    `<xdr:txBody><a:bodyPr wrap="none" lIns="0" tIns="0" rIns="0" bIns="0"${turned === true ? ' vert="vert270"' : ''} anchor="t"/><a:p><a:pPr algn="${ALIGN[anchor]}"/>` +
    `<a:r><a:rPr lang="en-US" sz="${Math.round(letters * 100)}">${solid(BLACK)}<a:latin typeface="${FONT}"/></a:rPr><a:t>${text(words)}</a:t></a:r></a:p></xdr:txBody></xdr:sp>`
  );
}

/** One drawing, as a group anchored at a cell; `id` is the first of its own numbers. */
export function shapesXml({ row, column, right, name, drawing, letters }: DrawnShapes, id: number): string {
  const marks = traced(drawing).map((trace, at) => shape(id + 1 + at, trace, drawing));
  const first = id + 1 + marks.length;
  const words = drawing.words.map((one, at) => lettering(first + at, one, letters));
  const size = `cx="${emu(drawing.wide)}" cy="${emu(drawing.high)}"`;
  return (
    `<xdr:oneCellAnchor><xdr:from><xdr:col>${column}</xdr:col><xdr:colOff>${emu(right)}</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:ext ${size}/>` +
    `<xdr:grpSp><xdr:nvGrpSpPr>${named(id, name, drawing.says)}<xdr:cNvGrpSpPr/></xdr:nvGrpSpPr>` +
    `<xdr:grpSpPr><a:xfrm><a:off x="0" y="0"/><a:ext ${size}/><a:chOff x="0" y="0"/><a:chExt ${size}/></a:xfrm></xdr:grpSpPr>` +
    `${marks.join('')}${words.join('')}</xdr:grpSp><xdr:clientData/></xdr:oneCellAnchor>`
  );
}

/** Numbers that one drawing takes for its shapes. */
export const idsOf = ({ drawing }: DrawnShapes): number => 1 + traced(drawing).length + drawing.words.length;

/** The drawings of one sheet as its file has them. */
export const shapesOn = (sheet: string, drawings: readonly NewDrawing[]): readonly DrawnShapes[] =>
  drawings
    .filter(({ at }) => sameSheet(at.sheet, sheet))
    .map(({ at: { row, column }, ...drawn }) => ({ row, column, right: 2, ...drawn }));
