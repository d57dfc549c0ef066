import { describe, expect, it } from 'vitest';
import { writeStep } from '../../../src/core/cell/steps';
import { INCHES } from '../../../src/core/exact/unit';
import { readHouse } from '../../../src/core/house/house';
import { inches, toUnit, type Length } from '../../../src/core/exact/length';
import { drop, extension, rodHeight, rodWidth } from '../../../src/core/measure/measure';
import type { FloorFinish, Heading, MeasuredTo } from '../../../src/core/cell/treatment';

const { rules } = readHouse(undefined);
const shown = (worked: { value: Length }): number => toUnit(worked.value, 'in');
const codes = (worked: { findings: readonly { code: string }[] }): readonly string[] =>
  worked.findings.map(({ code }) => code);

describe('the rod', () => {
  it('is the inside width and both extensions, which may differ', () => {
    expect(
      shown(
        rodWidth(
          { openingWidth: inches(84.5), leftExtension: inches(12), rightExtension: inches(13) },
          rules,
        ),
      ),
    ).toBe(109.5);
  });

  it('takes the low end where an extension is blank, and none where it is 0', () => {
    const openingWidth = inches(60);
    expect(
      shown(rodWidth({ openingWidth, leftExtension: undefined, rightExtension: undefined }, rules)),
    ).toBe(82);
    expect(
      shown(rodWidth({ openingWidth, leftExtension: inches(0), rightExtension: undefined }, rules)),
    ).toBe(71);
  });

  it('tells where the usual extension leaves the stack over the glass, on a side that stacks', () => {
    const lines = (opening: Omit<Parameters<typeof rodWidth>[0], 'openingWidth'>): readonly string[] =>
      rodWidth({ openingWidth: inches(96), ...opening }, rules).steps.map((one) => writeStep(one, INCHES));
    const blank = { leftExtension: undefined, rightExtension: undefined };
    expect(lines(blank)).toEqual([
      'over the glass when drawn back (pinch, pair, unlined): 19.47 in stack − 11 in extension = 8.47 in',
      'rod width: 96 in inside width + 11 in left + 11 in right = 118 in',
    ]);
    // A wave stacks 0.2 of half the rod: 11.8; a one-way right nothing on the left.
    expect(lines({ ...blank, heading: 'wave' })[0]).toContain('= 0.8 in');
    expect(lines({ ...blank, rightExtension: inches(40), draw: 'one-way right' })).toHaveLength(1);
  });

  it('of a bay is its straight parts and the two extensions, and tells of its bends', () => {
    const bay = (...parts: readonly number[]) =>
      rodWidth(
        {
          openingWidth: inches(parts.reduce((sum, one) => sum + one)),
          parts: parts.map(inches),
          leftExtension: inches(16),
          rightExtension: inches(20),
        },
        rules,
      );
    expect(shown(bay(30, 60, 30))).toBe(156);
    expect(bay(30, 60, 30).steps.map((one) => writeStep(one, INCHES))).toContain(
      'inside width of 3 straight parts, 2 bends: 30 in + 60 in + 30 in = 120 in',
    );
    expect(bay(30, 60, 30).findings.map(({ sentence }) => sentence)).toEqual([
      'opening_width is a bay or a corner of 3 straight parts with 2 bends. Measure each part where the rod will run, and take each bend’s angle on site.',
    ]);
    expect(bay(60, 60).findings[0]?.sentence).toContain('2 straight parts with 1 bend.');
    expect(bay(120).findings.map(({ sentence }) => sentence)).toEqual([
      'opening_width holds one part: it is taken as a plain opening, without a bend.',
    ]);
  });

  it('names the side that lies outside the band, in both directions', () => {
    const worked = rodWidth(
      { openingWidth: inches(60), leftExtension: inches(10.9), rightExtension: inches(15.1) },
      rules,
    );
    expect(worked.findings.map(({ about }) => about)).toEqual(['left_extension', 'right_extension']);
  });

  it('has bands that meet at 44 and 96 in without a gap', () => {
    const low = (opening: Length): number =>
      shown(extension({ openingWidth: opening, end: undefined }, rules));
    expect([inches(44), (inches(44) + 1) as Length, inches(96), (inches(96) + 1) as Length].map(low)).toEqual(
      [6, 11, 11, 16],
    );
  });
});

describe('the height of the rod', () => {
  const height = (top: number, ceiling: number | undefined, heading?: Heading) =>
    rodHeight(
      { openingTop: inches(top), ceiling: ceiling === undefined ? undefined : inches(ceiling), heading },
      rules,
    );

  it('is 10 in above the opening where the ceiling allows', () => {
    expect(shown(height(80, undefined))).toBe(90);
    expect(shown(height(80, 120))).toBe(90);
    expect(codes(height(80, 120))).toEqual([]);
  });

  it('is lowered below the ceiling, further for grommets', () => {
    expect(shown(height(84, 94))).toBe(93);
    expect(shown(height(84, 94, 'grommet'))).toBe(91.5);
    expect(codes(height(84, 94))).toEqual(['rodLowered']);
  });

  it('below the opening is worth a check, and a ceiling below the opening is refused', () => {
    expect(codes(height(84, 84.5))).toEqual(['rodBelowOpening']);
    expect(() => height(84, 84)).toThrow(/ceiling reads 84 in, which is not above/);
  });
});

