import { expect, test } from 'vitest';
import { inspectionResults } from '../../src/record/inspection-results.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { findingFor } from '../../src/record/results.ts';
import { inspectedStrokes, unitHistory } from '../../src/record/unit-history.ts';
import { exampleRecord } from './example-record.ts';
import { measuredAs } from './measured-as.ts';

const example = exampleRecord();
const INSPECTIONS = 200;
const AXLES = 6;

/** Six axles with a stroke as found, a recheck, readings and a repair at each of twelve wheel ends. */
function inspection(number: number): InspectionRecord {
  const end = example.wheelEnds[1];
  if (!end) throw new Error('the example has a repaired wheel end');
  const wheelEnds = Array.from({ length: 2 * AXLES }, (_, i) => ({
    ...end,
    id: `w${i}`,
    position: { axle: Math.floor(i / 2) + 1, side: i % 2 === 0 ? ('left' as const) : ('right' as const) },
    measurements: end.measurements.map((one) => ({ ...one, id: `${one.id}-${i}` })),
  }));
  return {
    ...example,
    id: `r${number}`,
    vehicle: {
      ...example.vehicle,
      unit: `GT-${number % 20}`,
      axles: Array.from({ length: AXLES }, () => ({ kind: 'trailer' as const })),
    },
    wheelEnds,
  };
}

const records = Array.from({ length: INSPECTIONS }, (_, i) => inspection(i));
/** Kept beside the records, as the page keeps what its workers measured. */
const kept = new Map(
  records[0]?.wheelEnds.flatMap(({ measurements }, i) =>
    measurements.map(({ id, purpose }) => [id, measuredAs(purpose === 'as-found' ? 50 + i : 40)] as const),
  ),
);

function summarised(record: InspectionRecord) {
  return inspectionResults(record, (wheelEnd, measurement) => {
    const measured = kept.get(measurement.id) ?? null;
    return (
      measured && { measurement: measured, finding: findingFor(record, wheelEnd, measurement, measured) }
    );
  });
}

/** Of the processor: a busy machine does not count. */
function fastestMs(work: () => void): number {
  const runs = [1, 2, 3].map(() => {
    const began = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(began);
    return (user + system) / 1000;
  });
  return Math.min(...runs);
}

test('200 inspections of 12 wheel ends each are summarised from kept measurements in under 300 ms', () => {
  const first = records[0] && summarised(records[0]);
  expect(first?.counts['within limit']).toBe(12);
  expect(first?.roadside?.asFound.reached).toBe('yes');
  const ms = fastestMs(() => {
    for (const record of records) summarised(record);
  });
  expect(ms).toBeLessThan(300);
});

test('one unit among 200 inspections has its trend at once from what is kept of them', () => {
  const heads = records.map((record) => ({
    recordId: record.id,
    createdAt: record.createdAt,
    unit: record.vehicle.unit,
    strokes: inspectedStrokes(summarised(record)),
  }));
  let history = unitHistory('gt-7', heads);
  const ms = fastestMs(() => {
    history = unitHistory('gt-7', heads);
  });
  expect(history).toHaveLength(12);
  expect(history[0]?.strokes).toHaveLength(20);
  expect(ms).toBeLessThan(50);
});

test('results are plain: what is kept as text comes back the same', () => {
  const results = summarised(inspection(0));
  expect(JSON.parse(JSON.stringify(results))).toEqual(results);
});
