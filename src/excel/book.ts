/** The open workbook in Excel as a Book: every wish in few requests, every refusal a sentence. */
import { readAddress, wholeSheet, type Area } from '../book/address';
import type { Ability, Block, Book, Changes, Contents, Detail, Mark, Stop } from '../book/book';
import { Trouble, trouble } from '../book/trouble';
import { marksOn, putMarks, takeMarks } from './marks';
import { joined, rangeOf, readBlocks, readContents } from './read';
import { asTrouble, codeOf, type About } from './refusal';
import { carryOut, settingOf, type Desk } from './write';

/** What the page gives: the client, and what this Excel knows. */
export interface ExcelHere {
  readonly Excel: Pick<typeof Excel, 'run'>;
  readonly requirements: { isSetSupported(name: string, version: string): boolean };
}

/** Without these nothing here works: row properties, page layout, selected areas. */
const NEEDED = '1.9';

/** The figures of a drawing stand in words beside it as well. */
const NO_DRAWINGS =
  'This Excel takes no drawings from an add-in: the papers are written without them, and what they show is said in words.';

const SENTENCES: readonly (readonly [Ability, string, string])[] = [
  [
    'tables',
    '1.13',
    'This Excel cannot stretch a table over new columns: they are written beside it, and the table can be widened by hand.',
  ],
  [
    'comments',
    '1.10',
    'This Excel cannot take remarks from an add-in: findings are coloured, and their sentences stand in the pane.',
  ],
  ['drawings', '1.10', NO_DRAWINGS],
  [
    'undo',
    '1.20',
    'This Excel may not take back what the pane writes: save the workbook before a long fill.',
  ],
];

/** Cells asked for at once. Blank ones weigh nothing; where filled ones are more than the 5 MB that Excel on the web gives, halves are asked for. */
const MOST_CELLS = 500_000;

/** While a cell is being edited, how often it is asked whether it was left, in milliseconds. */
const LOOKS_AGAIN = 400;

export class ExcelBook implements Book {
  /** One formula is sent once for all the cells it fills. */
  readonly fills = 400_000;
  readonly joinsRequests = false;

  private constructor(
    private readonly here: ExcelHere,
    readonly title: string,
    readonly lacks: Map<Ability, string>,
    /** How long an answer may take before the connection counts as lost, in milliseconds. */
    private readonly patience: number,
    readonly owner: string,
  ) {}

  static async open(
    here: ExcelHere,
    { patience = 120_000, owner = String(crypto.randomUUID()) } = {},
  ): Promise<ExcelBook> {
    const knows = (version: string): boolean => here.requirements.isSetSupported('ExcelApi', version);
    if (!knows(NEEDED))
      throw trouble(
        'tooOld',
        'open the pane: it needs Microsoft 365, Excel on the web, Excel 2021 or later, or a retail Excel 2016 or 2019 at version 2311 or later',
      );
    const lacks = new Map(
      SENTENCES.filter(([, version]) => !knows(version)).map(([ability, , says]) => [ability, says]),
    );
    const nameless = new ExcelBook(here, '', lacks, patience, owner);
    const title = await nameless.run({}, async ({ context }) => {
      context.workbook.load('name');
      await context.sync();
      return context.workbook.name;
    });
    return new ExcelBook(here, title, lacks, patience, owner);
  }

  contents(): Promise<Contents> {
    return this.run({}, ({ context }) => readContents(context));
  }

  selection(): Promise<Area> {
    return this.run({ thing: 'The selection' }, async ({ context }) => {
      const area = context.workbook.getSelectedRanges().areas.getItemAt(0);
      area.load('address');
      await context.sync();
      const read = readAddress(area.address);
      if (read === undefined) throw trouble('missing', 'The selection');
      return read;
    });
  }

  async onSelection(listener: (area: Area) => void): Promise<Stop> {
    const told = await this.run({}, async ({ context }) => {
      const handler = context.workbook.worksheets.onSelectionChanged.add(async () => {
        // A selection that cannot be told just now (a chart, a cell being edited) is told with the next one.
        const area = await this.selection().catch(() => undefined);
        if (area !== undefined) listener(area);
      });
      await context.sync();
      return handler;
    });
    return () => {
      told.remove();
      void told.context.sync().catch(() => undefined);
    };
  }

