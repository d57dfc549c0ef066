import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import { nearestRule, ruleLine, RULE_LINES, ruleValue } from '../../../src/core/house/rules';
import { COMMON, HOUSE } from '../../../src/core/cell/rule';
import { HEADINGS } from '../../../src/core/cell/treatment';

describe('the house rules', () => {
  it('each have words, a kind and a source, and a name of their own', () => {
    for (const { name, says, source, kind } of RULE_LINES) {
      expect(says, name).not.toBe('');
      expect(source, name).not.toBe('');
      expect(kind.noun, name).not.toBe('');
      expect(ruleLine(name)?.name).toBe(name);
    }
  });

  it('have one line a heading where a heading matters', () => {
    for (const { word } of HEADINGS.list) {
      const line = ruleLine(`top allowance ${word}`);
      expect(line && ruleValue(DEFAULT_RULES, line)).toBe(DEFAULT_RULES.topAllowance[word]);
    }
  });

  it('know the nearest name to one that is none', () => {
    expect(nearestRule('yardage stepp')).toBe('yardage step');
    expect(nearestRule('widht rounding')).toBe('widths rounding');
  });
});

describe('what a source is named for', () => {
  const sourceOf = (name: string): string => ruleLine(name)?.source ?? '';

  it('is a fullness of French pleats and snap tape, and of no other heading', () => {
    expect(sourceOf('fullness pinch')).toMatch(/^UFGS 12 22 00/);
    expect(sourceOf('fullness wave')).toMatch(/^UFGS 12 22 00/);
    for (const heading of [
      'flat',
      'tab top',
      'grommet',
      'rod pocket',
      'pencil',
      'box',
      'inverted',
      'goblet',
      'cartridge',
    ])
      expect(sourceOf(`fullness ${heading}`), heading).toBe(COMMON);
  });

  it('is the overlap’s least of 3 in for the pair, and the basis that is not the default', () => {
    expect(sourceOf('overlap')).toBe(`${COMMON}; UFGS 12 22 00 (2010): at least 3 in for the pair`);
    expect(sourceOf('fullness basis')).toMatch(/^house default, no source; UFGS 12 22 00 .* the rod width/);
  });

  it('is a third of the rod for a pinch-pleated stack alone', () => {
    expect(sourceOf('stack share pinch')).toMatch(/a third of the rod/);
    expect(sourceOf('stack share wave')).toBe(HOUSE);
  });
});
