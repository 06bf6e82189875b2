/**
 * The adjuster check on simulated pictures of a wrench (tests/simulation/wrench.ts, in three dimensions, no formula of the measurement's):
 * how far off the turn is, whether its uncertainty is honest, and what is decided. Seeds from 75001, those whose pictures show
 * all of hex, wrench and arm: none was seen when constants and words were chosen.
 */
import { drawFrom } from '../../src/basics/random.ts';
import { decideAdjuster } from '../../src/finding/adjuster-decision.ts';
import { adjusterTurn, isToldWell } from '../../src/measurement/adjuster-turn.ts';
import type { WrenchPicture } from '../../src/measurement/wrench-directions.ts';
import { simulateWrench, type WrenchScene } from '../simulation/wrench.ts';
import { quantile } from './accuracy-summary.ts';
import { clipOf } from './assists-turn-clip.ts';

export const turnStudy = { name: 'turn', run: study };

type Kind = Omit<WrenchScene, 'seed' | 'putOverDeg'>;
/** Of each picture of a wrench that is put over: from, to, degrees. */
type PutOver = readonly (readonly [number, number])[];
type Row = {
  readonly name: string;
  readonly kind: Kind;
  /** Of a clip: rests found by the rod's motion, the wrench in every frame of them. */
  readonly clip?: boolean;
  /** The person said so, whatever the camera did. */
  readonly saidStill?: boolean;
  /** How the wrench is put over at the end: the first of these by which the turn is told within 3 degrees, else the last. */
  readonly putOver?: readonly PutOver[];
};

/** Of a line: of wrenches that turn, and of those that stand. */
const SCENES = { turning: 400, still: 400 };
const FIRST_SEED = 75_001;
const DEG = Math.PI / 180;

const STILL = { hand: null } as const;
const BY_HAND = { hand: { offMm: 20, rollDeg: 8 } } as const;
const ANY: readonly [number, number] = [0, 35];
/** 63 degrees in all, less in each. */
const SOUND = [12, 11, 10, 8, 7, 6, 5, 4];
const CREEPING = [3, 3, 2.5, 2.5, 2, 2, 1.5, 1.5];
const NONE = [0, 0, 0, 0, 0, 0];
const px = (sigmaPx: number, tiltDeg: readonly [number, number]) => ({ sigmaPx, tiltDeg });
const sound = { ...STILL, stepsDeg: SOUND } as const;
const none = { ...px(1, ANY), ...STILL, stepsDeg: NONE } as const;
const THIRDS: PutOver = [
  [100, 140],
  [-140, -100],
];
const LITTLE_ROOM: PutOver = [
  [50, 110],
  [-110, -50],
];
const putOver = [THIRDS];
/** What the page asks, one after the other. */
const asAsked = (sides: PutOver): readonly PutOver[] => [[], sides, [...sides, [150, 210]]];
const saidStill = true;

