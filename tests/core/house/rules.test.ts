import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../../src/core/house/house';
import { nearestRule, ruleLine, RULE_LINES, ruleValue } from '../../../src/core/house/rules';
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
