/**
 * What fingers and mouse mean on the picture. Data in, data out: the state so far, one pointer event and what is on the
 * screen give the next state and what is to be done.
 *
 * One finger or the mouse takes hold of the nearest mark within reach and moves it by as much as the hand moves, a finger
 * geared down. Elsewhere it pans, or places, or draws the crop. A mouse places where it is clicked and pans where it is
 * dragged; a finger places where it is lifted. A second finger takes back what the first began and pinches.
 */

import { DIRECT, GEAR_AT_REST } from './gear.ts';
import type { GestureAct, PointerInput, Scene } from './gesture-act.ts';
import { aiming, cropTo, moved } from './gesture-move.ts';
import { type Gesture, type GestureStep, type Phase, type Touch, touchOf } from './gesture-phase.ts';
import { grabbed } from './grab.ts';
import { distanceCss, frameFromScreen, isOnPicture, ontoPicture } from './view-transform.ts';

const DOUBLE_TAP_MS = 350;
const DOUBLE_TAP_CSS = 24;
const LEAST_CROP_PX = 4;

export function nextGesture(gesture: Gesture, input: PointerInput, scene: Scene): GestureStep {
  const known = gesture.touches.find((touch) => touch.id === input.id);
  if (input.change === 'down') return known ? { gesture, acts: [] } : pressed(gesture, input, scene);
  if (input.change === 'leave') return { gesture, acts: known ? [] : [{ act: 'aim', aim: null }] };
  if (!known) return { gesture, acts: hovering(gesture, input, scene) };
  if (input.change === 'move') return moved(gesture, known, input, scene);
  return lifted(gesture, input, scene);
}

function pressed(gesture: Gesture, input: PointerInput, scene: Scene): GestureStep {
  if (gesture.touches.length >= 2) return { gesture, acts: [] };
  const touches = [...gesture.touches, touchOf(input)];
  if (touches.length === 2)
    return { gesture: { phase: { is: 'pinch' }, touches, lastTap: null }, acts: takenBack(gesture.phase) };
  const { phase, acts } = firstPress(input, scene);
  return { gesture: { ...gesture, phase, touches }, acts };
}

function firstPress(input: PointerInput, scene: Scene): { phase: Phase; acts: readonly GestureAct[] } {
  const { at, hand } = input;
  if (scene.mode === 'crop')
    return {
      phase: { is: 'crop', corner: ontoPicture(scene.view, frameFromScreen(scene.view, at)) },
      acts: [],
    };
  const mark = grabbed(scene.view, scene.marks, at, { hand, placing: scene.mode === 'place' });
  if (mark) {
    const gear = hand === 'finger' ? GEAR_AT_REST : DIRECT;
    const point = { xPx: mark.xPx, yPx: mark.yPx };
    return { phase: { is: 'hold', id: mark.id, point, start: at, moving: false, gear }, acts: [] };
  }
  if (scene.mode === 'place' && hand === 'finger')
    return { phase: { is: 'aim' }, acts: aiming(input, scene) };
  return { phase: { is: 'press', start: at }, acts: [] };
}

function lifted(gesture: Gesture, input: PointerInput, scene: Scene): GestureStep {
  const touches = gesture.touches.filter((touch) => touch.id !== input.id);
  const phase: Phase = touches.length > 0 ? { is: 'pan' } : { is: 'rest' };
  const next: Gesture = { phase, touches, lastTap: null };
  if (input.change === 'cancel') return { gesture: next, acts: takenBack(gesture.phase) };
  const off: GestureAct = { act: 'aim', aim: null };
  switch (gesture.phase.is) {
    case 'press':
      return tapped(next, gesture.lastTap, input, scene);
    case 'aim': {
      const point = frameFromScreen(scene.view, input.at);
      const place: GestureAct = { act: 'place', point, hand: input.hand };
      return { gesture: next, acts: isOnPicture(scene.view, point) ? [off, place] : [off] };
    }
    case 'hold':
      return gesture.phase.moving
        ? { gesture: next, acts: [off, { act: 'move-end', id: gesture.phase.id }] }
        : { gesture: next, acts: [{ act: 'select', id: gesture.phase.id }] };
    case 'crop': {
      const rect = cropTo(gesture.phase.corner, input, scene);
      const large = rect.widthPx >= LEAST_CROP_PX && rect.heightPx >= LEAST_CROP_PX;
      const clear: GestureAct = { act: 'draw-crop', rect: null };
      return { gesture: next, acts: large ? [clear, { act: 'crop', rect }] : [clear] };
    }
    default:
      return { gesture: next, acts: [] };
  }
}

function tapped(gesture: Gesture, lastTap: Touch | null, input: PointerInput, scene: Scene): GestureStep {
  if (scene.mode === 'place') {
    const point = frameFromScreen(scene.view, input.at);
    const inside = isOnPicture(scene.view, point);
    return { gesture, acts: inside ? [{ act: 'place', point, hand: input.hand }] : [] };
  }
  const again =
    lastTap !== null &&
    input.timeMs - lastTap.timeMs < DOUBLE_TAP_MS &&
    distanceCss(lastTap.at, input.at) < DOUBLE_TAP_CSS;
  if (again) return { gesture, acts: [{ act: 'zoom-in', at: input.at }] };
  return { gesture: { ...gesture, lastTap: touchOf(input) }, acts: [{ act: 'select', id: null }] };
}

function takenBack(phase: Phase): readonly GestureAct[] {
  const off: GestureAct = { act: 'aim', aim: null };
  if (phase.is === 'crop') return [{ act: 'draw-crop', rect: null }];
  if (phase.is === 'hold' && phase.moving) return [off, { act: 'move-cancel', id: phase.id }];
  return [off];
}

function hovering(gesture: Gesture, input: PointerInput, scene: Scene): readonly GestureAct[] {
  const aims = input.change === 'move' && input.hand === 'mouse' && gesture.touches.length === 0;
  return aims && scene.mode === 'place' ? aiming(input, scene) : [];
}
