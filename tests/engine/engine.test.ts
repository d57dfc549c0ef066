import { describe, expect, it } from 'vitest';
import { Engine } from '../../src/engine/engine';
import { nodeLibrary } from '../../src/engine/node';
import type { CellAt, CellValue, Computed } from '../../src/engine/workbook';
import { readAddress } from '../../src/book/address';

const library = nodeLibrary();

/** { A1: 5, B1: '=A1*2' } as cells of one sheet. */
function cellsOf(cells: Readonly<Record<string, CellValue>>): CellAt[] {
  return Object.entries(cells).map(([name, given]) => {
    const { row = 0, column = 0 } = readAddress(name) ?? {};
    return typeof given === 'string' && given.startsWith('=')
      ? { row, column, value: null, formula: given }
      : { row, column, value: given };
  });
}
async function computed(cells: Readonly<Record<string, CellValue>>, names: Record<string, string> = {}) {
  const engine = new Engine(library, {
    sheets: [{ name: 'One', cells: cellsOf(cells) }],
    names: Object.entries(names).map(([name, refersTo]) => ({ name, refersTo })),
  });
  const all = await engine.calculate();
  const at = (name: string): Computed | undefined => {
    const { row, column } = readAddress(name) ?? {};
    return all.find((one) => one.row === row && one.column === column);
  };
  return { engine, at, value: (name: string) => at(name)?.value };
}

describe('what our functions are given', () => {
  it('text as text, from a cell and from a formula: 84 1/2 and 1/2 are never dates', async () => {
    const { value } = await computed({
      A1: '84 1/2',
      A2: '1/2',
      B1: '=HEM.RODWIDTH(A1,0,0)',
      B2: '=HEM.RODWIDTH("60",A2,"1/2")',
      B3: '=HEM.RODWIDTH("60",IF(TRUE,"1/2"),0)',
      B4: '=HEM.RODWIDTH(60,INDEX({"1/2","3/4"},1,2),0)',
    });
    expect(['B1', 'B2', 'B3', 'B4'].map(value)).toEqual([84.5, 61, 60.5, 60.75]);
  });

  it('a blank cell and a left-out argument as blank, 0 as 0', async () => {
    const { value } = await computed({
      A1: 72,
      C1: 0,
      B1: '=HEM.RODWIDTH(A1,Z9,)',
      B2: '=HEM.RODWIDTH(A1,C1,C1)',
      B3: '=HEM.RODWIDTH(A1)',
    });
    expect(['B1', 'B2', 'B3'].map(value)).toEqual([94, 72, 94]);
  });

  it('an error cell as an error, named in the refusal', async () => {
    const { at } = await computed({ A1: '=1/0', B1: '=HEM.RODWIDTH(A1)' });
    const [call] = at('B1')?.calls ?? [];
    expect(call?.outcome).toMatchObject({ error: '#VALUE!', finding: { code: 'errorCell' } });
  });

  it('a range as rows, a spilled one too', async () => {
    const { value } = await computed({
      A1: '=VSTACK(98.25,98,98.5)',
      B1: '=HEM.DROP(A1:A3,"pinch")',
      B2: '=HEM.RODWIDTH(72,,,D1:E2)',
      D1: 'extension low',
      D2: 'unit',
      E2: 'inches',
    });
    expect([value('B1'), value('B2')]).toEqual([96, 94]);
  });
});

