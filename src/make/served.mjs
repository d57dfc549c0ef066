/** Where the add-in will be served, and the files that name the place. */

/** Where it is served while it is worked on; manifest.xml and functions.json are written for it. */
export const DEVELOPMENT = 'https://localhost:3000';

/** `https://host/path`, checked, without a slash at its end. */
export function place(asked = DEVELOPMENT) {
  if (!/^https:\/\/[a-z0-9.-]+(:\d+)?(\/[\w.~-]+)*\/?$/i.test(asked)) {
    throw new Error(
      `HEMLEDGER_ORIGIN reads “${asked}”. Office loads add-ins over https only: write where its files will be served, like https://addins.example.org or https://example.org/drapery.`,
    );
  }
  return asked.replace(/\/$/, '');
}

/** A file that names the place, for another one. An AppDomain is a host: it takes no path. */
export const servedAt = (where) => (content) =>
  content
    .toString()
    .replaceAll(`<AppDomain>${DEVELOPMENT}</AppDomain>`, `<AppDomain>${new URL(where).origin}</AppDomain>`)
    .replaceAll(DEVELOPMENT, where);
