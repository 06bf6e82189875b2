/** Where the phases of an application lie on the chart. */
import { middleOf } from '../../basics/middle.ts';
import type { Application, CurvePoint, Phase } from '../../measurement/clip-measurement.ts';
import type { CurveScale } from './curve-scale.ts';

export function phaseOf({ phases }: Application, kind: Phase['kind']): Phase | null {
  return phases.find((phase) => phase.kind === kind) ?? null;
}

/** A frame before the first or after the last counts as that one. */
export function xOfFrame(curve: readonly CurvePoint[], scale: CurveScale, frame: number): number {
  return scale.xAt(curve[Math.min(curve.length - 1, Math.max(0, frame))]?.timeS ?? 0);
}

/** Where the line of a phase at rest is drawn: the middle one of its frames. */
export function levelMm(curve: readonly CurvePoint[], { from, to }: Phase): number {
  const seen = curve.slice(from, to + 1).flatMap(({ stroke }) => (stroke ? [stroke.value] : []));
  return middleOf(seen) ?? 0;
}

/** A guess a little wide: it only sets how wide a line is broken and what may stand beside what. */
export const textWidthGuessCss = (text: string, sizeCss: number) => 0.42 * sizeCss * text.length;
