/** Several areas of one sheet, as merged areas come. */
import { quoted, writeArea, type Area } from '../address';
import { found, kind, thing, type Kind } from '../kind';
import type { Sheet } from '../model';
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

export const RANGE_AREAS: Kind<AreasModel> = kind<AreasModel>('RangeAreas', {
  referenced: true,
  scalars: {
    Address: { get: address },
    AreaCount: { get: ({ areas }) => areas.length },
    CellCount: { get: ({ areas }) => areas.reduce((sum, area) => sum + area.rows * area.columns, 0) },
  },
  parts: {
    Areas: (self) => thing(AREAS, self),
    Worksheet: ({ sheet }) => thing(WORKSHEET, sheet),
  },
});
