/**
 * How well clips are measured whose pin was lost and put right by hand: npx tsx tests/simulation/corrected-study.ts [clips] [first seed].
 * Each clip three times: followed whole; the pin lost as the brake is applied, put right while it is held and followed back to the
 * marked frame; the same, followed back as far as the application only.
 */
import type { Track } from '../../src/marks/track.ts';
import { clipViews } from '../../src/measurement/clip-views.ts';
import { measure } from '../../src/measurement/measure.ts';
import { anyClip } from './any-clip.ts';
import { type ClipScene, simulateClip } from './clip-scene.ts';
import { correctedTrack } from './corrected-clip.ts';

const count = Number(process.argv[2] ?? 40);
const first = Number(process.argv[3] ?? 1);
const print = (line: string) => process.stdout.write(`${line}\n`);

type Row = { readonly error: number; readonly U: number };
const rows = new Map<string, (Row | string)[]>();

for (let seed = first; seed < first + count; seed++) {
  const drawn = anyClip(seed, { framesPerS: 30, handSigmaPx: 1 });
  const strokesMm = drawn.course.strokesMm.slice(0, 1);
  const course = { ...drawn.course, begins: 'released' as const, strokesMm };
  const scene = simulateClip({ ...drawn, hidden: [], lost: 0, seedState: 'released', course });
  const { travel, times, travelMm, seedFrame } = scene.truth;
  const begin = times.findIndex((t) => t > (travel.applications[0]?.begin ?? 0));
  const held = times.flatMap((t, i) => (travel.heldMm(t) === null ? [] : [i]));
  const strokeMm = held.reduce((sum, i) => sum + (travelMm[i] as number) / held.length, 0);
  const [at, last] = [held[held.length >> 1] as number, times.length - 1];
  const lost = (from: number) =>
    correctedTrack(scene, { ofSeed: [0, begin + 1], ofCorrection: [from, last], at }, seed, drawn.noisePx);
  judge('followed whole', scene, scene.track, strokeMm);
  judge('put right, back to the marked frame', scene, lost(seedFrame), strokeMm);
  judge('put right, back to the application', scene, lost(begin + 3), strokeMm);
}

function judge(name: string, scene: ClipScene, track: Track, strokeMm: number): void {
  const views = clipViews(scene.input, track);
  const two = views.ok ? measure({ ...scene.input, ...views.value }) : views;
  const row = two.ok
    ? { error: two.value.strokeMm.value - strokeMm, U: two.value.strokeMm.U95 }
    : two.failure.code;
  rows.set(name, [...(rows.get(name) ?? []), row]);
}

print('| pin | measured | error: median, 95 %, mm | U: median, mm | within U |');
print('| --- | --- | --- | --- | --- |');
for (const [name, all] of rows) {
  const measured = all.filter((row) => typeof row !== 'string');
  const errors = measured.map(({ error }) => Math.abs(error)).sort((a, b) => a - b);
  const us = measured.map(({ U }) => U).sort((a, b) => a - b);
  const at = (sorted: readonly number[], share: number) =>
    (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(2);
  const within = measured.filter(({ error, U }) => Math.abs(error) <= U).length;
  print(
    `| ${name} | ${measured.length} of ${count} | ${at(errors, 0.5)}, ${at(errors, 0.95)} | ${at(us, 0.5)} | ${within} of ${measured.length} |`,
  );
}
