/** A sheet's filter: rows that do not match are hidden. */
import { found, kind, NotInStandIn, type Kind } from '../kind';
import type { Sheet } from '../model';
import { rangeOf, resolve } from './range';

interface ValuesCriteria {
  readonly filterOn?: string;
  readonly values?: readonly unknown[];
}

function applyCriteria(sheet: Sheet): void {
  const { filter } = sheet;
  if (filter === undefined) return;
  const { area, criteria } = filter;
  for (let row = area.row + 1; row < area.row + area.rows; row += 1) {
    const shows = criteria.every((given, at) => {
      const wanted = given as ValuesCriteria | null;
      if (wanted === null || wanted === undefined) return true;
      if (wanted.filterOn !== 'Values') throw new NotInStandIn(`a filter on ${String(wanted.filterOn)}`);
      return (wanted.values ?? [])
        .map(String)
        .includes(String(sheet.cell(row, area.column + at)?.value ?? ''));
    });
    if (shows) sheet.hiddenRows.delete(row);
    else sheet.hiddenRows.add(row);
  }
}

export const AUTO_FILTER: Kind<Sheet> = kind<Sheet>('AutoFilter', {
  scalars: {
    Enabled: { get: (sheet) => sheet.filter !== undefined },
    IsDataFiltered: {
      get: (sheet) => (sheet.filter?.criteria ?? []).some((one) => one !== null && one !== undefined),
    },
    Criteria: { get: (sheet) => sheet.filter?.criteria ?? [] },
  },
  methods: {
    Apply(sheet, [range, column, criteria], world) {
      const { area } = resolve(world, sheet, range);
      const known = sheet.filter?.criteria ?? [];
      sheet.filter = { area, criteria: Array.from({ length: area.columns }, (_, at) => known[at] ?? null) };
      if (column !== undefined && column !== null) sheet.filter.criteria[Number(column)] = criteria;
      applyCriteria(sheet);
    },
    ClearCriteria(sheet) {
      sheet.filter?.criteria.fill(null);
      applyCriteria(sheet);
    },
    Remove(sheet) {
      sheet.filter?.criteria.fill(null);
      applyCriteria(sheet);
      sheet.filter = undefined;
    },
    GetRange: (sheet) => rangeOf(sheet, found(sheet.filter).area),
  },
});