describe('the drop', () => {
  const dropOf = (
    measured: number,
    heading: Heading,
    measuredTo?: MeasuredTo,
    floorFinish?: FloorFinish,
    house = rules,
  ) => drop({ measured: [inches(measured)], heading, measuredTo, floorFinish }, house);

  it.each<[Heading, MeasuredTo, number]>([
    ['pinch', 'new rod', -2],
    ['pinch', 'hung ring', -0.5],
    ['pinch', 'hung rod', -2],
    ['pinch', 'ceiling', -3],
    ['grommet', 'new rod', 2],
    ['grommet', 'hung rod', 1.5],
    ['grommet', 'ceiling', -0.5],
    ['rod pocket', 'new rod', 0],
    ['tab top', 'new rod', -2.5],
    ['wave', 'track', -1],
    ['wave', 'ceiling', -2],
    ['box', 'track', -1],
    ['pencil', 'track', -1],
    ['flat', 'hung ring', -0.5],
  ])('of a %s measured to the %s is the measure and %d', (heading, point, shift) => {
    expect(shown(dropOf(98, heading, point))).toBe(98 + shift);
  });

  it.each<[Heading, MeasuredTo]>([
    ['pinch', 'track'],
    ['grommet', 'hung ring'],
    ['grommet', 'track'],
    ['rod pocket', 'hung ring'],
    ['tab top', 'track'],
    ['wave', 'new rod'],
    ['wave', 'hung ring'],
    ['wave', 'hung rod'],
  ])('of a %s cannot be measured to the %s', (heading, point) => {
    expect(() => dropOf(98, heading, point)).toThrow(/cannot be measured to/);
  });

  it('takes the track for pinch pleats where the house hangs them so', () => {
    const house = readHouse([['hang on', 'track']]).rules;
    expect(shown(dropOf(98, 'pinch', undefined, undefined, house))).toBe(97);
    expect(shown(dropOf(98, 'pinch', 'track', undefined, house))).toBe(97);
    expect(() => dropOf(98, 'pinch', 'new rod', undefined, house)).toThrow(/hangs from a track/);
  });

  it('is longer where the cloth meets the floor, which is worth knowing', () => {
    expect(
      (['clear', 'kiss', 'break', 'puddle'] as const).map((finish) =>
        shown(dropOf(98, 'pinch', undefined, finish)),
      ),
    ).toEqual([96, 96.5, 97.5, 102]);
    expect(codes(dropOf(98, 'pinch', undefined, 'kiss'))).toEqual(['touchesFloor']);
    expect(codes(dropOf(98, 'pinch', undefined, 'clear'))).toEqual([]);
  });

  it('ends over a sill, a counter or a radiator, or below the sill over its apron, by the house’s figures', () => {
    const house = readHouse([
      ['sill clearance', 0.25],
      ['apron below sill', 5],
      ['counter clearance', 1],
      ['radiator clearance', 6],
    ]).rules;
    // From the bottom of a hung ring the usual ½ in clearance is all that is taken off.
    const ends = (finish: FloorFinish): number => shown(dropOf(60, 'pinch', 'hung ring', finish, house));
    expect([ends('sill'), ends('apron'), ends('counter'), ends('radiator')]).toEqual([59.75, 65, 59, 54]);
    // By default ½ in clear, and 4 in below the sill.
    expect(shown(dropOf(60, 'pinch', 'hung ring', 'sill'))).toBe(59.5);
    expect(shown(dropOf(60, 'pinch', 'hung ring', 'apron'))).toBe(64);
    expect(shown(dropOf(60, 'grommet', 'hung rod', 'apron'))).toBe(66);
  });

  it('says from where it is measured and what to look at, and touches no floor there', () => {
    const sentences = (finish: FloorFinish): readonly string[] =>
      dropOf(60, 'pinch', undefined, finish, readHouse([['radiator clearance', 6]]).rules).findings.map(
        ({ sentence }) => sentence,
      );
    expect(sentences('sill')).toEqual([
      'measured is taken from the sill, not from the floor. A sill deeper than the return pushes the cloth out.',
    ]);
    expect(sentences('radiator')).toEqual([
      'Cloth over a radiator keeps the maker’s clearance ____ from it on every side; local codes and licensed practice decide.',
      'measured is taken from the top of the radiator, not from the floor. Check where the returns hang.',
    ]);
    expect(codes(dropOf(60, 'pinch', undefined, 'counter'))).toEqual(['measuredFromEdge']);
  });

  it.each([undefined, 0])('over a radiator has no figure of ours: a rule of %s is not set', (set) => {
    const house = readHouse([['radiator clearance', set]]).rules;
    expect(() => dropOf(60, 'pinch', undefined, 'radiator', house)).toThrow(
      'No clearance over a radiator is set, and none is ours to give: add the house rule “radiator clearance” with its maker’s figure.',
    );
  });

  it('takes the shortest of three floor readings, and tells of an uneven floor', () => {
    const three = (...readings: number[]) =>
      drop(
        { measured: readings.map(inches), heading: 'pinch', measuredTo: undefined, floorFinish: undefined },
        rules,
      );
    expect(shown(three(98.25, 98, 98.5))).toBe(96);
    expect(codes(three(98.25, 98, 98.5))).toEqual([]);
    expect(codes(three(98.25, 98, 98.5625))).toEqual(['floorUneven']);
  });

  it('that leaves no cloth is refused', () => {
    expect(() => dropOf(2, 'pinch')).toThrow(/leaves no drop/);
  });
});
