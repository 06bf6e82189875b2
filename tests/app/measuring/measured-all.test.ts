import { expect, test } from 'vitest';
import type { Measured } from '../../../src/app/measuring/measure-client.ts';
import { createMeasuredAll, measuredOf } from '../../../src/app/measuring/measured-all.ts';
import type { MeasureInput } from '../../../src/measurement/measurement.ts';
import type { InspectionRecord } from '../../../src/record/record.ts';
import { exampleRecord } from '../../record/example-record.ts';

const REFUSED: Measured = { ok: false, failure: { code: 'measurement/no-solution' } };

/** A worker that notes what it is asked and answers when the test says so. */
function pretended() {
  const asked: MeasureInput[] = [];
  let listener: (event: { readonly data: Measured }) => void = () => undefined;
  const worker = {
    postMessage: (input: MeasureInput) => asked.push(input),
    addEventListener(type: string, heard: typeof listener) {
      if (type === 'message') listener = heard;
    },
    terminate: () => undefined,
  };
  const all = createMeasuredAll(() => worker as unknown as Worker);
  return { all, asked, answer: () => listener({ data: REFUSED }) };
}

const measurementsOf = (record: InspectionRecord) =>
  record.wheelEnds.flatMap(({ measurements }) => measurements);
const knownOf = (all: ReturnType<typeof createMeasuredAll>, record: InspectionRecord) =>
  measurementsOf(record).map((one) => measuredOf(all.getState().known, one, record) !== null);

test('measures one after the other, each once', () => {
  const record = exampleRecord();
  const { all, asked, answer } = pretended();
  all.want(record);
  all.want(record);
  expect(asked).toHaveLength(1);
  const count = measurementsOf(record).length;
  for (let i = 0; i < count; i++) answer();
  all.want(record);
  expect(asked).toHaveLength(count);
  expect(knownOf(all, record)).toEqual(Array(count).fill(true));
});

test('a mark moved is measured again, the others are not; a photo more changes nothing', () => {
  const record = exampleRecord();
  const { all, asked, answer } = pretended();
  all.want(record);
  for (const _ of measurementsOf(record)) answer();
  const [photo] = record.captures;
  if (!photo) throw new Error('the example has captures');
  const more = { ...record, captures: [...record.captures, { ...photo, id: 'more' }] };
  expect(knownOf(all, more)).not.toContain(false);
  const [first, ...others] = more.wheelEnds;
  if (!first) throw new Error('the example has wheel ends');
  const touched = {
    ...first,
    measurements: first.measurements.map((one) => ({ ...one, views: one.views.slice(1) })),
  };
  const changed = { ...more, wheelEnds: [touched, ...others] };
  const before = asked.length;
  all.want(changed);
  expect(asked.length - before).toBe(1);
  answer();
  expect(knownOf(all, changed)).not.toContain(false);
});
