/** CONVERT: units of length, mass, time and their kin, with the prefixes of the metric ones. */
import { define } from './call';
import { held, NA, unproven } from './values';

interface Unit {
  readonly kind: string;
  readonly size: number;
  /** How the prefix counts: once, squared, cubed; 0 where the unit takes none. */
  readonly prefix: number;
}
const INCH = 0.0254;
const FOOT = 0.3048;
const MILE = 1609.344;
const POUND = 453.59237;
const LIGHT_YEAR = 9.46073047258e15;
const PICA = INCH / 72;
const SURVEY_MILE = 6336000 / 3937;
const UNITS = new Map<string, Unit>();
function add(kind: string, prefix: number, units: Readonly<Record<string, number>>): void {
  for (const [names, size] of Object.entries(units))
    for (const name of names.split(' ')) UNITS.set(name, { kind, size, prefix });
}
add('length', 1, { m: 1, ang: 1e-10, ly: LIGHT_YEAR, 'parsec pc': 3.08567758128155e16 });
add('length', 0, {
  in: INCH,
  ft: FOOT,
  yd: 0.9144,
  mi: MILE,
  Nmi: 1852,
  ell: 1.143,
  'Pica Picapt': PICA,
  pica: INCH / 6,
  survey_mi: SURVEY_MILE,
});
add('mass', 1, { g: 1, u: 1.66053100460465e-24 });
add('mass', 0, {
  lbm: POUND,
  ozm: POUND / 16,
  grain: POUND / 7000,
  sg: 14593.9029372064,
  stone: POUND * 14,
  'cwt shweight': POUND * 100,
  'uk_cwt lcwt hweight': POUND * 112,
  ton: POUND * 2000,
  'uk_ton LTON brton': POUND * 2240,
});
add('time', 1, { 's sec': 1 });
add('time', 0, { 'mn min': 60, hr: 3600, 'day d': 86400, yr: 31557600 });
add('area', 2, { 'm2 m^2': 1, 'ang2 ang^2': 1e-20, 'ly2 ly^2': LIGHT_YEAR ** 2 });
add('area', 1, { ar: 100 });
add('area', 0, {
  'in2 in^2': INCH ** 2,
  'ft2 ft^2': FOOT ** 2,
  'yd2 yd^2': 0.83612736,
  'mi2 mi^2': MILE ** 2,
  'Nmi2 Nmi^2': 1852 ** 2,
  'Picapt2 Picapt^2 Pica2 Pica^2': PICA ** 2,
  ha: 10000,
  uk_acre: 4046.8564224,
  us_acre: (1200 / 3937) ** 2 * 43560,
  Morgen: 2500,
});
add('volume', 3, { 'm3 m^3': 1000, 'ang3 ang^3': 1e-27, 'ly3 ly^3': 1000 * LIGHT_YEAR ** 3 });
add('volume', 1, { 'l L lt': 1 });
const GALLON = 3.785411784;
const UK_GALLON = 4.54609;
add('volume', 0, {
  'in3 in^3': 0.016387064,
  'ft3 ft^3': 28.316846592,
  'yd3 yd^3': 764.554857984,
  'mi3 mi^3': 1000 * MILE ** 3,
  'Nmi3 Nmi^3': 1000 * 1852 ** 3,
  gal: GALLON,
  qt: GALLON / 4,
  'pt us_pt': GALLON / 8,
  cup: GALLON / 16,
  oz: GALLON / 128,
  tbs: GALLON / 256,
  tsp: GALLON / 768,
  tspm: 0.005,
  uk_gal: UK_GALLON,
  uk_qt: UK_GALLON / 4,
  uk_pt: UK_GALLON / 8,
  barrel: GALLON * 42,
  bushel: 35.23907016688,
  MTON: 1132.67386368,
  'GRT regton': 2831.6846592,
});
add('energy', 1, { J: 1, e: 1e-7, c: 4.184, cal: 4.1868, 'eV ev': 1.602176487e-19, 'Wh wh': 3600 });
add('energy', 0, { 'HPh hh': 2684519.53769617, 'BTU btu': 1055.05585262, flb: 1.3558179483314 });
add('power', 1, { 'W w': 1 });
add('power', 0, { 'HP h': 745.69987158227, PS: 735.49875 });
add('force', 1, { N: 1, 'dyn dy': 1e-5, pond: 0.00980665 });
add('force', 0, { lbf: 4.4482216152605 });
add('pressure', 1, { 'Pa p': 1, 'atm at': 101325, mmHg: 133.322 });
add('pressure', 0, { psi: 6894.75729316836, Torr: 101325 / 760 });
add('magnetism', 1, { T: 1, ga: 1e-4 });
add('speed', 1, { 'm/s m/sec': 1, 'm/h m/hr': 1 / 3600 });
add('speed', 0, { mph: 0.44704, kn: 1852 / 3600, admkn: 0.514773333333333 });
add('information', 1, { bit: 1, byte: 8 });
add('temperature', 1, { 'K kel': 1 });
add('temperature', 0, { 'C cel': 1, 'F fah': 1, Rank: 1, Reau: 1 });

