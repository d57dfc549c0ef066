import { describe, expect, it } from 'vitest';
import { functionNamed } from '../../../functions';
import type { CellIn } from '../../../src/core/cell/fields';
import type { Window } from '../../../src/core/window/columns';
import { readHouse } from '../../../src/core/house/house';
import { clothsOf } from '../../../src/core/floor/floor-cuts';
import { tally } from '../../../src/core/floor/tally';
import { WindowWork } from '../../../src/core/window/job';
import { inches, toUnit } from '../../../src/core/exact/length';
import { ratio } from '../../../src/core/exact/ratio';
import { INCHES } from '../../../src/core/exact/unit';
import { writeStep } from '../../../src/core/cell/steps';

const HOUSE = [
  ['labor pinch', 32.5],
  ['labor lined', 9],
];
const { rules } = readHouse(HOUSE);
const WINDOW: Window = {
  openingWidth: inches(72),
  measured: inches(98),
  heading: 'pinch',
  fabricWidth: inches(54),
  fullness: ratio(2.5),
  verticalRepeat: inches(25.25),
  lining: 'lined',
  liningWidth: inches(54),
  arealWeight: 12,
  quantity: 3,
};
const cell = (name: string, ...inputs: readonly CellIn[]): unknown => {
  const outcome = functionNamed(name)?.call(inputs);
  return outcome !== undefined && 'cells' in outcome ? outcome.cells : outcome;
};

