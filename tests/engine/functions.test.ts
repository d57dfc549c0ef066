import { expect, it } from 'vitest';
import { CATALOGUE } from '../../functions/index';
import { ourFunctions } from '../../src/engine/functions';
import { Engine } from '../../src/engine/engine';
import { nodeLibrary } from '../../src/engine/node';

const library = nodeLibrary();

it('every function of the catalogue is known to the engine by its full name, and none by hand', () => {
  const names = ourFunctions(library).map((one) => String(one.name));
  expect(names).toEqual(CATALOGUE.map(({ name }) => `HEM.${name}`));
  const engine = new Engine(library, { sheets: [{ name: 'One', cells: [] }], names: [] });
  for (const name of names) expect([name, engine.knows(name)]).toEqual([name, true]);
  expect(engine.knows('HEM.NOSUCH')).toBe(false);
});

it('nothing given, too much given: a refusal, never a fault', async () => {
  const engine = new Engine(library, { sheets: [{ name: 'One', cells: [] }], names: [] });
  const many = Array.from({ length: 20 }, () => '1').join(',');
  for (const { name } of CATALOGUE) {
    for (const given of ['', many, '"rubbish"', 'TRUE,{1,2;3,4},#REF!', 'A1:C3,A1:C3']) {
      const { value, fault } = await engine.ask(`=HEM.${name}(${given})`);
      expect([name, given, fault]).toEqual([name, given, undefined]);
      expect([name, given, Number.isNaN(value)]).toEqual([name, given, false]);
    }
  }
});

it('an empty cell is handed over as nothing or as 0, as the host does; what was left out never is 0', async () => {
  const cells = [
    // The extension in B1 is empty: 0 is none, blank the usual 11 in (common practice, no source).
    { row: 0, column: 2, value: null, formula: '=HEM.RODWIDTH(72,B1,B1)' },
    { row: 1, column: 2, value: null, formula: '=HEM.RODWIDTH(72,IF(B1="","",B1),IF(B1="","",B1))' },
    { row: 2, column: 2, value: null, formula: '=HEM.RODWIDTH(72,,)' },
    { row: 3, column: 2, value: null, formula: '=HEM.RODWIDTH(72,A9,B9)' },
    { row: 4, column: 2, value: null, formula: '=HEM.HOUSERULE("return",E1:F2)' },
    { row: 5, column: 2, value: null, formula: '=HEM.HOUSERULE("return",IF(E1:F2="","",E1:F2))' },
    // A formula's "" is a text on every host.
    { row: 6, column: 2, value: null, formula: '=HEM.RODWIDTH(72,A7,A7)' },
    { row: 6, column: 0, value: null, formula: '=IF(B1="","",1)' },
    { row: 0, column: 4, value: 'return' },
    { row: 8, column: 0, value: 0 },
    { row: 8, column: 1, value: 0 },
  ];
  const book = { sheets: [{ name: 'One', cells }], names: [] };
  const values = async (empties: 'null' | 'zero'): Promise<unknown[]> =>
    (await new Engine(library, book, empties).calculate())
      .filter(({ column }) => column === 2)
      .map(({ value }) => value);
  expect(await values('null')).toEqual([94, 94, 94, 72, 3.5, 3.5, 94]);
  expect(await values('zero')).toEqual([72, 94, 94, 72, 0, 3.5, 94]);
});
