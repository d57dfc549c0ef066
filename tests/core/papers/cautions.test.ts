import { expect, it } from 'vitest';
import * as cautions from '../../../src/core/papers/cautions';

it('every caution is one sentence that defers to who decides', () => {
  const sentences = Object.entries(cautions).filter(([name]) => name !== 'ACCESS');
  expect(sentences.length).toBeGreaterThan(5);
  for (const [name, sentence] of sentences) {
    expect(sentence, name).toMatch(/local codes|authority on site/);
    expect(sentence.match(/[.](?:\s|$)/g), name).toHaveLength(1);
  }
});

it('no caution cites what was vacated, 16 CFR 1260', () => {
  expect(Object.values(cautions).join(' ')).not.toContain('1260');
});
