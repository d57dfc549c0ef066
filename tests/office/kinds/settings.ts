/** What an add-in keeps in a workbook (settings) and on a sheet (custom properties). */
import { collection, kind, thing, type Kind } from '../kind';
import type { Sheet, Workbook } from '../model';

interface Entry {
  readonly store: Map<string, unknown>;
  readonly key: string;
}

function store<S>(name: string, member: string, held: (self: S) => Map<string, unknown>): Kind<S> {
  const SETTING = kind<Entry>(member, {
    id: (entry) => entry.key,
    scalars: {
      Key: { get: (entry) => entry.key },
      Value: {
        get: ({ store: map, key }) => map.get(key),
        set({ store: map, key }, value) {
          map.set(key, value);
        },
      },
    },
    methods: {
      Delete({ store: map, key }) {
        map.delete(key);
      },
    },
  });
  const base = collection<S, Entry>(name, () => SETTING, {
    items: (self) => [...held(self).keys()].map((key) => ({ store: held(self), key })),
    named: (entry) => [entry.key],
  });
  return {
    ...base,
    methods: {
      ...base.methods,
      Add(self, [key, value]) {
        held(self).set(String(key), value);
        return thing(SETTING, { store: held(self), key: String(key) });
      },
    },
  };
}

export const SETTINGS = store<Workbook>('SettingCollection', 'Setting', (book) => book.settings);
export const CUSTOM_PROPERTIES = store<Sheet>(
  'WorksheetCustomPropertyCollection',
  'WorksheetCustomProperty',
  (sheet) => sheet.properties,
);