const TURNING: readonly Row[] = [
  { name: 'put over, tilt to 10°', kind: { ...px(1, [0, 10]), ...sound }, putOver },
  { name: 'put over, tilt 10 to 20°', kind: { ...px(1, [10, 20]), ...sound }, putOver },
  { name: 'put over, tilt 20 to 35°', kind: { ...px(1, [20, 35]), ...sound }, putOver },
  { name: 'put over, 3 px', kind: { ...px(3, ANY), ...sound }, putOver },
  { name: 'put over, 0.25 px', kind: { ...px(0.25, ANY), ...sound }, putOver },
  {
    name: 'put over, no focal length in the file (off by 25 %)',
    kind: { ...px(1, ANY), ...sound, uFocal: 0.25 },
    putOver,
  },
  {
    name: 'put over, first and last picture only',
    kind: { ...px(1, ANY), ...sound, takenAfter: [8] },
    putOver,
  },
  { name: 'put over, creeping, 18° in all', kind: { ...px(1, ANY), ...STILL, stepsDeg: CREEPING }, putOver },
  { name: 'put over where asked', kind: { ...px(1, ANY), ...sound }, putOver: asAsked(THIRDS) },
  { name: 'put over with little room', kind: { ...px(1, ANY), ...sound }, putOver: [LITTLE_ROOM] },
  {
    name: 'put over where asked, with little room',
    kind: { ...px(1, ANY), ...sound },
    putOver: asAsked(LITTLE_ROOM),
  },
  { name: 'tilt to 10°', kind: { ...px(1, [0, 10]), ...sound } },
  { name: 'tilt to 35°', kind: { ...px(1, ANY), ...sound } },
  { name: 'creeping, 18° in all', kind: { ...px(1, ANY), ...STILL, stepsDeg: CREEPING } },
  { name: 'two pictures only', kind: { ...px(1, ANY), ...sound, takenAfter: [8] } },
  { name: 'clip, followed to 0.25 px', kind: { ...px(0.25, ANY), ...sound }, clip: true },
  {
    name: 'clip, followed to 0.25 px, put over where asked',
    kind: { ...px(0.25, ANY), ...sound },
    clip: true,
    putOver: asAsked(THIRDS),
  },
  { name: 'by hand', kind: { ...px(1, ANY), ...BY_HAND, stepsDeg: SOUND } },
  { name: 'by hand, put over', kind: { ...px(1, ANY), ...BY_HAND, stepsDeg: SOUND }, putOver },
  { name: 'by hand, tilt to 15°', kind: { ...px(1, [0, 15]), ...BY_HAND, stepsDeg: SOUND } },
];

const NULLS: readonly Row[] = [
  { name: 'camera on a stand', kind: none },
  { name: '0.25 px', kind: { ...none, sigmaPx: 0.25 } },
  { name: 'rocks by ±1.5° on the hex', kind: { ...none, playDeg: 1.5 } },
  { name: 'rocks, put over at the end', kind: { ...none, playDeg: 1.5 }, putOver },
  { name: 'rocks, first and last picture only', kind: { ...none, playDeg: 1.5, takenAfter: [6] } },
  { name: 'rocks, marks four times worse than stated', kind: { ...none, playDeg: 1.5, worse: 4 } },
  { name: 'rocks, marks of 8 px', kind: { ...none, playDeg: 1.5, sigmaPx: 8 } },
  { name: 'clip, followed to 0.25 px', kind: { ...none, sigmaPx: 0.25, playDeg: 1.5 }, clip: true },
  { name: 'by hand', kind: { ...none, ...BY_HAND, playDeg: 1.5 } },
  { name: 'by hand, put over', kind: { ...none, ...BY_HAND, playDeg: 1.5 }, putOver },
  {
    name: 'by hand, back only within 5 cm',
    kind: { ...none, hand: { offMm: 50, rollDeg: 12 }, playDeg: 1.5 },
  },
  { name: 'by hand, said to stand still', kind: { ...none, ...BY_HAND, playDeg: 1.5 }, saidStill },
  {
    name: 'said to stand still, always aimed at the hex',
    kind: { ...none, hand: { offMm: 20, aimMm: 0, rollDeg: 8 }, playDeg: 1.5 },
    saidStill,
  },
  {
    name: 'said to stand still, the stand turns about the lens',
    kind: { ...none, hand: { offMm: 0, rollDeg: 8 }, playDeg: 1.5 },
    saidStill,
  },
  {
    name: 'said to stand still, nudged',
    kind: { ...none, hand: { offMm: 1, rollDeg: 1 }, playDeg: 1.5 },
    saidStill,
  },
  {
    name: 'by hand, said to stand still, marks of 8 px',
    kind: { ...none, ...BY_HAND, sigmaPx: 8, playDeg: 1.5 },
    saidStill,
  },
];

type Outcome = {
  readonly errorDeg: number | null;
  /** By its uncertainty within 3 degrees. */
  readonly toldWell: boolean;
  readonly uDeg: number;
  /** By either direction of backing off, for a wrench that stands still. */
  readonly answers: readonly string[];
};

