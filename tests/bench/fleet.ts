/**
 * How quick the list and an inspection stay with two hundred inspections of twelve wheel ends each on one device, in headless
 * Chromium with the built app. Writes docs/fleet.md.
 *
 *   npm run bench:fleet
 */
import { existsSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { chromium, type Page } from '@playwright/test';
import { build, preview } from 'vite';
import { firstPlace } from '../../src/app/work/place.ts';
import { fleetRecord } from './fleet-record.ts';

const INSPECTIONS = 200;
const TIMES = 9;
const CELLS = ['.plan-cell', 12] as const;
/** The newest; the rest is a touch away. */
const LINES = ['.earlier', 5] as const;
const DEBIAN_CHROMIUM = '/usr/bin/chromium';

const median = (values: readonly number[]) =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
const worst = (values: readonly number[]) => Math.max(...values);

async function fill(page: Page): Promise<number> {
  const records = Array.from({ length: INSPECTIONS }, (_, i) => fleetRecord(i));
  const kept = records.map((record) => ({ record, place: firstPlace(record) }));
  await page.evaluate(async (all) => {
    const opening = indexedDB.open('strokewitness');
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const writing = db.transaction(['records', 'heads'], 'readwrite');
    for (const { record, place } of all) {
      const { id, createdAt, vehicle, inspector, wheelEnds } = record;
      writing.objectStore('records').put({ id, savedAt: createdAt, record, place });
      const head = { id, recordId: id, createdAt, savedAt: createdAt, unit: vehicle.unit };
      writing
        .objectStore('heads')
        .put({ ...head, inspector: inspector.name, wheelEnds: wheelEnds.length, strokes: null });
    }
    await new Promise((resolve, reject) => {
      writing.oncomplete = resolve;
      writing.onerror = () => reject(writing.error);
    });
    db.close();
  }, kept);
  return JSON.stringify(records).length;
}

/** From the touch until the page shows it, by the page's own clock. */
async function timed(
  page: Page,
  button: string,
  [shown, many]: readonly [selector: string, many: number],
  isAll: string | null,
): Promise<number> {
  return page.evaluate(
    async ([name, wanted, least, none]) => {
      const buttons = [...document.querySelectorAll('button')];
      const pressed = buttons.find((each) => each.textContent?.startsWith(name ?? ''));
      if (!pressed) throw new Error(`no button ${name}`);
      const start = performance.now();
      pressed.click();
      for (;;) {
        await new Promise((resolve) => requestAnimationFrame(resolve));
        const there = document.querySelectorAll(wanted).length >= least;
        const text = document.querySelector('main')?.textContent ?? '';
        if (there && (none === null || !text.includes(none ?? ''))) return performance.now() - start;
        if (performance.now() - start > 60_000) throw new Error(`${wanted} did not come`);
      }
    },
    [button, shown, many, isAll] as const,
  );
}

await build({ logLevel: 'error' });
const server = await preview({ preview: { port: 4377, host: '127.0.0.1' } });
const address = server.resolvedUrls?.local[0] ?? '';
const executablePath = process.env.CHROMIUM ?? (existsSync(DEBIAN_CHROMIUM) ? DEBIAN_CHROMIUM : undefined);
const browser = await chromium.launch({
  ...(executablePath ? { executablePath } : {}),
  args: ['--no-sandbox', '--disable-background-networking', '--no-first-run'],
});
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
await page.goto(address);
await page.getByRole('heading', { name: 'Earlier inspections' }).waitFor();
const characters = await fill(page);
await page.reload();
await page.getByText('GT-100').first().waitFor();
// Nobody reads a list in less: what is fetched meanwhile is there.
await page.waitForTimeout(1000);
const [lists, plans, states]: [number[], number[], number[]] = [[], [], []];
for (let i = 0; i < TIMES; i++) {
  const unit = `Gravel trailer GT-${100 + INSPECTIONS - 1 - (i % 5)}`;
  plans.push(await timed(page, unit, CELLS, null));
  lists.push(await timed(page, 'All inspections', LINES, null));
  states.push(await timed(page, unit, CELLS, 'Measuring again'));
  lists.push(await timed(page, 'All inspections', LINES, null));
}
await browser.close();
await server.close();

const row = (what: string, values: readonly number[]) =>
  `| ${what} | ${median(values).toFixed(0)} ms | ${worst(values).toFixed(0)} ms |`;
const table = [
  '# A fleet on one device',
  '',
  `${INSPECTIONS} inspections of 12 measured wheel ends each (${(characters / 1e6).toFixed(0)} million characters of records) in the browser’s`,
  'database; the built app in headless Chromium, by the page’s own clock from the touch to the frame that shows it. The list is in sight for a',
  'second before the first is opened: meanwhile the page fetches the inspection’s screen and starts the two workers that measure.',
  `${cpus().length} cores, ${TIMES} to ${2 * TIMES} times each. Made by \`npm run bench:fleet\`; the records are those of tests/bench/fleet-record.ts.`,
  '',
  '| what | median | worst |',
  '| --- | --- | --- |',
  row('back to the list of all inspections', lists),
  row('open one: plan view drawn', plans),
  row('open one: every wheel end measured anew and its state shown', states),
  '',
  'What an inspection came to is kept beside it for the list and shown, marked as such, while every stroke is measured anew from its marks.',
  '',
].join('\n');
writeFileSync('docs/fleet.md', table);
process.stdout.write(table);