describe('a window worked through', () => {
  const work = new WindowWork(WINDOW, rules);

  it('gives what the cell functions give, each from what was measured', () => {
    expect(toUnit(work.rodWidth().value, 'in')).toBe(cell('RODWIDTH', 72));
    expect(toUnit(work.finishedDrop().value, 'in')).toBe(cell('DROP', 98, 'pinch'));
    expect(toUnit(work.finishedWidth().value, 'in')).toBe(cell('FINISHEDWIDTH', 94, 'pinch'));
    expect(work.widths()).toBe(cell('WIDTHS', 94, 'pinch', 54, 'pair', 2.5));
    expect(toUnit(work.cutLength().value, 'in')).toBe(cell('CUTLENGTH', 96, 'pinch', 25.25));
    expect(toUnit(work.yardage().value, 'yd')).toBe(
      cell('YARDAGE', 94, 96, 'pinch', 54, 25.25, 3, 'pair', 2.5),
    );
    expect(work.cloth().yardage).toBe(work.yardage().value);
    expect(toUnit(work.liningYardage().value, 'yd')).toBe(
      cell('LINING', 94, 96, 'pinch', 54, 3, 'pair', 2.5),
    );
    expect(toUnit(work.saveWidth().value, 'in')).toBe(cell('SAVEWIDTH', 94, 'pinch', 54, 'pair', 2.5));
    expect(toUnit(work.stack().value, 'in')).toBe(cell('STACK', 94, 'pinch', 'pair', 'lined'));
    expect(work.marks().value).toBe((cell('PLEATS', 94, 5, 'pinch', 54) as number[][])[0]?.[0]);
    expect(work.rings().value).toBe(cell('RINGS', 94, 5, 'pinch', 'pair', null, 54));
    expect(work.weight()?.value).toBe(cell('CLOTHWEIGHT', 94, 96, 'pinch', 54, 12));
    expect(work.brackets().value).toBe(cell('BRACKETS', 94, 17.5));
    expect(work.labor().value.toNumber()).toBe(cell('LABOR', 5, 'pinch', 96, 'lined', HOUSE));
  });

  it('counts widths and their fullness without a drop, which they do not need', () => {
    const { measured, ...dropless } = WINDOW;
    const counted = new WindowWork(dropless, rules);
    expect(measured).toBeDefined();
    expect(counted.widths()).toBe(cell('WIDTHS', 94, 'pinch', 54, 'pair', 2.5));
    expect(counted.counted().delivered).toBe(cell('FULLNESS', 94, 5, 'pinch', 54));
    expect(() => counted.yardage()).toThrow('measured height is blank');
  });

  it('lays the cloth as the row says: turned, its yardage, cuts and floor are of turned cloth', () => {
    const turned = {
      ...WINDOW,
      fabricWidth: inches(118),
      verticalRepeat: undefined,
      railroaded: 'railroaded',
    } as const;
    const one = new WindowWork(turned, rules);
    const yards = cell('RAILROADED', 94, 96, 'pinch', 118, 3, 'pair', 2.5);
    expect(toUnit(one.yardage().value, 'yd')).toBe(yards);
    expect(one.laid().yardage).toBe(one.yardage().value);
    expect(one.yardage().findings.map(({ code }) => code)).toContain('turnedByRow');
    expect(tally([one], rules).face.map(({ yardage }) => toUnit(yardage, 'yd'))).toEqual([yards]);
    // Two panels a window, each in one piece.
    const [face] = clothsOf([one]);
    expect(face?.cuts.reduce((sum, { count }) => sum + count, 0)).toBe(6);
    expect(new WindowWork({ ...turned, railroaded: 'up the roll' }, rules).yardage().value).toBe(
      one.cloth().yardage,
    );
    const narrow = new WindowWork({ ...turned, fabricWidth: inches(54) }, rules);
    expect(() => narrow.yardage()).toThrow('too narrow to railroad');
    expect(() => tally([narrow], rules)).toThrow('too narrow to railroad');
  });

  it('hangs every layer whose weight is known on its brackets', () => {
    // 5 widths of 54 in × 112 in of 6 oz/yd² are 8¾ lb, and 5 × 54 × 103 in of 10 oz/yd² 13.4 lb: above 20 lb.
    const light = { ...WINDOW, arealWeight: 6 };
    expect(new WindowWork(light, rules).brackets().value).toBe(cell('BRACKETS', 94, 8.75));
    const weighed = readHouse([...HOUSE, ['lining weight', 10]]).rules;
    expect(new WindowWork(light, weighed).brackets().value).toBe(cell('BRACKETS', 94, 22.1));
    expect(cell('BRACKETS', 94, 22.1)).not.toBe(cell('BRACKETS', 94, 8.75));
  });

  it('takes the rod and the drop as ordered where the sheet states them', () => {
    const ordered = new WindowWork({ ...WINDOW, rodWidth: inches(104), finishedDrop: inches(100) }, rules);
    expect(toUnit(ordered.finishedWidth().value, 'in')).toBe(55.5);
    expect(toUnit(ordered.cutLength().value, 'in')).toBe(126.25);
    expect(toUnit(ordered.rodWidth().value, 'in')).toBe(94);
  });

  it('asks for what is missing by the sheet’s own word', () => {
    const { fabricWidth: _, ...without } = WINDOW;
    expect(() => new WindowWork(without, rules).widths()).toThrow(/fabric width/);
    expect(() => new WindowWork(without, rules, { fabricWidth: 'Goods W' }).widths()).toThrow(/Goods W/);
  });

  it('has no lining where it is unlined, and one window where no quantity is given', () => {
    const { lining: _, quantity: __, ...plain } = WINDOW;
    const one = new WindowWork(plain, rules);
    expect(one.liningYardage().value).toBe(0);
    expect(toUnit(one.yardage().value, 'yd')).toBe(
      cell('YARDAGE', 94, 96, 'pinch', 54, 25.25, 1, 'pair', 2.5),
    );
  });

  it('cuts a half-drop by its own rule', () => {
    const dropped = new WindowWork({ ...WINDOW, match: 'half-drop' }, rules);
    // 112 takes 4½ repeats before an unlike start and 5 before a like one: the longest is told.
    expect(toUnit(dropped.cutLength().value, 'in')).toBe(5 * 25.25);
  });

  it('says each finding once', () => {
    const sentences = work.findings().map(({ sentence }) => sentence);
    expect(new Set(sentences).size).toBe(sentences.length);
    expect(sentences.length).toBeGreaterThan(0);
  });
});

