/** Inspections in number: six axles, each wheel end measured from two simulated pictures with a tape. */
import { readFileSync } from 'node:fs';
import { openRecord } from '../../src/record/open-record.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import type { WheelEnd } from '../../src/record/wheel-end.ts';

const AXLES = 6;
const opened = openRecord(readFileSync('tests/fixtures/records/version-5.json', 'utf8'));
if (!opened.ok) throw new Error(opened.failure.code);
const example = opened.value;
const measured = example.wheelEnds.filter(({ id }) => id === 'w1' || id === 'w3');

export function fleetRecord(index: number): InspectionRecord {
  const wheelEnds = Array.from({ length: AXLES }, (_, i) => i + 1).flatMap((axle) =>
    (['left', 'right'] as const).map((side, i): WheelEnd => {
      const like = measured[(axle + i) % measured.length];
      if (!like) throw new Error('the example lacks its wheel ends');
      const id = `${axle}-${side}`;
      const measurements = like.measurements.map((one) => ({ ...one, id: `${id}-${one.id}` }));
      return { ...like, id, position: { axle, side }, measurements };
    }),
  );
  return {
    ...example,
    id: `fleet-${index}`,
    createdAt: new Date(Date.UTC(2026, 0, 1 + index)).toISOString(),
    vehicle: {
      ...example.vehicle,
      unit: `Gravel trailer GT-${100 + index}`,
      axles: Array.from({ length: AXLES }, () => ({ kind: 'trailer' as const })),
    },
    wheelEnds,
  };
}
