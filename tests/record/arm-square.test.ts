import { expect, test } from 'vitest';
import { radFromDeg } from '../../src/basics/units.ts';
import { pastSquare } from '../../src/record/arm-square.ts';
import { inspectionResults } from '../../src/record/inspection-results.ts';
import { findingFor } from '../../src/record/results.ts';
import { INCH } from '../finding/chambers.ts';
import { exampleRecord } from './example-record.ts';
import { measuredAs } from './measured-as.ts';

const record = exampleRecord();
const known = (value: number, u: number) => ({ value, u, U95: 1.96 * u, budget: [] });

function past(angleDeg: number, uDeg = 0.5, strokeIn = 2, armIn: number | null = 5.5) {
  const measured = measuredAs(strokeIn * INCH, 0.3, {
    armAngleAppliedRad: known(radFromDeg(angleDeg), radFromDeg(uDeg)),
    sizes: { bandDiameterMm: null, armLengthMm: armIn === null ? null : known(armIn * INCH, 1) },
  });
  const [end] = inspectionResults(record, (wheelEnd, measurement) => ({
    measurement: measured,
    finding: findingFor(record, wheelEnd, measurement, measured),
  })).wheelEnds;
  if (!end) throw new Error('the example has wheel ends');
  return pastSquare(end.asFound);
}

// Square at half the stroke: half-angles asin(s / 2 L), worked by hand.
test.each([
  [5, 2, 78.46],
  [5.5, 2, 79.52],
  [5.5, 1.5, 82.16],
  [6, 2.5, 77.98],
])('an arm of %f in set square at half of %f in ends at %f degrees', (armIn, strokeIn, degrees) => {
  expect(past(70, 0.5, strokeIn, armIn)?.halfStrokeRad).toBeCloseTo(radFromDeg(degrees), 3);
});

test('past square, and further than either way of setting the arm, only where it is proven', () => {
  expect(past(89.5)).toBeNull();
  expect(past(85)).toMatchObject({ isFar: false });
  // 79.52 degrees less 1.645 x 0.5 is 78.70.
  expect(past(78.8)).toMatchObject({ isFar: false });
  expect(past(78.6)).toMatchObject({ isFar: true });
  expect(past(70, 0.5, 2, null)).toMatchObject({ halfStrokeRad: null, isFar: false });
});
