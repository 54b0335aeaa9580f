/** Serves the built app on this machine only, with headers that let the page load nothing from anywhere else. */
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';

/** One name for one place: the browser keeps cases by address, and `localhost` would be another. */
export const host = '127.0.0.1';

/** @type {Record<string, string>} */
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.wav': 'audio/wav',
  '.mp3': 'audio/mpeg',
  '.pdf': 'application/pdf',
};

/**
 * Own files only: no inline script or style, no frame around the page, no form that sends anything. WebAssembly may be
 * compiled, which a passphrase needs; text may not be run as script. See docs/decisions/0011-webassembly-in-the-policy.md.
 */
export const contentSecurityPolicy = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "base-uri 'none'",
  "object-src 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const headers = {
  'Content-Security-Policy': contentSecurityPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'microphone=(self), camera=(), geolocation=(), payment=(), usb=()',
};

/**
 * The file a request means, or undefined when it means none: broken escapes, hidden files and ways out of the folder.
 * @param {string} folder
 * @param {string} url path and query of the request
 * @returns {string | undefined}
 */
export function fileFor(folder, url) {
  let path;
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/, ''));
  } catch {
    return undefined;
  }
  const odd = !path.startsWith('/') || path.includes('\0') || path.includes('\\') || path.includes('/.');
  if (odd) return undefined;
  const file = resolve(join(folder, path.endsWith('/') ? `${path}index.html` : path));
  return file.startsWith(resolve(folder) + sep) ? file : undefined;
}

/**
 * @typedef {import('node:http').IncomingMessage} Request
 * @typedef {import('node:http').ServerResponse} Response
 */

/** @param {Response} response @param {number} status @param {string} text */
function plain(response, status, text) {
  response.writeHead(status, { ...headers, 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' });
  response.end(`${text}\n`);
}

/**
 * A page opened under another name for this machine is sent to the one name, so that its cases are all in one place.
 * @param {Request} request
 * @returns {string | undefined}
 */
function properAddress(request) {
  const opened = request.headers['sec-fetch-mode'] === 'navigate';
  const port = request.socket.localPort;
  const proper = `${host}:${port}`;
  return opened && request.headers.host !== proper ? `http://${proper}${request.url ?? '/'}` : undefined;
}

/** @param {string} folder @param {Request} request @param {Response} response */
async function answer(folder, request, response) {
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return plain(response, 405, 'Only reading is possible here.');
  const elsewhere = properAddress(request);
  if (elsewhere !== undefined) {
    response.writeHead(307, { ...headers, Location: elsewhere });
    return response.end();
  }
  const file = fileFor(folder, request.url ?? '/');
  const found = file === undefined ? undefined : await stat(file).catch(() => undefined);
  if (file === undefined || found === undefined || !found.isFile())
    return plain(response, 404, 'There is nothing here.');
  response.writeHead(200, {
    ...headers,
    'Content-Type': types[extname(file).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': found.size,
    // The build gives files under assets/ a name made from their content; all others are asked for anew.
    'Cache-Control': file.startsWith(join(resolve(folder), 'assets') + sep)
      ? 'public, max-age=31536000, immutable'
      : 'no-cache',
  });
  if (request.method === 'HEAD') return response.end();
  return createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
}

/** @typedef {{ ok: true, port: number, address: string, close: () => Promise<void> }} Serving */

/**
 * @param {string} folder
 * @param {number} port 0 for any free one
 * @returns {Promise<Serving | { ok: false, reason: 'taken' | 'refused', why: string }>}
 */
export function serve(folder, port) {
  const server = createServer((request, response) => {
    answer(folder, request, response).catch(() => response.destroy());
  });
  return new Promise((done) => {
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) => {
      const reason = error.code === 'EADDRINUSE' ? 'taken' : 'refused';
      done({ ok: false, reason, why: error.message });
    });
    server.listen(port, host, () => {
      const bound = server.address();
      const actual = typeof bound === 'object' && bound !== null ? bound.port : port;
      const close = () =>
        new Promise((/** @type {(value: void) => void} */ closed) => {
          server.close(() => closed());
          server.closeAllConnections();
        });
      done({ ok: true, port: actual, address: `http://${host}:${actual}/`, close });
    });
  });
}
