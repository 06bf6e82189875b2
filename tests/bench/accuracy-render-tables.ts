/** The ray-traced scenes in docs/accuracy.md. */
import type { RenderPairRow, RenderRow } from './accuracy-render-summary.ts';
import { ASKED, mm, table } from './accuracy-tables.ts';

export function renderText(rows: readonly RenderRow[], pairs: readonly RenderPairRow[]): string {
  if (rows.length === 0) return 'Not run yet: `npm run bench:renders`.';
  const corners = pairs.filter(({ cornersThere }) => cornersThere > 0);
  const found = corners.reduce((sum, { cornersFound }) => sum + cornersFound, 0);
  const there = corners.reduce((sum, { cornersThere }) => sum + cornersThere, 0);
  const rms = Math.sqrt(
    corners.reduce((sum, { cornerRmsPx, cornersFound }) => sum + cornerRmsPx ** 2 * cornersFound, 0) / found,
  );
  return `\`npm run bench:renders\`: ${pairs.length} pairs of pictures, 1920 x 1080, ray-traced by POV-Ray from the solids of \`sample-media/make\`,
which know nothing of the engine: hand-held twice, 560 to 1000 mm away, up to about 35 degrees off square, hard or soft light, dirt, blur,
noise, JPEG; no lens distortion. True image points come from the scene's own camera, with a scatter of 1 or 0.25 px added to those of face,
pin, camshaft, rod, graduations, rim and fixed things; points that are hidden are not marked. The corners of the printed target are found
in the picture by the tool itself: ${found} of ${there}, ${rms.toFixed(3)} px (root mean square of x and y). The focal length is stated in whole millimetres as
in a photo file. Marks as in *careful*, but the tape is held anew and off the pin. ${rows[0] ? Math.round(rows[0].cases / rows[0].pairs) : 0} draws of the scatter for each pair: the pairs are few, so
the columns tell of these wheel ends and not of all.

${table<RenderRow>(
  [
    ['reference', (r) => r.reference],
    ['px', (r) => String(r.sigmaPx)],
    ['pairs', (r) => String(r.pairs)],
    ['error, median', (r) => mm(r.errorMedianMm)],
    ['error, 95 %', (r) => (r.error95Mm <= askedMm(r.sigmaPx) ? `**${mm(r.error95Mm)}**` : mm(r.error95Mm))],
    ['largest', (r) => mm(r.errorMostMm)],
    ['U95, median', (r) => mm(r.UMedianMm)],
    ['U95 holds', (r) => `${(100 * r.held).toFixed(0)} %`],
    ['arm angle error, 95 % (deg)', (r) => mm(r.angleError95Deg)],
    ['two-point error, 95 %', (r) => mm(r.twoPoint95Mm)],
    ['refused', (r) => String(r.refused)],
  ],
  rows,
)}

${table<RenderPairRow>(
  [
    ['pair', (p) => p.name],
    ['held', (p) => p.held],
    ['light', (p) => p.light],
    ['dirt', (p) => p.dirt.toFixed(1)],
    ['distance (mm)', (p) => p.distanceMm.toFixed(0)],
    ['off square (deg)', (p) => p.offSquareDeg.toFixed(0)],
    ['true stroke (mm)', (p) => mm(p.strokeMm)],
    ['corners found', (p) => (p.cornersThere === 0 ? '' : `${p.cornersFound} of ${p.cornersThere}`)],
    ['corner error, rms (px)', (p) => (p.cornersFound === 0 ? '' : p.cornerRmsPx.toFixed(3))],
    ['largest, in its own sigma', (p) => (p.cornersFound === 0 ? '' : p.cornerMostSigma.toFixed(1))],
  ],
  pairs,
)}`;
}

function askedMm(sigmaPx: number): number {
  return ASKED.find((asked) => asked.sigmaPx === sigmaPx)?.errorMm ?? Number.NaN;
}
