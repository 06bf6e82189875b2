// @ts-check
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { cameraAt } from './camera.mjs';
import { finish } from './finish.mjs';
import { render } from './render.mjs';
import { picture, world } from './scene.mjs';
import { sight } from './sight.mjs';
import { allPoints, cameraTruth, markPoints, poseRows, rounded, setTruth } from './truth.mjs';
import { degrees, randomFrom } from './vectors.mjs';

const framesPerSecond = 30;
const frameCount = 135;
const viewFrames = /** @type {const} */ ({ released: 16, applied: 100 });

/** Stroke over time: at rest, out in about 0.4 s with a last soft part, held for a second and a half, back. @param {number} timeS @param {number} fullMm */
function strokeAt(timeS, fullMm) {
  const out = 0.955 * eased((timeS - 1.85) / 0.4) + 0.045 * settled((timeS - 2.07) / 0.09);
  const back = 0.97 * eased((timeS - 3.92) / 0.34) + 0.03 * settled((timeS - 4.12) / 0.08);
  return fullMm * (out - back);
}

/** Least-jerk step from 0 to 1. @param {number} u */
function eased(u) {
  const t = Math.min(1, Math.max(0, u));
  return t * t * t * (10 - 15 * t + 6 * t * t);
}

/** @param {number} u */
const settled = (u) => (u > 0 ? 1 - Math.exp(-u) * (1 + u) : 0);

/** A hand's slow sway and quick tremble: a few sine waves per direction. @param {number} seed */
function handShake(seed) {
  const random = randomFrom(seed);
  const waves = Array.from({ length: 6 }, () =>
    [0.35, 0.8, 1.7, 3.4, 7.2].map((hz) => ({
      hz: hz * (0.85 + 0.3 * random()),
      size: 0.62 / hz ** 0.85,
      phase: 2 * Math.PI * random(),
    })),
  );
  return (/** @type {number} */ timeS) =>
    waves.map((set) =>
      set.reduce((sum, { hz, size, phase }) => sum + size * Math.sin(2 * Math.PI * hz * timeS + phase), 0),
    );
}

/** As the page asks to film: the phone goes a hand's width to and fro along the rod, a little up and down, nearer and farther with it, mm. @param {number} timeS */
function toAndFro(timeS) {
  const wave = (/** @type {number} */ takesS, /** @type {number} */ ahead) =>
    Math.sin((2 * Math.PI * timeS) / takesS + ahead);
  return { asideMm: 46 * wave(2.3, 0), upMm: 9 * wave(3.1, 1), awayMm: 8 * wave(2.7, 2) };
}

/** The brake is kept in the middle while the phone moves, as well as a hand does it. @param {import('./sets.mjs').MediaSet} set */
export function clipCamera(set) {
  const shake = handShake(set.seed + 5);
  const { stand } = set.released;
  return (/** @type {number} */ timeS) => {
    const [a, b, c, d, e, f] = shake(timeS);
    const { asideMm, upMm, awayMm } = toAndFro(timeS);
    const [asideDeg, upDeg] = [asideMm, upMm].map((mm) => degrees(Math.atan2(mm, stand.distanceMm)));
    return cameraAt(
      {
        ...stand,
        distanceMm: stand.distanceMm + awayMm + 4 * a,
        yawDeg: stand.yawDeg + asideDeg + 0.3 * b,
        liftDeg: stand.liftDeg + upDeg + 0.28 * c,
        rollDeg: stand.rollDeg + 0.3 * asideDeg + 0.5 * d,
        turnXdeg: 0.2 * asideDeg + 0.5 * e,
        turnYdeg: 0.2 * upDeg + 0.45 * f,
      },
      set,
      set.lens,
    );
  };
}

/** @param {string} scratch @param {number} index */
const frameFile = (scratch, index) => join(scratch, `frame-${String(index).padStart(3, '0')}.ppm`);

/**
 * Frames found in the scratch folder are taken over, so that a broken run can go on.
 * @param {import('./sets.mjs').MediaSet} set @param {string} scratch @param {string} out
 */