describe('a bay in a row', () => {
  const HEADERS = [
    ['inside width', 'left extension', 'right extension', 'measured height', 'heading', 'fabric width'],
  ];
  const row = (width: CellIn): readonly CellIn[] => [width, 16, 16, 98, 'pinch', 54];
  const asked = 'rod width, rod pieces, brackets, widths';

  it('has the rod and the cloth of its parts together, and pieces for each straight part', () => {
    // 30 + 16 = 46 of a 48, 60 of a 72, 46 of a 48; spans of 48 at most: 1 + 2 + 1, and one more.
    expect(cell('SCHEDULE', HEADERS, [row('30 + 60 + 30')], asked)).toEqual([
      [152, '1 × 72 in + 2 × 48 in, 2 bends', 5, 8],
    ]);
    expect(cell('SCHEDULE', HEADERS, [row(120)], asked)).toEqual([[152, '1 × 120 in + 1 × 48 in', 5, 8]]);
  });

  it('of which a part is 0 is told by its heading', () => {
    expect(cell('SCHEDULE', HEADERS, [row('30 + 0')], 'rod width')).toEqual([
      [expect.stringContaining('inside width holds a part of 0.')],
    ]);
  });
});

describe('a sheer', () => {
  const SHEER: Window = {
    rodWidth: inches(104),
    measured: inches(98),
    heading: 'pinch',
    fabricWidth: inches(118),
    windowLayer: 'sheer',
    lining: 'blackout',
  };
  const sheer = new WindowWork(SHEER, rules);

  it('has three times the width, a 5 in double hem, and ends ½ in above its drapery', () => {
    expect(toUnit(sheer.finishedDrop().value, 'in')).toBe(95.5);
    // 95½ + 8 + 10.
    expect(toUnit(sheer.cutLength().value, 'in')).toBe(113.5);
    // 111 × 3 + 12 in hems = 345: 3 widths of 118 less a seam a panel give 352.
    expect(sheer.widths()).toBe(3);
    expect(new WindowWork({ ...SHEER, fabricWidth: inches(54) }, rules).widths()).toBe(7);
    // 3 × 113½ ÷ 36 = 9.46.
    expect(toUnit(sheer.yardage().value, 'yd')).toBe(9.5);
  });

  it('keeps a fullness and a drop that are given, and hangs as low as a drapery where it is alone', () => {
    expect(new WindowWork({ ...SHEER, fullness: ratio(2) }, rules).cloth().work.wanted).toBe(
      inches(222) * 10_000,
    );
    const alone = new WindowWork({ ...SHEER, windowLayer: 'sheer alone' }, rules);
    expect(toUnit(alone.finishedDrop().value, 'in')).toBe(96);
    const known = new WindowWork({ ...SHEER, measured: undefined, finishedDrop: inches(90) }, rules);
    expect(toUnit(known.cutLength().value, 'in')).toBe(108);
  });

  it('is never lined: no cloth behind it, no making for one, and the row says so', () => {
    expect(sheer.clothsBehind).toEqual([]);
    expect(sheer.behind('blackout lining')).toBeUndefined();
    expect(toUnit(sheer.liningYardage().value, 'yd')).toBe(0);
    const { labor, lined } = { labor: 32.5, lined: 9 };
    expect(sheer.labor().value.toNumber()).toBe(3 * labor);
    const face = new WindowWork(
      { ...SHEER, windowLayer: undefined, lining: 'lined', fullness: ratio(3) },
      rules,
    );
    expect(face.labor().value.toNumber()).toBe(3 * (labor + lined));
    expect(sheer.findings().map(({ sentence }) => sentence)).toContain(
      'The row is a sheer, which is never lined; blackout is left out. Give the drapery a row of its own.',
    );
    expect(new WindowWork({ ...SHEER, lining: undefined }, rules).findings()).toEqual([]);
  });

  it('is a word in a row’s column “layer”, of its own row', () => {
    const headers = [['layer', 'rod width', 'finished drop', 'heading', 'fabric width', 'lining']];
    const rows = [
      ['', 104, 96, 'pinch', 54, 'blackout'],
      ['sheer', 104, 96, 'pinch', 118, 'blackout'],
    ];
    // The drapery: 6 × 103 in of lining; 6 × 112 of face.
    expect(cell('SCHEDULE', headers, rows, 'widths, yardage, lining yardage')).toEqual([
      [6, 18.75, 17.25],
      [3, 9.5, 0],
    ]);
  });
});

