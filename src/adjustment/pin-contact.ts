/**
 * A tape or a printed target that lies on the end of the clevis pin: one equation a view.
 *
 * Model    gap / CONTACT_MM; target: target-points.ts; tape, at the pin's place along the axis:
 *          gap = zp - (z0 + t tan b + c g(t)),  t = (px - x0) / cos a
 *          z0, x0: depth and place of its zero; a, b: its tilts in the plane and out of it; c, g: its bow in depth (tape-point.ts);
 *          zp: depth of the pin's end.
 * Assumes  what touches does so in every view that shows it.
 */
import type { Equations } from './equations.ts';
import type { Layout } from './layout.ts';
import { CONTACT_MM } from './priors.ts';
import type { Problem } from './problem.ts';
import { bowAt, TAPE_BOW } from './tape-point.ts';
import { type PinGap, targetGap } from './target-points.ts';

export function addContacts(
  equations: Equations,
  x: Float64Array,
  { views, references, hand }: Problem,
  layout: Layout,
): void {
  for (const [i, { state }] of views.entries()) {
    const pin = layout.pins[state] as number;
    const [tape, target] = [layout.tapes[i], layout.targets[i]];
    if (references.tape?.touchesPin && typeof tape === 'number')
      close(equations, tapeGap(tape, pin, x, layout));
    if (references.target?.touchesPin && typeof target === 'number')
      close(equations, targetGap(target, pin, x, layout, hand));
  }
}

function tapeGap(tape: number, pin: number, x: Float64Array, layout: Layout): PinGap {
  const [a, b] = [x[tape + 3] as number, x[tape + 4] as number];
  const [slope, along] = [Math.tan(b), 1 / Math.cos(a)];
  const t = ((x[pin] as number) - (x[tape] as number)) * along;
  const { share, byMm } = bowAt(t);
  const bow = x[tape + TAPE_BOW] as number;
  const byT = slope + bow * byMm;
  return {
    gapMm: (x[layout.pinDepth] as number) - ((x[tape + 2] as number) + t * slope + bow * share),
    by: [
      { index: layout.pinDepth, d: 1 },
      { index: pin, d: -along * byT },
      { index: tape, d: along * byT },
      { index: tape + 2, d: -1 },
      { index: tape + 3, d: -t * Math.tan(a) * byT },
      { index: tape + 4, d: -t * (1 + slope * slope) },
      { index: tape + TAPE_BOW, d: -share },
    ],
  };
}

function close(equations: Equations, { gapMm, by }: PinGap): void {
  for (const { index, d } of by) equations.add(index, d / CONTACT_MM);
  equations.close(gapMm / CONTACT_MM, 'depth');
}
