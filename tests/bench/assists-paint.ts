/** The over-stroke mark judged on painted scenes held back from choosing the judge's constants, and on pictures there are already. */
import { judgePaint, NO_HINTS, type PaintJudgement, type PaintSight } from '../../src/vision/paint-judge.ts';
import type { AssistStudy } from './assists.ts';
import {
  CONFUSERS,
  FURTHER_OUT,
  HELD_BACK,
  OTHER_PAINTS,
  type OtherPaint,
  type Ranges,
  type SceneDraw,
} from './assists-paint-draws.ts';
import { keptPicture } from './assists-paint-kept.ts';
import { renderedCases, sampleCases } from './assists-paint-media.ts';
import { type Counts, FURTHER_OUT_COUNTS, HELD_BACK_COUNTS, scenesOf } from './assists-paint-plan.ts';

export const paintStudy: AssistStudy = { name: 'paint', run };

/** So much paint in sight, as a full band's length, is said to be shown; less is told apart. */
const SHOWN_MM = 1.5;

type Truth = 'shown' | 'barely' | 'none' | 'other colour' | 'hidden' | 'dark';
type Judged = {
  readonly scene: SceneDraw;
  readonly truth: Truth;
  readonly judged: PaintJudgement;
  readonly ms: number;
};

function run(): string {
  const all = judgedOf(HELD_BACK, HELD_BACK_COUNTS);
  const further = judgedOf(FURTHER_OUT, FURTHER_OUT_COUNTS);
  return [
    'Held-back scenes, no colour named:',
    confusion(all),
    rates(all),
    'The confusers one by one, and what the tool said where it saw a band or could not tell:',
    confusers(all),
    'By what the band and its picture are like:',
    bandRows(all),
    'Where the person names the colour of the band (held-back scenes: bands of that colour, and one in three of those without paint):',
    namedColours(),
    'Further out, beyond every range that anything was chosen on:',
    confusion(further),
    rates(further),
    'Pictures made by other means (marks from their truth, scale from face to pin alone):',
    media(),
  ].join('\n\n');
}

function judgedOf(ranges: Ranges, counts: Counts): readonly Judged[] {
  return scenesOf(ranges, counts).map((scene, i): Judged => {
    const { region, rod, paintMm } = keptPicture(scene, false);
    const begun = process.cpuUsage();
    const judged = judgePaint(region, rod);
    const { user, system } = process.cpuUsage(begun);
    if (i % 50 === 0) console.log(`${i} scenes judged`);
    return { scene, truth: truthOf(scene, paintMm), judged, ms: (user + system) / 1000 };
  });
}

function namedColours(): string {
  const scenes = scenesOf(HELD_BACK, HELD_BACK_COUNTS);
  const bare = scenes
    .filter(({ kind }) => kind.is === 'bare' || kind.is === 'confuser')
    .filter((_, i) => i % 3 === 0);
  const sights = (of: readonly SceneDraw[], bandColour: OtherPaint) => {
    const said = of.map((scene) => {
      const { region, rod } = keptPicture(scene, false);
      return judgePaint(region, rod, { ...NO_HINTS, bandColour }).sight;
    });
    return SIGHTS.map((sight) => said.filter((each) => each === sight).length).join(' / ');
  };
  return table(
    [
      'named',
      'bands of that colour: seen / not seen / cannot tell',
      'no paint: seen / not seen / cannot tell',
    ],
    OTHER_PAINTS.map((what) => [
      what,
      sights(
        scenes.filter(({ kind }) => kind.is === 'other colour' && kind.what === what),
        what,
      ),
      sights(bare, what),
    ]),
  );
}

function truthOf({ kind }: SceneDraw, paintMm: number): Truth {
  if (kind.is === 'hidden' || kind.is === 'dark') return kind.is;
  if (kind.is === 'other colour') return kind.is;
  if (paintMm === 0) return 'none';
  return paintMm >= SHOWN_MM ? 'shown' : 'barely';
}

const SIGHTS: readonly PaintSight[] = ['seen', 'not-seen', 'cannot-tell'];
const row = (cells: readonly (string | number)[]) => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]) =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');
const count = (of: readonly Judged[], sight: PaintSight) =>
  of.filter(({ judged }) => judged.sight === sight).length;
const counts = (of: readonly Judged[]) => SIGHTS.map((sight) => count(of, sight));

