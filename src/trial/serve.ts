/** A folder of our own files over this machine's own address, and nothing else. */
import { createReadStream, statSync } from 'node:fs';
import { createServer as createPlain, type RequestListener, type Server } from 'node:http';
import { createServer as createSecure } from 'node:https';
import { extname, join, normalize, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

/** The file a request asks for; undefined where there is none, or it lies outside the folder. */
function asked(folder: string, url: string): string | undefined {
  let path: string;
  try {
    path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    return undefined;
  }
  const file = normalize(join(folder, path.endsWith('/') ? `${path}index.html` : path));
  if (!file.startsWith(normalize(folder + sep))) return undefined;
  return statSync(file, { throwIfNoEntry: false })?.isFile() === true ? file : undefined;
}

/** Excel on the web fetches the functions from a page of its own, which asks leave first; nothing here is secret. */
const FOR_EXCEL = {
  'access-control-allow-origin': '*',
  'access-control-allow-methods': 'GET, HEAD',
  'access-control-allow-private-network': 'true',
};

const answering =
  (folder: string, more: Readonly<Record<string, string>>): RequestListener =>
  (request, response) => {
    const { method = '' } = request;
    if (method === 'OPTIONS') {
      response.writeHead(204, more).end();
      return;
    }
    const file = /^(GET|HEAD)$/.test(method) ? asked(folder, request.url ?? '/') : undefined;
    const type = file === undefined ? undefined : TYPES[extname(file)];
    if (file === undefined || type === undefined) {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('There is no such file.');
      return;
    }
    response.writeHead(200, {
      'content-type': type,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
      ...more,
    });
    if (method === 'HEAD') response.end();
    else createReadStream(file).pipe(response);
  };

export interface Certificate {
  readonly cert: Buffer;
  readonly key: Buffer;
}
export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

/** Port 0 takes any that is free. With a certificate it is served as https, which Excel wants. */
export function serve(folder: string, port: number, secure?: Certificate): Promise<Served> {
  const server: Server =
    secure === undefined
      ? createPlain(answering(folder, {}))
      : createSecure(secure, answering(folder, FOR_EXCEL));
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, 'localhost', () => {
      const at = server.address();
      const taken = typeof at === 'object' && at !== null ? at.port : port;
      resolve({
        address: `${secure === undefined ? 'http' : 'https'}://localhost:${taken}/`,
        close: () =>
          new Promise((done) => {
            server.close(() => {
              done();
            });
            server.closeAllConnections();
          }),
      });
    });
  });
}
