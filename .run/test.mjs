// npm test: sets up what is missing, then types, lint, unit and browser tests; ends with one line of counts.
import { readFileSync, rmSync } from 'node:fs';
import { root, run, setUpBrowser, setUpPackages } from './setup.mjs';

setUpPackages();
setUpBrowser();
rmSync(`${root}test-results`, { recursive: true, force: true });

const unitReport = 'test-results/unit.json';
const browserReport = 'test-results/browser.json';
const steps = [
  ['types', () => run('npm', ['run', '--silent', 'types'])],
  ['lint', () => run('npm', ['run', '--silent', 'lint'])],
  [
    'unit',
    () =>
      run('npx', [
        'vitest',
        'run',
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${unitReport}`,
      ]),
  ],
  [
    'browser',
    () =>
      run('npx', ['playwright', 'test', '--reporter=list,json'], {
        env: { ...process.env, PLAYWRIGHT_JSON_OUTPUT_NAME: browserReport },
      }),
  ],
];

const failedSteps = [];
let passed = 0;
let failed = 0;
for (const [name, step] of steps) {
  const begin = Date.now();
  if (step() !== 0) failedSteps.push(name);
  console.log(`-- ${name}: ${((Date.now() - begin) / 1000).toFixed(0)} s`);
}
for (const [name, count] of [
  ['unit', countUnit],
  ['browser', countBrowser],
]) {
  try {
    const counts = count();
    passed += counts.passed;
    failed += counts.failed;
  } catch {
    failedSteps.push(`${name} (no report)`);
  }
}
for (const name of failedSteps) console.log(`Failed: ${name}`);
failed = Math.max(failed, failedSteps.length);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

function countUnit() {
  const report = JSON.parse(readFileSync(`${root}${unitReport}`, 'utf8'));
  return { passed: report.numPassedTests, failed: report.numFailedTests };
}

function countBrowser() {
  const { stats } = JSON.parse(readFileSync(`${root}${browserReport}`, 'utf8'));
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected };
}
