/**
 * Golden drawings: each file of drawings/ gives a window (or a bay, or a roll) and what its drawing shows, in the
 * unit of the file, as looked at by eye on paper. `npx vitest run -u` writes them anew: look at them again then.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { bayPlan } from '../../../src/core/drawing/bay';
import type { Drawing } from '../../../src/core/drawing/drawing';
import { elevation } from '../../../src/core/drawing/elevation';
import { headingMarks } from '../../../src/core/drawing/heading-marks';
import { cutLengths, rollDrawing } from '../../../src/core/drawing/roll';
import { inches, toUnit } from '../../../src/core/exact/length';
import { INCHES, showLength } from '../../../src/core/exact/unit';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import { cutPlan } from '../../../src/core/rolls/rolls';
import { windowUnder } from '../window/ordered';
import { WindowWork } from '../../../src/core/window/job';
import { making } from '../../../src/core/window/panels';
import GIVEN from './drawings/given.json';

const FOLDER = fileURLToPath(new URL('drawings', import.meta.url));
const fileOf = (name: string): string => `${name.replace(/ /g, '-')}.txt`;
const show = (figure: number): string => String(Math.round(toUnit(figure, 'in') * 1000) / 1000);
const at = (places: readonly number[]): string => places.map(show).join(',');

/** A mark a line, so that a reviewer reads it and a change shows where it is. */
function marksOf(drawing: Drawing): readonly string[] {
  return [
    drawing.title,
    `from ${at([drawing.left, drawing.bottom])} to ${at([drawing.right, drawing.top])}`,
    ...drawing.boxes.map(
      (box) =>
        `${box.part} ${at([box.x, box.y])} ${show(box.width)} wide ${show(box.height)} high${box.says === undefined ? '' : ` (${box.says})`}`,
    ),
    ...drawing.lines.map((line) => `${line.part} ${at(line.from)} to ${at(line.to)}`),
    ...drawing.rounds.map((one) => `${one.part} round ${at(one.at)}`),
    ...drawing.labels.map(({ words, at: place }) => `“${words}” at ${at(place)}`),
    ...drawing.dimensions.map(
      (one) => `${one.what} ${show(one.length)}, ${one.side}, ${show(one.from)} to ${show(one.to)}`,
    ),
    ...drawing.notes,
  ];
}

const workOf = (given: Readonly<Record<string, unknown>>): WindowWork =>
  new WindowWork(windowUnder(Object.keys(given), Object.values(given), INCHES).window, DEFAULT_RULES);

interface Given {
  readonly window?: Readonly<Record<string, unknown>>;
  readonly bay?: { readonly parts: readonly number[]; readonly bends: readonly number[] };
  readonly roll?: {
    readonly yards: number;
    readonly cuts: readonly (readonly [inches: number, count: number, room: string])[];
  };
}

function drawingsOf({ window, bay, roll }: Given): readonly Drawing[] {
  if (bay !== undefined)
    return [
      bayPlan({
        parts: bay.parts.map(inches),
        bends: bay.bends,
        show: (length) => showLength(length, INCHES),
      }),
    ];
  if (roll !== undefined) {
    const cuts = roll.cuts.map(([length, count, room]) => ({ length: inches(length), count, room }));
    const rolls = [{ length: inches(roll.yards * 36), toStart: inches(10) }];
    const plan = cutPlan({ cuts, rolls, supply: 'as many as it takes' }, DEFAULT_RULES).value;
    const lengths = cutLengths(plan.rolls, INCHES);
    return plan.rolls.map((one) => rollDrawing(one, { flaws: [], lengths, unit: INCHES }));
  }
  const work = workOf(window ?? {});
  const panels = making(work).panels.filter((panel) => panel.window === 1);
  return [elevation(work), ...panels.flatMap((panel) => headingMarks(work, panel) ?? [])];
}

describe('drawings as they were looked at', () => {
  it.each(Object.entries(GIVEN as unknown as Readonly<Record<string, Given>>))('%s', async (name, given) => {
    const drawn = drawingsOf(given).map((one) => marksOf(one).join('\n'));
    await expect(`${drawn.join('\n\n')}\n`).toMatchFileSnapshot(join(FOLDER, fileOf(name)));
  });

  it('has no file that nothing draws', () => {
    const files = readdirSync(FOLDER).filter((file) => file.endsWith('.txt'));
    expect(files.sort()).toEqual(Object.keys(GIVEN).map(fileOf).sort());
  });
});
