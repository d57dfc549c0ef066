/** How a kind of Excel object is declared: its properties, parts and methods by the names the client sends. */
import type { World } from './world';

/** One property. Where there is no `set`, writing it is refused. */
export interface Scalar<S> {
  get(self: S, world: World): unknown;
  set?(self: S, value: unknown, world: World): void;
}

export interface Kind<S> {
  readonly name: string;
  readonly scalars: Readonly<Record<string, Scalar<S>>>;
  readonly parts: Readonly<Record<string, (self: S, world: World) => Thing | null>>;
  readonly methods: Readonly<Record<string, (self: S, args: readonly unknown[], world: World) => unknown>>;
  /** A collection's members. */
  items?(self: S, world: World): readonly Thing[];
  /** A collection's member by id, name or place. */
  find?(self: S, key: unknown, world: World): Thing | undefined;
  /** What the client may ask for again by (worksheets, tables, names …). */
  id?(self: S): unknown;
  /** Kept alive by reference (ranges). */
  readonly referenced?: boolean;
}

/** An object of Excel's as a path reaches it. */
export interface Thing {
  readonly kind: Kind<unknown>;
  readonly self: unknown;
}

type Declared<S> = Partial<Omit<Kind<S>, 'name'>>;

export const kind = <S>(name: string, declared: Declared<S>): Kind<S> => ({
  name,
  scalars: {},
  parts: {},
  methods: {},
  ...declared,
});

export const thing = <S>(kind: Kind<S>, self: S): Thing => ({ kind: kind as unknown as Kind<unknown>, self });

export const isThing = (value: unknown): value is Thing =>
  typeof value === 'object' && value !== null && 'kind' in value && 'self' in value;

/** The model behind an argument that the client sent as one of its own objects. */
export function selfOf<S>(value: unknown, kind: Kind<S>): S {
  if (!isThing(value) || value.kind.name !== kind.name) throw invalidArgument(`A ${kind.name} was expected.`);
  return value.self as S;
}

/** A plain property kept in a record on the model. */
export const kept = <S>(
  record: (self: S) => Record<string, unknown>,
  name: string,
  initial?: unknown,
): Scalar<S> => ({
  get: (self) => record(self)[name] ?? initial,
  set(self, value) {
    record(self)[name] = value;
  },
});

/** Several plain properties with their initial values. */
export const keptAll = <S>(
  record: (self: S) => Record<string, unknown>,
  initials: Readonly<Record<string, unknown>>,
): Record<string, Scalar<S>> =>
  Object.fromEntries(Object.entries(initials).map(([name, initial]) => [name, kept(record, name, initial)]));

/** A property that the model itself holds under another name. */
export const held = <S, K extends keyof S>(name: K, writable = false): Scalar<S> => ({
  get: (self) => self[name],
  ...(writable
    ? {
        set(self: S, value: unknown) {
          self[name] = value as S[K];
        },
      }
    : {}),
});

/** An error as Excel answers with it. */
export class ExcelError extends Error {
  constructor(
    readonly code: string,
    message: string,
    readonly status = 400,
  ) {
    super(message);
  }
}

/* Codes: Microsoft's page "Error handling with the application-specific JavaScript APIs"; wording from memory. */
export const invalidArgument = (
  message = 'The argument is invalid or missing or has an incorrect format.',
): ExcelError => new ExcelError('InvalidArgument', message);
export const itemNotFound = (): ExcelError =>
  new ExcelError('ItemNotFound', "The requested resource doesn't exist.", 404);
export const itemAlreadyExists = (): ExcelError =>
  new ExcelError('ItemAlreadyExists', 'A resource with the same name or identifier already exists.', 409);
export const accessDenied = (): ExcelError =>
  new ExcelError('AccessDenied', 'You cannot perform the requested operation.', 403);
export const invalidReference = (): ExcelError =>
  new ExcelError('InvalidReference', 'This reference is not valid for the current operation.');

/** What this stand-in has not learnt yet: never an error Excel would give. */
export class NotInStandIn extends ExcelError {
  constructor(what: string) {
    super(
      'NotInStandIn',
      `The stand-in for Excel does not know ${what} yet: add it in tests/office/kinds.`,
      501,
    );
  }
}

export function found<T>(value: T | undefined | null): T {
  if (value === undefined || value === null) throw itemNotFound();
  return value;
}

/** A collection whose members are known by id or name. */
export function collection<S, M>(
  name: string,
  member: () => Kind<M>,
  given: {
    items(self: S, world: World): readonly M[];
    named(one: M): readonly unknown[];
    /** Whether a member may be asked for by its place. */
    places?: boolean;
    /** Whether there is a `count` property beside `getCount()`. */
    counts?: boolean;
    methods?: Kind<S>['methods'];
  },
): Kind<S> {
  const items = (self: S, world: World): Thing[] =>
    given.items(self, world).map((one) => thing(member(), one));
  const find = (self: S, key: unknown, world: World): Thing | undefined => {
    const wanted = typeof key === 'string' ? key.toLowerCase() : key;
    const one = given
      .items(self, world)
      .find((each) =>
        given
          .named(each)
          .some((known) => (typeof known === 'string' ? known.toLowerCase() : known) === wanted),
      );
    return one === undefined ? undefined : thing(member(), one);
  };
  return kind<S>(name, {
    scalars:
      given.counts === true ? { Count: { get: (self, world) => given.items(self, world).length } } : {},
    items,
    find,
    methods: {
      GetCount: (self, _, world) => given.items(self, world).length,
      GetItem: (self, [key], world) => found(find(self, key, world)),
      ...(given.places === true
        ? {
            GetItemAt: (self: S, [place]: readonly unknown[], world: World) =>
              found(items(self, world)[Number(place)]),
          }
        : {}),
      ...given.methods,
    },
  });
}
