/**
 * The adjuster check on simulated pictures of a wrench (tests/simulation/wrench.ts, in three dimensions, no formula of the measurement's):
 * how far off the turn is, whether its uncertainty is honest, and what is decided. Seeds from 10001: none was seen when the
 * constants were chosen.
 */
import { decideAdjuster } from '../../src/finding/adjuster-decision.ts';
import { adjusterTurn } from '../../src/measurement/adjuster-turn.ts';
import type { WrenchPicture } from '../../src/measurement/wrench-directions.ts';
import { simulateWrench, type WrenchScene } from '../simulation/wrench.ts';
import { quantile } from './accuracy-summary.ts';
import { clipOf } from './assists-turn-clip.ts';

export const turnStudy = { name: 'turn', run: study };

type Kind = Omit<WrenchScene, 'seed'>;
type Row = {
  readonly name: string;
  readonly kind: Kind;
  /** Of a clip: rests found by the rod's motion, the wrench in every frame of them. */
  readonly clip?: boolean;
  /** The person said so, whatever the camera did. */
  readonly saidStill?: boolean;
};

const SCENES = 600;
const FIRST_SEED = 10_001;
const DEG = Math.PI / 180;
const GOAL_DEG = 3;

const STILL = { hand: null } as const;
const BY_HAND = { hand: { offMm: 20, rollDeg: 8 } } as const;
const ANY: readonly [number, number] = [0, 35];
/** 63 degrees in all, less in each. */
const SOUND = [12, 11, 10, 8, 7, 6, 5, 4];
const CREEPING = [3, 3, 2.5, 2.5, 2, 2, 1.5, 1.5];
const NONE = [0, 0, 0, 0, 0, 0];
const px = (sigmaPx: number, tiltDeg: readonly [number, number]) => ({ sigmaPx, tiltDeg });

const TURNING: readonly Row[] = [
  { name: 'tilt to 10°, 1 px', kind: { ...px(1, [0, 10]), ...STILL, stepsDeg: SOUND } },
  { name: 'tilt 10 to 20°, 1 px', kind: { ...px(1, [10, 20]), ...STILL, stepsDeg: SOUND } },
  { name: 'tilt 20 to 35°, 1 px', kind: { ...px(1, [20, 35]), ...STILL, stepsDeg: SOUND } },
  { name: 'tilt to 35°, 1 px', kind: { ...px(1, ANY), ...STILL, stepsDeg: SOUND } },
  { name: 'tilt to 35°, 0.25 px', kind: { ...px(0.25, ANY), ...STILL, stepsDeg: SOUND } },
  {
    name: 'no focal length in the file (off by 20 %)',
    kind: { ...px(1, ANY), ...STILL, stepsDeg: SOUND, uFocal: 0.2 },
  },
  { name: 'two pictures only', kind: { ...px(1, ANY), ...STILL, stepsDeg: SOUND, takenAfter: [8] } },
  {
    name: 'two pictures, tilt to 15°',
    kind: { ...px(1, [0, 15]), ...STILL, stepsDeg: SOUND, takenAfter: [8] },
  },
  { name: 'creeping, 18° in all', kind: { ...px(1, ANY), ...STILL, stepsDeg: CREEPING } },
  { name: 'by hand, arm marked, 1 px', kind: { ...px(1, ANY), ...BY_HAND, stepsDeg: SOUND } },
  { name: 'by hand, tilt to 15°', kind: { ...px(1, [0, 15]), ...BY_HAND, stepsDeg: SOUND } },
  { name: 'clip, followed to 0.25 px', kind: { ...px(0.25, ANY), ...STILL, stepsDeg: SOUND }, clip: true },
];

const NULLS: readonly Row[] = [
  { name: '1 px', kind: { ...px(1, ANY), ...STILL, stepsDeg: NONE } },
  { name: '0.25 px', kind: { ...px(0.25, ANY), ...STILL, stepsDeg: NONE } },
  {
    name: '1 px, rocks by ±1.5° on the hex',
    kind: { ...px(1, ANY), ...STILL, stepsDeg: NONE, playDeg: 1.5 },
  },
  {
    name: 'marks four times worse than stated',
    kind: { ...px(1, ANY), ...STILL, stepsDeg: NONE, playDeg: 1.5, worse: 4 },
  },
  { name: 'by hand, arm marked', kind: { ...px(1, ANY), ...BY_HAND, stepsDeg: NONE, playDeg: 1.5 } },
  {
    name: 'by hand, arm marked, back only within 5 cm',
    kind: { ...px(1, ANY), hand: { offMm: 50, rollDeg: 12 }, stepsDeg: NONE, playDeg: 1.5 },
  },
  {
    name: 'clip, followed to 0.25 px',
    kind: { ...px(0.25, ANY), ...STILL, stepsDeg: NONE, playDeg: 1.5 },
    clip: true,
  },
  {
    name: 'held by hand, and said to stand still (the person errs)',
    kind: { ...px(1, ANY), ...BY_HAND, stepsDeg: NONE },
    saidStill: true,
  },
];

