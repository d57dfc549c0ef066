/** What every table of findings is made of: how heavy each is and how it is said. */
interface Entry {
  readonly weight: 'stop' | 'check' | 'note';
  /** Said by the pane and the command; no cell function says it, so their bundle goes without. */
  readonly elsewhere?: true;
  readonly says: (...words: never[]) => string;
}

export const table = <T extends Record<string, Entry>>(entries: T): T => entries;
