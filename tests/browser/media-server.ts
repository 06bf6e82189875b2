/** Serves the harness page straight from the sources, on a free port. */
import { createServer } from 'vite';

export async function startMediaServer(): Promise<{ readonly url: string; stop(): Promise<void> }> {
  const server = await createServer({
    configFile: false,
    root: process.cwd(),
    cacheDir: 'node_modules/.vite-harness',
    logLevel: 'error',
    server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
    // Found late, they would make the page load again in the middle of a test.
    optimizeDeps: { noDiscovery: true, include: ['mediabunny', 'hash-wasm', 'zod'] },
  });
  await server.listen();
  const address = server.httpServer?.address();
  if (!address || typeof address === 'string') throw new Error('The harness server has no port');
  return {
    url: `http://127.0.0.1:${address.port}/tests/browser/harness/index.html`,
    stop: () => server.close(),
  };
}