type Outcome = {
  readonly errorDeg: number | null;
  readonly uDeg: number;
  /** By either direction of backing off, for a wrench that stands still. */
  readonly answers: readonly string[];
};

function outcomeOf({ kind, clip, saidStill }: Row, seed: number): Outcome {
  const seen = simulateWrench({ ...kind, seed });
  const followed = clip ? clipOf(kind, seed) : null;
  const pictures: readonly WrenchPicture[] = followed?.pictures ?? seen.pictures;
  const turn = adjusterTurn(pictures, saidStill ?? seen.cameraStill);
  if (!turn.ok) return { errorDeg: null, uDeg: 0, answers: [] };
  const { value, u } = turn.value.totalRad;
  const errorDeg = (value - (followed?.totalRad ?? seen.totalRad)) / DEG;
  const ways =
    kind.stepsDeg[0] === 0 ? (['clockwise', 'counter-clockwise'] as const) : (['counter-clockwise'] as const);
  return { errorDeg, uDeg: u / DEG, answers: ways.map((way) => decideAdjuster(turn.value, way).answer) };
}

function study(): string {
  const rows = (all: readonly Row[], line: (row: Row, outcomes: readonly Outcome[]) => string) =>
    all.map((row) =>
      line(
        row,
        Array.from({ length: SCENES }, (_scene, i) => outcomeOf(row, FIRST_SEED + i)),
      ),
    );
  return [
    `A wrench that turns, ${SCENES} scenes a line:`,
    '',
    '| pictures | read | error, °: median, 95 %, largest | within 3° | u, °: median | within 1.96 u | takes up | does not | cannot tell |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows(TURNING, turningLine),
    '',
    `A wrench that stands still, ${SCENES} scenes a line, each decided for both directions of backing off:`,
    '',
    '| pictures | read | error, °: 95 %, largest | called takes up | does not | cannot tell |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows(NULLS, nullLine),
  ].join('\n');
}

function turningLine({ name }: Row, outcomes: readonly Outcome[]): string {
  const { read, errors } = readOf(outcomes);
  const held = read.filter(({ errorDeg, uDeg }) => Math.abs(errorDeg as number) < 1.96 * uDeg).length;
  const near = errors.filter((error) => error <= GOAL_DEG).length;
  const u = read.map(({ uDeg }) => uDeg).sort((a, b) => a - b);
  const cells = [
    name,
    read.length,
    [0.5, 0.95, 1].map((share) => quantile(errors, share).toFixed(2)).join(', '),
    percent(near / read.length),
    quantile(u, 0.5).toFixed(2),
    percent(held / read.length),
    ...decisions(outcomes),
  ];
  return `| ${cells.join(' | ')} |`;
}

function nullLine({ name }: Row, outcomes: readonly Outcome[]): string {
  const { read, errors } = readOf(outcomes);
  const worst = [0.95, 1].map((share) => quantile(errors, share).toFixed(2)).join(', ');
  return `| ${[name, read.length, worst, ...decisions(outcomes)].join(' | ')} |`;
}

function readOf(outcomes: readonly Outcome[]) {
  const read = outcomes.filter(({ errorDeg }) => errorDeg !== null);
  const errors = read.map(({ errorDeg }) => Math.abs(errorDeg as number)).sort((a, b) => a - b);
  return { read, errors };
}

/** Counted by scenes: takes up by any direction; a scene that could not be read is told as 'cannot tell'. */
function decisions(outcomes: readonly Outcome[]): readonly number[] {
  const takes = outcomes.filter(({ answers }) => answers.includes('takes-up')).length;
  const not = outcomes.filter(
    ({ answers }) => answers.length > 0 && answers.every((a) => a === 'does-not-take-up'),
  );
  return [takes, not.length, outcomes.length - takes - not.length];
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
