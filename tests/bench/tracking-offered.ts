/**
 * npm run bench:offered -- --clips FOLDER: what a clip with a tape tells after the touches that nobody is spared (pin, face, the tape's
 * first and last marked inch), with what the page then offers by itself taken: all graduations, the clamp band's rim where it is
 * found, and the camshaft's end where the arm's turn tells it. Followed in Node. Writes its table in docs/tracking.md. Clips in FOLDER are made by tracking_clips.py: the sway-... ones, and
 * held-1 ... held-12 (named there: FOLDER held-1 held-2 ...). --only a,b takes some and writes nothing.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { BAND_UNKNOWN } from '../../src/app/work/usual-references.ts';
import type { Mark } from '../../src/marks/mark.ts';
import { armSight } from '../../src/measurement/arm-sight.ts';
import type { References } from '../../src/references/reference.ts';
import { assist } from '../../src/vision/assist.ts';
import type { AssistQuestion, FoundMark } from '../../src/vision/assist-sight.ts';
import type { Gray } from '../../src/vision/gray.ts';
import { type StudyClip, studyClips, TAPE_UNMOVED } from './tracking-clip.ts';
import { lumaFrames } from './tracking-frames.ts';
import { followInNode } from './tracking-node.ts';
import { clipInput, type StrokeOutcome, strokeOf } from './tracking-stroke.ts';

const PLACE = 'docs/tracking.md';
const [BEGIN, END] = ['<!-- offered: npm run bench:offered -->', '<!-- offered: end -->'];
const TICKS_PER_SECOND = 30_000;
/** 1/32 in. */
const WANTED_MM = 25.4 / 32;

type Outcome = StrokeOutcome | { readonly code: string };
type Row = {
  readonly clip: StudyClip;
  readonly graduations: number;
  readonly rim: string;
  /** Where the turn puts the camshaft's end, from the true place, px, and over its sigma. */
  readonly turn: string;
  /** Without the rim, with it, with the camshaft's end by the turn as well, and with that by hand instead. */
  readonly plain: Outcome;
  readonly rimmed: Outcome | null;
  readonly turned: Outcome | null;
  readonly whole: Outcome | null;
};

const { values: asked } = parseArgs({ options: { clips: { type: 'string' }, only: { type: 'string' } } });
if (!asked.clips) throw new Error('--clips FOLDER is missing: where tracking_clips.py has put them');
const only = asked.only?.split(',') ?? [];
const rows: Row[] = [];
for (const clip of studyClips(asked.clips, only)) {
  if (only.length === 0 && !/^(clip-tape|sway-.*|held-\d+)$/.test(clip.name)) continue;
  const row = await rowOf(clip);
  console.log(lineOf(row));
  rows.push(row);
}
if (only.length === 0) write(rows);

async function rowOf(clip: StudyClip): Promise<Row> {
  const seed = await picture(clip, clip.seedIndex);
  const mark = (kind: Mark['kind']) => clip.marks.find((each) => each.kind === kind) as Mark;
  const placeOf = ({ xPx, yPx }: Mark) => [xPx, yPx] as const;
  const [face, pin, camshaft] = [mark('chamber-face'), mark('clevis-pin'), mark('camshaft-end')];
  const named = clip.marks.flatMap((each) =>
    each.kind === 'tape-graduation'
      ? [{ readingMm: each.readingMm, placePx: placeOf(each), sigmaPx: each.sigmaPx }]
      : [],
  );
  const [low, high] = [named[0], named.at(-1)];
  if (!low || !high) throw new Error(`${clip.name}: no graduations`);
  const found = (question: AssistQuestion) => assist(seed, question, null);
  const tape = found({ of: 'tape', named: [low, high] });
  if (!tape.ok) {
    const failed = { code: tape.failure.code };
    return {
      clip,
      graduations: 0,
      rim: '-',
      turn: '-',
      plain: failed,
      rimmed: null,
      turned: null,
      whole: null,
    };
  }
  const graduations = tape.value.marks.map(
    (each, i): Mark => ({ kind: 'tape-graduation', readingMm: each.readingMm ?? 0, ...taken(each, `t${i}`) }),
  );
  const band = found({ of: 'clamp-band', facePx: placeOf(face), pinPx: placeOf(pin), nearPx: null });
  const rim = band.ok ? band.value.marks : [];
  const rimMarks = rim.map((each, i): Mark => ({ kind: 'clamp-band', ...taken(each, `b${i}`) }));
  const follow = (marks: readonly Mark[]) => followInNode({ ...clip, marks });
  const references = rim.length > 0 ? { ...TAPE_UNMOVED, clampBand: BAND_UNKNOWN } : TAPE_UNMOVED;
  const measured = (followed: Followed, marks: readonly Mark[]): Outcome => {
    return 'code' in followed
      ? followed
      : strokeOf({ ...clip, marks }, followed.track, TICKS_PER_SECOND, references);
  };
  const touched = [face, pin, ...graduations];
  // A rim is not followed.
  const [followed, withArm] = [await follow(touched), await follow([...touched, camshaft])];
  const turn = await turnOf({ ...clip, marks: [...touched, ...rimMarks] }, followed, references, seed);
  const end = typeof turn === 'string' ? null : ({ kind: 'camshaft-end', ...taken(turn, 'c1') } as const);
  return {
    clip,
    graduations: graduations.length,
    rim: band.ok ? `${rim.length} points` : band.failure.code,
    plain: measured(followed, touched),
    rimmed: rim.length > 0 ? measured(followed, [...touched, ...rimMarks]) : null,
    turn: typeof turn === 'string' ? turn : offText(turn, clip),
    turned: end && measured(await follow([...touched, end]), [...touched, ...rimMarks, end]),
    whole: measured(withArm, [...touched, ...rimMarks, camshaft]),
  };
}

