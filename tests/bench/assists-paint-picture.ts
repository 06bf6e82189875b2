/** A painted scene as the judge gets it: the region of the picture, and where marks say that the rod is. */

import type { Mark } from '../../src/marks/mark.ts';
import { type RodInPicture, rodInPicture } from '../../src/measurement/rod-in-picture.ts';
import { type PaintRegion, paintBox } from '../../src/vision/paint-region.ts';
import { cameraPicture } from './assists-paint-camera.ts';
import type { SceneDraw } from './assists-paint-draws.ts';
import { eyeOf, lightOn, paintSeenMm, seenFrom } from './assists-paint-render.ts';
import { sceneSolids } from './assists-paint-scene.ts';
import { sub, unit, type V } from './assists-paint-solids.ts';

export type PaintPicture = {
  readonly region: PaintRegion;
  readonly rod: RodInPicture;
  /** How much paint is to be seen, by rays. */
  readonly paintMm: number;
};

/** The picture is far larger than the region, which lies about its middle. */
const MIDDLE_PX = 4000;

export function paintPicture(scene: SceneDraw): PaintPicture {
  const rod = markedRod(scene);
  const box = paintBox(rod, { widthPx: 2 * MIDDLE_PX, heightPx: 2 * MIDDLE_PX });
  const { xPx, yPx, widthPx, heightPx } = box;
  const centred = { leftPx: xPx - MIDDLE_PX, topPx: yPx - MIDDLE_PX, widthPx, heightPx };
  const made = sceneSolids(scene);
  const eye = eyeOf(scene);
  const rgba = cameraPicture(scene, lightOn(scene, made.solids, eye, centred), centred);
  return { region: { ...box, rgba }, rod, paintMm: paintSeenMm(made, eye, scene.rodRadiusMm) };
}

/** Marks with a hand's scatter; half of the scenes have been measured, half have marks only. */
function markedRod(scene: SceneDraw): RodInPicture {
  const eye = eyeOf(scene);
  const { draw, marks, rodRadiusMm, pinXmm } = scene;
  const toEye = unit(sub(eye.at, [0, 0, 0]));
  const across = unit([0, toEye[1], toEye[2]]);
  const seen = (point: V) => seenFrom(eye, point);
  const near = (xMm: number): V => [xMm, rodRadiusMm * across[1], rodRadiusMm * across[2]];
  const mark = (kind: 'chamber-face' | 'clevis-pin' | 'rod-line', point: V): Mark => {
    const [xPx, yPx] = seen(point);
    const off = () => MIDDLE_PX + draw.normal(0, marks.sigmaPx);
    return { kind, id: kind, xPx: xPx + off(), yPx: yPx + off(), sigmaPx: marks.sigmaPx, placedBy: 'hand' };
  };
  const placed = [mark('chamber-face', near(0)), mark('clevis-pin', [pinXmm, 0, -25])];
  if (draw.uniform(0, 1) < 0.5) placed.push(mark('rod-line', near(draw.uniform(25, 60))));
  const adjusted = marks.measured ? measuredRod(scene, seen) : null;
  const rod = rodInPicture({ state: 'applied', marks: placed }, adjusted);
  if (!rod.ok) throw new Error(rod.failure.code);
  return rod.value;
}

/** As an adjustment with good marks gives it. */
function measuredRod({ draw, stand }: SceneDraw, seen: (point: V) => readonly [number, number]) {
  const [from, to] = [seen([0, 0, 0]), seen([30, 0, 0])];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const turn = Math.atan2(dy, dx) + draw.normal(0, 0.01);
  return {
    way: [Math.cos(turn), Math.sin(turn)] as const,
    pxPerMm: (Math.hypot(dx, dy) / 30) * (1 + draw.normal(0, 0.02)),
    halfWidthPx: 7.94 * stand.pxPerMm * (1 + draw.normal(0, 0.03)),
  };
}
