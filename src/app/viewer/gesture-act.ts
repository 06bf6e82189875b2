/** What goes into a gesture and what comes out of it. */
import type { Hand } from '../../marks/placement.ts';
import type { CropRect } from './crop-rect.ts';
import type { FramePoint, ScreenPoint, View } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';

export type PointerHand = Exclude<Hand, 'keys'>;
export type PointerInput = {
  readonly change: 'down' | 'move' | 'up' | 'cancel' | 'leave';
  readonly id: number;
  readonly hand: PointerHand;
  readonly at: ScreenPoint;
  readonly timeMs: number;
};

export type Mode = 'look' | 'place' | 'crop';
export type Scene = { readonly view: View; readonly marks: readonly ViewerMark[]; readonly mode: Mode };

/** `placing` tells a mark that is not there yet from one that is being moved. */
export type Aim = {
  readonly hand: Hand;
  readonly finger: ScreenPoint;
  readonly point: FramePoint;
  readonly placing: boolean;
};

export type GestureAct =
  | { readonly act: 'pan'; readonly dxCss: number; readonly dyCss: number }
  | { readonly act: 'pinch'; readonly from: Pair; readonly to: Pair }
  | { readonly act: 'zoom-in'; readonly at: ScreenPoint }
  | { readonly act: 'select'; readonly id: string | null }
  | { readonly act: 'aim'; readonly aim: Aim | null }
  | { readonly act: 'place'; readonly point: FramePoint; readonly hand: PointerHand }
  | { readonly act: 'move-begin'; readonly id: string }
  | {
      readonly act: 'move';
      readonly id: string;
      readonly point: FramePoint;
      readonly hand: PointerHand;
      readonly gearing: number;
    }
  | { readonly act: 'move-cancel'; readonly id: string }
  | { readonly act: 'move-end'; readonly id: string }
  | { readonly act: 'draw-crop'; readonly rect: CropRect | null }
  | { readonly act: 'crop'; readonly rect: CropRect };

export type Pair = readonly [ScreenPoint, ScreenPoint];
