export declare const DEVELOPMENT: string;
export declare function place(asked?: string): string;
export declare function servedAt(where: string): (content: Buffer | string) => string;
