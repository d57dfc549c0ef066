import { describe, expect, it } from 'vitest';
import { ExcelHost } from './host';
import { Workbook } from './model';
import { connect } from './node';

type Run = (work: (context: Excel.RequestContext, sheet: Excel.Worksheet) => Promise<void>) => Promise<void>;

function open(...sheets: string[]): { host: ExcelHost; run: Run } {
  const host = new ExcelHost(new Workbook(...sheets));
  const { Excel } = connect(host);
  return {
    host,
    run: (work) => Excel.run((context) => work(context, context.workbook.worksheets.getActiveWorksheet())),
  };
}

const refused = async (work: Promise<unknown>): Promise<unknown> =>
  work.then(
    () => 'nothing was refused',
    (error: unknown) => (error as { code?: string }).code,
  );

describe('the genuine client’s rules', () => {
  it('refuses a property that was not loaded', async () => {
    const { run } = open();
    expect(
      await refused(
        run(async (context, sheet) => {
          const range = sheet.getRange('A1');
          await context.sync();
          expect(range.values).toBeDefined();
        }),
      ),
    ).toBe('PropertyNotLoaded');
  });

  it('gives a null object for what is not there, and an error for what must be', async () => {
    const { run } = open();
    await run(async (context, sheet) => {
      const name = context.workbook.names.getItemOrNullObject('Nothing');
      const used = sheet.getUsedRangeOrNullObject();
      await context.sync();
      expect([name.isNullObject, used.isNullObject]).toEqual([true, true]);
    });
    expect(
      await refused(
        run(async (context) => {
          context.workbook.worksheets.getItem('Nothing').load('name');
          await context.sync();
        }),
      ),
    ).toBe('ItemNotFound');
  });

  it('keeps what was done before a refused action: there is no way back by itself', async () => {
    const { host, run } = open();
    const work = run(async (context, sheet) => {
      sheet.getRange('A1').values = [[7]];
      sheet.getRange('A1:B2').values = [[1], [2]];
      sheet.getRange('A3').values = [[9]];
      await context.sync();
    });
    expect(await refused(work)).toBe('InvalidArgument');
    expect(host.book.active.cell(0, 0)?.value).toBe(7);
    expect(host.book.active.cell(2, 0)).toBeUndefined();
  });

  it('splits a write of 4,000 cells itself, and still asks once', async () => {
    const { host, run } = open();
    await run(async (context, sheet) => {
      sheet.getRange('A1:B2000').values = Array.from({ length: 2000 }, (_, row) => [row, -row]);
      await context.sync();
      const before = host.trips.length;
      const range = sheet.getRange('B2000').load('values');
      await context.sync();
      expect(range.values).toEqual([[-1999]]);
      expect([before, host.trips.length]).toEqual([1, 2]);
    });
  });

  it('says the name of a member the stand-in does not know', async () => {
    const { host, run } = open();
    const work = run(async (context, sheet) => {
      sheet.getRange('A1').showCard();
      await context.sync();
    });
    expect(await refused(work)).toBe('NotInStandIn');
    expect(host.unknown).toEqual([expect.stringContaining('Range.ShowCard()')]);
  });
});

