import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';

const CORE = fileURLToPath(new URL('../../../src/core', import.meta.url));

/** What must not compile, each beside the same with the right type, which must. */
const CASES: readonly { readonly title: string; readonly wrong: string; readonly right: string }[] = [
  {
    title: 'a length where a ratio is due',
    wrong: 'byRatio(inches(94), inches(2))',
    right: 'byRatio(inches(94), ratio(2))',
  },
  {
    title: 'a ratio where a length is due',
    wrong: 'lengthFigure(ratio(2.5))',
    right: 'lengthFigure(inches(2.5))',
  },
  {
    title: 'a plain number where a length is due',
    wrong: 'lengthFigure(94)',
    right: 'lengthFigure(inches(94))',
  },
  {
    title: 'a plain number where a ratio is due',
    wrong: 'ratioFigure(2.5)',
    right: 'ratioFigure(ratio(2.5))',
  },
  {
    title: 'a plain number where money is due',
    wrong: 'moneyFigure(12.5)',
    right: 'moneyFigure(money(12.5))',
  },
  {
    title: 'a sum of lengths that nothing checked for size',
    wrong: 'lengthFigure(inches(94) + inches(11))',
    right: 'lengthFigure(exact(inches(94) + inches(11)))',
  },
  {
    title: 'a window’s fullness as a plain number',
    wrong: 'windowOf({ fullness: 2.5 })',
    right: 'windowOf({ fullness: ratio(2.5) })',
  },
  {
    title: 'a choice that is none of its words',
    wrong: 'windowOf({ heading: "pinched" })',
    right: 'windowOf({ heading: "pinch" })',
  },
  {
    title: 'a finding that no table holds',
    wrong: 'finding("noSuchFinding", "rod width")',
    right: 'finding("noReturn", "return")',
  },
  {
    title: 'a finding without the words it is said with',
    wrong: 'finding("widthsTooFew", "widths")',
    right: 'finding("widthsTooFew", "widths", "0", "hems")',
  },
  {
    title: 'an input that no function has',
    wrong: 'parameter("fabric_width")',
    right: 'parameter("fabricWidth")',
  },
  {
    title: 'a figure that no order states',
    wrong: 'orderedFigure("takeUp")',
    right: 'orderedFigure("yardage")',
  },
];

const HEAD = `
import { finding, lengthFigure, moneyFigure, ratioFigure } from './cell/answer';
import { exact, inches } from './exact/length';
import { money } from './exact/money';
import { byRatio, ratio } from './exact/ratio';
import { parameter } from './findings/parameters';
import type { Window } from './window/columns';
import { orderedFigure } from './window/meanings';
export const kept = [byRatio, exact, finding, inches, lengthFigure, money, moneyFigure, orderedFigure];
export const more = [parameter, ratio, ratioFigure];
export const windowOf = (window: Window): Window => window;
export const made = `;

describe('the core does not compile with', () => {
  let faults: ReadonlyMap<string, string>;
  beforeAll(() => {
    const files = new Map(
      CASES.flatMap(({ wrong, right }, at) =>
        [wrong, right].map((code, side) => [
          join(CORE, `case-${at}-${side === 0 ? 'wrong' : 'right'}.ts`),
          `${HEAD}${code};\n`,
        ]),
      ),
    );
    const read = ts.readConfigFile(join(CORE, 'tsconfig.json'), (path) => ts.sys.readFile(path));
    const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, CORE);
    const plain = { ...options, incremental: false };
    delete plain.tsBuildInfoFile;
    const host = ts.createCompilerHost(plain);
    const { fileExists, readFile } = host;
    host.fileExists = (path) => files.has(path) || fileExists(path);
    host.readFile = (path) => files.get(path) ?? readFile(path);
    const program = ts.createProgram([...files.keys()], plain, host);
    faults = new Map(
      [...files.keys()].map((path) => {
        const source = program.getSourceFile(path);
        const found = [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
        return [
          path.slice(dirname(path).length + 1),
          found.map((one) => ts.flattenDiagnosticMessageText(one.messageText, ' ')).join(' '),
        ];
      }),
    );
  });

  it.each(CASES.map(({ title }, at) => [title, at] as const))('%s', (_, at) => {
    expect(faults.get(`case-${at}-right.ts`)).toBe('');
    expect(faults.get(`case-${at}-wrong.ts`)).toMatch(/not assignable|Expected \d arguments/);
  });
});
