/** How long the reader takes over a long table in memory. */
import { INCHES } from '../core/exact/unit';
import { readTable } from '../core/window/reader/read';

const ROWS = 100_000;
const HEADINGS =
  'Order,Date,Client,Room,Inside W,Ext L,Ext R,Rod,FL,Hdg,Draw,Fabric,Fab W,V Rpt,Lining,Widths,Cut,Qty,Yds,$/yd'.split(
    ',',
  );
const FIRST_DAY = 45_000;

const among = <T>(list: readonly T[], at: number): T => list[at % list.length] as T;

/** Orders of four windows each, every column a workroom's sheet usually has. */
function row(at: number): (string | number | { day: number })[] {
  const opening = 30 + (at % 70);
  return [
    `K${1_000 + (at >> 2)}`,
    { day: FIRST_DAY + (at % 300) },
    `Client ${at % 50}`,
    `Room ${at % 400}`,
    opening,
    10,
    10,
    opening + 20,
    84 + (at % 24),
    among(['pinch', 'grommet', 'goblet'], at),
    among(['pair', 'one-way left'], at),
    among(['Ash', 'Elm', 'Fir'], at),
    54,
    among([0, 27, 13.5], at),
    among(['lined', 'unlined'], at),
    4,
    112,
    1 + (at % 3),
    12.5,
    22,
  ];
}

export function benchReading(): readonly string[] {
  const rows = [HEADINGS, ...Array.from({ length: ROWS }, (_, at) => row(at))];
  const times = [1, 2, 3].map(() => {
    const from = process.cpuUsage();
    const read = readTable({ rows }, { unit: INCHES });
    const { user, system } = process.cpuUsage(from);
    if (!('rows' in read) || read.rows.length !== ROWS) throw new Error('the table is not read');
    return (user + system) / 1e6;
  });
  const best = Math.min(...times);
  return [
    `${ROWS.toLocaleString('en-US')} rows × ${HEADINGS.length} columns: ${best.toFixed(2)} s of processor time, the best of three; aim under 2 s, ${best < 2 ? 'met' : 'not met in this run'}.`,
  ];
}
