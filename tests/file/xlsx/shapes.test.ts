import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { across, EMPTY, up, type Drawing } from '../../../src/core/drawing/drawing';
import { laidOut } from '../../../src/core/drawing/laid-out';
import { inches, NO_LENGTH } from '../../../src/core/exact/length';
import { INCHES } from '../../../src/core/exact/unit';
import { zipped } from '../../../src/file/xlsx/archive';
import { addShapes } from '../../../src/file/xlsx/chart';
import { partText } from '../../../src/file/xlsx/workbook';
import { tagsNamed, walk } from '../../../src/file/xlsx/xml';
import { scratch, smallBook } from '../book';

const DRAWING: Drawing = {
  ...EMPTY,
  title: 'A “pair” & its rod',
  left: NO_LENGTH,
  right: inches(100),
  top: inches(50),
  boxes: [
    { part: 'cloth', x: NO_LENGTH, y: NO_LENGTH, width: inches(50), height: inches(50) },
    { part: 'stack', x: NO_LENGTH, y: NO_LENGTH, width: inches(10), height: inches(50) },
  ],
  lines: [{ part: 'seam', from: [inches(25), NO_LENGTH], to: [inches(25), inches(50)] }],
  rounds: [{ part: 'mark', at: [inches(75), inches(25)], radius: inches(2) }],
  dimensions: [
    across('rod width', [0, inches(100)], { side: 'below', row: 1, at: NO_LENGTH, short: 'rod' }),
    up('finished drop', [0, inches(50)], { side: 'right', row: 1, at: inches(100), short: 'drop' }),
  ],
};
const drawing = laidOut(DRAWING, { wide: 300, high: 250, letters: 9 }, INCHES);

function drawn() {
  const parts = new Map(Object.entries(unzipSync(smallBook('<row r="1"><c r="A1"><v>3</v></c></row>'))));
  const sheet = [...parts.keys()].find((part) => part.includes('worksheets/')) ?? '';
  addShapes(parts, sheet, [
    { row: 2, column: 0, right: 3, name: 'first', drawing, letters: 9 },
    { row: 30, column: 0, right: 3, name: 'second', drawing, letters: 9 },
  ]);
  const part = [...parts.keys()].find((one) => one.startsWith('xl/drawings/')) ?? '';
  return { parts, part, xml: partText(parts, part) ?? '' };
}

describe('a drawing as shapes of a sheet', () => {
  it('is well-formed, every shape with a number of its own', () => {
    const { xml, part } = drawn();
    expect(() => {
      walk(xml, part, {});
    }).not.toThrow();
    const ids = tagsNamed(xml, part, 'cNvPr').map(({ attributes }) => attributes['id']);
    expect(ids.length).toBeGreaterThan(10);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('has its text alternative', () => {
    const { xml, part } = drawn();
    const said = tagsNamed(xml, part, 'cNvPr').flatMap(({ attributes }) => attributes['descr'] ?? []);
    expect(said).toHaveLength(2);
    expect(xml).toContain('A “pair” &amp; its rod: rod width 100 in, finished drop 50 in.');
  });

  it('draws every mark inside its own ground', () => {
    const { xml, part } = drawn();
    const [ground] = tagsNamed(xml, part, 'path').map(({ attributes }) => [
      Number(attributes['w']),
      Number(attributes['h']),
    ]);
    const points = tagsNamed(xml, part, 'pt');
    expect(points.length).toBeGreaterThan(10);
    for (const { attributes } of points) {
      expect(Number(attributes['x'])).toBeGreaterThanOrEqual(0);
      expect(Number(attributes['x'])).toBeLessThanOrEqual((ground?.[0] ?? 0) + 1);
      expect(Number(attributes['y'])).toBeLessThanOrEqual((ground?.[1] ?? 0) + 1);
    }
  });

  it('is printed by LibreOffice with its figures', (context) => {
    if (spawnSync('soffice', ['--version']).status !== 0 || spawnSync('pdftotext', ['-v']).status !== 0)
      return context.skip('LibreOffice or pdftotext is not installed');
    const folder = scratch();
    const path = join(folder, 'drawn.xlsx');
    writeFileSync(path, zipped(drawn().parts));
    const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    execFileSync('soffice', [profile, '--headless', '--convert-to', 'pdf', '--outdir', folder, path]);
    execFileSync('pdftotext', ['-layout', join(folder, 'drawn.pdf'), join(folder, 'drawn.txt')]);
    const text = readFileSync(join(folder, 'drawn.txt'), 'utf8');
    expect(text.match(/rod 100 in/g)).toHaveLength(2);
  }, 120_000);
});
