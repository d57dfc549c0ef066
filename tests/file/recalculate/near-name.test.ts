import { expect, it } from 'vitest';
import { nearName } from '../../../src/file/recalculate/near-name';

it.each([
  ['=HEM.YARDGE(1)', ' Did you mean HEM.YARDAGE?'],
  ['=RODWIDTH(1)', ' Did you mean HEM.RODWIDTH?'],
  ['=HEM.DROP(1)+SUM(2)', ''],
  ['=SUM(HEM.RODWITH(1))', ' Did you mean HEM.RODWIDTH?'],
  ['=HEM.QQQQQQQ(1)', ''],
])('%s:%s', (formula, said) => {
  expect(nearName(formula, (name) => ['SUM', 'HEM.DROP'].includes(name))).toBe(said);
});
