import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../functions';
import { functionTable, withTable } from '../../src/make/readme';

describe("README's table", () => {
  it('has a line for every function, with its parameters', () => {
    const table = functionTable(CATALOGUE);
    for (const { name } of CATALOGUE) expect(table).toContain(`| \`HEM.${name}(`);
    expect(table).toContain('`HEM.RODWIDTH(opening_width, [left_extension], [right_extension], [rules])`');
  });

  it('stands between its markers and leaves the rest as it is', () => {
    const before =
      'words\n<!-- the table of functions is written by npm run make -->\nold\n<!-- end of the table of functions -->\nmore\n';
    const after = withTable(before, CATALOGUE);
    expect(after).toMatch(/^words\n/);
    expect(after).toMatch(/\nmore\n$/);
    expect(after).not.toContain('old');
    expect(withTable(after, CATALOGUE)).toBe(after);
  });

  it('is refused a place where the markers are lost', () => {
    expect(() => withTable('no markers', CATALOGUE)).toThrow('README.md has lost its markers');
  });
});