type Followed = Awaited<ReturnType<typeof followInNode>>;

/** Where the arm's turn says that the camshaft's end is, or why it does not. */
async function turnOf(
  clip: StudyClip,
  followed: Followed,
  references: References,
  seed: Gray,
): Promise<FoundMark | string> {
  if ('code' in followed) return '-';
  const input = clipInput(clip, followed.track, TICKS_PER_SECOND, references);
  const sight = input.ok ? armSight(input.value, followed.track) : null;
  if (!sight) return '-';
  const question = { of: 'arm-turn', here: sight.here, there: sight.there } as const;
  const found = assist(seed, question, await picture(clip, sight.other.index));
  return found.ok ? (found.value.marks[0] as FoundMark) : found.failure.code;
}

function offText({ placePx: [x, y], sigmaPx }: FoundMark, clip: StudyClip): string {
  const [trueX = 0, trueY = 0] = clip.truth.frames[clip.seedIndex]?.points.camshaftEnd ?? [];
  const offPx = Math.hypot(x - trueX, y - trueY);
  return `${offPx.toFixed(1)} px (${(offPx / sigmaPx).toFixed(1)})`;
}

async function picture(clip: StudyClip, at: number): Promise<Gray> {
  const { widthPx = 0, heightPx = 0 } = clip.truth.views[0] ?? {};
  for await (const { index, gray } of lumaFrames(clip.file, widthPx, heightPx)) if (index === at) return gray;
  throw new Error(`${clip.name}: no frame ${at}`);
}

function taken({ placePx: [xPx, yPx], sigmaPx }: FoundMark, id: string) {
  return { id, xPx, yPx, sigmaPx, placedBy: 'assist' } as const;
}

function textOf(outcome: Outcome | null): string {
  if (!outcome) return '-';
  if (!('strokeMm' in outcome)) return outcome.code;
  const errorMm = outcome.strokeMm - outcome.trueMm;
  const within = Math.abs(errorMm) <= outcome.U95Mm ? '' : ' **not within**';
  return `${errorMm.toFixed(2)} (${outcome.U95Mm.toFixed(2)})${within}`;
}

function lineOf({ clip, graduations, rim, turn, plain, rimmed, turned, whole }: Row): string {
  const cells = [graduations || '-', rim, turn, ...[plain, rimmed, turned, whole].map(textOf)];
  return `| ${[clip.name, clip.truth.strokeMm.toFixed(1), ...cells].join(' | ')} |`;
}

function write(all: readonly Row[]): void {
  const measured = (of: (row: Row) => Outcome | null) =>
    all.map(of).flatMap((each) => (each && 'strokeMm' in each ? [each] : []));
  const summary = (of: (row: Row) => Outcome | null): string => {
    const some = measured(of);
    const errors = some.map(({ strokeMm, trueMm }) => Math.abs(strokeMm - trueMm));
    const within = some.filter(({ U95Mm }, i) => (errors[i] as number) <= U95Mm).length;
    const fine = some.filter(({ U95Mm }, i) => U95Mm <= WANTED_MM && (errors[i] as number) <= WANTED_MM);
    return `${fine.length} of ${some.length}; ${within} of ${some.length}`;
  };
  const summaries = [
    summary(({ plain }) => plain),
    summary(({ rimmed }) => rimmed),
    summary(({ turned }) => turned),
    summary(({ whole }) => whole),
  ];
  const table = [
    '| clip | true, mm | graduations found | rim | camshaft’s end by the turn, off (over sigma) | pin and face: error (U95), mm | with the rim found | and the camshaft’s end by the turn | that by hand |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...all.map(lineOf),
    `| error and U95 within 0.79 mm; error within U95 | | | | | ${summaries.join(' | ')} |`,
  ];
  const text = readFileSync(PLACE, 'utf8');
  const [before = '', rest = ''] = text.split(BEGIN);
  const [, after = ''] = rest.split(END);
  writeFileSync(PLACE, `${before}${BEGIN}\n\n${table.join('\n')}\n\n${END}${after}`);
}
