/** Excel's metadata as the small catalogue, in JSON. */
export function catalogue(metadata: string | Uint8Array): string;
