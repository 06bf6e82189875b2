/**
 * npm run bench:accuracy: seeded simulated wheel ends of every reference kind through the engine; writes docs/accuracy.md.
 * Scenes: tests/simulation/scene.ts. Options: --scenes N for each row (default 300).
 */
import { writeFileSync } from 'node:fs';
import { decide } from '../../src/finding/decision.ts';
import { type Limit, limitFor } from '../../src/finding/limit.ts';
import { US_RULE_SET } from '../../src/finding/rule-sets.ts';
import { measure } from '../../src/measurement/measure.ts';
import { type ReferenceKind, type SceneOptions, simulate } from '../simulation/scene.ts';

const LIMIT_MM = 50.8;
const limit = limitOf30();

const given = process.argv.indexOf('--scenes');
const scenes = given > 0 ? Number(process.argv[given + 1]) : 300;

const kinds: readonly ReferenceKind[] = [
  'tape+band',
  'clamp-band',
  'tape+arm',
  'tape',
  'arm-length',
  'distance',
];

function limitOf30(): Limit {
  const chamber = {
    family: 'clamp',
    type: '30',
    strokeClass: 'standard',
    ratedStrokeMm: null,
    markedLimitMm: null,
  } as const;
  const found = limitFor(chamber, US_RULE_SET);
  if (!found.ok) throw new Error(found.failure.code);
  return found.value;
}

type Row = {
  readonly reference: ReferenceKind;
  readonly camera: string;
  readonly sigmaPx: number;
  readonly refused: number;
  readonly errors: readonly number[];
  readonly expanded: readonly number[];
  readonly held: number;
  readonly angleErrorsDeg: readonly number[];
  readonly anglesHeld: number;
  readonly overCalledWithin: number;
  readonly withinCalledOver: number;
  readonly notDecided: number;
};

function study(reference: ReferenceKind, sigmaPx: number, cameraStill: boolean): Row {
  const [errors, expanded, angleErrorsDeg]: [number[], number[], number[]] = [[], [], []];
  let [refused, held, anglesHeld, overCalledWithin, withinCalledOver, notDecided] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < scenes; i++) {
    const options: SceneOptions = {
      seed: 1_000_003 + i,
      reference,
      sigmaPx,
      cameraStill,
      rodMarks: true,
      offSquareDeg: 25,
      distanceMm: [508, 1016],
    };
    const { input, truth } = simulate(options);
    const result = measure(input);
    if (!result.ok) {
      refused++;
      continue;
    }
    const { strokeMm, armAngleAppliedRad } = result.value;
    const error = strokeMm.value - truth.strokeMm;
    errors.push(Math.abs(error));
    expanded.push(strokeMm.U95);
    if (Math.abs(error) <= strokeMm.U95) held++;
    if (armAngleAppliedRad) {
      const offRad = Math.abs(armAngleAppliedRad.value - truth.armAngleAppliedRad);
      angleErrorsDeg.push((offRad * 180) / Math.PI);
      if (offRad <= armAngleAppliedRad.U95) anglesHeld++;
    }
    const { outcome } = decide({
      measurement: result.value,
      limit,
      ruleSet: US_RULE_SET,
      sights: { released: null, applied: null },
    });
    if (outcome === 'not decided') notDecided++;
    if (outcome === 'within limit' && truth.strokeMm > LIMIT_MM) overCalledWithin++;
    if (outcome === 'over limit' && truth.strokeMm <= LIMIT_MM) withinCalledOver++;
  }
  return {
    reference,
    camera: cameraStill ? 'stands still' : 'hand-held',
    sigmaPx,
    refused,
    errors,
    expanded,
    held,
    angleErrorsDeg,
    anglesHeld,
    overCalledWithin,
    withinCalledOver,
    notDecided,
  };
}

function quantile(values: readonly number[], share: number): string {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN).toFixed(2);
}

function line(row: Row): string {
  const measured = row.errors.length;
  return [
    row.reference,
    row.camera,
    row.sigmaPx,
    quantile(row.errors, 0.5),
    quantile(row.errors, 0.95),
    quantile(row.expanded, 0.5),
    `${((100 * row.held) / measured).toFixed(1)} %`,
    quantile(row.angleErrorsDeg, 0.95),
    `${((100 * row.anglesHeld) / measured).toFixed(1)} %`,
    row.overCalledWithin,
    row.withinCalledOver,
    `${((100 * row.notDecided) / measured).toFixed(0)} %`,
    row.refused,
  ].join(' | ');
}

const rows: Row[] = [];
for (const reference of kinds)
  for (const cameraStill of [false, true])
    for (const sigmaPx of [1, 0.25]) {
      const row = study(reference, sigmaPx, cameraStill);
      rows.push(row);
      console.log(line(row));
    }

const text = `# Accuracy

Written by \`npm run bench:accuracy\`; ${scenes} seeded scenes for each row, the same seeds in every row.

## How the figures were obtained

Simulated wheel ends (\`tests/simulation/scene.ts\`, geometry written apart from the engine): 1920 x 1080 pictures, focal length 0.70 to
0.85 of the width and known to 3 %, camera 508 to 1016 mm (20 to 40 in) away, up to 25 degrees off square in each of two directions
(35 in all), any hand; arms of 5 to 6 1/2 in, strokes 25 to 70 mm; depths, tape tilts, lens and marks drawn at random. Marks: face, pin,
camshaft end, two points of the rod, and a whole-inch graduation every inch, or ten points of the rim, or two ends of 150 mm. Hand-held:
the second picture from about 3 degrees and some centimetres elsewhere, the tape held anew. Errors and U in millimetres; limit 50.8 mm.
1/16 in is 1.59 mm, 1/32 in 0.79 mm.

| reference | camera | mark noise (px) | error, median | error, 95 % | U95, median | U95 holds the truth | arm angle error, 95 % (deg) | its U95 holds | over called within | within called over | not decided | refused |
| --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${rows.map((row) => `| ${line(row)} |`).join('\n')}

## What follows

- The clamp band is the best single reference, tape and band together the best of all: the rim gives the direction of view.
- Two hand-held pictures with a tape alone are weak: the tape's tilt against the chamber axis is known to a few degrees only, and it
  differs between the pictures. The engine says so by a large U95, and the finding is then more often 'not decided'.
- A phone photo of 12 megapixels has about twice the pixels per inch of these scenes: hand marks of 1 px there lie between the rows.
- Arm length or one distance alone is a last resort: large U95. Of two hand-held pictures with a distance alone the linear covariance is too
  small (the true distribution has two humps): the app says so and gives no finding there.
- A pin mark that slips along the rod is controlled by nothing but a stated arm length: the marks cannot tell it from a stroke.
- The guard band allows a wrong finding in 1 of 20 cases right at the limit; counts above are out of all scenes.
`;
writeFileSync(new URL('../../docs/accuracy.md', import.meta.url), text);
