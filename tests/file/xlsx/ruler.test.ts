import { expect, it } from 'vitest';
import { digitOf, widthInFile } from '../../../src/file/xlsx/ruler';

const styles = (name: string, size: number): string =>
  `<styleSheet><fonts count="2"><font><b/><sz val="${size}"/><name val="${name}"/></font><font><sz val="30"/><name val="Courier New"/></font></fonts></styleSheet>`;

// Microsoft, “Column widths and row heights” and ECMA-376 part 1, 18.3.1.13: Calibri 11 has digits of 7 pixels.
it.each([
  ['Calibri', 11, 7],
  ['Arial', 10, 7],
  ['Times New Roman', 12, 8],
  ['Courier New', 10, 8],
  ['A font nobody knows', 11, 7],
])('a digit of %s %i is %i pixels wide', (name, size, pixels) => {
  expect(digitOf(styles(name, size), 'xl/styles.xml')).toBe(pixels);
});

it('a workbook without a font measures as usual', () => {
  expect(digitOf('<styleSheet/>', 'xl/styles.xml')).toBe(7);
});

// The standard's own example: 8 characters of Calibri 11 are stored as 8.7109375.
it('a width in a file has what stands beside the digits', () => {
  expect(widthInFile(8)).toBeCloseTo(8.7109375, 2);
  expect(widthInFile(8, 8) * 8).toBeCloseTo(widthInFile(8) * 7, 2);
});
