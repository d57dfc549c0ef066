import { describe, expect, it } from 'vitest';
import { RULE_LINES } from '../../src/core/house/rules';
import { command } from './command';

const rules = command('rules');

describe('npm run hem -- rules', () => {
  it('lists every house rule with its default and its source', async () => {
    const { out } = await rules('--json');
    const listed = JSON.parse(out) as { rule: string; standard: string | number; source: string }[];
    expect(listed).toHaveLength(RULE_LINES.length);
    expect(listed.every(({ source }) => source !== '')).toBe(true);
    expect(listed.find(({ rule }) => rule === 'return')?.standard).toBe(3.5);
  });

  it('lists them under what they rule, each part once', async () => {
    const { out } = await rules();
    const parts = out.split('\n').filter((line) => /^\S/.test(line));
    expect(parts).toEqual([...new Set(RULE_LINES.map(({ part }) => part))]);
    expect(parts).not.toContain('');
  });

  it('tells one rule by name, without regard to case and spaces', async () => {
    const { out } = await rules('Widths Rounding');
    expect(out).toContain('one of: whole per panel, half per panel, whole per pair, nearest');
  });

  it('3½ in is 8.89 cm in a centimetre house', async () => {
    expect((await rules('--metric', 'return')).out).toContain('8.89');
  });

  it('an unknown rule is refused with the nearest', async () => {
    const { exit, err } = await rules('retrun');
    expect(exit).toBe(2);
    expect(err).toBe('There is no house rule “retrun”. The nearest is “return”.');
  });
});
