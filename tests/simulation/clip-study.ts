/** How well simulated clips are measured: npx tsx tests/simulation/clip-study.ts [clips] [first seed]. */
import { anyClip, type FixedOfClip } from './any-clip.ts';
import { type ClipOutcome, type Judged, outcomeOf } from './clip-outcome.ts';
import type { ClipOptions } from './clip-scene.ts';

const count = Number(process.argv[2] ?? 300);
const first = Number(process.argv[3] ?? 1);
const fixed: FixedOfClip = JSON.parse(process.argv[4] ?? '{}');
const print = (line: string) => process.stdout.write(`${line}\n`);

const outcomes: { readonly seed: number; readonly outcome: ClipOutcome; readonly options: ClipOptions }[] =
  [];
for (let seed = first; seed < first + count; seed++) {
  const options = anyClip(seed, fixed);
  outcomes.push({ seed, outcome: outcomeOf(options), options });
}

const failures = new Map<string, number[]>();
for (const { seed, outcome } of outcomes)
  if (outcome.failure) failures.set(outcome.failure, [...(failures.get(outcome.failure) ?? []), seed]);
for (const [failure, seeds] of failures)
  print(`${seeds.length} x ${failure}: seeds ${seeds.slice(0, 12).join(' ')}`);
const done = outcomes.filter(({ outcome }) => !outcome.failure);
const miscounted = done.filter(
  ({ outcome, options }) => outcome.applicationsFound !== options.course.strokesMm.length,
);
print(
  `measured ${done.length} of ${count}; applications miscounted: ${miscounted.map(({ seed }) => seed).join(' ') || 'none'}`,
);
print(`slowest curve ${Math.max(...done.map(({ outcome }) => outcome.ms)).toFixed(0)} ms`);

function line(name: string, judged: readonly Judged[], digits: number): void {
  const errors = judged.map(({ error }) => Math.abs(error)).sort((a, b) => a - b);
  const us = judged.map(({ U }) => U).sort((a, b) => a - b);
  const at = (sorted: readonly number[], share: number) =>
    (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(digits);
  const held = judged.filter(({ error, U }) => Math.abs(error) <= U).length;
  const mean = judged.reduce((sum, { error }) => sum + error, 0) / judged.length;
  print(
    `${name.padEnd(22)} n ${judged.length}  mean ${mean.toFixed(digits)}  median ${at(errors, 0.5)}  95 % ${at(errors, 0.95)}  largest ${at(errors, 1)}  U median ${at(us, 0.5)}  held ${((100 * held) / judged.length).toFixed(1)} %`,
  );
}

for (const sort of ['tape', 'tape unmoved', 'clamp-band'])
  for (const sigma of [0.3, 1]) {
    const own = done.filter(
      ({ options: { reference, tapeUnmoved, handSigmaPx } }) =>
        handSigmaPx === sigma && sort === (reference === 'tape' && tapeUnmoved ? 'tape unmoved' : reference),
    );
    if (own.length > 0)
      line(
        `${sort}, ${sigma} px`,
        own.flatMap(({ outcome }) => outcome.applications),
        3,
      );
  }
line(
  'two pictures',
  done.flatMap(({ outcome }) => outcome.stroke ?? []),
  3,
);
line(
  'applications',
  done.flatMap(({ outcome }) => outcome.applications),
  3,
);
line(
  'to 90 %, s',
  done.flatMap(({ outcome }) => outcome.ninety),
  4,
);
line(
  'to full, s',
  done.flatMap(({ outcome }) => outcome.full),
  4,
);
line(
  'release, s',
  done.flatMap(({ outcome }) => outcome.release),
  4,
);
line(
  'creep, mm/s',
  done.flatMap(({ outcome }) => outcome.creep),
  4,
);
line(
  'spread, mm',
  done.flatMap(({ outcome }) => outcome.spread ?? []),
  3,
);
line(
  'frames, mm',
  done.flatMap(({ outcome }) => outcome.frames),
  3,
);
line(
  'angles, rad',
  done.flatMap(({ outcome }) => outcome.angles),
  4,
);
const off = done.flatMap(({ outcome }) => outcome.boundaries).sort((a, b) => a - b);
print(
  `boundaries, frames late: 2.5 % ${off[Math.floor(0.025 * off.length)]}, median ${off[Math.floor(0.5 * off.length)]}, 97.5 % ${off[Math.floor(0.975 * off.length)]}`,
);
const worst = done
  .flatMap(({ seed, outcome }) =>
    outcome.applications.map((one) => ({ seed, ...one, r: Math.abs(one.error) / one.U })),
  )
  .sort((a, b) => b.r - a.r);
print(
  `beyond U: ${worst
    .filter(({ r }) => r > 1)
    .slice(0, 15)
    .map(({ seed, error, U }) => `${seed} (${error.toFixed(2)}, ${U.toFixed(2)})`)
    .join(' ')}`,
);
