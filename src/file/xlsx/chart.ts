/** Charts as the parts of an .xlsx: DrawingML, with the figures kept beside the ranges they stand for. */
import { areaAt, areaText, type Area } from '../../book/address';
import type { CellValue, NewChart } from '../../book/book';
import type { Parts } from './archive';
import { freshPart, HEAD, OFFICE, relationships, TYPES } from './package-part';
import { idsOf, shapesXml, type DrawnShapes } from './shapes';
import { bytesOfText } from './text';
import { partText, relationshipsPart } from './workbook';
import { escaped } from '../../book/markup';
import { beforeEnd, escapedControls, tagsNamed } from './xml';

const CHART = 'http://schemas.openxmlformats.org/drawingml/2006/chart';
const DRAWING = 'http://schemas.openxmlformats.org/drawingml/2006/main';
const PLACED = 'http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing';

/** A chart with what its block holds: labels in the first column, names of the series in the first row. */
export interface DrawnChart extends NewChart {
  readonly cells: readonly (readonly CellValue[])[];
}

const INK = '404040';
const COLOURS = ['2F6F8F', 'B5762A', '5B7F3A', '7A4E8A'];
const text = (raw: CellValue): string => escaped(escapedControls(String(raw ?? '')));

const reference = (area: Area): string => escaped(areaText(area, true));
const points = (values: readonly CellValue[]): string =>
  `<c:ptCount val="${values.length}"/>` +
  values
    .map((value, at) => (value === null ? '' : `<c:pt idx="${at}"><c:v>${text(value)}</c:v></c:pt>`))
    .join('');
const words = (area: Area, values: readonly CellValue[]): string =>
  `<c:strRef><c:f>${reference(area)}</c:f><c:strCache>${points(values)}</c:strCache></c:strRef>`;
const figures = (area: Area, values: readonly CellValue[]): string =>
  `<c:numRef><c:f>${reference(area)}</c:f><c:numCache><c:formatCode>General</c:formatCode>${points(values)}</c:numCache></c:numRef>`;

const fill = (colour: string): string => `<a:solidFill><a:srgbClr val="${colour}"/></a:solidFill>`;
const letteringOf = (size: number, bold = false): string =>
  `<a:defRPr sz="${size}" b="${bold ? 1 : 0}">${fill(INK)}</a:defRPr>`;
const lettering = (size: number): string =>
  `<c:txPr><a:bodyPr/><a:p><a:pPr>${letteringOf(size)}</a:pPr><a:endParaRPr/></a:p></c:txPr>`;

function series({ kind, block, cells }: DrawnChart, at: number): string {
  const { sheet, row, column, rows } = block;
  const [first, ...rest] = cells;
  const colour = COLOURS[(at - 1) % COLOURS.length] ?? INK;
  const line = `<a:ln w="28575">${fill(colour)}</a:ln>`;
  const look = kind === 'line' ? line : fill(colour);
  const below = (offset: number): Area => areaAt(sheet, row + 1, column + offset, rows - 1);
  return (
    `<c:ser><c:idx val="${at - 1}"/><c:order val="${at - 1}"/>` +
    `<c:tx>${words(areaAt(sheet, row, column + at), [first?.[at] ?? null])}</c:tx><c:spPr>${look}</c:spPr>` +
    (kind === 'line' ? '<c:marker><c:symbol val="none"/></c:marker>' : '<c:invertIfNegative val="0"/>') +
    `<c:dLbls>${lettering(900)}<c:showLegendKey val="0"/><c:showVal val="${kind === 'line' ? 0 : 1}"/><c:showCatName val="0"/><c:showSerName val="0"/><c:showPercent val="0"/><c:showBubbleSize val="0"/></c:dLbls>` +
    `<c:cat>${words(
      below(0),
      rest.map((cells) => cells[0] ?? null),
    )}</c:cat>` +
    `<c:val>${figures(
      below(at),
      rest.map((cells) => cells[at] ?? null),
    )}</c:val>` +
    (kind === 'line' ? '<c:smooth val="0"/>' : '') +
    '</c:ser>'
  );
}

