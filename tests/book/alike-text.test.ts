import { expect, it } from 'vitest';
import { AlikeText } from '../../src/book/alike-text';
import { shifted } from '../../src/book/formula';

it.each([
  'SUM(A1:$B$2)+Sheet1!C3',
  '"A1"&IF(A$1="","",\'A1 B2\'!$C3)',
  'SUM(A:C)+SUM($2:3)+SUM(4:4)',
  'Table1[A1]+LOG10(B2)',
])('%s reads in another cell as if filled on', (text) => {
  const alike = new AlikeText(text, 4, 4);
  expect(alike.at(4, 4)).toBe(text);
  expect(alike.at(9, 6)).toBe(shifted(text, 5, 2));
});

it('off the sheet there is none', () => {
  expect(new AlikeText('A1', 4, 4).at(3, 4)).toBeUndefined();
  expect(new AlikeText('A:B', 4, 4).at(4, 3)).toBeUndefined();
});
