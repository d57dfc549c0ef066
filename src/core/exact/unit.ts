/** The workbook's unit: inches with yards, or centimetres with metres. */
import { toUnit, UNITS, type Length, type LengthUnit } from './length';

export type UnitName = 'inches' | 'centimetres';

export interface Unit {
  readonly name: UnitName;
  /** Of windows and cuts. */
  readonly small: LengthUnit;
  /** Of yardage and rolls. */
  readonly large: LengthUnit;
  /** Of areal weight. */
  readonly areal: 'oz/yd²' | 'g/m²';
  readonly weight: 'lb' | 'kg';
}

export const INCHES: Unit = {
  name: 'inches',
  small: 'in',
  large: 'yd',
  areal: 'oz/yd²',
  weight: 'lb',
};
export const CENTIMETRES: Unit = {
  name: 'centimetres',
  small: 'cm',
  large: 'm',
  areal: 'g/m²',
  weight: 'kg',
};

const SIXTY_FOURTH = UNITS.in / 64;
const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** Plain digits without a float's tail. */
export const digits = (figure: number): string => String(Number(figure.toPrecision(12)));

/** Inches as a tape reads them, in lowest terms; `parts` is the finest division used. */
export function tape(length: Length, parts = 64): string {
  const sign = length < 0 ? '-' : '';
  const fine = Math.round((Math.abs(length) / UNITS.in) * parts);
  const whole = Math.floor(fine / parts);
  const over = fine - whole * parts;
  if (over === 0) return `${sign}${whole}`;
  const common = commonDivisor(over, parts);
  const part = `${over / common}/${parts / common}`;
  return sign + (whole === 0 ? part : `${whole} ${part}`);
}

/** A length as a person writes it: a tape's fraction where it is one, else digits. */
function shown(length: Length, unit: LengthUnit): string {
  const binary = unit === 'in' || unit === 'yd' || unit === 'ft';
  if (unit === 'in' && length % SIXTY_FOURTH === 0) return `${tape(length)} in`;
  if (binary && unit === 'yd' && length % (UNITS.yd / 8) === 0) {
    return `${tape((length / 36) as Length, 8)} yd`;
  }
  return `${digits(Number(toUnit(length, unit).toFixed(4)))} ${unit}`;
}

export const showLength = (length: Length, unit: Unit): string => shown(length, unit.small);
export const showYardage = (length: Length, unit: Unit): string => shown(length, unit.large);

/** What is left of a roll, as a person finds it on the table: 44 yd 17 1/4 in. */
export function showRemnant(length: Length, unit: Unit): string {
  const whole = Math.floor(length / UNITS[unit.large]);
  const rest = (length - whole * UNITS[unit.large]) as Length;
  if (whole === 0) return showLength(length, unit);
  return rest === 0 ? `${whole} ${unit.large}` : `${whole} ${unit.large} ${showLength(rest, unit)}`;
}
