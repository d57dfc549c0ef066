import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { ExcelHost } from './host';
import type { Kind, Thing } from './kind';
import { connect } from './node';
import { WORKBOOK } from './kinds/workbook';

interface Genuine {
  readonly prototype: Record<string, unknown> & {
    readonly _scalarPropertyOriginalNames?: readonly string[];
    readonly _scalarPropertyUpdateable?: readonly boolean[];
    readonly _navigationPropertyNames?: readonly string[];
  };
}

/** Every kind that can be reached by parts and members from a workbook that has one of each. */
async function kinds(): Promise<Kind<unknown>[]> {
  const host = new ExcelHost();
  const { Excel } = connect(host);
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getActiveWorksheet();
    const range = sheet.getRange('A1:B3');
    range.values = [['One', 'Two'], [1, 2], [3, 4]]; // prettier-ignore
    sheet.tables.add('A1:B3', true);
    sheet.names.add('here', range);
    range.conditionalFormats.add('Custom');
    range.conditionalFormats.add('CellValue');
    sheet.charts.add('ColumnClustered', range);
    sheet.shapes.addTextBox('text');
    context.workbook.comments.add('Sheet1!A1', 'a remark');
    context.workbook.settings.add('key', 1);
    await context.sync();
  });
  const seen = new Map<string, Kind<unknown>>();
  const visit = ({ kind, self }: Thing): void => {
    if (seen.has(kind.name)) return;
    seen.set(kind.name, kind);
    const nearby = [
      ...Object.values(kind.parts),
      ...['GetRange', 'GetActiveCell'].flatMap((name) => kind.methods[name] ?? []),
    ];
    for (const reach of nearby) {
      try {
        const one = (reach as (...given: unknown[]) => unknown)(
          self,
          reach.length > 2 ? [undefined] : host.world,
          host.world,
        );
        visit(one as Thing);
      } catch {
        // a part that this object has not got, as a sheet's name has no other sheet
      }
    }
    for (const one of kind.items?.(self, host.world) ?? []) visit(one);
  };
  visit({ kind: WORKBOOK as unknown as Kind<unknown>, self: host.book });
  return [...seen.values()];
}

const camel = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

describe('what the stand-in declares, against the genuine client', async () => {
  const { Excel } = connect(new ExcelHost()) as unknown as { Excel: Record<string, Genuine> };
  const all = await kinds();

  it('reaches all the kinds an add-in of ours needs', () => {
    expect(all.map((one) => one.name)).toEqual(
      expect.arrayContaining([
        'Range',
        'RangeFormat',
        'Table',
        'TableColumn',
        'DataValidation',
        'Chart',
        'Comment',
        'PageLayout',
      ]),
    );
    expect(all.length).toBeGreaterThan(40);
  });

  it.each(all.map((one): [string, Kind<unknown>] => [one.name, one]))(
    '%s has no member that office.js does not know',
    (name, kind) => {
      const genuine = Excel[name]?.prototype;
      expect(genuine, `Excel.${name}`).toBeDefined();
      if (genuine === undefined) return;
      const scalars = genuine._scalarPropertyOriginalNames ?? [];
      const writable = genuine._scalarPropertyUpdateable ?? [];
      for (const [property, scalar] of Object.entries(kind.scalars)) {
        expect(scalars, `${name}.${property}`).toContain(property);
        if (scalar.set !== undefined)
          expect(writable[scalars.indexOf(property)], `${name}.${property} may be set`).toBe(true);
      }
      for (const part of Object.keys(kind.parts)) {
        expect(genuine._navigationPropertyNames, `${name}.${part}`).toContain(camel(part));
      }
      for (const method of Object.keys(kind.methods)) {
        expect(genuine[method.startsWith('_') ? method : camel(method)], `${name}.${method}()`).toBeTypeOf(
          'function',
        );
      }
    },
  );

  it('runs on the version of office.js that was looked at', () => {
    const { version } = createRequire(import.meta.url)('@microsoft/office-js/package.json') as {
      version: string;
    };
    expect(version).toBe('1.1.110');
  });
});
