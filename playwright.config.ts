import { existsSync } from 'node:fs';
import { defineConfig, devices } from '@playwright/test';

const debianChromium = '/usr/bin/chromium';
const executablePath = process.env.CHROMIUM ?? (existsSync(debianChromium) ? debianChromium : undefined);
// Two checkouts can be tested at once on ports of their own.
const port = Number(process.env.TEST_PORT ?? 4319);

export default defineConfig({
  testDir: 'tests/browser',
  testMatch: '*.spec.ts',
  timeout: 90_000,
  workers: 2,
  outputDir: 'test-results',
  use: {
    baseURL: `http://127.0.0.1:${port}`,
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
  projects: [
    { name: 'desktop', use: { ...devices['Desktop Chrome'], viewport: { width: 1440, height: 900 } } },
    {
      name: 'phone',
      use: { ...devices['Pixel 7'], viewport: { width: 390, height: 844 }, deviceScaleFactor: 2 },
    },
  ],
  webServer: {
    command: `npx vite build && npx vite preview --host 127.0.0.1 --port ${port} --strictPort`,
    url: `http://127.0.0.1:${port}`,
    reuseExistingServer: !process.env.CI,
    timeout: 120_000,
  },
});
