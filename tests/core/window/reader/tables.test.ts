import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { noScore, scoreLines, scoreTable, tablesIn } from '../../../../src/make/reading/score';

const TABLES = tablesIn(fileURLToPath(new URL('../tables', import.meta.url)));

describe('a table as its workroom keeps it is read as a careful bookkeeper reads it', () => {
  it.each(TABLES)('$file: $table.name', ({ table }) => {
    const score = noScore();
    scoreTable(table, score);
    expect(score.wrong).toEqual([]);
  });

  it('and all together every column, row and value is right, and none asked in vain is read', () => {
    const whole = noScore();
    for (const { table } of TABLES) scoreTable(table, whole);
    console.info(scoreLines(whole).join('\n'));
    expect(whole.silent).toBe(0);
    expect(whole.columns.right).toBe(whole.columns.all);
    expect(whole.values.right).toBe(whole.values.all);
    expect(whole.sure.right).toBe(whole.sure.all);
  });
});
