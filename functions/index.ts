/** The catalogue, in the order people meet the functions. */
import type { CellFunction } from './declare';
import { DROP, EXTENSION, RODHEIGHT, RODWIDTH } from './measure';

export const NAMESPACE = 'HEM';

export const CATALOGUE: readonly CellFunction[] = [EXTENSION, RODWIDTH, RODHEIGHT, DROP];

const BY_NAME = new Map(CATALOGUE.map((one) => [one.name, one]));

/** Finds a function by name, with or without the namespace. */
export const functionNamed = (name: string): CellFunction | undefined =>
  BY_NAME.get(
    name
      .trim()
      .toUpperCase()
      .replace(/^=?\s*(HEM\.|_XLDUDF_HEM_)/, ''),
  );
