import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hem } from '../../src/file/hem';
import { golden, listening, scratch } from './book';

const csv = (text: string): string => {
  const path = join(scratch(), 'sheet.csv');
  writeFileSync(path, text);
  return path;
};
const MEASURES = `Level 2,,,,,,
Rm,Inside W,Rod,Fin. drop,Hdg,Opens,Remarks
201,72,94,96,pinch,pr,
202,40 1/2,62 1/2,96,pinch,L,door
`;

async function read(
  words: readonly string[],
): Promise<{ code: number; said: string[]; complained: string[] }> {
  const io = listening();
  const code = await hem(['read', ...words], io);
  return { code, said: io.said, complained: io.complained };
}

describe('read', () => {
  it('gives a reading as one JSON object', async () => {
    const { code, said } = await read([csv(MEASURES), '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(said.join(''))).toMatchObject({
      sheet: 'sheet.csv',
      header: [2],
      columns: [
        { column: 'A', heading: 'Rm', means: 'room', sure: 'sure' },
        { column: 'B', heading: 'Inside W', means: 'inside width', unit: 'in', sure: 'sure' },
        { column: 'C', heading: 'Rod', means: 'rod width', unit: 'in', sure: 'sure' },
        { column: 'D', heading: 'Fin. drop', means: 'finished drop', unit: 'in', sure: 'sure' },
        { column: 'E', heading: 'Hdg', means: 'heading', sure: 'sure' },
        { column: 'F', heading: 'Opens', means: 'draw', sure: 'sure' },
        { column: 'G', heading: 'Remarks', means: null },
      ],
      rows: [
        { row: 3, is: 'window', values: { room: '201', 'inside width': 72, 'rod width': 94, draw: 'pair' } },
        { row: 4, is: 'window', values: { room: '202', 'inside width': 40.5, draw: 'one-way left' } },
      ],
      assumed: ['quantity'],
    });
  });

  it('says the same to people, and which columns it leaves', async () => {
    const { said } = await read([csv(MEASURES)]);
    expect(said[0]).toBe('Sheet “sheet.csv”, headings in row 2');
    expect(said).toContain('note Column G, headed “Remarks”, is not read.');
  });

  it('takes the user’s word for a column', async () => {
    const { said } = await read([csv(MEASURES), '--json', '--columns', 'B=rod width; C=']);
    expect(JSON.parse(said.join(''))).toMatchObject({
      columns: [{ means: 'room' }, { means: 'rod width' }, { means: null }, {}, {}, {}, {}],
    });
  });

  it('says in a sentence that no table of windows stands there', async () => {
    const payroll = 'Name,Hours,Rate,Gross,Tax,Net\nAda,40,20,800,160,640\nBo,38,20,760,150,610\n';
    const { code, said } = await read([csv(payroll), '--json']);
    expect([code, Object.keys(JSON.parse(said.join('')) as object)]).toEqual([1, ['none']]);
  });

  it('names the sheets where the one asked for is not there', async () => {
    const { code, complained } = await read([golden('floor.xlsx'), '--sheet', 'Nowhere']);
    expect([code, complained[0]?.startsWith(`“${golden('floor.xlsx')}” has no sheet “Nowhere”.`)]).toEqual([
      2,
      true,
    ]);
  });

  it('says how a column is corrected', async () => {
    const { code, complained } = await read([csv(MEASURES), '--columns', 'B=breadth']);
    expect([code, complained]).toEqual([
      2,
      [
        '--columns: “B=breadth” names “breadth”, which is no column of ours. Say it as a heading of ours, like vertical repeat.',
      ],
    ]);
  });
});
