/** What a floor comes to, in lines a person reads: cloth, rolls, hardware, savings, findings. */
import type { Finding } from '../core/answer';
import { savings, turnedSaves } from '../core/floor';
import { clothJob, clothsOf, type Cloth } from '../core/floor-cuts';
import type { WindowWork } from '../core/job';
import { inches, toUnit, UNITS, type Length } from '../core/length';
import { fabricOf, type Tally } from '../core/tally';
import { cutPlan } from '../core/rolls';
import type { Rules } from '../core/rules';
import { digits, showLength, showYardage, type Unit } from '../core/unit';
import type { WindowsRead } from './windows';
import { counted } from './problem';

/** A rod is offered narrower by no more than this. */
const MOST_NARROWER = inches(4);
const LINES = 12;

const left = (text: string, width: number): string => text.padEnd(width);
const right = (text: string, width: number): string => text.padStart(width);

function rollsOf(cloth: Cloth, roll: Length, rules: Rules, unit: Unit): string {
  const plan = cutPlan(clothJob(cloth, { ordered: roll }, unit), rules).value;
  const proof = plan.proven ? 'proven fewest' : `at least ${plan.lowerBound}`;
  return `${counted(plan.rolls.length, 'roll')} of ${showYardage(roll, unit)} (${proof})`;
}

/** Cloth by fabric, with how many rolls of one length it takes where one is given. */
export function clothLines(
  windows: readonly WindowWork[],
  { face, lining }: Tally,
  roll: Length | undefined,
  unit: Unit,
): string[] {
  const cloths = roll === undefined ? [] : clothsOf(windows);
  const rollsLine = (like: (cloth: Cloth) => boolean): string => {
    const rolls = cloths
      .filter((cloth) => like(cloth) && cloth.cuts.length > 0)
      .map((cloth) => rollsOf(cloth, roll as Length, (windows[0] as WindowWork).rules, unit));
    return rolls.length === 0 ? '' : `   ${rolls.join(', ')}`;
  };
  const width = Math.max(...face.map(({ name }) => name.length), 'lining'.length) + 2;
  const lines = face.map((total) => {
    const count = right(counted(total.windows, 'window'), 11);
    const cuts = right(`${total.cuts} cuts`, 10);
    const yards = right(showYardage(total.yardage, unit), 14);
    const rolls = rollsLine(({ name, layer }) => layer === 'face' && name === total.name);
    return `  ${left(total.name, width)}${count}${cuts}${yards}${rolls}`;
  });
  if (lining > 0)
    lines.push(
      `  ${left('lining', width)}${right('', 21)}${right(showYardage(lining, unit), 14)}${rollsLine(({ layer }) => layer === 'lining')}`,
    );
  return lines;
}

export function hardwareLine({ rings, brackets, finials, rod }: Tally, unit: Unit): string {
  const long =
    unit.large === 'yd'
      ? `${digits(Math.round(rod / UNITS.ft))} ft`
      : `${digits(Math.round(toUnit(rod, 'm')))} m`;
  return `  rods ${long} in all, rings and carriers ${rings}, brackets ${brackets}, finials ${finials}`;
}

/** Windows that save a width with a slightly narrower rod, alike ones on one line. */
export function savingLines(windows: readonly WindowWork[], unit: Unit): string[] {
  const alike = new Map<string, { rooms: number; yardage: number; widths: number }>();
  for (const { work, narrower, widthsSaved, yardageSaved } of savings(
    windows,
    MOST_NARROWER,
    () => undefined,
  )) {
    const key = `a rod ${showLength(narrower, unit)} narrower than ${showLength(work.window.rodWidth ?? work.rodWidth().value, unit)}`;
    const sum = alike.get(key) ?? { rooms: 0, yardage: 0, widths: 0 };
    alike.set(key, {
      rooms: sum.rooms + work.quantity,
      yardage: sum.yardage + yardageSaved,
      widths: sum.widths + widthsSaved,
    });
  }
  const lines = [...alike].map(
    ([key, { rooms, yardage, widths }]) =>
      `  ${key} saves ${digits(widths)} widths at ${counted(rooms, 'window')}: ${showYardage(yardage as Length, unit)}`,
  );
  const turned = windows
    .map((work) => [work, turnedSaves(work)] as const)
    .filter((one): one is readonly [WindowWork, Length] => one[1] !== undefined && one[1] > 0);
  const byFabric = new Map<string, number>();
  for (const [work, saved] of turned)
    byFabric.set(fabricOf(work), (byFabric.get(fabricOf(work)) ?? 0) + saved);
  for (const [fabric, saved] of byFabric)
    lines.push(
      `  ${fabric} railroaded saves ${showYardage(saved as Length, unit)}, if pattern and pile allow it`,
    );
  if (lines.length === 0) lines.push(`  no rod is within ${showLength(MOST_NARROWER, unit)} of a width less`);
  return lines;
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
