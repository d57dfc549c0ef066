/** The value, or a failed test where there is none. */
export function ensure<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('a value was expected');
  return value;
}
