/** Serves the built page, and in its place, when told to, a build that differs from it by a word in its head. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

export type TwoBuilds = {
  readonly url: string;
  readonly deploySecond: () => void;
  readonly stop: () => void;
};

export async function startTwoBuilds(folder = 'dist'): Promise<TwoBuilds> {
  let isSecond = false;
  const secondPage = readFileSync(join(folder, 'index.html'), 'utf8').replace(
    '<html',
    '<html data-build="second"',
  );
  const revision = createHash('md5').update(secondPage).digest('hex');
  const firstWorker = readFileSync(join(folder, 'sw.js'), 'utf8');
  const secondWorker = firstWorker.replace(/(?<=url:"index\.html",revision:")[^"]+/, revision);
  if (secondWorker === firstWorker) throw new Error('The service worker does not keep the page');
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://here').pathname);
    const name = path === '/' ? '/index.html' : path;
    const file = join(folder, name);
    if (!existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.setHeader('Content-Type', TYPES[extname(file)] ?? 'application/octet-stream');
    if (isSecond && name === '/index.html') response.end(secondPage);
    else if (isSecond && name === '/sw.js') response.end(secondWorker);
    else response.end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (!address || typeof address === 'string') throw new Error('The server has no port');
  return {
    url: `http://127.0.0.1:${address.port}/`,
    deploySecond: () => {
      isSecond = true;
    },
    stop: () => server.close(),
  };
}
