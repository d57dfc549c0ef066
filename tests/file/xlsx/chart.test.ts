import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { areaAt, readAddress } from '../../../src/book/address';
import { INCHES } from '../../../src/core/exact/unit';
import type { OrderFinding } from '../../../src/core/audit/finding';
import { openArchive, type Parts } from '../../../src/file/xlsx/archive';
import { addCharts, type DrawnChart } from '../../../src/file/xlsx/chart';
import { findingsBook } from '../../../src/file/audit/findings-book';
import { bytesOfText } from '../../../src/file/xlsx/text';
import { partText, readWorkbook } from '../../../src/file/xlsx/workbook';
import { attribute, tagsNamed, walk } from '../../../src/file/xlsx/xml';
import { scratch } from '../book';

const FOUND: OrderFinding = {
  row: 3,
  order: '',
  customer: '',
  room: '',
  code: 'figureDiffers',
  weight: 'check',
  sure: 'sure',
  column: 'yardage',
  measure: '',
  found: 21.75,
  expected: 18.75,
  difference: 3,
  money: 60,
  sentence: 'yardage reads 21 3/4 yd; worked out from the row it is 18 3/4 yd.',
};
const SUMMARY = [
  { kind: 'figure differs & “<others>”', weight: 'check', findings: 12, over: 60, under: 0 },
  { kind: 'swapped', weight: 'stop', findings: 3, over: 0, under: 0 },
];

async function written(): Promise<{ path: string; parts: Parts }> {
  const path = join(scratch(), 'findings.xlsx');
  writeFileSync(path, findingsBook([FOUND], SUMMARY, [['orders audited', 40]], { unit: INCHES }));
  return { path, parts: await openArchive(path) };
}

const textsIn = (xml: string, element: string): string[] => {
  const texts: string[] = [];
  let inside = false;
  walk(xml, 'part', {
    open: ({ name }) => void (inside ||= name === element),
    text: (text) => void (inside && texts.push(text)),
    close: (name) => void (inside &&= name !== element),
  });
  return texts;
};

describe('the chart of the findings', () => {
  it('shows what stands in the summary, cell by cell', async () => {
    const { parts } = await written();
    const xml = partText(parts, 'xl/charts/chart1.xml') ?? '';
    const summary = readWorkbook(parts).sheets[1];
    const cellsOf = (address: string): unknown[] => {
      const area = readAddress(address);
      return (summary?.seen.rows ?? [])
        .filter(({ row }) => area !== undefined && row >= area.row && row < area.row + area.rows)
        .flatMap(({ cells }) => cells.filter(({ column }) => column === area?.column))
        .map(({ value }) => String(value));
    };
    const ranges = textsIn(xml, 'f');
    expect(ranges).toEqual(['Summary!$B$1', 'Summary!$A$2:$A$3', 'Summary!$B$2:$B$3']);
    expect(textsIn(xml, 'v')).toEqual(ranges.flatMap(cellsOf));
    expect(textsIn(xml, 't')).toEqual(['Findings by kind']);
    // Bars are read from the top, in the order of their rows.
    expect(tagsNamed(xml, 'chart', 'orientation').map((tag) => attribute(tag, 'val'))).toEqual([
      'maxMin',
      'minMax',
    ]);
  });

  it('is a part that every relation reaches and every type names', async () => {
    const { parts } = await written();
    const types = new Set(
      tagsNamed(partText(parts, '[Content_Types].xml') ?? '', 'types', 'Override').map((tag) =>
        attribute(tag, 'PartName'),
      ),
    );
    for (const part of parts.keys())
      if (!part.endsWith('.rels') && part !== '[Content_Types].xml')
        expect([part, types.has(`/${part}`)]).toEqual([part, true]);
    for (const part of [...parts.keys()].filter((one) => one.endsWith('.rels'))) {
      const folder = part.replace(/_rels\/[^/]*$/, '');
      for (const tag of tagsNamed(partText(parts, part) ?? '', part, 'Relationship')) {
        const target = attribute(tag, 'Target') ?? '';
        expect([...parts.keys()]).toContain(target.startsWith('/') ? target.slice(1) : folder + target);
      }
    }
  });

  it('is left out where there is nothing to show', () => {
    const names = partsNamed(findingsBook([], [], [['orders audited', 2]], { unit: INCHES }));
    expect(names.filter((name) => name.includes('chart'))).toEqual([]);
  });

  it('is a bar chart to LibreOffice, of the same cells', async ({ skip }) => {
    if (spawnSync('soffice', ['--version']).status !== 0) skip('soffice is not installed here');
    const { path } = await written();
    const folder = scratch();
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    execFileSync('soffice', [profile, '--headless', '--convert-to', 'fods', '--outdir', folder, path], {
      stdio: 'ignore',
    });
    const theirs = readFileSync(join(folder, 'findings.fods'), 'utf8');
    expect(theirs).toContain('chart:class="chart:bar"');
    expect(theirs).toContain('chart:values-cell-range-address="Summary.B2:Summary.B3"');
    expect(theirs).toContain('Findings by kind');
  }, 60_000);
});

