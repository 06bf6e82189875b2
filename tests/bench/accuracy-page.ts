/** docs/accuracy.md and its plot, written from what the benches kept. */
import { writeFileSync } from 'node:fs';
import { GUARD_FACTOR } from '../../src/finding/guard-band.ts';
import { allCells, nameOf } from './accuracy-cells.ts';
import { keptNear, keptRenderPairs, keptRenders, keptRows } from './accuracy-kept.ts';
import { metText } from './accuracy-met.ts';
import { NEAR_MM, type NearCell } from './accuracy-near.ts';
import { plotOf } from './accuracy-plot.ts';
import { renderText } from './accuracy-render-tables.ts';
import type { Row } from './accuracy-summary.ts';
import {
  ASKED,
  budgetTable,
  findingTable,
  mm,
  nearByReferenceTable,
  nearTable,
  squarenessTable,
  strokeTable,
  summaryTable,
} from './accuracy-tables.ts';

const DOCS = new URL('../../docs/', import.meta.url);
const MAIN_KINDS = ['target+band', 'target', 'tape+band', 'tape', 'clamp-band'];

export function writePage(): void {
  const rows = inOrder(keptRows.read());
  const rendered = [...keptRenderPairs.read()].sort((a, b) => Number(a.name) - Number(b.name));
  writeFileSync(new URL('accuracy.svg', DOCS), plotOf(rows));
  writeFileSync(
    new URL('accuracy.md', DOCS),
    pageOf(rows, keptNear.read(), renderText(keptRenders.read(), rendered)),
  );
}

function pageOf(rows: readonly Row[], near: readonly NearCell[], renders: string): string {
  const counts = [...new Set(rows.map(({ scenes }) => scenes))].sort((a, b) => a - b);
  const careful = rows.filter(({ way, cameraStill }) => way === 'careful' && !cameraStill);
  return `# Accuracy

Written by \`npm run bench:accuracy\` from [accuracy/](accuracy/); ${counts.join(' or ')} seeded scenes for each row, the same seeds in every row.

## In short

Error of the stroke not exceeded in 95 % of cases (mm). Asked: ${ASKED.map(({ inches, errorMm, sigmaPx }) => `${inches} (${mm(errorMm)} mm) with marks of ${sigmaPx} px`).join(', ')}; **met**.

${summaryTable(rows)}

${metText(rows)}

![95 % error by reference, adjustment and two-point scale](accuracy.svg)

${HOW_OBTAINED}

${ASKED.map(
  ({ sigmaPx, errorMm, inches }) => `## Marks of ${sigmaPx} px: asked ${inches}

(<) and (>): outside what is asked, for U95 93 to 98 % of cases, for the arm angle 1 degree.

${strokeTable(
  rows.filter((row) => row.sigmaPx === sigmaPx),
  errorMm,
)}`,
).join('\n\n')}

## Findings

Strokes of 25 to 70 mm against a limit of 50.8 mm; both noises and both cameras together.

${findingTable(rows)}

${nearText(near)}

## Ray-traced pictures

${renders}

## By angle off square

Careful, hand-held; angle between the camera's axis and the pin's, degrees; errors in mm.

${squarenessTable(careful.filter(({ reference }) => MAIN_KINDS.includes(reference)))}

## Where the uncertainty comes from

Careful, hand-held: mean share of each group in the variance of the stroke, as the engine states it.

${budgetTable(careful)}
`;
}

const HOW_OBTAINED = `## How the figures were obtained

Simulated wheel ends (\`tests/simulation/\`, geometry written apart from the engine): 1920 x 1080 pictures, focal length 0.70 to 0.85 of
the width and stated to 3 %, camera 508 to 1016 mm (20 to 40 in) away, up to 25 degrees off square in each of two directions (35 in all),
any hand; arms of 5 to 6 1/2 in, strokes 25 to 70 mm; depths, tilts, lens and marks drawn at random, normal where not said otherwise.
Hand-held: the second picture from about 3 degrees and some centimetres elsewhere. Stands still: one camera position for both.

- **plain**: one mark each of face, pin and camshaft end, two of the rod; a whole-inch graduation every inch, or ten points of the rim, or
  the two ends of 150 mm, or the corners of the printed target (found to 0.2 px in every row). Tape and target are held anew for the
  second picture, tape tilts 3.4 degrees, target 2.9 (standard deviations); band diameter from a table (1 mm). A tape's print drifts by
  up to 0.5 mm (uniform; accuracy class II up to a metre) from the first to the last graduation marked, with a wave of up to 0.1 mm and 0.05 mm
  for each stroke on top; the blade is an arc with a sagitta of 2.5 mm (standard deviation) over a foot.
- **careful**, as the tool advises: sixteen fixed things found in both pictures by the tool (0.4 px; by hand, where it finds
  none); tape or target lies on the end of the clevis pin (gap 0.8 mm,
  tilt 2.3 degrees) and stays in place; the rim of the clamp band is marked in every case, for the direction of view: its diameter is
  known to 30 mm only, that is not at all, where the row does not name the band, else by caliper (0.3 mm); where the band is
  the scale, the pin's standing out is measured (1.5 mm). Marks of 1 px: face and pin set three times, twenty points of
  the rim, graduations every inch. Marks of 0.25 px, as an assist sets them: once, forty points, graduations every quarter inch.
- **calibrated**: careful, with a camera profile (focal length 0.3 % and 0.4 % for focusing anew, centre 3 px, k1 and k2 0.003), the lens
  any.
- **two-point scale**: what people do without a model, on the same marks: mm per pixel from the two marks of the reference that are
  farthest apart, in each picture; stroke = difference of the two face-to-pin lengths. Of two references the one along the rod is taken.

What simulation cannot tell: whether real tapes, cards, brakes and hands are as the drawn ones. The spreads are common practice without a
source, and the engine's own priors are of the same kind (\`src/adjustment/priors.ts\`).`;

function nearText(near: readonly NearCell[]): string {
  const count = near.flatMap(({ bins }) => bins).reduce((sum, { cases }) => sum + cases, 0);
  if (count === 0) return '### Near the limit\n\nNot run yet: `npm run bench:accuracy -- --near`.';
  return `### Near the limit

${count} cases, plain, both noises, both cameras, all references but an arm length or a distance alone; true stroke within ${NEAR_MM} mm of the limit, uniform. A finding is given
where the limit is ${GUARD_FACTOR} standard uncertainties away. Expected: the count if the errors were normal with the u stated case by case.

${nearTable(near)}

${nearByReferenceTable(near)}`;
}

/** As the cells are listed, whatever order they were run in; what is no longer studied is left out. */
function inOrder(rows: readonly Row[]): readonly Row[] {
  const order = allCells().map(nameOf);
  return rows
    .filter(({ name }) => order.includes(name))
    .sort((a, b) => order.indexOf(a.name) - order.indexOf(b.name));
}