describe('cells', () => {
  it.each([
    ["'1/2", '1/2', 'General'],
    ['84 1/2', 84.5, '# ?/?'],
    ['12%', 0.12, '0%'],
    ['true', true, 'General'],
    ['7\' 6"', '7\' 6"', 'General'],
    ['', '', 'General'],
  ])('%s typed into a cell is %s', async (typed, value, format) => {
    const { run } = open();
    await run(async (context, sheet) => {
      const range = sheet.getRange('B2');
      range.values = [[typed]];
      range.load('values,numberFormat');
      await context.sync();
      expect([range.values[0]?.[0], range.numberFormat[0]?.[0]]).toEqual([value, format]);
    });
  });

  it('a bare 1/2 is a date, as in Excel', async () => {
    const { run } = open();
    await run(async (context, sheet) => {
      const range = sheet.getRange('A1');
      range.values = [['1/2']];
      range.load('values,numberFormat');
      await context.sync();
      expect(range.numberFormat).toEqual([['d-mmm']]);
      expect(range.values[0]?.[0]).toBeGreaterThan(40_000);
    });
  });

  it('formulas go in and come back; their values are the calculator’s', async () => {
    const { host, run } = open();
    host.world.calculator = (world) => {
      for (const { sheet, row, column } of world.formulas()) world.settle(sheet, row, column, [[1, 2], [3, 4]]); // prettier-ignore
    };
    await run(async (context, sheet) => {
      sheet.getRange('A1').formulas = [['=SEQUENCE(2,2)']];
      sheet.getRange('D1:D2').formulas = [['=SEQUENCE(2,2)'], ['in the way']];
      const used = sheet.getUsedRange().load('values,formulas,address');
      const spill = sheet.getRange('A1').getSpillingToRange().load('address');
      await context.sync();
      expect(used.address).toBe('Sheet1!A1:D2');
      expect(used.values).toEqual([[1, 2, '', '#SPILL!'], [3, 4, '', 'in the way']]); // prettier-ignore
      expect(used.formulas[0]?.[0]).toBe('=SEQUENCE(2,2)');
      expect(spill.address).toBe('Sheet1!A1:B2');
    });
  });

  it('an inserted column carries formulas and names along', async () => {
    const { run } = open();
    await run(async (context, sheet) => {
      sheet.getRange('C1:D1').formulas = [[5, '=C1*2+$C$1&"C1"']];
      context.workbook.names.add('five', sheet.getRange('C1'));
      sheet.getRange('B:B').insert('Right');
      const formula = sheet.getRange('E1').load('formulas');
      const name = context.workbook.names.getItem('five').load('value');
      await context.sync();
      expect(formula.formulas).toEqual([['=D1*2+$D$1&"C1"']]);
      expect(name.value).toBe('Sheet1!$D$1');
    });
  });

  it('a format is one value where the cells agree and null where they do not', async () => {
    const { run } = open();
    await run(async (context, sheet) => {
      sheet.getRange('A1:B1').format.fill.color = 'yellow';
      sheet.getRange('B:B').format.columnWidth = 80;
      const one = sheet.getRange('A1:B1').load('format/fill/color,format/columnWidth,format/wrapText');
      const two = sheet.getRange('A1:B2').load('format/fill/color');
      await context.sync();
      expect([one.format.fill.color, one.format.columnWidth, one.format.wrapText]).toEqual([
        '#FFFF00',
        null,
        false,
      ]);
      expect(two.format.fill.color).toBeNull();
    });
  });

  it('hidden and filtered rows, and merged areas, are told', async () => {
    const { run } = open();
    await run(async (context, sheet) => {
      sheet.getRange('A1:A4').values = [['room'], ['hall'], ['study'], ['hall']];
      sheet.autoFilter.apply('A1:A4', 0, { filterOn: 'Values', values: ['hall'] });
      sheet.getRange('C1:D1').merge();
      const row = sheet.getRange('A3').load('rowHidden');
      const all = sheet.getRange('A1:A4').load('rowHidden');
      const merged = sheet.getRange('B1:C9').getMergedAreasOrNullObject().load('address');
      await context.sync();
      expect([row.rowHidden, all.rowHidden, merged.address]).toEqual([true, null, 'Sheet1!C1:D1']);
    });
  });
});

