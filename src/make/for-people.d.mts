/** A source as JavaScript, without what only people read of its declarations. */
export declare function plain(text: string): string;
export function findings(text: string): string;