const PREFIXES: Readonly<Record<string, number>> = {
  Y: 1e24,
  Z: 1e21,
  E: 1e18,
  P: 1e15,
  T: 1e12,
  G: 1e9,
  M: 1e6,
  k: 1e3,
  h: 1e2,
  da: 10,
  e: 10,
  d: 0.1,
  c: 0.01,
  m: 1e-3,
  u: 1e-6,
  n: 1e-9,
  p: 1e-12,
  f: 1e-15,
  a: 1e-18,
  z: 1e-21,
  y: 1e-24,
};
const BINARY: Readonly<Record<string, number>> = {
  ki: 2 ** 10,
  Mi: 2 ** 20,
  Gi: 2 ** 30,
  Ti: 2 ** 40,
  Pi: 2 ** 50,
  Ei: 2 ** 60,
  Zi: 2 ** 70,
  Yi: 2 ** 80,
};

function unitOf(name: string): (Unit & { readonly name: string }) | undefined {
  const plain = UNITS.get(name);
  if (plain !== undefined) return { ...plain, name };
  for (const length of [1, 2]) {
    const [sign, rest] = [name.slice(0, length), name.slice(length)];
    const unit = UNITS.get(rest);
    if (unit === undefined || unit.prefix === 0) continue;
    const factor = Object.hasOwn(PREFIXES, sign)
      ? PREFIXES[sign]
      : unit.kind === 'information' && Object.hasOwn(BINARY, sign)
        ? BINARY[sign]
        : undefined;
    if (factor !== undefined) return { ...unit, size: unit.size * factor ** unit.prefix, name: rest };
  }
  return undefined;
}

const TO_KELVIN: Readonly<Record<string, (number: number) => number>> = {
  K: (number) => number,
  kel: (number) => number,
  C: (number) => number + 273.15,
  cel: (number) => number + 273.15,
  F: (number) => ((number - 32) * 5) / 9 + 273.15,
  fah: (number) => ((number - 32) * 5) / 9 + 273.15,
  Rank: (number) => (number * 5) / 9,
  Reau: (number) => number * 1.25 + 273.15,
};
const FROM_KELVIN: Readonly<Record<string, (number: number) => number>> = {
  K: (number) => number,
  kel: (number) => number,
  C: (number) => number - 273.15,
  cel: (number) => number - 273.15,
  F: (number) => ((number - 273.15) * 9) / 5 + 32,
  fah: (number) => ((number - 273.15) * 9) / 5 + 32,
  Rank: (number) => (number * 9) / 5,
  Reau: (number) => (number - 273.15) / 1.25,
};

define('CONVERT', 'mss', (number: number, from: string, to: string) => {
  const [one, other] = [unitOf(from), unitOf(to)];
  if (one === undefined || other === undefined) return NA;
  if (one.kind !== other.kind) return NA;
  if (one.kind === 'temperature') {
    if (one.size !== 1 || other.size !== 1) return unproven('converts parts of a degree');
    if (from === to) return number;
    return held(
      Number((FROM_KELVIN[other.name]?.(TO_KELVIN[one.name]?.(number) ?? NaN) ?? NaN).toPrecision(15)),
    );
  }
  return held(one.size === other.size ? number : (number * one.size) / other.size);
});