export async function makeClip(set, scratch, out) {
  const face = join(scratch, 'tape-face.png');
  const cameraAtTime = clipCamera(set);
  const moments = Array.from({ length: frameCount }, (_, index) => {
    const timeS = index / framesPerSecond;
    return { index, timeS, strokeMm: strokeAt(timeS, set.strokeMm), camera: cameraAtTime(timeS) };
  });
  const renderEvery = async (/** @type {number} */ first, /** @type {number} */ step) => {
    for (let at = first; at < frameCount; at += step) {
      const { index, strokeMm, camera } = moments[at];
      if (existsSync(frameFile(scratch, index))) continue;
      const scene = picture(set, camera, world(set, strokeMm, set.released.hold, face), { plain: true });
      const smooth = ['+A0.45', '+AM2', '+R1'];
      renameSync(
        await render(scratch, `lane-${first}`, scene, set.lens, { smooth }),
        frameFile(scratch, index),
      );
    }
  };
  await Promise.all([renderEvery(0, 2), renderEvery(1, 2)]);
  const encoder = encode(join(out, 'application.mp4'), set);
  for (const { index } of moments) {
    const { rgb } = finish(readFileSync(frameFile(scratch, index)), set.lens, {
      blurPx: 0.62,
      exposure: 1.5,
      vignette: 0.36,
      greyNoise: 2.0,
      colourNoise: 1.0,
      seed: set.seed + index,
    });
    if (!encoder.stdin.write(rgb)) await once(encoder.stdin, 'drain');
  }
  encoder.stdin.end();
  const [code] = await once(encoder, 'close');
  if (code !== 0) throw new Error(`ffmpeg ended with ${code}`);

  const views = [];
  for (const state of /** @type {const} */ (['released', 'applied'])) {
    const { index, timeS, strokeMm, camera } = moments[viewFrames[state]];
    const solids = world(set, strokeMm, set.released.hold, face);
    const points = await sight(
      scratch,
      `${set.name}-${state}`,
      solids,
      camera,
      allPoints(set, camera, strokeMm, set.released.hold),
    );
    views.push({
      state,
      file: 'application.mp4',
      frameIndex: index,
      timeS: rounded(timeS, 6),
      ...cameraTruth(camera),
      points,
    });
  }
  const frames = moments.map(({ index, timeS, strokeMm, camera }) => {
    const { chamberFace, clevisPin, camshaftEnd } = markPoints(set, camera, strokeMm);
    const points = { chamberFace: chamberFace.px, clevisPin: clevisPin.px, camshaftEnd: camshaftEnd.px };
    return {
      index,
      timeS: rounded(timeS, 6),
      strokeMm: rounded(strokeMm, 3),
      cameraFromChamber: poseRows(camera),
      points,
    };
  });
  return { ...setTruth(set), framesPerSecond, views, frames };
}

/** @param {string} file @param {import('./sets.mjs').MediaSet} set */
function encode(file, { lens: { widthPx, heightPx }, title }) {
  const colour = [
    '-color_primaries',
    'bt709',
    '-color_trc',
    'bt709',
    '-colorspace',
    'bt709',
    '-color_range',
    'tv',
  ];
  return spawn(
    'ffmpeg',
    [
      '-y',
      '-v',
      'error',
      '-f',
      'rawvideo',
      '-pix_fmt',
      'rgb24',
      '-s',
      `${widthPx}x${heightPx}`,
      '-r',
      String(framesPerSecond),
      '-i',
      '-',
      '-vf',
      'scale=out_color_matrix=bt709:out_range=tv',
      '-c:v',
      'libx264',
      '-preset',
      'medium',
      '-crf',
      '24',
      '-bf',
      '2',
      '-g',
      '30',
      '-pix_fmt',
      'yuv420p',
      ...colour,
      '-an',
      '-movflags',
      '+faststart',
      '-metadata',
      `title=${title}`,
      file,
    ],
    { stdio: ['pipe', 'inherit', 'inherit'] },
  );
}