describe('what comes back', () => {
  it('steps and findings of every call, of the last computation only', async () => {
    const { at } = await computed({
      A1: '=SEQUENCE(2)',
      B1: '=HEM.DROP(96+A2,"pinch",,"kiss")+HEM.RODWIDTH(72)',
    });
    const calls = at('B1')?.calls ?? [];
    expect(calls.map(({ cellFunction }) => cellFunction.name)).toEqual(['DROP', 'RODWIDTH']);
    expect(at('B1')?.value).toBe(96.5 + 94);
    const [drop] = calls;
    expect(drop?.outcome).toMatchObject({ findings: [{ code: 'touchesFloor' }] });
  });

  it('a spill, whole, and what depends on its inner cells', async () => {
    const { at, value } = await computed({
      A1: '=SUM(D2:D3)',
      B1: '=SEQUENCE(3)',
      C1: '=B2:B3*10',
      D1: '=C1:C2+B1:B2',
      D9: '=SUM(C2)',
    });
    expect(at('B1')?.spill).toEqual([[1], [2], [3]]);
    expect(at('C1')?.spill).toEqual([[20], [30]]);
    expect(at('D1')?.spill).toEqual([[21], [32]]);
    expect([value('A1'), value('D9')]).toEqual([32, 30]);
  });

  it('spills that feed on the inner cells of spills, five deep, whatever their order', async () => {
    const { at, value } = await computed({
      A1: '=SUM(B2:B3)',
      B1: '=C2:C4+1',
      C1: '=D2:D5+1',
      D1: '=E2:E6+1',
      E1: '=F2:F7+1',
      F1: '=SEQUENCE(7)',
    });
    expect(at('B1')?.spill).toEqual([[9], [10], [11]]);
    expect(value('A1')).toBe(21);
  });

  it('#SPILL! where a cell is filled, with how far it wanted to go', async () => {
    const { at } = await computed({ A1: '=SEQUENCE(3)', A3: 'x' });
    expect(at('A1')).toMatchObject({ value: '#SPILL!', wanted: { rows: 3, columns: 1 } });
  });

  it('0 from a formula that points at a blank, as a worksheet has it', async () => {
    expect((await computed({ A1: '=Z9' })).value('A1')).toBe(0);
  });

  it('a mistake in one formula leaves the others alone', async () => {
    const { value } = await computed({ A1: '=SUM((1,', A2: '=NOSUCH(1)', A3: '=2+2' });
    expect([value('A1'), value('A2'), value('A3')]).toEqual(['#VALUE!', '#NAME?', 4]);
  });

  it('which cells go in a circle', async () => {
    const { engine } = await computed({
      A1: '=B1',
      B1: '=C1',
      C1: '=A1',
      D1: '=A1+1',
      E1: '=1+1',
      F1: '=E1',
    });
    expect(engine.circular).toBe(true);
    expect([...(await engine.circle())].sort()).toEqual(['0!0!0', '0!0!1', '0!0!2']);
    expect((await computed({ A1: '=B1', B1: '=1' })).engine.circular).toBe(false);
  });
});

describe('two workbooks in one process', () => {
  it('keep their names apart, though their formulas read alike', async () => {
    const one = await computed({ A1: 5, B1: '=Rod*2' }, { Rod: 'One!$A$1' });
    const other = await computed({ A1: 5, A2: 7, B1: '=Rod*2' }, { Rod: 'One!$A$2' });
    expect([one.value('B1'), other.value('B1')]).toEqual([10, 14]);
    expect((await one.engine.ask('=Rod')).value).toBe(5);
  });

  it('compute when both stand open', async () => {
    const one = await computed({ A1: 1, B1: '=A1+1' });
    const other = await computed({ A1: 10, B1: '=A1+1' });
    expect([one.value('B1'), other.value('B1')]).toEqual([2, 11]);
    expect((await one.engine.ask('=B1+1')).value).toBe(3);
    expect((await other.engine.ask('=B1+1')).value).toBe(12);
  });
});

it('tells how far it is over thousands of cells, and computes them all', async () => {
  const cells = Array.from({ length: 1_500 }, (_, row): CellAt[] => [
    { row, column: 0, value: 40 + (row % 300) / 4 },
    { row, column: 1, value: null, formula: `=HEM.RODWIDTH(A${row + 1},10,10)` },
  ]).flat();
  const engine = new Engine(library, { sheets: [{ name: 'One', cells }], names: [] });
  const told: number[] = [];
  const all = await engine.calculate((done) => told.push(done));
  expect(all.map(({ row, value }) => [row, value])).toEqual(
    all.map(({ row }) => [row, 60 + (row % 300) / 4]),
  );
  expect(all).toHaveLength(1_500);
  expect(told.some((done) => done > 1 && done < 1_500)).toBe(true);
}, 120_000);