  async onChange(listener: (area: Area) => void): Promise<Stop> {
    const told = await this.run({}, async ({ context }) => {
      const handler = context.workbook.worksheets.onChanged.add(async ({ worksheetId, address }) => {
        const sheet = await this.sheetNamed(worksheetId).catch(() => undefined);
        // Whole rows and columns have no address of cells: any of the sheet may have moved.
        if (sheet !== undefined) listener(readAddress(address, sheet) ?? wholeSheet(sheet));
      });
      await context.sync();
      return handler;
    });
    return () => {
      told.remove();
      void told.context.sync().catch(() => undefined);
    };
  }

  private sheetNamed(id: string): Promise<string> {
    return this.run({}, async ({ context }) => {
      const sheet = context.workbook.worksheets.getItem(id);
      sheet.load('name');
      await context.sync();
      return sheet.name;
    });
  }

  goTo(area: Area): Promise<void> {
    return this.run(onSheet(area.sheet), async ({ context }) => {
      context.workbook.worksheets.getItem(area.sheet).activate();
      rangeOf(context, area).select();
      await context.sync();
    });
  }

  async read(areas: readonly Area[], detail: Detail = 'whole'): Promise<readonly Block[]> {
    const blocks: Block[] = [];
    for (const some of requests(areas)) {
      const parts = await this.readSome(
        some.map(({ area }) => area),
        detail,
      );
      for (const [at, { index }] of some.entries()) {
        const earlier = blocks[index];
        const part = parts[at] as Block;
        blocks[index] = joined(areas[index] as Area, earlier === undefined ? [part] : [earlier, part]);
      }
    }
    return blocks;
  }

  /** Long texts may still be too much for one answer: then half of it is asked for, and the other half. */
  private async readSome(areas: readonly Area[], detail: Detail): Promise<readonly Block[]> {
    const merged = detail !== 'cells' && this.here.requirements.isSetSupported('ExcelApi', '1.13');
    const wants = { formats: detail === 'whole', merged };
    try {
      return await this.run(
        { sheets: areas.map(({ sheet }) => sheet), thing: 'What was to be read' },
        ({ context }) => readBlocks(context, areas, wants),
      );
    } catch (failure) {
      if (!(failure instanceof Trouble) || failure.code !== 'tooLarge') throw failure;
      const [only] = areas;
      if (areas.length > 1) {
        const middle = Math.ceil(areas.length / 2);
        return [
          ...(await this.readSome(areas.slice(0, middle), detail)),
          ...(await this.readSome(areas.slice(middle), detail)),
        ];
      }
      if (only === undefined || only.rows < 2) throw failure;
      const rows = Math.ceil(only.rows / 2);
      const [above] = await this.readSome([{ ...only, rows }], detail);
      const [below] = await this.readSome(
        [{ ...only, row: only.row + rows, rows: only.rows - rows }],
        detail,
      );
      return [joined(only, [above as Block, below as Block])];
    }
  }

  /**
   * No request waits in Excel for a cell to be left: it is refused, so that what was looked over can be looked
   * over again, and no answer is late because a person is typing.
   * Excel keeps one undo record a request. Merging several (mergeUndoGroup) is not asked for: Excel refuses a
   * group that holds a call it cannot undo, and putting back deletes sheets.
   */
  async inOneStep(
    _says: string,
    work: (write: (changes: Changes) => Promise<void>) => Promise<void>,
  ): Promise<void> {
    await work((changes) => this.run(about(changes), (desk) => carryOut(desk, changes)));
  }

  async whenLeft(signal?: AbortSignal): Promise<void> {
    while (signal?.aborted !== true && (await this.isBeingEdited()))
      await new Promise((resolve) => setTimeout(resolve, LOOKS_AGAIN));
  }

  private async isBeingEdited(): Promise<boolean> {
    try {
      await this.run({}, ({ context }) => {
        // An empty request would not be sent.
        context.workbook.load('name');
        return context.sync();
      });
      return false;
    } catch (failure) {
      if (failure instanceof Trouble && failure.code === 'editing') return true;
      throw failure;
    }
  }

  recalculate(): Promise<void> {
    return this.run({}, async ({ context }) => {
      context.workbook.application.calculate('Full');
      await context.sync();
    });
  }

  mark(marks: readonly Mark[]): Promise<void> {
    return this.run({ sheets: marks.map(({ area }) => area.sheet) }, (desk) => putMarks(desk, marks));
  }

  marked(sheet: string): Promise<number> {
    return this.run(onSheet(sheet), (desk) => marksOn(desk, sheet));
  }