describe('the making charge of wide and turned cloth', () => {
  const by54 = readHouse([...HOUSE, ['billable width', 54]]).rules;
  // Rod 94: (47 + 3 1/2) × 2.5 × 2 = 252 1/2 and 12 of hems: three widths of 118, 354 in.
  const wide: Window = { ...WINDOW, fabricWidth: inches(118), verticalRepeat: undefined, lining: undefined };

  it('is by its flat width where the house says so: 354 ÷ 54 is seven', () => {
    expect(new WindowWork(wide, rules).labor().value.toNumber()).toBe(3 * 32.5);
    const made = new WindowWork(wide, by54).labor();
    expect(made.value.toNumber()).toBe(7 * 32.5);
    expect(made.steps.map((one) => writeStep(one, INCHES))[0]).toBe(
      'widths charged: 3 of 118 in by the house’s billable width, up = 7',
    );
  });

  it('is by what each panel takes along the bolt where it is turned', () => {
    // 126 1/4 and 6 of hems a panel, 264 1/2 for the pair: five.
    expect(new WindowWork(wide, by54).laborTurned()?.value.toNumber()).toBe(5 * 32.5);
    expect(new WindowWork(wide, rules).laborTurned()).toBeUndefined();
  });

  it('is the same in a row of a table, and an audit of turned cloth takes it', () => {
    const headers = ['rod width', 'finished drop', 'heading', 'fabric width', 'railroaded', 'labor'];
    const range = [...HOUSE, ['billable width', 54]];
    const row = [94, 96, 'pinch', 118];
    expect(cell('SCHEDULE', [headers.slice(0, 4)], [row], 'labor', range)).toEqual([[7 * 32.5]]);
    expect(cell('CHECK', [headers], [[...row, 'yes', 5 * 32.5]], range)).toBe('');
    expect(cell('CHECK', [headers], [[...row, 'yes', 4 * 32.5]], range)).toMatch(/^labor reads 130/);
  });
});

describe('making by the panel', () => {
  const house = [
    ['labor by', 'panel'],
    ['labor pinch', 45],
    ['labor lined', 9],
    ['billable width', 54],
  ];
  const headers = [
    'rod width',
    'finished drop',
    'heading',
    'fabric width',
    'draw',
    'lining',
    'qty',
    'railroaded',
    'labor',
  ];
  const row = (draw: string, qty: number, turned: string, labor: number | null): CellIn[] =>
    [100, 90, 'pinch', 118, draw, 'lined', qty, turned, labor]; // prettier-ignore

  it('counts panels by the draw, whatever the widths and however the cloth lies', () => {
    const scheduled = (...given: Parameters<typeof row>): unknown =>
      cell('SCHEDULE', [headers.slice(0, 8)], [row(...given).slice(0, 8)], 'labor', house);
    expect(scheduled('pair', 1, '', null)).toEqual([[108]]);
    expect(scheduled('pair', 3, 'yes', null)).toEqual([[324]]);
    expect(scheduled('one-way left', 1, '', null)).toEqual([[54]]);
  });

  it('is what CHECK holds an order to', () => {
    const checked = (...given: Parameters<typeof row>): unknown =>
      cell('CHECK', [headers], [row(...given)], house);
    expect(checked('pair', 3, '', 324)).toBe('');
    expect(checked('pair', 3, 'yes', 324)).toBe('');
    expect(checked('pair', 3, '', 432)).toMatch(/^labor reads 432/);
  });

  it('shows the panels it counted', () => {
    const by = readHouse(house).rules;
    const work = new WindowWork({ ...WINDOW, draw: 'pair', lining: 'unlined' }, by);
    expect(work.labor().steps.map((one) => writeStep(one, INCHES))[0]).toContain('2 panels × (45');
    expect(tally([work], by)).toMatchObject({ panels: 6, windows: 3 });
  });
});
