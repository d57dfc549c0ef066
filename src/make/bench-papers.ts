/** How long the papers of a job of many windows take by the command, and how large their file is. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { areaAt, type Area } from '../book/address';
import type { CellPut, Put } from '../book/book';
import type { Draft } from '../book/sheets/draft';
import { jobChanges, USUAL_JOB } from '../book/template';
import { workbookOf } from '../file/papers/values-only';
import { replaceFile, zipped } from '../file/xlsx/archive';

export const WINDOWS = 80;
const FABRICS = ['Heron linen', 'Garden print', 'Mist sheer'];
const HEADINGS = ['pinch', 'grommet', 'wave', 'box'];

type Row = Readonly<Record<string, CellPut>>;

/** Rows typed under the headings that begin so, in a table of the draft. */
function typed(draft: Draft, table: string, rows: readonly Row[]): Put[] {
  const area = draft.newTables?.find(({ name }) => name === table)?.area as Area;
  const header = draft.puts?.find(
    ({ area: at }) => at.sheet === area.sheet && at.row === area.row && at.column === area.column,
  );
  const headings = (header?.cells?.[0] ?? []).map(String);
  return rows.flatMap((row, down) =>
    Object.entries(row).map(([heading, value]): Put => {
      const column = headings.findIndex((one) => one.startsWith(heading));
      if (column < 0) throw new Error(`${table} has no column “${heading}”`);
      return { area: areaAt(area.sheet, area.row + 1 + down, area.column + column), cells: [[value]] };
    }),
  );
}

const MONEY: Row = { Price_rod: 18, Price_bracket: 11, Price_installation: 65, Sell_rate: 0.5 };
const CHARGE = 40;

/** Prices by the names of their cells, and one making charge beside each of the words for them. */
function priced({ puts = [], newNames = [] }: Draft): Put[] {
  const cells = newNames.flatMap(({ name, area }): Put[] =>
    MONEY[name] === undefined ? [] : [{ area, cells: [[MONEY[name]]] }],
  );
  const charges = puts.flatMap(({ area, cells: words = [] }): Put[] =>
    area.sheet === 'Prices' && area.column === 0
      ? words.flatMap(([label], down): Put[] =>
          /^labor (?:pinch|grommet|wave|box|lined)$/.test(String(label))
            ? [{ area: areaAt(area.sheet, area.row + down, 1), cells: [[CHARGE]] }]
            : [],
        )
      : [],
  );
  return [...cells, ...charges];
}

/** A job of our own sheets, every window another one, three cloths on rolls. */
export function jobOfMany(): Draft {
  const draft = jobChanges({ ...USUAL_JOB, windows: WINDOWS }, { sheets: [], tables: [], names: [] })
    .changes as Draft;
  const windows = Array.from({ length: WINDOWS }, (_, at): Row => ({
    room: `Room ${at + 1}`,
    quantity: 1 + (at % 3),
    'inside width': 40 + at,
    'left extension': 10,
    'right extension': 10,
    'measured height': 90 + (at % 12),
    heading: HEADINGS[at % HEADINGS.length],
    draw: 'pair',
    fabric: FABRICS[at % FABRICS.length],
    lining: at % 3 === 2 ? 'unlined' : 'lined',
  }));
  const fabrics = FABRICS.map((fabric, at): Row => ({
    fabric,
    supplier: `Mill ${at + 1}`,
    'fabric width': 54,
    'vertical repeat': at === 1 ? 25.25 : 0,
    'price a': 30 + at,
    'whole roll': 60,
  }));
  return {
    ...draft,
    puts: [
      ...(draft.puts ?? []),
      ...typed(draft, 'Windows', windows),
      ...typed(draft, 'Fabrics', fabrics),
      ...priced(draft),
    ],
  };
}

export interface PapersTimed {
  readonly seconds: number;
  /** Of the processor, whatever else the machine does meanwhile. */
  readonly busy: number;
  readonly bytes: number;
  readonly papers: string;
}

/** Says at the end how long the processor worked for it. */
const TELLS =
  'data:text/javascript,process.on("exit",()=>{const{user,system}=process.cpuUsage();process.stderr.write("busy "+(user+system)/1e6)})';

/** From the start of the command to its end. */
export async function benchPapers(): Promise<PapersTimed> {
  const folder = await mkdtemp(join(tmpdir(), 'hem-bench-'));
  try {
    const [from, to] = [join(folder, 'job.xlsx'), join(folder, 'papers.xlsx')];
    await replaceFile(from, zipped(workbookOf(jobOfMany())));
    const run = async (): Promise<readonly [said: string, told: string]> => {
      const words = ['--import', TELLS, 'src/make/hem.mjs', 'papers', from, '-o', to];
      const child = spawn(process.execPath, words);
      let [said, told] = ['', ''];
      child.stdout.on('data', (part: Buffer) => (said += part.toString()));
      child.stderr.on('data', (part: Buffer) => (told += part.toString()));
      await once(child, 'close');
      return [said, told];
    };
    // The first start may make the command’s bundle.
    await run();
    const began = performance.now();
    const [papers, told] = await run();
    return {
      seconds: (performance.now() - began) / 1000,
      busy: Number(/busy (\S+)/.exec(told)?.[1]),
      bytes: (await stat(to)).size,
      papers: papers.trim(),
    };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