function partsNamed(bytes: Uint8Array): string[] {
  return [...new TextDecoder('latin1').decode(bytes).matchAll(/xl\/[\w/.]+/g)].map(([name]) => name);
}

describe('charts joined to a sheet', () => {
  const SHEET = 'xl/worksheets/sheet1.xml';
  const chart = (kind: DrawnChart['kind']): DrawnChart => ({
    name: 'Cloth',
    title: 'Cloth by room',
    kind,
    block: areaAt('Cloth & more', 3, 1, 3, 3),
    at: areaAt('Cloth & more', 0, 6, 10, 5),
    cells: [['room', 'face', 'lining'], ['bar', 12, 10], ['snug', null, 4]],
  }); // prettier-ignore

  it('stand before the tables and remarks that are there, whose relations stay', () => {
    const own =
      '<Relationships><Relationship Id="rId1" Type="x/table" Target="../tables/table1.xml"/></Relationships>';
    const parts: Parts = new Map(
      Object.entries({
        '[Content_Types].xml': '<Types></Types>',
        [SHEET]: '<worksheet><sheetData/><pageSetup/><legacyDrawing r:id="rId2"/><tableParts count="1"/></worksheet>',
        'xl/worksheets/_rels/sheet1.xml.rels': own,
        'xl/charts/chart1.xml': '<c/>',
      }).map(([name, xml]) => [name, bytesOfText(xml)]),
    ); // prettier-ignore
    addCharts(parts, SHEET, [chart('bar'), chart('line')]);
    expect(partText(parts, SHEET)).toMatch(/<pageSetup\/><drawing [^>]*r:id="rIdDrawing"\/><legacyDrawing/);
    expect(partText(parts, 'xl/worksheets/_rels/sheet1.xml.rels')).toContain('Target="../tables/table1.xml"');
    expect(partText(parts, 'xl/charts/chart1.xml')).toBe('<c/>');
    const drawing = partText(parts, 'xl/drawings/drawing1.xml') ?? '';
    expect(tagsNamed(drawing, 'drawing', 'chart')).toHaveLength(2);
    expect(tagsNamed(drawing, 'drawing', 'from', 'to')).toHaveLength(4);
    expect(textsIn(partText(parts, 'xl/charts/chart2.xml') ?? '', 'f')).toEqual([
      "'Cloth & more'!$C$4", "'Cloth & more'!$B$5:$B$6", "'Cloth & more'!$C$5:$C$6",
      "'Cloth & more'!$D$4", "'Cloth & more'!$B$5:$B$6", "'Cloth & more'!$D$5:$D$6",
    ]); // prettier-ignore
    expect(tagsNamed(partText(parts, 'xl/charts/chart3.xml') ?? '', 'chart', 'lineChart')).toHaveLength(1);
  });
});
