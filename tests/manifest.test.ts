import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { OfficeAddinManifest } from 'office-addin-manifest';
import { describe, expect, it } from 'vitest';
import { NAMESPACE } from '../functions';

const at = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));
const MANIFEST = readFileSync(at('manifest.xml'), 'utf8');
const SCHEMA = at('tests/schemas/OfficeAppManifestV1_1.xsd');

const all = (pattern: RegExp, text: string = MANIFEST): readonly string[] =>
  [...text.matchAll(pattern)].map((match) => match[1] ?? '');

/** The resources by their id, with the element each stands in. */
const RESOURCES = new Map(
  [...MANIFEST.matchAll(/<bt:(Image|Url|String) id="([^"]+)" DefaultValue="([^"]*)"/g)].map(
    ([, element = '', id = '', value = '']) => [id, { element, value }],
  ),
);

const isXmllintHere = spawnSync('xmllint', ['--version']).status === 0;

function validate(manifest: string): { valid: boolean; says: string } {
  const { status, stderr } = spawnSync('xmllint', ['--nonet', '--noout', '--schema', SCHEMA, '-'], {
    input: manifest,
    encoding: 'utf8',
  });
  return { valid: status === 0, says: stderr };
}

describe('manifest.xml', () => {
  it.runIf(isXmllintHere)("is valid by Office's schema", () => {
    expect(validate(MANIFEST)).toEqual({ valid: true, says: '- validates\n' });
    const broken = MANIFEST.replace('<Metadata>', '<Metadate>').replace('</Metadata>', '</Metadate>');
    expect(validate(broken).valid).toBe(false);
  });

  it("is read by Microsoft's own reader as it is meant", async () => {
    expect(await OfficeAddinManifest.readManifestFile(at('manifest.xml'))).toMatchObject({
      displayName: 'Hemledger',
      officeAppType: 'TaskPaneApp',
      hosts: ['Workbook'],
      permissions: 'ReadWriteDocument',
      defaultSettings: { sourceLocation: 'https://localhost:3000/pane.html' },
    });
  });

  it('points at no resource that is not there, and holds none that is not used', () => {
    const used = new Set(all(/resid="([^"]+)"/g));
    expect([...RESOURCES.keys()].sort()).toEqual([...used].sort());
    const ids = all(/<bt:\w+ id="([^"]+)"/g);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id.length, id).toBeLessThanOrEqual(32);
  });

  it('asks for https everywhere, from one origin', () => {
    const addresses = all(/(?:DefaultValue="|<AppDomain>)(\w+:\/\/[^"<]*)/g);
    expect(addresses.length).toBeGreaterThan(8);
    for (const address of addresses) expect(address).toMatch(/^https:\/\/localhost:3000(\/|$)/);
    for (const { element, value } of RESOURCES.values()) {
      if (element !== 'String') expect(value).toMatch(/^https:\/\//);
    }
  });

  it("gives the functions a runtime of their own under the catalogue's namespace", () => {
    const [point = ''] = all(/<ExtensionPoint xsi:type="CustomFunctions">([\s\S]*?)<\/ExtensionPoint>/g);
    const valueOf = (element: string): string | undefined => {
      const [id = ''] = all(new RegExp(`<${element}>?\\s*(?:<SourceLocation )?resid="([^"]+)"`, 'g'), point);
      return RESOURCES.get(id)?.value;
    };
    expect(valueOf('Script')).toMatch(/\/functions\.js$/);
    expect(valueOf('Page')).toMatch(/\/functions\.html$/);
    expect(valueOf('Metadata')).toMatch(/\/functions\.json$/);
    expect(valueOf('Namespace ')).toBe(NAMESPACE);
    expect(MANIFEST).not.toContain('<Runtime');
  });

  it('keeps its labels within the lengths Office shows', () => {
    for (const [id, { element, value }] of RESOURCES) {
      if (element !== 'String') continue;
      const isLong = MANIFEST.indexOf(`id="${id}"`) > MANIFEST.indexOf('<bt:LongStrings>');
      expect(value.length, id).toBeLessThanOrEqual(isLong ? 250 : 125);
    }
    expect(all(/<Description DefaultValue="([^"]+)"/g)[0]?.length).toBeLessThanOrEqual(250);
  });

  it('bears a GUID and a version of four parts', () => {
    expect(MANIFEST).toMatch(/<Id>[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}<\/Id>/);
    expect(MANIFEST).toMatch(/<Version>\d+\.\d+\.\d+\.\d+<\/Version>/);
  });

  it.each([
    [16, 'Icon.16'],
    [32, 'Icon.32'],
    [80, 'Icon.80'],
    [32, 'IconUrl'],
    [64, 'HighResolutionIconUrl'],
  ])('has an icon of %i pixels for %s', (side, place) => {
    const address =
      RESOURCES.get(place)?.value ?? all(new RegExp(`<${place} DefaultValue="([^"]+)"`, 'g'))[0] ?? '';
    const [, name = ''] = /\/icons\/([^/]+\.png)$/.exec(address) ?? [];
    const png = readFileSync(at(`src/excel/icons/${name}`));
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([side, side]);
  });
});
