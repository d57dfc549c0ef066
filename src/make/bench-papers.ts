/** How long the papers of a job of many windows take by the command, and how large their file is. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Draft } from '../book/sheets/draft';
import { workbookOf } from '../file/papers/values-only';
import { replaceFile, zipped } from '../file/xlsx/archive';
import { typedJob, type Row } from './typed-job';

export const WINDOWS = 80;
const FABRICS = ['Heron linen', 'Garden print', 'Mist sheer'];
const HEADINGS = ['pinch', 'grommet', 'wave', 'box'];

const MONEY: Row = { Price_rod: 18, Price_bracket: 11, Price_installation: 65, Sell_rate: 0.5 };
const CHARGED = ['pinch', 'grommet', 'wave', 'box', 'lined'];

/** A job of our own sheets, every window another one, three cloths on rolls. */
export function jobOfMany(): Draft {
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
  const charges: Row = Object.fromEntries(CHARGED.map((what) => [`labor ${what}`, 40]));
  return typedJob({ windows, fabrics, cells: MONEY, charges });
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
