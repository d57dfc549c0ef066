import { expect, it } from 'vitest';
import { INCHES } from '../../../../src/core/exact/unit';
import { aboutGiven, asksFor, understandGiven } from '../../../../src/core/window/reader/given';
import type { Understanding } from '../../../../src/core/window/reader/understand';

function given(headers: string[][], ...rows: unknown[][]): Understanding {
  const found = understandGiven(headers, rows, INCHES);
  if ('none' in found) throw new Error(found.none);
  return found;
}
const means = ({ columns }: Understanding): string[] => columns.map((one) => one.means.join('+'));

it('headings of ours are read as they say, whatever stands in a row', () => {
  const headers = [['inside width x measured height', 'heading (Styl)', 'widths per panel']];
  const found = given(headers, ['72 x 98', 'PP pr', 2.5]);
  expect(means(found)).toEqual(['openingWidth+measured', 'heading+draw', 'widths']);
  expect(found.columns[2]?.per).toBe('panel');
});

it('two rows of headings are one', () => {
  const headers = [
    ['Fabric', '', 'Finished', 'Heading'],
    ['Name', 'Width', 'drop', ''],
  ];
  expect(means(given(headers, ['Wren', 54, 96, 'pinch']))).toEqual([
    'fabric',
    'fabricWidth',
    'finishedDrop',
    'heading',
  ]);
});

it('a width that one row does not tell is asked, and named as the sheet heads it', () => {
  const ask = asksFor(given([['Width', 'Drop', 'Style']], [60, 84, 'pinch']), 1);
  expect(ask?.sentence).toMatch(/headed “Width”, could be inside width or rod width .*one row does not tell/);
});

it('an empty cell that comes as 0 speaks for no meaning', () => {
  const headers = [['Rod', 'Drop', 'Style', 'Fab W', 'Repeat']];
  const [blank, zero] = [null, 0].map((empty) => means(given(headers, [94, 96, 'pinch', 54, empty])));
  expect(zero).toEqual(blank);
});

it('columns that are not read are said', () => {
  const found = given([['rod width', 'heading', 'Gewgaw']], [94, 'pinch', 'blue'], [60, 'pinch', 'red']);
  expect(aboutGiven(found).map(({ code, about }) => `${code} ${about}`)).toContain('columnNotRead Gewgaw');
});
