/** Conditional formats of a range. */
import { intersection } from '../address';
import { collection, found, invalidArgument, kept, keptAll, kind, thing, type Kind } from '../kind';
import type { ConditionalFormatModel } from '../model';
import { rangeOf, type RangeModel } from './range';

type Model = ConditionalFormatModel;
const bag = (one: Model): Record<string, unknown> => one.bag;
const look = (one: Model): Record<string, unknown> => one.style;

const RULE = kind<Model>('ConditionalFormatRule', { scalars: keptAll(bag, { Formula: '' }) });
const prefixed = (prefix: string, initials: Record<string, unknown>) =>
  Object.fromEntries(
    Object.entries(initials).map(([name, initial]) => [name, kept(look, prefix + name, initial)]),
  );
const FILL = kind<Model>('ConditionalRangeFill', { scalars: prefixed('Fill.', { Color: '' }) });
const FONT = kind<Model>('ConditionalRangeFont', {
  scalars: prefixed('Font.', { Color: '', Bold: null, Italic: null, Strikethrough: null, Underline: null }),
});
const FORMAT = kind<Model>('ConditionalRangeFormat', {
  scalars: prefixed('', { NumberFormat: null }),
  parts: { Fill: (one) => thing(FILL, one), Font: (one) => thing(FONT, one) },
});
const CUSTOM = kind<Model>('CustomConditionalFormat', {
  parts: { Rule: (one) => thing(RULE, one), Format: (one) => thing(FORMAT, one) },
});
const ruled = (name: string) =>
  kind<Model>(name, {
    scalars: keptAll(bag, { Rule: null }),
    parts: { Format: (one) => thing(FORMAT, one) },
  });

const TYPES: Readonly<Record<string, Kind<Model>>> = {
  Custom: CUSTOM,
  CellValue: ruled('CellValueConditionalFormat'),
  ContainsText: ruled('TextConditionalFormat'),
};
const PARTS: Readonly<Record<string, string>> = {
  Custom: 'Custom',
  CellValue: 'CellValue',
  ContainsText: 'TextComparison',
};

const CONDITIONAL_FORMAT: Kind<Model> = kind<Model>('ConditionalFormat', {
  id: (one) => one.id,
  scalars: {
    Id: { get: (one) => one.id },
    Type: { get: (one) => one.type },
    ...keptAll(bag, { StopIfTrue: false, Priority: 0 }),
  },
  parts: Object.fromEntries(
    Object.entries(PARTS).flatMap(([type, part]) => {
      const firm = (one: Model) => {
        if (one.type !== type) throw invalidArgument();
        return thing(found(TYPES[type]), one);
      };
      return [
        [part, firm],
        [`${part}OrNullObject`, (one: Model) => (one.type === type ? firm(one) : null)],
      ];
    }),
  ),
  methods: {
    Delete(one) {
      one.sheet.conditionalFormats = one.sheet.conditionalFormats.filter((other) => other !== one);
    },
    GetRange: (one) => rangeOf(one.sheet, one.area),
  },
});

const on = ({ sheet, area }: RangeModel): Model[] =>
  sheet.conditionalFormats.filter((one) => intersection(one.area, area) !== undefined);

const base = collection<RangeModel, Model>('ConditionalFormatCollection', () => CONDITIONAL_FORMAT, {
  items: on,
  named: (one) => [one.id],
  places: true,
});

export const RANGE_CONDITIONAL_FORMATS: Kind<RangeModel> = {
  ...base,
  methods: {
    ...base.methods,
    Add(range, [type], world) {
      found(TYPES[String(type)]);
      world.mayChange(range.sheet, 'allowFormatCells');
      const one: Model = {
        id: world.book.newId(),
        sheet: range.sheet,
        area: range.area,
        type: String(type),
        bag: {},
        style: {},
      };
      range.sheet.conditionalFormats.push(one);
      return thing(CONDITIONAL_FORMAT, one);
    },
    ClearAll(range, _, world) {
      world.mayChange(range.sheet, 'allowFormatCells');
      const gone = new Set(on(range));
      range.sheet.conditionalFormats = range.sheet.conditionalFormats.filter((one) => !gone.has(one));
    },
  },
};
