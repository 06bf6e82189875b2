/** How far a gesture has come. */
import type { Gear } from './gear.ts';
import type { GestureAct, Pair, PointerInput } from './gesture-act.ts';
import type { FramePoint, ScreenPoint } from './view-transform.ts';

export type Phase =
  | { readonly is: 'rest' }
  | { readonly is: 'press'; readonly start: ScreenPoint }
  | { readonly is: 'pan' }
  | { readonly is: 'pinch' }
  | { readonly is: 'aim' }
  | {
      readonly is: 'hold';
      readonly id: string;
      readonly point: FramePoint;
      readonly start: ScreenPoint;
      readonly moving: boolean;
      readonly gear: Gear;
    }
  | { readonly is: 'crop'; readonly corner: FramePoint };

export type Touch = { readonly id: number; readonly at: ScreenPoint; readonly timeMs: number };

export type Gesture = {
  readonly phase: Phase;
  readonly touches: readonly Touch[];
  readonly lastTap: Touch | null;
};

export type GestureStep = { readonly gesture: Gesture; readonly acts: readonly GestureAct[] };

export const NO_GESTURE: Gesture = { phase: { is: 'rest' }, touches: [], lastTap: null };

export function touchOf(input: PointerInput): Touch {
  return { id: input.id, at: input.at, timeMs: input.timeMs };
}

export function pairOf(touches: readonly Touch[]): Pair | null {
  const [a, b] = touches;
  return a && b ? [a.at, b.at] : null;
}
