/** npm start, once everything is built: serves the trial workbook to this machine alone, and says how to try it in Excel. */
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve, type Certificate } from './serve';

const PORT = Number(process.env['PORT'] ?? 3100);
const dist = fileURLToPath(new URL('../../dist', import.meta.url));
const manifest = fileURLToPath(new URL('../../manifest.xml', import.meta.url));

/** Where the manifest says the add-in is. */
const EXCEL_PORT = Number(/https:\/\/localhost:(\d+)/.exec(readFileSync(manifest, 'utf8'))?.[1]);

const write = (line = ''): void => {
  process.stdout.write(`${line}\n`);
};

/** Made by office-addin-dev-certs, which asks before it trusts a certificate of this machine's own. */
const home = join(homedir(), '.office-addin-dev-certs');
function certificate(): Certificate | undefined {
  const [cert, key] = [join(home, 'localhost.crt'), join(home, 'localhost.key')];
  return existsSync(cert) && existsSync(key)
    ? { cert: readFileSync(cert), key: readFileSync(key) }
    : undefined;
}

const { address } = await serve(join(dist, 'trial'), PORT).catch((thrown: unknown) => {
  if ((thrown as { code?: string }).code !== 'EADDRINUSE') throw thrown;
  write(`Port ${PORT} is taken, so another one is used.`);
  return serve(join(dist, 'trial'), 0);
});
write();
write(`The trial workbook is open at  ${address}`);
write('Nothing leaves this machine. Ctrl+C ends it.');
write();
const secure = certificate();
const built = existsSync(join(dist, 'functions.json'));
if (secure === undefined || !built) {
  write('To try it in Excel, which loads add-ins over https only:');
  if (secure === undefined)
    write('  npx office-addin-dev-certs install   (once: makes and trusts a certificate for localhost)');
  if (!built) write('  npm run build                        (builds the add-in itself)');
  write('  npm start                            (again: it then serves the add-in for Excel too)');
} else {
  try {
    const excel = await serve(dist, EXCEL_PORT, secure);
    write(`The add-in for Excel, as npm run build left it, is served at  ${excel.address}`);
  } catch (thrown) {
    const taken = (thrown as { code?: string }).code === 'EADDRINUSE';
    write(
      taken
        ? `Port ${EXCEL_PORT}, where the manifest says the add-in is, is taken: end what uses it, and run npm start again.`
        : `The certificate in ${home} cannot be used (${(thrown as Error).message}). Make a new one: npx office-addin-dev-certs install`,
    );
  }
}
write('The manifest to take while it is served from this machine:');
write(`  ${manifest}`);
write(
  'In Excel on the web: Home, Add-ins, More add-ins, My add-ins, Upload my add-in. On a Mac: copy it into',
);
write(
  '  Library/Containers/com.microsoft.Excel/Data/Documents/wef. On Windows, to test only: put its folder on a',
);
write('  share, and add that under File, Options, Trust Center, Trusted add-in catalogs.');
write(
  'For a whole house: npm run package -- https://your.host/path makes a folder with a manifest of its own;',
);
write('  take that one, never this. Its installing.html tells the rest.');
