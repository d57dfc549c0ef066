/** Charts and shapes: what stands on a sheet above its cells. */
import { collection, found, kept, keptAll, kind, NotInStandIn, selfOf, thing, type Kind } from '../kind';
import type { Drawing, Plain, Sheet } from '../model';
import type { World } from '../world';
import { RANGE, resolve } from './range';

const bag = (one: Drawing): Plain => one.bag;
const within = (prefix: string, initials: Plain) =>
  Object.fromEntries(
    Object.entries(initials).map(([name, initial]) => [name, kept(bag, prefix + name, initial)]),
  );

const FRAME = { Name: '', Left: 0, Top: 0, Width: 360, Height: 216 };
const TITLE = kind<Drawing>('ChartTitle', {
  scalars: within('Title.', { Text: '', Visible: true, Overlay: false }),
});
const LEGEND = kind<Drawing>('ChartLegend', {
  scalars: within('Legend.', { Visible: true, Position: 'Right', Overlay: false }),
});
interface Axis {
  readonly chart: Drawing;
  readonly axis: string;
}
const ofAxis = (prefix: string, initials: Plain) =>
  Object.fromEntries(
    Object.entries(initials).map(([name, initial]) => [
      name,
      {
        get: ({ chart, axis }: Axis) => chart.bag[`${axis}.${prefix}${name}`] ?? initial,
        set: ({ chart, axis }: Axis, value: unknown) => {
          chart.bag[`${axis}.${prefix}${name}`] = value;
        },
      },
    ]),
  );
const AXIS_TITLE = kind<Axis>('ChartAxisTitle', { scalars: ofAxis('Title.', { Text: '', Visible: true }) });
const GRIDLINES = kind<Axis>('ChartGridlines', { scalars: ofAxis('MajorGridlines.', { Visible: true }) });
const AXIS = kind<Axis>('ChartAxis', {
  scalars: ofAxis('', { Visible: true, ReversePlotOrder: false }),
  parts: { Title: (self) => thing(AXIS_TITLE, self), MajorGridlines: (self) => thing(GRIDLINES, self) },
});
const AXES = kind<Drawing>('ChartAxes', {
  parts: {
    ValueAxis: (chart) => thing(AXIS, { chart, axis: 'ValueAxis' }),
    CategoryAxis: (chart) => thing(AXIS, { chart, axis: 'CategoryAxis' }),
  },
});

const SERIES = kind<Plain>('ChartSeries', {
  scalars: keptAll((one: Plain) => one, { Name: '', ChartType: 'ColumnClustered', HasDataLabels: false }),
  methods: {
    SetValues(one, [range]) {
      one['values'] = selfOf(range, RANGE);
    },
    SetXAxisValues(one, [range]) {
      one['categories'] = selfOf(range, RANGE);
    },
  },
});
const ALL_SERIES: Kind<Drawing> = kind<Drawing>('ChartSeriesCollection', {
  scalars: { Count: { get: (chart) => chart.series.length } },
  items: (chart) => chart.series.map((one) => thing(SERIES, one)),
  methods: {
    GetCount: (chart) => chart.series.length,
    GetItemAt: (chart, [at]) => thing(SERIES, found(chart.series[Number(at)])),
    Add(chart, [name]) {
      const one: Plain = { Name: String(name ?? '') };
      chart.series.push(one);
      return thing(SERIES, one);
    },
  },
});

function position(one: Drawing, [from, to]: readonly unknown[], world: World): void {
  const first = resolve(world, one.sheet, from);
  const last = to === undefined || to === null ? first : resolve(world, one.sheet, to);
  one.bag['position'] = { first: first.area, last: last.area };
  one.bag['Left'] = first.area.column * 48;
  one.bag['Top'] = first.area.row * 15;
}

const CHART: Kind<Drawing> = kind<Drawing>('Chart', {
  id: (one) => one.id,
  scalars: { Id: { get: (one) => one.id }, ...keptAll(bag, { ...FRAME, ChartType: '', Style: 201 }) },
  parts: {
    Title: (one) => thing(TITLE, one),
    Legend: (one) => thing(LEGEND, one),
    Axes: (one) => thing(AXES, one),
    Series: (one) => thing(ALL_SERIES, one),
  },
  methods: {
    SetPosition(one, given, world) {
      position(one, given, world);
    },
    SetData(one, [range]) {
      one.source = selfOf(range, RANGE);
    },
    Delete(one) {
      one.sheet.charts = one.sheet.charts.filter((other) => other !== one);
    },
  },
});

