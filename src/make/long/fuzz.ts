/** Formulas and packages made by chance: whatever comes of them, it is an answer or a sentence. */
import { unzipSync, zipSync } from 'fflate';
import { compiled, type Directory } from '../../engine/native/compile';
import { natives } from '../../engine/native/call';
import { Unreadable } from '../../engine/native/parse';
import { Unproven } from '../../engine/native/values';
import { World } from '../../engine/native/world';
import { Problem } from '../../file/problem';
import { answered } from '../../file/recalculate/recalculate';
import { refill } from '../../file/recalculate/refill';
import { reportOf } from '../../file/recalculate/report';
import { BookSheets } from '../../file/recalculate/sheets';
import { BrokenZip, entriesOf, unpacked, zip } from '../../file/xlsx/zip';
import { NO_CELLS, readWorkbook } from '../../file/xlsx/workbook';
import '../../engine/native/all';

/** Numbers from 0 up to 1, the same for one seed. */
export function chances(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let value = Math.imul(state ^ (state >>> 15), 1 | state);
    value = (value + Math.imul(value ^ (value >>> 7), 61 | value)) ^ value;
    return ((value ^ (value >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const PIECES =
  '1 0 -3 2.5 1E308 "" "a" "84 1/2" "1/2" TRUE FALSE A1 $B$2 A1:B3 A:A 1:2 {1,2;3,4} {"x"} #N/A #REF! , ; ( ) ) + - * / ^ & = <> % : [ ] @ ! Sheet1!A1 Nix HEM.RODWIDTH( HEM.YARDAGE( IF( LET(x,'.split(
    ' ',
  );
const NAMES = [...natives.keys()];

function formulaOf(next: () => number): string {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T;
  if (next() < 0.6) {
    const inputs = Array.from({ length: Math.floor(next() * 4) }, () => pick(PIECES.slice(0, 20)));
    return `${pick(NAMES)}(${inputs.join(',')})${next() < 0.3 ? `+${pick(PIECES)}` : ''}`;
  }
  return Array.from({ length: 1 + Math.floor(next() * 12) }, () =>
    next() < 0.15 ? `${pick(NAMES)}(` : pick(PIECES),
  ).join('');
}

const BOOK = {
  sheets: [{ name: 'Sheet1', part: undefined, bytes: new Uint8Array(0), seen: NO_CELLS }],
  tables: [],
  from1904: false,
};
const DIRECTORY: Directory = {
  sheet: (name) => (name === 'Sheet1' ? 0 : undefined),
  defined: () => undefined,
  table: () => {
    throw new Unreadable('there is no table');
  },
};

/** What went wrong, each with its formula. */
export function fuzzFormulas(
  count: number,
  seed: number,
  made: (at: number, next: () => number) => string = (_, next) => formulaOf(next),
): string[] {
  const next = chances(seed);
  const wrong: string[] = [];
  const world = new World(new BookSheets(BOOK));
  for (let at = 0; at < count; at++) {
    const formula = made(at, next);
    try {
      const { run } = compiled(formula, { sheet: 0, row: 0, column: 0 }, DIRECTORY, next() < 0.5);
      world.at(0, 0, 0);
      const value = answered(run, world);
      const cells = typeof value === 'object' && value !== null && 'cells' in value ? value.cells : [value];
      if (cells.some((one) => typeof one === 'number' && !Number.isFinite(one)))
        wrong.push(`${formula}: no number a cell holds`);
    } catch (thrown) {
      if (!(thrown instanceof Unproven || thrown instanceof Unreadable))
        wrong.push(`${formula}: ${String(thrown)}`);
    }
  }
  return wrong;
}

/** A package with some of its bytes, or its parts, changed. */
export function fuzzPackages(whole: Uint8Array, count: number, seed: number): string[] {
  const next = chances(seed);
  const wrong: string[] = [];
  const parts = unzipSync(whole);
  const names = Object.keys(parts);
  for (let at = 0; at < count; at++) {
    const name = names[Math.floor(next() * names.length)] as string;
    const bytes = new Uint8Array(parts[name] ?? []);
    const kind = next();
    if (kind < 0.5)
      for (let left = 1 + next() * 4; left > 0; left--)
        bytes[Math.floor(next() * bytes.length)] = Math.floor(next() * 256);
    const cut = kind >= 0.5 && kind < 0.7 ? bytes.subarray(0, Math.floor(next() * bytes.length)) : bytes;
    const made =
      kind < 0.85
        ? { ...parts, [name]: cut }
        : Object.fromEntries(Object.entries(parts).filter(([one]) => one !== name));
    try {
      const file = readWorkbook(
        new Map(entriesOf(zipSync(made, { level: 1 })).map((entry) => [entry.name, unpacked(entry)])),
      );
      const { parts: filled, done } = refill(file);
      reportOf(done);
      zip(filled);
    } catch (thrown) {
      if (!(thrown instanceof Problem || thrown instanceof BrokenZip))
        wrong.push(`seed ${seed}, package ${at}, ${name}: ${String(thrown)}`);
    }
  }
  return wrong;
}
