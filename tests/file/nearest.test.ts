import { expect, it } from 'vitest';
import { distance, nearName } from '../../src/file/nearest';

it.each([
  ['', 'abc', 3],
  ['abc', 'abc', 0],
  ['kitten', 'sitting', 3],
  ['drop', 'drpo', 2],
])('“%s” is from “%s”: %d', (one, other, far) => {
  expect(distance(one, other)).toBe(far);
  expect(distance(other, one)).toBe(far);
});

it.each([
  ['=HEM.YARDGE(1)', ' Did you mean HEM.YARDAGE?'],
  ['=RODWIDTH(1)', ' Did you mean HEM.RODWIDTH?'],
  ['=HEM.DROP(1)+SUM(2)', ''],
  ['=SUM(HEM.RODWITH(1))', ' Did you mean HEM.RODWIDTH?'],
  ['=HEM.QQQQQQQ(1)', ''],
])('%s:%s', (formula, said) => {
  expect(nearName(formula, (name) => ['SUM', 'HEM.DROP'].includes(name))).toBe(said);
});
