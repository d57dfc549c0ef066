/** Two solvers that have nothing to do with each other, asked for the fewest rolls. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadSolver } from '../../src/solve/load';

/** The fewest rolls; 'short' where no plan gives every cut; undefined where the time did not suffice. */
export type Proof = number | 'short' | undefined;

export async function proveByHighs(programme: string, seconds: number): Promise<Proof> {
  const highs = await loadSolver();
  const found = highs.solve(programme, { output_flag: false, time_limit: seconds, mip_rel_gap: 0 } as never);
  if (found.Status === 'Infeasible') return 'short';
  return found.Status === 'Optimal' ? Math.round(found.ObjectiveValue) : undefined;
}

export function hasGlpsol(): boolean {
  try {
    execFileSync('glpsol', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

export function proveByGlpsol(programme: string, seconds: number): Proof {
  const room = mkdtempSync(join(tmpdir(), 'cuts-'));
  try {
    const [from, to] = [join(room, 'cuts.lp'), join(room, 'cuts.txt')];
    writeFileSync(from, programme);
    execFileSync('glpsol', ['--lp', from, '--cuts', '--tmlim', String(seconds), '-o', to], {
      stdio: 'ignore',
    });
    const text = readFileSync(to, 'utf8');
    if (/^Status: +INTEGER (EMPTY|INFEASIBLE)/m.test(text) || /^Status: +INFEASIBLE/m.test(text))
      return 'short';
    const rolls = /^Status: +INTEGER OPTIMAL[\s\S]*?^Objective: +rolls = (\d+)/m.exec(text)?.[1];
    return rolls === undefined ? undefined : Number(rolls);
  } finally {
    rmSync(room, { recursive: true });
  }
}
