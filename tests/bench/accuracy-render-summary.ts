/** What the ray-traced pairs come to, as kept in docs/accuracy/renders.json and renders-pairs.json. */
import { z } from 'zod';
import { degFromRad } from '../../src/basics/units.ts';
import type { Case } from './accuracy-case.ts';
import type { FoundCorner } from './accuracy-render-sample.ts';
import type { RenderedPair } from './accuracy-render-truth.ts';
import { quantile } from './accuracy-summary.ts';

export const renderRowSchema = z.strictObject({
  name: z.string(),
  reference: z.string(),
  sigmaPx: z.number(),
  pairs: z.number(),
  cases: z.number(),
  refused: z.number(),
  errorMedianMm: z.number(),
  error95Mm: z.number(),
  errorMostMm: z.number(),
  UMedianMm: z.number(),
  held: z.number(),
  angleError95Deg: z.number(),
  angleHeld: z.number(),
  twoPoint95Mm: z.number(),
});

export type RenderRow = z.infer<typeof renderRowSchema>;

export const renderPairSchema = z.strictObject({
  name: z.string(),
  held: z.string(),
  light: z.string(),
  dirt: z.number(),
  distanceMm: z.number(),
  offSquareDeg: z.number(),
  strokeMm: z.number(),
  cornersThere: z.number(),
  cornersFound: z.number(),
  cornerRmsPx: z.number(),
  cornerMostSigma: z.number(),
});

export type RenderPairRow = z.infer<typeof renderPairSchema>;

export function renderRowOf(
  reference: string,
  sigmaPx: number,
  pairs: number,
  cases: readonly Case[],
): RenderRow {
  const measured = cases.flatMap(({ measured: m }) => ('refused' in m ? [] : [m]));
  const errors = measured.map(({ errorMm }) => Math.abs(errorMm));
  const angles = measured.flatMap(({ angleErrorRad: error, angleURad: U }) =>
    error === null || U === null ? [] : [{ error: Math.abs(error), U }],
  );
  return {
    name: `${reference}, ${sigmaPx} px`,
    reference,
    sigmaPx,
    pairs,
    cases: cases.length,
    refused: cases.length - measured.length,
    errorMedianMm: quantile(errors, 0.5),
    error95Mm: quantile(errors, 0.95),
    errorMostMm: quantile(errors, 1),
    UMedianMm: quantile(
      measured.map(({ UMm }) => UMm),
      0.5,
    ),
    held: measured.filter(({ errorMm, UMm }) => Math.abs(errorMm) <= UMm).length / measured.length,
    angleError95Deg: degFromRad(
      quantile(
        angles.map(({ error }) => error),
        0.95,
      ),
    ),
    angleHeld: angles.filter(({ error, U }) => error <= U).length / angles.length,
    twoPoint95Mm: quantile(
      cases.map(({ twoPointErrorMm }) => Math.abs(twoPointErrorMm)),
      0.95,
    ),
  };
}

/** Corners as found against where they truly are. */
export function renderPairOf(pair: RenderedPair, found: readonly (readonly FoundCorner[])[]): RenderPairRow {
  const offs = pair.views.flatMap((view, i) =>
    (found[i] ?? []).flatMap(({ marker, corner, xPx, yPx, sigmaPx }) => {
      const true_ = view.targetCorners.find((c) => c.marker === marker && c.corner === corner);
      if (!true_) throw new Error(`Marker ${marker} was found where there is none`);
      return [xPx - true_.px[0], yPx - true_.px[1]].map((off) => ({ off, inSigma: Math.abs(off) / sigmaPx }));
    }),
  );
  const { held, light, dirt, distanceMm, strokeMm } = pair;
  return {
    name: String(pair.number),
    held,
    light,
    dirt,
    distanceMm,
    strokeMm,
    offSquareDeg: Math.max(...pair.views.map((view) => view.offSquareDeg)),
    cornersThere: pair.views.reduce((sum, view) => sum + view.targetCorners.length, 0),
    cornersFound: offs.length / 2,
    cornerRmsPx: Math.sqrt(offs.reduce((sum, { off }) => sum + off * off, 0) / Math.max(1, offs.length)),
    cornerMostSigma: Math.max(0, ...offs.map(({ inSigma }) => inSigma)),
  };
}