const charts = collection<Sheet, Drawing>('ChartCollection', () => CHART, {
  items: (sheet) => sheet.charts,
  named: (one) => [one.id, one.bag['Name']],
  places: true,
  counts: true,
});
export const CHARTS: Kind<Sheet> = {
  ...charts,
  methods: {
    ...charts.methods,
    Add(sheet, [type, range, by], world) {
      world.mayChange(sheet, 'allowEditObjects');
      const source = selfOf(range, RANGE);
      const byRows = by === 'Rows' || (by !== 'Columns' && source.area.rows < source.area.columns);
      const count = Math.max(1, (byRows ? source.area.rows : source.area.columns) - 1);
      const one: Drawing = {
        id: world.book.newId(),
        sheet,
        bag: { ChartType: String(type), Name: `Chart ${String(sheet.charts.length + 1)}` },
        series: Array.from({ length: count }, (_, at) => ({ Name: `Series${String(at + 1)}` })),
        source,
      };
      sheet.charts.push(one);
      return thing(CHART, one);
    },
  },
};

const TEXT = kind<Drawing>('TextRange', { scalars: within('', { Text: '' }) });
const TEXT_FRAME = kind<Drawing>('TextFrame', {
  scalars: {
    HasText: { get: (one) => one.bag['Text'] !== undefined },
    ...within('', { AutoSizeSetting: 'AutoSizeNone' }),
  },
  parts: { TextRange: (one) => thing(TEXT, one) },
});
const SHAPE_FILL = kind<Drawing>('ShapeFill', {
  scalars: within('Fill.', { ForegroundColor: '', Transparency: 0 }),
  methods: {
    SetSolidColor(one, [color]) {
      one.bag['Fill.ForegroundColor'] = color;
    },
    Clear(one) {
      one.bag['Fill.ForegroundColor'] = '';
    },
  },
});
const SHAPE: Kind<Drawing> = kind<Drawing>('Shape', {
  id: (one) => one.id,
  scalars: {
    Id: { get: (one) => one.id },
    Type: { get: (one) => one.bag['Type'] },
    ...keptAll(bag, {
      ...FRAME,
      AltTextTitle: '',
      AltTextDescription: '',
      Visible: true,
      Rotation: 0,
      LockAspectRatio: false,
    }),
  },
  parts: { TextFrame: (one) => thing(TEXT_FRAME, one), Fill: (one) => thing(SHAPE_FILL, one) },
  methods: {
    Delete(one) {
      one.sheet.shapes = one.sheet.shapes.filter((other) => other !== one);
    },
  },
});

function addShape(sheet: Sheet, world: World, own: Plain) {
  world.mayChange(sheet, 'allowEditObjects');
  const one: Drawing = {
    id: world.book.newId(),
    sheet,
    bag: { Name: `Shape ${String(sheet.shapes.length + 1)}`, ...own },
    series: [],
  };
  sheet.shapes.push(one);
  return thing(SHAPE, one);
}

const shapes = collection<Sheet, Drawing>('ShapeCollection', () => SHAPE, {
  items: (sheet) => sheet.shapes,
  named: (one) => [one.id, one.bag['Name']],
  places: true,
});
export const SHAPES: Kind<Sheet> = {
  ...shapes,
  methods: {
    ...shapes.methods,
    AddTextBox: (sheet, [text], world) =>
      addShape(sheet, world, { Type: 'GeometricShape', Text: String(text ?? '') }),
    AddGeometricShape: (sheet, [type], world) =>
      addShape(sheet, world, { Type: 'GeometricShape', GeometricShapeType: type }),
    AddImage: (sheet, [base64], world) => addShape(sheet, world, { Type: 'Image', base64 }),
    AddLine: (sheet, [left, top, right, bottom], world) =>
      addShape(sheet, world, {
        Type: 'Line',
        Left: left,
        Top: top,
        Width: Number(right) - Number(left),
        Height: Number(bottom) - Number(top),
      }),
    AddGroup() {
      throw new NotInStandIn('ShapeCollection.AddGroup()');
    },
  },
};