function chartXml(drawnChart: DrawnChart): string {
  const { kind, title, block } = drawnChart;
  const count = block.columns - 1;
  const all = Array.from({ length: count }, (_, at) => series(drawnChart, at + 1)).join('');
  const plot =
    kind === 'line'
      ? `<c:lineChart><c:grouping val="standard"/><c:varyColors val="0"/>${all}<c:axId val="1"/><c:axId val="2"/></c:lineChart>`
      : `<c:barChart><c:barDir val="${kind === 'bar' ? 'bar' : 'col'}"/><c:grouping val="clustered"/><c:varyColors val="0"/>${all}<c:gapWidth val="45"/><c:axId val="1"/><c:axId val="2"/></c:barChart>`;
  // Bars are read from the top, as their rows are; the figures stand at their ends, so their axis is left out.
  const [labels, values] = kind === 'bar' ? ['l', 'b'] : ['b', 'l'];
  const bare = `<c:spPr><a:ln w="9525">${fill('BFBFBF')}</a:ln></c:spPr>`;
  return (
    `${HEAD}<c:chartSpace xmlns:c="${CHART}" xmlns:a="${DRAWING}" xmlns:r="${OFFICE}"><c:roundedCorners val="0"/><c:chart>` +
    `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:pPr>${letteringOf(1200, true)}</a:pPr><a:r><a:rPr lang="en-US" sz="1200" b="1">${fill(INK)}</a:rPr><a:t>${text(title)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>` +
    `<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/>${plot}` +
    `<c:catAx><c:axId val="1"/><c:scaling><c:orientation val="${kind === 'bar' ? 'maxMin' : 'minMax'}"/></c:scaling><c:delete val="0"/><c:axPos val="${labels}"/><c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/>${bare}${lettering(900)}<c:crossAx val="2"/><c:crosses val="autoZero"/></c:catAx>` +
    `<c:valAx><c:axId val="2"/><c:scaling><c:orientation val="minMax"/><c:min val="0"/></c:scaling><c:delete val="${kind === 'line' ? 0 : 1}"/><c:axPos val="${values}"/><c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/>${lettering(900)}<c:crossAx val="1"/></c:valAx>` +
    `</c:plotArea>${count > 1 ? `<c:legend><c:legendPos val="b"/><c:overlay val="0"/>${lettering(900)}</c:legend>` : ''}<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart>` +
    `<c:spPr>${fill('FFFFFF')}<a:ln w="9525">${fill('D9D9D9')}</a:ln></c:spPr></c:chartSpace>`
  );
}

const corner = (name: string, row: number, column: number): string =>
  `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;

const placed = ({ name, title, at }: DrawnChart, number: number): string =>
  `<xdr:twoCellAnchor>${corner('from', at.row, at.column)}${corner('to', at.row + at.rows, at.column + at.columns)}` +
  `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${number + 1}" name="${text(name)}" descr="${text(title)}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>` +
  '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>' +
  `<a:graphic><a:graphicData uri="${CHART}"><c:chart xmlns:c="${CHART}" r:id="rId${number}"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>`;

const relation = (id: string, kind: string, target: string): string =>
  `<Relationship Id="${id}" Type="${OFFICE}/${kind}" Target="${target}"/>`;
const put = (parts: Parts, part: string, xml: string): void => void parts.set(part, bytesOfText(xml));

function addType(parts: Parts, part: string, type: string): void {
  const line = `<Override PartName="/${part}" ContentType="application/vnd.openxmlformats-officedocument.${type}+xml"/>`;
  put(parts, TYPES, beforeEnd(partText(parts, TYPES) ?? '', TYPES, line));
}

/** What stands after a drawing in a sheet. */
const AFTER = ['legacyDrawing', 'legacyDrawingHF', 'picture', 'oleObjects', 'controls', 'webPublishItems', 'tableParts', 'extLst']; // prettier-ignore

function draw(parts: Parts, sheet: string, id: string): void {
  const xml = partText(parts, sheet) ?? '';
  const [next] = tagsNamed(xml, sheet, ...AFTER);
  const at = next?.from ?? xml.lastIndexOf('</');
  put(parts, sheet, `${xml.slice(0, at)}<drawing xmlns:r="${OFFICE}" r:id="${id}"/>${xml.slice(at)}`);
}

/** Joins a sheet that holds no drawing yet to one: what is anchored on it, and the parts those point at. */
function addDrawing(parts: Parts, sheet: string, anchors: string, targets = ''): void {
  const drawing = freshPart(parts, 'xl/drawings/drawing');
  put(
    parts,
    drawing,
    `${HEAD}<xdr:wsDr xmlns:xdr="${PLACED}" xmlns:a="${DRAWING}" xmlns:r="${OFFICE}">${anchors}</xdr:wsDr>`,
  );
  if (targets !== '') put(parts, relationshipsPart(drawing), relationships(targets));
  addType(parts, drawing, 'drawing');
  const own = relationshipsPart(sheet);
  const line = relation('rIdDrawing', 'drawing', `/${drawing}`);
  const before = partText(parts, own);
  put(parts, own, before === undefined ? relationships(line) : beforeEnd(before, own, line));
  draw(parts, sheet, 'rIdDrawing');
}

/** Adds drawings to a sheet that holds none yet. */
export function addShapes(parts: Parts, sheet: string, drawings: readonly DrawnShapes[]): void {
  if (drawings.length === 0) return;
  let id = 2;
  const anchors = drawings.map((one) => {
    const xml = shapesXml(one, id);
    id += idsOf(one);
    return xml;
  });
  addDrawing(parts, sheet, anchors.join(''));
}

/** Adds charts to a sheet that holds no drawing yet. */
export function addCharts(parts: Parts, sheet: string, charts: readonly DrawnChart[]): void {
  if (charts.length === 0) return;
  const targets = charts.map((chart, at) => {
    const part = freshPart(parts, 'xl/charts/chart');
    put(parts, part, chartXml(chart));
    addType(parts, part, 'drawingml.chart');
    return relation(`rId${at + 1}`, 'chart', `/${part}`);
  });
  const frames = charts.map((chart, at) => placed(chart, at + 1));
  addDrawing(parts, sheet, frames.join(''), targets.join(''));
}
