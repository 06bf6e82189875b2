/** What a motion means, by what the gesture has come to. */
import { type CropRect, rectBetween } from './crop-rect.ts';
import { DIRECT, gearAfter } from './gear.ts';
import type { GestureAct, PointerInput, Scene } from './gesture-act.ts';
import { type Gesture, type GestureStep, type Phase, pairOf, type Touch, touchOf } from './gesture-phase.ts';
import { distanceCss, type FramePoint, frameFromScreen, isOnPicture, ontoPicture } from './view-transform.ts';

/** Below this a hand is not moving, only trembling. */
const STILL_CSS = { mouse: 3, finger: 7 } as const;

export function moved(gesture: Gesture, known: Touch, input: PointerInput, scene: Scene): GestureStep {
  const touches = gesture.touches.map((touch) => (touch === known ? touchOf(input) : touch));
  const next = { ...gesture, touches };
  const { phase } = gesture;
  const still = 'start' in phase && distanceCss(phase.start, input.at) < STILL_CSS[input.hand];
  const dxCss = input.at.xCss - known.at.xCss;
  const dyCss = input.at.yCss - known.at.yCss;
  switch (phase.is) {
    case 'rest':
      return { gesture: next, acts: [] };
    case 'press': {
      if (still) return { gesture: next, acts: [] };
      const fromStart = {
        act: 'pan' as const,
        dxCss: input.at.xCss - phase.start.xCss,
        dyCss: input.at.yCss - phase.start.yCss,
      };
      return { gesture: { ...next, phase: { is: 'pan' } }, acts: [{ act: 'aim', aim: null }, fromStart] };
    }
    case 'pan':
      return { gesture: next, acts: [{ act: 'pan', dxCss, dyCss }] };
    case 'pinch': {
      const from = pairOf(gesture.touches);
      const to = pairOf(touches);
      return { gesture: next, acts: from && to ? [{ act: 'pinch', from, to }] : [] };
    }
    case 'aim':
      return { gesture: next, acts: aiming(input, scene) };
    case 'hold':
      if (!phase.moving && still) return { gesture: next, acts: [] };
      return heldMoved(next, phase, known, input, scene);
    case 'crop':
      return { gesture: next, acts: [{ act: 'draw-crop', rect: cropTo(phase.corner, input, scene) }] };
  }
}

function heldMoved(
  gesture: Gesture,
  hold: Extract<Phase, { is: 'hold' }>,
  known: Touch,
  input: PointerInput,
  scene: Scene,
): GestureStep {
  // A finger's mark starts from where the trembling ended; a mouse's keeps to the pointer from the press on.
  const from = !hold.moving && input.hand === 'mouse' ? hold.start : known.at;
  const dtMs = input.timeMs - known.timeMs;
  const gear = input.hand === 'finger' ? gearAfter(hold.gear, distanceCss(from, input.at), dtMs) : DIRECT;
  const cssPerPx = gear.gearing / scene.view.scale;
  const point = ontoPicture(scene.view, {
    xPx: hold.point.xPx + (input.at.xCss - from.xCss) * cssPerPx,
    yPx: hold.point.yPx + (input.at.yCss - from.yCss) * cssPerPx,
  });
  const begin: readonly GestureAct[] = hold.moving
    ? []
    : [
        { act: 'select', id: hold.id },
        { act: 'move-begin', id: hold.id },
      ];
  return {
    gesture: { ...gesture, phase: { ...hold, point, gear, moving: true } },
    acts: [
      ...begin,
      { act: 'move', id: hold.id, point, hand: input.hand, gearing: gear.gearing },
      { act: 'aim', aim: { hand: input.hand, finger: input.at, point, placing: false } },
    ],
  };
}

export function aiming(input: PointerInput, scene: Scene): readonly GestureAct[] {
  const point = frameFromScreen(scene.view, input.at);
  const aim = { hand: input.hand, finger: input.at, point, placing: true };
  return [{ act: 'aim', aim: isOnPicture(scene.view, point) ? aim : null }];
}

export function cropTo(corner: FramePoint, input: PointerInput, scene: Scene): CropRect {
  return rectBetween(corner, ontoPicture(scene.view, frameFromScreen(scene.view, input.at)));
}
