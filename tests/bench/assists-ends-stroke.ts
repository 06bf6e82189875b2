/**
 * What the same point in both pictures is worth: simulated wheel ends through the engine, pin and camshaft marked by hand with 1 px, or found again in
 * the applied picture. No pictures: the scatter of what is found is about that which the study of pictures measured.
 */
import { drawFrom } from '../../src/basics/random.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { UNFORESEEN_TURN_RAD } from '../../src/vision/same-end.ts';
import { simulate } from '../simulation/scene.ts';
import { type Cell, sceneOptions } from './accuracy-cells.ts';
import { at, px, rms, table } from './assists-marks-tables.ts';

const SEEDS = { first: 4_200_000, count: 60 };
const HAND_PX = 1;
/** Of a mark found again against the first: about what was measured. */
const AGAIN_PX = 0.25;
/** Of a middle found in the first picture: nine in ten within half a pixel. */
const MIDDLE_PX = 0.233;
/** A pin turns in its eyes as it likes. */
const PIN_TURN_RAD = 0.1;

type Outcome = {
  readonly errorMm: number;
  readonly UMm: number;
  /** Of the arm angle, radians and over its U. */
  readonly angleRad: number;
  readonly angleOff: number;
};
type Way = {
  readonly name: string;
  readonly of: (input: MeasureInput, exact: MeasureInput, seed: number) => MeasureInput;
};

const SCENES: readonly { readonly name: string; readonly cell: Cell }[] = [
  { name: 'tape, by hand', cell: { reference: 'tape', way: 'plain', sigmaPx: 1, cameraStill: false } },
  { name: 'tape, with care', cell: { reference: 'tape', way: 'careful', sigmaPx: 0.25, cameraStill: false } },
  {
    name: 'tape and band, with care',
    cell: { reference: 'tape+band', way: 'careful', sigmaPx: 0.25, cameraStill: false },
  },
];

const WAYS: readonly Way[] = [
  { name: 'by hand', of: (input) => input },
  {
    name: 'found again, stated as sure as the first mark',
    of: (input, exact, seed) => foundAgain(input, exact, seed, Math.hypot(HAND_PX, AGAIN_PX), HAND_PX),
  },
  {
    name: 'found again, both stated by the match alone',
    of: (input, exact, seed) => foundAgain(input, exact, seed, AGAIN_PX, AGAIN_PX),
  },
  {
    name: 'found again, what the first is off by shared',
    of: (input, exact, seed) => withShared(foundAgain(input, exact, seed, AGAIN_PX, HAND_PX)),
  },
  {
    name: 'the same, and the camshaft’s middle found in the first',
    of: (input, exact, seed) => middleThenAgain(input, exact, seed, ['camshaft-end']),
  },
  {
    name: 'the same, and both middles found in the first',
    of: (input, exact, seed) => middleThenAgain(input, exact, seed, ['clevis-pin', 'camshaft-end']),
  },
];

export const endsStrokeStudy = { name: 'ends-stroke', run: strokeTable };

function strokeTable(): string {
  const rows = SCENES.flatMap(({ name: scene, cell }) => {
    const drawn = WAYS.map((): Outcome[] => []);
    for (let seed = SEEDS.first; seed < SEEDS.first + SEEDS.count; seed++) {
      const options = { ...sceneOptions(cell, seed), pinRepeats: 1 };
      const { input: drawnInput, truth } = simulate(options);
      const exact = simulate({ ...options, sigmaPx: 1e-4 }).input;
      const input = endsByHand(drawnInput, exact, seed);
      for (const [i, way] of WAYS.entries()) {
        const result = measure(way.of(input, exact, seed));
        if (!result.ok) continue;
        const { strokeMm, armAngleAppliedRad: angle } = result.value;
        const angleRad = angle ? Math.abs(angle.value - truth.armAngleAppliedRad) : Number.NaN;
        drawn[i]?.push({
          errorMm: strokeMm.value - truth.strokeMm,
          UMm: strokeMm.U95,
          angleRad,
          angleOff: angle ? angleRad / angle.U95 : 0,
        });
      }
    }
    return WAYS.map(({ name }, i) => rowOf(`${scene}; ${name}`, drawn[i] ?? []));
  });
  return table(
    [
      'marks',
      'scenes',
      'stroke error rms mm',
      '95 % mm',
      'mean U mm',
      'stroke within U',
      'arm angle error 95 %, degrees',
      'arm angle within U',
    ],
    rows,
  );
}

function rowOf(name: string, all: readonly Outcome[]): string {
  const offs = all.map(({ errorMm }) => Math.abs(errorMm));
  const share = (count: number) => `${((100 * count) / all.length).toFixed(1)} %`;
  const cells = [
    px(rms(offs)),
    px(at(offs, 0.95)),
    px(all.reduce((sum, { UMm }) => sum + UMm, 0) / all.length),
    share(all.filter(({ errorMm, UMm }) => Math.abs(errorMm) <= UMm).length),
    px(
      at(
        all.flatMap(({ angleRad }) => (Number.isNaN(angleRad) ? [] : [(180 / Math.PI) * angleRad])),
        0.95,
      ),
    ),
    share(all.filter(({ angleOff }) => angleOff <= 1).length),
  ];
  return `| ${name} | ${all.length} | ${cells.join(' | ')} |`;
}

