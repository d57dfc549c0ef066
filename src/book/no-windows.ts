/** What is said of a workbook in which no sheet can be read as a table of windows. */
export const noWindowsIn = (workbook: string): string =>
  `“${workbook}” holds no table of windows. Its headings should say things like opening, measured height, heading and fabric width.`;
