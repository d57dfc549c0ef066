import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { hem } from '../../src/file/hem';

const demo = fileURLToPath(new URL('../../src/file/demo/measures.xlsx', import.meta.url));

async function floor(...words: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const exit = await hem(['floor', ...words], {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    progress: () => undefined,
    input: () => undefined,
  });
  return { exit, out: out.join('\n'), err: err.join('\n') };
}

describe('npm run hem -- floor', () => {
  it('plans each fabric roll by roll, no roll overfilled and every cut placed', async () => {
    const { exit, out } = await floor(demo, '--roll', '60 yd', '--json');
    expect(exit).toBe(0);
    const { windows, fabrics } = JSON.parse(out) as {
      windows: number;
      fabrics: {
        cuts: number;
        proven: boolean;
        rolls: { length: number; cuts: { length: number; count: number }[] }[];
      }[];
    };
    expect(windows).toBe(46);
    for (const { cuts, rolls, proven } of fabrics) {
      expect(proven).toBe(true);
      expect(rolls.flatMap((roll) => roll.cuts).reduce((sum, { count }) => sum + count, 0)).toBe(cuts);
      for (const { length, cuts: placed } of rolls) {
        const cut = placed.reduce((sum, one) => sum + one.length * one.count, 0);
        expect(cut).toBeLessThanOrEqual(length * 36 + 1e-6);
      }
    }
  }, 60_000);

  it('a room is cut from one lot where lots are named', async () => {
    const rolls = Array.from({ length: 12 }, () => '60').join('; ');
    const lots = Array.from({ length: 12 }, (_, at) => (at < 6 ? 'A' : 'B')).join('; ');
    const { out } = await floor(demo, '--fabric', 'ostrel linen', '--rolls', rolls, '--lots', lots, '--json');
    const { fabrics } = JSON.parse(out) as {
      fabrics: { rolls: { lot: string; cuts: { room: string }[] }[] }[];
    };
    const lotOf = new Map<string, Set<string>>();
    for (const { lot, cuts } of fabrics[0]?.rolls ?? []) {
      for (const { room } of cuts) lotOf.set(room, (lotOf.get(room) ?? new Set()).add(lot));
    }
    expect(lotOf.size).toBe(33);
    expect([...lotOf.values()].every((set) => set.size === 1)).toBe(true);
  }, 60_000);

  it('rolls that fall short are said, and the exit code is 1', async () => {
    const { exit, err } = await floor(demo, '--fabric', 'Ostrel linen', '--rolls', '58; 60');
    expect(exit).toBe(1);
    expect(err).toContain('fall short');
  }, 60_000);

  it('the what-if table marks the cheapest choice', async () => {
    const choice = ['--fullness', '2; 2.5', '--widths', '54; 118', '--price', '28.90'];
    const { out } = await floor(demo, '--fabric', 'Ostrel linen', ...choice);
    const marked = out.split('\n').filter((line) => line.startsWith('  * fullness'));
    expect(marked).toHaveLength(1);
    expect(out).toContain('too narrow to railroad');
  }, 60_000);

  it.each([
    [['--rolls', 'six'], '--rolls, roll 1 reads “six”'],
    [['--lots', 'A'], 'Give them with --rolls'],
    [['--rolls', '60; 60', '--lots', 'A'], '1 lots for 2 rolls'],
    [['--spares', 'many'], '--spares reads “many”'],
    [['--seconds', '0'], '--seconds reads “0”'],
    [['--fabric', 'none such'], 'has no window of the fabric “none such”'],
  ])(
    '%j is refused with a sentence',
    async (words, sentence) => {
      const { exit, err } = await floor(demo, ...words);
      expect(exit).toBe(2);
      expect(err).toContain(sentence);
    },
    60_000,
  );
});
