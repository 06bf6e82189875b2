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
  const all = createMeasuredAll(() => worker as unknown as Worker, 1);
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

test('two workers share the measurements out, each answer to its own; one that dies takes only its own with it', () => {
  const record = exampleRecord();
  const count = measurementsOf(record).length;
  type Heard = (event: { readonly data?: Measured; readonly message?: string }) => void;
  const workers: {
    readonly asked: MeasureInput[];
    readonly heard: Record<string, Heard>;
    readonly ended: boolean[];
  }[] = [];
  const all = createMeasuredAll(() => {
    const one = { asked: [] as MeasureInput[], heard: {} as Record<string, Heard>, ended: [] as boolean[] };
    workers.push(one);
    return {
      postMessage: (input: MeasureInput) => one.asked.push(input),
      addEventListener: (type: string, heard: Heard) => Object.assign(one.heard, { [type]: heard }),
      terminate: () => one.ended.push(true),
    } as unknown as Worker;
  });
  all.warm();
  all.warm();
  all.want(record);
  expect(workers.map(({ asked }) => asked.length)).toEqual([1, 1]);
  const said = globalThis.reportError;
  globalThis.reportError = () => undefined;
  workers[0]?.heard.error?.({ message: 'broken' });
  globalThis.reportError = said;
  expect(workers.map(({ asked, ended }) => [asked.length, ended.length])).toEqual([
    [1, 1],
    [1, 0],
    [1, 0],
  ]);
  for (let i = 0; i < count; i++) workers[1 + (i % 2)]?.heard.message?.({ data: REFUSED });
  expect(workers.reduce((sum, { asked }) => sum + asked.length, 0)).toBe(count);
  expect(knownOf(all, record).filter((known) => !known)).toHaveLength(1);
});
