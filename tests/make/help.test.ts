import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions';
import { helpPage } from '../../src/make/help';

const page = helpPage(CATALOGUE, '1.2.3');

describe('the help page', () => {
  it('has an article for every function, under the address Excel links to', () => {
    for (const { name } of CATALOGUE) expect(page).toContain(`<article id="${name}">`);
  });

  it('shows every example with its reason, every sign escaped', () => {
    const text = page
      .replace(/&quot;/g, '"')
      .replace(/&lt;/g, '<')
      .replace(/&gt;/g, '>')
      .replace(/&amp;/g, '&');
    for (const { examples } of CATALOGUE) {
      for (const { formula, because } of examples) {
        expect(text).toContain(`<code>=${formula}</code>`);
        expect(text).toContain(because);
      }
    }
    expect(page).not.toMatch(/&(?!amp;|lt;|gt;|quot;)/);
  });

  it('tells every parameter and choice', () => {
    for (const { parameters } of CATALOGUE) {
      for (const { name, kind } of parameters) {
        expect(page).toContain(`<dt><code>${name}</code>`);
        for (const { word } of kind.choices ?? []) expect(page).toContain(`<b>${word}</b>`);
      }
    }
  });

  it('loads nothing from anywhere', () => {
    const addresses = [...page.matchAll(/(?:src|href)="([^"]+)"/g)].map((match) => match[1]);
    expect(addresses).toEqual([]);
  });
});
