import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join, posix, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const TOP = fileURLToPath(new URL('..', import.meta.url));

interface Room {
  readonly rooms: readonly string[];
  /** Packages it may use; `node` stands for Node's own modules. */
  readonly packages: readonly (string | RegExp)[];
  /** What a page or Node or Excel puts into the air, which this room must not use. */
  readonly never: readonly string[];
}

const EXCEL = ['Excel', 'Office', 'OfficeExtension', 'CustomFunctions'];
/** `window` is a trade noun here; the compiler keeps the page's own out of the core. */
const PAGE = ['document', 'navigator', 'localStorage', 'sessionStorage'];
const NODE = ['process', 'Buffer', 'require', '__dirname', '__filename'];
const REACT = ['react', /^react-dom/];
const GRID = [/^@univerjs\//, 'rxjs'];

const ROOMS: Readonly<Record<string, Room>> = {
  core: { rooms: [], packages: ['decimal.js'], never: [...EXCEL, ...PAGE, ...NODE, 'console', 'Intl'] },
  functions: { rooms: ['core'], packages: [], never: [...EXCEL, ...PAGE, ...NODE, 'console', 'Intl'] },
  solve: { rooms: ['core'], packages: ['highs'], never: [...EXCEL, ...PAGE] },
  engine: { rooms: ['core', 'functions'], packages: GRID, never: [...EXCEL, ...PAGE, ...NODE] },
  book: { rooms: ['core', 'functions'], packages: [], never: [...EXCEL, ...PAGE, ...NODE] },
  pane: { rooms: ['core', 'functions', 'book', 'solve'], packages: REACT, never: [...EXCEL, ...NODE] },
  excel: {
    rooms: ['core', 'functions', 'book', 'pane', 'solve'],
    packages: REACT,
    never: NODE,
  },
  trial: {
    // Of the file room what a page can run: the build fails where Node comes along.
    rooms: ['core', 'functions', 'book', 'pane', 'engine', 'solve', 'file'],
    packages: [...REACT, ...GRID, '@cj-tech-master/excelts', 'fflate'],
    never: [...EXCEL, ...NODE],
  },
  file: {
    rooms: ['core', 'functions', 'book', 'engine', 'solve'],
    packages: ['node', 'fflate', '@cj-tech-master/excelts', 'tsx/esm/api', /^@xmldom\//, /^sax/, /^fast-xml/],
    never: [...EXCEL, ...PAGE],
  },
  // It also measures: how fast, how exact, how near the best.
  make: {
    rooms: ['core', 'functions', 'book', 'engine', 'file', 'solve'],
    packages: [
      'node',
      'fflate',
      'prettier',
      'playwright-core',
      'fraction.js',
      '@duckdb/node-api',
      'esbuild',
      'tsx/esm/api',
      'typescript',
      'webpack',
    ],
    never: EXCEL,
  },
};

/**
 * The folders of the core, and which of the others each may use. A folder uses only those that stand
 * above it in this list, so no two can need each other.
 */
const CORE: Readonly<Record<string, readonly string[]>> = {
  exact: [],
  findings: [],
  cell: ['exact', 'findings'],
  house: ['exact', 'cell'],
  measure: ['exact', 'findings', 'cell', 'house'],
  cloth: ['exact', 'findings', 'cell', 'house'],
  price: ['exact', 'findings', 'cell', 'house'],
  rolls: ['exact', 'findings', 'cell', 'house', 'cloth'],
  heading: ['exact', 'findings', 'cell', 'house', 'cloth'],
  window: ['exact', 'findings', 'cell', 'house', 'measure', 'cloth', 'price', 'heading'],
  drawing: ['exact', 'cell', 'house', 'measure', 'cloth', 'rolls', 'heading', 'window'],
  floor: ['exact', 'findings', 'cell', 'house', 'cloth', 'price', 'rolls', 'heading', 'window'],
  audit: ['exact', 'findings', 'cell', 'house', 'measure', 'cloth', 'price', 'window'],
  quote: ['exact', 'cell', 'house', 'cloth', 'price', 'heading', 'window', 'floor'],
  papers: [
    'exact',
    'cell',
    'house',
    'cloth',
    'price',
    'heading',
    'window',
    'drawing',
    'rolls',
    'floor',
    'quote',
  ],
};

/** The files of a page's room that run in Node: they start it there, and no page imports them. */
const IN_NODE = ['src/engine/node.ts', 'src/trial/serve.ts', 'src/trial/start.ts'];

function filesIn(folder: string): readonly string[] {
  return readdirSync(join(TOP, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(ts|tsx|mjs)$/.test(file) && !file.endsWith('.d.ts'))
    .map((file) => posix.join(folder, file.split(sep).join('/')));
}

const FILES = [...filesIn('functions'), ...filesIn('src')];

/** src/core/exact/length.ts stands in the room core; functions/index.ts in functions. */
const roomOf = (path: string): string =>
  path.startsWith('src/') ? (path.split('/')[1] ?? '') : (path.split('/')[0] ?? '');

const textOf = (file: string): string => readFileSync(join(TOP, file), 'utf8');
const importsOf = (text: string): readonly string[] =>
  ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => fileName);

const isNode = (name: string): boolean =>
  name.startsWith('node:') || builtinModules.includes(name.split('/')[0] ?? '');

/** Every import of a file that its room does not allow. */
function strangers(file: string, text: string): readonly string[] {
  const room = roomOf(file);
  const allowed = ROOMS[room];
  if (allowed === undefined) return [`${file} stands in no known room`];
  return importsOf(text).filter((name) => {
    if (name.startsWith('.')) {
      const other = roomOf(posix.join(posix.dirname(file), name));
      return other !== room && !allowed.rooms.includes(other);
    }
    const asked = isNode(name) ? 'node' : name;
    if (asked === 'node' && IN_NODE.includes(file)) return false;
    return !allowed.packages.some((one) => (typeof one === 'string' ? one === asked : one.test(asked)));
  });
}

/** Names used as values that belong to a place the room knows nothing of; clock and chance in the core too. */
function airOf(file: string, text: string): readonly string[] {
  const room = roomOf(file);
  const names = ROOMS[room]?.never ?? [];
  const never = IN_NODE.includes(file) ? names.filter((name) => !NODE.includes(name)) : names;
  const pure = room === 'core' || room === 'functions';
  const found: string[] = [];
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && never.includes(node.text)) {
      const { parent } = node;
      const named =
        (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
        (ts.isPropertyAssignment(parent) && parent.name === node) ||
        ts.isPropertySignature(parent) ||
        ts.isMethodSignature(parent) ||
        ts.isMethodDeclaration(parent) ||
        ts.isBindingElement(parent);
      if (!named) found.push(node.text);
    }
    if (pure && /^(Math\.random|Date\.now|new Date\(\)|performance\.now)$/.test(node.getText(source)))
      found.push(node.getText(source));
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

describe('every room', () => {
  it.each(FILES)('%s imports only what its room may use', (file) => {
    expect(strangers(file, textOf(file))).toEqual([]);
  });

  it.each(FILES)('%s says nothing its room must not know', (file) => {
    expect(airOf(file, textOf(file))).toEqual([]);
  });

  it('is one of those agreed', () => {
    const rooms = readdirSync(join(TOP, 'src'), { withFileTypes: true });
    for (const { name } of rooms) expect(Object.keys(ROOMS)).toContain(name);
  });

  it('has no barrel but the catalogue', () => {
    expect(FILES.filter((file) => /(^|\/)index\.tsx?$/.test(file))).toEqual(['functions/index.ts']);
  });
});

const inCore = (path: string): string | undefined => /^src\/core\/([^/]+)\//.exec(path)?.[1];

/** Every import of a core file that its folder does not allow. */
function upward(file: string, text: string): readonly string[] {
  const allowed = CORE[inCore(file) ?? ''];
  if (allowed === undefined) return [`${file} stands in no known folder of the core`];
  return importsOf(text).filter((name) => {
    if (!name.startsWith('.')) return false;
    const other = inCore(posix.join(posix.dirname(file), name));
    return other !== undefined && other !== inCore(file) && !allowed.includes(other);
  });
}

describe('every folder of the core', () => {
  const files = FILES.filter((file) => file.startsWith('src/core/'));

  it.each(files)('%s uses only folders above its own', (file) => {
    expect(upward(file, textOf(file))).toEqual([]);
  });

  it('stands below all that it may use', () => {
    const order = Object.keys(CORE);
    for (const [folder, used] of Object.entries(CORE))
      for (const other of used) expect(order.indexOf(other)).toBeLessThan(order.indexOf(folder));
  });

  it('is one of those agreed, and each is there', () => {
    expect(new Set(files.map(inCore))).toEqual(new Set(Object.keys(CORE)));
  });
});

describe('the check of rooms', () => {
  it('sees what does not belong', () => {
    expect(strangers('src/core/a.ts', "import { b } from '../../functions/b';")).toEqual([
      '../../functions/b',
    ]);
    expect(strangers('src/core/a.ts', "import 'node:fs';")).toEqual(['node:fs']);
    expect(strangers('src/core/a.ts', "const fs = await import('fs');")).toEqual(['fs']);
    expect(strangers('src/pane/a.ts', "import type { C } from '../excel/c';")).toEqual(['../excel/c']);
    expect(
      strangers('src/core/a.ts', "import { b } from './b'; import { Decimal } from 'decimal.js';"),
    ).toEqual([]);
    expect(upward('src/core/cell/a.ts', "import { b } from '../house/b';")).toEqual(['../house/b']);
    expect(upward('src/core/cell/a.ts', "import { b } from '../exact/b'; import { c } from './c';")).toEqual(
      [],
    );
    expect(airOf('src/core/a.ts', 'export const now = Date.now();')).toEqual(['Date.now']);
    expect(airOf('src/pane/a.ts', 'void Office.onReady();')).toEqual(['Office']);
    expect(airOf('src/pane/a.ts', 'document.title = of.Office;')).toEqual([]);
  });
});
