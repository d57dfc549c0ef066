/** Names of the workbook and of one sheet. */
import { readArea } from '../address';
import {
  collection,
  found,
  held,
  invalidArgument,
  isThing,
  itemNotFound,
  kind,
  selfOf,
  thing,
  type Kind,
} from '../kind';
import { WORKSHEET } from './worksheet';
import type { NameModel, Sheet, Workbook } from '../model';
import type { World } from '../world';
import { absoluteAddress, RANGE, rangeOf, resolve, type RangeModel } from './range';

interface NamesModel {
  readonly book: Workbook;
  readonly scope: Sheet | undefined;
}

/** A sheet's own name hides the workbook's. */
export function nameNamed(world: World, name: string, sheet: Sheet | undefined): NameModel | undefined {
  const same = world.book.names.filter((one) => one.name.toLowerCase() === name.toLowerCase());
  return same.find((one) => one.scope === sheet) ?? same.find((one) => one.scope === undefined);
}

/** The range a name points at, or undefined for a value or a formula. */
function target(world: World, one: NameModel): RangeModel | undefined {
  try {
    return resolve(world, one.scope ?? world.book.active, one.formula.replace(/^=/, ''));
  } catch {
    return undefined;
  }
}

/** Refuses what Excel refuses: a cell's address, R or C, a blank in it, a table's or another name's. */
export function checkName(book: Workbook, name: string, scope: Sheet | undefined): void {
  const fine = /^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(name) && name.length <= 255;
  if (!fine || readArea(name) !== undefined || /^[rc]$/i.test(name) || /^r\d*c\d*$/i.test(name))
    throw invalidArgument();
  const lower = name.toLowerCase();
  const taken = book.names.some((one) => one.name.toLowerCase() === lower && one.scope === scope);
  if (taken || book.tables.some((table) => table.name.toLowerCase() === lower)) throw invalidArgument();
}

const NAME: Kind<NameModel> = kind<NameModel>('NamedItem', {
  id: (one) => (one.scope === undefined ? one.name : `${one.scope.name}!${one.name}`),
  scalars: {
    Name: held<NameModel, 'name'>('name'),
    Comment: held<NameModel, 'comment'>('comment', true),
    Visible: held<NameModel, 'visible'>('visible', true),
    Formula: held<NameModel, 'formula'>('formula', true),
    Scope: { get: (one) => (one.scope === undefined ? 'Workbook' : 'Worksheet') },
    Type: {
      get(one, world) {
        if (target(world, one) !== undefined) return 'Range';
        return /^="?.*"$/.test(one.formula) ? 'String' : 'Double';
      },
    },
    Value: {
      get(one, world) {
        const range = target(world, one);
        return range === undefined ? one.formula.replace(/^="?|"$/g, '') : absoluteAddress(range);
      },
    },
  },
  parts: { Worksheet: (one) => thing(WORKSHEET, found(one.scope)) },
  methods: {
    GetRange(one, _, world) {
      const range = target(world, one);
      if (range === undefined) throw itemNotFound();
      return rangeOf(range.sheet, range.area);
    },
    Delete(one, _, world) {
      world.book.names = world.book.names.filter((other) => other !== one);
    },
  },
});

const base = collection<NamesModel, NameModel>('NamedItemCollection', () => NAME, {
  items: ({ book, scope }) => book.names.filter((one) => one.scope === scope),
  named: (one) => [one.name, one.scope === undefined ? one.name : `${one.scope.name}!${one.name}`],
});

export const NAMES: Kind<NamesModel> = {
  ...base,
  methods: {
    ...base.methods,
    Add({ book, scope }, [name, reference, comment], world) {
      checkName(book, String(name), scope);
      const formula = isThing(reference)
        ? `=${absoluteAddress(selfOf(reference, RANGE))}`
        : String(reference);
      const one: NameModel = {
        name: String(name),
        formula: typeof reference === 'number' || formula.startsWith('=') ? formula : `="${formula}"`,
        comment: String(comment ?? ''),
        visible: true,
        scope,
      };
      book.names.push(one);
      world.dirty = true;
      return thing(NAME, one);
    },
  },
};
