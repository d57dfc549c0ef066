import { describe, expect, it } from 'vitest';
import { clothFindings, clothJob, clothsOf } from '../../../src/core/floor/floor-cuts';
import { furtherOn, motifFindings } from '../../../src/core/floor/motif';
import { readHouse } from '../../../src/core/house/house';
import { INCHES } from '../../../src/core/exact/unit';
import { toUnit } from '../../../src/core/exact/length';
import { cutPlan } from '../../../src/core/rolls/rolls';
import type { Window } from '../../../src/core/window/columns';
import { WindowWork } from '../../../src/core/window/job';
import { inches } from '../papers/invented';

const { rules } = readHouse(null);
const window = (more: Partial<Window>): WindowWork =>
  new WindowWork(
    {
      room: 'Salon',
      rodWidth: inches(60),
      finishedDrop: inches(96),
      heading: 'pinch',
      fabric: 'Orchard',
      fabricWidth: inches(54),
      verticalRepeat: inches(25),
      ...more,
    },
    rules,
  );
const by = (...windows: readonly WindowWork[]): readonly number[] =>
  furtherOn(windows).map((one) => toUnit(one.by, 'in'));

describe('windows of one room', () => {
  it('begin further on in the repeat where their tops stand lower, by what is over whole repeats', () => {
    expect(by(window({}), window({ finishedDrop: inches(84) }))).toEqual([12]);
    expect(by(window({ finishedDrop: inches(84) }), window({}))).toEqual([12]);
    // 37 is a repeat and 12.
    expect(by(window({}), window({ finishedDrop: inches(59) }))).toEqual([12]);
  });

  it('begin alike where their tops are alike, or whole repeats apart, or no more than a tolerance', () => {
    expect(by(window({}), window({}))).toEqual([]);
    expect(by(window({}), window({ finishedDrop: inches(71) }))).toEqual([]);
    expect(by(window({}), window({ finishedDrop: inches(95.75) }))).toEqual([]);
    expect(by(window({}), window({ finishedDrop: inches(71.25) }))).toEqual([]);
    expect(by(window({}), window({ finishedDrop: inches(95.5) }))).toEqual([0.5]);
  });

  it('stand by their tops, whatever lies on the floor', () => {
    const measured = { finishedDrop: undefined, measured: inches(98) };
    const puddled = window({ ...measured, floorFinish: 'puddle' });
    expect(puddled.finishedDrop().value).toBeGreaterThan(window(measured).finishedDrop().value);
    expect(by(window(measured), puddled)).toEqual([]);
  });

  it('are not compared across rooms, cloths or repeats, without a room, or above an edge whose height is not told', () => {
    const short = { finishedDrop: inches(84) };
    for (const other of [
      { room: 'Study' },
      { fabric: 'Meadow' },
      { verticalRepeat: inches(20) },
      { verticalRepeat: undefined },
      { floorFinish: 'sill' as const },
    ])
      expect(by(window({}), window({ ...short, ...other })), JSON.stringify(other)).toEqual([]);
    expect(by(window({ room: undefined }), window({ ...short, room: undefined }))).toEqual([]);
  });
});

describe('the finding', () => {
  const works = [window({}), window({ finishedDrop: inches(84) }), window({ finishedDrop: inches(84) })];
  const SENTENCE =
    'Salon: Orchard matches at one height above the floor, so the windows of 84 in begin 12 in further on in its repeat than those of 96 in, which may take up to 12 in more cloth. Order it with the cloth, and chalk it on the cuts.';

  it('is said once for windows alike', () => {
    expect(motifFindings(works).map(({ sentence }) => sentence)).toEqual([SENTENCE]);
  });

  it('stands with the plan of its cloth', () => {
    const [cloth] = clothsOf(works);
    const job = clothJob(cloth!, { ordered: inches(60 * 36) }, INCHES);
    const { value } = cutPlan(job, rules);
    expect(clothFindings(cloth!, job, value, INCHES).map(({ sentence }) => sentence)).toContain(SENTENCE);
  });
});
