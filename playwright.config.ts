import { existsSync } from 'node:fs';
import { defineConfig, devices } from '@playwright/test';
import { APP_PORT, PARTS_PORT, partPage } from './tests/browser/part-pages.ts';

const debianChromium = '/usr/bin/chromium';
const executablePath = process.env.CHROMIUM ?? (existsSync(debianChromium) ? debianChromium : undefined);
// Two checkouts can be tested at once on ports of their own (TEST_PORT).
const served = (build: string, port: number) => ({
  command: `npx vite build ${build} && npx vite preview ${build} --host 127.0.0.1 --port ${port} --strictPort`,
  url: `http://127.0.0.1:${port}`,
  reuseExistingServer: !process.env.CI,
  timeout: 120_000,
});

export default defineConfig({
  testDir: 'tests/browser',
  testMatch: '*.spec.ts',
  timeout: 90_000,
  workers: 2,
  // On a loaded machine a test may be tried once more; the run then names it as flaky.
  retries: process.env.CI ? 1 : 0,
  outputDir: 'test-results',
  use: {
    // It would fetch the whole app anew for every test; where it is under test it is let in.
    serviceWorkers: 'block',
    baseURL: `http://127.0.0.1:${APP_PORT}`,
    launchOptions: {
      ...(executablePath ? { executablePath } : {}),
      args: [
        '--no-sandbox',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--no-first-run',
        '--disable-quic',
      ],
    },
  },
  // A test runs in both, unless its way is the same in both or one alone has what it needs: then its tag names where.
  projects: [
    {
      name: 'desktop',
      grepInvert: /@phone/,
      use: { ...devices['Desktop Chrome'], viewport: { width: 1440, height: 900 } },
    },
    {
      name: 'phone',
      grepInvert: /@desk/,
      // Modules without a screen, and mouse work.
      testIgnore: ['media.spec.ts', 'hand-quality.spec.ts'],
      use: { ...devices['Pixel 7'], viewport: { width: 390, height: 844 }, deviceScaleFactor: 2 },
    },
  ],
  webServer: [
    served('', APP_PORT),
    { ...served('-c tests/browser/part-pages.config.ts', PARTS_PORT), url: partPage('viewer') },
  ],
});