/** Null where a picture does not show all of it. */
function outcomeOf({ kind, clip, saidStill, putOver: ways = [[]] }: Row, seed: number): Outcome | null {
  const draw = drawFrom(seed + 2e6);
  const putOverDeg = (ways.at(-1) ?? []).map(([from, to]) => draw.uniform(from, to));
  const seen = clip ? clipOf({ ...kind, putOverDeg, seed }) : simulateWrench({ ...kind, putOverDeg, seed });
  if (!seen.pictures.every(showsAll)) return null;
  const stood = saidStill ?? seen.cameraStill;
  const without = seen.pictures.length - putOverDeg.length;
  const turns = ways.map((way) => adjusterTurn(seen.pictures.slice(0, without + way.length), stood));
  const turn = turns.find((each) => each.ok && isToldWell(each.value)) ?? turns.at(-1);
  if (!turn?.ok) return { errorDeg: null, toldWell: false, uDeg: 0, answers: [] };
  const { value, u } = turn.value.totalRad;
  const backedOff =
    kind.stepsDeg[0] === 0 ? (['clockwise', 'counter-clockwise'] as const) : (['counter-clockwise'] as const);
  const answers = backedOff.map((way) => decideAdjuster(turn.value, way).answer);
  const errorDeg = (value - seen.totalRad) / DEG;
  return { errorDeg, toldWell: isToldWell(turn.value), uDeg: u / DEG, answers };
}

function showsAll({ centre, tip, arm, middlePx: [midX, midY] }: WrenchPicture): boolean {
  const points = [centre, tip, ...(arm ? [arm.pin, arm.camshaft] : [])];
  return points.every(({ xPx, yPx }) => Math.abs(xPx - midX) < midX && Math.abs(yPx - midY) < midY);
}

function outcomesOf(row: Row, count: number): readonly Outcome[] {
  const outcomes: Outcome[] = [];
  for (let seed = FIRST_SEED; outcomes.length < count; seed++) {
    const outcome = outcomeOf(row, seed);
    if (outcome) outcomes.push(outcome);
  }
  return outcomes;
}

function study(): string {
  const rows = (
    all: readonly Row[],
    scenes: number,
    line: (row: Row, outcomes: readonly Outcome[]) => string,
  ) => all.map((row) => line(row, outcomesOf(row, scenes)));
  return [
    `A wrench that turns, ${SCENES.turning} scenes a line:`,
    '',
    '| pictures | read | error, °: median, 95 %, largest | within 3° | u, °: median | within 1.96 u | told within 3° | of those, within 3° | takes up | does not | cannot tell |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows(TURNING, SCENES.turning, turningLine),
    '',
    `A wrench that stands still, ${SCENES.still} scenes a line, each decided for both directions of backing off:`,
    '',
    '| pictures | read | error, °: 95 %, largest | called takes up | does not | cannot tell |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows(NULLS, SCENES.still, nullLine),
  ].join('\n');
}

function turningLine({ name }: Row, outcomes: readonly Outcome[]): string {
  const { read, errors } = readOf(outcomes);
  const held = read.filter(({ errorDeg, uDeg }) => Math.abs(errorDeg as number) < 1.96 * uDeg).length;
  const near = (all: typeof read) => all.filter(({ errorDeg }) => Math.abs(errorDeg as number) <= 3).length;
  const told = read.filter(({ toldWell }) => toldWell);
  const u = read.map(({ uDeg }) => uDeg).sort((a, b) => a - b);
  const cells = [
    name,
    read.length,
    [0.5, 0.95, 1].map((share) => quantile(errors, share).toFixed(2)).join(', '),
    percent(near(read) / read.length),
    quantile(u, 0.5).toFixed(2),
    percent(held / read.length),
    told.length,
    told.length > 0 ? percent(near(told) / told.length) : '',
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
