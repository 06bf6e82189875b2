/** What docs/speed.md says of the times measured. */
import type { EngineCase } from './engine-cases.ts';
import type { Timing } from './engine-timing.ts';

export type TimedRow = Omit<EngineCase, 'inputs'> & { readonly node: Timing; readonly page: Timing };

export type TrialsRow = Pick<EngineCase, 'reference' | 'marks'> & {
  readonly nodeMs: readonly number[];
  readonly pageMs: readonly number[];
  /** Of their strokes from those of trials followed to their minimum, in the scatter of the latter. */
  readonly offs: readonly number[];
};

export type TimedRun = {
  readonly scenes: number;
  readonly repeats: number;
  /** Jobs that ran or waited in the minute before. */
  readonly loadBefore: number;
  readonly byReference: readonly TimedRow[];
  readonly byMarks: readonly TimedRow[];
  readonly byTrials: readonly TrialsRow[];
};

/** From this load on the machine does not count as idle. */
const BUSY = 0.5;

export function speedText({ scenes, repeats, loadBefore, byReference, byMarks, byTrials }: TimedRun): string {
  const state =
    loadBefore < BUSY
      ? 'The machine was idle otherwise.'
      : `Other work ran on it, ${loadBefore.toFixed(0)} jobs in the minute before: the page's times are upper bounds, lengthened by up to as many
jobs as share a core.`;
  return `# Speed

Written by \`npm run bench:engine\`; ${scenes} seeded scenes for each row, the same seeds in every row.

## How the figures were obtained

\`measure()\` from marked views to stroke, free stroke and angles with their uncertainties: the search over starts, the fit to its
end, covariance, residual test, budget, and whatever the measurement itself finds it must do more of. Simulated wheel ends
(\`tests/simulation/scene.ts\`): hand-held pictures from 20 to 40 in, marks of 1 px; in each picture face, pin, camshaft end, two
points of the rod and what the reference asks for. Each scene ${repeats} times after a first round that is not counted, the shortest taken;
median and 95th percentile over the scenes, milliseconds. Node: processor time. Page: time elapsed in a worker of headless Chromium,
the same code. First: the first measurement of a fresh worker, nothing compiled yet. Machine: 2 shared x86-64 cores, Node 20.
${state}

## Every reference, two pictures

| reference | marks in all | Node, median | Node, 95 % | page, median | page, 95 % | page, first |
| --- | ---: | ---: | ---: | ---: | ---: | ---: |
${byReference.map((row) => `| ${row.reference} | ${row.marks} | ${figures(row)} |`).join('\n')}

Times of a hundred milliseconds and more are scenes where the quick search is not believed (unlikely residuals, a direction of view
that is loose) and the thorough one runs, or where the uncertainty is taken from the quantity's own distribution.

## More marks, more pictures

| reference | pictures | marks in all | Node, median | Node, 95 % | page, median | page, 95 % | page, first |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${byMarks.map((row) => `| ${row.reference} | ${row.views} | ${row.marks} | ${figures(row)} |`).join('\n')}

Each rim mark brings an unknown of its own, its angle; a graduation brings none.

## The check by 10,000 trials

Seconds, ${byTrials[0]?.nodeMs.length ?? 0} scenes for each row; Node: processor time of one process. Page: time elapsed from starting as many workers as the
machine has cores, four at most, to the last one's answer; nothing is compiled when it begins.

| reference | marks in all | Node, median | Node, longest | page, median | page, longest |
| --- | ---: | ---: | ---: | ---: | ---: |
${byTrials.map((row) => `| ${row.reference} | ${row.marks} | ${seconds(row)} |`).join('\n')}

How far a trial's stroke is from where it would end if it were followed until a fall of 1e-9 is left, of a hundred trials of each scene,
in their standard deviation. The farthest ones lie along directions that hardly anything holds; some come to another minimum:

| reference | median | 95 % | farthest |
| --- | ---: | ---: | ---: |
${byTrials.map(({ reference, offs }) => `| ${reference} | ${[0.5, 0.95, 1].map((share) => quantile(offs, share).toFixed(4)).join(' | ')} |`).join('\n')}

## Why it costs what it costs

- Unknowns of one mark stand last and are eliminated first (\`src/basics/sparse-symmetric.ts\`): they leave nothing behind among each
  other, and the cost grows with the number of marks, not with its cube.
- The two rows of a mark share their columns and enter the normal equations together (\`src/adjustment/equations.ts\`).
- An iteration that was left gives its room to the next one; a fit that no longer moves ends.
- Every picture is solved from all starts, and again with the others: a measurement evaluates and solves its equations some two
  hundred times, most of them of one picture alone.
`;
}

function figures({ node, page }: TimedRow): string {
  const cells = [node, page].flatMap(({ timesMs }) => [quantile(timesMs, 0.5), quantile(timesMs, 0.95)]);
  return [...cells, page.firstMs].map((ms) => ms.toFixed(ms < 100 ? 1 : 0)).join(' | ');
}

function seconds({ nodeMs, pageMs }: TrialsRow): string {
  const cells = [nodeMs, pageMs].flatMap((times) => [quantile(times, 0.5), quantile(times, 1)]);
  return cells.map((ms) => (ms / 1000).toFixed(1)).join(' | ');
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
