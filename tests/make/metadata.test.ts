import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Ajv from 'ajv';
import { generateCustomFunctionsMetadata } from 'custom-functions-metadata';
import { describe, expect, it } from 'vitest';
import { CATALOGUE, NAMESPACE } from '../../functions';
import { enumIds, metadata, type Metadata } from '../../src/make/metadata';
import { nameInSource, stubOf } from './stub';

const OURS = metadata(CATALOGUE);

/** What Microsoft's generator says of the catalogue written as a source file. */
async function theirs(): Promise<unknown> {
  const folder = await mkdtemp(join(tmpdir(), 'hemledger-'));
  try {
    const file = join(folder, 'stub.ts');
    await writeFile(file, stubOf(CATALOGUE));
    const { errors, metadataJson } = await generateCustomFunctionsMetadata(file);
    expect(errors).toEqual([]);
    return JSON.parse(metadataJson);
  } finally {
    await rm(folder, { recursive: true });
  }
}

/**
 * What the generator (2.2.3) cannot say, and nothing else:
 * it has no tag for allowErrorForDataTypeAny;
 * an enum's member of two words is quoted in the source, and it keeps the quotes in the name;
 * a parameter named by a word TypeScript keeps for itself (return) bears another name in the source.
 */
const asTheySayIt = ({ allowErrorForDataTypeAny, ...ours }: Metadata): unknown => {
  expect(allowErrorForDataTypeAny).toBe(true);
  return {
    ...ours,
    functions: ours.functions.map((one) => ({
      ...one,
      parameters: one.parameters.map((parameterMetadata) => ({
        ...parameterMetadata,
        name: nameInSource(parameterMetadata.name),
      })),
    })),
    enums: ours.enums.map((one) => ({
      ...one,
      values: one.values.map((value) => ({ ...value, name: JSON.stringify(value.name) })),
    })),
  };
};

describe("Excel's metadata", () => {
  it("is what Microsoft's generator makes of the same functions", async () => {
    expect(await theirs()).toEqual(asTheySayIt(OURS));
  });

  it("is valid by the unified manifest's schema", async () => {
    const path = '@microsoft/app-manifest/build/json-schemas/teams/v1.30/MicrosoftTeams.schema.json';
    const text = await readFile(createRequire(import.meta.url).resolve(path), 'utf8');
    const { definitions } = JSON.parse(text) as { definitions: object };
    const ajv = new Ajv({ strict: false, validateFormats: false, allErrors: true });
    const valid = ajv.compile({ $ref: '#/definitions/extensionCustomFunctions', definitions });

    // The manifest names the namespace, and its schema knows no allowErrorForDataTypeAny yet.
    const { allowErrorForDataTypeAny, ...known } = OURS;
    expect(allowErrorForDataTypeAny).toBe(true);
    const inManifest = { ...known, namespace: { id: NAMESPACE, name: NAMESPACE } };
    expect(valid(inManifest), JSON.stringify(valid.errors, null, 1)).toBe(true);

    expect(valid({ ...inManifest, functions: [{ ...known.functions[0], id: 'A1' }] })).toBe(false);
    expect(valid({ ...inManifest, namespace: { id: 'H E M', name: 'HEM' } })).toBe(false);
  });

  it('gives every function an id that equals its name and is like no cell address', () => {
    for (const { id, name } of OURS.functions) {
      expect(id).toBe(name);
      expect(id).toMatch(/^[A-Z]{3,64}$/);
      expect(id).not.toMatch(/^(?:[A-Z]{1,3}\d+|R\d*C\d*)$/);
    }
    expect(new Set(OURS.functions.map(({ id }) => id)).size).toBe(OURS.functions.length);
  });

  it('keeps required parameters before optional ones, and a repeated one last', () => {
    for (const { id, parameters } of OURS.functions) {
      const marks = parameters.map(({ optional, repeating }) =>
        repeating === true ? 2 : optional === true ? 1 : 0,
      );
      expect(marks, id).toEqual([...marks].sort((one, other) => one - other));
    }
  });

  it('describes every function, parameter and choice within the lengths Excel shows', () => {
    const words = [
      ...OURS.functions.map(({ description }) => description),
      ...OURS.functions.flatMap(({ parameters }) => parameters.map(({ description }) => description)),
      ...OURS.enums.flatMap(({ values }) => values.map(({ tooltip }) => tooltip)),
    ];
    for (const one of words) {
      expect(one).toMatch(/^\S.*\S$/);
      expect(one.length, one).toBeLessThanOrEqual(255);
    }
  });

  it('offers one list for all functions that take the same choices', () => {
    const ids = [...enumIds(CATALOGUE).values()];
    expect(new Set(ids).size).toBe(ids.length);
    const heading = OURS.functions
      .flatMap(({ parameters }) => parameters)
      .filter(({ name }) => name === 'heading')
      .map(({ customEnumId }) => customEnumId);
    expect(new Set(heading)).toEqual(new Set(['Heading']));
  });
});
