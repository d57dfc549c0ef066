/** The point that heights were measured to: said by a heading or a line above, or told by the drops beside them. */
import type { MeasuredTo } from '../../cell/treatment';
import { toUnit, type Length } from '../../exact/length';
import { DEFAULT_HOUSE } from '../../house/house';
import type { OrderKey } from '../meanings';
import type { Evidence } from './evidence';
import { headingOfText } from './treatment-text';

interface Means {
  readonly means: readonly OrderKey[];
}

const { dropNewRodRings, dropNewRodGrommet, dropHungRing, dropHungRodGrommet } = DEFAULT_HOUSE.rules;
/** How far a finished drop lies over the height, on rings and on grommets, where it tells the point. */
const OVER: readonly (readonly [MeasuredTo, rings: Length | undefined, grommets: Length | undefined])[] = [
  ['new rod', dropNewRodRings, dropNewRodGrommet],
  ['hung rod', undefined, dropHungRodGrommet],
  ['hung ring', dropHungRing, undefined],
];
const NEAR = 0.05;
const LEAST_ROWS = 3;
const HELD = 0.8;

function byDrops(evidence: readonly Evidence[], columns: readonly Means[]): MeasuredTo | undefined {
  const column = (key: OrderKey): Evidence | undefined =>
    evidence[columns.findIndex(({ means }) => means.includes(key))];
  const [height, drop, heading] = [column('measured'), column('finishedDrop'), column('heading')];
  if (height === undefined || drop === undefined) return undefined;
  const rows = [...height.inches.keys()].flatMap((row) => {
    const over = (drop.inches[row] ?? NaN) - (height.inches[row] ?? NaN);
    const cell = heading?.cells[row];
    return Number.isNaN(over)
      ? []
      : [{ over, grommets: typeof cell === 'string' && headingOfText(cell) === 'grommet' }];
  });
  if (rows.length < LEAST_ROWS) return undefined;
  return OVER.find(([, rings, grommets]) => {
    const held = rows.filter((row) => {
      const shift = row.grommets ? grommets : rings;
      return shift !== undefined && Math.abs(row.over - toUnit(shift, 'in')) < NEAR;
    });
    return held.length >= rows.length * HELD;
  })?.[0];
}

/** What a heading says of it; a rod of which nothing says whether it hangs is “a rod”. */
function saidIn(heading: string): MeasuredTo | 'a rod' | undefined {
  if (/\b(?:ceiling|clg|ceil)\b/.test(heading)) return 'ceiling';
  if (/\brings?\b/.test(heading)) return 'hung ring';
  if (/\b(?:track|rail)\b/.test(heading)) return 'track';
  const [, state] = /\b(?:(new|hung|existing) )?(?:rod|pole)\b/.exec(heading) ?? [undefined, 'none'];
  return state === 'none'
    ? undefined
    : state === undefined
      ? 'a rod'
      : state === 'new'
        ? 'new rod'
        : 'hung rod';
}

/** The point of every row; undefined where nothing tells it. */
export function measuredPoint(
  evidence: readonly Evidence[],
  columns: readonly Means[],
  above: MeasuredTo | 'a rod' | undefined,
): MeasuredTo | undefined {
  const at = columns.findIndex(({ means }) => means.includes('measured'));
  const said = [saidIn(evidence[at]?.text.toLowerCase() ?? ''), above];
  const told = said.find((one): one is MeasuredTo => one !== undefined && one !== 'a rod');
  if (told !== undefined) return told;
  return said.includes('a rod') ? byDrops(evidence, columns) : undefined;
}
