/**
 * How far a mark moves for a finger's motion: slow motion is geared down to set a point to a fraction of a screen pixel,
 * quick motion carries the mark along.
 *
 * Model    speed   <- speed + (|step| / dt - speed) * (1 - exp(-dt / 60 ms)): touch positions come in whole pixels,
 *                  so one step alone says little about the speed
 *          gearing = 1/4 up to 120 px/s, 1 from 700 px/s on, straight in between
 * Source   common practice (pointer acceleration), no source: constants by trial.
 */
export type Gear = { readonly speedCssPerS: number; readonly gearing: number };

const FINE = 0.25;
const SLOW_CSS_PER_S = 120;
const QUICK_CSS_PER_S = 700;
const SMOOTHING_MS = 60;

export const GEAR_AT_REST: Gear = { speedCssPerS: 0, gearing: FINE };
export const DIRECT: Gear = { speedCssPerS: 0, gearing: 1 };

export function gearAfter(gear: Gear, stepCss: number, dtMs: number): Gear {
  if (dtMs <= 0) return gear;
  const weight = 1 - Math.exp(-dtMs / SMOOTHING_MS);
  const speedCssPerS = gear.speedCssPerS + ((1000 * stepCss) / dtMs - gear.speedCssPerS) * weight;
  const share = (speedCssPerS - SLOW_CSS_PER_S) / (QUICK_CSS_PER_S - SLOW_CSS_PER_S);
  return { speedCssPerS, gearing: FINE + (1 - FINE) * Math.min(1, Math.max(0, share)) };
}