describe('what stands on a sheet', () => {
  it('a table has columns, a totals row, and moves what lies below it', async () => {
    const { run } = open();
    await run(async (context, sheet) => {
      sheet.getRange('A1:B4').values = [
        ['Room', 'Room'],
        ['hall', 1],
        ['study', 2],
        ['below', 'the table'],
      ];
      const table = sheet.tables.add('A1:B3', true);
      table.name = 'Windows';
      table.showTotals = true;
      table.rows.add(undefined, [['attic', 3]]);
      table.columns.add(undefined, [['Widths'], [5], [6], [7], ['']]);
      const columns = table.columns.load('items/name');
      const whole = table.getRange().load('address,values');
      const below = sheet.getRange('A6:B6').load('values');
      await context.sync();
      expect(columns.items.map((one) => one.name)).toEqual(['Room', 'Room2', 'Widths']);
      expect(whole.address).toBe('Sheet1!A1:C5');
      expect(whole.values[3]).toEqual(['attic', 3, 7]);
      expect(below.values).toEqual([['below', 'the table']]);
    });
  });

  it('names clash with names and tables, and are never like a cell', async () => {
    const { run } = open();
    for (const name of ['A1', 'two words', 'Taken', 'Table1']) {
      const work = run(async (context, sheet) => {
        const names = context.workbook.names;
        if (name === 'A1') sheet.tables.add('D1:D2', true);
        if (name === 'Taken') names.add('Taken', sheet.getRange('A1'));
        names.add(name, sheet.getRange('B1'));
        await context.sync();
      });
      expect(await refused(work), name).toBe('InvalidArgument');
    }
  });

  it('validation, conditional format, remark, frozen rows, page, chart and setting come back as they were put', async () => {
    const { run } = open();
    await run(async (context, sheet) => {
      const range = sheet.getRange('B2:B9');
      range.dataValidation.rule = { list: { inCellDropDown: true, source: 'pinch,grommet' } };
      range.dataValidation.prompt = { message: 'A heading', showPrompt: true, title: 'Heading' };
      const look = range.conditionalFormats.add('Custom');
      look.custom.rule.formula = '=B2=""';
      look.custom.format.fill.color = '#FFCC00';
      context.workbook.comments.add('Sheet1!B2', 'a remark');
      sheet.freezePanes.freezeRows(1);
      sheet.pageLayout.orientation = 'Landscape';
      sheet.pageLayout.zoom = { horizontalFitToPages: 1 };
      sheet.pageLayout.setPrintTitleRows('$1:$1');
      const chart = sheet.charts.add('BarClustered', sheet.getRange('A1:B3'), 'Auto');
      chart.name = 'Cloth';
      chart.title.text = 'Cloth by room';
      context.workbook.settings.add('mapping', { width: 'B' });
      await context.sync();

      range.dataValidation.load('type,rule,prompt');
      const looks = range.conditionalFormats.load(
        'items/type,items/custom/rule/formula,items/custom/format/fill/color',
      );
      const remark = context.workbook.comments.getItemByCell('Sheet1!B2').load('content');
      const frozen = sheet.freezePanes.getLocationOrNullObject().load('address');
      const page = sheet.pageLayout.load('orientation,zoom');
      const titles = sheet.pageLayout.getPrintTitleRowsOrNullObject().load('address');
      const charts = sheet.charts.load('items/name,items/title/text');
      const setting = context.workbook.settings.getItem('mapping').load('value');
      await context.sync();
      expect(range.dataValidation.type).toBe('List');
      expect(range.dataValidation.rule).toEqual({ list: { inCellDropDown: true, source: 'pinch,grommet' } });
      expect(
        looks.items.map((one) => [one.type, one.custom.rule.formula, one.custom.format.fill.color]),
      ).toEqual([['Custom', '=B2=""', '#FFCC00']]);
      expect(remark.content).toBe('a remark');
      expect([frozen.address, titles.address]).toEqual(['Sheet1!1:1', 'Sheet1!1:1']);
      expect([page.orientation, page.zoom]).toEqual(['Landscape', { horizontalFitToPages: 1 }]);
      expect(charts.items.map((one) => [one.name, one.title.text])).toEqual([['Cloth', 'Cloth by room']]);
      expect(setting.value).toEqual({ width: 'B' });
    });
  });

  it('sheets are added, renamed, hidden, moved and deleted; a taken name is refused', async () => {
    const { run } = open('Job', 'Rules');
    await run(async (context) => {
      const { worksheets } = context.workbook;
      worksheets.add('Quote').position = 0;
      worksheets.getItem('Rules').visibility = 'Hidden';
      worksheets.getItem('Job').name = 'The job';
      const sheets = worksheets.load('items/name,items/visibility');
      await context.sync();
      expect(sheets.items.map((one) => `${one.name} ${one.visibility}`)).toEqual([
        'Quote Visible',
        'The job Visible',
        'Rules Hidden',
      ]);
      sheets.items[0]?.delete();
      await context.sync();
    });
    expect(
      await refused(
        run(async (context) => {
          context.workbook.worksheets.add('rules');
          await context.sync();
        }),
      ),
    ).toBe('ItemAlreadyExists');
  });

  it('tells of a new selection', async () => {
    const { host, run } = open();
    const told: string[] = [];
    await run(async (context) => {
      context.workbook.worksheets.onSelectionChanged.add((event) => {
        told.push(event.address);
        return Promise.resolve();
      });
      await context.sync();
      host.select(host.book.active, { row: 2, column: 1, rows: 1, columns: 2 });
      await new Promise((done) => setTimeout(done, 10));
    });
    expect(told).toEqual(['B3:C3']);
  });
});

