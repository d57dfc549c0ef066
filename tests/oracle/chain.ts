/**
 * The chain of the default house written out as a bookkeeper's own formulas, one step a column:
 * extension, rod, drop, finished width, flat width, widths, cut, cut with its repeat, yardage.
 * A quotient is rounded to a billionth before it goes up, so that floats cost no width: only that
 * much of the way is taken from how a spreadsheet reckons.
 */
import type { SheetCell } from '../../src/make/office-suite';

export const HEADINGS = ['pinch', 'grommet', 'flat', 'tab top'] as const;

export interface Row {
  readonly opening: number;
  readonly end: 'low' | 'high';
  readonly measured: number;
  readonly heading: (typeof HEADINGS)[number];
  readonly finish: 'clear' | 'kiss' | 'break' | 'puddle';
  readonly draw: 'pair' | 'one-way left' | 'stationary cover';
  readonly fabric: number;
  readonly fullness: number;
  readonly repeat: number;
  readonly match: 'straight' | 'half-drop';
  readonly quantity: number;
}

export const INPUTS = [
  'opening',
  'end',
  'measured',
  'heading',
  'finish',
  'draw',
  'fabric',
  'fullness',
  'repeat',
  'match',
  'quantity',
] as const satisfies readonly (keyof Row)[];

/** What each further column holds, from L on. */
export const STEPS = [
  'extension',
  'rod',
  'drop',
  'finished',
  'flat',
  'widths',
  'plain cut',
  'cut',
  'yardage',
  'lining yardage',
  'brackets',
] as const;

export function formulas(row: number): SheetCell[] {
  const [opening, end, measured, heading, finish, draw, fabric, fullness, repeat, match, quantity] =
    INPUTS.map((_, at) => `${String.fromCharCode(65 + at)}${row}`);
  const [extension, rod, drop, finished, flat, widths, plainCut, cut] = STEPS.map(
    (_, at) => `${String.fromCharCode(65 + INPUTS.length + at)}${row}`,
  );
  const panels = `IF(${draw}="pair",2,1)`;
  const up = (quotient: string): string => `ROUNDUP(ROUND(${quotient},9),0)`;
  /** n widths give n × bolt − (n − 1) seams of 1 in; the last of a pair’s panel may be a half, with its seam. */
  const count = (need: string, bolt: string): string => {
    const whole = up(`MAX(1,(${need}-1)/(${bolt}-1))`);
    const half = `IF(AND(${draw}="pair",ROUND((${whole}-0.5)*${bolt}-(${whole}-1)-(${need}),6)>=0),0.5,0)`;
    return `${panels}*(${whole}-${half})`;
  };
  const each = `(${widths}/${panels})`;
  // The face as seamed, less twice 2 and 1 in for what it turns over its lining.
  const lined = `(${each}*${fabric}-(ROUNDUP(${each},0)-1)-6)`;
  // Off the roll a cut before one of its own start takes whole repeats, before the other start an odd number of halves.
  const like = `${up(`${plainCut}/${repeat}`)}*${repeat}`;
  const unlike = `(2*${up(`(${plainCut}-${repeat}/2)/${repeat}`)}+1)*${repeat}/2`;
  // Each panel begins with A; the halves of a shared width are one cut of the letter that is next.
  const full = `INT(${each})`;
  const shared = `IF(${each}>${full},1,0)`;
  const first = `${quantity}*(${panels}*ROUNDUP(${full}/2,0)+${shared}*IF(ISEVEN(${full}),1,0))`;
  const second = `${quantity}*(${panels}*ROUNDDOWN(${full}/2,0)+${shared}*IF(ISODD(${full}),1,0))`;
  const all = `(${first}+${second})`;
  // All of one start and then all of the other, or in turn as long as both are left: whichever takes less.
  const turns = `(2*MIN(${first},${second})-IF(${first}=${second},1,0))`;
  const mixed = `IF(${unlike}>${like},(${all}-1)*${like}+${unlike},${turns}*${unlike}+(${all}-${turns})*${like})`;
  const halfDrop = `IF(${second}=0,${all}*${like},${mixed})`;
  return [
    `=IF(${opening}<=44,IF(${end}="low",6,10),IF(${opening}<=96,IF(${end}="low",11,15),IF(${end}="low",16,20)))`,
    `=${opening}+2*${extension}`,
    // On rings 2 in below the middle of the rod; grommets 2 in above; tabs 2 in and the clearance below.
    `=${measured}+IF(${heading}="grommet",2,IF(${heading}="tab top",-2.5,-2))+IF(${finish}="kiss",0.5,IF(${finish}="break",1.5,IF(${finish}="puddle",6,0)))`,
    `=IF(${draw}="pair",${rod}/2+3.5,${rod}+2*3.5)`,
    `=${finished}*${fullness}`,
    // Two hems of 3 in.
    `=${count(`(${flat}+6)`, fabric ?? '')}`,
    `=${drop}+IF(OR(${heading}="flat",${heading}="tab top"),4,8)+8`,
    `=IF(${repeat}=0,${plainCut},IF(${match}="half-drop",MAX(${like},${unlike}),${like}))`,
    `=${up(`IF(AND(${repeat}>0,${match}="half-drop"),${halfDrop},${widths}*${quantity}*${cut})/36*8`)}/8`,
    // As many widths as a face of 54 in.
    `=${up(`IF(${fabric}=54,${widths},${count(lined, '54')})*${quantity}*(${drop}-1+4+4)/36*8`)}/8`,
    `=${up(`${rod}/48`)}+1`,
  ];
}

export const inputCells = (row: Row): SheetCell[] => INPUTS.map((name) => row[name]);

const pick = <T>(from: readonly T[], at: number): T => from[at % from.length] as T;

/** Rows that stand a hair beside the next width and repeat as often as not. */
export function rows(count: number): Row[] {
  return Array.from({ length: count }, (_, at) => ({
    opening: 20 + ((at * 41) % 12_800) / 64,
    end: pick(['low', 'high'], Math.floor(at / 3)),
    measured: 60 + ((at * 97) % 5_120) / 64,
    heading: pick(HEADINGS, Math.floor(at / 2)),
    finish: pick(['clear', 'kiss', 'break', 'puddle'], Math.floor(at / 5)),
    draw: pick(['pair', 'one-way left', 'stationary cover'], at),
    fabric: pick([54, 48, 118, 55.5, 45, 137.795], Math.floor(at / 7)),
    fullness: pick([2.5, 2, 2.25, 3, 2.7, 2.2, 1.5, 2.3333], at),
    repeat: at % 3 === 0 ? 0 : 6 + ((at * 29) % 1_600) / 64,
    match: pick(['straight', 'straight', 'half-drop'], Math.floor(at / 4)),
    quantity: pick([1, 2, 3, 7, 46], at),
  }));
}