  unmark(sheet?: string): Promise<void> {
    return this.run(sheet === undefined ? {} : onSheet(sheet), (desk) => takeMarks(desk, sheet));
  }

  recall(key: string): Promise<unknown> {
    return this.run({}, async ({ context }) => {
      const setting = context.workbook.settings.getItemOrNullObject(settingOf(key));
      setting.load('value');
      await context.sync();
      return setting.isNullObject ? undefined : (JSON.parse(String(setting.value)) as unknown);
    });
  }

  remember(key: string, value: unknown): Promise<void> {
    return this.run({}, async ({ context }) => {
      const { settings } = context.workbook;
      if (value !== undefined) settings.add(settingOf(key), JSON.stringify(value));
      else {
        const setting = settings.getItemOrNullObject(settingOf(key));
        await context.sync();
        if (!setting.isNullObject) setting.delete();
      }
      await context.sync();
    });
  }

  // How it is asked

  private async run<T>(asked: Asked, work: (desk: Desk) => Promise<T>): Promise<T> {
    try {
      return await this.here.Excel.run((context) => {
        const sync = context.sync.bind(context);
        context.sync = (value) => this.inTime(sync(value));
        return work({
          context,
          lacks: this.lacks,
          without: (ability) => this.lacks.set(ability, NO_DRAWINGS),
        });
      });
    } catch (failure) {
      throw await this.told(failure, asked);
    }
  }

  /** A host that is gone may never answer at all. */
  private inTime<T>(answer: Promise<T>): Promise<T> {
    let bell: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<never>((_, reject) => {
      bell = setTimeout(() => {
        reject(trouble('lost'));
      }, this.patience);
    });
    return Promise.race([answer, late]).finally(() => {
      clearTimeout(bell);
    });
  }

  /** Excel's refusal as a sentence; which sheet is meant is looked up, for Excel does not say. */
  private async told(failure: unknown, { sheets = [], ...about }: Asked): Promise<unknown> {
    const code = codeOf(failure);
    if ((code !== 'AccessDenied' && code !== 'ItemNotFound') || sheets.length === 0)
      return asTrouble(failure, about);
    const seen = (await this.contents()).sheets;
    const sheetNamed = (name: string) => seen.find((one) => one.name.toLowerCase() === name.toLowerCase());
    const missing = sheets.find((name) => sheetNamed(name) === undefined);
    const closed = sheets.find((name) => sheetNamed(name)?.protected === true);
    return asTrouble(failure, {
      ...about,
      ...(missing === undefined ? {} : { thing: `The sheet “${missing}”` }),
      ...(closed === undefined ? {} : { sheet: closed }),
    });
  }
}

interface Asked extends About {
  /** The sheets it is about. */
  readonly sheets?: readonly string[];
}

const onSheet = (sheet: string): Asked => ({ sheets: [sheet] });

function about(changes: Changes): Asked {
  const areas = [
    ...(changes.puts ?? []),
    ...(changes.newTables ?? []),
    ...(changes.dress ?? []),
    ...(changes.validations ?? []),
    ...(changes.resize ?? []),
  ];
  const name = [...(changes.newSheets ?? []), ...(changes.newTables ?? []), ...(changes.newNames ?? [])][0]
    ?.name;
  const table = changes.resize?.[0]?.table;
  return {
    sheets: [
      ...new Set([
        ...areas.map(({ area }) => area.sheet),
        ...(changes.layouts ?? []).map(({ sheet }) => sheet),
      ]),
    ],
    ...(name === undefined ? {} : { name }),
    ...(table === undefined ? { thing: 'What was to be written' } : { thing: `The table “${table}”` }),
  };
}

/** Areas in pieces, gathered into requests; `index` says whose piece it is. */
function requests(areas: readonly Area[]): { area: Area; index: number }[][] {
  const list: { area: Area; index: number }[][] = [];
  let room = 0;
  for (const [index, whole] of areas.entries()) {
    const rows = Math.max(1, Math.floor(MOST_CELLS / whole.columns));
    for (let at = 0; at < whole.rows; at += rows) {
      const area = { ...whole, row: whole.row + at, rows: Math.min(rows, whole.rows - at) };
      if (list.length === 0 || area.rows * area.columns > room) {
        list.push([]);
        room = MOST_CELLS;
      }
      list.at(-1)?.push({ area, index });
      room -= area.rows * area.columns;
    }
  }
  return list;
}
