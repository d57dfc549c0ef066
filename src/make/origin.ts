/** Where the add-in is served while it is worked on; a build for the public puts its own host here. */
export const ORIGIN = 'https://localhost:3000';
export const HELP_PAGE = `${ORIGIN}/help.html`;
