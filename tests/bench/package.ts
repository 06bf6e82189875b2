/**
 * npm run bench:package: whether making a package of several large clips in the page fills memory, in headless Chromium with the
 * built app. Writes its table into docs/package.md. Needs Linux for the memory figures, and room for about 2 GB in the temporary
 * folder.
 */
import { randomFillSync } from 'node:crypto';
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { build, preview } from 'vite';

const MB = 1e6;
const CLIPS = 3;
const SIZES_MB = [2, 20, 200] as const;
const DEBIAN_CHROMIUM = '/usr/bin/chromium';
const LONG_MS = 600_000;
const LOOK_EVERY_MS = 50;
const folder = mkdtempSync(join(tmpdir(), 'strokewitness-bench-'));

/** A clip of two frames, with a box behind it that every reader passes over. */
function largeClip(name: string, sizeMb: number): string {
  const path = join(folder, name);
  const file = openSync(path, 'w');
  writeSync(file, readFileSync('tests/fixtures/media/header-time.mp4'));
  const head = Buffer.alloc(8);
  head.writeUInt32BE(sizeMb * MB + 8);
  head.write('free', 4);
  writeSync(file, head);
  const piece = Buffer.alloc(MB);
  for (let i = 0; i < sizeMb; i++) writeSync(file, randomFillSync(piece));
  closeSync(file);
  return path;
}

/** Memory of a process that no file stands behind, in MB. */
function ownMemoryMb(pid: number): number {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    const kB = (name: string) => Number(new RegExp(`${name}:\\s+(\\d+)`).exec(status)?.[1] ?? 0);
    return (kB('RssAnon') + kB('RssShmem')) / 1000;
  } catch {
    return 0;
  }
}

function familyOf(root: number): number[] {
  const parents = readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((name) => {
      try {
        const stat = readFileSync(`/proc/${name}/stat`, 'utf8');
        return [[Number(name), Number(stat.slice(stat.lastIndexOf(')') + 4).split(' ')[0])] as const];
      } catch {
        return [];
      }
    });
  const family = [root];
  for (const member of family)
    family.push(...parents.filter(([, parent]) => parent === member).map(([pid]) => pid));
  return family;
}

async function makePackage(page: Page, paths: readonly string[]): Promise<string> {
  await page.getByRole('button', { name: 'Start with pictures' }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'I have read this' }).click(),
  ]);
  await chooser.setFiles([...paths]);
  for (const path of paths)
    await page
      .getByText(path.split('/').at(-1) ?? '')
      .first()
      .waitFor({ timeout: LONG_MS });
  await page.getByRole('button', { name: 'Axle 1, left' }).click();
  await page.getByRole('button', { name: 'Vehicle', exact: true }).click();
  await page.getByRole('button', { name: 'Make the evidence package' }).click();
  await page.getByText(/The package is ready/).waitFor({ timeout: LONG_MS });
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: LONG_MS }),
    page.getByRole('button', { name: 'Save the package' }).click(),
  ]);
  return download.path();
}

await build({ logLevel: 'error' });
const server = await preview({ preview: { port: 4376, host: '127.0.0.1' } });
const executablePath = process.env.CHROMIUM ?? (existsSync(DEBIAN_CHROMIUM) ? DEBIAN_CHROMIUM : undefined);
const rows: string[] = [];
try {
  for (const sizeMb of SIZES_MB) {
    const paths = Array.from({ length: CLIPS }, (_, i) => largeClip(`clip-${sizeMb}-${i + 1}.mp4`, sizeMb));
    const browser = await chromium.launch({
      ...(executablePath ? { executablePath } : {}),
      args: ['--no-sandbox', '--disable-background-networking', '--no-first-run'],
    });
    const page = await (await browser.newContext({ serviceWorkers: 'block' })).newPage();
    await page.goto(server.resolvedUrls?.local[0] ?? '');
    await page.getByRole('button', { name: 'Start with pictures' }).waitFor();
    // Node itself holds the clips that it writes.
    const memoryMb = () => familyOf(process.pid).slice(1).map(ownMemoryMb);
    const before = memoryMb().reduce((sum, one) => sum + one, 0);
    let most = before;
    const looking = setInterval(() => {
      most = Math.max(
        most,
        memoryMb().reduce((sum, one) => sum + one, 0),
      );
    }, LOOK_EVERY_MS);
    const path = await makePackage(page, paths);
    clearInterval(looking);
    const packageMb = statSync(path).size / MB;
    rows.push(
      `| ${CLIPS} of ${sizeMb} MB | ${packageMb.toFixed(0)} | ${before.toFixed(0)} | ${most.toFixed(0)} | ${(most - before).toFixed(0)} |`,
    );
    process.stdout.write(`${rows.at(-1)}\n`);
    await browser.close();
    for (const each of paths) rmSync(each);
  }
} finally {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
}

const table = [
  '<!-- memory:begin -->',
  'All processes of headless Chromium together, memory that no file stands behind, looked at twenty times a second from choosing the clips',
  'to the saved package. Made by `npm run bench:package`.',
  '',
  '| clips | package MB | before MB | most MB | more by MB |',
  '| --- | --- | --- | --- | --- |',
  ...rows,
  '<!-- memory:end -->',
].join('\n');
const docs = readFileSync('docs/package.md', 'utf8');
writeFileSync(
  'docs/package.md',
  docs.replace(/<!-- memory:begin -->[\s\S]*<!-- memory:end -->/, () => table),
);
