// npm test: sets up what is missing, then types, lint, unit and browser tests; ends with one line of counts.
import { readFileSync, rmSync } from 'node:fs';
import { root, run, setUpBrowser, setUpPackages } from './setup.mjs';

setUpPackages();
setUpBrowser();
rmSync(`${root}test-results`, { recursive: true, force: true });

const unitReport = 'test-results/unit.json';
const browserReport = 'test-results/browser.json';
const steps = [
  { name: 'types', start: () => run('npm', ['run', '--silent', 'types']) },
  { name: 'lint', start: () => run('npm', ['run', '--silent', 'lint']) },
  {
    name: 'unit',
    start: () =>
      run('npx', [
        'vitest',
        'run',
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${unitReport}`,
      ]),
    counts: () => {
      const { numPassedTests, numFailedTests } = report(unitReport);
      return { passed: numPassedTests, failed: numFailedTests };
    },
  },
  {
    name: 'browser',
    start: () =>
      run('npx', ['playwright', 'test', '--reporter=list,json'], {
        env: { ...process.env, PLAYWRIGHT_JSON_OUTPUT_NAME: browserReport },
      }),
    counts: () => {
      const { stats } = report(browserReport);
      return { passed: stats.expected + stats.flaky, failed: stats.unexpected };
    },
  },
];

const failedSteps = [];
let passed = 0;
let failed = 0;
for (const { name, start, counts } of steps) {
  const begin = Date.now();
  if (start() !== 0) failedSteps.push(name);
  console.log(`-- ${name}: ${((Date.now() - begin) / 1000).toFixed(0)} s`);
  try {
    // Read at once: the browser step empties the folder when it starts.
    const counted = counts?.() ?? { passed: 0, failed: 0 };
    passed += counted.passed;
    failed += counted.failed;
  } catch {
    failedSteps.push(`${name} (no report)`);
  }
}
for (const name of failedSteps) console.log(`Failed: ${name}`);
failed = Math.max(failed, failedSteps.length);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

function report(path) {
  return JSON.parse(readFileSync(`${root}${path}`, 'utf8'));
}
