/**
 * npm run bench:tracking -- --clips FOLDER: follows clips with known truth in Chromium by the page's own worker, measures the stroke,
 * and does the same the plain way with OpenCV in Python. Writes the tables of docs/tracking.md. The clips are made by
 * tracking_clips.py; that of sample-media comes first. --only a,b takes some of them and writes nothing; --no-plain leaves the plain
 * way out; --no-lengths does not look how memory grows.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { parseArgs } from 'node:util';
import type { TrackingCase } from './tracking-case.ts';
import { openTrackingPage, type PageRun } from './tracking-chromium.ts';
import { type StudyClip, studyClips } from './tracking-clip.ts';
import { plainOpencv } from './tracking-opencv.ts';
import { rms, scored, worst } from './tracking-score.ts';
import { strokeOf } from './tracking-stroke.ts';
import { memoryTable, otherTable, pinTable, speedTable, strokeTable } from './tracking-tables.ts';

const PLACE = 'docs/tracking.md';
const BEGIN = '<!-- tables: npm run bench:tracking -->';
/** The clip is played so often one after the other. */
const LENGTHS = [1, 4, 10];

const { values: asked } = parseArgs({
  options: {
    clips: { type: 'string' },
    only: { type: 'string' },
    'no-plain': { type: 'boolean', default: false },
    'no-lengths': { type: 'boolean', default: false },
  },
});
if (!asked.clips) throw new Error('--clips FOLDER is missing: where tracking_clips.py has put them');
const only = asked.only?.split(',') ?? [];
const clips = studyClips(asked.clips, only);
const page = await openTrackingPage();
try {
  const cases: TrackingCase[] = [];
  for (const clip of clips) {
    const run = await page.run(clip);
    const one = caseOf(clip, run);
    console.log(lineOf(one));
    cases.push(one);
  }
  const lengths = asked['no-lengths'] || only.length > 0 ? [] : await memoryByLength(clips);
  if (only.length === 0) write(cases, lengths);
} finally {
  await page.close();
}

function caseOf(clip: StudyClip, run: PageRun | { readonly code: string }): TrackingCase {
  const followed = 'code' in run ? null : run;
  return {
    clip,
    run,
    score: followed && scored(clip, followed.track),
    stroke: followed && strokeOf(clip, followed.track, followed.ticksPerSecond),
    plain: asked['no-plain'] ? null : plainOpencv(clip),
  };
}

function lineOf({ clip, run, score, stroke, plain }: TrackingCase): string {
  if ('code' in run || !score) return `${clip.name}: ${'code' in run ? run.code : ''}`;
  const made = !stroke
    ? ''
    : 'code' in stroke
      ? `${stroke.code} (true ${clip.truth.strokeMm})`
      : `stroke ${(stroke.strokeMm - stroke.trueMm).toFixed(2)} U ${stroke.U95Mm.toFixed(2)} curve ${stroke.curveRmsMm.toFixed(2)} n ${stroke.applicationErrorsMm.map((each) => each?.toFixed(2))} scatter ${stroke.stillScatter.toFixed(1)} ${stroke.warnings.join(',')} ${stroke.ms.toFixed(0)} ms`;
  const plainText = plain ? `plain ${(plain.strokeMm - clip.truth.strokeMm).toFixed(2)}` : '';
  return `${clip.name.padEnd(16)} pin ${rms(score.pin.px).toFixed(3)} ${worst(score.pin.lengthPx).toFixed(2)} gaps ${Object.values(score.gaps)} | ${made} | ${run.followPerS.toFixed(0)} of ${run.decodePerS.toFixed(0)} /s | ${plainText}`;
}

async function memoryByLength(all: readonly StudyClip[]) {
  const [clip] = all;
  if (!clip) return [];
  const folder = mkdtempSync(`${tmpdir()}/tracking-`);
  try {
    const rows = [];
    for (const times of LENGTHS) {
      const file = `${folder}/${times}.mp4`;
      execFileSync('ffmpeg', [
        ...['-v', 'error', '-stream_loop', String(times - 1), '-i', clip.file],
        ...['-c', 'copy', file],
      ]);
      const run = await page.run({ ...clip, file });
      if (!('code' in run)) rows.push({ ...run, frames: run.track.timeTicks.length });
    }
    return rows;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function write(cases: readonly TrackingCase[], lengths: Parameters<typeof memoryTable>[0]): void {
  const kept = existsSync(PLACE) ? (readFileSync(PLACE, 'utf8').split(BEGIN)[0] ?? '') : '';
  writeFileSync(
    PLACE,
    `${kept}${BEGIN}

### The pin

${pinTable(cases)}

### What stands still, the camshaft's end and the face

${otherTable(cases)}

### The stroke

${strokeTable(cases)}

### Speed and memory

${speedTable(cases)}

${memoryTable(lengths)}
`,
  );
}
