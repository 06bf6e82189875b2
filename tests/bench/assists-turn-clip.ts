/** A wrench followed through a simulated clip: rests found by the push rod's travel, as a followed clip gives it. */
import { drawFrom } from '../../src/basics/random.ts';
import { phasesOf } from '../../src/measurement/phases.ts';
import { type WrenchSight, wrenchRests } from '../../src/measurement/wrench-clip.ts';
import type { WrenchPicture } from '../../src/measurement/wrench-directions.ts';
import { type SeenWrench, simulateWrench, type WrenchScene } from '../simulation/wrench.ts';

const FRAMES_PER_S = 30;
/** Released, applying, held, releasing. */
const LASTING = [20, 8, 20, 10];
const STROKE_PX = 90;
const SWING_RAD = 0.35;

/** What is put over at the end is a picture each. */
export function clipOf(scene: WrenchScene): SeenWrench {
  const [rest = 0, out = 0, held = 0, back = 0] = LASTING;
  const applications = scene.stepsDeg.length;
  const each = rest + out + held + back;
  const count = applications * each + rest;
  const draw = drawFrom(scene.seed + 1e6);
  const at = Array.from({ length: count }, (_frame, i) => ({ n: Math.floor(i / each), phase: i % each }));
  const shareOut = ({ phase }: (typeof at)[number]) => {
    if (phase < rest) return 0;
    if (phase < rest + out) return (phase - rest) / out;
    return phase < rest + out + held ? 1 : 1 - (phase - rest - out - held) / back;
  };
  // Without play: within one rest the wrench lies still. One spot of it is followed; put over, it is marked anew.
  const inFrames = { ...scene, playDeg: 0, takenAfter: at.map(({ n }) => n) };
  const { pictures, ...more } = simulateWrench({ ...inFrames, spotMm: 0 });
  const putOver = simulateWrench(inFrames).pictures.slice(1 + count);
  const frames = pictures.slice(1, 1 + count);
  const sights = frames.map((frame, i): WrenchSight => {
    const swing = SWING_RAD * shareOut(at[i] as (typeof at)[number]);
    return { centre: frame.centre, tip: turned(frame.tip, frame.centre, swing), arm: frame.arm };
  });
  const points = at.map((place, frame) => ({
    frame,
    timeS: frame / FRAMES_PER_S,
    travel: STROKE_PX * shareOut(place) + draw.normal(0, 0.3),
    u: 0.3,
  }));
  const phases = phasesOf(points, 10);
  if (!phases.ok) throw new Error(phases.failure.code);
  const { focalPx = 1, uLnFocal = 0 } = frames[0] ?? {};
  const middlePx = [960, 540] as const;
  const rests: WrenchPicture[] = wrenchRests(sights, phases.value).map((each) => ({
    ...each,
    focalPx,
    uLnFocal,
    middlePx,
  }));
  return { ...more, pictures: [...rests, ...putOver] };
}

function turned(point: WrenchPicture['tip'], about: WrenchPicture['tip'], rad: number): WrenchPicture['tip'] {
  const [dx, dy] = [point.xPx - about.xPx, point.yPx - about.yPx];
  const [cos, sin] = [Math.cos(rad), Math.sin(rad)];
  return { ...point, xPx: about.xPx + cos * dx - sin * dy, yPx: about.yPx + sin * dx + cos * dy };
}
