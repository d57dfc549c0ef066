/** How a spreadsheet names its columns: 0 is A, 26 is AA. */
export function letters(column: number): string {
  let text = '';
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26)) {
    text = String.fromCharCode(65 + ((left - 1) % 26)) + text;
  }
  return text;
}
