import { expect, test } from 'vitest';
import { clipViews } from '../../src/measurement/clip-views.ts';
import { measure } from '../../src/measurement/measure.ts';
import { strokeOverTime } from '../../src/measurement/stroke-over-time.ts';
import { anyClip } from '../simulation/any-clip.ts';
import { simulateClip } from '../simulation/clip-scene.ts';
import { correctedTrack, type Spells } from '../simulation/corrected-clip.ts';

const drawn = anyClip(4, {
  framesPerS: 24,
  handSigmaPx: 1,
  hand: { moveMm: 5, turnRad: 0.005, lastingS: 1 },
});
const scene = simulateClip({
  ...drawn,
  hidden: [],
  lost: 0,
  seedState: 'released',
  course: {
    ...drawn.course,
    begins: 'released',
    strokesMm: drawn.course.strokesMm.slice(0, 1),
    restS: 1,
    heldS: 1,
  },
});
const { truth } = scene;
const last = truth.times.length - 1;
const [application] = truth.travel.applications;
const begin = truth.times.findIndex((t) => t > (application?.begin ?? 0));
const held = truth.times.flatMap((t, i) => (truth.travel.heldMm(t) === null ? [] : [i]));
const strokeMm = held.reduce((sum, i) => sum + (truth.travelMm[i] as number) / held.length, 0);
const at = held[held.length >> 1] as number;

function measured(ofCorrection: Spells['ofCorrection']) {
  const spells: Spells = { ofSeed: [0, begin + 1], ofCorrection, at };
  const track = correctedTrack(scene, spells, 7, drawn.noisePx);
  const views = clipViews(scene.input, track);
  if (!views.ok) throw new Error(views.failure.code);
  const input = { ...scene.input, ...views.value };
  const [two, clip] = [measure(input), strokeOverTime(input, track)];
  if (!two.ok || !clip.ok) throw new Error('not measured');
  return { views: views.value, stroke: two.value.strokeMm, clip: clip.value };
}

/** Measured once for all tests below: that takes a second each. */
const apart = measured([begin + 3, last]);
const together = measured([truth.seedFrame, last]);

test('a pin lost in the application and put right in the held brake: the gap closes, the stroke is within U', () => {
  const lost = correctedTrack(
    scene,
    { ofSeed: [0, begin + 1], ofCorrection: [at, at], at },
    7,
    drawn.noisePx,
  );
  expect(clipViews(scene.input, lost)).toMatchObject({ ok: false });
  const { stroke, clip } = apart;
  expect(Math.abs(stroke.value - strokeMm)).toBeLessThan(stroke.U95);
  expect(clip.gaps.filter(({ kind }) => kind === 'clevis-pin')).toEqual([
    { kind: 'clevis-pin', from: begin + 2, to: begin + 2 },
  ]);
  expect(clip.marked).toEqual([truth.seedFrame, at]);
});

test('one spot followed back to the released brake takes both hands out of the stroke', () => {
  expect(Math.abs(together.stroke.value - strokeMm)).toBeLessThan(together.stroke.U95);
  expect(together.stroke.U95).toBeLessThan(0.8 * apart.stroke.U95);
});

test('the hand that put a frame right counts once, and with its own uncertainty', () => {
  const { views } = together;
  const all = [...views.views, ...views.sideViews].flatMap(({ marks }) => marks);
  const carried = all.filter(({ carriedFrom }) => carriedFrom === 'right');
  expect(carried).toMatchObject([{ kind: 'clevis-pin', sigmaPx: 1, placedBy: 'tracker' }]);
  expect(all.filter(({ followedFrom }) => followedFrom === 'right').length).toBeGreaterThan(1);
});
