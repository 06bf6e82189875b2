/**
 * npm run bench:accuracy: seeded simulated wheel ends of every reference kind through the engine; writes docs/accuracy.md.
 *
 * --scenes N    scenes of each row (default 1000)
 * --rows TEXT   only rows with this in their name, as 'tape, careful, 1 px'
 * --near        findings near the limit instead, --scenes N of each cell (default 4167: 100,000 in all); goes on where it stopped
 * --again       with --near: from the beginning
 * --page        run nothing, write the page anew from docs/accuracy/*.json
 */
import { parseArgs } from 'node:util';
import { allCells, nameOf } from './accuracy-cells.ts';
import { keptNear, keptRows } from './accuracy-kept.ts';
import { nearCellOf, nearCells, nearStrokeMm } from './accuracy-near.ts';
import { writePage } from './accuracy-page.ts';
import { batchesOf, openPool, type Pool } from './accuracy-pool.ts';
import { type Row, rowOf } from './accuracy-summary.ts';

const FIRST_SEED = 1_000_003;
const FIRST_NEAR_SEED = 50_000_017;
const WORKERS = 2;

const { values: asked } = parseArgs({
  options: {
    scenes: { type: 'string' },
    rows: { type: 'string', default: '' },
    near: { type: 'boolean', default: false },
    again: { type: 'boolean', default: false },
    page: { type: 'boolean', default: false },
  },
});

if (!asked.page) {
  const pool = openPool(WORKERS);
  await (asked.near ? runNear(pool) : runRows(pool));
  await pool.close();
}
writePage();

async function runRows(pool: Pool): Promise<void> {
  const scenes = Number(asked.scenes ?? 1000);
  for (const cell of allCells().filter((one) => nameOf(one).includes(asked.rows))) {
    const row = rowOf(cell, await pool.run(batchesOf(cell, FIRST_SEED, scenes)));
    keptRows.put(row);
    console.log(lineOf(row));
  }
}

async function runNear(pool: Pool): Promise<void> {
  const scenes = Number(asked.scenes ?? 4167);
  const done = new Set(asked.again ? [] : keptNear.read().map(({ name }) => name));
  for (const [i, cell] of nearCells().entries()) {
    const name = nameOf(cell);
    if (done.has(name) || !name.includes(asked.rows)) continue;
    // Seeds of their own in each cell: 100,000 different wheel ends.
    const batches = batchesOf(cell, FIRST_NEAR_SEED + i * scenes, scenes, nearStrokeMm);
    const found = nearCellOf(cell, await pool.run(batches));
    keptNear.put(found);
    const wrong = found.bins.filter(({ fromMm }) => fromMm >= 0);
    const observed = wrong.reduce((sum, bin) => sum + bin.calledWithin, 0);
    const expected = wrong.reduce((sum, bin) => sum + bin.expectedWithin, 0);
    console.log(`${i + 1} ${name}: over called within ${observed}, expected ${expected.toFixed(1)}`);
  }
}

function lineOf(row: Row): string {
  const mm = (value: number) => value.toFixed(2);
  const percent = (value: number) => `${(100 * value).toFixed(1)} %`;
  const refused = Object.entries(row.refused).map(([code, count]) => `${code} ${count}`);
  return [
    row.name,
    `error ${mm(row.errorMedianMm)} / ${mm(row.error95Mm)}`,
    `U ${mm(row.UMedianMm)} holds ${percent(row.held)}`,
    `angle ${mm(row.angleError95Deg)} holds ${percent(row.angleHeld)}`,
    `two-point ${mm(row.twoPoint95Mm)}`,
    `${row.solvedMedianMs.toFixed(0)} ms`,
    ...refused,
  ].join(' | ');
}
