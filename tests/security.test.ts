/** What DEVELOPERS.md promises under “Security”, where no other test of the project holds it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { csvLine } from '../src/file/csv/csv';
import { Problem } from '../src/file/problem';
import { walk } from '../src/file/xlsx/xml';
import { placeOf } from '../src/make/written';

const read = (path: string): string => readFileSync(placeOf(path), 'utf8');

describe.each([
  ['src/excel/pane.html', ['https://appsforoffice.microsoft.com']],
  ['src/trial/page.html', []],
  ['src/pane/help.html', []],
  ['src/pane/installing.html', []],
])('the content policy of %s', (page, others) => {
  const policy = new Map(
    (/Content-Security-Policy"\s+content="([^"]+)"/.exec(read(page))?.[1] ?? '')
      .split(';')
      .map((one) => one.trim().split(/\s+/))
      .map(([name = '', ...sources]) => [name, sources]),
  );

  it('allows nothing but what it names', () => {
    expect(policy.get('default-src')).toEqual(["'none'"]);
    expect(policy.get('base-uri')).toEqual(["'none'"]);
    expect(policy.get('form-action')).toEqual(["'none'"]);
  });

  it('takes scripts from its own folder, and no request elsewhere', () => {
    expect(policy.get('script-src')).toEqual(["'self'", ...others]);
    for (const way of ['connect-src', 'worker-src', 'img-src', 'font-src', 'style-src'])
      for (const source of policy.get(way) ?? [])
        expect(["'self'", "'unsafe-inline'", 'data:', 'blob:']).toContain(source);
  });
});

it('no source of ours makes markup or a program out of text', () => {
  const ways =
    /\b(innerHTML|outerHTML|insertAdjacentHTML|dangerouslySetInnerHTML|srcdoc|document\.write|eval\(|new Function)/;
  const sources = readdirSync(placeOf('src'), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .filter((file) => ways.test(read(`src/${file}`)));
  expect(sources).toEqual([]);
});

// Source of the leading signs: OWASP, “CSV Injection”.
it.each(['=', '+', '-', '@', '\t', '\r'])(
  'text that begins with “%s” is no formula in a CSV file',
  (sign) => {
    expect(csvLine([`${sign}SUM(A1)`])).toMatch(/^"'/);
  },
);

it('an entity that an XML part declares is refused, however far it would grow', () => {
  const bomb = `<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]><x>&b;</x>`;
  let grown = '';
  const heard = { text: (text: string) => (grown += text) };
  expect(() => {
    walk(bomb, 'xl/sharedStrings.xml', heard);
  }).toThrow(Problem);
  expect(grown.length).toBeLessThan(20);
});

it('the manifest asks for the workbook, the right to write into it, and nothing else', () => {
  const manifest = read('manifest.xml');
  const all = (pattern: RegExp): readonly string[] =>
    [...manifest.matchAll(pattern)].map(([, one = '']) => one);
  expect(all(/<Permissions>(.*?)<\/Permissions>/g)).toEqual(['ReadWriteDocument']);
  expect(new Set(all(/<Host (?:Name|xsi:type)="(\w+)"/g))).toEqual(new Set(['Workbook']));
  expect(all(/<AppDomain>(.*?)<\/AppDomain>/g)).toEqual(['https://localhost:3000']);
  expect(manifest).not.toMatch(/WebApplicationInfo|<Scopes|Runtime /);
});

it('no fetched package runs a script of its own', () => {
  expect(read('.npmrc').split('\n')).toContain('ignore-scripts=true');
  expect(read('src/make/ready.mjs')).toContain("'--ignore-scripts'");
});

it('no package of the lockfile leaves us the GPL alone', () => {
  const { packages } = JSON.parse(read('package-lock.json')) as {
    packages: Record<string, { license?: string }>;
  };
  const bound = Object.entries(packages).filter(
    ([, { license = '' }]) => /GPL/.test(license) && license.split(' OR ').every((one) => /GPL/.test(one)),
  );
  expect(bound.map(([path]) => path)).toEqual([]);
  expect(Object.keys(packages).length).toBeGreaterThan(100);
});