const isEnd = ({ kind }: Mark) => kind === 'clevis-pin' || kind === 'camshaft-end';

/** Pin and camshaft of both pictures as a hand marks them, whatever marks the rest. */
function endsByHand(input: MeasureInput, exact: MeasureInput, seed: number): MeasureInput {
  const draw = drawFrom(seed + 17);
  const views = input.views.map((view, i) => ({
    ...view,
    marks: view.marks.map((mark): Mark => {
      const truth = isEnd(mark) ? placeOf(exact.views[i] ?? view, mark.kind) : null;
      if (!truth) return mark;
      const [xPx, yPx] = [truth[0] + draw.normal(0, HAND_PX), truth[1] + draw.normal(0, HAND_PX)];
      return { ...mark, xPx, yPx, sigmaPx: HAND_PX };
    }),
  }));
  return { ...input, views };
}

/** What the first picture's mark is off by goes along, turned as the arm turns for the camshaft. */
function foundAgain(
  input: MeasureInput,
  exact: MeasureInput,
  seed: number,
  sigmaPx: number,
  firstSigmaPx: number,
): MeasureInput {
  const draw = drawFrom(seed + 31);
  const [first, second] = input.views;
  const [firstTrue, secondTrue] = exact.views;
  if (!first || !second || !firstTrue || !secondTrue) return input;
  const turnRad = armRad(secondTrue) - armRad(firstTrue);
  const again = second.marks.map((mark): Mark => {
    if (!isEnd(mark)) return mark;
    const [marked, there, here] = [first, firstTrue, secondTrue].map((view) => placeOf(view, mark.kind));
    if (!marked || !there || !here) return mark;
    const turn = mark.kind === 'camshaft-end' ? turnRad : draw.normal(0, PIN_TURN_RAD);
    const [dx, dy] = [marked[0] - there[0], marked[1] - there[1]];
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return {
      ...mark,
      xPx: here[0] + c * dx - s * dy + draw.normal(0, AGAIN_PX),
      yPx: here[1] + s * dx + c * dy + draw.normal(0, AGAIN_PX),
      sigmaPx,
    };
  });
  const kept = first.marks.map(
    (mark): Mark => (isEnd(mark) ? { ...mark, sigmaPx: Math.min(mark.sigmaPx, firstSigmaPx) } : mark),
  );
  return {
    ...input,
    views: [{ ...first, marks: kept }, { ...second, marks: again }, ...input.views.slice(2)],
  };
}

/** The middle of some ends found in the first picture, before their points are found again. */
function middleThenAgain(
  input: MeasureInput,
  exact: MeasureInput,
  seed: number,
  kinds: readonly Mark['kind'][],
): MeasureInput {
  const draw = drawFrom(seed + 47);
  const [first, ...others] = input.views;
  const firstTrue = exact.views[0];
  if (!first || !firstTrue) return input;
  const marks = first.marks.map((mark): Mark => {
    const truth = kinds.includes(mark.kind) ? placeOf(firstTrue, mark.kind) : null;
    if (!truth) return mark;
    const [xPx, yPx] = [truth[0] + draw.normal(0, MIDDLE_PX), truth[1] + draw.normal(0, MIDDLE_PX)];
    return { ...mark, xPx, yPx, sigmaPx: MIDDLE_PX };
  });
  const found = { ...input, views: [{ ...first, marks }, ...others] };
  return withShared(foundAgain(found, exact, seed, AGAIN_PX, HAND_PX));
}

/** As the page takes it: stated by the match, and by how a turn that the look does not tell moves it, beside the first mark. */
function withShared(input: MeasureInput): MeasureInput {
  const [first, second] = input.views;
  if (!first || !second) return input;
  const marks = second.marks.map((mark): Mark => {
    const from = isEnd(mark) ? first.marks.find(({ kind }) => kind === mark.kind) : undefined;
    if (!from) return mark;
    const turned = UNFORESEEN_TURN_RAD[mark.kind as keyof typeof UNFORESEEN_TURN_RAD] * from.sigmaPx;
    return { ...mark, sigmaPx: Math.hypot(AGAIN_PX, turned), followedFrom: from.id };
  });
  return { ...input, views: [first, { ...second, marks }, ...input.views.slice(2)] };
}

function placeOf({ marks }: View, kind: Mark['kind']): readonly [number, number] | null {
  const mark = marks.find((each) => each.kind === kind);
  return mark ? [mark.xPx, mark.yPx] : null;
}

function armRad(view: View): number {
  const [pin, camshaft] = [placeOf(view, 'clevis-pin'), placeOf(view, 'camshaft-end')];
  return pin && camshaft ? Math.atan2(pin[1] - camshaft[1], pin[0] - camshaft[0]) : 0;
}
