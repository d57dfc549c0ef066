/** Several areas of one sheet, as merged areas come. */
import { quoted, writeArea, type Area } from '../address';
import { found, isThing, kind, thing, type Kind, type Thing } from '../kind';
import type { Sheet } from '../model';
import type { World } from '../world';
import { FORMAT } from './rangeFormat';
import { rangeOf } from './range';
import { WORKSHEET } from './worksheet';

interface AreasModel {
  readonly sheet: Sheet;
  readonly areas: readonly Area[];
}

const address = ({ sheet, areas }: AreasModel): string =>
  areas.map((area) => `${quoted(sheet.name)}!${writeArea(area)}`).join(', ');

const AREAS: Kind<AreasModel> = kind<AreasModel>('RangeAreasCollection', {
  items: ({ sheet, areas }) => areas.map((area) => rangeOf(sheet, area)),
  methods: {
    GetCount: ({ areas }) => areas.length,
    GetItemAt: ({ sheet, areas }, [at]) => rangeOf(sheet, found(areas[Number(at)])),
  },
});

/** What is done to several areas is done to each; what is asked of them is asked of the first. */
function each(all: readonly Thing[]): Thing {
  const [first] = all.map((one) => one.kind);
  const { name, scalars, parts, methods, find } = found(first);
  const over = kind<readonly Thing[]>(name, {
    ...(find !== undefined && {
      find: (list: readonly Thing[], key: unknown, world: World) =>
        each(list.map((one) => found(find(one.self, key, world)))),
    }),
    scalars: Object.fromEntries(
      Object.entries(scalars).map(([property, scalar]) => [
        property,
        {
          get: ([one], world) => scalar.get(found(one).self, world),
          ...(scalar.set !== undefined && {
            set: (list: readonly Thing[], value: unknown, world: World) => {
              for (const one of list) scalar.set?.(one.self, value, world);
            },
          }),
        },
      ]),
    ),
    parts: Object.fromEntries(
      Object.entries(parts).map(([part, reach]) => [
        part,
        (list, world) => each(list.map((one) => found(reach(one.self, world)))),
      ]),
    ),
    methods: Object.fromEntries(
      Object.entries(methods).map(([method, act]) => [
        method,
        (list, args, world) => {
          const given = list.map((one) => act(one.self, args, world));
          return given.every(isThing) ? each(given) : given[0];
        },
      ]),
    ),
  });
  return thing(over, all);
}

export const RANGE_AREAS: Kind<AreasModel> = kind<AreasModel>('RangeAreas', {
  referenced: true,
  scalars: {
    Address: { get: address },
    AreaCount: { get: ({ areas }) => areas.length },
    CellCount: { get: ({ areas }) => areas.reduce((sum, area) => sum + area.rows * area.columns, 0) },
  },
  parts: {
    Areas: (self) => thing(AREAS, self),
    Format: ({ sheet, areas }) => each(areas.map((area) => thing(FORMAT, { sheet, area }))),
    Worksheet: ({ sheet }) => thing(WORKSHEET, sheet),
  },
});
