/** The robustness study as docs/robustness.md. */
import { REFERENCE_KINDS } from '../simulation/any-scene.ts';
import { MISTAKE_NAMES } from '../simulation/spoiled-scene.ts';
import type { Done } from './robustness-worker.ts';
import { LIMIT_MM } from './scene-outcome.ts';

type Counts = { readonly scenes: number; readonly spoiledScenes: number };

/** Focal length over the longer side up to which a phone's prior without EXIF is meant to hold. */
const PHONE_FOCAL = 1.2;

export function robustnessText(done: readonly Done[], { scenes, spoiledScenes }: Counts): string {
  const sound = done.filter(({ mistake }) => mistake === null);
  const groups = [
    ...REFERENCE_KINDS.map((kind) => ({ name: kind, of: sound.filter((d) => d.kind === kind) })),
    { name: 'all', of: sound },
    { name: 'all, focal length known', of: sound.filter((d) => d.focalKnown) },
    { name: `all, unknown, up to ${PHONE_FOCAL} x`, of: sound.filter((d) => isUnknown(d, false)) },
    { name: `all, unknown, over ${PHONE_FOCAL} x`, of: sound.filter((d) => isUnknown(d, true)) },
  ];
  return `# Robustness

Written by \`npm run bench:robustness\`; ${scenes} seeded scenes of every reference kind, ${spoiledScenes} of every kind for each mistake.

## Sound marks

Any sensible scene (\`tests/simulation/any-scene.ts\`): camera 16 to 60 in away and up to 45 degrees off square in each of two
directions, rod pointing any way, picture upright or lying, focal length 0.6 to 3 times the longer side and told by EXIF or not,
chambers 9 to 36, arms 5 to 7 in, strokes 15 to 75 mm, both hands, marks of 0.5 to 2 px, hand-held or standing still.

Right: within 3 U95 of the truth. Flagged: not right, and the measurement says that marks disagree, a mark is doubtful, two
solutions are possible or the scale is too weak. Silent: not right, and none of these. Findings: against ${LIMIT_MM} mm.

| reference | scenes | right | wrong, flagged | wrong, silent | refused | error over U95 | over called within | within called over | not decided | seconds, median | seconds, 99 % |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${groups.map(({ name, of }) => `| ${name} | ${soundLine(of)} |`).join('\n')}

Refused: ${counted(sound.filter((d) => d.verdict === 'refused').flatMap((d) => d.reasons))}.

Wrong, silent (kind, seed, error over U95):
${listed(sound.filter((d) => d.verdict === 'wrong-and-silent'))}

Wrong, flagged:
${listed(sound.filter((d) => d.verdict === 'wrong-and-flagged'))}

## Mistakes

Scenes over the limit by 1 to 20 mm, spoiled (\`tests/simulation/spoiled-scene.ts\`). Refused: no number. Doubted: not decided, for a
reason that says that something is wrong. Near the limit: not decided for no other reason. Within: the wrong finding, apart for
scenes that something holds by its shape (tape, band, target), and for those whose only scale is one length (arm, distance),
with the camera still and hand-held. The row 'none' shows what the guard band itself lets through.

| mistake | scenes | refused | doubted | near the limit | over | within: by shape | one length, still | one length, hand-held |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${MISTAKE_NAMES.map((mistake) => `| ${mistake} | ${mistakeLine(done.filter((d) => d.mistake === mistake))} |`).join('\n')}

Found within (kind, seed), where something holds by its shape, but for slipped pins and misread sizes:
${foundWithin(done)}

## What geometry cannot tell

- A pin marked short of its place along the rod shortens the stroke by as much: nothing but a stated arm length with the camshaft
  end stands against it, and that only weakly.
- A size misread (arm, chamber, known distance) scales everything where it is the only scale; beside a tape it is contradicted.
- The rim marked on the far edge of the band in both pictures, and a tape misread alike in both, hardly change the stroke.
- Both pictures mirrored is a wheel end of the other hand: the stroke is right.
- One length as the only scale of two hand-held pictures leaves next to nothing that could contradict a misplaced mark.
`;
}

function isUnknown(d: Done, isLong: boolean): boolean {
  return !d.focalKnown && d.focalOverLonger > PHONE_FOCAL === isLong;
}

function soundLine(of: readonly Done[]): string {
  const count = (holds: (d: Done) => boolean) => of.filter(holds).length;
  const measured = count((d) => d.verdict !== 'refused');
  const beyond = count((d) => d.offU95 !== null && !(d.offU95 <= 1));
  return [
    of.length,
    count((d) => d.verdict === 'right'),
    count((d) => d.verdict === 'wrong-and-flagged'),
    count((d) => d.verdict === 'wrong-and-silent'),
    count((d) => d.verdict === 'refused'),
    `${((100 * beyond) / measured).toFixed(1)} %`,
    count((d) => d.finding === 'within limit' && d.strokeMm > LIMIT_MM),
    count((d) => d.finding === 'over limit' && d.strokeMm <= LIMIT_MM),
    `${((100 * count((d) => d.finding === 'not decided')) / measured).toFixed(0)} %`,
    quantile(of, 0.5),
    quantile(of, 0.99),
  ].join(' | ');
}

function mistakeLine(of: readonly Done[]): string {
  const count = (holds: (d: Done) => boolean) => of.filter(holds).length;
  const isNear = (d: Done) => d.undecided.every((code) => code === 'finding/near-limit');
  const within = (holds: (d: Done) => boolean): string =>
    `${count((d) => d.finding === 'within limit' && holds(d))} of ${count(holds)}`;
  return [
    of.length,
    count((d) => d.verdict === 'refused'),
    count((d) => d.finding === 'not decided' && !isNear(d)),
    count((d) => d.finding === 'not decided' && isNear(d)),
    count((d) => d.finding === 'over limit'),
    within(isByShape),
    within((d) => !isByShape(d) && d.cameraStill),
    within((d) => !isByShape(d) && !d.cameraStill),
  ].join(' | ');
}

function isByShape({ kind }: Done): boolean {
  return ['tape', 'band', 'target'].some((shape) => kind.includes(shape));
}

/** Mistakes of which the marks cannot know. */
const UNTOLD = /^none|^pin \d|short$|smaller$/;

function foundWithin(done: readonly Done[]): string {
  const names = done
    .filter((d) => d.mistake !== null && !UNTOLD.test(d.mistake))
    .filter((d) => isByShape(d) && d.finding === 'within limit')
    .map((d) => `- ${d.mistake}: ${d.kind} ${d.seed}`);
  return names.length > 0 ? names.join('\n') : 'none';
}

function quantile(of: readonly Done[], share: number): string {
  const sorted = of.map(({ seconds }) => seconds).sort((a, b) => a - b);
  return (sorted[Math.floor(share * sorted.length)] ?? Number.NaN).toFixed(3);
}

function counted(names: readonly string[]): string {
  const all = [...new Set(names)].map((name) => `${name} ${names.filter((n) => n === name).length}`);
  return all.length > 0 ? all.join(', ') : 'none';
}

function listed(of: readonly Done[]): string {
  if (of.length === 0) return 'none';
  return of
    .map((d) => {
      const focal = `${d.focalKnown ? 'known' : 'unknown'} ${d.focalOverLonger.toFixed(2)} x`;
      return `- ${d.kind} ${d.seed}: ${(d.offU95 ?? Number.NaN).toFixed(1)} (focal length ${focal})`;
    })
    .join('\n');
}
