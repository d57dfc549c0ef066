/** Which styles of a workbook show a number as a date. */
import { showsDate } from '../../book/number-format';
import type { WorkbookFile } from './workbook';
import { partText } from './workbook';
import { walk } from './xml';

/** ECMA-376 part 1, 18.8.30: the formats without a code of their own that show a date. */
const BUILT_IN = new Set([14, 15, 16, 17, 22, 27, 28, 29, 30, 31, 36, 50, 51, 52, 53, 54, 57, 58]);

/** Style numbers, as cells carry them, that show a date. */
export function dateStyles({ parts }: WorkbookFile): ReadonlySet<string> {
  const part = [...parts.keys()].find((name) => /(^|\/)styles\.xml$/i.test(name));
  const xml = part === undefined ? undefined : partText(parts, part);
  const found = new Set<string>();
  if (part === undefined || xml === undefined) return found;
  const own = new Map<number, string>();
  let inCells = false;
  let at = 0;
  walk(xml, part, {
    open({ name, attributes }) {
      if (name === 'numFmt') own.set(Number(attributes['numFmtId']), attributes['formatCode'] ?? '');
      else if (name === 'cellXfs') inCells = true;
      else if (name === 'xf' && inCells) {
        const format = Number(attributes['numFmtId'] ?? 0);
        const code = own.get(format);
        if (code === undefined ? BUILT_IN.has(format) : showsDate(code)) found.add(String(at));
        at++;
      }
    },
    text: () => undefined,
    close(name) {
      if (name === 'cellXfs') inCells = false;
    },
  });
  return found;
}
