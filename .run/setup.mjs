// Brings in what a fresh clone lacks: the npm packages of the lock file, and for the browser tests a Chromium.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

export function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  return done.status ?? 1;
}

export function setUpPackages() {
  const stamp = 'node_modules/.package-lock.json';
  if (existsSync(`${root}${stamp}`) && sameVersions(`${root}package-lock.json`, `${root}${stamp}`)) return;
  if (run('npm', ['ci', '--ignore-scripts', '--no-fund', '--no-audit']) !== 0) {
    console.error('The packages could not be installed. Check the network and run the command again.');
    process.exit(1);
  }
}

// The installed lock lists only what fits this machine: every package in it must be as the project's lock says.
function sameVersions(wantedPath, installedPath) {
  const wanted = JSON.parse(readFileSync(wantedPath, 'utf8')).packages;
  const installed = JSON.parse(readFileSync(installedPath, 'utf8')).packages;
  const directNames = Object.keys({ ...wanted[''].dependencies, ...wanted[''].devDependencies });
  return (
    directNames.every((name) => installed[`node_modules/${name}`]) &&
    Object.entries(installed).every(([path, entry]) => wanted[path]?.version === entry.version)
  );
}

export function setUpBrowser() {
  if (process.env.CHROMIUM || existsSync('/usr/bin/chromium')) return;
  if (canInstallDebianPackages()) {
    run('apt-get', ['update', '-qq']);
    if (run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium']) === 0) return;
  }
  if (run('npx', ['playwright', 'install', 'chromium']) !== 0) {
    console.error('No Chromium for the browser tests: install one and name it in the variable CHROMIUM.');
    process.exit(1);
  }
}

function canInstallDebianPackages() {
  if (process.getuid?.() !== 0) return false;
  try {
    execFileSync('apt-get', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}
