/**
 * One window's chain under the default house rules as ordinary worksheet formulas, the way a careful
 * bookkeeper would write it: every quotient is rounded to a billionth before it goes up, so that a
 * float's residue costs no width and no eighth of a yard.
 */
import { orBlank } from '../book/row-formula';
import type { SheetCell } from './office-suite';

/** A window as a row of plain cells. */
export interface PlainWindow {
  readonly opening: number;
  readonly measured: number;
  readonly draw: 'pair' | 'one-way left';
  readonly fabric: number;
  readonly fullness: number;
  readonly repeat: number;
  readonly quantity: number;
  readonly yardPrice: number;
  readonly widthPrice: number;
  readonly markup: number;
}

export const INPUTS = [
  'opening',
  'measured',
  'draw',
  'fabric',
  'fullness',
  'repeat',
  'quantity',
  'yardPrice',
  'widthPrice',
  'markup',
] as const satisfies readonly (keyof PlainWindow)[];

export const inputCells = (window: PlainWindow): SheetCell[] => INPUTS.map((name) => window[name]);

/** Six cells a window, in columns K to P: rod, drop, widths, cut, yardage, price. */
export function sixFormulas(row: number): string[] {
  const at = (column: string): string => `${column}${row}`;
  const [A, B, C, D, E, F, G] = ['A', 'B', 'C', 'D', 'E', 'F', 'G'].map(at);
  const panels = `IF(${C}="pair",2,1)`;
  const need = `((${at('K')}+7)*${E}/${panels}+6)`;
  const whole = `ROUNDUP(ROUND(MAX(1,(${need}-1)/(${D}-1)),9),0)`;
  // The last width of a pair’s panel may be a half, with its seam.
  const half = `IF(AND(${C}="pair",ROUND((${whole}-0.5)*${D}-(${whole}-1)-${need},6)>=0),0.5,0)`;
  return [
    `=${A}+2*IF(${A}<=44,6,IF(${A}<=96,11,16))`,
    `=${B}-2`,
    // A panel of n widths has n − 1 seams of 1 in and two hems of 3 in.
    `=${panels}*(${whole}-${half})`,
    `=IF(${F}>0,ROUNDUP(ROUND((${at('L')}+16)/${F},9),0)*${F},${at('L')}+16)`,
    `=ROUNDUP(ROUND(${at('M')}*${G}*${at('N')}/36*8,9),0)/8`,
    `=ROUND((${at('O')}*${at('H')}+${at('M')}*${G}*${at('I')})*(1+${at('J')}),2)`,
  ];
}

/** The same six as cell functions of the catalogue; `rules` holds the making charge. */
export function sixCalls(row: number, rules: string): string[] {
  const at = (column: string): string => `${column}${row}`;
  return [
    `=HEM.RODWIDTH(${at('A')})`,
    `=HEM.DROP(${at('B')},"pinch")`,
    `=HEM.WIDTHS(${at('K')},"pinch",${at('D')},${at('C')},${at('E')})`,
    `=HEM.CUTLENGTH(${at('L')},"pinch",${at('F')})`,
    `=HEM.YARDAGE(${at('K')},${at('L')},"pinch",${at('D')},${at('F')},${at('G')},${at('C')},${at('E')})`,
    `=HEM.SELLPRICE(${at('O')}*${at('H')}+HEM.LABOR(${at('M')}*${at('G')},"pinch",${at('L')},,${rules}),${at('J')},"markup on cost")`,
  ];
}

/** The same, as the pane writes them into a row: blank where the row is, and whatever may be blank handed on so. */
export function paneCalls(row: number, rules: string): string[] {
  const at = (column: string): string => `${column}${row}`;
  const blank = (column: string): string => orBlank(at(column));
  const guarded = (column: string, call: string): string => `=IF(${at(column)}="","",${call})`;
  const cloth = [blank('F'), blank('G'), blank('C'), blank('E')];
  const labor = `HEM.LABOR(${at('M')}*${at('G')},"pinch",${at('L')},,${rules})`;
  return [
    guarded('A', `HEM.RODWIDTH(${at('A')},,,${rules})`),
    guarded('B', `HEM.DROP(${at('B')},"pinch",,,${rules})`),
    guarded('K', `HEM.WIDTHS(${at('K')},"pinch",${at('D')},${blank('C')},${blank('E')},,${rules})`),
    guarded('L', `HEM.CUTLENGTH(${at('L')},"pinch",${blank('F')},,${rules})`),
    guarded('K', `HEM.YARDAGE(${at('K')},${at('L')},"pinch",${at('D')},${cloth.join(',')},,,${rules})`),
    guarded('O', `HEM.SELLPRICE(${at('O')}*${at('H')}+${labor},${at('J')},"markup on cost")`),
  ];
}

/** A hotel's worth of windows, the same every time. */
export function plainWindows(count: number): PlainWindow[] {
  return Array.from({ length: count }, (_, at) => ({
    opening: 30 + ((at * 37) % 1_120) / 8,
    measured: 80 + ((at * 53) % 480) / 8,
    draw: at % 3 === 0 ? 'one-way left' : 'pair',
    fabric: [54, 48, 118, 55.5][at % 4] ?? 54,
    fullness: [2.5, 2, 2.25, 3, 2.7][at % 5] ?? 2.5,
    repeat: at % 2 === 0 ? 0 : 12 + ((at * 7) % 120) / 8,
    quantity: 1 + (at % 4),
    yardPrice: 20 + (at % 90) / 4,
    widthPrice: 32.5,
    markup: 0.45,
  }));
}
