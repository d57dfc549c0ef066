export interface Entry {
  readonly name: string;
  readonly version: string;
  readonly license: string;
  readonly text: string;
}
export declare const FILE: string;
export declare function isAgreed(expression: string): boolean;
export declare function packageOf(file: string): string | undefined;
export declare function entryOf(folder: string): Entry;
export declare function written(entries: readonly Entry[]): string;
