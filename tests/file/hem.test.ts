import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions/index';
import { hem } from '../../src/file/hem';
import { golden, listening, opened, scratch, shown } from './book';

const LONG = 120_000;
const top = fileURLToPath(new URL('../..', import.meta.url));

/** As a person runs it, without npm's own lines. */
function run(words: readonly string[], input = ''): { code: number | null; out: string; err: string } {
  const done = spawnSync(process.execPath, ['src/make/hem.mjs', ...words], {
    cwd: top,
    input,
    encoding: 'utf8',
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

/** Every source and package that is read before the first line runs: imports at the top, and theirs. */
function readAtOnce(file: string, read = new Set<string>()): readonly string[] {
  if (read.has(file)) return [];
  read.add(file);
  const found = readFileSync(file, 'utf8').matchAll(/^(?:import|export) (?!type\b)[^;]*?from '([^']+)';/gm);
  for (const [, name = ''] of found) {
    const path = join(dirname(file), name);
    if (!name.startsWith('.')) read.add(name);
    else if (existsSync(`${path}.ts`)) readAtOnce(`${path}.ts`, read);
  }
  return [...read];
}

describe('as a process of its own', () => {
  it(
    'calc answers on standard output, complains on standard error, ends with 1',
    () => {
      expect(run(['calc', '=HEM.RODWIDTH("84 1/2",12,10)', '1/0'])).toEqual({
        code: 1,
        out: '106.5\n#DIV/0!\n',
        err: 'It divides by zero or by a blank cell. Fill the divisor.\n',
      });
    },
    LONG,
  );

  it(
    'calc reads what is piped in',
    () => {
      expect(run(['calc', '--json'], '=1+1\nSEQUENCE(2)\n')).toEqual({
        code: 0,
        out: '{"value":2}\n{"spill":[[1],[2]]}\n',
        err: '',
      });
    },
    LONG,
  );

  it(
    'fill writes the workbook',
    async () => {
      const path = join(scratch(), 'out.xlsx');
      const { code, out } = run(['fill', golden('floor.xlsx'), '-o', path]);
      expect([code, out.split('\n')[0]]).toEqual([
        0,
        `${path}: 34 of 34 formulas computed, 16 of them with HEM functions; 34 cells changed.`,
      ]);
      expect(shown(await opened(path)).get('Quote!B9')).toBeCloseTo(2657.27, 10);
    },
    LONG,
  );

  it(
    'starts no engine to print a help',
    () => {
      expect(run(['--help']).code).toBe(0);
      const read = readAtOnce(join(top, 'src/file/hem.ts'));
      expect(read).toContain(join(top, 'src/file/problem.ts'));
      expect(read.filter((one) => /univerjs|src.engine|highs/.test(one))).toEqual([]);
    },
    LONG,
  );
});

describe('its words', () => {
  it.each(['calc', 'fill', 'functions'])('%s --help says what it does and how it ends', async (name) => {
    const io = listening();
    expect(await hem([name, '--help'], io)).toBe(0);
    expect(io.said.join('\n')).toMatch(new RegExp(`^npm run hem -- ${name} [\\s\\S]*Exit code: 0 fine`));
    expect(io.complained).toEqual([]);
  });

  it('no word at all prints the help and ends with 2', async () => {
    const io = listening();
    expect(await hem([], io)).toBe(2);
    expect(io.said.join('\n')).toMatch(/calc +computes formulas/);
  });

  it('an unknown word names the known ones', async () => {
    const io = listening();
    expect(await hem(['toString'], io)).toBe(2);
    expect(io.complained[0]).toMatch(/^There is no command “toString”\. Use one of: .*calc, fill,/);
  });
});

describe('functions', () => {
  it('lists every function of the catalogue, each once', async () => {
    const io = listening();
    expect(await hem(['functions'], io)).toBe(0);
    const listed = io.said.flatMap((line) => /^ {2}HEM\.(\w+)\(/.exec(line)?.[1] ?? []);
    expect(listed).toEqual(CATALOGUE.map(({ name }) => name));
  });

  it('describes one: parameters, choices, examples', async () => {
    const io = listening();
    expect(await hem(['functions', 'hem.drop'], io)).toBe(0);
    const text = io.said.join('\n');
    expect(text).toMatch(/^HEM\.DROP\(measured, heading, \[measured_to\], \[floor_finish\], \[rules\]\)/);
    expect(text).toContain('“puddle”');
    expect(text).toContain('=HEM.DROP(98,"pinch")  →  96');
  });

  it('--json gives the same as data', async () => {
    const io = listening();
    await hem(['functions', '--json'], io);
    const list = JSON.parse(io.said.join('\n')) as { name: string; parameters: unknown[] }[];
    expect(list.map(({ name }) => name)).toEqual(CATALOGUE.map(({ name }) => `HEM.${name}`));
    expect(list.map(({ parameters }) => parameters.length)).toEqual(
      CATALOGUE.map((one) => one.parameters.length),
    );
  });

  it('says where there is no such function', async () => {
    const io = listening();
    expect(await hem(['functions', 'NOPE'], io)).toBe(2);
    expect(io.complained).toEqual(['There is no function NOPE. See npm run hem -- functions.']);
  });
});
