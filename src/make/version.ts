/**
 * One version for the package, the manifest and the pages: package.json's. functions/version.json keeps
 * which metadata that version has, since Excel keeps functions.json for a day and asks for it anew only
 * when the manifest's version is another.
 */
import { createHash } from 'node:crypto';

export interface Version {
  readonly version: string;
  /** SHA-256 of functions.json, in hexadecimal. */
  readonly functions: string;
}

const parts = (version: string): readonly number[] => version.split('.').map(Number);

/** Whether the first of two versions of three numbers is the later one. */
function isLater(one: string, other: string): boolean {
  const before = parts(other);
  const at = parts(one).findIndex((part, place) => part !== before[place]);
  return at >= 0 && (parts(one)[at] ?? 0) > (before[at] ?? 0);
}

/** The version with its metadata; undefined where the metadata changed and the version did not go up. */
export function versionWith(kept: Version, version: string, metadata: string): Version | undefined {
  const functions = createHash('sha256').update(metadata).digest('hex');
  if (functions !== kept.functions && !isLater(version, kept.version)) return undefined;
  return { version, functions };
}

/** The manifest under this version; Office counts four parts. */
export function manifestWith(manifest: string, version: string): string {
  const element = /<Version>[^<]*<\/Version>/;
  if (!element.test(manifest)) throw new Error('manifest.xml has lost its element Version.');
  return manifest.replace(element, `<Version>${version}.0</Version>`);
}
