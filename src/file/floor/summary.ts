/** What a floor comes to, in lines a person reads: cloth, rolls, hardware, savings, findings. */
import type { Floor } from '../../book/floor/floor';
import { adviceOf, MOST_NARROWER } from '../../book/floor/advice';
import type { Finding } from '../../core/cell/answer';
import type { ClothPrice } from '../../core/floor/cloth-price';
import { clothJob, clothsOf, type Cloth } from '../../core/floor/floor-cuts';
import { PIECE_WORDS } from '../../core/heading/fittings';
import type { WindowWork } from '../../core/window/job';
import { toUnit, UNITS, type Length } from '../../core/exact/length';
import type { Tally } from '../../core/floor/tally';
import { cutPlan } from '../../core/rolls/rolls';
import type { Rules } from '../../core/house/rules';
import { digits, showLength, showYardage, type Unit } from '../../core/exact/unit';
import type { WindowsRead } from './windows';
import { counted } from '../problem';

const LINES = 12;

const left = (text: string, width: number): string => text.padEnd(width);
const right = (text: string, width: number): string => text.padStart(width);

function rollsOf(cloth: Cloth, roll: Length, rules: Rules, unit: Unit): string {
  const plan = cutPlan(clothJob(cloth, { ordered: roll }, unit), rules).value;
  const proof = plan.proven ? 'proven fewest' : `at least ${plan.lowerBound}`;
  return `${counted(plan.rolls.length, 'roll')} of ${showYardage(roll, unit)} (${proof})`;
}

/** Cloth by fabric, then what lies behind the face, with how many rolls of one length it takes where one is given. */
export function clothLines(
  windows: readonly WindowWork[],
  { face, behind }: Tally,
  roll: Length | undefined,
  unit: Unit,
): string[] {
  const cloths = roll === undefined ? [] : clothsOf(windows);
  const rollsLine = (like: (cloth: Cloth) => boolean): string => {
    const some = cloths.filter((cloth) => like(cloth) && cloth.cuts.length > 0);
    const rolls = some.map((cloth) => {
      const words = rollsOf(cloth, roll as Length, (windows[0] as WindowWork).rules, unit);
      return some.length > 1 ? `${cloth.name}: ${words}` : words;
    });
    return rolls.length === 0 ? '' : `   ${rolls.join('; ')}`;
  };
  const all = [...face, ...behind];
  const width = Math.max(...all.map(({ name }) => name.length)) + 2;
  const isFace = new Set<object>(face);
  return all.map((total) => {
    const count = right(counted(total.windows, 'window'), 11);
    const cuts = right(`${total.cuts} cuts`, 10);
    const yards = right(showYardage(total.yardage, unit), 14);
    const rolls = rollsLine(
      ({ pricedAs, layer }) => (layer === 'face') === isFace.has(total) && pricedAs === total.name,
    );
    return `  ${left(total.name, width)}${count}${cuts}${yards}${rolls}`;
  });
}

export function hardwareLine({ hardware }: Pick<Tally, 'hardware'>, unit: Unit): string {
  const { rod } = hardware;
  const long =
    unit.large === 'yd'
      ? `${digits(Math.round(rod / UNITS.ft))} ft`
      : `${digits(Math.round(toUnit(rod, 'm')))} m`;
  const counts = PIECE_WORDS.filter(([key]) => hardware[key] > 0).map(
    ([key, what]) => `, ${what} ${hardware[key]}`,
  );
  return `  rods ${long} in all${counts.join('')}`;
}

/** What would save cloth, the most first: narrower rods, turned cloth; its worth where prices are known. */
export function savingLines(
  floor: Pick<Floor, 'windows' | 'house'>,
  prices: ReadonlyMap<string, ClothPrice> = new Map(),
): string[] {
  const advice = adviceOf(floor, prices);
  if (advice.length === 0)
    return [`  no rod is within ${showLength(MOST_NARROWER, floor.house.unit)} of a width less`];
  const lines = advice.slice(0, LINES).map(({ sentence }) => `  ${sentence}`);
  return advice.length > LINES ? [...lines, `  and ${advice.length - LINES} more`] : lines;
}

/** Findings of all windows, alike ones counted, the heaviest first. */
export function findingLines(read: WindowsRead): string[] {
  const order = { stop: 0, check: 1, note: 2 };
  const seen = new Map<string, { finding: Finding; count: number; room: string | undefined }>();
  for (const work of read.windows) {
    work.finishedDrop();
    work.rodWidth();
    work.marks();
    for (const finding of work.findings()) {
      const known = seen.get(finding.sentence);
      seen.set(finding.sentence, {
        finding,
        count: (known?.count ?? 0) + work.quantity,
        room: known?.room ?? work.window.room,
      });
    }
  }
  const lines = read.unread.map(({ sheet, row, sentence }) => `  stop   ${sheet} row ${row}: ${sentence}`);
  const found = [...seen.values()].sort(
    (a, b) => order[a.finding.weight] - order[b.finding.weight] || b.count - a.count,
  );
  for (const { finding, count, room } of found.slice(0, LINES)) {
    const where = count === 1 && room !== undefined ? `room ${room}` : counted(count, 'window');
    lines.push(`  ${left(finding.weight, 6)} ${where}: ${finding.sentence}`);
  }
  if (found.length > LINES) lines.push(`  and ${counted(found.length - LINES, 'finding')} more`);
  return lines;
}
