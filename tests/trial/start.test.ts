/** What `npm start` serves, once everything is built, in a folder laid out like the project's. */
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import type { IncomingHttpHeaders } from 'node:http';
import { request } from 'node:https';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { packed } from '../make/pack';

const TOP = fileURLToPath(new URL('../../', import.meta.url));
const openssl = spawnSync('openssl', ['version']).status === 0;
if (!openssl) console.log('openssl is not installed: the add-in’s https address goes untried');

const TYPES = { html: 'text/html', js: 'text/javascript', json: 'application/json', png: 'image/png', css: 'text/css', xml: 'application/xml' }; // prettier-ignore

const freePort = (): Promise<number> =>
  new Promise((done) => {
    const server = createServer().listen(0, 'localhost', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => {
        done(port);
      });
    });
  });

interface Answer {
  readonly status: number | undefined;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

describe.runIf(openssl)('npm start with a certificate and the add-in built', () => {
  let top: string;
  let port: number;
  let cert: Buffer;
  const running: ChildProcess[] = [];
  beforeAll(async () => {
    top = await mkdtemp(join(tmpdir(), 'hemledger-'));
    port = await freePort();
    await mkdir(join(top, 'src/trial'), { recursive: true });
    await mkdir(join(top, 'dist/trial'), { recursive: true });
    for (const file of ['package.json', 'src/trial/start.ts', 'src/trial/serve.ts'])
      await cp(join(TOP, file), join(top, file));
    const manifest = await readFile(join(TOP, 'manifest.xml'), 'utf8');
    await writeFile(join(top, 'manifest.xml'), manifest.replaceAll('localhost:3000', `localhost:${port}`));
    await symlink(join(TOP, 'node_modules'), join(top, 'node_modules'));
    await writeFile(join(top, 'dist/trial/index.html'), '<title>A workbook to try</title>');
    for (const part of ['functions', 'pane', 'help'])
      await cp((await packed(part)).folder, join(top, 'dist'), { recursive: true });
    const certificates = join(top, '.office-addin-dev-certs');
    await mkdir(certificates);
    const made = spawnSync('openssl', [
      ...['req', '-x509', '-newkey', 'rsa:2048', '-nodes', '-days', '2', '-subj', '/CN=localhost'],
      ...['-addext', 'subjectAltName=DNS:localhost'],
      ...['-keyout', join(certificates, 'localhost.key'), '-out', join(certificates, 'localhost.crt')],
    ]);
    expect(made.status, String(made.stderr)).toBe(0);
    cert = await readFile(join(certificates, 'localhost.crt'));
  }, 240_000);
  afterEach(async () => {
    for (const one of running.splice(0)) {
      const ended = new Promise((done) => one.once('exit', done));
      one.kill();
      await ended;
    }
  });
  afterAll(() => rm(top, { recursive: true }));

  /** Starts it, and gives what it said up to its last line. */
  function started(home = top): Promise<string> {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/trial/start.ts'], {
      cwd: top,
      env: { ...process.env, HOME: home, USERPROFILE: home, PORT: '0' },
    });
    running.push(child);
    return new Promise((done, failed) => {
      let said = '';
      const hear = (text: Buffer): void => {
        said += text.toString();
        if (said.includes('Documents/wef')) done(said);
      };
      child.stdout.on('data', hear);
      child.stderr.on('data', hear);
      child.on('exit', () => {
        failed(new Error(`it ended: ${said}`));
      });
    });
  }

  const ask = (url: string, method = 'GET'): Promise<Answer> =>
    new Promise((done, failed) => {
      request(url, { method, ca: cert }, (response) => {
        let body = '';
        response.setEncoding('latin1');
        response.on('data', (text: string) => (body += text));
        response.on('end', () => {
          done({ status: response.statusCode, headers: response.headers, body });
        });
      })
        .on('error', failed)
        .end();
    });

