/**
 * What the code uses beyond ES2018, brought along for Excel's own JavaScript runtime on older machines.
 * The core's tsconfig allows exactly these: ES2019, and `at` of an array. A library's own of them, with
 * all their cases, took an eighth of the bundle; these do what the core asks of them.
 */

type List = readonly unknown[];

function bring(home: object, name: string, value: (this: never, ...given: never[]) => unknown): void {
  if (name in home) return;
  Object.defineProperty(home, name, { value, writable: true, configurable: true });
}

bring(Array.prototype, 'at', function (this: List, place = 0): unknown {
  return this[place < 0 ? this.length + place : place];
});
bring(Array.prototype, 'flat', function (this: List, depth = 1): unknown[] {
  const flat: unknown[] = [];
  for (const one of this) {
    if (Array.isArray(one)) for (const inner of depth > 1 ? one.flat(depth - 1) : one) flat.push(inner);
    else flat.push(one);
  }
  return flat;
});
bring(
  Array.prototype,
  'flatMap',
  function (this: List, map: (one: unknown, at: number) => unknown): unknown[] {
    return this.map((one, at) => map(one, at)).flat();
  },
);
bring(Object, 'fromEntries', (entries: Iterable<readonly [PropertyKey, unknown]>) => {
  const made: Record<PropertyKey, unknown> = {};
  for (const [key, value] of entries)
    Object.defineProperty(made, key, { value, writable: true, enumerable: true, configurable: true });
  return made;
});
bring(String.prototype, 'trimStart', function (this: string): string {
  return this.replace(/^\s+/, '');
});
bring(String.prototype, 'trimEnd', function (this: string): string {
  return this.replace(/\s+$/, '');
});
