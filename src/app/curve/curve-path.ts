/** A curve with its gaps left open, and the band of its uncertainty, as paths in screen pixels. */
import type { Uncertain } from '../../measurement/clip-measurement.ts';

export type CurveFrame = { readonly timeS: number; readonly seen: Uncertain | null };

export type Axes = { readonly xAt: (timeS: number) => number; readonly yAt: (value: number) => number };

type Seen = { readonly timeS: number; readonly seen: Uncertain };

/** A frame alone between two gaps still shows: as a short level stroke. */
const ALONE_CSS = 1.5;

export function curvePath(frames: readonly CurveFrame[], axes: Axes): string {
  return runs(frames)
    .map((run) => {
      const points = run.map(({ timeS, seen }) => place(axes.xAt(timeS), axes.yAt(seen.value)));
      const only = run[0];
      if (points.length > 1 || !only) return `M${points.join('L')}`;
      const y = axes.yAt(only.seen.value);
      return `M${place(axes.xAt(only.timeS) - ALONE_CSS, y)}L${place(axes.xAt(only.timeS) + ALONE_CSS, y)}`;
    })
    .join('');
}

export function bandPath(frames: readonly CurveFrame[], axes: Axes): string {
  return runs(frames)
    .map((run) => {
      const edge = (sign: 1 | -1) =>
        run.map(({ timeS, seen }) => place(axes.xAt(timeS), axes.yAt(seen.value + sign * seen.u)));
      return `M${[...edge(1), ...edge(-1).reverse()].join('L')}Z`;
    })
    .join('');
}

function runs(frames: readonly CurveFrame[]): Seen[][] {
  const found: Seen[][] = [];
  let open: Seen[] | null = null;
  for (const { timeS, seen } of frames) {
    if (!seen) {
      open = null;
      continue;
    }
    if (!open) {
      open = [];
      found.push(open);
    }
    open.push({ timeS, seen });
  }
  return found;
}

function place(x: number, y: number): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