  it('answers every address of the manifest over https, by its type, and to a page of Excel’s', async () => {
    expect(await started()).toContain(`is served at  https://localhost:${port}/`);
    const manifest = await readFile(join(top, 'manifest.xml'), 'utf8');
    const addresses = [...new Set(manifest.match(/https:\/\/localhost:\d+\/[^"<]+/g))];
    expect(addresses.map((one) => new URL(one).pathname)).toEqual(
      expect.arrayContaining([
        '/pane.html',
        '/functions.html',
        '/functions.js',
        '/functions.json',
        '/help.html',
      ]),
    );
    for (const address of [...addresses, `https://localhost:${port}/manifest.xml`]) {
      const { status, headers, body } = await ask(address);
      const type = TYPES[address.split('.').at(-1) as keyof typeof TYPES];
      expect({ address, status, type: headers['content-type']?.split(';')[0] }).toEqual({
        address,
        status: 200,
        type,
      });
      expect(body.length).toBeGreaterThan(100);
      expect(headers['access-control-allow-origin']).toBe('*');
      if (type === 'image/png') expect(body.slice(1, 4)).toBe('PNG');
      const head = await ask(address, 'HEAD');
      expect([head.status, head.body, head.headers['content-type']]).toEqual([
        200,
        '',
        headers['content-type'],
      ]);
    }
    const leave = await ask(`https://localhost:${port}/functions.json`, 'OPTIONS');
    expect([leave.status, leave.headers['access-control-allow-private-network']]).toEqual([204, 'true']);
  });

  it('answers all that its pages load and its functions name', async () => {
    await started();
    const own: string[] = [];
    for (const page of ['pane.html', 'functions.html', 'help.html']) {
      const { body } = await ask(`https://localhost:${port}/${page}`);
      for (const [, link = ''] of body.matchAll(/(?:src|href)="?([^"#\s>][^"\s>]*)/g)) {
        if (/^(https?|data):/.test(link))
          expect(link).toMatch(/^(https:\/\/appsforoffice\.microsoft\.com\/|data:,$)/);
        else own.push(new URL(link, `https://localhost:${port}/`).href);
      }
    }
    const { body } = await ask(`https://localhost:${port}/functions.json`);
    const { functions } = JSON.parse(body) as { functions: { id: string; helpUrl: string }[] };
    const help = (await ask(`https://localhost:${port}/help.html`)).body;
    const script = (await ask(`https://localhost:${port}/functions.js`)).body;
    for (const { id, helpUrl } of functions) {
      expect(new URL(helpUrl).pathname).toBe('/help.html');
      expect(help).toMatch(new RegExp(`id="?${id}[">]`));
      expect(script).toContain(id);
    }
    expect(own.map((one) => new URL(one).pathname)).toEqual(
      expect.arrayContaining(['/pane.js', '/pane.css', '/help.js', '/functions.js']),
    );
    for (const address of own) expect([address, (await ask(address)).status]).toEqual([address, 200]);
    expect((await ask(`https://localhost:${port}/../package.json`)).status).toBe(404);
    expect((await ask(`https://localhost:${port}/%2e%2e/package.json`)).status).toBe(404);
  });

  it('says in a sentence that the port is taken, and serves the trial workbook all the same', async () => {
    const other = createServer();
    await new Promise<void>((done) => other.listen(port, 'localhost', done));
    try {
      const said = await started();
      expect(said).toContain(`Port ${port}, where the manifest says the add-in is, is taken`);
      const address = /open at {2}(\S+)/.exec(said)?.[1] ?? '';
      expect(await (await fetch(address)).text()).toContain('A workbook to try');
    } finally {
      other.close();
    }
  });

  it.each([
    ['there is no certificate', undefined, 'npx office-addin-dev-certs install'],
    ['the certificate is damaged', 'no certificate', 'cannot be used'],
  ])('says what to do where %s', async (_, content, sentence) => {
    const home = await mkdtemp(join(top, 'home-'));
    if (content !== undefined) {
      await mkdir(join(home, '.office-addin-dev-certs'));
      for (const file of ['localhost.crt', 'localhost.key'])
        await writeFile(join(home, '.office-addin-dev-certs', file), content);
    }
    expect(await started(home)).toContain(sentence);
  });
});
