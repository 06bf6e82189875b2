/**
 * npm run bench:engine: times measure() in Node and in the page on seeded simulated wheel ends; writes docs/speed.md.
 * Options: --scenes N of each row (default 30), --repeats N of each scene (default 4), --trials N scenes of each row of the
 * check by trials (default 5).
 */
import { writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { bundledTiming, type NodeTiming } from './engine-bundle.ts';
import { casesByMarks, casesByReference, type EngineCase } from './engine-cases.ts';
import { trialsOff } from './engine-nearness.ts';
import { openTimingPage, type TimingPage } from './engine-page.ts';
import { speedText, type TimedRow, type TrialsRow } from './engine-text.ts';

const scenes = option('--scenes', 30);
const repeats = option('--repeats', 4);
const trialScenes = option('--trials', 5);

function option(name: string, otherwise: number): number {
  const at = process.argv.indexOf(name);
  return at > 0 ? Number(process.argv[at + 1]) : otherwise;
}

async function timed(
  cases: readonly EngineCase[],
  { timingOf }: NodeTiming,
  page: TimingPage,
): Promise<readonly TimedRow[]> {
  const rows: TimedRow[] = [];
  for (const { inputs, ...what } of cases) {
    const node = timingOf(inputs, repeats, processorMs);
    const row = { ...what, node, page: await page.time({ inputs, repeats }) };
    console.log(row.reference, row.views, row.marks, middle(row.node.timesMs), middle(row.page.timesMs));
    rows.push(row);
  }
  return rows;
}

/** After the first, which compiles. */
async function timedTrials(
  cases: readonly EngineCase[],
  { trialsTimesMs }: NodeTiming,
  page: TimingPage,
): Promise<readonly TrialsRow[]> {
  const rows: TrialsRow[] = [];
  for (const { inputs, reference, marks } of cases) {
    const pageMs: number[] = [];
    for (const input of inputs) pageMs.push(await page.trialsMs(input));
    const row = {
      reference,
      marks,
      nodeMs: trialsTimesMs(inputs, processorMs),
      pageMs,
      offs: trialsOff(inputs),
    };
    console.log('trials', reference, middle(row.nodeMs), middle(pageMs));
    rows.push(row);
  }
  return rows;
}

/** Of this process: what it waits for others is no part of it. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

const loadBefore = loadavg()[0] ?? 0;
const inNode = await bundledTiming();
const page = await openTimingPage();
try {
  const text = speedText({
    scenes,
    repeats,
    loadBefore,
    byReference: await timed(casesByReference(scenes), inNode, page),
    byMarks: await timed(
      [...casesByMarks('clamp-band', scenes), ...casesByMarks('tape', scenes)],
      inNode,
      page,
    ),
    byTrials: await timedTrials(casesByReference(trialScenes), inNode, page),
  });
  writeFileSync(new URL('../../docs/speed.md', import.meta.url), text);
} finally {
  await page.close();
}