function confusion(all: readonly Judged[]): string {
  const names: Readonly<Record<Truth, string>> = {
    shown: `paint shown, ${SHOWN_MM} mm or more of it in sight`,
    barely: `paint barely shown, under ${SHOWN_MM} mm`,
    none: 'no paint',
    'other colour': 'band that is yellow, white, blue or green',
    hidden: 'hidden by a hand',
    dark: 'in the dark',
  };
  return table(
    ['truth', 'scenes', 'seen', 'not seen', 'cannot tell'],
    (['shown', 'none', 'barely', 'other colour', 'hidden', 'dark'] as const).map((truth) => {
      const of = all.filter((each) => each.truth === truth);
      return [names[truth], of.length, ...counts(of)];
    }),
  );
}

function rates(all: readonly Judged[]): string {
  const shown = all.filter(({ truth }) => truth === 'shown');
  const none = all.filter(({ truth }) => truth === 'none');
  const told = shown.length - count(shown, 'cannot-tell');
  const untold = count(shown, 'cannot-tell') + count(none, 'cannot-tell');
  const part = (of: number, whole: number) => `${(of / whole).toFixed(3)} (${of} of ${whole})`;
  const ms = all.map((each) => each.ms).sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0;
  return table(
    ['what', 'reached', 'goal'],
    [
      ['recall of what it could tell', part(count(shown, 'seen'), told), '0.97'],
      ['recall, cannot tell counted as missed', part(count(shown, 'seen'), shown.length), '-'],
      ['false alarms', part(count(none, 'seen'), none.length), '0.02'],
      ['cannot tell, paint or none', part(untold, shown.length + none.length), '0.10'],
      ['one judgement in Node, median of processor time', `${ms.toFixed(0)} ms`, '-'],
    ],
  );
}

function confusers(all: readonly Judged[]): string {
  const of = (what: string | null) =>
    all.filter(({ scene: { kind }, truth }) =>
      truth !== 'none' ? false : kind.is === 'confuser' ? kind.what === what : what === null,
    );
  return table(
    ['no paint, but', 'scenes', 'seen', 'not seen', 'cannot tell', 'reasons'],
    [null, ...CONFUSERS].map((what) => {
      const those = of(what);
      const told = those.filter(({ judged }) => judged.sight !== 'not-seen').map(reasonOf);
      return [what ?? 'nothing: a bare rod', those.length, ...counts(those), [...new Set(told)].join(', ')];
    }),
  );
}

const reasonOf = ({ judged: { reason } }: Judged) =>
  'against' in reason
    ? `${reason.code} (${reason.against})`
    : 'colour' in reason
      ? `${reason.code} (${reason.colour})`
      : reason.code;

function bandRows(all: readonly Judged[]): string {
  const shown = all.filter(({ truth }) => truth === 'shown');
  type Asked = readonly [name: string, holds: (scene: SceneDraw) => boolean];
  const band = (of: (band: NonNullable<SceneDraw['band']>) => boolean) => (scene: SceneDraw) =>
    scene.band !== null && of(scene.band);
  const asked: readonly Asked[] = [
    ['out by less than 5 mm', band(({ outMm }) => outMm < 5)],
    ['out by 5 mm or more', band(({ outMm }) => outMm >= 5)],
    ['a quarter or more worn off', band(({ worn }) => worn >= 0.25)],
    ['faded by a fifth or more', band(({ faded }) => faded >= 0.2)],
    ['on a rod that is half rusty or more', ({ rusted }) => rusted >= 0.5],
    ['under 3 px/mm', ({ stand }) => stand.pxPerMm < 3],
    ['smeared by the hand', ({ camera }) => camera.smearPx > 0],
    ['something of its hue beside it', ({ company }) => company !== null && company !== 'rusty rod'],
    ['rod from marks alone', ({ marks }) => !marks.measured],
    ['rod from an adjustment', ({ marks }) => marks.measured],
  ];
  return table(
    ['band', 'scenes', 'seen', 'not seen', 'cannot tell'],
    asked.map(([name, holds]) => {
      const those = shown.filter(({ scene }) => holds(scene));
      return [name, those.length, ...counts(those)];
    }),
  );
}

function media(): string {
  return table(
    ['picture', 'truth', 'said', 'confidence', 'reason'],
    [...sampleCases(), ...renderedCases()].map(({ name, truth, judged }) => {
      const { sight, confidence, reason } = judged;
      const reach = 'toMm' in reason ? `, to ${reason.toMm.toFixed(1)} mm` : '';
      return [name, truth, sight, confidence.toFixed(2), `${reason.code}${reach}`];
    }),
  );
}
