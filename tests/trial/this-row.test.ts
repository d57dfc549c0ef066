import { expect, it } from 'vitest';
import { longForm } from '../../src/trial/this-row';

it.each([
  ['=Windows[@Rod]*2', '=Windows[[#This Row],[Rod]]*2'],
  ['=Windows[@[Inside width]]', '=Windows[[#This Row],[Inside width]]'],
  ['=SUM(Windows[@[a]:[b]])', '=SUM(Windows[[#This Row],[a]:[b]])'],
  ['="[@Rod]"&Windows[@Rod]', '="[@Rod]"&Windows[[#This Row],[Rod]]'],
  ['=SUM(Windows[Rod])', '=SUM(Windows[Rod])'],
])('%s is %s in full', (typed, full) => {
  expect(longForm(typed)).toBe(full);
});