describe('Excel in trouble', () => {
  it('a protected sheet refuses locked cells and takes unlocked ones', async () => {
    const { run } = open();
    await run(async (context, sheet) => {
      sheet.getRange('B1').format.protection.locked = false;
      sheet.protection.protect();
      sheet.getRange('B1').values = [[1]];
      sheet.protection.load('protected');
      await context.sync();
      expect(sheet.protection.protected).toBe(true);
    });
    for (const change of [
      (sheet: Excel.Worksheet) => (sheet.getRange('A1').values = [[1]]),
      (sheet: Excel.Worksheet) => sheet.tables.add('A1:B2', true),
      (sheet: Excel.Worksheet) => (sheet.getRange('A1').format.fill.color = 'red'),
    ]) {
      const work = run(async (context, sheet) => {
        change(sheet);
        await context.sync();
      });
      expect(await refused(work)).toBe('AccessDenied');
    }
  });

  it('a cell being edited refuses a batch, or makes one wait that says it can', async () => {
    const host = new ExcelHost();
    const { Excel } = connect(host);
    host.startEditing();
    const write = async (context: Excel.RequestContext): Promise<void> => {
      context.workbook.worksheets.getActiveWorksheet().getRange('A1').values = [[1]];
      await context.sync();
    };
    expect(await refused(Excel.run(write))).toBe('InvalidOperationInCellEditMode');
    const waiting = Excel.run({ delayForCellEdit: true }, write);
    await new Promise((done) => setTimeout(done, 20));
    expect(host.book.active.cell(0, 0)).toBeUndefined();
    host.finishEditing();
    await waiting;
    expect(host.book.active.cell(0, 0)?.value).toBe(1);
  });

  it('an answer or a request over 5 MB is refused', async () => {
    const { host, run } = open();
    const long = 'x'.repeat(30_000);
    for (let row = 0; row < 200; row += 1) host.book.active.open(row, 0).value = long;
    const read = run(async (context, sheet) => {
      sheet.getRange('A1:A200').load('values');
      await context.sync();
    });
    expect(await refused(read)).toBe('ResponsePayloadSizeLimitExceeded');
    const write = run(async (context, sheet) => {
      sheet.getRange('B1:B200').values = Array.from({ length: 200 }, () => [long]);
      await context.sync();
    });
    expect(await refused(write)).toBe('RequestPayloadSizeLimitExceeded');
  });

  it('a broken connection refuses, or never answers', async () => {
    const { host, run } = open();
    const ask = (): Promise<void> =>
      run(async (context) => {
        context.workbook.load('name');
        await context.sync();
      });
    await ask();
    host.tripsLeft = 0;
    expect(await refused(ask())).toBe('ConnectionFailure');
    host.broken = 'is silent';
    const answer = await Promise.race([ask(), new Promise((done) => setTimeout(() => { done('silence'); }, 50))]); // prettier-ignore
    expect(answer).toBe('silence');
  });

  it('an older Excel says which requirement sets it knows, and the client refuses the rest', async () => {
    const host = new ExcelHost();
    const { Excel, Office } = connect(host, '1.6');
    const { requirements } = Office.context;
    expect(['1.1', '1.6', '1.7'].map((version) => requirements.isSetSupported('ExcelApi', version))).toEqual([
      true,
      true,
      false,
    ]);
    const work = Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getActiveWorksheet();
      sheet.getRange('A1').dataValidation.clear();
      await context.sync();
    });
    expect(await refused(work)).toBe('ApiNotFound');
  });
});
