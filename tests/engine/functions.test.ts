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
